"""Where thumbnails come from: the open journal."""

from collections.abc import Iterator, Sequence

from journal.desktop.desk import Desk
from journal.desktop.widgets.thumbs import Load, ThumbCache
from journal.domain.ids import PhotoId
from journal.domain.photos import Photo


def thumb_cache(desk: Desk) -> ThumbCache:
    """A new cache of the journal's thumbnails, to be given a parent by its grid."""
    return ThumbCache(_loader(desk), desk.tasks, desk)


def _loader(desk: Desk) -> Load:
    session = desk.session

    def load(ids: Sequence[PhotoId]) -> Iterator[tuple[Photo, bytes | None]]:
        from journal.actions.photos import photos
        from journal.actions.pictures import thumbnail

        for photo in photos(session, ids):
            yield photo, thumbnail(session, photo)

    return load
