"""Choosing what is to be checked: a bundle, or a photo that might be one of the journal's."""

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QStandardPaths
from PySide6.QtGui import QDragEnterEvent, QDropEvent
from PySide6.QtWidgets import QDialog, QDialogButtonBox, QFileDialog, QWidget

from journal.desktop.widgets.drops import accept_copies, dropped_paths
from journal.desktop.widgets.parts import button, column, label, row

CHECK_TITLE, STAMP_TITLE = "Check a bundle or photo", "Time stamp on a bundle"
_CHECK = (
    "A bundle is checked where it lies; nothing is unpacked and nothing is changed. A photo, or "
    "the pages of a PDF, are looked up in the journal that is open."
)
_STAMP = "A bundle made from this journal, to be stamped or whose stamp has come."


class CheckWhatDialog(QDialog):
    """Two ways to choose, and a place to drop things on; ``stamp`` asks for a bundle alone.

    Attributes:
        choose_folder, choose_file: ask for one; None for none.
        path: what was chosen, None until then.
        authorities: certificates of time stamp authorities that the person trusts.
    """

    def __init__(self, parent: QWidget | None = None, *, stamp: bool = False) -> None:
        super().__init__(parent)
        title = STAMP_TITLE if stamp else CHECK_TITLE
        self.setWindowTitle(title)
        self.setMinimumWidth(520)
        self.setAcceptDrops(True)
        self.choose_folder: Callable[[], Path | None] = self._ask_folder
        self.choose_file: Callable[[], Path | None] = self._ask_file
        self.path: Path | None = None
        self.authorities: tuple[Path, ...] = ()
        self.trusted = label("", "muted")
        self.trusted.hide()
        ellipsis = "\N{HORIZONTAL ELLIPSIS}"
        folder = button(f"A bundle's &folder{ellipsis}", self.take_folder, icon="folder")
        files = "&ZIP or tar file" if stamp else "&ZIP, tar, photo or PDF"
        file = button(f"A {files}{ellipsis}", self.take_file, icon="file")
        trust = button(
            f"Certificate of a time stamp &authority{ellipsis}",
            self.take_authority,
            role="quiet",
            hint="Only needed to find out who a time stamp is really from",
        )
        trust.setVisible(not stamp)
        cancel = QDialogButtonBox(QDialogButtonBox.StandardButton.Cancel)
        cancel.rejected.connect(self.reject)
        layout = column(
            label(title, "heading"),
            label(_STAMP if stamp else _CHECK, "muted"),
            label("Drop it here, or choose:"),
            spacing=12,
            margin=20,
        )
        layout.addLayout(row(folder, file, None))
        layout.addLayout(row(trust, None))
        layout.addWidget(self.trusted)
        layout.addStretch(1)
        layout.addWidget(cancel)
        self.setLayout(layout)

    def take_folder(self) -> None:
        """Ask for a folder and be done."""
        self._take(self.choose_folder())

    def take_file(self) -> None:
        """Ask for a file and be done."""
        self._take(self.choose_file())

    def take_authority(self) -> None:
        """Ask for a certificate to trust."""
        path = self.choose_file()
        if path is not None:
            self.authorities = (*self.authorities, path)
            names = ", ".join(one.name for one in self.authorities)
            self.trusted.setText(f"Trusted: {names}")
            self.trusted.show()

    def _take(self, path: Path | None) -> None:
        if path is not None:
            self.path = path
            self.accept()

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Take files and folders."""
        if dropped_paths(event):
            accept_copies(event)

    def dropEvent(self, event: QDropEvent) -> None:
        """Check the first of what was dropped."""
        accept_copies(event)
        self._take(dropped_paths(event)[0])

    def _ask_folder(self) -> Path | None:
        name = QFileDialog.getExistingDirectory(self, "Check which bundle?", _documents())
        return Path(name) if name else None

    def _ask_file(self) -> Path | None:
        name, _ = QFileDialog.getOpenFileName(self, "Which file?", _documents())
        return Path(name) if name else None


def _documents() -> str:
    return QStandardPaths.writableLocation(QStandardPaths.StandardLocation.DocumentsLocation)
