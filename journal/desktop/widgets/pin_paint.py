"""Painting pins: each look of a dot is drawn once and kept as a small picture."""

from collections.abc import Iterable
from functools import lru_cache

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QPainter, QPen, QPixmap

from journal.desktop.theme import Colours
from journal.desktop.widgets.canvas_pins import Dot
from journal.domain.ids import PanelId

#: Room round a dot for its ring, its line and its wedge, in pixels.
_ROOM = 24.0
_RING = 4.0


def paint_dots(
    painter: QPainter,
    dots: Iterable[Dot],
    colours: Colours,
    font: QFont,
    loud: PanelId | None = None,
) -> None:
    """Paint dots in pixels; a single one whose facing is known has a wedge that way.

    Those of the panel ``loud`` lie over the others and have a ring.
    """
    shown = _in_sight(painter, dots)
    ratio = painter.device().devicePixelRatioF()
    if loud is not None:
        shown.sort(key=lambda dot: dot.is_on(loud))
    for dot in shown:
        if dot.facing is not None:
            _paint_wedge(painter, dot, colours)
        words = "" if len(dot.photo_ids) == 1 else _count(len(dot.photo_ids))
        picture = _disc(dot.radius, words, dot.is_on(loud), colours, font.family(), ratio)
        _put(painter, dot.at, picture)


def paint_rings(painter: QPainter, dots: Iterable[Dot], colours: Colours) -> None:
    """Ring these dots as chosen."""
    ratio = painter.device().devicePixelRatioF()
    for dot in _in_sight(painter, dots):
        _put(painter, dot.at, _ring(dot.radius + _RING, colours, ratio))


def _in_sight(painter: QPainter, dots: Iterable[Dot]) -> list[Dot]:
    """The dots that lie on what is painted on, or reach into it."""
    device = painter.device()
    across = device.width() / device.devicePixelRatioF() + _ROOM
    down = device.height() / device.devicePixelRatioF() + _ROOM
    return [dot for dot in dots if -_ROOM < dot.at.x() < across and -_ROOM < dot.at.y() < down]


def _put(painter: QPainter, at: QPointF, picture: QPixmap) -> None:
    half = picture.width() / picture.devicePixelRatioF() / 2
    painter.drawPixmap(QPointF(round(at.x() - half), round(at.y() - half)), picture)


@lru_cache(maxsize=512)
def _disc(
    radius: float, words: str, loud: bool, colours: Colours, family: str, ratio: float
) -> QPixmap:
    picture, painter, middle = _canvas(radius + _RING, ratio)
    if loud:
        painter.setBrush(QColor(colours.surface))
        painter.setPen(QPen(QColor(colours.text), 2))
        painter.drawEllipse(middle, radius + _RING, radius + _RING)
    ink = QColor(colours.surface)
    painter.setPen(QPen(ink, 1.5))
    painter.setBrush(QColor(colours.pin))
    painter.drawEllipse(middle, radius, radius)
    if words:
        bold = QFont(family)
        bold.setBold(True)
        bold.setPixelSize(11)
        painter.setFont(bold)
        area = QRectF(0, 0, 60, 20)
        area.moveCenter(middle)
        painter.drawText(area, Qt.AlignmentFlag.AlignCenter, words)
    painter.end()
    return picture


@lru_cache(maxsize=64)
def _ring(radius: float, colours: Colours, ratio: float) -> QPixmap:
    picture, painter, middle = _canvas(radius, ratio)
    for ink, width in ((colours.surface, 5.0), (colours.focus, 3.0)):
        painter.setPen(QPen(QColor(ink), width))
        painter.drawEllipse(middle, radius, radius)
    painter.end()
    return picture


def _canvas(radius: float, ratio: float) -> tuple[QPixmap, QPainter, QPointF]:
    """A clear picture with room for a ring of ``radius``, its painter and its middle."""
    side = 2 * int(radius + 5)
    picture = QPixmap(round(side * ratio), round(side * ratio))
    picture.setDevicePixelRatio(ratio)
    picture.fill(Qt.GlobalColor.transparent)
    painter = QPainter(picture)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    return picture, painter, QPointF(side / 2, side / 2)


def _paint_wedge(painter: QPainter, dot: Dot, colours: Colours) -> None:
    """A cone out of the dot, the way the camera looked."""
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.translate(dot.at)
    painter.rotate(dot.facing or 0.0)
    cone = QColor(colours.pin)
    cone.setAlpha(150)
    painter.setPen(QPen(QColor(colours.surface), 1.5))
    painter.setBrush(cone)
    painter.drawPolygon([QPointF(0, 0), QPointF(-7, -18), QPointF(7, -18)])
    painter.restore()


def _count(number: int) -> str:
    return str(number) if number < 1000 else f"{number / 1000:.0f}k"
