"""The tool that cuts a panel in two along a line."""

from PySide6.QtCore import QObject
from PySide6.QtGui import QPainter, QTransform

from journal.desktop.desk import Desk
from journal.desktop.tools.drawing_tool import DrawingTool
from journal.desktop.tools.naming import Naming
from journal.desktop.tools.overlay import on_screen, paint_corner, paint_length, paint_line
from journal.desktop.tools.shaping_tool import CLICK
from journal.desktop.tools.tool import Held
from journal.domain.drawing import Drawing, Side, System
from journal.domain.errors import JournalError
from journal.domain.ids import PanelId
from journal.domain.shapes import Point
from journal.domain.shaping.cutting import cut_panel
from journal.domain.shaping.segments import point_at, rounded_point

_FIRST = "Drag a line across the panel, or click where the cut begins: before its edge or on it."
_MORE = "Click on; double-click or Enter where the cut ends. Backspace takes the last point back."


class CutTool(DrawingTool):
    """A line across a panel, then the name of the smaller piece."""

    name = "Cut"
    icon = "cut"
    what = "Cut a panel in two along a line"

    def __init__(self, desk: Desk, parent: QObject | None = None) -> None:
        self._points: list[Point] = []
        self._pressed: Point | None = None
        self._cut: PanelId | None = None
        super().__init__(desk, parent)

    def guide(self) -> str:
        """What to do next."""
        return _MORE if self._points else _FIRST

    def last(self) -> Point | None:
        """The point put last."""
        return self._points[-1] if self._points else None

    def add(self, point: Point) -> None:
        """Put a point of the line."""
        if not self._points or point != self._points[-1]:
            self._points.append(rounded_point(point))

    def take_back(self) -> bool:
        """Take the last point back."""
        return bool(self._points and self._points.pop())

    def clear(self) -> None:
        """Begin anew."""
        self._points, self._pressed, self._cut = [], None, None

    def pressed(self, point: Point, held: Held) -> None:
        """Put a point of the line; the first one may be dragged to the other end."""
        if self.naming is None:
            self._pressed = None if self._points else point
            self.add(self.catch(point, held).point)
            self.tell()

    def released(self, point: Point, held: Held) -> None:
        """End the line, if it was dragged."""
        pressed, self._pressed = self._pressed, None
        if pressed is not None and not self.near(point, pressed, CLICK):
            self.add(self.catch(point, held).point)
            self.finish()

    def double_clicked(self, point: Point, held: Held) -> None:
        """End the line."""
        if self.naming is None:
            self.add(self.catch(point, held).point)
            self.finish()

    def finish(self) -> None:
        """Ask for the name of the piece; refused, the line is dropped."""
        panel_id = self._panel_under_line()
        if panel_id is None:
            self._drop("The line crosses no panel.")
            return
        try:
            self._check(panel_id)
        except JournalError as error:
            self._drop(str(error))
            return
        self._cut = panel_id
        panel = self.drawing.panel(panel_id)
        title = f"The piece cut off {panel.label}"
        name = _free_name(self.drawing, panel.name, panel.side)
        self.ask_name(Naming(title, name, panel.side, panel.system, with_side=False))

    def _drop(self, words: str) -> None:
        self.refuse(words)
        self.clear()
        self.tell()

    def _panel_under_line(self) -> PanelId | None:
        """The panel marked where the line cuts it, else the one under the line's middle."""
        marked = self.panel_id
        if marked is not None:
            try:
                self._check(marked)
            except JournalError:
                pass
            else:
                return marked
        if len(self._points) < 2:
            return marked
        at = len(self._points) // 2
        return self.canvas.panel_under(point_at((self._points[at - 1], self._points[at]), 0.5))

    def _check(self, panel_id: PanelId) -> None:
        """Cut for trial.

        Raises:
            JournalError: the line doesn't cut the panel in two.
        """
        assert self.view_id is not None
        panel = self.drawing.panel(panel_id)
        name = _free_name(self.drawing, panel.name, panel.side)
        cut_panel(self.drawing, panel_id, self.view_id, self._points, name)

    def named(self, name: str, side: Side, system: System) -> bool:
        """Cut the panel."""
        del side, system
        panel, view, line = self._cut, self.view_id, tuple(self._points)
        if panel is None or view is None:
            return False
        label = f"Cut {' '.join(name.split())} off {self.label_of(panel)}"
        made = self.reshape(label, lambda d: cut_panel(d, panel, view, line, name))
        if made is None:
            return False
        self.ask_name(None)
        self.cancel()
        self.pick(PanelId(made.made or 0))
        return True

    def paint_over(self, painter: QPainter, to_screen: QTransform) -> None:
        """Paint the line."""
        font, colours = self.canvas.font(), self.colours
        ahead = [self.snap.point] if self.snap and self._points and self.naming is None else []
        spots = [on_screen(point, to_screen) for point in (*self._points, *ahead)]
        paint_line(painter, spots, colours, dashed=self.naming is None, width=3)
        if ahead:
            paint_length(painter, (self._points[-1], ahead[0]), to_screen, colours, font)
        for spot in spots[: len(self._points)]:
            paint_corner(painter, spot, colours)
        self.paint_cross(painter, to_screen)


def _free_name(drawing: Drawing, name: str, side: Side) -> str:
    """A name for a piece of a panel that no other panel of the side has."""
    taken = {p.name.casefold() for p in drawing.panels if p.side == side}
    number = 2
    made = f"{name} part"
    while made.casefold() in taken:
        made, number = f"{name} part {number}", number + 1
    return made
