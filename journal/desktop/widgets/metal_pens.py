"""How welding looks on the drawing: each state its own pattern, each joint its own marks."""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPainterPath, QPen

from journal.desktop.theme import Colours
from journal.domain.seams import Joint, SeamState

#: Widths in pixels.
_THIN, _THICK, _CORE, _HALO = 1.8, 4.5, 2.0, 9.0

#: Which of the stages' colours each state has, from planned to dressed.
_INKS = (0, 1, 2, 4)

#: The radius of a plug, a spot and a tack, in pixels.
WELD_RADIUS, TACK_RADIUS = 4.5, 3.2

#: How far apart the tacks and the marks of a joint are painted, in pixels.
TACK_STEP, JOINT_STEP = 14.0, 44.0

#: Half the length of a mark across a seam, in pixels.
_TICK = 7.0


def ink(colours: Colours, state: SeamState) -> str:
    """The colour of a state."""
    return colours.stages[_INKS[state.rank]]


def pen(colour: str, width: float, style: Qt.PenStyle = Qt.PenStyle.SolidLine) -> QPen:
    """A pen as wide whatever the scale."""
    made = QPen(QColor(colour), width, style)
    made.setCosmetic(True)
    made.setCapStyle(Qt.PenCapStyle.FlatCap)
    made.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
    return made


def paint_ground(painter: QPainter, path: QPainterPath, colours: Colours) -> None:
    """Paint the plain band that lifts a seam off what lies under it."""
    band = pen(colours.surface, _HALO)
    band.setCapStyle(Qt.PenCapStyle.RoundCap)
    painter.strokePath(path, band)


def paint_chosen(painter: QPainter, path: QPainterPath, colours: Colours) -> None:
    """Paint the band round a seam that is selected."""
    band = pen(colours.accent, _HALO + 5)
    band.setCapStyle(Qt.PenCapStyle.RoundCap)
    painter.strokePath(path, band)


def paint_line(
    painter: QPainter, path: QPainterPath, state: SeamState, colours: Colours, *, row: bool = False
) -> None:
    """Paint the line of a state: dashed, thin, thick, or thick with a light core.

    A tacked line is given its tacks by ``paint_tack``. In a ``row`` the welds tell the state and
    the line between them stays thin.
    """
    colour = ink(colours, state)
    if state is SeamState.PLANNED:
        dashed = pen(colour, _THIN)
        dashed.setDashPattern([4, 3])
        painter.strokePath(path, dashed)
    elif state is SeamState.TACKED or row:
        painter.strokePath(path, pen(colour, _THIN))
    else:
        painter.strokePath(path, pen(colour, _THICK))
        if state is SeamState.DRESSED:
            painter.strokePath(path, pen(colours.surface, _CORE))


def paint_tack(painter: QPainter, at: QPointF, colours: Colours) -> None:
    """Paint one tack, in pixels."""
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(QColor(ink(colours, SeamState.TACKED)))
    painter.drawEllipse(at, TACK_RADIUS, TACK_RADIUS)


def paint_weld(
    painter: QPainter, at: QPointF, joint: Joint, state: SeamState, colours: Colours
) -> None:
    """Paint one plug (round) or spot (a diamond) of a row, in pixels.

    Planned it is open and dashed, tacked open with a dot, welded filled, dressed filled with a
    light middle.
    """
    colour = QColor(ink(colours, state))
    filled = state.rank >= SeamState.WELDED.rank
    outline = QPen(colour, 1.6)
    if state is SeamState.PLANNED:
        outline.setDashPattern([1.6, 1.4])
    painter.setPen(outline)
    painter.setBrush(colour if filled else QColor(colours.surface))
    _weld_shape(painter, at, joint, WELD_RADIUS)
    if state in (SeamState.TACKED, SeamState.DRESSED):
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(QColor(colours.surface) if filled else colour)
        _weld_shape(painter, at, joint, WELD_RADIUS * 0.45)


def _weld_shape(painter: QPainter, at: QPointF, joint: Joint, radius: float) -> None:
    if joint is Joint.PLUGS:
        painter.drawEllipse(at, radius, radius)
        return
    far = radius * 1.2
    painter.drawPolygon(
        [at + QPointF(0, -far), at + QPointF(far, 0), at + QPointF(0, far), at + QPointF(-far, 0)]
    )


def paint_joint(painter: QPainter, at: QPointF, along: QPointF, joint: Joint, colour: str) -> None:
    """Paint the mark of a joint across a seam, in pixels; ``along`` is the seam's way there.

    A butt joint has a stroke across, a lap a stroke to one side, a joggled lap a bent one.
    """
    across = QPointF(-along.y(), along.x())
    painter.setPen(QPen(QColor(colour), 1.6))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    if joint is Joint.BUTT:
        painter.drawLine(at - across * _TICK, at + across * _TICK)
    elif joint is Joint.LAP:
        painter.drawLine(at, at - across * _TICK * 1.3)
    elif joint is Joint.JOGGLED:
        knee = at - across * _TICK
        painter.drawPolyline([at + across * _TICK, at, at + along * _TICK, knee + along * _TICK])


def paint_state_swatch(painter: QPainter, area: QRectF, state: SeamState, colours: Colours) -> None:
    """Paint a piece of seam in a state, for a legend; in pixels."""
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    path = QPainterPath(QPointF(area.left(), area.center().y()))
    path.lineTo(area.right(), area.center().y())
    paint_line(painter, path, state, colours)
    if state is SeamState.TACKED:
        for x in (0.15, 0.5, 0.85):
            spot = QPointF(area.left() + area.width() * x, area.center().y())
            paint_tack(painter, spot, colours)
    painter.restore()
