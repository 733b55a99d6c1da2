"""A survey: what was found walking round the car, with three figures each for money and hours."""

import math
import re
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from enum import StrEnum

from journal.domain.errors import JournalError
from journal.domain.hours import parse_hours, spoken_hours
from journal.domain.ids import AreaId, CauseId, FindingId, PanelId, SurveyId, ViewId
from journal.domain.money import MOST, format_money
from journal.domain.when import When

#: No one finding takes longer; a larger figure is a slip of the finger. In minutes.
MOST_MINUTES = 20_000 * 60
#: The most time that somebody can mean to give a car, in minutes: a working life.
_MOST_CEILING = 100_000 * 60


class Severity(StrEnum):
    """How bad it is, in the words of the trade (common practice, no source)."""

    SURFACE = "surface"
    SCABBY = "scabby"
    PERFORATED = "perforated"
    STRUCTURAL = "structural"
    WORN = "worn"
    MISSING = "missing"

    @property
    def meaning(self) -> str:
        """What the word stands for, in a line."""
        return _MEANINGS[self]


_MEANINGS = {
    Severity.SURFACE: "on the surface; what is under it is sound",
    Severity.SCABBY: "pitted and thinned, not through",
    Severity.PERFORATED: "through, where it bears no load",
    Severity.STRUCTURAL: "through, bent or cracked where it bears load",
    Severity.WORN: "worn, seized or leaking",
    Severity.MISSING: "not there, or not the right one",
}


@dataclass(frozen=True, slots=True)
class Three:
    """Three figures for one thing: if all goes well, most likely, if it is as bad as can be."""

    best: int
    likely: int
    worst: int

    @property
    def expected(self) -> float:
        """The mean by the three-point formula: (best + 4 × likely + worst) / 6."""
        return (self.best + 4 * self.likely + self.worst) / 6


@dataclass(frozen=True, slots=True)
class Survey:
    """One walk round the car on one day.

    Attributes:
        ceiling: the most the owner will spend, in minor units of the journal's currency; None for
            no such limit.
        ceiling_minutes: the most time the owner will give it; None for no such limit.
        seed: what the simulation begins with, so that its figures are the same tomorrow.
        closed: the moment it was closed, ISO 8601 in UTC; None while it is open. A closed survey
            is kept as it was on that day.
    """

    id: SurveyId
    name: str
    when: When
    ceiling: int | None = None
    ceiling_minutes: int | None = None
    seed: int = 1
    note: str = ""
    closed: str | None = None


@dataclass(frozen=True, slots=True)
class Cause:
    """What makes several findings worse or better together, such as "it's worse inside".

    ``strength`` is 0 for nothing in common to 1 for all of it: the correlation of the normal
    variables behind two findings of the same cause.
    """

    id: CauseId
    survey_id: SurveyId
    name: str
    strength: float


@dataclass(frozen=True, slots=True)
class Finding:
    """One thing found: where, how bad, and what it may take.

    ``money`` is in minor units of the journal's currency, ``minutes`` in minutes. ``rank`` is its
    number on the sheet and on the drawing; x and y are millimetres on the view, both None for a
    finding without a spot.
    """

    id: FindingId
    survey_id: SurveyId
    text: str
    severity: Severity
    money: Three
    minutes: Three
    panel_id: PanelId | None = None
    view_id: ViewId | None = None
    x: float | None = None
    y: float | None = None
    area_id: AreaId | None = None
    cause_id: CauseId | None = None
    note: str = ""
    rank: int = 0


@dataclass(frozen=True, slots=True)
class SurveySheet:
    """A survey with its causes and findings, in the order of their numbers."""

    survey: Survey
    causes: tuple[Cause, ...]
    findings: tuple[Finding, ...]

    def cause_of(self, finding: Finding) -> Cause | None:
        """What a finding shares with others; None for nothing."""
        return next((cause for cause in self.causes if cause.id == finding.cause_id), None)


def expected(findings: Iterable[Finding]) -> tuple[float, float]:
    """The expected money, in minor units, and time, in minutes, by the three-point formula."""
    kept = tuple(findings)
    return sum(f.money.expected for f in kept), sum(f.minutes.expected for f in kept)


def check_survey(survey: Survey, currency: str) -> None:
    """Refuse a survey without a name, or with a ceiling that is none.

    Raises:
        JournalError: naming what is wrong.
    """
    if not survey.name.strip():
        raise JournalError("A survey needs a name, for instance “Before buying”.")
    if survey.ceiling is not None and not 0 < survey.ceiling <= MOST:
        raise JournalError(
            f"A ceiling of {format_money(survey.ceiling, currency)} is none: give more than"
            " nothing, or leave it empty."
        )
    if survey.ceiling_minutes is not None and not 0 < survey.ceiling_minutes <= _MOST_CEILING:
        raise JournalError(
            f"A ceiling of hours is more than nothing and at most {_hours(_MOST_CEILING)};"
            " or leave it empty."
        )


def check_cause(cause: Cause) -> None:
    """Refuse a cause without a name or with a strength outside 0 to 1.

    Raises:
        JournalError: naming what is wrong.
    """
    if not cause.name.strip():
        raise JournalError("A shared cause needs a name, for instance “It's worse inside”.")
    if not (math.isfinite(cause.strength) and 0 <= cause.strength <= 1):
        raise JournalError(
            f"The strength of “{cause.name}” is from 0, nothing in common, to 1, all of it."
        )


def check_finding(finding: Finding, currency: str) -> None:
    """Refuse a finding without words, or with figures that can't be.

    Raises:
        JournalError: naming what is wrong.
    """
    if not finding.text.strip():
        raise JournalError("A finding needs some words: say what was found.")
    _check_three(finding.money, "money", lambda minor: format_money(minor, currency))
    _check_three(finding.minutes, "hours", _hours)
    if finding.money.worst > MOST:
        raise JournalError(f"{format_money(MOST, currency)} is the most that is taken for a sum.")
    if finding.minutes.worst > MOST_MINUTES:
        raise JournalError(f"{_hours(MOST_MINUTES)} is the most that one finding is taken to need.")
    for number in (finding.x, finding.y):
        if number is not None and not math.isfinite(number):
            raise JournalError("The finding has no place on the drawing.")


def refuse_closed(survey: Survey) -> None:
    """Refuse to change a survey that was closed.

    Raises:
        JournalError: it was.
    """
    if survey.closed is not None:
        raise JournalError(
            f"“{survey.name}” was closed and is kept as it was: go on from it in a new survey."
        )


def _check_three(three: Three, what: str, written: Callable[[int], str]) -> None:
    if min(three.best, three.likely, three.worst) < 0:
        raise JournalError(f"The {what} of a finding can't be less than nothing.")
    if not three.best <= three.likely <= three.worst:
        raise JournalError(
            f"The {what} must grow from best over likely to worst, not {written(three.best)},"
            f" {written(three.likely)}, {written(three.worst)}."
        )


def _hours(minutes: int) -> str:
    return spoken_hours(minutes) if minutes else "0 h"


_CLOCK = re.compile(r"(?P<hours>[0-9]{1,5}):(?P<minutes>[0-5][0-9])")
_LONG = re.compile(r"(?P<hours>[0-9]{1,5}(?:[.,][0-9]{1,4})?)")
#: A thousand and more, or one and a part.
_OPEN = re.compile(r"[1-9][0-9]{0,2}[.,][0-9]{3}")


def parse_time(text: str) -> int:
    """Read a time that something may take, in minutes: "12", "7.5", "7:30", "45 min", "0".

    Raises:
        JournalError: the text is no time, or can be read in two ways ("1,200").
    """
    plain = " ".join(text.split()).casefold()
    bare = plain.removesuffix("hours").removesuffix("h").strip()
    if found := _CLOCK.fullmatch(bare):
        return int(found["hours"]) * 60 + int(found["minutes"])
    if _OPEN.fullmatch(bare):
        raise JournalError(
            f"“{text.strip()[:40]}” can be read in two ways: write it without a mark for thousands."
        )
    if found := _LONG.fullmatch(bare):
        return round(float(found["hours"].replace(",", ".")) * 60)
    try:
        return parse_hours(plain)
    except JournalError:
        raise JournalError(
            f"“{text.strip()[:40]}” is no time; write for instance 12, 7.5, 7:30 or 45 min."
        ) from None


def written_time(minutes: int) -> str:
    """A time in hours as a field shows it, so that ``parse_time`` reads the same: "12", "1.08"."""
    return f"{minutes / 60:.2f}".rstrip("0").rstrip(".")


def spoken_money(three: Three, currency: str) -> str:
    """Three sums in words: "€80.00 at best, €150.00 likely, €400.00 at worst"."""
    best, likely, worst = (
        format_money(minor, currency) for minor in (three.best, three.likely, three.worst)
    )
    return best if best == worst else f"{best} at best, {likely} likely, {worst} at worst"


def spoken_time(three: Three) -> str:
    """Three times in words: "10 h at best, 20 h likely, 50 h at worst"."""
    best, likely, worst = (_hours(minutes) for minutes in (three.best, three.likely, three.worst))
    return best if best == worst else f"{best} at best, {likely} likely, {worst} at worst"
