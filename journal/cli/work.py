"""restoration-journal work: record hours."""

from pathlib import Path

import click

from journal.actions.areas import find_area
from journal.actions.hours import record_work
from journal.actions.journals import open_journal
from journal.cli.options import journal_argument
from journal.cli.output import tell
from journal.domain.hours import parse_hours
from journal.domain.ids import WorkId
from journal.domain.receipts import Share
from journal.domain.when import parse
from journal.domain.work import Work


@click.command("work")
@journal_argument
@click.option("--date", "date", required=True, help='The day: EDTF, or words like "3 March 2016".')
@click.option("--hours", required=True, help='"3", "3.5", "3:30", "2h 15" or "45 min".')
@click.option("--person", required=True, help="Who worked.")
@click.option("--area", "areas", multiple=True, help="Repair area worked on. Repeatable.")
@click.option("--note", default="", help="What was done.")
def command(
    journal: Path, date: str, hours: str, person: str, areas: tuple[str, ...], note: str
) -> None:
    """Record hours in JOURNAL, shared evenly over the repair areas given."""
    with open_journal(journal) as session:
        found = dict.fromkeys(find_area(session, name).id for name in areas)
        shares = tuple(Share(area_id, 1) for area_id in found)
        work = Work(WorkId(0), parse(date), parse_hours(hours), person, note, shares)
        changes = record_work(session, work)
    tell(changes.label + ".")
