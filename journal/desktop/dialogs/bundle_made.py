"""What came of making a bundle: where it is, what could not go in, what to do with it next."""

from pathlib import Path

from PySide6.QtCore import QUrl
from PySide6.QtGui import QDesktopServices
from PySide6.QtWidgets import QDialog, QDialogButtonBox, QTreeWidgetItem, QWidget

from journal.desktop.desk import Desk
from journal.desktop.widgets.parts import PlainTree, button, column, label, row
from journal.domain.bundles import BundleReport

_SIGNED = "Signed. Tell the reader your key's fingerprint by another way than this bundle:"


class BundleMadeDialog(QDialog):
    """A finished bundle.

    Attributes:
        open_file: opens a folder in the system's own program.
    """

    def __init__(self, report: BundleReport, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle("The bundle")
        self.setMinimumWidth(620)
        self._path, self._desk = Path(report.path), desk
        self.open_file = _open_with_system
        missing = PlainTree("Left out", ["What", "Why"])
        missing.addTopLevelItems([QTreeWidgetItem([f.where, f.what]) for f in report.missing])
        missing.setColumnWidth(0, 260)
        missing.setMaximumHeight(180)
        missing.setVisible(bool(report.missing))
        title = "The bundle is made"
        title += ", but not all is in it" if report.missing else ""
        layout = column(
            label(title, "heading"),
            label(str(report.path)),
            label(_counted(report), "muted"),
            missing,
            *(label(note) for note in report.notes),
            spacing=10,
            margin=20,
        )
        if report.fingerprint:
            layout.addWidget(label(_SIGNED))
            layout.addWidget(label(report.fingerprint, "muted"))
        folder = self._path if self._path.is_dir() else self._path.parent
        acts = row(
            button("Show in &folder", lambda: self.open_file(folder), icon="folder"),
            button("&Check it", self.check, icon="check"),
            button("&Time stamp\N{HORIZONTAL ELLIPSIS}", self.stamp, icon="hours"),
            None,
        )
        close = QDialogButtonBox(QDialogButtonBox.StandardButton.Close)
        close.rejected.connect(self.reject)
        acts.addWidget(close)
        layout.addLayout(acts)
        self.setLayout(layout)

    def check(self) -> None:
        """Check the bundle as a stranger would."""
        from journal.desktop.dialogs.check_result import check_and_show

        window = self.parentWidget() or self
        check_and_show(self._desk.tasks, self._path, None, window, self._desk.tell_failure)
        self.accept()

    def stamp(self) -> None:
        """Ask for a time stamp on it."""
        from journal.desktop.dialogs.bundle_stamp import StampDialog

        dialog = StampDialog(self._desk, self._path, self.parentWidget() or self)
        dialog.finished.connect(dialog.deleteLater)
        self.accept()
        dialog.open()


def _counted(report: BundleReport) -> str:
    size = f"{report.size / 1e6:,.1f} MB" if report.size >= 1e6 else f"{report.size / 1e3:,.0f} kB"
    originals = "1 original" if report.originals == 1 else f"{report.originals:,} originals"
    return f"{report.files:,} files, {size}, {originals} among them."


def _open_with_system(path: Path) -> None:
    QDesktopServices.openUrl(QUrl.fromLocalFile(str(path)))
