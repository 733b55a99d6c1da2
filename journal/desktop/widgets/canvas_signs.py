"""The signs of stages on the drawing: where each finds room, and how it looks; in pixels."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QPainter, QPainterPath, QPen, QTransform

from journal.desktop.theme import Colours, StageMark
from journal.desktop.widgets.canvas_pins import Dot
from journal.domain.ids import PanelId

#: The side of a sign, and the radius within which nothing else is put.
_PLATE = 16.0
_RADIUS = 9.0
_STEP = 12.0
#: Places to try, in steps from a panel's roomiest spot, the nearest first.
_TRIES = sorted(
    ((x, y) for x in range(-4, 5) for y in range(-4, 5)), key=lambda at: at[0] ** 2 + at[1] ** 2
)


@dataclass(frozen=True, slots=True)
class Staged:
    """A panel with a stage: its outline and its roomiest spot, in millimetres, and its mark."""

    path: QPainterPath
    spot: QPointF
    mark: StageMark


def place_signs(
    staged: Mapping[PanelId, Staged], to_screen: QTransform, dots: Iterable[Dot]
) -> dict[PanelId, QPointF]:
    """Where the signs fit: wholly on their panels and clear of dots and of each other."""
    taken = [(dot.at, dot.radius) for dot in dots]
    back, invertible = to_screen.inverted()
    found: dict[PanelId, QPointF] = {}
    if not invertible:
        return found
    for panel_id, one in staged.items():
        middle = to_screen.map(one.spot)
        for x, y in _TRIES:
            at = middle + QPointF(x * _STEP, y * _STEP)
            if _is_free(at, taken) and _fits(one.path, at, back):
                found[panel_id] = at
                taken.append((at, _RADIUS))
                break
    return found


def paint_sign(
    painter: QPainter, at: QPointF, mark: StageMark, colours: Colours, font: QFont
) -> None:
    """Paint a stage's sign: square, since a round one counts photos."""
    plate = QRectF(0, 0, _PLATE, _PLATE)
    plate.moveCenter(at)
    painter.setPen(QPen(QColor(mark.colour), 2))
    painter.setBrush(QColor(colours.surface))
    painter.drawRoundedRect(plate, 3, 3)
    bold = QFont(font)
    bold.setPixelSize(12)
    bold.setBold(True)
    painter.setFont(bold)
    painter.setPen(QColor(colours.text))
    painter.drawText(plate, Qt.AlignmentFlag.AlignCenter, mark.sign)


def _is_free(at: QPointF, taken: Iterable[tuple[QPointF, float]]) -> bool:
    for other, radius in taken:
        away, dx, dy = radius + _RADIUS + 2, at.x() - other.x(), at.y() - other.y()
        if dx * dx + dy * dy < away * away:
            return False
    return True


def _fits(path: QPainterPath, at: QPointF, back: QTransform) -> bool:
    reach = _RADIUS + 1
    ends = (QPointF(reach, 0), QPointF(-reach, 0), QPointF(0, reach), QPointF(0, -reach))
    return all(path.contains(back.map(at + end)) for end in ends)
