"""Where unplaced photos may belong; nothing is pinned here."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime, timedelta
from typing import TYPE_CHECKING

from journal.actions import pictures
from journal.actions.session import Session
from journal.domain.ids import PhotoId
from journal.domain.photos import Photo
from journal.domain.progress import Context, Silent
from journal.domain.proposals import Proposal

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    from journal.vision.likeness import Features
    from journal.vision.placing import Pinned, Taken

_START = datetime(1970, 1, 1)
_MINUTE = timedelta(minutes=1)
#: Features that were worked out are kept after so many photos: who stops the work loses little.
_BATCH = 200


def proposals(
    session: Session, photo_ids: Sequence[PhotoId], context: Context | None = None
) -> dict[PhotoId, tuple[Proposal, ...]]:
    """For each photo up to three panels it may belong to, the likeliest first.

    Judged by the photos already pinned: how near in time, and how alike. With none pinned yet
    there is nothing to go by, and the answer is empty for each.

    Raises:
        JournalError: a number is no photo's.
        Cancelled: the person asked to stop.
    """
    import numpy as np

    from journal.vision import placing
    from journal.vision.likeness import likeness

    told = context or Silent()
    photos = session.journal.photos.get(photo_ids)
    pinned = _pinned(session)
    near = [pinned.nearest(_taken(photo)) for photo in photos]
    rows = np.unique(np.concatenate(near)) if near else np.zeros(0, np.int64)
    looks = looks_of_all(session, pinned.photo_ids[rows].tolist(), told)
    found = {}
    for photo, own_rows in zip(photos, near, strict=True):
        told.checkpoint()
        own = _looks_of(session, photo)
        alike = None if own is None else likeness(own, looks)[np.searchsorted(rows, own_rows)]
        found[photo.id] = placing.propose(_taken(photo), pinned, own_rows, alike)
    return found


def _pinned(session: Session) -> Pinned:
    import numpy as np

    from journal.vision import placing

    rows = session.journal.pins.dated()
    # Undated photos have None for both times, which becomes "not a number" here.
    table = np.array(rows, np.float64).reshape(len(rows), 4)
    earliest, latest = (
        np.where(np.isnan(table[:, column]), undated, table[:, column])
        for column, undated in zip((2, 3), placing.UNDATED, strict=True)
    )
    numbers = table[:, :2].astype(np.int64)
    return placing.Pinned(numbers[:, 0], numbers[:, 1], earliest, latest)


def _taken(photo: Photo) -> Taken:
    from journal.vision import placing

    if photo.when is None:
        return placing.Taken(photo.id, *placing.UNDATED)
    first, last = photo.when.earliest, photo.when.latest
    return placing.Taken(photo.id, (first - _START) / _MINUTE, (last - _START) / _MINUTE)


# --- what pictures look like


def _looks_of(session: Session, photo: Photo) -> Features | None:
    """What a photo looks like, by its thumbnail; None where there is nothing to see."""
    from journal.vision import likeness

    previews, key = session.journal.previews, (photo.sha256, photo.turn)
    kept = previews.features(likeness.KIND, [key]).get(key)
    if kept is not None:
        return likeness.unpack(kept)
    # The thumbnail comes turned already.
    jpeg = pictures.thumbnail(session, photo)
    made = _made(jpeg, 0)
    if made is None:
        return None
    previews.put_features(likeness.KIND, [(*key, made)])
    return likeness.unpack(made)


def looks_of_all(session: Session, photo_ids: Sequence[int], told: Context) -> NDArray[np.float32]:
    """What photos look like, a row each; of zeros where no thumbnail is kept."""
    from journal.vision import likeness

    previews = session.journal.previews
    keys = session.journal.photos.shown_as(photo_ids)
    kept = previews.features(likeness.KIND, keys.values())
    fresh: list[tuple[str, int, bytes]] = []
    missing = [key for key in dict.fromkeys(keys.values()) if key not in kept]
    for done, key in enumerate(missing):
        told.checkpoint()
        told.report(done, len(missing), "Looking at the photos")
        made = _made(previews.get(key[0]), key[1])
        if made is not None:
            kept[key] = made
            fresh.append((*key, made))
        if len(fresh) >= _BATCH:
            previews.put_features(likeness.KIND, fresh)
            fresh = []
    if fresh:
        previews.put_features(likeness.KIND, fresh)
    return likeness.unpack_all([kept.get(keys[photo_id]) for photo_id in photo_ids])


def _made(jpeg: bytes | None, turn: int) -> bytes | None:
    from journal.vision import likeness

    grey = likeness.small_grey(jpeg, turn) if jpeg else None
    return None if grey is None else likeness.pack(likeness.features(grey))
