"""Papers of receipts given to the ledger: chosen or dropped, then read one after the other."""

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QFileDialog, QWidget

from journal.desktop.desk import Desk
from journal.desktop.dialogs.opening import open_dialog

if TYPE_CHECKING:
    from journal.desktop.dialogs.receipt_queue import ReceiptQueue

_KINDS = "Photos, scans and PDFs (*.pdf *.jpg *.jpeg *.png *.tif *.tiff *.heic *.webp)"


def choose_papers(desk: Desk, over: QWidget) -> None:
    """Ask which papers to read, and read them."""
    names, _ = QFileDialog.getOpenFileNames(
        over, "Read which receipts?", "", f"{_KINDS};;All files (*)"
    )
    read_papers(desk, [Path(name) for name in names], over)


def read_papers(desk: Desk, paths: Sequence[Path], over: QWidget) -> "ReceiptQueue | None":
    """Read papers, each as one receipt, and open their forms one after the other.

    Spreadsheets among them are brought in: what they hold is shown first.
    """
    from journal.actions.bring_in import is_sheet

    found = [path for path in paths if path.is_file() and not desk.read_only]
    files = [path for path in found if not is_sheet(path)]
    for path in found:
        if is_sheet(path):
            from journal.desktop.dialogs.bring_in_sheet import BringInSheetDialog

            open_dialog(BringInSheetDialog(desk, path, over))
    if not files:
        return None
    from journal.desktop.dialogs.receipt_queue import ReceiptQueue

    queue = ReceiptQueue(desk, files, over)
    queue.start()
    return queue
