"""A place for one photo: a photo dropped on it, or picked and pressed in, fills it."""

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QDragEnterEvent,
    QDragLeaveEvent,
    QDropEvent,
    QIcon,
    QImage,
    QKeyEvent,
    QPainter,
    QPen,
    QPixmap,
)
from PySide6.QtWidgets import QToolButton, QWidget

from journal.desktop import icons
from journal.desktop.desk import Desk
from journal.desktop.theme import colours_of
from journal.desktop.widgets.photo_drag import photos_from_mime
from journal.desktop.widgets.thumbs import decode
from journal.domain.photos import Photo

_EDGE = 116
_SIZE = QSize(_EDGE, _EDGE * 3 // 4)


class ViewSlot(QToolButton):
    """One standard view with its photo.

    Attributes:
        name: the view's.
        photo: the photo in it.
    """

    #: A photo was dropped on it: its number.
    dropped = Signal(int)
    #: It is to be emptied.
    emptied = Signal()

    def __init__(self, desk: Desk, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self.name = name
        self.photo: Photo | None = None
        self.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextUnderIcon)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setStyleSheet(f"icon-size: {_SIZE.width()}px {_SIZE.height()}px; padding: 4px")
        self.setIconSize(_SIZE)
        self.setAcceptDrops(not desk.read_only)
        self.show_photo(None)

    def show_photo(self, photo: Photo | None) -> None:
        """Show a photo in it, or that it is empty."""
        self.photo = photo
        self.setText(self.name.capitalize())
        held = photo.name if photo else "no photo yet"
        self.setAccessibleName(f"{self.name.capitalize()}: {held}")
        self.setToolTip(f"{self.name.capitalize()}: {held}")
        self.setIcon(QIcon(self._empty()))
        if photo is None:
            return
        session, ratio = self._desk.session, self.devicePixelRatioF()

        def job(_context: object) -> QImage | None:
            from journal.actions.pictures import thumbnail

            return decode(thumbnail(session, photo), round(_EDGE * ratio))

        def done(image: QImage | None) -> None:
            if self.photo is photo and image is not None:
                self.setIcon(QIcon(QPixmap.fromImage(image)))

        self._desk.read(job, done, self)

    def _empty(self) -> QPixmap:
        """An empty frame with a sign in it."""
        colours = colours_of(self.palette())
        made = QPixmap(_SIZE)
        made.fill(QColor(colours.page))
        painter = QPainter(made)
        painter.setPen(QPen(QColor(colours.edge), 1, Qt.PenStyle.DashLine))
        painter.drawRect(made.rect().adjusted(0, 0, -1, -1))
        sign = icons.pixmap("photo", colours.muted, 32)
        painter.drawPixmap(made.rect().center().x() - 16, made.rect().center().y() - 16, sign)
        painter.end()
        return made

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Delete empties it; Enter presses it."""
        if event.key() in (Qt.Key.Key_Delete, Qt.Key.Key_Backspace):
            self.emptied.emit()
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.click()
        else:
            super().keyPressEvent(event)

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Take one photo or the first of several."""
        if photos_from_mime(event.mimeData()):
            self.setDown(True)
            event.acceptProposedAction()

    def dragLeaveEvent(self, _event: QDragLeaveEvent) -> None:
        """Look as before."""
        self.setDown(False)

    def dropEvent(self, event: QDropEvent) -> None:
        """Take it."""
        self.setDown(False)
        if photos := photos_from_mime(event.mimeData()):
            event.acceptProposedAction()
            self.dropped.emit(photos[0])
