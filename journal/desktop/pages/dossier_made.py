"""What came of making a dossier: where it is, what could not be shown, and opening it."""

from collections.abc import Callable
from pathlib import Path
from typing import Any

from PySide6.QtCore import QStandardPaths, Qt, QUrl
from PySide6.QtGui import QDesktopServices
from PySide6.QtWidgets import QFileDialog, QFrame, QPushButton, QVBoxLayout, QWidget

from journal.desktop.widgets.parts import PlainList, button, clear_layout, column, label, row, tool


class MadeCard(QFrame):
    """Hidden until something is made.

    Attributes:
        open_file: opens a file or folder in the system's own program.
    """

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setProperty("role", "card")
        self.open_file: Callable[[Path], object] = open_with_system
        self.open_button: QPushButton | None = None
        self._layout = QVBoxLayout(self)
        self._layout.setContentsMargins(12, 10, 12, 10)
        self._layout.setSpacing(6)
        self.hide()

    def show_report(self, report: Any) -> None:
        """Show a dossier's report."""
        path: Path = report.path
        clear_layout(self._layout)
        pages, photos = _count(report.pages, "page"), _count(report.photos, "photo")
        said = f"Made: {path.name}, {pages} with {photos}."
        self.open_button = button(
            "&Open", lambda: self.open_file(path), icon="open", role="primary"
        )
        folder = button(
            "Show in &folder", lambda: self.open_file(path.parent), icon="folder", hint=str(path)
        )
        words = column(label(said, "subheading"), label(str(path.parent), "muted"), spacing=0)
        line = row(spacing=8)
        line.addLayout(words, 1)
        for act in (self.open_button, folder, tool("close", "Put this away", self.hide)):
            line.addWidget(act)
        self._layout.addLayout(line)
        self._add_notes(report.notes)
        self.show()

    def focus(self) -> None:
        """Let the keyboard stand on opening it."""
        if self.open_button is not None:
            self.open_button.setFocus(Qt.FocusReason.OtherFocusReason)

    def _add_notes(self, notes: tuple[str, ...]) -> None:
        if not notes:
            return
        rows = PlainList("What is to be known of it")
        rows.addItems(list(notes))
        rows.setFixedHeight(min(112, 16 + 36 * len(notes)))
        self._layout.addWidget(rows)


def choose_file(parent: QWidget, proposed: Path) -> Path | None:
    """Ask where the dossier is to be saved."""
    name, _ = QFileDialog.getSaveFileName(
        parent, "Save the dossier as", str(proposed), "PDF (*.pdf)"
    )
    if not name:
        return None
    path = Path(name)
    return path if path.suffix.lower() == ".pdf" else path.with_name(path.name + ".pdf")


def open_with_system(path: Path) -> None:
    """Open a file or folder in the system's own program."""
    QDesktopServices.openUrl(QUrl.fromLocalFile(str(path)))


def proposed_file(car: str, reader: str) -> Path:
    """Where a dossier of a car would go by itself; ``reader`` is for whom: " for a buyer"."""
    found = QStandardPaths.writableLocation(QStandardPaths.StandardLocation.DocumentsLocation)
    folder = Path(found) if found and Path(found).is_dir() else Path.home()
    safe = "".join(sign for sign in car if sign.isalnum() or sign in " -_").strip()
    return folder / f"{safe or 'Car'} dossier{reader}.pdf"


def _count(number: int, noun: str) -> str:
    """A number with its noun: "1 page", "no gaps", "1,204 photos"."""
    if number == 1:
        return f"1 {noun}"
    return f"{number:,} {noun}s" if number else f"no {noun}s"
