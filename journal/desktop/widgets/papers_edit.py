"""Scans and PDFs of a receipt's paper, attached by dropping or choosing them."""

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QSize, Qt, QUrl, Signal
from PySide6.QtGui import (
    QDesktopServices,
    QDragEnterEvent,
    QDropEvent,
    QImage,
    QPixmap,
)
from PySide6.QtWidgets import QFileDialog, QFrame, QToolButton, QWidget

from journal.desktop import icons
from journal.desktop.widgets.drops import accept_copies, dropped_paths
from journal.desktop.widgets.flow import FlowLayout
from journal.desktop.widgets.image_bytes import reader_of
from journal.desktop.widgets.parts import button, column, label, row

if TYPE_CHECKING:
    from journal.desktop.desk import Desk

_EDGE = 56
#: More pixels than any scan has; a picture beyond it is shown by its name alone.
_MOST_PIXELS = 200_000_000
_KINDS = "Scans and PDFs (*.pdf *.jpg *.jpeg *.png *.tif *.tiff *.heic *.webp);;All files (*)"


class PapersEdit(QFrame):
    """The papers a receipt has, and files that come to it."""

    #: Files were attached or left out.
    changed = Signal()

    def __init__(self, desk: "Desk", parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self.setAcceptDrops(True)
        self.setProperty("role", "card")
        self.setAccessibleName("Scans and PDFs of the paper")
        self._files: list[Path] = []
        self._held: list[Path] = []
        self._say = label("Drop scans or PDFs of the paper here.", "muted", wrap=False)
        self.choose_button = button("Choose &files", self.choose, icon="file")
        self.choose_button.setAutoDefault(False)
        self._shown = QWidget()
        self._flow = FlowLayout(self._shown)
        layout = column(self._shown, margin=8, spacing=6)
        layout.addLayout(row(self._say, None, self.choose_button))
        self.setLayout(layout)
        self._rebuild()

    def files(self) -> tuple[Path, ...]:
        """The files that come to the receipt."""
        return tuple(self._files)

    def set_held(self, papers: Sequence[Path]) -> None:
        """Show the papers the receipt has already."""
        self._held = list(papers)
        self._rebuild()

    def add_files(self, paths: Sequence[Path]) -> None:
        """Attach files; folders and what is attached already are passed over."""
        for path in paths:
            if path.is_file() and path not in self._files:
                self._files.append(path)
        self._rebuild()
        self.changed.emit()

    def choose(self) -> None:
        """Ask which files."""
        names, _ = QFileDialog.getOpenFileNames(self, "Attach which papers?", "", _KINDS)
        if names:
            self.add_files([Path(name) for name in names])

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Take files."""
        if _dropped(event):
            accept_copies(event)

    def dropEvent(self, event: QDropEvent) -> None:
        """Attach what was dropped."""
        accept_copies(event)
        self.add_files(_dropped(event))

    def _rebuild(self) -> None:
        self._flow.clear()
        for path in self._held:
            self._flow.addWidget(
                paper_button(self._desk, path, path.suffix.lstrip(".").upper() or "paper")
            )
        for path in self._files:
            shown = paper_button(self._desk, path, path.name)
            self._flow.addWidget(shown)
            self._flow.addWidget(self._leave_out_button(path))
        self._shown.setVisible(bool(self._held or self._files))
        self._shown.updateGeometry()

    def _leave_out_button(self, path: Path) -> QToolButton:
        made = QToolButton()
        icons.put(made, "remove")
        made.setProperty("role", "quiet")
        made.setToolTip(f"Leave {path.name} out")
        made.setAccessibleName(f"Leave {path.name} out")
        made.clicked.connect(lambda: self._leave_out(path))
        return made

    def _leave_out(self, path: Path) -> None:
        self._files.remove(path)
        self._rebuild()
        self.changed.emit()


def paper_button(desk: "Desk", path: Path, name: str) -> QToolButton:
    """A paper; a press opens it in the system's own viewer.

    Its picture, where it has one, is read in a reader's thread and shown when it is there.
    """
    made = QToolButton()
    icons.put(made, "file")

    def show(image: QImage | None) -> None:
        if image is not None:
            made.setIcon(QPixmap.fromImage(image))

    desk.read(lambda _context: thumbnail(path), show, made)
    made.setIconSize(QSize(_EDGE, _EDGE))
    made.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextUnderIcon)
    made.setText(made.fontMetrics().elidedText(name, Qt.TextElideMode.ElideMiddle, 110))
    made.setToolTip(f"Open {name}")
    made.setAccessibleName(f"Open paper {name}")
    made.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
    made.clicked.connect(lambda: QDesktopServices.openUrl(QUrl.fromLocalFile(str(path))))
    return made


def thumbnail(path: Path) -> QImage | None:
    """A small picture of a scan; None for a PDF and for what Qt can't read."""
    reader = reader_of(path)
    if reader is None:
        return None
    reader.setAutoTransform(True)
    size = reader.size()
    if not size.isValid() or size.width() * size.height() > _MOST_PIXELS:
        return None
    reader.setScaledSize(size.scaled(2 * _EDGE, 2 * _EDGE, Qt.AspectRatioMode.KeepAspectRatio))
    image = reader.read()
    return None if image.isNull() else image


def _dropped(event: QDragEnterEvent | QDropEvent) -> list[Path]:
    return [path for path in dropped_paths(event) if path.is_file()]
