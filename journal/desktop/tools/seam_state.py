"""The tool that moves a seam on: drag along it for a part, click for all of it."""

from PySide6.QtCore import QObject, Qt
from PySide6.QtGui import QColor, QKeyEvent, QPainter, QPen, QTransform

from journal.desktop.desk import Desk, MetalKind, MetalSelected
from journal.desktop.dialogs.opening import open_dialog
from journal.desktop.tools.overlay import on_screen, paint_words, spoken_mm
from journal.desktop.tools.shaping_tool import CLICK, ShapingTool
from journal.desktop.tools.tool import Held
from journal.desktop.widgets.metal_board import MetalBoard
from journal.desktop.widgets.paths import stroke_path
from journal.domain.ids import SeamId
from journal.domain.seams import LEAST_MM, Seam, SeamChange, length
from journal.domain.shapes import Point
from journal.domain.strokes import mm_at, part_of, point_at

_GUIDE = (
    "Drag along a seam to say how far that part is, or click it for all of it. "
    "Tab goes to the next seam, Enter asks for from and to."
)
#: Near an end, in pixels, the end is meant.
_END = 10.0


class SeamStateTool(ShapingTool):
    """Marks a part of a seam, and asks for its state, date and photos."""

    name = "Move on"
    icon = "done"
    what = "Move a seam, or a part of it, to tacked, welded or dressed"
    hides_pins = True

    def __init__(self, desk: Desk, board: MetalBoard, parent: QObject | None = None) -> None:
        super().__init__(desk, parent)
        self._board = board
        self._seam: Seam | None = None
        self._pressed: Point | None = None
        self._part: tuple[float, float] | None = None
        self.say(_GUIDE)

    @property
    def part(self) -> tuple[float, float] | None:
        """The part being marked, from and to in millimetres along its seam."""
        return (min(self._part), max(self._part)) if self._part else None

    def pressed(self, point: Point, held: Held) -> None:
        """Begin a part on the seam there."""
        del held
        thing = self._board.layer.thing_at(point, [MetalKind.SEAM])
        self._seam = self._seam_of(thing)
        if thing is None or self._seam is None:
            return
        self.desk.select(thing)
        self._pressed = point
        at = self._along(point)
        self._part = (at, at)

    def moved(self, point: Point, held: Held) -> None:
        """Drag the end of the part along the seam."""
        del held
        if self._pressed is not None and self._part is not None:
            self._part = (self._part[0], self._along(point))
            self.repaint()

    def released(self, point: Point, held: Held) -> None:
        """Ask for the state of the part, or of the whole seam after a click."""
        del held
        part, pressed, seam = self.part, self._pressed, self._seam
        self.cancel()
        if seam is None or pressed is None or part is None:
            return
        is_click = self.near(point, pressed, CLICK) or part[1] - part[0] < LEAST_MM
        self.ask(seam, None if is_click else part)

    def ask(self, seam: Seam, part: tuple[float, float] | None = None) -> None:
        """Ask for the state, its date, note and photos."""
        from journal.desktop.dialogs.seam_state import SeamStateDialog

        over = self.canvas.window()
        open_dialog(SeamStateDialog(self.desk, seam, over, changes=self._changes(seam), part=part))

    def key(self, event: QKeyEvent) -> bool:
        """Go from seam to seam; Enter asks for the one selected."""
        key = event.key()
        if key in (Qt.Key.Key_Tab, Qt.Key.Key_Backtab):
            return self._step(1 if key == Qt.Key.Key_Tab else -1)
        chosen = self.desk.selection
        seam = self._seam_of(chosen if isinstance(chosen, MetalSelected) else None)
        if key in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and seam is not None:
            self.ask(seam)
            return True
        return False

    def cancel(self) -> bool:
        """Drop the part."""
        had = self._part is not None
        self._seam = self._pressed = self._part = None
        self.repaint()
        return had

    def paint_over(self, painter: QPainter, to_screen: QTransform) -> None:
        """Paint the part being marked, with its length."""
        part, seam = self.part, self._seam
        if part is None or seam is None or part[1] - part[0] < LEAST_MM:
            return
        path = to_screen.map(stroke_path(part_of(seam.stroke, *part)))
        painter.strokePath(path, QPen(QColor(self.colours.accent), 9))
        middle = on_screen(point_at(seam.stroke, sum(part) / 2), to_screen)
        middle.setY(middle.y() - 26)
        words = f"{part[0]:.0f} to {part[1]:.0f}, {spoken_mm(part[1] - part[0])}"
        paint_words(painter, middle, words, self.colours, self.canvas.font())

    def _along(self, point: Point) -> float:
        """How far along the seam, in whole millimetres; near an end, the end."""
        assert self._seam is not None
        mm, whole = mm_at(self._seam.stroke, point.x, point.y)[0], length(self._seam)
        end = min(self.canvas.mm(_END), whole / 4)
        if mm < end:
            return 0.0
        return whole if mm > whole - end else float(round(mm))

    def _changes(self, seam: Seam) -> list[SeamChange]:
        found = self._board.found
        known = found.laid.metal.changes if found else ()
        return [change for change in known if change.seam_id == seam.id]

    def _seam_of(self, thing: MetalSelected | None) -> Seam | None:
        found = self._board.found
        if found is None or thing is None or thing.kind is not MetalKind.SEAM:
            return None
        return next((s for s in found.laid.metal.seams if s.id == SeamId(thing.id)), None)

    def _step(self, by: int) -> bool:
        things = [t for t in self._board.layer.items if t.kind is MetalKind.SEAM]
        if not things:
            return False
        chosen = self.desk.selection
        at = things.index(chosen) if chosen in things else (-1 if by > 0 else 0)
        self.desk.select(things[(at + by) % len(things)])
        return True
