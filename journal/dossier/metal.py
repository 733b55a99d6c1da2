"""The metalwork of a repair area as the dossier tells it: seams, new metal, readings, mountings."""

from collections.abc import Iterable, Sequence

from journal.domain.areas import Area
from journal.domain.bearings import Bearing, bearings
from journal.domain.diagonals import compare_diagonals, pair_diagonals
from journal.domain.ids import AreaId
from journal.domain.metal_words import mass, metres, number, patch_in_words, signed
from journal.domain.patches import Patch, patch_sums
from journal.domain.readings import Measure, Reading, compare, remark
from journal.domain.record import Record
from journal.domain.seam_sums import sums
from journal.domain.seams import Joint, Seam, SeamChange, SeamState, count_welds
from journal.domain.when import spoken
from journal.dossier.document import Measured, Metalwork
from journal.dossier.words import sentence


def metalwork(record: Record, area: Area) -> Metalwork:
    """What was welded, let in and measured in a repair area, and what of it is load-bearing."""
    seams = [seam for seam in record.seams if seam.area_id == area.id]
    patches = [patch for patch in record.patches if patch.area_id == area.id]
    measures = [measure for measure in record.measures if measure.area_id == area.id]
    near = _bearings(record, area.id, seams, patches)
    return Metalwork(
        seams=tuple(_joints(record, seams)),
        patches=tuple(_patches(patches)),
        measured=tuple(_measured(measures, record.readings)),
        diagonals=tuple(_diagonals(measures, record.readings)),
        bearings=tuple(f"{one.mark.title}. {one.text}" for one in near),
        cautions=tuple(dict.fromkeys(one.mark.caution for one in near)),
    )


def _joints(record: Record, seams: Sequence[Seam]) -> Iterable[str]:
    for joint in Joint:
        own = [seam for seam in seams if seam.joint is joint]
        if not own:
            continue
        whole = sums(own, record.seam_changes)
        name = joint.value if joint.is_row else f"{joint.value} seam"
        states = ", ".join(
            f"{metres(whole.at_least(state))} {state.value}"
            for state in (SeamState.TACKED, SeamState.WELDED, SeamState.DRESSED)
            if whole.at_least(state)
        )
        drawn = f"{name.capitalize()}: {metres(whole.planned)} drawn"
        yield sentence(f"{drawn}; {states or 'none of it welded'}{_welds(record, own, joint)}")


def _welds(record: Record, seams: Sequence[Seam], joint: Joint) -> str:
    if not joint.is_row:
        return ""
    done = sum(count_welds(s, _own(s, record), None, SeamState.WELDED) for s in seams)
    return f"; {done} of {sum(count_welds(s) for s in seams)} welds made"


def _own(seam: Seam, record: Record) -> list[SeamChange]:
    return [change for change in record.seam_changes if change.seam_id == seam.id]


def _patches(patches: Sequence[Patch]) -> Iterable[str]:
    for patch in patches:
        when = f", in since {spoken(patch.when)}" if patch.when else ""
        note = f". {patch.note}" if patch.note else ""
        yield sentence(f"{patch_in_words(patch)}{when}{note}")
    if len(patches) > 1:
        whole = patch_sums(patches)
        yield f"Together {whole.area_cm2:,.0f} cm² and {mass(whole.mass_g)} of steel."


def _measured(measures: Sequence[Measure], readings: Sequence[Reading]) -> Iterable[Measured]:
    for measure in measures:
        for found in compare(measure, readings):
            last = found.after or found.before
            if last is None:
                continue
            place = "" if measure.places == 1 else f", place {found.point + 1}"
            yield Measured(
                f"{measure.name}{place}",
                _dated(found.before),
                _dated(found.after),
                "" if found.difference is None else signed(found.difference),
                measure.unit,
                remark(measure, last.value),
            )


def _dated(reading: Reading | None) -> str:
    return "" if reading is None else number(reading.value)


def _diagonals(measures: Sequence[Measure], readings: Sequence[Reading]) -> Iterable[str]:
    for one, other in pair_diagonals(measures):
        pair = compare_diagonals(one, other, readings)
        if pair.before is not None and pair.after is not None and pair.change is not None:
            yield (
                f"{one.name} and {other.name} were {number(abs(pair.before))} {one.unit} apart"
                f" before and are {number(abs(pair.after))} {one.unit} apart after: a change of"
                f" {signed(pair.change)} {one.unit}."
            )


def _bearings(
    record: Record, area_id: AreaId, seams: Sequence[Seam], patches: Sequence[Patch]
) -> tuple[Bearing, ...]:
    if not record.anchors:
        return ()
    photos = {row.photo_id for row in record.area_photos if row.area_id == area_id}
    pins = (pin for pin in record.pins if pin.photo_id in photos)
    return bearings(record.anchors, seams=seams, patches=patches, pins=pins)
