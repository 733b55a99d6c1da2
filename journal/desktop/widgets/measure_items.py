"""Anchor points and measures as they lie on the drawing."""

import math
from collections.abc import Mapping
from itertools import pairwise

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter, QPainterPath, QPen
from PySide6.QtWidgets import QStyleOptionGraphicsItem, QWidget

from journal.desktop.theme import Colours
from journal.desktop.widgets import metal_pens as pens
from journal.desktop.widgets.metal_items import MetalItem, colours_for, in_pixels
from journal.domain.anchors import AnchorPoint
from journal.domain.films import FILM_BANDS, film_band
from journal.domain.metal_words import number
from journal.domain.readings import Measure, MeasureKind, Reading, as_micrometres, is_outside

_ROOM = 160.0
_DOT = 5.0
#: How far over its spot the middle of a number stands, and the room it takes along a row.
_ABOVE, _WIDE = 17.0, 44.0
#: Which of the stages' colours each band of film thickness has, from the thinnest.
_FILM_INKS = (2, 4, 3, 0, 1)


class AnchorItem(MetalItem):
    """A mounting with the ring of its radius."""

    def __init__(self, anchor: AnchorPoint) -> None:
        super().__init__(order=0)
        self.anchor = anchor
        self._centre = QPointF(anchor.x, anchor.y)
        self._ring = QPainterPath()
        self._ring.addEllipse(self._centre, anchor.radius_mm, anchor.radius_mm)

    def boundingRect(self) -> QRectF:
        """The ring with room for its line, in millimetres."""
        return self._ring.boundingRect().adjusted(-_ROOM, -_ROOM, _ROOM, _ROOM)

    def shape(self) -> QPainterPath:
        """The middle alone: what lies within the ring is clicked, not the ring."""
        made = QPainterPath()
        made.addEllipse(self._centre, 40, 40)
        return made

    def paint(
        self, painter: QPainter, _option: QStyleOptionGraphicsItem, widget: QWidget | None = None
    ) -> None:
        """Paint a faint disc with a ring of dashes and dots, and the mounting as a bolt."""
        colours = colours_for(widget)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        wash = QColor(colours.warning)
        wash.setAlpha(22)
        painter.fillPath(self._ring, wash)
        ring = pens.pen(colours.warning, 3.0 if self.is_chosen else 1.6, Qt.PenStyle.DashDotLine)
        painter.strokePath(self._ring, ring)
        to_screen = painter.worldTransform()
        with in_pixels(painter):
            self._paint_bolt(painter, to_screen.map(self._centre), colours)

    def _paint_bolt(self, painter: QPainter, at: QPointF, colours: Colours) -> None:
        painter.setPen(QPen(QColor(colours.accent if self.is_chosen else colours.warning), 2))
        painter.setBrush(QColor(colours.surface))
        corners = (math.radians(60 * n) for n in range(6))
        painter.drawPolygon([at + QPointF(8 * math.cos(a), 8 * math.sin(a)) for a in corners])
        painter.drawEllipse(at, 3, 3)


class MeasureItem(MetalItem):
    """A measure with the numbers read there, or its bare points where none was read."""

    def __init__(self, measure: Measure, latest: Mapping[int, Reading]) -> None:
        super().__init__(order=4)
        self.measure = measure
        self.latest = dict(latest)
        self.path = QPainterPath(QPointF(*measure.points[0]))
        for point in measure.points[1:]:
            self.path.lineTo(*point)

    def boundingRect(self) -> QRectF:
        """The points with room for their numbers, in millimetres."""
        return self.path.boundingRect().adjusted(-_ROOM, -_ROOM, _ROOM, _ROOM)

    def shape(self) -> QPainterPath:
        """The points, and for a distance the line between them, with room for a finger."""
        made = QPainterPath()
        for point in self.measure.points:
            made.addEllipse(QPointF(*point), 30, 30)
        return made

    def paint(
        self, painter: QPainter, _option: QStyleOptionGraphicsItem, widget: QWidget | None = None
    ) -> None:
        """Paint the line of a distance or a row, its points and its numbers."""
        colours = colours_for(widget)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        is_film = self.measure.kind is MeasureKind.FILM
        if len(self.measure.points) > 1 and not is_film:
            style = Qt.PenStyle.SolidLine if self.measure.is_distance else Qt.PenStyle.DotLine
            painter.strokePath(self.path, pens.pen(colours.surface, 5))
            painter.strokePath(self.path, pens.pen(colours.pin, 1.6, style))
        if self.is_chosen:
            painter.strokePath(self.path, pens.pen(colours.accent, 3.5))
        to_screen = painter.worldTransform()
        with in_pixels(painter):
            spots = [to_screen.map(QPointF(*point)) for point in self.measure.points]
            for place, spot in enumerate(spots):
                self._paint_dot(painter, spot, place, colours)
            self._paint_numbers(painter, spots, colours)

    def _paint_dot(self, painter: QPainter, at: QPointF, place: int, colours: Colours) -> None:
        reading = self.latest.get(place)
        painter.setPen(QPen(QColor(colours.text), 1.4))
        painter.setBrush(QColor(colours.surface))
        if self.measure.kind is MeasureKind.FILM and reading is not None:
            painter.setBrush(QColor(film_ink(colours, self.measure, reading)))
            painter.drawEllipse(at, _DOT * 1.7, _DOT * 1.7)
        elif self.measure.is_distance:
            painter.drawEllipse(at, _DOT * 0.7, _DOT * 0.7)
        else:
            painter.drawRect(
                QRectF(at.x() - _DOT * 0.8, at.y() - _DOT * 0.8, _DOT * 1.6, _DOT * 1.6)
            )

    def _paint_numbers(self, painter: QPainter, spots: list[QPointF], colours: Colours) -> None:
        for place in range(self.measure.places):
            reading = self.latest.get(place)
            if reading is None:
                continue
            at = spots[place]
            if self.measure.is_distance:
                # Diagonals of one opening cross in the middle; a third along, none hides another.
                at = spots[0] + (spots[1] - spots[0]) / 3
            words = number(reading.value)
            if place % 2 and self._is_crowded(spots):
                at = at + QPointF(0, 2 * _ABOVE)
            outside = is_outside(self.measure, reading.value)
            paint_number(painter, at, words, colours, outside=outside)

    @staticmethod
    def _is_crowded(spots: list[QPointF]) -> bool:
        """Whether numbers side by side would hide each other."""
        return any(
            abs(one.x() - other.x()) < _WIDE and abs(one.y() - other.y()) < _ABOVE
            for one, other in pairwise(spots)
        )


def paint_number(
    painter: QPainter, at: QPointF, words: str, colours: Colours, *, outside: bool = False
) -> None:
    """Paint a number on a small plate above a spot, in pixels.

    One outside what the owner set is framed twice as strongly and followed by a sign.
    """
    font = QFont(painter.font())
    font.setPixelSize(11)
    font.setBold(True)
    painter.setFont(font)
    words = f"{words} \N{UP DOWN ARROW}" if outside else words
    metrics = QFontMetricsF(font)
    plate = QRectF(0, 0, metrics.horizontalAdvance(words) + 8, metrics.height() + 1)
    plate.moveCenter(at - QPointF(0, _ABOVE))
    painter.setPen(QPen(QColor(colours.warning if outside else colours.edge), 2 if outside else 1))
    painter.setBrush(QColor(colours.surface))
    painter.drawRoundedRect(plate, 3, 3)
    painter.setPen(QColor(colours.text))
    painter.drawText(plate, Qt.AlignmentFlag.AlignCenter, words)


def film_ink(colours: Colours, measure: Measure, reading: Reading) -> str:
    """The colour of a film's thickness; the number beside it says it too."""
    band = film_band(float(as_micrometres(measure, reading.value)))
    return colours.stages[_FILM_INKS[FILM_BANDS.index(band)]]
