"""The picture laid under a view, as it is painted: under every panel, faded, in its true place."""

from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPainterPath, QPixmap, QPolygonF, QTransform
from PySide6.QtWidgets import QGraphicsItem, QStyleOptionGraphicsItem, QWidget

from journal.domain.errors import JournalError
from journal.domain.homographies import Matrix, outline
from journal.domain.underlays import Underlay

#: Over the sheet, under the ground line and every panel.
_PLACE = -5e8


@dataclass(frozen=True, slots=True)
class Laid:
    """A picture under a view, ready to be painted.

    Attributes:
        underlay: where it lies and how strongly it shows.
        width, height: of the whole picture in its own pixels, which the matrix counts in.
        picture: its pixels, reduced.
        flat: the whole sheet with the picture on it as placed; None while that is worked out.
    """

    underlay: Underlay
    width: int
    height: int
    picture: QPixmap
    flat: QPixmap | None


class UnderlayItem(QGraphicsItem):
    """Paints the flat sheet; while the picture is being moved, the picture itself."""

    def __init__(self, laid: Laid, sheet: QRectF) -> None:
        super().__init__()
        self._laid = laid
        self._sheet = sheet
        self._matrix: Matrix | None = None
        self._strength = laid.underlay.strength
        self.setZValue(_PLACE)
        self.setAcceptedMouseButtons(Qt.MouseButton.NoButton)

    def preview(self, matrix: Matrix | None) -> None:
        """Show the picture placed otherwise; None: as it is recorded."""
        self._matrix = matrix
        self.update()

    def set_strength(self, strength: float) -> None:
        """Show the picture fainter or stronger, 0 to 1."""
        self._strength = strength
        self.update()

    def boundingRect(self) -> QRectF:
        """The whole sheet, in millimetres."""
        return self._sheet

    def paint(
        self, painter: QPainter, _option: QStyleOptionGraphicsItem, _widget: QWidget | None = None
    ) -> None:
        """Paint the picture within its outline and the sheet."""
        matrix = self._matrix or self._laid.underlay.matrix
        painter.save()
        painter.setOpacity(self._strength)
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
        painter.setClipRect(self._sheet, Qt.ClipOperation.IntersectClip)
        painter.setClipPath(outline_path(self._laid, matrix), Qt.ClipOperation.IntersectClip)
        flat = self._laid.flat
        if self._matrix is None and flat is not None:
            painter.drawPixmap(self._sheet, flat, QRectF(flat.rect()))
        else:
            painter.setTransform(_as_transform(matrix), True)
            pixels = self._laid.picture
            whole = QRectF(0, 0, self._laid.width, self._laid.height)
            painter.drawPixmap(whole, pixels, QRectF(pixels.rect()))
        painter.restore()


def outline_path(laid: Laid, matrix: Matrix) -> QPainterPath:
    """What the picture covers on the view, in millimetres."""
    path = QPainterPath()
    try:
        corners = outline(matrix, laid.width, laid.height)
    except JournalError:
        return path
    path.addPolygon(QPolygonF([QPointF(*corner) for corner in corners]))
    path.closeSubpath()
    return path


def _as_transform(matrix: Matrix) -> QTransform:
    a, b, c, d, e, f, g, h, i = matrix
    return QTransform(a, d, g, b, e, h, c, f, i)
