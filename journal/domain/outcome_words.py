"""An estimate and what came of it, in plain sentences."""

from journal.domain.estimates import Estimate
from journal.domain.money import format_whole
from journal.domain.outcomes import LEAST_FINISHED, Outcome, Pace


def outlook_title(*, of_hours: bool) -> str:
    """The title of the chart of an estimate."""
    return "What time it may take" if of_hours else "What it may cost"


def chance_in_words(chance: float) -> str:
    """A chance without false sureness: "93 %", "over 99 %", "under 1 %"."""
    if chance > 0.99:
        return "over 99 %"
    return "under 1 %" if chance < 0.01 else f"{100 * chance:.0f} %"


def estimate_in_words(estimate: Estimate, currency: str) -> str:
    """What a survey comes to, in a sentence: the mean, and what 80 of 100 such cars stay under."""
    money, hours = estimate.money.drawn, estimate.minutes.drawn
    said = (
        f"About {_money(money.mean, currency)} and {_hours(hours.mean)}; 8 times in 10 no more"
        f" than {_money(money.figures[1], currency)} and {_hours(hours.figures[1])}."
    )
    if estimate.under_both is not None:
        said += f" Chance of staying under both ceilings: {chance_in_words(estimate.under_both)}."
    elif money.under is not None:
        said += f" Chance of staying under your ceiling: {chance_in_words(money.under)}."
    elif hours.under is not None:
        said += f" Chance of staying under your ceiling: {chance_in_words(hours.under)}."
    return said


def outcome_in_words(held: Outcome, currency: str) -> tuple[str, ...]:
    """A survey held against the books, sentence by sentence."""
    said = [_finished(held)] if held.areas else []
    if held.to_come is not None or held.to_come_minutes is not None:
        said.append(_to_come(held, currency))
    if held.pace is not None and held.to_come_minutes:
        said.append(pace_in_words(held.pace))
    if held.loose:
        many = "1 finding belongs" if held.loose == 1 else f"{held.loose} findings belong"
        said.append(
            f"{many} to no repair area: {_money(held.loose_money, currency)} and"
            f" {_hours(held.loose_minutes)} expected, with nothing to hold against it."
        )
    return tuple(said)


def expected_in_words(survey: str, money: float, minutes: float, currency: str) -> str:
    """What a survey expected of one repair area: the means by the three-point formula."""
    parts = [_money(money, currency)] if money else []
    parts += [_hours(minutes)] if minutes else []
    return f"“{survey}” expected {' and '.join(parts) or 'nothing'} of it."


def pace_in_words(pace: Pace) -> str:
    """How long the work lasts at the pace of the last three months, as a range."""
    at = f"{pace.slowest / 60:.0f} to {pace.fastest / 60:.0f} h a week"
    if pace.weeks_most is None:
        return (
            f"At the pace of your last three months ({at}, one of them without any):"
            f" {_weeks(pace.weeks_least)} at the least."
        )
    return (
        f"At the pace of your last three months ({at}): {_weeks(pace.weeks_least)} to"
        f" {_weeks(pace.weeks_most)}."
    )


def _finished(held: Outcome) -> str:
    of = f"{held.finished} of {len(held.areas)} repair areas of the survey are finished"
    ratios = []
    if held.ratio is not None:
        ratios.append(f"{held.ratio.ratio:.2f} times the money")
    if held.ratio_minutes is not None:
        ratios.append(f"{held.ratio_minutes.ratio:.2f} times the hours")
    if not ratios:
        return f"{of}: fewer than {LEAST_FINISHED} with figures are too few to judge the rest by."
    return f"{of}; they came to {' and '.join(ratios)} expected."


def _to_come(held: Outcome, currency: str) -> str:
    if held.finished == len(held.areas):
        return "Nothing of them is still to come."
    parts = []
    if held.to_come is not None:
        parts.append(_money(held.to_come, currency))
    if held.to_come_minutes is not None:
        parts.append(_hours(held.to_come_minutes))
    return f"Still to come for the others, judged by that: about {' and '.join(parts)}."


def _money(minor: float, currency: str) -> str:
    return format_whole(round(minor), currency)


def _hours(minutes: float) -> str:
    return f"{minutes / 60:,.0f} h"


def _weeks(weeks: float) -> str:
    whole = max(1, round(weeks))
    return "1 week" if whole == 1 else f"{whole:,} weeks"
