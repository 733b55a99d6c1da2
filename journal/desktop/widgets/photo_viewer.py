"""One photo as large as the window: walk, zoom, turn, caption; Esc leads back."""

from collections.abc import Sequence

from PySide6.QtCore import QEvent, QObject, Qt, Signal
from PySide6.QtGui import QKeyEvent, QPixmap, QTransform
from PySide6.QtWidgets import QApplication, QFrame, QLineEdit, QVBoxLayout, QWidget

from journal.actions import covers
from journal.actions import photos as photo_actions
from journal.desktop.desk import Desk
from journal.desktop.widgets.parts import label, row, tool
from journal.desktop.widgets.photo_words import facts_words, mark_words
from journal.desktop.widgets.picture_view import PictureView
from journal.desktop.widgets.pictures import PictureSource, needed_size
from journal.desktop.widgets.side_by_side import SideBySide
from journal.desktop.widgets.thumbs import ThumbCache
from journal.domain.changes import Changes
from journal.domain.ids import PhotoId
from journal.domain.photos import Photo

__all__ = ["PhotoViewer", "SideBySide"]

#: From this zoom on the fitted picture is too coarse and the whole original is decoded.
_FULL_FROM = 1.5


class PhotoViewer(QFrame):
    """Lies over the widget it is given and shows one of its photos at a time."""

    #: It was closed; the photo shown last: its number.
    closed = Signal(int)
    #: Another photo is shown: its number.
    current_changed = Signal(int)

    def __init__(self, desk: Desk, cache: ThumbCache | None, parent: QWidget) -> None:
        super().__init__(parent)
        self._desk = desk
        self._cache = cache
        self._over = parent
        self._ids: tuple[PhotoId, ...] = ()
        self._place = 0
        self._photo: Photo | None = None
        self._before: QWidget | None = None
        self.view = PictureView(self)
        self.source = PictureSource(desk, self)
        self.caption = QLineEdit()
        self._title = label("", "subheading", wrap=False)
        self._facts = label("", "muted", wrap=False)
        self._count = label("", "muted", wrap=False)
        self._build()
        self._connect()
        self.hide()

    def _build(self) -> None:
        self.setProperty("role", "viewer")
        self.setAutoFillBackground(True)
        self.setAccessibleName("Photo")
        self.caption.setPlaceholderText("What does it show? (C)")
        self.caption.setAccessibleName("Caption")
        self.caption.setReadOnly(self._desk.read_only)
        self.view.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.view.setAccessibleName("The photo")
        turn_left = tool("turn-left", "Turn left (Shift+R)", lambda: self.turn(-90))
        turn_right = tool("turn-right", "Turn right (R)", lambda: self.turn(90))
        for one in (turn_left, turn_right):
            one.setEnabled(not self._desk.read_only)
        tools = row(
            tool("previous", "Previous photo (Left)", lambda: self.step(-1)),
            self._count,
            tool("next", "Next photo (Right)", lambda: self.step(1)),
            None,
            tool("box", "Cover something (B)", self.cover),
            turn_left,
            turn_right,
            tool("zoom-out", "Smaller (-)", lambda: self.view.zoom_by(-1)),
            tool("fit", "The whole photo (0)", self.view.fit),
            tool("zoom-in", "Larger (+)", lambda: self.view.zoom_by(1)),
            tool("close", "Back (Esc)", self.leave),
        )
        below = QVBoxLayout()
        below.setContentsMargins(16, 10, 16, 12)
        below.setSpacing(8)
        below.addLayout(row(self._title, self._facts, None, spacing=16))
        below.addWidget(self.caption)
        below.addLayout(tools)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(0)
        layout.addWidget(self.view, 1)
        layout.addLayout(below)

    def _connect(self) -> None:
        self._over.installEventFilter(self)
        self.source.ready.connect(self._on_ready)
        self.view.looked.connect(self._on_looked)
        self.caption.returnPressed.connect(self._on_caption_entered)
        self.caption.editingFinished.connect(self._save_caption)
        self._desk.changed.connect(self._on_changed)

    # What is shown

    def open_at(self, photos: Sequence[PhotoId], photo: PhotoId) -> None:
        """Show a photo; the others are those to walk through."""
        self._ids = tuple(photos)
        self._place = self._ids.index(photo)
        self._before = QApplication.focusWidget()
        self.setGeometry(self._over.rect())
        self.show()
        self.raise_()
        self.view.setFocus()
        self._show()

    @property
    def photo(self) -> Photo | None:
        """The photo shown."""
        return self._photo

    def step(self, steps: int) -> None:
        """Show a photo so many places on; stops at the ends."""
        self.go(self._place + steps)

    def go(self, place: int) -> None:
        """Show the photo at a place."""
        place = max(0, min(len(self._ids) - 1, place))
        if place != self._place:
            self._save_caption()
            self._place = place
            self._show()
            self.current_changed.emit(self._ids[place])

    def turn(self, degrees: int) -> None:
        """Turn the photo by hand, clockwise; the original stays as it is."""
        if self._photo is not None and not self._desk.read_only:
            self._desk.act(photo_actions.turn, [self._photo.id], degrees)

    def cover(self) -> None:
        """Cover something on the photo, in the copies that leave the house."""
        from journal.desktop.dialogs.cover_boxes import cover_something

        if self._photo is not None:
            cover_something(self._desk, self._photo.id, self.window())

    def leave(self) -> None:
        """Go back to where it was opened from."""
        if self.isHidden():
            return
        self._save_caption()
        self.hide()
        if self._before is not None:
            self._before.setFocus()
        if self._photo is not None:
            self.closed.emit(self._photo.id)

    def _show(self) -> None:
        photo = self._desk.ask(photo_actions.photo, self._ids[self._place])
        if photo is None:
            self.leave()
            return
        turned = self._turned(photo)
        self._photo = photo
        self.view.look_at(1.0, 0.5, 0.5)
        self._show_picture(photo, turned)
        self.view.show_covers(self._desk.ask(covers.covers_on, photo) or ())
        self._title.setText(photo.name)
        self._facts.setText(facts_words(photo))
        self._facts.setToolTip(", ".join(mark_words(photo)))
        self._count.setText(f"{self._place + 1:,} of {len(self._ids):,}")
        self.caption.setText(photo.caption)
        self.setAccessibleDescription(f"{photo.name}, {facts_words(photo)}, {photo.caption}")

    def _turned(self, photo: Photo) -> QPixmap | None:
        """What is shown already of the same photo, turned as it is now."""
        before, shown = self._photo, self.view.pixmap
        if before is None or before.id != photo.id or shown is None:
            return None
        return shown.transformed(QTransform().rotate(photo.turn - before.turn))

    def _show_picture(self, photo: Photo, meanwhile: QPixmap | None) -> None:
        longest = self._longest()
        self.source.keep_to([photo])
        ready = self.source.have(photo, longest)
        if ready is None:
            self.view.show_picture(meanwhile or self._placeholder(photo), "One moment ...")
            self.source.ask(photo, longest)
        else:
            self.view.show_picture(ready)
            self._ask_ahead()

    def _placeholder(self, photo: Photo) -> QPixmap | None:
        card = self._cache.card(photo.id) if self._cache is not None else None
        fits = card is not None and card.photo.turn == photo.turn
        return card.pixmap if card is not None and fits else None

    def _ask_ahead(self) -> None:
        """Have the neighbours decoded before they are asked for, once this one is."""
        places = (self._place + 1, self._place - 1)
        near = [self._ids[place] for place in places if 0 <= place < len(self._ids)]
        photos = self._desk.ask(photo_actions.photos, near)
        self.source.ask_ahead(photos or (), self._longest())

    def _longest(self) -> int:
        """How large a picture the window can show, in pixels."""
        return needed_size(self.view)

    def _on_ready(self, number: int, pixmap: QPixmap | None) -> None:
        if self._photo is not None and number == self._photo.id:
            why = f"There is no picture to show of this {self._photo.kind.value}."
            self.view.show_picture(pixmap, self._photo.damage or why)
            self._ask_ahead()

    def _on_looked(self, zoom: float, _x: float, _y: float) -> None:
        """Decode the whole original once that is what can be seen."""
        if zoom >= _FULL_FROM and self._photo is not None:
            full = max(self._photo.width, self._photo.height)
            if full > self._longest() and self.source.have(self._photo, full) is None:
                self.source.ask(self._photo, full)

    # What is changed

    def _save_caption(self) -> None:
        text = self.caption.text().strip()
        if self._photo is None or self._desk.read_only or text == self._photo.caption:
            return
        self._desk.act(photo_actions.set_caption, [self._photo.id], text)

    def _write_caption(self) -> None:
        self.caption.setFocus()
        self.caption.selectAll()

    def _on_caption_entered(self) -> None:
        self._save_caption()
        self.view.setFocus()

    def _on_changed(self, changes: Changes) -> None:
        """Show the photo anew: it may have been turned, dated or captioned, or be gone."""
        if self.isHidden() or not changes.kinds & {"photos", "covers"}:
            return
        zoom = self.view.zoom
        self._show()
        if zoom == 1.0:
            self.view.fit()

    # Qt

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Walk, turn, zoom, caption, leave."""
        key = event.key()
        if key == Qt.Key.Key_Escape:
            self._escape()
            return
        turned = -90 if event.modifiers() & Qt.KeyboardModifier.ShiftModifier else 90
        acts = {
            Qt.Key.Key_Left: lambda: self.step(-1),
            Qt.Key.Key_Right: lambda: self.step(1),
            Qt.Key.Key_PageUp: lambda: self.step(-10),
            Qt.Key.Key_PageDown: lambda: self.step(10),
            Qt.Key.Key_Home: lambda: self.go(0),
            Qt.Key.Key_End: lambda: self.go(len(self._ids) - 1),
            Qt.Key.Key_R: lambda: self.turn(turned),
            Qt.Key.Key_C: self._write_caption,
            Qt.Key.Key_B: self.cover,
            Qt.Key.Key_Plus: lambda: self.view.zoom_by(1),
            Qt.Key.Key_Equal: lambda: self.view.zoom_by(1),
            Qt.Key.Key_Minus: lambda: self.view.zoom_by(-1),
            Qt.Key.Key_0: self.view.fit,
        }
        plain = not event.modifiers() & Qt.KeyboardModifier.ControlModifier
        if key in acts and plain and not self.caption.hasFocus():
            acts[Qt.Key(key)]()
        else:
            event.ignore()

    def _escape(self) -> None:
        if self.caption.hasFocus():
            self.caption.setText(self._photo.caption if self._photo else "")
            self.view.setFocus()
        else:
            self.leave()

    def focusNextPrevChild(self, forward: bool) -> bool:
        """Keep the keyboard in the viewer while it lies over the page."""
        stops = [
            one
            for one in self.findChildren(QWidget)
            if one.focusPolicy() & Qt.FocusPolicy.TabFocus and one.isEnabled() and one.isVisible()
        ]
        held = QApplication.focusWidget()
        if held not in stops:
            return super().focusNextPrevChild(forward)
        goal = stops[(stops.index(held) + (1 if forward else -1)) % len(stops)]
        goal.setFocus(Qt.FocusReason.TabFocusReason)
        return True

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Stay as large as what it lies over."""
        if watched is self._over and event.type() == QEvent.Type.Resize:
            self.setGeometry(self._over.rect())
        return super().eventFilter(watched, event)
