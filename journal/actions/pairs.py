"""Laying an after photo over a before: how it is found or shown by hand, kept and changed."""

from collections.abc import Sequence
from dataclasses import replace
from typing import TYPE_CHECKING, Any

from journal.actions.pictures import picture
from journal.actions.session import Session
from journal.domain.areas import Area
from journal.domain.changes import Changes
from journal.domain.errors import JournalError
from journal.domain.homographies import Matrix, inverse, mapped
from journal.domain.ids import AreaId, PairId, PhotoId
from journal.domain.pairs import (
    SIDE,
    SIDE_BY_SIDE,
    Fit,
    How,
    Pair,
    PointPair,
    as_kept,
    as_shown,
    check_caption,
    check_points,
    common_part,
    in_shares,
    turn_map,
)
from journal.domain.photos import Photo, Role
from journal.domain.pictures import Picture
from journal.domain.progress import Context, Silent
from journal.domain.shapes import Point

if TYPE_CHECKING:
    from numpy.typing import NDArray

#: Errors are kept to a thousandth of a pixel: nobody can show spots better.
_DECIMALS = 3


def pairs(session: Session) -> tuple[Pair, ...]:
    """Every pair whose photos are there, area by area, in the owner's order."""
    return session.journal.pairs.all()


def area_pairs(session: Session, area_id: AreaId) -> tuple[Pair, ...]:
    """The pairs of one repair area, in the owner's order."""
    return session.journal.pairs.of_area(area_id)


def photo_pairs(session: Session, photo_id: PhotoId) -> tuple[tuple[Pair, Area], ...]:
    """The pairs that a photo is one half of, each with its repair area."""
    found = session.journal.pairs.of_photo(photo_id)
    return tuple((pair, session.journal.areas.get(pair.area_id)) for pair in found)


def pair(session: Session, pair_id: PairId) -> Pair:
    """One pair.

    Raises:
        JournalError: there is none of that number, or one of its photos was removed.
    """
    return session.journal.pairs.get(pair_id)


def pinned_photos(session: Session, area: Area) -> tuple[Photo, ...]:
    """The photos pinned to a repair area's panels, panel by panel in order of time, each once."""
    found: dict[PhotoId, Photo] = {}
    for panel_id in area.panel_ids:
        found.update((photo.id, photo) for photo in session.journal.photos.on_panel(panel_id))
    return tuple(found.values())


# --- how one lies on the other


def find_fit(
    session: Session, before: Photo, after: Photo, context: Context | None = None
) -> Fit | None:
    """How the after photo lies on the before, by what both show; None where that can't be told.

    What is found has to be looked at by the owner: now and then it is wrong.

    Raises:
        JournalError: an original is missing or can't be decoded, named with the reason.
        Cancelled: the person asked to stop.
    """
    from journal.vision.aligning import features, lay

    told = context or Silent()
    shown = []
    for done, photo in enumerate((before, after)):
        told.checkpoint()
        told.report(done, 3, f"Looking at {photo.name}")
        shown.append(picture(session, photo, SIDE))
    told.checkpoint()
    told.report(2, 3, "Laying one over the other")
    first, second = (features(_pixels(one)) for one in shown)
    told.checkpoint()
    laid = lay(first, second)
    if laid is None:
        return None
    return found_fit(laid.matrix, shown, (before, after), laid.inliers, laid.error_px)


def found_fit(
    matrix: Matrix,
    shown: Sequence[Picture],
    photos: tuple[Photo, Photo],
    inliers: int,
    error_px: float,
) -> Fit | None:
    """A fit between pixels of two pictures as it is kept; None where they share too little."""
    before, after = shown
    shares = in_shares(matrix, (before.width, before.height), (after.width, after.height))
    kept = as_kept(shares, photos[0].turn, photos[1].turn)
    try:
        common_part(kept)
    except JournalError:
        return None
    return Fit(How.FOUND, kept, (), round(error_px, _DECIMALS), inliers)


def fit_by_hand(before: Photo, after: Photo, points: Sequence[PointPair]) -> Fit:
    """How the after photo lies on the before, by spots shown on both as they are shown upright.

    Raises:
        JournalError: too few points, they determine nothing, or the photos share too little.
    """
    from journal.vision.aligning import lay_by_hand

    check_points(points)
    first, second = _size(before), _size(after)
    rows = [
        ((p.before.x * first[0], p.before.y * first[1]),
         (p.after.x * second[0], p.after.y * second[1]))
        for p in points
    ]  # fmt: skip
    laid = lay_by_hand(rows)
    matrix = as_kept(in_shares(laid.matrix, first, second), before.turn, after.turn)
    common_part(matrix)
    back = inverse(turn_map(before.turn)), inverse(turn_map(after.turn))
    kept = tuple(PointPair(mapped(back[0], p.before), mapped(back[1], p.after)) for p in points)
    return Fit(How.BY_HAND, matrix, kept, round(laid.error_px, _DECIMALS))


def shown_points(before: Photo, after: Photo, fit: Fit) -> tuple[PointPair, ...]:
    """The points that a fit was made by, on the photos as they are shown now."""
    first, second = turn_map(before.turn), turn_map(after.turn)
    return tuple(
        PointPair(Point(*mapped(first, p.before)), Point(*mapped(second, p.after)))
        for p in fit.points
    )


def shown_matrix(before: Photo, after: Photo, fit: Fit) -> Matrix | None:
    """A fit's matrix between the photos as they are shown now, in shares."""
    return None if fit.matrix is None else as_shown(fit.matrix, before.turn, after.turn)


def _size(photo: Photo) -> tuple[float, float]:
    """Width and height as shown, in pixels of a picture whose longer side is ``SIDE``."""
    wide, high = (photo.width or SIDE), (photo.height or SIDE)
    if photo.turn % 180:
        wide, high = high, wide
    scale = SIDE / max(wide, high)
    return wide * scale, high * scale


def _pixels(shown: Picture) -> "NDArray[Any]":
    from journal.vision.overlaying import pixels_of

    return pixels_of(shown)


# --- keeping


def keep_pair(
    session: Session,
    area_id: AreaId,
    before_id: PhotoId,
    after_id: PhotoId,
    fit: Fit = SIDE_BY_SIDE,
    caption: str = "",
) -> Changes:
    """Keep two photos of a repair area as a pair; one of the same two photos is replaced.

    Photos not chosen for the area yet are chosen for it, before and after.

    Raises:
        JournalError: it is one photo twice, there is no such area or photo, or the fit is unsound.
    """
    journal = session.journal
    area = journal.areas.get(area_id)
    if before_id == after_id:
        raise JournalError("A pair is of two photos; this is one and the same.")
    journal.photos.get([before_id, after_id])
    if fit.matrix is not None:
        common_part(fit.matrix)
    caption = check_caption(caption)
    with journal.edit(f"Keep a before and after of “{area.name}”") as edit:
        chosen = {row.photo_id for row in journal.areas.photos_of(area_id)}
        for photo_id, role in ((before_id, Role.BEFORE), (after_id, Role.AFTER)):
            if photo_id not in chosen:
                journal.areas.choose_photo(area_id, photo_id, role)
        made = journal.pairs.keep(Pair(PairId(0), area_id, before_id, after_id, fit, caption))
    return edit.changes(made)


def change_pair(session: Session, pair_id: PairId, fit: Fit) -> Changes:
    """Lay a pair anew.

    Raises:
        JournalError: there is no such pair, or the fit is unsound.
    """
    known = session.journal.pairs.get(pair_id)
    if fit.matrix is not None:
        common_part(fit.matrix)
    with session.journal.edit("Lay a before and after anew") as edit:
        session.journal.pairs.keep(replace(known, fit=fit))
    return edit.changes()


def set_pair_caption(session: Session, pair_id: PairId, caption: str) -> Changes:
    """Say what a pair shows.

    Raises:
        JournalError: there is no such pair, or the caption is too long.
    """
    session.journal.pairs.get(pair_id)
    caption = check_caption(caption)
    with session.journal.edit("Change the caption of a before and after") as edit:
        session.journal.pairs.set_caption(pair_id, caption)
    return edit.changes()


def order_pairs(session: Session, area_id: AreaId, pair_ids: Sequence[PairId]) -> Changes:
    """Bring a repair area's pairs into an order.

    Raises:
        JournalError: these are not all the area's pairs, each once.
    """
    known = session.journal.pairs.of_area(area_id)
    if sorted(pair_ids) != sorted(one.id for one in known):
        raise JournalError("The order has to name every pair of the repair area once.")
    with session.journal.edit("Put the pairs of a repair area in order") as edit:
        session.journal.pairs.set_order(pair_ids)
    return edit.changes()


def remove_pair(session: Session, pair_id: PairId) -> Changes:
    """Take a pair out; its photos stay."""
    with session.journal.edit("Take a before and after apart") as edit:
        session.journal.pairs.remove(pair_id)
    return edit.changes()
