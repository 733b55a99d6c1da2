"""What the tools have in common that take one panel, then its neighbour."""

from PySide6.QtCore import QObject, Qt
from PySide6.QtGui import QColor, QKeyEvent, QPainter, QTransform

from journal.desktop.desk import Desk
from journal.desktop.tools.overlay import paint_path
from journal.desktop.tools.shaping_tool import ShapingTool
from journal.desktop.tools.tool import Held
from journal.domain.ids import PanelId
from journal.domain.shapes import Point


class PickTwoTool(ShapingTool):
    """One panel, then another, then it is done. By keys: arrows travel, Enter takes."""

    cursor = Qt.CursorShape.PointingHandCursor

    def __init__(self, desk: Desk, parent: QObject | None = None) -> None:
        super().__init__(desk, parent)
        self.first: PanelId | None = None
        self._hint = self.guide(None)

    def guide(self, first: str | None) -> str:
        """What to do next; ``first`` is the label of the first panel once it is taken."""
        raise NotImplementedError

    def do(self, first: PanelId, second: PanelId) -> None:
        """Both are known."""
        raise NotImplementedError

    def _take(self, panel_id: PanelId | None) -> None:
        first, self.first = self.first, None
        if panel_id is None:
            self.first = first
        elif first is None:
            self.first = panel_id
            self.canvas.select_panel(panel_id)
        else:
            self.do(first, panel_id)
        self._tell()

    def _tell(self) -> None:
        self.say(self.guide(self.label_of(self.first) if self.first is not None else None))
        self.repaint()

    def pressed(self, point: Point, _held: Held) -> None:
        """Take the panel there."""
        self._take(self.canvas.panel_under(point))

    def key(self, event: QKeyEvent) -> bool:
        """Travel, or take the panel marked."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Space):
            self._take(self.panel_id)
            return True
        return self.travelled(event)

    @property
    def is_half_done(self) -> bool:
        """Whether the first panel is taken."""
        return self.first is not None

    def cancel(self) -> bool:
        """Let the first panel go."""
        had, self.first = self.first is not None, None
        self.say(self.guide(None))
        self.repaint()
        return had

    def paint_over(self, painter: QPainter, to_screen: QTransform) -> None:
        """Paint the panel taken first."""
        outline = self.canvas.outline_of(self.first) if self.first is not None else None
        if outline is not None:
            shown = to_screen.map(outline)
            wash = QColor(self.colours.accent)
            wash.setAlpha(50)
            painter.fillPath(shown, wash)
            paint_path(painter, shown, self.colours, dashed=True, width=3)
