"""Bursts among the photos, the sharpest of each, and photos that look like one another."""

from collections.abc import Iterable, Sequence
from datetime import datetime

from journal.actions.pictures import picture, thumbnail
from journal.actions.session import Session
from journal.domain import bursts as rules
from journal.domain.bursts import Burst, Frame
from journal.domain.errors import JournalError
from journal.domain.ids import PhotoId
from journal.domain.progress import Context, Silent
from journal.store.rows import UNDATED

_START = datetime(1970, 1, 1)
#: What was worked out is kept after so many photos: who stops the work loses little.
_BATCH = 100
#: A time that is known to the second spans no more than this, in seconds.
_EXACT = 1.5


def bursts(session: Session, context: Context | None = None) -> tuple[Burst, ...]:
    """Every burst in order of time, its sharpest photo as far as that was looked at already.

    Photos that could be of one by their times are looked at once, by their thumbnails.

    Raises:
        Cancelled: the person asked to stop; what was looked at until then is kept.
    """
    told = context or Silent()
    frames = _frames(session)
    suspects = rules.suspects(frames)
    signs = _signs(session, suspects, told)
    runs = rules.bursts(frames, signs)
    members = [photo for run in runs for photo in run]
    return rules.with_best(runs, _kept_sharpness(session, members))


def sharpest(
    session: Session, found: Sequence[Burst], context: Context | None = None
) -> tuple[Burst, ...]:
    """The same bursts once every photo of theirs was looked at in full: the sharpest first.

    Raises:
        Cancelled: the person asked to stop; what was looked at until then is kept.
    """
    from journal.vision import sharpness as vision

    told = context or Silent()
    members = [photo for burst in found for photo in burst.photo_ids]
    known = _kept_sharpness(session, members)
    missing = [photo for photo in members if photo not in known]
    fresh: list[tuple[str, int, bytes]] = []
    for done, photo in enumerate(session.journal.photos.get(missing)):
        told.checkpoint()
        told.report(done, len(missing), "Looking for the sharpest of each burst")
        try:
            value = vision.sharpness(picture(session, photo, vision.SIDE))
        except JournalError:
            value = 0.0
        known[photo.id] = value
        # A turn makes nothing sharper; it is kept without.
        fresh.append((photo.sha256, 0, vision.pack(value)))
        if len(fresh) >= _BATCH:
            session.journal.previews.put_features(vision.KIND, fresh)
            fresh = []
    if fresh:
        session.journal.previews.put_features(vision.KIND, fresh)
    return rules.with_best([burst.photo_ids for burst in found], known)


def near_copies(
    session: Session, context: Context | None = None
) -> tuple[tuple[PhotoId, ...], ...]:
    """Photos anywhere in the journal that look the same within 3 of 64 signs, gathered.

    Only photos whose thumbnails are there take part.

    Raises:
        Cancelled: the person asked to stop; what was looked at until then is kept.
    """
    from journal.vision.difference import pairs_within

    ids = [PhotoId(number) for number, *_ in session.journal.photos.moments()]
    signs = _signs(session, ids, context or Silent())
    order = list(signs)
    leads = {photo: photo for photo in order}

    def lead(photo: PhotoId) -> PhotoId:
        while leads[photo] != photo:
            leads[photo] = leads[leads[photo]]
            photo = leads[photo]
        return photo

    for one, other in pairs_within([signs[photo] for photo in order]):
        leads[lead(order[other])] = lead(order[one])
    groups: dict[PhotoId, list[PhotoId]] = {}
    for photo in order:
        groups.setdefault(lead(photo), []).append(photo)
    return tuple(tuple(group) for group in groups.values() if len(group) > 1)


def _frames(session: Session) -> list[Frame]:
    """Every photo in order of time, with its time where that is known to the second."""
    return [
        Frame(PhotoId(number), _second(earliest, latest))
        for number, earliest, latest in session.journal.photos.spans()
    ]


def _second(earliest: str, latest: str) -> float | None:
    if earliest == UNDATED:
        return None
    first = (datetime.fromisoformat(earliest) - _START).total_seconds()
    last = first if latest == earliest else (
        datetime.fromisoformat(latest) - _START
    ).total_seconds()  # fmt: skip
    return first if last - first <= _EXACT else None


def _signs(session: Session, ids: Iterable[PhotoId], told: Context) -> dict[PhotoId, int]:
    """What photos look like in 64 signs, in their order; those without a thumbnail are left out."""
    from journal.vision import difference

    previews = session.journal.previews
    numbers = list(ids)
    keys = session.journal.photos.shown_as(numbers)
    kept = previews.features(difference.KIND, keys.values())
    fresh: list[tuple[str, int, bytes]] = []
    missing = [photo for photo in numbers if photo in keys and keys[photo] not in kept]
    for done, photo_id in enumerate(missing):
        told.checkpoint()
        told.report(done, len(missing), "Looking for bursts")
        jpeg = thumbnail(session, session.journal.photos.get([photo_id])[0])
        found = difference.signs_of_jpeg(jpeg) if jpeg else None
        if found is not None:
            kept[keys[photo_id]] = difference.pack(found)
            fresh.append((*keys[photo_id], difference.pack(found)))
        if len(fresh) >= _BATCH:
            previews.put_features(difference.KIND, fresh)
            fresh = []
    if fresh:
        previews.put_features(difference.KIND, fresh)
    return {
        photo: difference.unpack(kept[keys[photo]])
        for photo in numbers
        if photo in keys and keys[photo] in kept
    }


def _kept_sharpness(session: Session, ids: Sequence[PhotoId]) -> dict[PhotoId, float]:
    from journal.vision import sharpness

    keys = {
        photo: (sha256, 0) for photo, (sha256, _) in session.journal.photos.shown_as(ids).items()
    }
    kept = session.journal.previews.features(sharpness.KIND, keys.values())
    return {
        PhotoId(photo): sharpness.unpack(kept[key]) for photo, key in keys.items() if key in kept
    }
