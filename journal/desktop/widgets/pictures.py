"""Originals decoded for the screen: on reader jobs, the neighbours ahead, the last few kept."""

import math
from collections import OrderedDict
from collections.abc import Sequence

from PySide6.QtCore import QObject, Signal
from PySide6.QtGui import QImage, QPixmap
from PySide6.QtWidgets import QWidget

from journal.actions.session import Session
from journal.desktop.desk import Desk
from journal.desktop.tasks import Task
from journal.desktop.widgets.image_bytes import image_of
from journal.domain.errors import JournalError
from journal.domain.ids import PhotoId
from journal.domain.photos import Photo
from journal.domain.progress import Context

#: Decoded pictures kept: the one looked at, two on either side, and one to spare.
_KEPT = 6

#: Sizes asked for are rounded up to whole steps, in pixels.
_STEP = 128

_Key = tuple[PhotoId, int]


class PictureSource(QObject):
    """Decodes originals no larger than asked for; what was asked for last comes first."""

    #: A picture is there: the photo's number and a QPixmap, None where it can't be shown.
    ready = Signal(int, object)

    def __init__(self, desk: Desk, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._kept: OrderedDict[_Key, tuple[int, QPixmap | None]] = OrderedDict()
        self._tasks: dict[_Key, tuple[int, Task]] = {}

    def have(self, photo: Photo, longest: int) -> QPixmap | None:
        """The picture if it is decoded already, at least that large."""
        kept = self._kept.get(_key(photo))
        return kept[1] if kept is not None and kept[0] >= longest else None

    def ask(self, photo: Photo, longest: int) -> None:
        """Decode a photo so that its longest side has ``longest`` pixels, and tell ``ready``."""
        key = _key(photo)
        kept = self._kept.get(key)
        if kept is not None and kept[0] >= longest:
            self._kept.move_to_end(key)
            self.ready.emit(photo.id, kept[1])
            return
        under_way = self._tasks.get(key)
        if under_way is not None and under_way[0] >= longest:
            return
        session = self._desk.session

        def job(context: Context) -> QImage | None:
            context.checkpoint()
            return decode(session, photo, longest)

        def done(image: QImage | None) -> None:
            self._take(photo, longest, image)

        self._tasks[key] = longest, self._desk.read(job, done, self)

    def ask_ahead(self, photos: Sequence[Photo], longest: int) -> None:
        """Decode neighbours in case they are looked at next."""
        for photo in photos:
            if self.have(photo, longest) is None:
                self.ask(photo, longest)

    def keep_to(self, photos: Sequence[Photo]) -> None:
        """Drop the work on every other photo."""
        keys = {_key(photo) for photo in photos}
        for key, (_, task) in list(self._tasks.items()):
            if key not in keys:
                task.cancel()
                del self._tasks[key]

    def _take(self, photo: Photo, longest: int, image: QImage | None) -> None:
        key = _key(photo)
        under_way = self._tasks.get(key)
        if under_way is not None and under_way[0] == longest:
            del self._tasks[key]
        pixmap = None if image is None else QPixmap.fromImage(image)
        self._kept[key] = longest, pixmap
        self._kept.move_to_end(key)
        while len(self._kept) > _KEPT:
            self._kept.popitem(last=False)
        self.ready.emit(photo.id, pixmap)


def decode(session: Session, photo: Photo, longest: int) -> QImage | None:
    """A photo's pixels, upright, for reader jobs; its thumbnail where no more can be decoded.

    None where nothing of it can be shown.
    """
    from journal.actions import pictures

    try:
        made = pictures.picture(session, photo, longest)
    except JournalError:
        return _from_thumbnail(session, photo)
    image = QImage(made.rgb, made.width, made.height, made.width * 3, QImage.Format.Format_RGB888)
    return image.convertToFormat(QImage.Format.Format_RGB32)


def _from_thumbnail(session: Session, photo: Photo) -> QImage | None:
    from journal.actions import pictures

    try:
        data = pictures.thumbnail(session, photo)
    except JournalError:
        return None
    image = image_of(data)
    return None if image.isNull() else image


def needed_size(view: QWidget) -> int:
    """The longest side of a picture that fills a widget, in steps that spare small differences."""
    side = max(view.width(), view.height()) * view.devicePixelRatioF()
    return math.ceil(side / _STEP) * _STEP


def _key(photo: Photo) -> _Key:
    return photo.id, photo.turn
