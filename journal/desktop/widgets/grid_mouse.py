"""What the mouse does in the photo grid: select, draw a rubber band, carry photos away."""

from PySide6.QtCore import QObject, QPoint, QRect, Qt, QTimer
from PySide6.QtGui import QColor, QDrag, QMouseEvent, QPainter, QPen
from PySide6.QtWidgets import QApplication

from journal.desktop.theme import colours_of
from journal.desktop.widgets.grid_base import GridBase
from journal.desktop.widgets.photo_drag import drag_picture, photos_to_mime
from journal.domain.ids import PhotoId

_CONTROL = Qt.KeyboardModifier.ControlModifier
_SHIFT = Qt.KeyboardModifier.ShiftModifier
_LEFT = Qt.MouseButton.LeftButton
_SCROLL_MS = 30


class GridMouse(QObject):
    """Follows one press of the mouse from its start to its end."""

    def __init__(self, grid: GridBase) -> None:
        super().__init__(grid)
        self._grid = grid
        self._pressed: QPoint | None = None
        self._can_drag = False
        self._alone_on_release: int | None = None
        self._rub_from: QPoint | None = None
        self._rub_to = QPoint()
        self._kept: set[PhotoId] = set()
        self._scroll = QTimer(self, interval=_SCROLL_MS)
        self._scroll.timeout.connect(self._on_scroll)

    @property
    def is_rubbing(self) -> bool:
        """Whether a rubber band is being drawn."""
        return self._rub_from is not None

    def press(self, event: QMouseEvent) -> None:
        """Select what is under the pointer, or begin a rubber band on the ground."""
        spot = event.position().toPoint()
        where = self._grid.content_spot(spot)
        index = self._grid.grid_layout.index_at(where)
        group = self._grid.grid_layout.heading_at(where)
        self._pressed, self._alone_on_release = spot, None
        self._can_drag = event.button() == _LEFT and (index is not None or group is not None)
        if index is not None:
            self._press_cell(index, event)
        elif group is not None and event.button() == _LEFT:
            self._press_heading(group, event)
        elif event.button() == _LEFT:
            self._begin_rub(where, event)

    def move(self, event: QMouseEvent) -> None:
        """Draw the rubber band on, or carry the selection away."""
        spot = event.position().toPoint()
        if self.is_rubbing:
            self._rub_to = self._grid.content_spot(spot)
            self._apply_rub()
            inside = self._grid.viewport().rect().contains(spot)
            if inside:
                self._scroll.stop()
            elif not self._scroll.isActive():
                self._scroll.start()
        elif self._pressed is not None and self._can_drag and event.buttons() & _LEFT:
            far = (spot - self._pressed).manhattanLength()
            if far >= QApplication.startDragDistance():
                self._pressed, self._alone_on_release = None, None
                self.carry()

    def release(self, event: QMouseEvent) -> None:
        """End the rubber band; a click on one of many selected photos selects it alone."""
        self._scroll.stop()
        if self.is_rubbing:
            self._rub_from = None
            self._grid.selection_applied()
        elif self._alone_on_release is not None and event.button() == _LEFT:
            self._grid.selection.only(self._alone_on_release)
            self._grid.selection_applied()
        self._pressed, self._alone_on_release = None, None

    def carry(self) -> None:
        """Carry the selected photos under the pointer until they are dropped."""
        drag = self.make_drag()
        if drag is not None:
            drag.exec(Qt.DropAction.CopyAction)

    def make_drag(self) -> QDrag | None:
        """The drag of the selected photos, ready to start; None if nothing is selected."""
        photos = self._grid.selected()
        if not photos:
            return None
        colours = colours_of(self._grid.palette())
        drag = QDrag(self._grid)
        drag.setMimeData(photos_to_mime(photos))
        drag.setPixmap(
            drag_picture(
                self._grid.pictures_of(photos[:3]),
                len(photos),
                ink=QColor(colours.accent),
                paper=QColor(colours.surface),
                ratio=self._grid.devicePixelRatioF(),
            )
        )
        drag.setHotSpot(QPoint(20, 20))
        return drag

    def paint(self, painter: QPainter) -> None:
        """Paint the rubber band."""
        if self._rub_from is None:
            return
        accent = QColor(colours_of(self._grid.palette()).accent)
        top = self._grid.content_spot(QPoint())
        area = QRect(self._rub_from, self._rub_to).normalized().translated(-top)
        painter.setPen(QPen(accent, 2))
        accent.setAlpha(40)
        painter.setBrush(accent)
        painter.drawRect(area)

    def _press_cell(self, index: int, event: QMouseEvent) -> None:
        selection, modifiers = self._grid.selection, event.modifiers()
        is_chosen = selection.order[index] in selection.chosen
        if event.button() == Qt.MouseButton.RightButton and is_chosen:
            selection.go(index)
            self._grid.current_moved()
            return
        if modifiers & _SHIFT:
            selection.extend(index, keep=bool(modifiers & _CONTROL))
        elif modifiers & _CONTROL:
            selection.toggle(index)
        elif is_chosen:
            self._alone_on_release = index
            selection.go(index)
            self._grid.current_moved()
            return
        else:
            selection.only(index)
        self._grid.selection_applied()

    def _press_heading(self, group: int, event: QMouseEvent) -> None:
        span = self._grid.grid_layout.span(group)
        chosen = self._grid.selection.chosen
        order = self._grid.selection.order
        if all(order[index] in chosen for index in span) and not event.modifiers():
            return
        self._grid.select_group(group, keep=bool(event.modifiers() & (_CONTROL | _SHIFT)))

    def _begin_rub(self, where: QPoint, event: QMouseEvent) -> None:
        keeps = bool(event.modifiers() & (_CONTROL | _SHIFT))
        self._kept = set(self._grid.selection.chosen) if keeps else set()
        self._rub_from = self._rub_to = where
        self._apply_rub()

    def _apply_rub(self) -> None:
        if self._rub_from is None:
            return
        selection = self._grid.selection
        area = QRect(self._rub_from, self._rub_to).normalized()
        touched = list(self._grid.grid_layout.within(area))
        selection.chosen = self._kept | {selection.order[index] for index in touched}
        if touched:
            selection.go(touched[0])
            selection.anchor = selection.current
        self._grid.viewport().update()

    def _on_scroll(self) -> None:
        """Scroll while the rubber band reaches past the edge."""
        top = self._grid.content_spot(QPoint()).y()
        room = self._grid.viewport().height()
        pointer = self._grid.viewport().mapFromGlobal(self._grid.cursor().pos()).y()
        bar = self._grid.verticalScrollBar()
        bar.setValue(bar.value() + (min(0, pointer) or max(0, pointer - room)) // 2)
        self._rub_to += QPoint(0, self._grid.content_spot(QPoint()).y() - top)
        self._apply_rub()
