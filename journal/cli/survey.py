"""restoration-journal survey: what was found before the start, and what it may take."""

from collections.abc import Callable
from pathlib import Path
from typing import Any

import click

from journal.actions import surveys as actions
from journal.actions.areas import areas, find_area
from journal.actions.cars import car
from journal.actions.charts import save_estimate
from journal.actions.drawings import find_panel, panels
from journal.actions.journals import open_journal
from journal.actions.session import Session
from journal.cli.options import journal_argument, json_option
from journal.cli.output import answer, table, tell
from journal.domain.errors import JournalError
from journal.domain.estimates import LEVELS, Estimate, Outlook, ways_in_words
from journal.domain.findings import (
    Cause,
    Finding,
    Severity,
    Survey,
    SurveySheet,
    Three,
    parse_time,
)
from journal.domain.ids import CauseId, FindingId, SurveyId
from journal.domain.money import format_money, parse_money
from journal.domain.outcome_words import chance_in_words, outcome_in_words
from journal.domain.outcomes import Outcome
from journal.domain.when import When, parse, spoken

_OF = click.option("--survey", "name", default="", help="Its name or number; the latest else.")

#: Of a cause that is new, where none is given.
_STRENGTH = 0.5


@click.group("survey", invoke_without_command=True)
@journal_argument
@click.pass_context
def command(context: click.Context, journal: Path) -> None:
    """Survey the car of JOURNAL before the start, and hold the survey against the books later.

    Without a further word the surveys are listed.
    """
    context.obj = journal
    if context.invoked_subcommand is None:
        _list(journal, as_json=False)


@command.command("list")
@json_option
@click.pass_obj
def list_surveys(journal: Path, as_json: bool) -> None:
    """List the surveys.

    With --json: a list of objects with id, name, date (EDTF), ceiling (minor units),
    ceiling_minutes, closed (ISO 8601, UTC), seed and note.
    """
    _list(journal, as_json=as_json)


@command.command("show")
@_OF
@click.option(
    "--chart",
    type=click.Path(dir_okay=False, path_type=Path),
    help="Draw what it may cost into this file, FILE.svg or FILE.png.",
)
@click.option("--of-hours", is_flag=True, help="Draw what time it may take instead.")
@json_option
@click.pass_obj
def show(journal: Path, name: str, chart: Path | None, of_hours: bool, as_json: bool) -> None:
    """Show what was found, what it may come to, and what it came to so far.

    With --json: an object with survey (as listed), findings, money and hours (objects with
    simulated and formula, each of mean, deviation, p50, p80, p90 and under, the chance of staying
    under the ceiling; and weights, each of finding, part, at_best and at_worst), under_both, seed,
    draws, and outcome (areas, ratio, ratio_hours, rests_on, to_come, to_come_minutes, loose).
    Money is in minor units, time in minutes; with --chart also file.
    """
    with open_journal(journal, read_only=True) as session:
        sheet = actions.sheet(session, actions.find_survey(session, name).id)
        estimate, held = actions.estimate_of(sheet), actions.outcome(session, sheet.survey.id)
        currency = car(session).currency
        labels = {panel.id: panel.label for panel in panels(session)}
        names = {area.id: area.name for area in areas(session)}
        if chart is not None:
            save_estimate(session, sheet.survey.id, chart, of_hours=of_hours)
    if as_json:
        answer(
            {
                "survey": _survey(sheet.survey),
                "findings": [_finding(one, sheet, labels, names) for one in sheet.findings],
                "money": _outlook(estimate.money),
                "hours": _outlook(estimate.minutes),
                "under_both": estimate.under_both,
                "seed": estimate.seed,
                "draws": estimate.draws,
                "outcome": _outcome(held),
            }
            | ({} if chart is None else {"file": str(chart)})
        )
        return
    _tell_sheet(sheet, estimate, labels, currency)
    for words in outcome_in_words(held, currency):
        tell(words)
    if chart is not None:
        tell(f"The chart is in {chart}.")


@command.command("start")
@click.argument("name")
@click.option("--date", "day", required=True, help="The day: EDTF, or words.")
@click.option("--ceiling", default="", help="The most you would spend.")
@click.option("--hours", default="", help="The most time you would give it.")
@click.option("--note", default="")
@click.pass_obj
def start(journal: Path, name: str, day: str, ceiling: str, hours: str, note: str) -> None:
    """Begin a survey."""
    with open_journal(journal) as session:
        most = parse_money(ceiling, car(session).currency) if ceiling else None
        minutes = parse_time(hours) if hours else None
        begun = Survey(SurveyId(0), name.strip(), parse(day), most, minutes, 0, note)
        made = actions.start_survey(session, begun)
    tell(f"Survey {made.made} begun.")


@command.command("add")
@click.argument("what")
@_OF
@click.option("--panel", default="", help="On which panel.")
@click.option(
    "--severity", type=click.Choice([s.value for s in Severity]), default=Severity.SURFACE.value
)
@click.option("--money", default="0", help="Best, likely, worst with / between: 40/90/320.")
@click.option("--hours", default="0", help="The same for hours: 6/12/40.")
@click.option("--area", default="", help="The repair area it belongs to.")
@click.option("--cause", default="", help="What makes it worse together with others.")
@click.option("--strength", type=float, help="Of the cause, 0 to 1; 0.5 for a new one.")
@click.option("--note", default="")
@click.pass_obj
def add(journal: Path, /, what: str, name: str, money: str, hours: str, **said: Any) -> None:
    """Record a finding in the latest open survey, or the one named."""
    with open_journal(journal) as session:
        survey = _open(session, name)
        currency = car(session).currency
        found = Finding(
            id=FindingId(0),
            survey_id=survey.id,
            text=what.strip(),
            severity=Severity(said["severity"]),
            money=_three(money, lambda text: parse_money(text, currency)),
            minutes=_three(hours, parse_time),
            panel_id=find_panel(session, said["panel"]).id if said["panel"] else None,
            area_id=find_area(session, said["area"]).id if said["area"] else None,
            note=said["note"],
        )
        made = actions.add_finding(session, found, _cause(session, survey.id, said))
        number = actions.finding(session, FindingId(made.made or 0)).rank
    tell(f"Finding {number} of “{survey.name}” recorded.")


@command.command("close")
@_OF
@click.pass_obj
def close(journal: Path, name: str) -> None:
    """Keep the latest open survey, or the one named, as it is now, for good."""
    with open_journal(journal) as session:
        survey = _open(session, name)
        actions.close_survey(session, survey.id)
    tell(f"“{survey.name}” is kept as it is.")


@command.command("go-on")
@click.argument("new_name")
@_OF
@click.option("--date", "day", required=True, help="The day of the new one: EDTF, or words.")
@click.pass_obj
def go_on(journal: Path, new_name: str, name: str, day: str) -> None:
    """Begin a new survey with all that another one says."""
    when: When = parse(day)
    with open_journal(journal) as session:
        survey = actions.find_survey(session, name)
        made = actions.go_on_from(session, survey.id, new_name, when)
    tell(f"Survey {made.made} begun with all that “{survey.name}” says.")


def _open(session: Session, name: str) -> Survey:
    """The survey named, or else the latest that is open; the latest of all where none is."""
    still = [one for one in actions.surveys(session) if one.closed is None]
    return still[-1] if still and not name.strip() else actions.find_survey(session, name)


def _list(journal: Path, *, as_json: bool) -> None:
    with open_journal(journal, read_only=True) as session:
        found, currency = actions.surveys(session), car(session).currency
    if as_json:
        answer([_survey(one) for one in found])
        return
    rows = [
        (
            str(one.id),
            one.name,
            spoken(one.when),
            "" if one.ceiling is None else format_money(one.ceiling, currency),
            "closed" if one.closed else "open",
        )
        for one in found
    ]
    table(("id", "survey", "day", "ceiling", ""), rows, right=frozenset({0, 3}))


def _three(text: str, read: Callable[[str], int]) -> Three:
    parts = [read(part) for part in text.split("/")]
    if len(parts) not in (1, 3):
        raise JournalError(f"“{text}”: give one figure, or best/likely/worst.")
    return Three(parts[0], parts[len(parts) // 2], parts[-1])


def _cause(session: Session, survey_id: SurveyId, said: dict[str, Any]) -> Cause | None:
    name = said["cause"].strip()
    if not name:
        return None
    known = [one for one in actions.sheet(session, survey_id).causes if one.name == name]
    strength = said["strength"]
    if strength is None:
        strength = known[0].strength if known else _STRENGTH
    return Cause(CauseId(0), survey_id, name, strength)


def _tell_sheet(
    sheet: SurveySheet, estimate: Estimate, labels: dict[Any, str], currency: str
) -> None:
    survey = sheet.survey
    kept = "closed" if survey.closed else "open"
    tell(f"{survey.name}, {spoken(survey.when)}, {kept}; {estimate.count} findings.")
    parts = {weight.finding_id: weight.part for weight in estimate.money.weights}
    rows = [
        (
            str(one.rank),
            labels.get(one.panel_id, ""),
            one.text,
            one.severity.value,
            format_money(one.money.likely, currency),
            f"{one.minutes.likely / 60:g} h",
            f"{parts[one.id]:.0%}",
        )
        for one in sheet.findings
    ]
    headings = ("", "panel", "finding", "how bad", "likely", "hours", "of the doubt")
    table(headings, rows, right=frozenset({0, 4, 5, 6}))
    table(
        ("", "mean", "spread", "50 %", "80 %", "90 %", "under the ceiling"),
        [
            _cells("money", estimate.money, lambda n: format_money(round(n), currency)),
            _cells("hours", estimate.minutes, lambda n: f"{n / 60:,.0f} h"),
        ],
        right=frozenset(range(1, 7)),
    )
    tell(ways_in_words(estimate.money, has_causes=estimate.has_causes))


def _cells(title: str, outlook: Outlook, written: Callable[[float], str]) -> tuple[str, ...]:
    drawn = outlook.drawn
    under = "" if drawn.under is None else chance_in_words(drawn.under)
    figures = (drawn.mean, drawn.deviation, *drawn.figures)
    return (title, *(written(figure) for figure in figures), under)


def _survey(survey: Survey) -> dict[str, Any]:
    return {
        "id": survey.id,
        "name": survey.name,
        "date": survey.when.edtf,
        "ceiling": survey.ceiling,
        "ceiling_minutes": survey.ceiling_minutes,
        "closed": survey.closed,
        "seed": survey.seed,
        "note": survey.note or None,
    }


def _finding(
    one: Finding, sheet: SurveySheet, labels: dict[Any, str], names: dict[Any, str]
) -> dict[str, Any]:
    cause = sheet.cause_of(one)
    return {
        "id": one.id,
        "number": one.rank,
        "panel": labels.get(one.panel_id),
        "text": one.text,
        "severity": one.severity.value,
        "money": [one.money.best, one.money.likely, one.money.worst],
        "minutes": [one.minutes.best, one.minutes.likely, one.minutes.worst],
        "area": names.get(one.area_id),
        "cause": cause.name if cause else None,
        "strength": cause.strength if cause else None,
        "note": one.note or None,
    }


def _outlook(outlook: Outlook) -> dict[str, Any]:
    ways = {}
    for name, way in (("simulated", outlook.drawn), ("formula", outlook.formula)):
        figures = zip(LEVELS, way.figures, strict=True)
        ways[name] = {
            "mean": way.mean,
            "deviation": way.deviation,
            **{f"p{level * 100:.0f}": figure for level, figure in figures},
            "under": way.under,
        }
    weights = [
        {"finding": w.finding_id, "part": w.part, "at_best": w.at_best, "at_worst": w.at_worst}
        for w in outlook.weights
    ]
    return {**ways, "weights": weights}


def _outcome(held: Outcome) -> dict[str, Any]:
    return {
        "areas": [
            {
                "area": area.name,
                "expected": area.expected,
                "expected_minutes": area.expected_minutes,
                "money": area.money,
                "minutes": area.minutes,
                "finished": area.finished,
            }
            for area in held.areas
        ],
        "ratio": held.ratio.ratio if held.ratio else None,
        "ratio_hours": held.ratio_minutes.ratio if held.ratio_minutes else None,
        "rests_on": held.finished,
        "to_come": held.to_come,
        "to_come_minutes": held.to_come_minutes,
        "loose": held.loose,
    }
