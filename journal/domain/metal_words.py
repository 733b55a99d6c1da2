"""Metalwork in words, the same on every screen and page."""

from collections.abc import Iterable
from decimal import Decimal

from journal.domain.consumption import Consumption
from journal.domain.patches import Patch, PatchSums, patch_area, patch_mass
from journal.domain.readings import Compared, Measure, remark
from journal.domain.seam_sums import SeamSums
from journal.domain.seams import Seam, SeamChange, SeamState, count_welds, length, stretches
from journal.domain.when import When


def metres(mm: float) -> str:
    """A length of seam: "1.25 m"."""
    return f"{mm / 1000:.2f} m"


def sums_in_words(sums: SeamSums) -> str:
    """Each state with its metres: "3.20 m planned, 2.10 m tacked, 1.90 m welded, none dressed"."""
    return ", ".join(
        f"{metres(sums.at_least(state)) if sums.at_least(state) else 'none'} {state.value}"
        for state in SeamState
    )


def patches_in_words(sums: PatchSums) -> str:
    """New metal together: "3 patches, 412 cm², 388 g of steel"."""
    if not sums.count:
        return "no patch"
    count = "1 patch" if sums.count == 1 else f"{sums.count:,} patches"
    return f"{count}, {sums.area_cm2:,.0f} cm², {mass(sums.mass_g)} of steel"


def mass(grams: float) -> str:
    """A mass: "388 g", "2.35 kg"."""
    return f"{grams:,.0f} g" if grams < 1000 else f"{grams / 1000:,.2f} kg"


def seam_in_words(seam: Seam) -> str:
    """What a seam is: "Butt seam, 640 mm", "Plug row, 15 welds 40 mm apart, 560 mm"."""
    if seam.joint.is_row:
        welds = count_welds(seam)
        apart = f"{welds} {'weld' if welds == 1 else 'welds'} {seam.spacing_mm:g} mm apart"
        return f"{seam.joint.value.capitalize()}, {apart}, {length(seam):,.0f} mm"
    return f"{seam.joint.value.capitalize()} seam, {length(seam):,.0f} mm"


def states_in_words(seam: Seam, changes: Iterable[SeamChange], on: When | None = None) -> str:
    """How far each part of a seam is: "welded to 400 mm, then planned"."""
    found = stretches(seam, changes, on)
    if not found:
        return "not there yet"
    if len(found) == 1:
        return found[0].state.value
    parts = [f"{s.state.value} {s.start_mm:,.0f} to {s.end_mm:,.0f} mm" for s in found]
    return "; ".join(parts)


def patch_in_words(patch: Patch) -> str:
    """What a patch is: "Patch, 137 cm², 129 g of 1.2 mm zinc-coated sheet"."""
    steel = patch.steel or "steel"
    return (
        f"Patch, {patch_area(patch):,.0f} cm², {mass(patch_mass(patch))}"
        f" of {patch.thickness_mm:g} mm {steel}"
    )


def consumption_in_words(found: Consumption) -> str:
    """Wire and gas: "12 m of wire (27 g), 45 l of gas, 4 minutes of arc"."""
    minutes = f"{found.arc_minutes:.0f} min" if found.arc_minutes >= 1 else "less than 1 min"
    return (
        f"{found.wire_m:,.1f} m of wire ({mass(found.wire_g)}), {found.gas_l:,.0f} l of gas,"
        f" {minutes} of arc"
    )


def number(value: Decimal) -> str:
    """A number read, without noughts at its end."""
    text = f"{value:f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def signed(value: Decimal) -> str:
    """A difference with its sign: "+2.5", "−0.5", "0"."""
    if not value:
        return "0"
    return f"{'+' if value > 0 else chr(0x2212)}{number(abs(value))}"


def compared_in_words(measure: Measure, found: Compared) -> str:
    """Before against after: "1284 before, 1286.5 after: +2.5 mm, outside what you set"."""
    if found.before is None and found.after is None:
        return "not read yet"
    parts = []
    if found.before is not None:
        parts.append(f"{number(found.before.value)} before")
    if found.after is not None:
        parts.append(f"{number(found.after.value)} after")
    words = ", ".join(parts)
    if found.difference is not None:
        words += f": {signed(found.difference)} {measure.unit}"
    else:
        words += f", {measure.unit}"
    last = found.after or found.before
    assert last is not None
    outside = remark(measure, last.value)
    return f"{words}, {outside}" if outside else words
