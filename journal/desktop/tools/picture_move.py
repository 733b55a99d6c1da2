"""The tool that moves the picture under a view as a whole."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent, QPainter, QTransform

from journal.actions.tracing import set_underlay
from journal.desktop.tools.overlay import on_screen, paint_line
from journal.desktop.tools.picture_tool import PictureTool
from journal.desktop.tools.shaping_tool import arrow_step
from journal.desktop.tools.tool import Held
from journal.domain.homographies import Matrix, moved_by, product
from journal.domain.shapes import Point

_GUIDE = "Drag the picture to where the drawing is; arrows move it 1 mm, with Shift 10."
_NUDGED = "Enter keeps it here, Esc puts it back."


class MoveTool(PictureTool):
    """Drags the picture; by keys it is moved in steps until Enter."""

    name = "Move"
    icon = "move-picture"
    what = "Move the picture under the drawing"
    cursor = Qt.CursorShape.SizeAllCursor
    starts = ((0.0, 0.0), (1.0, 0.0), (1.0, 1.0), (0.0, 1.0))

    _from: Point | None = None
    _by: tuple[float, float] = (0.0, 0.0)

    def guide(self) -> str:
        """What to do next."""
        return _NUDGED if any(self._by) and self._from is None else _GUIDE

    def labels(self) -> tuple[str, ...]:
        """No letters: it has no handles."""
        return ()

    def _matrix(self) -> Matrix | None:
        laid = self.laid
        return (
            product(moved_by(*self._by), laid.underlay.matrix) if laid and any(self._by) else None
        )

    def _preview(self) -> None:
        if self.canvas.underlay_item is not None:
            self.canvas.underlay_item.preview(self._matrix())
        self.tell()

    def _keep(self) -> None:
        laid, matrix = self.laid, self._matrix()
        self._from, self._by = None, (0.0, 0.0)
        if laid is None or matrix is None:
            return
        if self.attempt(set_underlay, laid.underlay.view_id, matrix=matrix) is None:
            self._preview()

    def shown_changed(self) -> None:
        """Forget a move not kept yet."""
        self._from, self._by = None, (0.0, 0.0)
        super().shown_changed()

    def cancel(self) -> bool:
        """Put the picture back."""
        had = any(self._by) or self._from is not None
        self._from, self._by = None, (0.0, 0.0)
        if self.at_work:
            self._preview()
        return had

    def pressed(self, point: Point, _held: Held) -> None:
        """Take hold of the picture."""
        self._from = Point(point.x - self._by[0], point.y - self._by[1])

    def moved(self, point: Point, _held: Held) -> None:
        """Move the picture along."""
        if self._from is not None and self.laid is not None:
            self._by = (point.x - self._from.x, point.y - self._from.y)
            self._preview()

    def released(self, _point: Point, _held: Held) -> None:
        """Keep the picture there."""
        if self._from is not None:
            self._keep()

    def key(self, event: QKeyEvent) -> bool:
        """Move the picture by steps; keep it."""
        step = arrow_step(event)
        if self.laid is None:
            return False
        if step is not None:
            self._by = (self._by[0] + step[0], self._by[1] + step[1])
            self._preview()
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and any(self._by):
            self._keep()
        else:
            return False
        return True

    def paint_over(self, painter: QPainter, to_screen: QTransform) -> None:
        """Paint the edge of the picture."""
        dx, dy = self._by
        moved = [Point(place.x + dx, place.y + dy) for place in self.places]
        spots = [on_screen(place, to_screen) for place in moved]
        if spots:
            paint_line(painter, [*spots, spots[0]], self.colours, dashed=True, width=1.0)
