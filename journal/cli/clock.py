"""restoration-journal clock: clock on and off."""

from dataclasses import replace
from datetime import datetime
from pathlib import Path

import click

from journal.actions import clockings as actions
from journal.actions.areas import find_area
from journal.actions.journals import open_journal
from journal.actions.session import Session
from journal.actions.settings import load_settings
from journal.cli.options import journal_argument, json_option
from journal.cli.output import answer, table, tell
from journal.domain.clockings import Clocking, read_moment, spoken_moment
from journal.domain.errors import JournalError
from journal.domain.hours import parse_hours, spoken_hours
from journal.domain.people import same_name
from journal.domain.receipts import Share


@click.command("clock")
@journal_argument
@click.argument("what", type=click.Choice(("on", "off", "show", "away")))
@click.option("--person", default="", help="Whose clock; who worked last where it is left out.")
@click.option("--area", "areas", multiple=True, help="Repair area worked on. Repeatable.")
@click.option("--note", default="", help="What is being done.")
@click.option("--at", help='When it started or stopped: "19:40", "yesterday 19:40"; else now.')
@click.option("--hours", help="What to record; else the time run, to the nearest five minutes.")
@json_option
def command(
    journal: Path,
    what: str,
    person: str,
    areas: tuple[str, ...],
    note: str,
    at: str | None,
    hours: str | None,
    as_json: bool,
) -> None:
    """Clock on when work begins in JOURNAL, and off when it ends; "show" who is clocked on.

    "off" records the hours, over midnight those of each day; "away" stops the clock and records
    nothing. The clock is in the journal from the moment it is started.

    With --json: for "show", a list of objects with id, person, started (ISO 8601), minutes, areas
    (numbers) and note.
    """
    if what == "show":
        with open_journal(journal, read_only=True) as session:
            _show(actions.running(session), as_json)
        return
    with open_journal(journal) as session:
        shares = tuple(Share(find_area(session, name).id, 1) for name in dict.fromkeys(areas))
        moment = _moment(at)
        if what == "on":
            who = person or load_settings().person
            tell(actions.clock_on(session, who, shares, note, moment).label + ".")
            return
        clock = _meant(session, person)
        if what == "away":
            tell(actions.throw_away(session, clock.id).label + ".")
            return
        wanted = replace(clock, shares=shares or clock.shares, note=note or clock.note)
        minutes = parse_hours(hours) if hours else None
        tell(actions.clock_off(session, wanted, moment, minutes).label + ".")


def _moment(text: str | None) -> datetime | None:
    if text is None:
        return None
    return actions.local(read_moment(text, actions.now().replace(tzinfo=None)))


def _meant(session: Session, person: str) -> Clocking:
    """The clock of that person, or the only one that runs."""
    running = actions.running(session)
    found = [one for one in running if not person or same_name(one.person) == same_name(person)]
    if len(found) == 1:
        return found[0]
    if not found:
        raise JournalError(f"No clock runs{f' for {person}' if person else ''}.")
    names = " and ".join(one.person for one in found)
    raise JournalError(f"The clocks of {names} run; say whose with --person.")


def _show(running: tuple[Clocking, ...], as_json: bool) -> None:
    now = actions.now()
    # One that was forgotten for days is still to be shown, with all the time that went by.
    passed = [max(0, int((now - one.started).total_seconds() // 60)) for one in running]
    if as_json:
        answer([_row(one, minutes) for one, minutes in zip(running, passed, strict=True)])
    elif not running:
        tell("No clock runs.")
    else:
        rows = (
            (one.person, spoken_moment(one.started, now.date()), spoken_hours(minutes), one.note)
            for one, minutes in zip(running, passed, strict=True)
        )
        table(("person", "since", "runs", "note"), rows, right=frozenset({2}))


def _row(one: Clocking, minutes: int) -> dict[str, object]:
    return {
        "id": one.id,
        "person": one.person,
        "started": one.started.isoformat(),
        "minutes": minutes,
        "areas": [share.area_id for share in one.shares],
        "note": one.note,
    }
