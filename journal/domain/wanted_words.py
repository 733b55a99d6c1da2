"""Wanted parts in words, the same on the screen and in the commands."""

from journal.domain.money import format_money
from journal.domain.wanted import BuyingSums, Sighting, Wanted, best_sighting, over_limit


def sighting_in_words(wanted: Wanted, sighting: Sighting, currency: str) -> str:
    """A sighting's price and how it stands to the limit: "€75.00, €15.00 over the limit"."""
    if sighting.price is None:
        return "no price said"
    money = format_money(sighting.price, sighting.currency)
    if sighting.currency != currency:
        return f"{money}, not compared: it is not in {currency}"
    over = over_limit(wanted, sighting, currency)
    return f"{money}, {format_money(over, currency)} over the limit" if over else money


def seen_in_words(wanted: Wanted, currency: str) -> str:
    """The best sighting, else the latest: "Rustholm Breakers, €51.00"; "" where it has none."""
    if not wanted.sightings:
        return ""
    shown = best_sighting(wanted, currency) or wanted.sightings[-1]
    return f"{shown.place}, {sighting_in_words(wanted, shown, currency)}"


def sums_in_words(sums: BuyingSums, currency: str) -> str:
    """What is still to be bought, on order, and here but not fitted."""
    if not (sums.to_buy or sums.on_order or sums.unfitted):
        return "Nothing is wanted."
    left = f"Still to buy: {_parts(sums.to_buy)}" if sums.to_buy else "Nothing is left to buy"
    said = [left]
    if sums.with_limit:
        on = "" if sums.with_limit == sums.to_buy else f" (of {sums.with_limit})"
        said.append(f"{format_money(sums.at_limits, currency)} at the limits{on}")
    if sums.with_likely:
        on = "" if sums.with_likely == sums.to_buy else f" (known of {sums.with_likely})"
        said.append(f"likely {format_money(sums.likely, currency)}{on}")
    words = ", ".join(said)
    if sums.on_order:
        words += f". On order: {_parts(sums.on_order)}"
        if sums.ordered_likely:
            words += f", likely {format_money(sums.ordered_likely, currency)}"
    if sums.unfitted:
        words += f". Here and not fitted: {_parts(sums.unfitted)}"
    return f"{words}."


def _parts(count: int) -> str:
    return "1 part" if count == 1 else f"{count:,} parts"
