"""What the tools that put points have in common: catching, a cursor for the keyboard."""

from PySide6.QtCore import QObject, QPointF, Qt
from PySide6.QtGui import QColor, QKeyEvent, QPainter, QPen, QTransform

from journal.desktop.desk import Desk
from journal.desktop.tools.naming import Naming, NamingTool
from journal.desktop.tools.overlay import on_screen, paint_snap
from journal.desktop.tools.shaping_tool import arrow_step
from journal.desktop.tools.tool import Held
from journal.domain.shapes import Point
from journal.domain.shaping.snapping import Snap, Why

_NAME_IT = "Name it on the left, then press Enter. Esc goes back to the drawing of it."


class DrawingTool(NamingTool):
    """A tool that puts one point after another until a piece is done and waits for its name.

    By keys: arrows move a cross (1 mm, with Shift 10), Space puts a point there, Enter ends,
    Backspace takes the last one back.
    """

    def __init__(self, desk: Desk, parent: QObject | None = None) -> None:
        super().__init__(desk, parent)
        self.snap: Snap | None = None
        self.naming: Naming | None = None
        self._by_key = False
        self.tell()

    # What each of them says

    def last(self) -> Point | None:
        """The point put last, which the next one is measured from."""
        raise NotImplementedError

    def add(self, point: Point) -> None:
        """Put a point, caught already."""
        raise NotImplementedError

    def take_back(self) -> bool:
        """Take the last point back; whether there was one."""
        raise NotImplementedError

    def finish(self) -> None:
        """The points are all there."""

    def clear(self) -> None:
        """Forget all points."""
        raise NotImplementedError

    def guide(self) -> str:
        """What to do next while nothing waits for a name."""
        raise NotImplementedError

    # What they share

    def tell(self) -> None:
        """Say what can be done now, and show it."""
        self.say(_NAME_IT if self.naming else self.guide())
        self.here_changed.emit()
        self.repaint()

    def ask_name(self, naming: Naming | None) -> None:
        """Wait for a name, or no more."""
        if naming != self.naming:
            self.naming = naming
            self.naming_changed.emit(naming)
        self.tell()

    def here(self) -> Point | None:
        """Where the next point would go."""
        return self.snap.point if self.snap else None

    def origin(self) -> Point | None:
        """The point put last."""
        return self.last()

    def put(self, point: Point) -> None:
        """Put a point given by numbers."""
        if self.naming is None:
            self.add(point)
            self.snap = Snap(point, Why.FREE)
            self.tell()

    def spot(self) -> Point | None:
        """The point the hand is at."""
        return self.here() or super().spot()

    def catch(self, point: Point, held: Held) -> Snap:
        """Where a point comes to rest, square to the last one."""
        self._by_key = False
        self.snap = self.caught(point, held, start=self.last())
        return self.snap

    def moved(self, point: Point, held: Held) -> None:
        """Show where a point would go."""
        if self.naming is None:
            self.catch(point, held)
            self.tell()

    def key(self, event: QKeyEvent) -> bool:
        """Move the cross, put a point, end, take back."""
        if self.naming is not None:
            return False
        step, key = arrow_step(event), event.key()
        if step is not None:
            self._move_cross(*step)
        elif key == Qt.Key.Key_Space and self.snap is not None:
            self.add(self.snap.point)
        elif key in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.finish()
        elif key in (Qt.Key.Key_Backspace, Qt.Key.Key_Delete):
            self.take_back()
        else:
            return False
        self.tell()
        return True

    def _move_cross(self, dx: float, dy: float) -> None:
        start = self.snap.point if self.snap else self._first_place()
        self._by_key = True
        self.snap = Snap(Point(start.x + dx, start.y + dy), Why.FREE)

    def _first_place(self) -> Point:
        """Where the cross begins: on the panel marked, else the middle of what is seen."""
        if self.panel_id is not None:
            at = self.canvas.spot_on(self.panel_id)
        else:
            at = self.canvas.mapToScene(self.canvas.viewport().rect().center())
        return Point(float(round(at.x())), float(round(at.y())))

    @property
    def is_half_done(self) -> bool:
        """Whether a point was put."""
        return self.last() is not None

    def step_back(self) -> None:
        """Take the name asked for back, else the last point."""
        if self.naming is not None:
            self.cancel()
        else:
            self.take_back()
            self.tell()

    def cancel(self) -> bool:
        """Drop the name asked for, else all points."""
        if self.naming is not None:
            self.ask_name(None)
            return True
        had = self.last() is not None
        self.clear()
        self.snap = None
        self.tell()
        return had

    def shown_changed(self) -> None:
        """Begin anew on another view or drawing."""
        self.naming_changed.emit(None)
        self.naming = None
        self.cancel()

    def paint_cross(self, painter: QPainter, to_screen: QTransform) -> None:
        """Paint what caught the spot, and the cross of the keyboard."""
        if self.snap is None or self.naming is not None:
            return
        paint_snap(painter, self.snap, to_screen, self.colours, self.canvas.font())
        if self._by_key:
            at = on_screen(self.snap.point, to_screen)
            painter.setPen(QPen(QColor(self.colours.focus), 2))
            painter.drawLine(at - QPointF(14, 0), at + QPointF(14, 0))
            painter.drawLine(at - QPointF(0, 14), at + QPointF(0, 14))
