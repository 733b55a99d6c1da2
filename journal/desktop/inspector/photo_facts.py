"""The file behind a photo: its camera, size, damage and SHA-256; and how its date is known."""

from collections.abc import Sequence

from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QFrame, QLabel, QVBoxLayout, QWidget

from journal.desktop.inspector.photo_dates import Said
from journal.desktop.widgets.parts import button, clear_layout, label, row
from journal.domain.photos import Kind, Photo

_SHORT = 16


class PhotoDates(QWidget):
    """Every date that was said of the photo, with the one that counts first."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._rows = QVBoxLayout(self)
        self._rows.setContentsMargins(0, 0, 0, 0)
        self._rows.setSpacing(6)

    def show_said(self, rows: Sequence[Said]) -> None:
        """Show these dates."""
        clear_layout(self._rows)
        for said in rows:
            self._rows.addWidget(_said_card(said))
        if not rows:
            self._rows.addWidget(label("Nothing says when it was taken.", "muted"))


def _said_card(said: Said) -> QFrame:
    made = QFrame()
    made.setProperty("role", "banner")
    made.setProperty("level", "done" if said.counts else "info")
    date = label(f"\N{CHECK MARK} {said.date}" if said.counts else said.date)
    words = label(f"{said.source}: {said.reason}", "muted")
    layout = QVBoxLayout(made)
    layout.setContentsMargins(10, 4, 4, 4)
    layout.setSpacing(0)
    layout.addWidget(date)
    layout.addWidget(words)
    made.setAccessibleName(f"{said.date}, {said.source}, {said.reason}")
    return made


class PhotoFile(QWidget):
    """Camera, size, damage and SHA-256."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._sha = ""
        self._facts = label("", "muted")
        self._damage = label("", "error")
        self.sha = QLabel()
        self.sha.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        self.copy = button("Cop&y", self._on_copy, role="quiet", hint="Copy the whole SHA-256")
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(4)
        layout.addWidget(self._damage)
        layout.addWidget(self._facts)
        layout.addLayout(row(self.sha, None, self.copy))

    def show_photo(self, photo: Photo) -> None:
        """Show a photo's file."""
        self._sha = photo.sha256
        self._facts.setText(file_words(photo))
        self._damage.setText(f"Damaged: {photo.damage}")
        self._damage.setVisible(bool(photo.damage))
        self.sha.setText(f"SHA-256 {photo.sha256[:_SHORT]}\N{HORIZONTAL ELLIPSIS}")
        self.sha.setToolTip(photo.sha256)
        self.sha.setAccessibleName(f"SHA-256 {photo.sha256}")

    def _on_copy(self) -> None:
        QGuiApplication.clipboard().setText(self._sha)


def file_words(photo: Photo) -> str:
    """Camera, size and kind, one below the other."""
    lines = [photo.camera or "Camera unknown"]
    if photo.width and photo.height:
        million = photo.width * photo.height / 1_000_000
        size = f"{photo.width:,} \N{MULTIPLICATION SIGN} {photo.height:,} pixels"
        lines.append(f"{size} ({million:.1f} million)")
    if photo.kind is not Kind.PICTURE:
        lines.append(photo.kind.value.capitalize())
    if photo.turn:
        lines.append(f"Turned by hand, {photo.turn}\N{DEGREE SIGN} clockwise")
    return "\n".join(lines)
