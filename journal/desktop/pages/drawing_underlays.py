"""Reads the pictures under the views in a reader's thread and gives them to the canvas."""

from dataclasses import dataclass, replace

from PySide6.QtCore import QObject
from PySide6.QtGui import QImage, QPixmap

from journal.actions import tracing
from journal.actions.session import Session
from journal.desktop.desk import Desk
from journal.desktop.tasks import Task
from journal.desktop.widgets.canvas_sheet import CanvasSheet
from journal.desktop.widgets.canvas_underlay import Laid
from journal.domain.changes import Changes
from journal.domain.errors import JournalError
from journal.domain.ids import ViewId
from journal.domain.pictures import Picture
from journal.domain.underlays import Underlay

#: Longer side of a sheet with its picture, and of the picture while it is moved, in pixels.
_FLAT, _MOVED = 2000, 1400


@dataclass(frozen=True, slots=True)
class _Read:
    """What was read of one picture, before it is given to Qt; ``trouble`` where it can't be."""

    underlay: Underlay
    size: tuple[int, int] = (0, 0)
    picture: Picture | None = None
    flat: Picture | None = None
    trouble: str = ""


class DrawnUnderlays(QObject):
    """Keeps the canvas supplied; what hasn't changed isn't decoded again."""

    def __init__(self, desk: Desk, canvas: CanvasSheet, parent: QObject) -> None:
        super().__init__(parent)
        self._desk = desk
        self._canvas = canvas
        self._known: dict[ViewId, Laid] = {}
        self._reading: Task | None = None
        self.refresh(None)

    @property
    def is_read(self) -> bool:
        """Whether nothing is left to be read."""
        return self._reading is None

    def refresh(self, changes: Changes | None) -> None:
        """Read again what lies under the views, where the drawing changed."""
        if changes is not None and "drawing" not in changes.kinds:
            return
        if self._reading is not None:
            self._reading.cancel()
            self._reading = None
        now = self._desk.ask(tracing.underlays) or ()
        if now or self._known:
            kept = [_as_now(self._known.get(one.view_id), one) for one in now]
            self._known = {laid.underlay.view_id: laid for laid in kept if laid is not None}
            self._canvas.set_underlays(self._known.values())
            self._read([one for one in now if not self._is_whole(one)])

    def _is_whole(self, underlay: Underlay) -> bool:
        laid = self._known.get(underlay.view_id)
        return laid is not None and laid.flat is not None

    def _read(self, wanted: list[Underlay]) -> None:
        session = self._desk.session
        if wanted:
            self._reading = self._desk.read(
                lambda _context: [_read(session, one) for one in wanted], self._on_read, self
            )

    def _on_read(self, found: list[_Read]) -> None:
        self._reading = None
        for one in found:
            if one.picture is None or one.flat is None:
                self._desk.message.emit(one.trouble, "error")
            else:
                pictures = _pixmap(one.picture), _pixmap(one.flat)
                self._known[one.underlay.view_id] = Laid(one.underlay, *one.size, *pictures)
        self._canvas.set_underlays(self._known.values())


def _as_now(before: Laid | None, now: Underlay) -> Laid | None:
    """What can be shown at once of a picture that is known already."""
    if before is None or before.underlay.sha256 != now.sha256:
        return None
    is_moved = before.underlay.matrix != now.matrix
    return replace(before, underlay=now, flat=None if is_moved else before.flat)


def _read(session: Session, underlay: Underlay) -> _Read:
    try:
        return _Read(
            underlay,
            tracing.underlay_size(session, underlay.sha256),
            tracing.underlay_picture(session, underlay.sha256, _MOVED),
            tracing.flat_underlay(session, underlay, _FLAT),
        )
    except JournalError as error:
        return _Read(underlay, trouble=str(error))


def _pixmap(picture: Picture) -> QPixmap:
    image = QImage(
        picture.rgb,
        picture.width,
        picture.height,
        3 * picture.width,
        QImage.Format.Format_RGB888,
    )
    return QPixmap.fromImage(image)
