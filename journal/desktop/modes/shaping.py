"""The mode in which the drawing is made one's own."""

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QWidget

from journal.desktop.desk import Desk, PanelSelected, Selection
from journal.desktop.modes import Mode
from journal.desktop.modes.shaping_pane import ShapingPane
from journal.desktop.tools.box import BoxTool
from journal.desktop.tools.corners import CornersTool
from journal.desktop.tools.cut import CutTool
from journal.desktop.tools.join import JoinTool
from journal.desktop.tools.outline import OutlineTool
from journal.desktop.tools.share import ShareTool
from journal.desktop.widgets.tool_canvas import ToolCanvas
from journal.domain.changes import Changes


class ShapingMode(Mode):
    """Corners, new panels, cuts and joins by hand; names, numbers and views in the pane."""

    is_dated = False
    has_inspector = False

    def __init__(self, desk: Desk, canvas: ToolCanvas, parent: QObject | None = None) -> None:
        super().__init__(desk, canvas, parent)
        self.corners = CornersTool(desk, self)
        self.tools = (
            self.corners,
            OutlineTool(desk, self),
            BoxTool(desk, self),
            CutTool(desk, self),
            JoinTool(desk, self),
            ShareTool(desk, self),
        )
        self._pane = ShapingPane(desk, canvas, self.corners, self.tools)

    def pane(self) -> QWidget:
        """Names, numbers, stack and views."""
        return self._pane

    def enter(self) -> None:
        """Show the numbers of whichever tool is in hand."""
        self.canvas.tool_changed.connect(self._pane.show_tool)
        self.canvas.view_changed.connect(self._pane.refresh)

    def leave(self) -> None:
        """Let go of the canvas."""
        self.canvas.tool_changed.disconnect(self._pane.show_tool)
        self.canvas.view_changed.disconnect(self._pane.refresh)

    def refresh(self, changes: Changes | None) -> None:
        """Show the panel and the view as they are now."""
        if changes is None or "drawing" in changes.kinds:
            self._pane.refresh()

    def show_selection(self, selection: Selection) -> None:
        """Show the panel selected."""
        if isinstance(selection, PanelSelected):
            self.canvas.select_panel(selection.id)
        if self.corners.at_work:
            self.corners.selection_changed()
        self._pane.refresh()
