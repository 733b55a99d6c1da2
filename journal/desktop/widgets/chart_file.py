"""Saving a chart from the window: where it is proposed to lie, asked for, and written."""

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QStandardPaths
from PySide6.QtWidgets import QFileDialog, QWidget

from journal.desktop.desk import Desk

_KINDS = (".svg", ".png")


def proposed_file(desk: Desk, what: str) -> Path:
    """Where a chart is saved unless the person says otherwise: by the car's name and its own."""
    found = QStandardPaths.writableLocation(QStandardPaths.StandardLocation.DocumentsLocation)
    folder = Path(found) if found and Path(found).is_dir() else Path.home()
    title = desk.session.folder.name
    safe = "".join(sign for sign in title if sign.isalnum() or sign in " -_").strip()
    return folder / f"{safe or 'Car'} {what}.png"


def ask_chart_file(parent: QWidget, proposed: Path) -> Path | None:
    """Ask for the file; None for none."""
    name, _ = QFileDialog.getSaveFileName(
        parent, "Save the chart as", str(proposed), "Picture (*.png);;Drawing (*.svg)"
    )
    return Path(name) if name else None


def write_chart(desk: Desk, out: Path | None, save: Callable[[Path], Path]) -> None:
    """Write it by ``save`` in the background and say where it is; nothing for no file."""
    if out is None:
        return
    file = out if out.suffix.lower() in _KINDS else out.with_name(f"{out.name}.png")
    desk.run(
        "Saving the chart",
        lambda _context: save(file),
        lambda made: desk.message.emit(f"The chart is in {made}.", "done"),
    )
