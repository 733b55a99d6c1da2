"""Seams and patches as they lie on the drawing."""

from collections.abc import Iterable, Iterator, Sequence
from contextlib import contextmanager

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import (
    QBrush,
    QColor,
    QPainter,
    QPainterPath,
    QPainterPathStroker,
    QTransform,
)
from PySide6.QtWidgets import QApplication, QGraphicsItem, QStyleOptionGraphicsItem, QWidget

from journal.desktop.theme import Colours, colours_of
from journal.desktop.widgets import metal_pens as pens
from journal.desktop.widgets.paths import painter_path, stroke_path
from journal.desktop.widgets.seam_track import SeamTrack
from journal.domain.patches import Patch
from journal.domain.seams import Seam, SeamState, Stretch, weld_places
from journal.domain.shapes import Point

#: Over every panel and every line that is no panel.
OVER_ALL = 2e8
#: Room for what is painted in pixels, in millimetres at the smallest scale in use: round triangles
#: and patches, and round a seam, of which more is kept the less there is.
_ROOM, _SEAM_ROOM = 160.0, 64.0
#: How wide a seam is to the finger, in millimetres.
_FINGER = 60.0


class MetalItem(QGraphicsItem):
    """Something drawn over the panels; it paints, the layer listens."""

    def __init__(self, order: float) -> None:
        super().__init__()
        self.is_chosen = False
        #: The spots of it that lie within the radius of an anchor point.
        self.load_bearing: tuple[Point, ...] = ()
        self.setZValue(OVER_ALL + order)
        self.setAcceptedMouseButtons(Qt.MouseButton.NoButton)

    def choose(self, *, chosen: bool) -> None:
        """Show it as selected, or no longer."""
        if chosen is not self.is_chosen:
            self.is_chosen = chosen
            self.update()

    def _colours(self, widget: QWidget | None) -> Colours:
        """The colours of the canvas; Qt names no widget when it paints something to be kept."""
        views = self.scene().views() if widget is None and self.scene() else []
        return colours_for(views[0] if views else widget)

    def reaches(self, spot: QPointF, reach: float) -> bool:
        """Whether a spot may be within reach of it: a quick look before an exact one."""
        del spot, reach
        return True


class MarksItem(QGraphicsItem):
    """The triangles at what lies within the radius of anchor points, over all of it."""

    def __init__(self, sheet: QRectF, spots: Sequence[Point]) -> None:
        super().__init__()
        self._sheet = sheet.adjusted(-_ROOM, -_ROOM, _ROOM, _ROOM)
        self.spots = tuple(spots)
        self.setZValue(OVER_ALL + 3)
        self.setAcceptedMouseButtons(Qt.MouseButton.NoButton)

    def boundingRect(self) -> QRectF:
        """The whole view."""
        return self._sheet

    def paint(
        self, painter: QPainter, _option: QStyleOptionGraphicsItem, widget: QWidget | None = None
    ) -> None:
        """Paint a triangle above each spot."""
        colours, to_screen = colours_for(widget), painter.worldTransform()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        with in_pixels(painter):
            for spot in self.spots:
                paint_warning(painter, to_screen.map(QPointF(*spot)) - QPointF(0, 17), colours)


class SeamItem(MetalItem):
    """One seam, its parts each in the pattern of its state."""

    def __init__(self, seam: Seam, stretches: Sequence[Stretch]) -> None:
        super().__init__(order=2)
        # The pointer's every move repaints the view; a seam looks the same each time.
        self.setCacheMode(QGraphicsItem.CacheMode.DeviceCoordinateCache)
        self.seam = seam
        self.path = stroke_path(seam.stroke)
        self._track = SeamTrack(seam)
        self.stretches: tuple[Stretch, ...] = ()
        self._parts: list[tuple[QPainterPath, Stretch]] = []
        self._box = self.path.boundingRect()
        room = _SEAM_ROOM
        self._bounds = self._box.adjusted(-room, -room, room, room)
        self.show_stretches(stretches)

    def show_stretches(self, stretches: Sequence[Stretch]) -> None:
        """Show its parts in other states."""
        if tuple(stretches) != self.stretches:
            self.stretches = tuple(stretches)
            self._parts = [(self._track.part(s.start_mm, s.end_mm), s) for s in self.stretches]
            self.update()

    def reaches(self, spot: QPointF, reach: float) -> bool:
        """Whether a spot lies in the box round the line, or within reach of it."""
        return self._box.adjusted(-reach, -reach, reach, reach).contains(spot)

    def boundingRect(self) -> QRectF:
        """The line with room for its marks, in millimetres."""
        return self._bounds

    def shape(self) -> QPainterPath:
        """The line with room for a finger."""
        wide = QPainterPathStroker()
        wide.setWidth(_FINGER)
        return wide.createStroke(self.path)

    def paint(
        self, painter: QPainter, _option: QStyleOptionGraphicsItem, widget: QWidget | None = None
    ) -> None:
        """Paint the parts, then the marks of the joint, tacks and welds."""
        colours = self._colours(widget)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        shown = [path for path, _ in self._parts]
        for path in shown if self.is_chosen else ():
            pens.paint_chosen(painter, path, colours)
        for path in shown:
            pens.paint_ground(painter, path, colours)
        for path, stretch in self._parts:
            is_row = self.seam.joint.is_row
            pens.paint_line(painter, path, stretch.state, colours, row=is_row)
        self._paint_points(painter, colours)

    def _paint_points(self, painter: QPainter, colours: Colours) -> None:
        to_screen = painter.worldTransform()
        scale = to_screen.m11() or 1.0
        with in_pixels(painter):
            for stretch in self.stretches:
                if self.seam.joint.is_row:
                    self._paint_row(painter, to_screen, stretch, colours)
                    continue
                self._paint_joints(painter, to_screen, stretch, colours, scale)
                if stretch.state is SeamState.TACKED:
                    for mm in _steps(stretch, pens.TACK_STEP / scale):
                        pens.paint_tack(painter, self._at(to_screen, mm), colours)

    def _paint_row(
        self, painter: QPainter, to_screen: QTransform, stretch: Stretch, colours: Colours
    ) -> None:
        last = stretch.end_mm >= self._track.length
        for mm in weld_places(self.seam):
            if stretch.start_mm <= mm < stretch.end_mm or (last and mm >= stretch.end_mm):
                at = self._at(to_screen, mm)
                pens.paint_weld(painter, at, self.seam.joint, stretch.state, colours)

    def _paint_joints(
        self,
        painter: QPainter,
        to_screen: QTransform,
        stretch: Stretch,
        colours: Colours,
        scale: float,
    ) -> None:
        colour = pens.ink(colours, stretch.state)
        for mm in _steps(stretch, pens.JOINT_STEP / scale):
            way = self._track.way(mm)
            if not way.isNull():
                at = self._at(to_screen, mm)
                pens.paint_joint(painter, at, way, self.seam.joint, colour)

    def _at(self, to_screen: QTransform, mm: float) -> QPointF:
        return to_screen.map(self._track.at(mm))


class PatchItem(MetalItem):
    """One patch: its outline, and a hatch for new metal."""

    def __init__(self, patch: Patch) -> None:
        super().__init__(order=1)
        self.patch = patch
        self.path = painter_path(patch.shape)
        self._bounds = self.path.boundingRect().adjusted(-_ROOM, -_ROOM, _ROOM, _ROOM)

    def boundingRect(self) -> QRectF:
        """The outline with room for its marks, in millimetres."""
        return self._bounds

    def shape(self) -> QPainterPath:
        """The outline: what counts as on the patch."""
        return self.path

    def paint(
        self, painter: QPainter, _option: QStyleOptionGraphicsItem, widget: QWidget | None = None
    ) -> None:
        """Paint the ground, the hatch over it, and the line; dashed while it isn't in."""
        colours = colours_for(widget)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        ground = QColor(colours.surface)
        ground.setAlpha(215)
        painter.fillPath(self.path, ground)
        scale = painter.worldTransform().m11()
        brush = QBrush(QColor(colours.muted), Qt.BrushStyle.DiagCrossPattern)
        if scale:
            brush.setTransform(QTransform.fromScale(1 / scale, 1 / scale))
        painter.fillPath(self.path, brush)
        if self.is_chosen:
            painter.strokePath(self.path, pens.pen(colours.accent, 6))
        line = pens.pen(colours.text, 2.2)
        if self.patch.when is None:
            line.setDashPattern([4, 3])
        painter.strokePath(self.path, line)


@contextmanager
def in_pixels(painter: QPainter) -> Iterator[None]:
    """Paint in the pixels of the viewport for as long as it lasts."""
    painter.save()
    painter.resetTransform()
    yield
    painter.restore()


def paint_warning(painter: QPainter, at: QPointF, colours: Colours) -> None:
    """Paint the triangle of a caution at a spot, in pixels."""
    painter.setPen(pens.pen(colours.surface, 1.5))
    painter.setBrush(QColor(colours.warning))
    sides = [at + QPointF(0, -10), at + QPointF(10, 8), at + QPointF(-10, 8)]
    painter.drawPolygon(sides)
    painter.setPen(pens.pen(colours.surface, 2))
    painter.drawLine(at + QPointF(0, -4), at + QPointF(0, 2))
    painter.drawPoint(at + QPointF(0, 5))


def _steps(stretch: Stretch, step: float) -> Iterable[float]:
    """Places along a stretch, evenly, half a step from its ends."""
    count = max(1, round(stretch.length_mm / step)) if step > 0 else 1
    apart = stretch.length_mm / count
    return (stretch.start_mm + apart * (n + 0.5) for n in range(count))


def colours_for(widget: QWidget | None) -> Colours:
    """The colours of the widget that an item is painted on."""
    return colours_of(widget.palette() if widget else QApplication.palette())
