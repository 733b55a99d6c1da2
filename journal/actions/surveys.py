"""Surveys: walking round the car before the start, what it may come to, and what it came to."""

from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import UTC, date, datetime

from journal.actions import costs
from journal.actions.session import Session
from journal.domain.anchors import AnchorPoint, Mark, marks, near
from journal.domain.changes import Changes
from journal.domain.charts import ChartLook, DrawnChart
from journal.domain.errors import JournalError
from journal.domain.estimates import Estimate, Item, Outlook
from journal.domain.findings import (
    Cause,
    Finding,
    Survey,
    SurveySheet,
    check_cause,
    check_finding,
    check_survey,
    expected,
    refuse_closed,
)
from journal.domain.ids import AreaId, CauseId, FindingId, PanelId, SurveyId
from journal.domain.outcome_words import expected_in_words
from journal.domain.outcomes import Outcome
from journal.domain.shapes import Point
from journal.domain.when import When

#: Seeds are drawn from the clock: any will do, so long as it is kept.
_SEEDS = 2**31
#: So much of a finding's words names an edit.
_LABEL = 40


def surveys(session: Session) -> tuple[Survey, ...]:
    """Every survey, in order of date."""
    return session.journal.surveys.all()


def sheet(session: Session, survey_id: SurveyId) -> SurveySheet:
    """One survey with its causes and findings.

    Raises:
        JournalError: there is none of that number.
    """
    return session.journal.surveys.sheet(survey_id)


def find_survey(session: Session, text: str) -> Survey:
    """The survey that a number or a name means; the latest for "".

    Raises:
        JournalError: there is none, or more than one of that name.
    """
    known = surveys(session)
    if not known:
        raise JournalError("There is no survey yet.")
    wanted = text.casefold().strip()
    if not wanted:
        return known[-1]
    found = [one for one in known if wanted in (str(one.id), one.name.casefold())]
    found = found or [one for one in known if wanted in one.name.casefold()]
    if len(found) != 1:
        raise JournalError(
            f"“{text}” means more than one survey: give its number."
            if found
            else f"There is no survey “{text}”."
        )
    return found[0]


def start_survey(session: Session, survey: Survey) -> Changes:
    """Begin a survey; a seed of 0 is replaced by one that nobody chose.

    Raises:
        JournalError: it has no name, or its ceiling is none.
    """
    check_survey(survey, _currency(session))
    seed = survey.seed or 1 + datetime.now(UTC).microsecond * 2_003 % _SEEDS
    with session.journal.edit(f"Start the survey “{survey.name}”") as edit:
        made = session.journal.surveys.add(replace(survey, seed=seed, closed=None))
    return edit.changes(made)


def change_survey(session: Session, survey: Survey) -> Changes:
    """Record a survey's name, day, ceilings and note anew.

    Raises:
        JournalError: as for ``start_survey``, or it was closed.
    """
    known = _open(session, survey.id)
    check_survey(survey, _currency(session))
    with session.journal.edit(f"Change the survey “{survey.name}”") as edit:
        session.journal.surveys.change(replace(survey, seed=known.seed, closed=None))
    return edit.changes(survey.id)


def close_survey(session: Session, survey_id: SurveyId) -> Changes:
    """Keep a survey as it is now for good.

    Raises:
        JournalError: it was closed before, or nothing was found in it.
    """
    survey = _open(session, survey_id)
    if not sheet(session, survey_id).findings:
        raise JournalError(f"Nothing was found in “{survey.name}” yet; there is nothing to keep.")
    now = datetime.now(UTC).isoformat(timespec="seconds")
    with session.journal.edit(f"Close the survey “{survey.name}”") as edit:
        session.journal.surveys.change(replace(survey, closed=now))
    return edit.changes(survey_id)


def go_on_from(session: Session, survey_id: SurveyId, name: str, when: When) -> Changes:
    """Begin a new survey with all that another one says; numbers and seed stay the same.

    Raises:
        JournalError: there is no such survey, or the new one has no name.
    """
    store, old = session.journal.surveys, sheet(session, survey_id)
    new = replace(old.survey, id=SurveyId(0), name=name.strip(), when=when, closed=None)
    check_survey(new, _currency(session))
    with session.journal.edit(f"Go on from the survey “{old.survey.name}”") as edit:
        made = store.add(new)
        causes = {
            cause.id: store.put_cause(replace(cause, id=CauseId(0), survey_id=made))
            for cause in old.causes
        }
        for found in old.findings:
            cause_id = None if found.cause_id is None else causes[found.cause_id]
            store.add_finding(replace(found, survey_id=made, cause_id=cause_id))
    return edit.changes(made)


def remove_survey(session: Session, survey_id: SurveyId) -> Changes:
    """Take a survey out, with all that was found."""
    survey = session.journal.surveys.get(survey_id)
    with session.journal.edit(f"Remove the survey “{survey.name}”") as edit:
        session.journal.surveys.remove(survey_id)
    return edit.changes()


# Findings and causes


def finding(session: Session, finding_id: FindingId) -> Finding:
    """One finding.

    Raises:
        JournalError: there is none of that number.
    """
    return session.journal.surveys.finding(finding_id)


def add_finding(
    session: Session, found: Finding, cause: Cause | None = None, new_area: str = ""
) -> Changes:
    """Record a finding in an open survey.

    Args:
        session: the open journal.
        found: what was found; its own cause is overruled by ``cause``.
        cause: what it shares with others: one of the survey's, its strength perhaps another now,
            or a new one, its number 0.
        new_area: the name of a repair area to make of it, on its panel; "" for none.

    Raises:
        JournalError: words are missing, figures can't be, or the survey was closed.
    """
    _open(session, found.survey_id)
    _check(session, found, cause, new_area)
    with session.journal.edit(f"Find “{_short(found.text)}”") as edit:
        made = session.journal.surveys.add_finding(_with(session, found, cause, new_area))
    return edit.changes(made)


def change_finding(
    session: Session, found: Finding, cause: Cause | None = None, new_area: str = ""
) -> Changes:
    """Record a finding anew; causes that nothing has left go.

    Raises:
        JournalError: as for ``add_finding``.
    """
    known = finding(session, found.id)
    _open(session, known.survey_id)
    _check(session, found, cause, new_area)
    with session.journal.edit(f"Change the finding “{_short(found.text)}”") as edit:
        session.journal.surveys.change_finding(_with(session, found, cause, new_area))
        _drop_idle_causes(session, known.survey_id)
    return edit.changes(found.id)


def remove_finding(session: Session, finding_id: FindingId) -> Changes:
    """Take a finding out of an open survey.

    Raises:
        JournalError: there is none of that number, or the survey was closed.
    """
    known = finding(session, finding_id)
    _open(session, known.survey_id)
    with session.journal.edit(f"Remove the finding “{_short(known.text)}”") as edit:
        session.journal.surveys.remove_finding(finding_id)
        _drop_idle_causes(session, known.survey_id)
    return edit.changes()


def finding_marks(anchors: Sequence[AnchorPoint], found: Finding) -> tuple[Mark, ...]:
    """What to say of a finding near anchor points; it never says pass or fail."""
    if found.view_id is None or found.x is None or found.y is None:
        return ()
    return marks(near(anchors, found.view_id, Point(found.x, found.y)))


def anchors(session: Session) -> tuple[AnchorPoint, ...]:
    """The load-bearing mountings that findings are looked at against."""
    return session.journal.metalwork.anchors()


# What it comes to


def estimate(session: Session, survey_id: SurveyId) -> Estimate:
    """What a survey comes to, by simulation and by the closed formula."""
    return estimate_of(sheet(session, survey_id))


def estimate_of(found: SurveySheet) -> Estimate:
    """The same of a survey in hand."""
    from journal.ledger.simulation import estimate

    survey = found.survey
    return estimate(_items(found), survey.seed, survey.ceiling, survey.ceiling_minutes)


def outcome(session: Session, survey_id: SurveyId, today: date | None = None) -> Outcome:
    """A survey held against the books: estimated and actual, what is to come, how long yet."""
    from journal.ledger.progress import outcome

    journal = session.journal
    return outcome(
        sheet(session, survey_id).findings,
        journal.areas.all(),
        costs.costs(session, "area"),
        journal.work.all(),
        journal.car.get().stages[-1],
        today or datetime.now().date(),
    )


def draw_outlook(
    outlook: Outlook, title: str, currency: str, look: ChartLook, size: tuple[int, int, float]
) -> DrawnChart:
    """The chart of a sum as pixels: ``size`` is width, height and density; no currency for time."""
    from journal.ledger.charts import Size
    from journal.ledger.estimate_charts import draw_estimate

    width, height, density = size
    room = Size(max(width, 200), max(height, 120), density)
    return draw_estimate(outlook, title, currency, look, room)


def expected_by_area(session: Session) -> dict[AreaId, str]:
    """What the latest survey that looked at a repair area expected of it, in a sentence each."""
    currency, said = _currency(session), {}
    for one in session.journal.surveys.sheets():
        own = defaultdict(list)
        for found in one.findings:
            if found.area_id is not None:
                own[found.area_id].append(found)
        for area_id, findings in own.items():
            said[area_id] = expected_in_words(one.survey.name, *expected(findings), currency)
    return said


@dataclass(frozen=True, slots=True)
class Compared:
    """One panel in two surveys: the means by the three-point formula, and how many findings.

    Money is in minor units, time in minutes; ``panel_id`` is None for findings on no panel.
    """

    panel_id: PanelId | None
    label: str
    counts: tuple[int, int]
    money: tuple[float, float]
    minutes: tuple[float, float]


def compare(session: Session, earlier: SurveyId, later: SurveyId) -> tuple[Compared, ...]:
    """Two surveys panel by panel, what changed most first."""
    sides = [sheet(session, number).findings for number in (earlier, later)]
    names = {panel.id: panel.label for panel in session.journal.drawing.panels()}
    rows = []
    for panel_id in dict.fromkeys(found.panel_id for side in sides for found in side):
        own = [[found for found in side if found.panel_id == panel_id] for side in sides]
        before, now = (expected(side) for side in own)
        label = names.get(panel_id, "") if panel_id else "no panel"
        rows.append(
            Compared(
                panel_id,
                label,
                (len(own[0]), len(own[1])),
                (before[0], now[0]),
                (before[1], now[1]),
            )
        )
    return tuple(sorted(rows, key=lambda row: -abs(row.money[1] - row.money[0])))


# Below


def _items(found: SurveySheet) -> list[Item]:
    items = []
    for one in found.findings:
        cause = found.cause_of(one)
        name, strength = (cause.name, cause.strength) if cause else ("", 0.0)
        items.append(Item(one.id, one.rank, one.money, one.minutes, name, strength))
    return items


def _open(session: Session, survey_id: SurveyId) -> Survey:
    survey = session.journal.surveys.get(survey_id)
    refuse_closed(survey)
    return survey


def _check(session: Session, found: Finding, cause: Cause | None, new_area: str) -> None:
    check_finding(found, _currency(session))
    if cause is not None:
        check_cause(cause)
    if new_area and found.panel_id is None:
        raise JournalError("A repair area lies on a panel: pick the panel of the finding first.")


def _with(session: Session, found: Finding, cause: Cause | None, new_area: str) -> Finding:
    """The finding with its cause and repair area recorded. Inside an edit."""
    journal = session.journal
    cause_id = found.cause_id
    if cause is not None:
        cause_id = journal.surveys.put_cause(replace(cause, survey_id=found.survey_id))
    area_id = found.area_id
    if new_area.strip() and found.panel_id is not None:
        area_id = journal.areas.add(new_area.strip(), [found.panel_id], found.text)
        day = journal.surveys.get(found.survey_id).when
        journal.areas.add_stage_change(area_id, journal.car.get().stages[0], day, "")
    return replace(found, cause_id=cause_id, area_id=area_id, text=found.text.strip())


def _drop_idle_causes(session: Session, survey_id: SurveyId) -> None:
    found = sheet(session, survey_id)
    used = {one.cause_id for one in found.findings}
    for cause in found.causes:
        if cause.id not in used:
            session.journal.surveys.remove_cause(CauseId(cause.id))


def _currency(session: Session) -> str:
    return session.journal.car.get().currency


def _short(text: str) -> str:
    return text if len(text) <= _LABEL else f"{text[: _LABEL - 1]}…"
