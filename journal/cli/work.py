"""restoration-journal work: record hours."""

from datetime import date
from pathlib import Path

import click

from journal.actions.areas import area, find_area
from journal.actions.hours import record_work
from journal.actions.journals import open_journal
from journal.actions.quick_hours import record_hours, understand_hours
from journal.actions.session import Session
from journal.actions.settings import load_settings
from journal.cli.options import journal_argument
from journal.cli.output import tell
from journal.domain.errors import JournalError
from journal.domain.hours import parse_hours
from journal.domain.ids import WorkId
from journal.domain.receipts import Share
from journal.domain.when import parse, spoken
from journal.domain.work import Work


@click.command("work")
@journal_argument
@click.argument("words", nargs=-1)
@click.option("--date", "day", help='The day: EDTF, or words like "3 March 2016".')
@click.option("--hours", help='"3", "3.5", "3:30", "2h 15" or "45 min".')
@click.option("--person", default="", help="Who worked.")
@click.option("--area", "areas", multiple=True, help="Repair area worked on. Repeatable.")
@click.option("--note", default="", help="What was done.")
def command(
    journal: Path,
    words: tuple[str, ...],
    day: str | None,
    hours: str | None,
    person: str,
    areas: tuple[str, ...],
    note: str,
) -> None:
    """Record hours in JOURNAL: in WORDS, or by options.

    WORDS are one line like "3h weld sill left with Nils yesterday": the time worked, a day, who
    helped and what for, in any order. By options, --date, --hours and --person are needed, and the
    hours are shared evenly over the repair areas given.
    """
    with open_journal(journal) as session:
        if words:
            _from_words(session, " ".join(words), person or load_settings().person)
            return
        if not (day and hours):
            raise JournalError("Give the hours in words, or --date, --hours and --person.")
        found = dict.fromkeys(find_area(session, name).id for name in areas)
        shares = tuple(Share(area_id, 1) for area_id in found)
        work = Work(WorkId(0), parse(day), parse_hours(hours), person, note, shares)
        tell(record_work(session, work).label + ".")


def _from_words(session: Session, text: str, me: str) -> None:
    line = understand_hours(session, text, me, date.today())
    changes = record_hours(session, line)
    place = area(session, line.area_id).name if line.area_id is not None else "no repair area"
    tell(f"{changes.label}, {spoken(line.when)}, for {place}.")
