"""Papers of several receipts, each read and checked after the other."""

from collections.abc import Sequence
from pathlib import Path

from PySide6.QtCore import QObject, QTimer
from PySide6.QtWidgets import QDialogButtonBox, QWidget

from journal.actions.reading import ReadPaper
from journal.desktop.desk import Desk
from journal.desktop.dialogs.opening import open_dialog
from journal.desktop.dialogs.receipt import ReceiptDialog
from journal.desktop.dialogs.receipt_reading import read_in_background
from journal.desktop.tasks import Task


class ReceiptQueue(QObject):
    """Opens the form for one paper after the other; the next one is read meanwhile.

    Recording or skipping a form goes on to the next; “Leave the rest” ends the queue.
    """

    def __init__(self, desk: Desk, paths: Sequence[Path], window: QWidget) -> None:
        super().__init__(window)
        self._desk = desk
        self._window = window
        self._paths = tuple(paths)
        self._at = -1
        self._read: dict[Path, ReadPaper] = {}
        self._ahead: Task | None = None
        self.dialog: ReceiptDialog | None = None

    def start(self) -> None:
        """Open the form for the first paper."""
        self._go_on()

    def _go_on(self) -> None:
        self._at += 1
        self.dialog = None
        if self._at >= len(self._paths):
            self.deleteLater()
            return
        path = self._paths[self._at]
        dialog = ReceiptDialog(self._desk, self._window)
        self.dialog = dialog
        if len(self._paths) > 1:
            dialog.setWindowTitle(f"New receipt, {self._at + 1} of {len(self._paths)}: {path.name}")
            dialog.cancel_button.setText("S&kip")
            rest = dialog.buttons.addButton(
                "Lea&ve the rest", QDialogButtonBox.ButtonRole.DestructiveRole
            )
            rest.setAutoDefault(False)
            rest.clicked.connect(self._on_leave)
        dialog.finished.connect(self._go_on)
        open_dialog(dialog)
        # The form paints first: making it and the pane for the paper in one go takes too long.
        QTimer.singleShot(0, dialog, self._give_paper)

    def _give_paper(self) -> None:
        if self.dialog is None:
            return
        path = self._paths[self._at]
        ready = self._read.pop(path, None)
        if self._ahead is not None:
            self._ahead.cancel()
        if ready is not None:
            self.dialog.reading.show_kept(ready)
        self.dialog.papers.add_files([path])
        self._read_ahead()

    def _read_ahead(self) -> None:
        """Read the next paper while this one is being checked."""
        if self._at + 1 < len(self._paths):
            path = self._paths[self._at + 1]
            self._ahead = read_in_background(self._desk, path, self._keep, self)

    def _keep(self, paper: ReadPaper) -> None:
        self._ahead = None
        if self._paths[self._at] != paper.path:
            self._read[paper.path] = paper

    def _on_leave(self) -> None:
        self._at = len(self._paths)
        if self.dialog is not None:
            self.dialog.reject()
