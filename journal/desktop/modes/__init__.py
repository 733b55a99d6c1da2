"""The modes of the drawing: looking, shaping and others; each brings its tools and its pane."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QWidget

from journal.desktop.desk import Desk, Selection
from journal.desktop.tools.tool import Tool
from journal.domain.changes import Changes

if TYPE_CHECKING:
    from journal.desktop.widgets.tool_canvas import ToolCanvas


class Mode(QObject):
    """One way to use the drawing, entered and left by the bar above the canvas.

    Nothing of it is at work before ``enter`` and after ``leave``.

    Attributes:
        is_dated: whether the car is shown as it stood on a day, with the years below it.
        has_inspector: whether the inspector may stand beside the drawing. It would narrow it
            under the hand, so a mode whose own pane tells of what is selected goes without.
        tools: its tools in the order of the bar; the first one is taken up on entering.
    """

    is_dated: bool = True
    has_inspector: bool = True
    tools: tuple[Tool, ...] = ()

    #: Another of its tools is to be taken up: the Tool.
    tool_wanted = Signal(object)

    def __init__(self, desk: Desk, canvas: "ToolCanvas", parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.desk = desk
        self.canvas = canvas

    def pane(self) -> QWidget | None:
        """What stands on the left while the mode is on, made once; None leaves what is there."""
        return None

    def enter(self) -> None:
        """The mode is on now."""

    def leave(self) -> None:
        """The mode is off now."""

    def refresh(self, changes: Changes | None) -> None:
        """Read again what ``changes`` touched; everything where it is None. Only while on.

        A changed drawing has been given to the canvas by then.
        """

    def show_selection(self, selection: Selection) -> None:
        """Follow what is selected. Only while on."""
