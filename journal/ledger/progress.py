"""A survey held against the books: estimated and actual, what is to come, how long yet."""

from collections import defaultdict
from collections.abc import Callable, Iterable, Sequence
from datetime import date, timedelta

from journal.domain.areas import Area
from journal.domain.costs import CostTable
from journal.domain.findings import Finding, expected
from journal.domain.ids import AreaId
from journal.domain.outcomes import (
    LEAST_FINISHED,
    PACE_DAYS,
    AreaOutcome,
    Outcome,
    OwnRatio,
    Pace,
)
from journal.domain.work import Work


def outcome(
    findings: Sequence[Finding],
    areas: Iterable[Area],
    costs: CostTable,
    work: Iterable[Work],
    last_stage: str,
    today: date,
) -> Outcome:
    """Hold a survey against costs by repair area; an area at ``last_stage`` is finished."""
    known = {area.id: area for area in areas}
    by_area: dict[AreaId, list[Finding]] = defaultdict(list)
    loose: list[Finding] = []
    for finding in findings:
        if finding.area_id in known:
            by_area[finding.area_id].append(finding)
        else:
            loose.append(finding)
    spent = {row.key: (row.money, row.minutes) for row in costs.rows}
    rows = tuple(
        AreaOutcome(
            area_id,
            known[area_id].name,
            *expected(own),
            *spent.get(str(area_id), (0, 0)),
            known[area_id].stage == last_stage,
        )
        for area_id, own in by_area.items()
    )
    ratio, ratio_minutes = own_ratio(rows, _money), own_ratio(rows, _minutes)
    left = to_come(rows, ratio, _money)
    left_minutes = to_come(rows, ratio_minutes, _minutes)
    return Outcome(
        rows, ratio, ratio_minutes, left, left_minutes, len(loose), *expected(loose),
        None if left_minutes is None else pace(work, left_minutes, today),
    )  # fmt: skip


#: Gives what was expected of an area and what it came to: of money, or of time.
_Of = Callable[[AreaOutcome], tuple[float, int]]


def _money(area: AreaOutcome) -> tuple[float, int]:
    return area.expected, area.money


def _minutes(area: AreaOutcome) -> tuple[float, int]:
    return area.expected_minutes, area.minutes


def own_ratio(areas: Iterable[AreaOutcome], of: _Of) -> OwnRatio | None:
    """What finished areas came to for each one expected; None where that rests on too few."""
    pairs = [of(area) for area in areas if area.finished]
    pairs = [pair for pair in pairs if pair[0] > 0]
    if len(pairs) < LEAST_FINISHED:
        return None
    return OwnRatio(sum(came for _, came in pairs) / sum(hoped for hoped, _ in pairs), len(pairs))


def to_come(areas: Iterable[AreaOutcome], ratio: OwnRatio | None, of: _Of) -> float | None:
    """What the unfinished areas still need by the ratio, none of them less than nothing."""
    if ratio is None:
        return None
    pairs = (of(area) for area in areas if not area.finished)
    return sum(max(0.0, ratio.ratio * hoped - came) for hoped, came in pairs)


def pace(work: Iterable[Work], left: float, today: date) -> Pace | None:
    """How long so many minutes last at the pace of the last three months; None with no hours."""
    third = PACE_DAYS // 3
    months = [0, 0, 0]
    for day in work:
        ago = (today - day.when.earliest.date()) // timedelta(days=1)
        if 0 <= ago < PACE_DAYS:
            months[ago // third] += day.minutes
    if not any(months):
        return None
    slowest, fastest = (7 * minutes / third for minutes in (min(months), max(months)))
    return Pace(slowest, fastest, left / fastest, left / slowest if slowest else None)
