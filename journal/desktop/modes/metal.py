"""The mode in which welding and readings are drawn on the car."""

from PySide6.QtCore import QObject, Slot
from PySide6.QtWidgets import QWidget

from journal.desktop.desk import Desk, Selection
from journal.desktop.modes import Mode
from journal.desktop.modes.metal_fields import MetalFields
from journal.desktop.modes.point_fields import PointFields
from journal.desktop.tools.anchor import AnchorTool
from journal.desktop.tools.measure import MeasureTool
from journal.desktop.tools.metal_select import MetalSelectTool
from journal.desktop.tools.patch import PatchTool
from journal.desktop.tools.seam import SeamTool
from journal.desktop.tools.seam_state import SeamStateTool
from journal.desktop.tools.shaping_tool import ShapingTool
from journal.desktop.tools.tool import Tool
from journal.desktop.widgets.metal_board import board_on
from journal.desktop.widgets.metal_reading import MetalFound
from journal.desktop.widgets.metal_side import MetalSide
from journal.desktop.widgets.parts import column
from journal.desktop.widgets.tool_canvas import ToolCanvas
from journal.domain.changes import Changes
from journal.domain.ids import ViewId
from journal.domain.shapes import Point


class MetalMode(Mode):
    """Seams, patches, anchor points and measures by hand or number; their sums in the pane."""

    def __init__(self, desk: Desk, canvas: ToolCanvas, parent: QObject | None = None) -> None:
        super().__init__(desk, canvas, parent)
        self.board = board_on(desk, canvas)
        self.select_tool = MetalSelectTool(desk, self.board, self)
        self.tools = (
            self.select_tool,
            SeamStateTool(desk, self.board, self),
            SeamTool(desk, self),
            PatchTool(desk, self),
            AnchorTool(desk, self),
            MeasureTool(desk, self),
        )
        self.fields = MetalFields(desk)
        self.point = PointFields()
        self.side = MetalSide(desk)
        self._pane = QWidget()
        self._pane.setAccessibleName("Metal")
        head = column(self.fields, self.point, margin=8)
        layout = column(spacing=0)
        layout.addLayout(head)
        layout.addWidget(self.side, 1)
        self._pane.setLayout(layout)
        self._connect()

    def _connect(self) -> None:
        self.board.read.connect(self._on_read)
        self.board.day_changed.connect(self.side.look_at)
        self.side.layers_changed.connect(self.board.layer.show_layers)
        self.side.view_wanted.connect(lambda number: self.canvas.set_view(ViewId(number)))
        self.point.put.connect(self._on_put)
        for tool in self.tools:
            if isinstance(tool, ShapingTool):
                tool.here_changed.connect(self._show_point)
        self.side.look_at(self.board.on)
        if self.board.found is not None:
            self.side.show_found(self.board.found)

    def pane(self) -> QWidget:
        """The fields of the tool in hand, and the sums."""
        return self._pane

    def enter(self) -> None:
        """Show all the metalwork, and the fields of whichever tool is in hand."""
        self.canvas.tool_changed.connect(self._on_tool)
        self.board.quiet.work(at_work=True)

    def leave(self) -> None:
        """Let go of the canvas."""
        self.canvas.tool_changed.disconnect(self._on_tool)
        self.board.quiet.work(at_work=False)

    def refresh(self, changes: Changes | None) -> None:
        """Offer the repair areas there are; the board reads the metalwork itself."""
        if changes is None or "areas" in changes.kinds:
            self.fields.read_areas()

    def show_selection(self, selection: Selection) -> None:
        """Show what is selected with its points."""
        del selection
        if self.select_tool.at_work:
            self.select_tool.selection_changed()

    @Slot(object)
    def _on_tool(self, tool: Tool | None) -> None:
        self.fields.show_tool(tool)
        self._show_point()

    def _on_read(self, found: MetalFound) -> None:
        self.side.show_found(found)
        if self.select_tool.at_work:
            self.select_tool.selection_changed()

    def _show_point(self) -> None:
        tool = self.canvas.tool
        if not isinstance(tool, ShapingTool) or isinstance(tool, SeamStateTool):
            self.point.hide()
            return
        draws = not isinstance(tool, MetalSelectTool)
        self.point.show_point(tool.here(), tool.origin(), draws=draws)

    def _on_put(self, point: Point) -> None:
        tool = self.canvas.tool
        if isinstance(tool, ShapingTool):
            tool.put(point)
