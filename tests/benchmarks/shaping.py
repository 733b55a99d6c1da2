"""How quickly the drawing answers the hand: 400 panels, 2,000 pins, 600 seams.

Run it: ``python -m tests.benchmarks.shaping``. Three things are timed: which panel lies under a
spot, in the domain; a corner that four panels share being dragged, from the move of the mouse to
the painted picture; and, as the reference, a widget of the same size that paints the same 400
polygons in a bare QPainter loop and nothing else. The two take turns, so that both see the same
machine.
"""

import os
import random
import statistics
import sys
import time
from collections.abc import Callable

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtCore import QEvent, QPointF, Qt
from PySide6.QtGui import QColor, QMouseEvent, QPainter, QPaintEvent, QPen, QTransform
from PySide6.QtWidgets import QApplication, QWidget

from journal.actions.metalwork import Metal
from journal.desktop.stylesheet import dress
from journal.desktop.tools.corners import CornersTool
from journal.desktop.widgets.metal_layer import Laid, MetalLayer
from journal.desktop.widgets.paths import painter_path
from journal.desktop.widgets.tool_canvas import ToolCanvas
from journal.domain.areas import DEFAULT_STAGES
from journal.domain.drawing import Drawing, Panel, PanelShape, Side, System, View
from journal.domain.hits import PanelMap
from journal.domain.ids import AreaId, PanelId, PhotoId, PinId, SeamId, ViewId
from journal.domain.photos import Pin
from journal.domain.seams import Joint, Seam
from journal.domain.shapes import Contour, Curve, Line, Point, Shape, Stroke
from journal.domain.shaping.segments import rounded_point

_ACROSS, _DOWN, _CELL = 25, 16, 160.0
_PINS, _SEAMS = 2_000, 600
_SPOTS, _FRAMES = 5_000, 200
_SIZE = (1400, 900)
_FRAME_MS = 1000 / 60
_VIEW = View(ViewId(1), "Left side", (_ACROSS + 1) * _CELL, (_DOWN + 1) * _CELL)


def _say(text: str) -> None:
    sys.stdout.write(f"{text}\n")


def _drawing() -> Drawing:
    """A crooked net of panels that share corners and edges; every fourth edge is a curve."""
    dice = random.Random(7)
    net = {
        (i, j): rounded_point(
            Point(
                (i + 0.5) * _CELL + dice.uniform(-25, 25), (j + 0.5) * _CELL + dice.uniform(-25, 25)
            )
        )
        for i in range(_ACROSS + 1)
        for j in range(_DOWN + 1)
    }
    panels, shapes = [], []
    for number in range(_ACROSS * _DOWN):
        i, j = number % _ACROSS, number // _ACROSS
        a, b, c, d = net[i, j], net[i + 1, j], net[i + 1, j + 1], net[i, j + 1]
        edges = (_across(a, b, j), Line(c), _across(c, d, j + 1), Line(a))
        panels.append(Panel(PanelId(number + 1), f"Piece {number + 1}", Side.LEFT, System.OUTER))
        shape = Shape((Contour(a, edges),))
        shapes.append(PanelShape(PanelId(number + 1), _VIEW.id, shape, number))
    return Drawing((_VIEW,), tuple(panels), tuple(shapes))


def _across(start: Point, end: Point, row: int) -> Line | Curve:
    """A straight edge in odd rows of the net, a curve in even ones."""
    if row % 2:
        return Line(end)
    left, right = sorted((start, end))
    third = (right.x - left.x) / 3
    one = rounded_point(Point(left.x + third, left.y - 12))
    two = rounded_point(Point(right.x - third, right.y + 12))
    return Curve(one, two, end) if start == left else Curve(two, one, end)


def _pins(dice: random.Random) -> list[Pin]:
    return [
        Pin(
            PinId(n),
            PhotoId(n),
            PanelId(dice.randint(1, _ACROSS * _DOWN)),
            _VIEW.id,
            dice.uniform(0, _VIEW.width),
            dice.uniform(0, _VIEW.height),
            dice.uniform(0, 360),
        )
        for n in range(1, _PINS + 1)
    ]


def _metal(dice: random.Random) -> Metal:
    seams = []
    for n in range(1, _SEAMS + 1):
        x, y = dice.uniform(100, _VIEW.width - 300), dice.uniform(100, _VIEW.height - 300)
        edges = (Line(Point(x + 90, y + dice.uniform(-40, 40))), Line(Point(x + 180, y)))
        stroke = Stroke(Point(x, y), edges)
        joint = (Joint.BUTT, Joint.LAP, Joint.PLUGS)[n % 3]
        spacing = 40.0 if joint is Joint.PLUGS else None
        seams.append(Seam(SeamId(n), AreaId(1), _VIEW.id, stroke, joint, spacing))
    return Metal(seams=tuple(seams), changes=(), patches=(), anchors=())


class _Plain(QWidget):
    """Paints the same polygons, filled and outlined, as fast as Qt can."""

    def __init__(self, drawing: Drawing, to_screen: QTransform) -> None:
        super().__init__()
        self.resize(*_SIZE)
        self._paths = [painter_path(placed.shape) for placed in drawing.shapes]
        self._to_screen = to_screen

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: N802 - Qt's name
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.fillRect(event.rect(), QColor("#f7f5f0"))
        painter.setTransform(self._to_screen)
        pen = QPen(QColor("#6b645a"), 1.2)
        pen.setCosmetic(True)
        painter.setPen(pen)
        painter.setBrush(QColor("#e9e5dd"))
        for path in self._paths:
            painter.drawPath(path)


def _line(name: str, times: list[float]) -> str:
    p95 = statistics.quantiles(times, n=100)[94]
    return f"{name:40} median {statistics.median(times):7.3f} ms  p95 {p95:7.3f}"


def _time(act: Callable[[], object]) -> float:
    start = time.perf_counter()
    act()
    return (time.perf_counter() - start) * 1000


def _hits(drawing: Drawing) -> None:
    """Which panel lies under spots all over the view."""
    dice = random.Random(3)
    spots = [(dice.uniform(0, _VIEW.width), dice.uniform(0, _VIEW.height)) for _ in range(_SPOTS)]
    panels = PanelMap(drawing)
    _say(f"hit test made ready in {_time(lambda: panels.panel_at(_VIEW.id, 0, 0)):.1f} ms")
    times = [_time(lambda spot=spot: panels.panel_at(_VIEW.id, *spot)) for spot in spots]
    _say(f"{_line('hit test of a spot', times)}  (promised: under 1 ms)")


def _canvas(drawing: Drawing) -> ToolCanvas:
    dice = random.Random(5)
    canvas = ToolCanvas()
    canvas.resize(*_SIZE)
    canvas.set_drawing(drawing)
    stages = {p.id: dice.choice(("", "", *DEFAULT_STAGES)) for p in drawing.panels}
    canvas.set_stages(stages, DEFAULT_STAGES)
    canvas.set_pins(_pins(dice))
    MetalLayer(canvas, canvas).lay(Laid(_metal(dice)))
    canvas.show()
    return canvas


def _send(canvas: ToolCanvas, kind: QEvent.Type, at: QPointF, held: bool) -> None:
    left, none = Qt.MouseButton.LeftButton, Qt.MouseButton.NoButton
    button = none if kind is QEvent.Type.MouseMove else left
    event = QMouseEvent(
        kind, at, at, button, left if held else none, Qt.KeyboardModifier.NoModifier
    )
    QApplication.sendEvent(canvas.viewport(), event)


def _drags(drawing: Drawing, canvas: ToolCanvas, tool: CornersTool) -> None:
    """A corner dragged about, each move with its whole repaint."""
    middle = PanelId(_ACROSS * (_DOWN // 2) + _ACROSS // 2)
    canvas.select_panel(middle)
    canvas.set_tool(tool)
    QApplication.processEvents()
    corner = drawing.shapes[middle - 1].shape.contours[0].start
    home = QPointF(canvas.mapFromScene(QPointF(*corner)))
    plain = _Plain(drawing, canvas.viewportTransform())
    plain.show()
    QApplication.processEvents()
    resting = [_time(canvas.viewport().repaint) for _ in range(20)]
    _send(canvas, QEvent.Type.MouseButtonPress, home, True)

    def move(number: int) -> None:
        at = home + QPointF(10 + number % 23, 6 + number % 17)
        _send(canvas, QEvent.Type.MouseMove, at, True)
        canvas.viewport().repaint()

    first = _time(lambda: move(0))
    dragged, reference = [], []
    for number in range(_FRAMES):
        reference.append(_time(plain.repaint))
        dragged.append(_time(lambda number=number: move(number)))
        QApplication.processEvents()
    tool.cancel()
    ratio = statistics.median(dragged) / statistics.median(reference)
    _say(_line("400 polygons by a bare loop", reference))
    _say(_line("the canvas at rest, painted in whole", resting))
    _say(f"the first move of a drag                 {first:14.3f} ms")
    _say(f"{_line('a move of a dragged corner, painted', dragged)}  {ratio:.2f} x the bare loop")
    _say(f"one frame at 60 Hz is {_FRAME_MS:.1f} ms")


def main() -> None:
    app = QApplication([])
    dress(app, "light")
    drawing = _drawing()
    _say(f"{len(drawing.shapes)} panels, {_PINS:,} pins, {_SEAMS} seams, {_SIZE[0]}x{_SIZE[1]}")
    _hits(drawing)
    canvas = _canvas(drawing)
    _drags(drawing, canvas, CornersTool(None))  # type: ignore[arg-type]
    canvas.set_tool(None)


if __name__ == "__main__":
    main()
