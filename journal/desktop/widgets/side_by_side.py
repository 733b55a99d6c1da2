"""A before and an after photo side by side; both show the same part, however large."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent, QPixmap, QResizeEvent, QShowEvent
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from journal.actions import photos as photo_actions
from journal.desktop.desk import Desk
from journal.desktop.widgets.parts import label
from journal.desktop.widgets.photo_words import facts_words
from journal.desktop.widgets.picture_view import PictureView
from journal.desktop.widgets.pictures import PictureSource, needed_size
from journal.domain.ids import PhotoId
from journal.domain.photos import Photo


class SideBySide(QWidget):
    """Shows two photos with their dates, zoomed and pulled together."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self.source = PictureSource(desk, self)
        self.source.ready.connect(self._on_ready)
        self._photos: list[Photo | None] = [None, None]
        self.views = (PictureView(self, dark_ground=False), PictureView(self, dark_ground=False))
        self._words = (label("", "muted"), label("", "muted"))
        layout = QHBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(8)
        for name, view, words in zip(("Before", "After"), self.views, self._words, strict=True):
            side = QVBoxLayout()
            side.setSpacing(4)
            side.addWidget(label(name, "subheading", wrap=False))
            side.addWidget(view, 1)
            side.addWidget(words)
            layout.addLayout(side, 1)
            view.setAccessibleName(f"{name} photo")
            view.show_picture(None, f"No {name.lower()} photo yet")
        self.views[0].looked.connect(self.views[1].look_at)
        self.views[1].looked.connect(self.views[0].look_at)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName("Before and after")

    def set_pair(self, before: PhotoId | None, after: PhotoId | None) -> None:
        """Show these two photos; None leaves a side empty."""
        for side, number in enumerate((before, after)):
            photo = None if number is None else self._desk.ask(photo_actions.photo, number)
            self._photos[side] = photo
            name = ("before", "after")[side]
            self.views[side].show_picture(None, f"No {name} photo yet" if photo is None else "...")
            self._words[side].setText("" if photo is None else facts_words(photo))
        for view in self.views:
            view.look_at(1.0, 0.5, 0.5)
        words = " and ".join(p.name if p else "none" for p in self._photos)
        self.setAccessibleDescription(f"Before and after: {words}")
        self._ask()

    def _ask(self) -> None:
        for view, photo in zip(self.views, self._photos, strict=True):
            if photo is not None and self.isVisible():
                self.source.ask(photo, needed_size(view))

    def _on_ready(self, number: int, pixmap: QPixmap | None) -> None:
        for view, photo in zip(self.views, self._photos, strict=True):
            if photo is not None and photo.id == number:
                view.show_picture(pixmap, photo.damage or "There is no picture to show.")

    def showEvent(self, event: QShowEvent) -> None:
        """Have the pictures decoded for the room there is."""
        super().showEvent(event)
        self._ask()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Have the pictures decoded for the room there is."""
        super().resizeEvent(event)
        self._ask()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Larger, smaller, whole."""
        acts = {
            Qt.Key.Key_Plus: lambda: self.views[0].zoom_by(1),
            Qt.Key.Key_Equal: lambda: self.views[0].zoom_by(1),
            Qt.Key.Key_Minus: lambda: self.views[0].zoom_by(-1),
            Qt.Key.Key_0: self.views[0].fit,
        }
        if event.key() in acts:
            acts[Qt.Key(event.key())]()
        else:
            event.ignore()
