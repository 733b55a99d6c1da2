"""What stands on the cover: the best photo, the years it took, and the main figures."""

from collections import Counter
from collections.abc import Iterable
from datetime import datetime

from journal.domain.car import Car, MilestoneKind
from journal.domain.costs import CostSummary
from journal.domain.cuts import Choices, Part
from journal.domain.money import format_money
from journal.domain.photos import Kind, Photo, Role
from journal.domain.private_words import Private
from journal.domain.record import Record
from journal.domain.seam_sums import sums
from journal.domain.when import When
from journal.dossier.document import Labelled
from journal.dossier.words import hours

_DONE = frozenset({MilestoneKind.PAINTED, MilestoneKind.ON_THE_ROAD})


def cover_photo(record: Record) -> Photo | None:
    """The photo that shows the car best, None where there is no whole picture.

    Finished beats unfinished (taken after the paint or chosen as an "after"), then the whole car
    a part of it: a photo pinned to one panel, or chosen for a repair area, is of a part. Then
    count the day of a turning point, a caption, a wide picture, and last the latest.
    """
    roles = {row.photo_id: row.role for row in record.area_photos}
    panels = Counter(pin.photo_id for pin in record.pins)
    turned = [m.when for m in record.milestones if m.kind in _DONE]
    done = min((when.earliest for when in turned), default=datetime.max)

    def merit(photo: Photo) -> tuple[bool, int, bool, bool, bool, datetime]:
        role = roles.get(photo.id)
        taken = photo.when.earliest if photo.when else datetime.min
        return (
            role is Role.AFTER or (role is None and taken >= done),
            _breadth(panels[photo.id], role),
            any(when.earliest <= taken <= when.latest for when in turned),
            bool(photo.caption.strip()),
            photo.width >= photo.height,
            taken,
        )

    whole = [p for p in record.photos if p.kind is Kind.PICTURE and not p.damage]
    return max(whole, key=merit, default=None)


def _breadth(panels: int, role: Role | None) -> int:
    """How much of the car a photo is likely to show: several panels, perhaps all, or a part."""
    if panels > 1:
        return 2
    return 1 if panels == 0 and role is None else 0


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


def figures(
    record: Record, summary: CostSummary, shown: int, choices: Choices
) -> tuple[Labelled, ...]:
    """The car's record in a few figures; what is nothing, or not in this document, is left out."""
    stages = record.car.stages
    finished = sum(bool(stages) and area.stage == stages[-1] for area in record.areas)
    areas = len(record.areas)
    has_money = choices.has(Part.MONEY) and Private.PRICES not in record.withheld
    money = summary.restoration if has_money else 0
    minutes = summary.minutes if choices.has(Part.HOURS) else 0
    drawn = sums(record.seams, record.seam_changes).welded if choices.has(Part.METAL) else 0
    rows = [
        (areas, f"{finished:,} of {areas:,}", "repair areas finished"),
        (money, format_money(money, summary.currency), "restoration"),
        (drawn, f"{drawn / 1000:.1f} m", "of seam welded"),
        (minutes, hours(_to_hour(minutes)), "of work"),
        (len(record.photos), f"{len(record.photos):,}", _photos_label(len(record.photos), shown)),
    ]
    told = [Labelled(label, value) for amount, value, label in rows if amount]
    return tuple(told if len(told) < 5 else [row for row in told if row.label != "of seam welded"])


def _to_hour(minutes: int) -> int:
    return round(minutes / 60) * 60 if minutes >= 600 else minutes


def _photos_label(photos: int, shown: int) -> str:
    noun = "photo" if photos == 1 else "photos"
    return noun if shown == photos else f"{noun}, {shown:,} shown here"
