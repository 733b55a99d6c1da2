"""What stands on the cover: the best photo, the years it took, and the main figures."""

from collections import Counter
from collections.abc import Iterable
from datetime import datetime

from journal.domain.car import Car, MilestoneKind
from journal.domain.costs import CostSummary
from journal.domain.ids import PhotoId
from journal.domain.money import format_money
from journal.domain.photos import Kind, Photo, Role
from journal.domain.record import Record
from journal.domain.when import When
from journal.dossier.document import Labelled
from journal.dossier.words import hours

_DONE = frozenset({MilestoneKind.PAINTED, MilestoneKind.ON_THE_ROAD})


def cover_photo(record: Record) -> Photo | None:
    """The photo that shows the car best, None where there is no whole picture.

    Finished beats unfinished (taken after the paint or chosen as an "after"), then a photo pinned
    to more of the car, then an upright one lies behind a wide one, then the latest.
    """
    afters = {row.photo_id for row in record.area_photos if row.role is Role.AFTER}
    befores = {row.photo_id for row in record.area_photos if row.role is not Role.AFTER}
    panels = Counter(pin.photo_id for pin in record.pins)
    done = [m.when.earliest for m in record.milestones if m.kind in _DONE]

    def merit(photo: Photo) -> tuple[bool, bool, int, bool, datetime]:
        taken = photo.when.earliest if photo.when else datetime.min
        shows_car = bool(done) and taken >= min(done) and photo.id not in befores
        return (
            shows_car or photo.id in afters,
            photo.id not in befores,
            panels[photo.id],
            photo.width >= photo.height,
            taken,
        )

    whole = [p for p in record.photos if p.kind is Kind.PICTURE and not p.damage]
    return max(whole, key=merit, default=None)


def subtitle(car: Car) -> str:
    """Maker, model and year, as far as they are known and the title doesn't say them."""
    said = car.title.casefold()
    parts = [part.strip() for part in (car.maker, car.model) if part.strip()]
    name = " ".join(parts)
    known = [name] if name and name.casefold() != said else []
    return " · ".join([*known, *([car.year.strip()] if car.year.strip() else [])])


def period(record: Record) -> str:
    """The years the record spans: "2015 to 2021"; "" where nothing is dated."""
    whens = [
        *(m.when for m in record.milestones),
        *(change.when for area in record.areas for change in area.changes),
        *(receipt.when for receipt in record.receipts),
        *(work.when for work in record.work),
    ] or [photo.when for photo in record.photos if photo.when]
    years = sorted(_years(whens))
    if not years:
        return ""
    return str(years[0]) if years[0] == years[-1] else f"{years[0]} to {years[-1]}"


def _years(whens: Iterable[When]) -> Iterable[int]:
    for when in whens:
        if when.earliest != datetime.min:
            yield when.earliest.year
        if when.latest != datetime.max:
            yield when.latest.year


def figures(record: Record, summary: CostSummary, shown: int) -> tuple[Labelled, ...]:
    """The car's record in a few figures; what is nothing is left out."""
    stages = record.car.stages
    finished = sum(bool(stages) and area.stage == stages[-1] for area in record.areas)
    areas = len(record.areas)
    rows = (
        (areas, f"{finished:,} of {areas:,}", "repair areas finished"),
        (summary.restoration, format_money(summary.restoration, summary.currency), "restoration"),
        (summary.own_minutes, hours(_to_hour(summary.own_minutes)), "own work"),
        (len(record.photos), f"{len(record.photos):,}", _photos_label(len(record.photos), shown)),
    )
    return tuple(Labelled(label, value) for amount, value, label in rows if amount)


def _to_hour(minutes: int) -> int:
    return round(minutes / 60) * 60 if minutes >= 600 else minutes


def _photos_label(photos: int, shown: int) -> str:
    noun = "photo" if photos == 1 else "photos"
    return noun if shown == photos else f"{noun}, {shown:,} shown here"


def number_of_cover(photo: Photo | None) -> PhotoId | None:
    """The cover photo's number in the journal, None without one."""
    return photo.id if photo else None
