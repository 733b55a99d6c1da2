"""The album's timeline: what happened, and the photos shown, by year and month."""

from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import datetime

from journal.domain.cuts import Part
from journal.domain.record import Record
from journal.domain.when import When, spoken
from journal.dossier.album.links import area_file
from journal.dossier.document import Dossier, Shown
from journal.dossier.words import sentence

_MONTHS = (
    "January", "February", "March", "April", "May", "June", "July", "August", "September",
    "October", "November", "December",
)  # fmt: skip

#: A year and a month; the month is 0 where it isn't known, the year 0 where nothing is.
_Place = tuple[int, int]


@dataclass(frozen=True, slots=True)
class Happening:
    """Something at a date; ``kind`` is "milestone", "stage" or "note", ``file`` the page of it."""

    start: datetime
    date: str
    kind: str
    title: str
    text: str
    file: str = ""


@dataclass(slots=True)
class Month:
    """What happened in a month, and the photos of it; ``label`` says which, without the year."""

    label: str
    happenings: list[Happening] = field(default_factory=list)
    photos: list[Shown] = field(default_factory=list)


@dataclass(slots=True)
class Year:
    """A year with its months in order; ``label`` is "No date" where no year is known."""

    label: str
    anchor: str
    months: list[Month] = field(default_factory=list)

    @property
    def photos(self) -> int:
        """How many photos of it are shown."""
        return sum(len(month.photos) for month in self.months)


def timeline(dossier: Dossier, record: Record) -> tuple[Year, ...]:
    """Every year in which something is told, in order; what has no date comes last.

    ``record`` is the one that ``dossier`` was told from, with everything withheld taken out.
    """
    months: dict[_Place, Month] = {}

    def month(when: When | None) -> Month:
        place = _place(when)
        return months.setdefault(place, Month(_label(place)))

    for when, happening in _happenings(dossier, record):
        month(when).happenings.append(happening)
    for shown in dossier.shown:
        month(shown.photo.when).photos.append(shown)
    years: dict[int, Year] = {}
    for (number, _), found in sorted(months.items(), key=lambda row: (not row[0][0], row[0])):
        label = str(number) if number else "No date"
        year = years.setdefault(number, Year(label, f"y{number}"))
        found.happenings.sort(key=lambda one: one.start)
        found.photos.sort(key=_start)
        year.months.append(found)
    return tuple(years.values())


def _happenings(dossier: Dossier, record: Record) -> Iterator[tuple[When, Happening]]:
    if dossier.choices.has(Part.MILESTONES):
        # The dossier's are these, in the same order, with their words.
        ordered = sorted(record.milestones, key=lambda one: one.when)
        for milestone, told in zip(ordered, dossier.milestones, strict=True):
            when = milestone.when
            yield when, Happening(when.earliest, told.date, "milestone", told.title, told.text)
    told_areas = {area.area_id: area for area in dossier.areas}
    for area in record.areas:
        story = told_areas.get(area.id)
        for change in area.changes if story else ():
            assert story is not None
            title = f"{story.name}: {change.stage}"
            text, file = sentence(change.note), area_file(story.number)
            when = change.when
            yield when, Happening(when.earliest, spoken(when), "stage", title, text, file)
    yield from _notes(dossier, record)


def _notes(dossier: Dossier, record: Record) -> Iterator[tuple[When, Happening]]:
    """The owner's notes, those of repair areas that aren't told left out."""
    if not dossier.choices.has(Part.NOTES):
        return
    told = {area.area_id: area for area in dossier.areas}
    known = {area.id for area in record.areas}
    panels = {panel.id: panel.label for panel in record.drawing.panels}
    for entry in record.entries:
        story = told.get(entry.area_id) if entry.area_id is not None else None
        if story is None and entry.area_id in known:
            continue
        panel = panels.get(entry.panel_id, "") if entry.panel_id is not None else ""
        title = story.name if story else panel
        file = area_file(story.number) if story else ""
        when = entry.when
        said = Happening(when.earliest, spoken(when), "note", title, entry.text.strip(), file)
        yield when, said


def _place(when: When | None) -> _Place:
    """The year and month a date falls in, as far as it tells them."""
    if when is None:
        return (0, 0)
    first, last = when.earliest, when.latest
    if first == datetime.min:
        return (0, 0) if last == datetime.max else (last.year, 0)
    is_sure = (first.year, first.month) == (last.year, last.month)
    return (first.year, first.month if is_sure else 0)


def _label(place: _Place) -> str:
    if place == (0, 0):
        return "When is not known"
    return _MONTHS[place[1] - 1] if place[1] else "Month not known"


def _start(shown: Shown) -> tuple[datetime, int]:
    when = shown.photo.when
    return (when.earliest if when else datetime.min, shown.number)
