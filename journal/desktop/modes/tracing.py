"""The mode in which a picture is laid under a view, squared up and drawn over."""

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QWidget

from journal.desktop.desk import Desk, Selection
from journal.desktop.modes import Mode
from journal.desktop.modes.tracing_pane import TracingPane
from journal.desktop.tools.picture_move import MoveTool
from journal.desktop.tools.picture_scale import ScaleTool
from journal.desktop.tools.picture_square import SquareUpTool
from journal.desktop.widgets.tool_canvas import ToolCanvas
from journal.domain.changes import Changes


class TracingMode(Mode):
    """Move, square up and scale the picture; lay it under, fade it and hide it in the pane."""

    has_inspector = False

    def __init__(self, desk: Desk, canvas: ToolCanvas, parent: QObject | None = None) -> None:
        super().__init__(desk, canvas, parent)
        self.move, self.square, self.scale = (
            MoveTool(desk, self),
            SquareUpTool(desk, self),
            ScaleTool(desk, self),
        )
        self.tools = (self.move, self.square, self.scale)
        self._pane = TracingPane(desk, canvas, self.square, self.scale)

    def pane(self) -> QWidget:
        """The picture: laid under, faded, shown, squared up and scaled by numbers."""
        return self._pane

    def enter(self) -> None:
        """Follow the canvas."""
        self.canvas.tool_changed.connect(self._pane.show_tool)
        self.canvas.underlay_changed.connect(self._pane.refresh)

    def leave(self) -> None:
        """Let go of the canvas."""
        self.canvas.tool_changed.disconnect(self._pane.show_tool)
        self.canvas.underlay_changed.disconnect(self._pane.refresh)

    def refresh(self, changes: Changes | None) -> None:
        """Show the picture under the view as it is now."""
        if changes is None or "drawing" in changes.kinds:
            self._pane.refresh()

    def show_selection(self, selection: Selection) -> None:
        """Offer the photo selected to be laid under."""
        self._pane.show_selection(selection)
