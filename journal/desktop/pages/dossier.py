"""The page of the dossier: what will be in it, one press to make it, and what came of it."""

from collections.abc import Iterator
from pathlib import Path
from typing import Any

from PySide6.QtCore import QStandardPaths, Qt, QUrl
from PySide6.QtGui import QDesktopServices
from PySide6.QtWidgets import (
    QApplication,
    QFileDialog,
    QFrame,
    QGridLayout,
    QLabel,
    QLineEdit,
    QVBoxLayout,
    QWidget,
)

from journal.actions.dossiers import make_dossier, preview_dossier
from journal.desktop import icons
from journal.desktop.desk import Desk
from journal.desktop.pages import Page
from journal.desktop.tasks import Task
from journal.desktop.theme import colours_of
from journal.desktop.widgets.parts import button, card, clear_layout, column, label, row, scrolled
from journal.domain.changes import Changes

_WIDTH = 760
_SIGN = 24


class DossierPage(Page):
    """Makes the document for a buyer, a valuer or the owner.

    Attributes:
        choose: asks for the file, given the page and the file proposed; None for none.
        open_file: opens a file or folder in the system's own program.
    """

    title = "Dossier"
    icon = "dossier"
    inspects = ()

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, parent)
        self.choose = choose_file
        self.open_file = open_with_system
        self._reading: Task | None = None
        self._task: Task | None = None
        self._name = "Dossier"
        self._contents: tuple[tuple[str, str], ...] = ()
        self._grid = QGridLayout()
        self.make_button = button(
            "&Make the dossier", self.make, icon="dossier", role="primary", hint="Choose a file"
        )
        self.bundle_button = button(
            "Make the &bundle\N{HORIZONTAL ELLIPSIS}",
            self.make_bundle,
            icon="bundle",
            hint="Dossier, record and originals in one package that a stranger can check",
        )
        self.state = label("", "muted")
        self.result = QFrame()
        self._result_layout = QVBoxLayout(self.result)
        self._build()

    def _build(self) -> None:
        content = QWidget()
        inner = QWidget()
        inner.setMaximumWidth(_WIDTH)
        self._grid.setHorizontalSpacing(12)
        self._grid.setVerticalSpacing(10)
        self._grid.setColumnStretch(1, 1)
        contents = card(label("What will be in it", "subheading"))
        contents_layout = contents.layout()
        assert isinstance(contents_layout, QVBoxLayout)
        contents_layout.addLayout(self._grid)
        self.result.setProperty("role", "card")
        self._result_layout.setContentsMargins(12, 12, 12, 12)
        self._result_layout.setSpacing(8)
        self.result.hide()
        words = label(
            "A PDF that a stranger can follow: the car, each repair area with before, during and "
            "after, what it cost, what proves each statement and what is not proven, and a list "
            "of every photo and paper with its date and checksum.",
            "muted",
        )
        layout = column(label("The dossier", "heading"), words, contents, spacing=12, margin=24)
        made = row(self.make_button, self.bundle_button, self.state)
        made.setStretch(2, 1)
        layout.addLayout(made)
        layout.addWidget(self.result)
        layout.addStretch(1)
        inner.setLayout(layout)
        centred = row(None, inner, None)
        centred.setStretchFactor(inner, 100)
        content.setLayout(centred)
        self.setLayout(column(scrolled(content)))
        self.setFocusProxy(self.make_button)

    # --- what will be in it ---

    def refresh(self, changes: Changes | None) -> None:
        """Count again what would be in it, off the main thread: the whole record is read."""
        if changes is not None and not changes.kinds:
            return
        if self._reading is not None:
            self._reading.cancel()
        session = self.desk.session

        def job(_context: object) -> tuple[str, tuple[tuple[str, str], ...]]:
            dossier = preview_dossier(session)
            return dossier.car.title, tuple(_contents(dossier))

        self._reading = self.desk.read(job, self._show, self)

    def contents(self) -> tuple[str, ...]:
        """What will be in it, as the page says it."""
        return tuple(words for _, words in self._contents)

    def _show(self, found: tuple[str, tuple[tuple[str, str], ...]]) -> None:
        self._reading = None
        self._name, self._contents = found
        while (item := self._grid.takeAt(0)) is not None:
            if (widget := item.widget()) is not None:
                widget.hide()
                widget.deleteLater()
        for place, (sign, words) in enumerate(self._contents):
            picture = QLabel()
            colour = colours_of(self.palette()).text
            picture.setPixmap(icons.icon(sign, colour).pixmap(_SIGN, _SIGN))
            self._grid.addWidget(picture, place, 0)
            self._grid.addWidget(label(words), place, 1)
            if sign == "gaps":
                see = button("See the gaps", self._to_gaps, role="quiet")
                self._grid.addWidget(see, place, 2)

    # --- making it ---

    def make(self) -> None:
        """Ask for a file and make the dossier there."""
        if self._task is not None:
            return
        out = self.choose(self, _proposed(self._name))
        if out is None:
            return
        session = self.desk.session
        self.result.hide()
        self.state.setText("Under way; the strip at the bottom shows how far.")
        self.make_button.setEnabled(False)
        task = self.desk.run(
            "Making the dossier",
            lambda context: make_dossier(session, out, context),
            self._on_made,
            self._on_cancelled,
        )
        task.on_failed = self._on_failed
        self._task = task

    def _on_made(self, report: Any) -> None:
        self._end("")
        path: Path = report.path
        clear_layout(self._result_layout)
        pages, photos = report.pages, report.photos
        said = f"Made: {path.name}, {_count(pages, 'page')} with {_count(photos, 'photo')}."
        self._result_layout.addWidget(label(said, "subheading"))
        self._result_layout.addWidget(label(str(path.parent), "muted"))
        opens = button("&Open", lambda: self.open_file(path), icon="open", role="primary")
        acts = row(
            opens,
            button("Show in &folder", lambda: self.open_file(path.parent), icon="folder"),
            None,
        )
        self._result_layout.addLayout(acts)
        for note in report.notes:
            self._result_layout.addWidget(label(note))
        self.result.show()
        if self.isVisible() and not isinstance(QApplication.focusWidget(), QLineEdit):
            opens.setFocus(Qt.FocusReason.OtherFocusReason)

    def _on_cancelled(self) -> None:
        self._end("Stopped; no file was made.")

    def _on_failed(self, error: Exception) -> None:
        self._end("It could not be made.")
        self.desk.tell_failure(error)

    def _end(self, words: str) -> None:
        self._task = None
        self.state.setText(words)
        self.make_button.setEnabled(True)

    def make_bundle(self) -> None:
        """Ask what goes into a bundle, and make it."""
        from journal.desktop.dialogs.bundle import BundleDialog

        dialog = BundleDialog(self.desk, self.window())
        dialog.exec()
        dialog.deleteLater()

    def _to_gaps(self) -> None:
        self.desk.show_page("Gaps")


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


def _proposed(car: str) -> Path:
    found = QStandardPaths.writableLocation(QStandardPaths.StandardLocation.DocumentsLocation)
    folder = Path(found) if found and Path(found).is_dir() else Path.home()
    safe = "".join(sign for sign in car if sign.isalnum() or sign in " -_").strip()
    return folder / f"{safe or 'Car'} dossier.pdf"


def _contents(dossier: Any) -> Iterator[tuple[str, str]]:
    """Icon and words for each part, from what the dossier would say today."""
    yield "car", f"The car: {dossier.car.title}, {_count(len(dossier.identity), 'particular')}"
    if dossier.milestones:
        yield "milestone", _count(len(dossier.milestones), "milestone")
    yield "drawing", "The drawing, with how far each panel is"
    areas = len(dossier.areas)
    yield "areas", f"{_count(areas, 'repair area')}, with what was found and what was done"
    shown = len(dossier.shown)
    yield "photo", f"{_count(shown, 'photo')} of them, before, during and after"
    receipts = len(dossier.costs.receipts)
    yield "receipt", f"{_count(receipts, 'receipt')}, and what it cost laid out"
    lacking = sum(len(lack.items) for lack in dossier.lacks)
    yield "gaps", f"{_count(lacking, 'gap')}, stated openly"
    yield "check", "How each date is known, and the SHA-256 of every photo and paper used"


def _count(number: int, noun: str) -> str:
    """A number with its noun: "1 page", "no gaps", "1,204 photos"."""
    if number == 1:
        return f"1 {noun}"
    return f"{number:,} {noun}s" if number else f"no {noun}s"
