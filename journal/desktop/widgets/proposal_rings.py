"""The proposed panels on the drawing: each ringed, with its number; in pixels."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QPainter, QPen, QTransform

from journal.desktop.theme import Colours, colours_of
from journal.domain.ids import PanelId

if TYPE_CHECKING:
    from journal.desktop.widgets.tool_canvas import ToolCanvas

_RING, _DISC = 17.0, 20.0
#: The number stands at the upper right of its ring.
_OFF = QPointF(14, -14)


class ProposalRings:
    """A layer of the canvas: rings 1, 2, 3 round the panels that the photos in hand may go to."""

    def __init__(self, canvas: "ToolCanvas") -> None:
        self._canvas = canvas
        self._panels: tuple[PanelId, ...] = ()
        canvas.add_layer(self.paint)

    def show_panels(self, panels: tuple[PanelId, ...]) -> None:
        """Ring these panels, in this order; none takes the rings away."""
        if panels != self._panels:
            self._panels = panels
            self._canvas.viewport().update()

    @property
    def panels(self) -> tuple[PanelId, ...]:
        """The panels ringed now, on whatever view they are."""
        return self._panels

    def spots(self) -> dict[int, QPointF]:
        """The middle of each ring on the view shown, by number, in pixels of the viewport."""
        to_screen = self._canvas.viewportTransform()
        shown = {panel.id for panel in self._canvas.panels_shown()}
        return {
            number: to_screen.map(self._canvas.spot_on(panel_id))
            for number, panel_id in enumerate(self._panels, 1)
            if panel_id in shown
        }

    def paint(self, painter: QPainter, _to_screen: QTransform) -> None:
        """Paint each ring and its number, the first one last: it lies over the others."""
        if not self._panels or self._canvas.tool is not None:
            return
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        colours = colours_of(self._canvas.palette())
        for number, at in reversed(self.spots().items()):
            painter.setBrush(Qt.BrushStyle.NoBrush)
            for ink, width in ((colours.surface, 6.0), (colours.accent, 3.0)):
                painter.setPen(QPen(QColor(ink), width))
                painter.drawEllipse(at, _RING, _RING)
            disc = QRectF(0, 0, _DISC, _DISC)
            disc.moveCenter(at + _OFF)
            paint_number(painter, disc, number, self._canvas.font(), colours)


def paint_number(
    painter: QPainter, disc: QRectF, number: int, font: QFont, colours: Colours
) -> None:
    """Paint a proposal's number in its disc, the same in the list and on the drawing."""
    painter.save()
    painter.setPen(QPen(QColor(colours.surface), 1.5))
    painter.setBrush(QColor(colours.accent))
    painter.drawEllipse(disc)
    bold = QFont(font)
    bold.setBold(True)
    bold.setPixelSize(13)
    painter.setFont(bold)
    painter.setPen(QColor(colours.on_accent))
    painter.drawText(disc, Qt.AlignmentFlag.AlignCenter, str(number))
    painter.restore()
