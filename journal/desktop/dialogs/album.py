"""Making the web album: for whom, and where; and what came of it."""

from collections.abc import Callable
from functools import partial
from pathlib import Path

from PySide6.QtCore import QStandardPaths, QUrl, Slot
from PySide6.QtGui import QDesktopServices
from PySide6.QtWidgets import QComboBox, QDialog, QDialogButtonBox, QFileDialog, QWidget

from journal.actions.albums import album_place, make_album
from journal.actions.dossier_cuts import choices_of
from journal.desktop.desk import Desk
from journal.desktop.dialogs.form import FormDialog
from journal.desktop.widgets.parts import PlainList, button, column, label, row
from journal.domain.albums import MARKER, START_PAGE, AlbumReport
from journal.domain.cuts import Choices, Cut

_WORDS = (
    "A folder of plain pages that any browser opens, on a phone too: for a forum, a club or the "
    "family. It asks for nothing outside its own folder."
)
_AS_DOSSIER = "It says what the dossier for the same reader says."
_AGAIN = "Choose an album made before, and it is made anew; your own files in it stay."


class AlbumDialog(FormDialog):
    """For whom an album is; then asks where it is to be.

    Attributes:
        choose: asks for the folder, given the place proposed; None for none.
        made: called with the report when the album is there.
    """

    def __init__(
        self, desk: Desk, parent: QWidget | None = None, choices: Choices | None = None
    ) -> None:
        super().__init__("Make the web album", "&Choose where\N{HORIZONTAL ELLIPSIS}", parent)
        self.choose: Callable[[Path], Path | None] = self._ask_place
        # The dialog is gone by the time the album is made: what shows it must not need it.
        self.made: Callable[[AlbumReport], None] = partial(_show_report, parent)
        self._desk = desk
        self._given = choices
        self.cut = QComboBox()
        self.held_back = label("", "muted")
        for cut in Cut:
            self.cut.addItem(cut.words, cut)
        self.cut.setCurrentIndex(self.cut.findData(choices.cut if choices else Cut.BUYER))
        self.outer.insertWidget(0, label(_WORDS, "muted"))
        self.add_row("&Reader", self.cut, _AS_DOSSIER)
        self.form.addRow("", self.held_back)
        self.form.addRow("", label(_AGAIN, "muted"))
        self.cut.currentIndexChanged.connect(self._on_cut)
        self._on_cut()

    @Slot()
    def _on_cut(self) -> None:
        choices = self._choices()
        withheld = sorted(kind.value for kind in choices.withheld) if choices else []
        self.held_back.setText(
            f"Withheld: {', '.join(withheld)}."
            if withheld
            else "Nothing is withheld. Think of who will see it before you give it away."
        )

    def _choices(self) -> Choices | None:
        cut = Cut(self.cut.currentData())
        if self._given is not None and self._given.cut is cut:
            return self._given
        return self._desk.ask(choices_of, cut)

    def submit(self) -> bool:
        """Ask for the place and begin; whether one was chosen."""
        # What redacts a whole record is wanted for this act alone.
        from journal.actions.privacy import title_for_others

        choices = self._choices()
        title = self._desk.ask(title_for_others, choices.withheld) if choices else None
        if choices is None or title is None:
            return False
        out = self.choose(album_place(_documents(), title))
        if out is None:
            return False
        session, made = self._desk.session, self.made
        self._desk.run(
            "Making the web album",
            lambda context: make_album(session, out, context, choices),
            made,
        )
        return True

    def _ask_place(self, proposed: Path) -> Path | None:
        name = QFileDialog.getExistingDirectory(
            self, "Put the album's folder into which folder?", str(proposed.parent)
        )
        return place_in(Path(name), proposed.name) if name else None


def _show_report(parent: QWidget | None, report: AlbumReport) -> None:
    dialog = AlbumMadeDialog(report, parent)
    dialog.finished.connect(dialog.deleteLater)
    dialog.open()


def place_in(folder: Path, name: str) -> Path:
    """Where an album goes when ``folder`` was chosen: an album made before is made anew."""
    if (folder / MARKER).is_file():
        return folder
    place, number = folder / name, 2
    while place.exists():
        place, number = folder / f"{name} ({number})", number + 1
    return place


class AlbumMadeDialog(QDialog):
    """A finished album.

    Attributes:
        open_file: opens a file or folder in the system's own program.
    """

    def __init__(self, report: AlbumReport, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle("The web album")
        self.setMinimumWidth(560)
        self.open_file: Callable[[Path], object] = _open_with_system
        folder = Path(report.path)
        photos = "1 photo" if report.photos == 1 else f"{report.photos:,} photos"
        notes = PlainList("What is to be known of it")
        notes.addItems(list(report.notes))
        notes.setFixedHeight(min(160, 12 + 44 * len(report.notes)))
        notes.setVisible(bool(report.notes))
        layout = column(
            label("The web album is made", "heading"),
            label(str(folder)),
            label(f"{report.pages:,} pages, {photos}. Give the whole folder away.", "muted"),
            notes,
            *(label(words, "muted") for words in report.withheld),
            spacing=8,
            margin=20,
        )
        close = QDialogButtonBox(QDialogButtonBox.StandardButton.Close)
        close.rejected.connect(self.reject)
        self.open_button = button(
            "&Open it",
            lambda: self.open_file(folder / START_PAGE),
            icon="open",
            role="primary",
            hint="In your browser",
        )
        acts = row(
            self.open_button,
            button("Show in &folder", lambda: self.open_file(folder), icon="folder"),
            None,
        )
        acts.addWidget(close)
        layout.addLayout(acts)
        self.setLayout(layout)
        self.open_button.setFocus()


def _documents() -> Path:
    found = QStandardPaths.writableLocation(QStandardPaths.StandardLocation.DocumentsLocation)
    return Path(found) if found and Path(found).is_dir() else Path.home()


def _open_with_system(path: Path) -> None:
    QDesktopServices.openUrl(QUrl.fromLocalFile(str(path)))
