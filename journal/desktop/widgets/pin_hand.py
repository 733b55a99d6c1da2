"""Pins under the hand: a lasso chooses them, dragging moves them, Alt and dragging turns them.

The canvas tells it of the mouse first, while no tool is in hand. What it makes out of it is told
by signals; nothing is written here.
"""

import math
from dataclasses import dataclass, field
from enum import Enum
from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QObject, QPointF, Qt, Signal
from PySide6.QtGui import QColor, QKeyEvent, QMouseEvent, QPainter, QPen, QPolygonF, QTransform

from journal.desktop.theme import colours_of
from journal.desktop.widgets.canvas_pins import Dot
from journal.desktop.widgets.pin_paint import paint_rings
from journal.domain.ids import PanelId, PhotoId

if TYPE_CHECKING:
    from journal.desktop.widgets.tool_canvas import ToolCanvas

#: A press becomes a drag past so many pixels.
_REACH = 6.0
#: A dot is hit by a miss of so many pixels.
_SLACK = 4.0
#: Turned by hand, a camera's way is caught at whole steps of so many degrees.
_STEP_DEGREES = 5

PlacedPhoto = tuple[PhotoId, PanelId]


class Doing(Enum):
    """What the hand is at."""

    PRESSED = 0
    MOVING = 1
    TURNING = 2
    LASSO = 3


@dataclass(slots=True)
class _Grip:
    """A press and what became of it; spots in pixels of the viewport."""

    doing: Doing
    start: QPointF
    dot: Dot | None
    now: QPointF
    path: list[QPointF] = field(default_factory=list)

    @property
    def degrees(self) -> float:
        """Which way the hand is from the dot, clockwise from up."""
        middle = self.start if self.dot is None else self.dot.at
        away = self.now - middle
        angle = math.degrees(math.atan2(away.x(), -away.y()))
        return round(angle / _STEP_DEGREES) * _STEP_DEGREES % 360


class PinHand(QObject):
    """Chooses, moves and turns pins by mouse; the chosen ones are marked on the canvas."""

    #: Other pins are chosen by hand: a tuple of (photo, panel).
    picked = Signal(object)
    #: Pins are to be moved: a tuple of (photo, panel), the panel, the view, x, y in millimetres.
    move_wanted = Signal(object, int, int, float, float)
    #: Pins are to be turned: a tuple of (photo, panel), degrees clockwise from up, x, y of the dot.
    turn_wanted = Signal(object, float, float, float)

    def __init__(self, canvas: "ToolCanvas", parent: QObject | None = None) -> None:
        super().__init__(parent or canvas)
        self._canvas = canvas
        self._grip: _Grip | None = None
        self._chosen: tuple[PlacedPhoto, ...] = ()
        #: Whether pins may be moved and turned, not only chosen.
        self.writable = True
        canvas.add_layer(self.paint)
        canvas.hand = self

    @property
    def chosen(self) -> tuple[PlacedPhoto, ...]:
        """The pins that moving and turning take."""
        return self._chosen

    def choose(self, pins: tuple[PlacedPhoto, ...]) -> None:
        """Mark these pins as chosen."""
        if pins != self._chosen:
            self._chosen = pins
            self._canvas.viewport().update()

    # What the canvas tells

    def key(self, event: QKeyEvent) -> bool:
        """Esc lets go of what is under way; whether that was meant."""
        if self._grip is None or event.key() != Qt.Key.Key_Escape:
            return False
        if event.type() == QEvent.Type.KeyPress:
            self._drop_grip()
        return True

    def dot_at(self, spot: QPointF) -> Dot | None:
        """The dot under a spot of the viewport, or just beside it."""
        near = [
            (math.hypot(dot.at.x() - spot.x(), dot.at.y() - spot.y()), number, dot)
            for number, dot in enumerate(self._canvas.dots())
        ]
        away, _, dot = min(near, default=(math.inf, 0, None))
        return dot if dot is not None and away <= dot.radius + _SLACK else None

    def pressed(self, event: QMouseEvent) -> bool:
        """A button went down; True where the canvas has nothing to do with it."""
        if event.button() != Qt.MouseButton.LeftButton:
            return False
        spot, held = event.position(), event.modifiers()
        dot = self.dot_at(spot)
        if held & Qt.KeyboardModifier.ShiftModifier:
            self._grip = _Grip(Doing.LASSO, spot, dot, spot, [spot])
        elif dot is None or not dot.pins() or not self.writable:
            return False
        elif held & Qt.KeyboardModifier.AltModifier:
            self._grip = _Grip(Doing.TURNING, spot, dot, spot)
        else:
            # It may be a click: the canvas sees the press too.
            self._grip = _Grip(Doing.PRESSED, spot, dot, spot)
            return False
        self._canvas.viewport().update()
        return True

    def moved(self, event: QMouseEvent) -> bool:
        """The pointer moved; True where the canvas has nothing to do with it."""
        grip = self._grip
        if grip is None:
            return False
        if not event.buttons() & Qt.MouseButton.LeftButton:
            self._drop_grip()
            return False
        grip.now = event.position()
        pulled = grip.now - grip.start
        if grip.doing is Doing.PRESSED and math.hypot(pulled.x(), pulled.y()) > _REACH:
            grip.doing = Doing.MOVING
        if grip.doing is Doing.LASSO:
            grip.path.append(grip.now)
        elif grip.doing is Doing.MOVING:
            self._canvas.show_goal(self._canvas.panel_at(grip.now.toPoint()))
        self._canvas.viewport().update()
        return True

    def released(self, event: QMouseEvent) -> bool:
        """A button went up; True where the canvas has nothing to do with it."""
        grip = self._grip
        if grip is None or event.button() != Qt.MouseButton.LeftButton:
            return False
        grip.now = event.position()
        self._drop_grip()
        if grip.doing is Doing.LASSO:
            self._end_lasso(grip)
        elif grip.doing is Doing.MOVING:
            self._end_move(grip)
        elif grip.doing is Doing.TURNING:
            self._end_turn(grip)
        else:
            # A click: the canvas tells it of the photos.
            self.choose(grip.dot.pins() if grip.dot else ())
            return False
        return True

    def _drop_grip(self) -> None:
        self._grip = None
        self._canvas.show_goal(None)
        self._canvas.viewport().update()

    # What came of it

    def _end_lasso(self, grip: _Grip) -> None:
        pulled = max((_apart(grip.start, spot) for spot in grip.path), default=0.0)
        if pulled <= _REACH:
            caught = dict.fromkeys(self._chosen)
            for pin in grip.dot.pins() if grip.dot else ():
                # A second Shift and click lets go of what the first one took.
                if pin in caught:
                    del caught[pin]
                else:
                    caught[pin] = None
        else:
            loop = QPolygonF([*grip.path, grip.now])
            caught = dict.fromkeys(
                pin
                for dot in self._canvas.dots()
                if loop.containsPoint(dot.at, Qt.FillRule.WindingFill)
                for pin in dot.pins()
            )
        self.choose(tuple(caught))
        self.picked.emit(tuple(caught))

    def _end_move(self, grip: _Grip) -> None:
        panel_id, view_id = self._canvas.panel_at(grip.now.toPoint()), self._canvas.view_id
        if panel_id is None or view_id is None or grip.dot is None:
            return
        at = self._millimetres(grip.now)
        self.move_wanted.emit(self._meant(grip.dot), panel_id, view_id, at.x(), at.y())

    def _end_turn(self, grip: _Grip) -> None:
        if grip.dot is not None and _apart(grip.dot.at, grip.now) > grip.dot.radius:
            at = self._millimetres(grip.dot.at)
            self.turn_wanted.emit(self._meant(grip.dot), grip.degrees, at.x(), at.y())

    def _meant(self, dot: Dot) -> tuple[PlacedPhoto, ...]:
        """All that are chosen, where the dot is among them; else the dot's own."""
        own = dot.pins()
        return self._chosen if set(own) & set(self._chosen) else own

    def _millimetres(self, spot: QPointF) -> QPointF:
        back, _ = self._canvas.viewportTransform().inverted()
        return back.map(spot)

    # Painting

    def paint(self, painter: QPainter, _to_screen: QTransform) -> None:
        """Mark the chosen pins, and what the hand is at."""
        if self._canvas.tool is not None:
            return
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        colours = colours_of(self._canvas.palette())
        focus = QColor(colours.focus)
        if self._chosen:
            chosen = set(self._chosen)
            dots = [dot for dot in self._canvas.dots() if not chosen.isdisjoint(dot.pins())]
            paint_rings(painter, dots, colours)
        grip = self._grip
        if grip is None or grip.doing is Doing.PRESSED:
            return
        painter.setPen(QPen(focus, 2, Qt.PenStyle.DashLine))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        if grip.doing is Doing.LASSO:
            wash = QColor(focus)
            wash.setAlpha(30)
            painter.setBrush(wash)
            painter.drawPolygon(QPolygonF(grip.path))
        elif grip.doing is Doing.TURNING and grip.dot is not None:
            painter.drawLine(grip.dot.at, grip.now)
            painter.drawText(grip.now + QPointF(10, -10), f"{grip.degrees:.0f}\N{DEGREE SIGN}")
        elif grip.dot is not None:
            painter.drawLine(grip.dot.at, grip.now)
            painter.setBrush(QColor(colours.pin))
            painter.drawEllipse(grip.now, grip.dot.radius, grip.dot.radius)


def _apart(one: QPointF, other: QPointF) -> float:
    return math.hypot(one.x() - other.x(), one.y() - other.y())
