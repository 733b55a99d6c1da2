"""The photos that stand before the repair areas: the cover, the standard views, the pairs."""

from dataclasses import dataclass

from journal.domain.cuts import Choices, Part
from journal.domain.evidence import put_right
from journal.domain.ids import AreaId, PairId, PhotoId
from journal.domain.pairs import SIDE, SIDE_BY_SIDE, Fit, How, Pair, as_shown
from journal.domain.patches import patch_sums
from journal.domain.photos import Photo, Role
from journal.domain.record import Record
from journal.domain.standard_views import STANDARD_VIEWS
from journal.dossier import cover
from journal.dossier.document import PairShown, Shown, ViewShown
from journal.dossier.story import in_order_of_time, shown_photo

#: So many pairs stand before the repair areas where the owner kept none: three pages of them.
_MOST_FOUND = 8


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
    front = _shown(record, best, numbers, None, title) if best else None
    views = _views(record, numbers, title) if choices.has(Part.VIEWS) else ()
    pairs = _pairs(record, choices, numbers) if choices.has(Part.PAIRS) else ()
    return Opening(front, views, pairs, numbers)


def _shown(
    record: Record, photo: Photo, numbers: dict[PhotoId, int], role: Role | None, place: str
) -> Shown:
    number = numbers.setdefault(photo.id, len(numbers) + 1)
    return shown_photo(photo, number, role, place, put_right(record.cameras))


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
        made.append(ViewShown(name, _shown(record, photo, numbers, None, place) if photo else None))
    return tuple(made)


def _pairs(record: Record, choices: Choices, numbers: dict[PhotoId, int]) -> tuple[PairShown, ...]:
    """The pairs the owner kept; without, the first before and last after of some repair areas."""
    by_id = {photo.id: photo for photo in record.photos}
    chosen = _kept(record) or _found(record, choices)
    made = []
    for number, area in enumerate(in_order_of_time(record), 1):
        if choices.areas and area.id not in choices.areas:
            continue
        name = area.name.strip() or "Unnamed repair area"
        for pair in chosen.get(area.id, ()):
            before, after = by_id.get(pair.before_id), by_id.get(pair.after_id)
            if before is None or after is None:
                continue
            first = _shown(record, before, numbers, Role.BEFORE, name)
            second = _shown(record, after, numbers, Role.AFTER, name)
            matrix = pair.fit.matrix and as_shown(pair.fit.matrix, before.turn, after.turn)
            how = _how(pair.fit)
            made.append(PairShown(number, name, first, second, pair.caption, matrix, how))
    return tuple(made)


def _how(fit: Fit) -> str:
    """How one photo came to lie over the other, for the reader; "" where it doesn't."""
    if not fit.is_laid:
        return ""
    way = "by the program" if fit.how is How.FOUND else f"by {len(fit.points)} points"
    error = fit.error_px
    off = "" if error is None else f", {error:.1f} pixels off in a photo {SIDE:,} long"
    return f"The after photo is laid over the before {way}{off}; both are cut to what they share."


def _kept(record: Record) -> dict[AreaId, list[Pair]]:
    found: dict[AreaId, list[Pair]] = {}
    for pair in sorted(record.pairs, key=lambda pair: pair.rank):
        found.setdefault(pair.area_id, []).append(pair)
    return found


def _found(record: Record, choices: Choices) -> dict[AreaId, list[Pair]]:
    """For some repair areas the photos before and after: those with most new metal.

    Areas of one amount come in order of time.
    """
    areas = [a for a in in_order_of_time(record) if not choices.areas or a.id in choices.areas]
    metal = {
        area.id: patch_sums(p for p in record.patches if p.area_id == area.id).area_cm2
        for area in areas
    }
    pairs = {area.id: _of_area(record, area.id) for area in areas}
    ranked = sorted((a.id for a in areas if pairs[a.id]), key=lambda a: -metal[a])
    return {area_id: pairs[area_id] for area_id in ranked[:_MOST_FOUND]}


def _of_area(record: Record, area_id: AreaId) -> list[Pair]:
    chosen = sorted(
        (row for row in record.area_photos if row.area_id == area_id), key=lambda row: row.rank
    )
    before = [row.photo_id for row in chosen if row.role is Role.BEFORE]
    after = [row.photo_id for row in chosen if row.role is Role.AFTER]
    if not before or not after:
        return []
    return [Pair(PairId(0), area_id, before[0], after[-1], SIDE_BY_SIDE)]
