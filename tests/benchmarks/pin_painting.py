"""How long 2,000 pins take: gathered, spread, and painted with the drawing, against one frame.

Run it: ``QT_QPA_PLATFORM=offscreen python -m tests.benchmarks.pin_painting [PINS]``. A frame of
60 Hz is 16.7 ms. The reference is a bare QPainter loop that paints as many plain
discs as dots show. Medians of whole frames in this process.
"""

import os
import random
import statistics
import sys
import time
from collections.abc import Callable

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtCore import QPointF
from PySide6.QtGui import QColor, QImage, QPainter, QPen
from PySide6.QtWidgets import QApplication

from journal.desktop.stylesheet import dress
from journal.desktop.widgets.canvas_pins import Gathered, gather
from journal.desktop.widgets.pin_hand import PinHand
from journal.desktop.widgets.tool_canvas import ToolCanvas
from journal.domain.ids import PanelId, PhotoId, PinId
from journal.domain.photos import Pin
from journal.domain.starters import starter

_FRAMES = 60
_FRAME_MS = 1000 / 60


def _say(text: str) -> None:
    sys.stdout.write(f"{text}\n")


def _median(job: Callable[[], object]) -> float:
    times = []
    for _ in range(_FRAMES):
        began = time.perf_counter()
        job()
        times.append(1000 * (time.perf_counter() - began))
    return statistics.median(times)


def _pins(canvas: ToolCanvas, count: int) -> list[Pin]:
    chance = random.Random(1)
    panels = canvas.panels_shown()
    made = []
    for number in range(count):
        panel = chance.choice(panels)
        at = canvas.spot_on(panel.id)
        x, y = at.x() + chance.gauss(0, 120), at.y() + chance.gauss(0, 80)
        facing = chance.choice((None, chance.uniform(0, 360)))
        made.append(
            Pin(PinId(number), PhotoId(number), PanelId(panel.id), canvas.view_id, x, y, facing)
        )
    return made


def _discs(image: QImage, spots: list[tuple[QPointF, float]]) -> None:
    painter = QPainter(image)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setPen(QPen(QColor("white"), 1.5))
    painter.setBrush(QColor("#0072B2"))
    for at, radius in spots:
        painter.drawEllipse(at, radius, radius)
    painter.end()


def _report(canvas: ToolCanvas, hand: PinHand, scale: str) -> None:
    image = QImage(canvas.viewport().size(), QImage.Format.Format_RGB32)
    dots = canvas.dots()
    discs = _median(lambda: _discs(image, [(dot.at, dot.radius) for dot in dots]))
    transform, spread = canvas.viewportTransform(), canvas._zoom > 1
    gathering = _median(lambda: gather(canvas._spots, transform, spread=spread))
    without = canvas._places
    painted = _median(canvas.viewport().repaint)

    def moved() -> None:
        canvas._forget_dots()
        canvas.viewport().repaint()

    def zoomed() -> None:
        canvas._gathered = Gathered()
        moved()

    pulled, whole = _median(moved), _median(zoomed)
    hand.choose(tuple(pin for dot in dots for pin in dot.pins()))
    chosen = _median(canvas.viewport().repaint)
    hand.choose(())
    canvas.set_pins(())
    bare = _median(canvas.viewport().repaint)
    canvas.set_places(without)
    _say(f"{scale}: {len(dots)} dots")
    _say(f"  gather {gathering:.1f} ms; plain discs {discs:.2f} ms")
    _say(f"  a frame {painted:.1f} ms, of it the drawing {bare:.1f} ms; all chosen {chosen:.1f} ms")
    for what, took in (("pulling the sheet", pulled), ("another scale", whole)):
        fits = "within" if took <= _FRAME_MS else "OVER"
        _say(f"  {what}: {took:.1f} ms, {fits} {_FRAME_MS:.1f} ms")


def main() -> None:
    """Measure far out and near."""
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 2000
    app = QApplication([])
    dress(app, "light")
    canvas = ToolCanvas()
    canvas.resize(1300, 800)
    canvas.set_drawing(starter("saloon"))
    canvas.panel_map().prepare()
    canvas.set_map(canvas.panel_map())
    canvas.show()
    app.processEvents()
    canvas.set_pins(_pins(canvas, count))
    hand = PinHand(canvas)
    _say(f"{count} pins on one view")
    _report(canvas, hand, "far out")
    canvas.zoom(5)
    _report(canvas, hand, "near")


if __name__ == "__main__":
    main()
