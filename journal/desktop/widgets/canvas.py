"""The car's drawing on screen: panels to point at, travel between, and drop photos on."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QPoint, QPointF, QRect, QRectF, Qt
from PySide6.QtGui import (
    QDragEnterEvent,
    QDragLeaveEvent,
    QDragMoveEvent,
    QDropEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QResizeEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import QWidget

from journal.desktop.theme import colours_of
from journal.desktop.widgets.canvas_labels import paint_label
from journal.desktop.widgets.canvas_sheet import CanvasSheet
from journal.desktop.widgets.canvas_signs import paint_sign
from journal.desktop.widgets.photo_drag import photos_from_mime
from journal.desktop.widgets.pin_paint import paint_dots
from journal.domain.ids import PanelId

if TYPE_CHECKING:
    from journal.desktop.widgets.pin_hand import PinHand

_ZOOM_STEP = 1.25
_CLICK_REACH = 6


class DrawingCanvas(CanvasSheet):
    """One view of the drawing at a time: point, click, travel by arrow, drop photos."""

    #: What takes hold of pins; told of the mouse first.
    hand: "PinHand | None" = None

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._pressed: QPoint | None = None
        self._panned = False

    def _named(self) -> PanelId | None:
        """The panel whose name is shown."""
        return self._drop or self._hovered or self._selected

    def show_goal(self, panel_id: PanelId | None) -> None:
        """Show the panel that what is being dragged would be pinned to; None for none."""
        if panel_id != self._drop:
            self._drop = panel_id
            self._apply_touch()

    # Travelling

    def _travel(self, direction: str) -> None:
        goal = self._next(direction)
        if goal is not None and goal in self._items:
            self.select_panel(goal)
            self.ensureVisible(self._items[goal][0], 40, 40)
            self.panel_pointed.emit(goal)

    def _next(self, direction: str) -> PanelId | None:
        """The panel an arrow leads to; the lowest one where none of this view is selected."""
        if self._view is None or not self._items:
            return None
        if self._selected is None or self._selected not in self._items:
            return next(iter(self._items))
        return self.panel_map().next_panel(self._view.id, self._selected, direction)

    def _step_view(self, step: int) -> None:
        views = self._drawing.views
        if self._view in views:
            self.set_view(views[(views.index(self._view) + step) % len(views)].id)

    # Qt

    def drawBackground(self, painter: QPainter, rect: QRectF | QRect) -> None:
        """Find out which panels show a sign before they are painted: their pattern is paler."""
        self.signs()
        super().drawBackground(painter, rect)

    def drawForeground(self, painter: QPainter, _rect: QRectF | QRect) -> None:
        """Paint the outlines that matter now, then pins and a label, in pixels."""
        self._paint_outlines(painter)
        self._paint_marks(painter)

    def _paint_outlines(self, painter: QPainter) -> None:
        for panel_id in {self._selected, self._hovered, self._drop}:
            for item in self._items.get(panel_id, ()) if panel_id is not None else ():
                item.paint_outline(painter)

    def _paint_marks(self, painter: QPainter) -> None:
        painter.save()
        painter.resetTransform()
        colours = colours_of(self.palette())
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        for panel_id, at in self.signs().items():
            if mark := self._items[panel_id][0].stage:
                paint_sign(painter, at, mark, colours, self.font())
        paint_dots(painter, self.dots(), colours, self.font(), self._selected)
        named = self._named()
        if named is not None and (words := self.words_of(named)):
            outline = self._items[named][0].path.boundingRect()
            area = self.mapFromScene(outline).boundingRect()
            if self._drop:
                words = f"Pin to {words}"
            paint_label(painter, words, area, self.viewport().rect(), colours, self.font())
        painter.restore()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Begin a click, or pulling the sheet about."""
        if self.hand is not None and self.hand.pressed(event):
            return
        self._pressed, self._panned = event.position().toPoint(), False

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Point at a panel, or pull the sheet about when it is larger than the window."""
        if self.hand is not None and self.hand.moved(event):
            return
        spot = event.position().toPoint()
        if self._pressed is None or not event.buttons():
            self._point_at(self.panel_at(spot))
            return
        pulled = spot - self._pressed
        if self._zoom > 1 and (self._panned or pulled.manhattanLength() > _CLICK_REACH):
            self._panned = True
            self._pressed = spot
            across, along = self.horizontalScrollBar(), self.verticalScrollBar()
            across.setValue(across.value() - pulled.x())
            along.setValue(along.value() - pulled.y())

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """End a click."""
        if self.hand is not None and self.hand.released(event):
            self._pressed = None
            return
        pressed, self._pressed = self._pressed, None
        if pressed is None or self._panned or event.button() != Qt.MouseButton.LeftButton:
            return
        spot = event.position().toPoint()
        if any(take(spot) for take in self.takers):
            return
        panel_id = self.panel_at(spot)
        if panel_id is not None:
            self.select_panel(panel_id)
            self.panel_clicked.emit(panel_id)
        for dot in self.dots():
            if (dot.at - QPointF(spot)).manhattanLength() <= dot.radius + 4:
                self.pins_clicked.emit(dot.photo_ids)
                break

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        """Choose the panel."""
        panel_id = self.panel_at(event.position().toPoint())
        if panel_id is not None:
            self.panel_chosen.emit(panel_id)

    def leaveEvent(self, event: QEvent) -> None:
        """Point at nothing."""
        self._point_at(None)
        super().leaveEvent(event)

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Draw larger or smaller round the pointer."""
        self.zoom(_ZOOM_STEP if event.angleDelta().y() > 0 else 1 / _ZOOM_STEP)
        event.accept()

    def scrollContentsBy(self, dx: int, dy: int) -> None:
        """Move the sheet; the dots lie elsewhere then."""
        super().scrollContentsBy(dx, dy)
        self._forget_dots()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Fit the view to the new size."""
        super().resizeEvent(event)
        self._apply_scale()

    def changeEvent(self, event: QEvent) -> None:
        """Take the new colours when light turns to dark."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.PaletteChange:
            self._recolour()

    def event(self, event: QEvent) -> bool:
        """Let Esc end what the hand is at, before it means anything else."""
        if isinstance(event, QKeyEvent) and self.hand is not None and self.hand.key(event):
            event.accept()
            return True
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Travel between panels and views, choose, draw larger or smaller."""
        arrows = {
            Qt.Key.Key_Left: "left",
            Qt.Key.Key_Right: "right",
            Qt.Key.Key_Up: "up",
            Qt.Key.Key_Down: "down",
        }
        acts = {
            Qt.Key.Key_Plus: lambda: self.zoom(_ZOOM_STEP),
            Qt.Key.Key_Equal: lambda: self.zoom(_ZOOM_STEP),
            Qt.Key.Key_Minus: lambda: self.zoom(1 / _ZOOM_STEP),
            Qt.Key.Key_0: self.fit,
            Qt.Key.Key_PageUp: lambda: self._step_view(-1),
            Qt.Key.Key_PageDown: lambda: self._step_view(1),
            Qt.Key.Key_Return: self._choose,
            Qt.Key.Key_Enter: self._choose,
        }
        if event.key() in arrows:
            self._travel(arrows[Qt.Key(event.key())])
        elif event.key() in acts:
            acts[Qt.Key(event.key())]()
        else:
            event.ignore()

    def _choose(self) -> None:
        if self._selected is not None and self._selected in self._items:
            self.panel_chosen.emit(self._selected)

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Take photos, nothing else."""
        if photos_from_mime(event.mimeData()):
            event.acceptProposedAction()
        else:
            event.ignore()

    def dragMoveEvent(self, event: QDragMoveEvent) -> None:
        """Show the panel that the photos would be pinned to."""
        self._drop = self.panel_at(event.position().toPoint())
        self._apply_touch()
        event.setAccepted(self._drop is not None)

    def dragLeaveEvent(self, _event: QDragLeaveEvent) -> None:
        """Show no panel as the goal."""
        self._drop = None
        self._apply_touch()

    def dropEvent(self, event: QDropEvent) -> None:
        """Tell where the photos were dropped."""
        photos = photos_from_mime(event.mimeData())
        spot = event.position().toPoint()
        panel_id, self._drop = self.panel_at(spot), None
        self._apply_touch()
        if not photos or panel_id is None or self._view is None:
            event.ignore()
            return
        event.acceptProposedAction()
        at = self.mapToScene(spot)
        self.photos_dropped.emit(photos, panel_id, self._view.id, at.x(), at.y())
