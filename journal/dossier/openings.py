"""The photos that stand before the repair areas: the cover, the standard views, the pairs."""

from dataclasses import dataclass

from journal.domain.cuts import Choices, Part
from journal.domain.ids import AreaId, PhotoId
from journal.domain.photos import Photo, Role
from journal.domain.record import Record
from journal.domain.standard_views import STANDARD_VIEWS
from journal.dossier import cover
from journal.dossier.document import PairShown, Shown, ViewShown
from journal.dossier.story import in_order_of_time, shown_photo


@dataclass(frozen=True, slots=True)
class Opening:
    """Them, and the numbers that photos have so far."""

    cover: Shown | None
    views: tuple[ViewShown, ...]
    pairs: tuple[PairShown, ...]
    numbers: dict[PhotoId, int]

    @property
    def shown(self) -> tuple[Shown, ...]:
        """Every photo among them, in the order of the pages."""
        rows = [self.cover] if self.cover else []
        rows += [view.shown for view in self.views if view.shown]
        return (*rows, *(photo for pair in self.pairs for photo in (pair.before, pair.after)))


def opening(record: Record, choices: Choices) -> Opening:
    """The photos that come first, numbered from 1."""
    numbers: dict[PhotoId, int] = {}
    title = record.car.title.strip() or "the car"
    best = cover.cover_photo(record)
    front = _shown(best, numbers, None, title) if best else None
    views = _views(record, numbers, title) if choices.has(Part.VIEWS) else ()
    pairs = _pairs(record, choices, numbers) if choices.has(Part.PAIRS) else ()
    return Opening(front, views, pairs, numbers)


def _shown(photo: Photo, numbers: dict[PhotoId, int], role: Role | None, place: str) -> Shown:
    number = numbers.setdefault(photo.id, len(numbers) + 1)
    return shown_photo(photo, number, role, place)


def _views(record: Record, numbers: dict[PhotoId, int], title: str) -> tuple[ViewShown, ...]:
    """Every standard view in the usual order, those without a photo too; none where none has."""
    by_id = {photo.id: photo for photo in record.photos}
    chosen = {view.name: by_id.get(view.photo_id) for view in record.standard_views}
    if not any(chosen.values()):
        return ()
    made = []
    for name in STANDARD_VIEWS:
        photo = chosen.get(name)
        place = f"{title}, {name}"
        made.append(ViewShown(name, _shown(photo, numbers, None, place) if photo else None))
    return tuple(made)


def _pairs(record: Record, choices: Choices, numbers: dict[PhotoId, int]) -> tuple[PairShown, ...]:
    """The pairs the owner kept; without, an area's first before and last after."""
    by_id = {photo.id: photo for photo in record.photos}
    made = []
    for number, area in enumerate(in_order_of_time(record), 1):
        if choices.areas and area.id not in choices.areas:
            continue
        name = area.name.strip() or "Unnamed repair area"
        for before_id, after_id, caption in _of_area(record, area.id):
            before, after = by_id.get(before_id), by_id.get(after_id)
            if before is None or after is None:
                continue
            first = _shown(before, numbers, Role.BEFORE, name)
            made.append(
                PairShown(number, name, first, _shown(after, numbers, Role.AFTER, name), caption)
            )
    return tuple(made)


def _of_area(record: Record, area_id: AreaId) -> list[tuple[PhotoId, PhotoId, str]]:
    chosen = sorted(
        (row for row in record.area_photos if row.area_id == area_id), key=lambda row: row.rank
    )
    before = [row.photo_id for row in chosen if row.role is Role.BEFORE]
    after = [row.photo_id for row in chosen if row.role is Role.AFTER]
    return [(before[0], after[-1], "")] if before and after else []
