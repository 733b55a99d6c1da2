"""Files dropped on the window from outside."""

from pathlib import Path

from PySide6.QtCore import Qt
from PySide6.QtGui import QDropEvent


def dropped_paths(event: QDropEvent) -> list[Path]:
    """The files and folders on this machine that are held over the window."""
    return [Path(url.toLocalFile()) for url in event.mimeData().urls() if url.isLocalFile()]


def accept_copies(event: QDropEvent) -> None:
    """Say that the files stay where they are: a file manager deletes what was moved."""
    event.setDropAction(Qt.DropAction.CopyAction)
    event.accept()
