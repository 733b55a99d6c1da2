"""The grid of photos: it paints only what shows, so 50,000 photos scroll like fifty."""

from PySide6.QtCore import QEvent, QPoint, QRect, QSize, Qt
from PySide6.QtGui import (
    QHelpEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QResizeEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import QAbstractScrollArea, QToolTip, QWidget

from journal.desktop.widgets.grid_base import EDGES, GridBase
from journal.desktop.widgets.grid_keys import key_pressed
from journal.desktop.widgets.grid_layout import Group
from journal.desktop.widgets.grid_mouse import GridMouse
from journal.desktop.widgets.grid_paint import STRIP, CellLook, GridPainter, cell_size, fold_chip
from journal.desktop.widgets.thumbs import ThumbCache
from journal.domain.ids import PhotoId

__all__ = ["EDGES", "Group", "PhotoGrid"]


class PhotoGrid(GridBase):
    """Photos in rows under the headings of their sittings.

    It is given groups of photo numbers first; thumbnails and marks come from the cache as they
    are read.
    """

    def __init__(self, cache: ThumbCache, parent: QWidget | None = None) -> None:
        super().__init__(cache, parent)
        self._painter = GridPainter(self)
        self._mouse = GridMouse(self)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setFrameShape(QAbstractScrollArea.Shape.NoFrame)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOn)
        self.setAccessibleName("Photos")
        self.viewport().setMouseTracking(True)
        self.viewport().setAttribute(Qt.WidgetAttribute.WA_OpaquePaintEvent)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the headings and cells that the event uncovers."""
        painter = QPainter(self.viewport())
        area, top = event.rect(), self.verticalScrollBar().value()
        self._painter.fill(painter, area)
        shift = QPoint(0, -top)
        for run in self._layout.runs(area.top() + top, area.bottom() + top):
            heading = run.heading.translated(shift)
            if heading.intersects(area):
                self._painter.heading(painter, heading, self._groups[run.group])
            for index in range(run.first, run.end):
                rect = self._layout.rect(index).translated(shift)
                if rect.intersects(area):
                    self._paint_cell(painter, rect, self.selection.order[index])
        self._mouse.paint(painter)

    def _paint_cell(self, painter: QPainter, rect: QRect, photo: PhotoId) -> None:
        look = CellLook(
            selected=photo in self.selection.chosen,
            current=photo == self.selection.current,
            focused=self.hasFocus(),
            stands_for=self.folds.count(photo),
            of_open_burst=photo in self.folds.open,
            best=photo in self.folds.best,
        )
        self._painter.cell(painter, rect, self.cache.card(photo), look)

    def resizeEvent(self, _event: QResizeEvent) -> None:
        """Lay out anew for the width and keep the photo at the top."""
        at_top = self.photo_at_top()
        self._relayout()
        if at_top is not None and self.verticalScrollBar().value() > 0:
            self._put_at_top(*at_top)
        self._refresh_view()

    def scrollContentsBy(self, _dx: int, dy: int) -> None:
        """Move what is painted already; only the strip that appears is painted."""
        if self._mouse.is_rubbing or abs(dy) >= self.viewport().height():
            self.viewport().update()
        else:
            self.viewport().scroll(0, dy)
        self._want_timer.start()
        self.scrolled.emit()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Move, select and open by key."""
        if not key_pressed(self, event):
            super().keyPressEvent(event)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Start to select, to drag or to draw the rubber band; open a burst by its count."""
        photo = self._fold_at(event.position().toPoint())
        if photo is not None and event.button() == Qt.MouseButton.LeftButton:
            self.fold_wanted.emit(photo)
        else:
            self._mouse.press(event)

    def _fold_at(self, spot: QPoint) -> PhotoId | None:
        """The photo whose count of photos behind it is at a spot."""
        where = self.content_spot(spot)
        index = self._layout.index_at(where)
        if index is None:
            return None
        photo, rect = self.selection.order[index], self._layout.rect(index)
        box = QRect(rect.topLeft(), QSize(rect.width(), rect.height() - STRIP))
        return photo if photo in self.folds.behind and fold_chip(box).contains(where) else None

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Go on with what the press began."""
        self._mouse.move(event)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """End what the press began."""
        self._mouse.release(event)

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        """Open the photo under the pointer."""
        index = self._layout.index_at(self.content_spot(event.position().toPoint()))
        if index is not None and event.button() == Qt.MouseButton.LeftButton:
            self.opened.emit(self.selection.order[index])

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Scroll, or change the size of the cells with Ctrl."""
        if event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            self.step_edge(1 if event.angleDelta().y() > 0 else -1)
            event.accept()
        else:
            super().wheelEvent(event)

    def viewportEvent(self, event: QEvent) -> bool:
        """Say in a tool tip what a cell's marks mean."""
        if event.type() == QEvent.Type.ToolTip and isinstance(event, QHelpEvent):
            QToolTip.showText(event.globalPos(), self.tip_at(event.pos()), self.viewport())
            return True
        return super().viewportEvent(event)

    def tip_at(self, spot: QPoint) -> str:
        """The tool tip for a spot of the viewport, "" where there is nothing to say."""
        index = self._layout.index_at(self.content_spot(spot))
        if index is None:
            group = self._layout.heading_at(self.content_spot(spot))
            return "" if group is None else "Click to select the whole sitting"
        photo = self.selection.order[index]
        card = self.cache.card(photo)
        return "" if card is None else ", ".join([self.words_of(card), *self.folds.words(photo)])

    def changeEvent(self, event: QEvent) -> None:
        """Take the new colours when light turns to dark."""
        if event.type() in {QEvent.Type.PaletteChange, QEvent.Type.FontChange}:
            self._painter.reset()
            self.viewport().update()
        super().changeEvent(event)

    def sizeHint(self) -> QSize:
        """Room for four by three cells."""
        cell = cell_size(self._edge)
        return QSize(cell.width() * 4 + 80, cell.height() * 3 + 80)
