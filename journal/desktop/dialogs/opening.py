"""Opening a dialog over the window without stopping the program behind it."""

from typing import TypeVar

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QDialog

_D = TypeVar("_D", bound=QDialog)


def open_dialog(dialog: _D) -> _D:
    """Show a dialog over its parent's window; it goes for good when it is closed."""
    dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
    dialog.open()
    return dialog
