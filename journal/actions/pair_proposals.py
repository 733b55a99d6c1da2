"""Which photos of a repair area may show one view, before and after; nothing is kept here."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from journal.actions.pairs import found_fit
from journal.actions.pictures import picture
from journal.actions.proposals import looks_of_all
from journal.actions.session import Session
from journal.domain.errors import JournalError
from journal.domain.ids import AreaId, PhotoId
from journal.domain.pairs import SIDE, Candidate, Fit, PairProposal, promise
from journal.domain.photos import Photo, Role
from journal.domain.progress import Context, Silent

if TYPE_CHECKING:
    from journal.domain.pictures import Picture
    from journal.vision.aligning import Features

#: Of each side so many photos are looked at, the earliest before and the latest after.
_MOST_PHOTOS = 24
#: So many pairs that promise most are looked at closely; it takes a second or two each.
_CLOSELY = 8
#: So many are proposed for a repair area.
_MOST = 3


def propose_pairs(
    session: Session, area_id: AreaId, context: Context | None = None
) -> tuple[PairProposal, ...]:
    """Photos of a repair area that may show one view before and after, the likeliest first.

    Those that lie on each other come first, by how many spots agree; without any, the pair that
    looks most alike. Pairs that are kept already are left out.

    Raises:
        JournalError: there is no such area.
        Cancelled: the person asked to stop.
    """
    told = context or Silent()
    before, after = _candidates(session, area_id)
    kept = {(p.before_id, p.after_id) for p in session.journal.pairs.of_area(area_id)}
    ranked = _by_promise(session, before, after, told)
    ranked = [row for row in ranked if (row[1], row[2]) not in kept]
    closely = ranked[:_CLOSELY]
    looker = _Looker(session)
    found = []
    for done, (_, first, second, likeness) in enumerate(closely):
        told.checkpoint()
        told.report(done, len(closely), "Laying photos over each other")
        fit = looker.fit(first, second)
        found.append(PairProposal(area_id, first, second, likeness, fit))
    laid = sorted(
        (row for row in found if row.fit is not None),
        key=lambda row: -(row.fit.inliers or 0) if row.fit else 0,
    )
    return tuple(laid[:_MOST]) or tuple(found[:1])


def propose_all(
    session: Session, context: Context | None = None
) -> tuple[tuple[PairProposal, ...], ...]:
    """The same for every repair area that has no pair yet and photos of both sides.

    Raises:
        Cancelled: the person asked to stop.
    """
    told = context or Silent()
    have = {pair.area_id for pair in session.journal.pairs.all()}
    areas = [area for area in session.journal.areas.all() if area.id not in have]
    found = []
    for done, area in enumerate(areas):
        told.checkpoint()
        told.report(done, len(areas), f"Looking for a before and after of {area.name}")
        found.append(propose_pairs(session, area.id))
    return tuple(rows for rows in found if rows)


def _candidates(
    session: Session, area_id: AreaId
) -> tuple[tuple[Candidate, ...], tuple[Candidate, ...]]:
    """The photos that may be before and after: as chosen by the owner, else by pins and dates."""
    journal = session.journal
    area = journal.areas.get(area_id)
    roles = {row.photo_id: row.role for row in journal.areas.photos_of(area_id)}
    by_id = {photo.id: photo for photo in journal.photos.of_area(area_id)}
    for panel_id in area.panel_ids:
        by_id.update((photo.id, photo) for photo in journal.photos.on_panel(panel_id))
    photos = sorted(by_id.values(), key=_in_time)
    before = [p for p in photos if roles.get(p.id) is Role.BEFORE]
    after = [p for p in photos if roles.get(p.id) is Role.AFTER]
    dated = [p for p in photos if p.when is not None and p.id not in roles]
    if area.changes:
        # What was taken before the metal was touched, and once the last stage was reached.
        begun = (area.changes[1:2] or area.changes[:1])[0].when.earliest
        ended = area.changes[-1].when.earliest
        before = before or [p for p in dated if p.when and p.when.latest < begun]
        later = [p for p in dated if p.when and p.when.earliest >= ended and ended > begun]
        after = after or later
    after.reverse()
    return _as_candidates(session, before), _as_candidates(session, after)


def _as_candidates(session: Session, photos: Sequence[Photo]) -> tuple[Candidate, ...]:
    made = []
    for rank, photo in enumerate(photos[:_MOST_PHOTOS]):
        facings = tuple(
            (int(pin.view_id), pin.facing)
            for pin in session.journal.pins.of_photo(photo.id)
            if pin.view_id is not None and pin.facing is not None
        )
        made.append(Candidate(photo.id, rank, facings))
    return tuple(made)


def _in_time(photo: Photo) -> tuple[str, int]:
    return photo.when.earliest.isoformat() if photo.when else "9999", photo.id


def _by_promise(
    session: Session,
    before: Sequence[Candidate],
    after: Sequence[Candidate],
    told: Context,
) -> list[tuple[float, PhotoId, PhotoId, float]]:
    """Every before with every after: promise, the two, and how alike they look; best first."""
    if not before or not after:
        return []
    first = looks_of_all(session, [one.photo_id for one in before], told)
    second = looks_of_all(session, [one.photo_id for one in after], told)
    alike = first @ second.T
    rows = [
        (promise(a, b, float(alike[i, j])), a.photo_id, b.photo_id, float(alike[i, j]))
        for i, a in enumerate(before)
        for j, b in enumerate(after)
        if a.photo_id != b.photo_id
    ]
    return sorted(rows, key=lambda row: (-row[0], row[1], row[2]))


class _Looker:
    """Lays photos over each other, looking at each of them once."""

    def __init__(self, session: Session) -> None:
        self._session = session
        self._known: dict[PhotoId, tuple[Photo, Picture, Features] | None] = {}

    def fit(self, before: PhotoId, after: PhotoId) -> Fit | None:
        """How the second lies on the first; None where that can't be told."""
        from journal.vision.aligning import lay

        first, second = self._look(before), self._look(after)
        if first is None or second is None:
            return None
        laid = lay(first[2], second[2])
        if laid is None:
            return None
        shown, photos = (first[1], second[1]), (first[0], second[0])
        return found_fit(laid.matrix, shown, photos, laid.inliers, laid.error_px)

    def _look(self, photo_id: PhotoId) -> tuple[Photo, Picture, Features] | None:
        from journal.vision.aligning import features
        from journal.vision.overlaying import pixels_of

        if photo_id not in self._known:
            photo = self._session.journal.photos.get([photo_id])[0]
            try:
                shown = picture(self._session, photo, SIDE)
            except JournalError:
                self._known[photo_id] = None
            else:
                # The pixels themselves are not wanted again, only their size.
                found = features(pixels_of(shown))
                bare = type(shown)(shown.width, shown.height, b"")
                self._known[photo_id] = photo, bare, found
        return self._known[photo_id]
