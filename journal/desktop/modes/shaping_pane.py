"""The pane of the shaping mode: the name asked for; numbers; the panel marked; the view."""

from PySide6.QtCore import Slot
from PySide6.QtWidgets import QTabWidget, QWidget

from journal.desktop.desk import Desk
from journal.desktop.modes.name_fields import NameFields
from journal.desktop.modes.panel_fields import PanelFields
from journal.desktop.modes.point_fields import PointFields
from journal.desktop.modes.view_fields import ViewFields
from journal.desktop.tools.corners import CornersTool
from journal.desktop.tools.naming import Naming, NamingTool
from journal.desktop.tools.shaping_tool import ShapingTool
from journal.desktop.tools.tool import Tool
from journal.desktop.widgets.parts import column, scrolled
from journal.desktop.widgets.tool_canvas import ToolCanvas


class ShapingPane(QWidget):
    """Names and numbers for what the hand does, and all that needs no hand."""

    def __init__(
        self,
        desk: Desk,
        canvas: ToolCanvas,
        corners: CornersTool,
        tools: tuple[Tool, ...],
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.setAccessibleName("Shaping")
        self._canvas = canvas
        self._tool: ShapingTool | None = None
        self.name = NameFields()
        self.point = PointFields()
        self.panel = PanelFields(desk, canvas, corners)
        self.view = ViewFields(desk, canvas)
        shape = QWidget()
        shape.setLayout(column(self.point, self.panel, None, margin=8, spacing=12))
        self.tabs = QTabWidget()
        self.tabs.addTab(scrolled(shape), "Pane&l")
        view = QWidget()
        view.setLayout(column(self.view, None, margin=8))
        self.tabs.addTab(scrolled(view), "&View")
        self.setLayout(column(self.name, self.tabs, spacing=0))
        self.name.hide()
        self.name.named.connect(self._on_named)
        self.name.given_up.connect(self._on_given_up)
        self.point.put.connect(self._on_put)
        for tool in tools:
            if isinstance(tool, NamingTool):
                tool.naming_changed.connect(self._on_naming)
            if isinstance(tool, ShapingTool):
                tool.here_changed.connect(self._show_point)

    @Slot(object)
    def show_tool(self, tool: Tool | None) -> None:
        """Show the numbers of another tool."""
        self._tool = tool if isinstance(tool, ShapingTool) else None
        self._show_point()
        self.panel.refresh()

    @Slot()
    def refresh(self) -> None:
        """Show the panel marked and the view as they are now."""
        self.panel.refresh()
        self.view.refresh()
        self._show_point()

    @Slot()
    def _show_point(self) -> None:
        tool = self._tool
        if tool is None or not tool.at_work:
            self.point.show_point(None, None, draws=False)
            return
        draws = isinstance(tool, NamingTool)
        self.point.show_point(tool.here(), tool.origin(), draws=draws)
        self.panel.show_corner()

    @Slot(object)
    def _on_put(self, point: object) -> None:
        if self._tool is not None and self._tool.at_work:
            self._tool.put(point)  # type: ignore[arg-type]

    @Slot(object)
    def _on_naming(self, naming: Naming | None) -> None:
        self.tabs.setVisible(naming is None)
        self.name.ask(naming)
        if naming is None:
            self._canvas.setFocus()

    @Slot()
    def _on_named(self) -> None:
        tool = self._tool
        if isinstance(tool, NamingTool) and tool.at_work:
            tool.named(self.name.name, self.name.side, self.name.system)

    @Slot()
    def _on_given_up(self) -> None:
        if self._tool is not None and self._tool.at_work:
            self._tool.cancel()
