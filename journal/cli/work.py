"""restoration-journal work: record hours."""

from datetime import date
from pathlib import Path

import click

from journal.actions.areas import area, find_area
from journal.actions.hours import record_work
from journal.actions.journals import open_journal
from journal.actions.photo_hours import PhotoHours, days_without_hours, record_photo_hours
from journal.actions.quick_hours import record_hours, understand_hours
from journal.actions.session import Session
from journal.actions.settings import load_settings
from journal.cli.options import journal_argument, json_option
from journal.cli.output import answer, table, tell
from journal.domain.errors import JournalError
from journal.domain.hours import parse_hours, spoken_hours
from journal.domain.ids import WorkId
from journal.domain.photo_spans import PhotoDay
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
@click.option("--photos", is_flag=True, help="Hours from photos: list the days, or record --date.")
@json_option
def command(
    journal: Path,
    words: tuple[str, ...],
    day: str | None,
    hours: str | None,
    person: str,
    areas: tuple[str, ...],
    note: str,
    photos: bool,
    as_json: bool,
) -> None:
    """Record hours in JOURNAL: in WORDS, or by options.

    WORDS are one line like "3h weld sill left with Nils yesterday": the time worked, a day, who
    helped and what for, in any order. By options, --date, --hours and --person are needed, and the
    hours are shared evenly over the repair areas given.

    --photos lists the days with photos and no hours, with the time from first to last shot; with
    --date and --person it records that day's, marked as a lower bound.

    With --json: for --photos alone, a list of objects with day, minutes, first and last (ISO 8601),
    photos and cameras (how many) and areas (numbers).
    """
    if photos and not day:
        with open_journal(journal, read_only=True) as session:
            _list_photo_days(session, as_json)
        return
    with open_journal(journal) as session:
        if words:
            _from_words(session, " ".join(words), person or load_settings().person)
            return
        if photos and day:
            _from_photos(session, day, person or load_settings().person, areas, note)
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


def _list_photo_days(session: Session, as_json: bool) -> None:
    days = days_without_hours(session)
    if as_json:
        answer([_day_row(day) for day in days])
        return
    if not days:
        tell("No day has photos and no hours.")
        return
    rows = (
        (
            day.day.isoformat(),
            f"{day.first.taken:%H:%M} to {day.last.taken:%H:%M}",
            spoken_hours(day.minutes),
            str(len(day.photo_ids)),
        )
        for day in days
    )
    table(("day", "first to last shot", "at least", "photos"), rows, right=frozenset({2, 3}))


def _day_row(day: PhotoDay) -> dict[str, object]:
    return {
        "day": day.day.isoformat(),
        "minutes": day.minutes,
        "first": day.first.taken.isoformat(),
        "last": day.last.taken.isoformat(),
        "photos": len(day.photo_ids),
        "cameras": day.cameras,
        "areas": list(day.area_ids),
    }


def _from_photos(
    session: Session, words: str, person: str, areas: tuple[str, ...], note: str
) -> None:
    when = parse(words)
    wanted = (when.earliest.date(), when.latest.date())
    found = [day for day in days_without_hours(session) if (day.day, day.day) == wanted]
    if not found:
        raise JournalError(f"No photos without hours show a visit on “{words}”.")
    shares = tuple(Share(find_area(session, name).id, 1) for name in dict.fromkeys(areas))
    hours = PhotoHours(found[0], person, note, shares)
    tell(record_photo_hours(session, (hours,)).label + ".")
