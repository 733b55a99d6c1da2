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
from journal.store.rows import UNDATED

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    from journal.vision.likeness import Features
    from journal.vision.placing import Pinned, Taken

_START = datetime(1970, 1, 1)
_MINUTE = timedelta(minutes=1)
#: Features that were worked out are kept after so many photos: who stops the work loses little.
_BATCH = 200

#: Under which a picture's features are kept: SHA-256 and turn.
_Key = tuple[str, int]


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

    told = context or Silent()
    photos = session.journal.photos.get(photo_ids)
    pinned, keys = _pinned(session)
    near = [pinned.nearest(_taken(photo)) for photo in photos]
    rows = np.unique(np.concatenate(near)) if near else np.zeros(0, np.int64)
    looks = _looks_of_rows(session, [keys[int(n)] for n in pinned.photo_ids[rows]], told)
    found = {}
    for photo, own_rows in zip(photos, near, strict=True):
        told.checkpoint()
        own = _looks_of(session, photo)
        theirs = looks[np.searchsorted(rows, own_rows)]
        found[photo.id] = placing.propose(_taken(photo), own, pinned, own_rows, theirs)
    return found


def _pinned(session: Session) -> tuple[Pinned, dict[int, _Key]]:
    """The pins as rows, and the key of each pinned photo."""
    import numpy as np

    from journal.vision.placing import Pinned

    rows = session.journal.pins.dated()
    times = [_minutes(row[4], row[5]) for row in rows]
    pinned = Pinned(
        np.array([row[0] for row in rows], np.int64),
        np.array([row[1] for row in rows], np.int64),
        np.array([earliest for earliest, _ in times], np.float64),
        np.array([latest for _, latest in times], np.float64),
    )
    return pinned, {row[0]: (row[2], row[3]) for row in rows}


def _minutes(earliest: str, latest: str) -> tuple[float, float]:
    from journal.vision import placing

    if earliest == UNDATED:
        return placing.UNDATED
    first = datetime.fromisoformat(earliest)
    last = first if latest == earliest else datetime.fromisoformat(latest)
    return (first - _START) / _MINUTE, (last - _START) / _MINUTE


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


def _looks_of_rows(session: Session, keys: Sequence[_Key], told: Context) -> NDArray[np.float32]:
    """What pinned photos look like, a row each; of zeros where no thumbnail is kept."""
    import numpy as np

    from journal.vision import likeness

    previews = session.journal.previews
    kept = previews.features(likeness.KIND, keys)
    looks = np.zeros((len(keys), likeness.LENGTH), np.float32)
    fresh: list[tuple[str, int, bytes]] = []
    for row, key in enumerate(keys):
        value = kept.get(key)
        if value is None:
            told.checkpoint()
            told.report(row, len(keys), "Looking at the photos already pinned")
            value = _made(previews.get(key[0]), key[1])
            if value is not None:
                fresh.append((*key, value))
        if value is not None and (found := likeness.unpack(value)) is not None:
            looks[row] = found
        if len(fresh) >= _BATCH or (fresh and row == len(keys) - 1):
            previews.put_features(likeness.KIND, fresh)
            fresh = []
    return looks


def _made(jpeg: bytes | None, turn: int) -> bytes | None:
    from journal.vision import likeness

    grey = likeness.small_grey(jpeg, turn) if jpeg else None
    return None if grey is None else likeness.pack(likeness.features(grey))
