"""The drawing on screen with a tool in hand; without one it is looked at as ever."""

from collections.abc import Callable, Mapping
from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QPointF, QRect, QRectF, Qt, Signal
from PySide6.QtGui import (
    QKeyEvent,
    QKeySequence,
    QMouseEvent,
    QPainter,
    QPainterPath,
    QPaintEvent,
    QTransform,
)
from PySide6.QtWidgets import QWidget

from journal.desktop.theme import colours_of
from journal.desktop.widgets.canvas import DrawingCanvas
from journal.desktop.widgets.canvas_fault import paint_fault
from journal.desktop.widgets.canvas_items import PanelItem
from journal.desktop.widgets.canvas_pins import Dot
from journal.desktop.widgets.canvas_still import Still, paint_items
from journal.domain.drawing import Drawing, PanelShape
from journal.domain.ids import PanelId, ViewId
from journal.domain.shapes import Point

if TYPE_CHECKING:
    from journal.desktop.tools.tool import Tool
    from journal.domain.shaping.snapping import Snapper

#: Paints something over the drawing, in pixels; the transform takes millimetres to pixels.
Layer = Callable[[QPainter, QTransform], None]

#: Keys of looking that stay what they are with a tool in hand.
_LOOKING_KEYS = {
    Qt.Key.Key_Plus,
    Qt.Key.Key_Equal,
    Qt.Key.Key_Minus,
    Qt.Key.Key_0,
    Qt.Key.Key_PageUp,
    Qt.Key.Key_PageDown,
}
#: A tool has these before any shortcut of the window; letters and digits too.
_TOOL_KEYS = {
    Qt.Key.Key_Escape,
    Qt.Key.Key_Return,
    Qt.Key.Key_Enter,
    Qt.Key.Key_Delete,
    Qt.Key.Key_Backspace,
    Qt.Key.Key_Tab,
    Qt.Key.Key_Backtab,
    Qt.Key.Key_Left,
    Qt.Key.Key_Right,
    Qt.Key.Key_Up,
    Qt.Key.Key_Down,
}
_LAST_SIGN = 0x00FFFFFF
_PLAIN = Qt.KeyboardModifier.ShiftModifier | Qt.KeyboardModifier.KeypadModifier


class ToolCanvas(DrawingCanvas):
    """The canvas that hands mouse and keys on to a tool, and shows what it is about to change."""

    #: Esc was pressed and the tool had nothing to drop.
    left = Signal()
    #: Another tool is in hand: the Tool, None for looking.
    tool_changed = Signal(object)
    #: A digit was pressed that the tool has no use for: 1 to 9.
    digit_pressed = Signal(int)

    # Events come while the base class is being made already.
    _tool: "Tool | None" = None

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._layers: list[Layer] = []
        self._fault: tuple[Point, str] | None = None
        self._pointer: Point | None = None
        #: The items of shapes that show otherwise now, in whose place others are painted.
        self._recorded: dict[PanelId, list[PanelItem]] = {}
        self._still: Still | None = None
        self._snapper: tuple[Drawing, ViewId, Snapper] | None = None

    # The tool and what it asks

    def set_tool(self, tool: "Tool | None") -> None:
        """Take up a tool; None: look, click and travel as ever."""
        if tool is self._tool:
            return
        if self._tool is not None:
            self._tool.end()
        self.show_as_drawn()
        self._fault = None
        was, self._tool = self._tool, tool
        self._still = None
        self._point_at(None)
        if tool is None:
            self.viewport().unsetCursor()
            self.scene().changed.disconnect(self._forget_still)
        else:
            if was is None:
                self.scene().changed.connect(self._forget_still)
            tool.begin(self)
            self.viewport().setCursor(tool.cursor)
        self.viewport().update()
        self.tool_changed.emit(tool)

    @property
    def tool(self) -> "Tool | None":
        """The tool in hand; None for looking."""
        return self._tool

    @property
    def drawing(self) -> Drawing:
        """The drawing shown, as it is recorded."""
        return self._drawing

    @property
    def pointer(self) -> Point | None:
        """Where the pointer was last, in millimetres."""
        return self._pointer

    def mm(self, pixels: float) -> float:
        """How many millimetres of the view so many pixels are now."""
        scale = self.transform().m11()
        return pixels / scale if scale else pixels

    def panel_under(self, point: Point) -> PanelId | None:
        """The panel at a spot of the view, or just beside it."""
        return self.panel_at(self.mapFromScene(QPointF(*point)))

    def snapper(self) -> "Snapper":
        """What catches spots on the view shown; made once for a drawing and a view."""
        from journal.domain.shaping.snapping import Snapper

        assert self._view is not None
        made = self._snapper
        if made is None or made[0] is not self._drawing or made[1] != self._view.id:
            made = (self._drawing, self._view.id, Snapper(self._drawing, self._view.id))
            self._snapper = made
        return made[2]

    def add_layer(self, paint: Layer) -> None:
        """Have something painted over the drawing from now on, under what the tool paints."""
        self._layers.append(paint)
        self.viewport().update()

    def take_layer(self, paint: Layer) -> None:
        """Have it painted no more."""
        if paint in self._layers:
            self._layers.remove(paint)
            self.viewport().update()

    def mark_fault(self, point: Point | None, words: str) -> None:
        """Mark the spot at which something can't be done, with the reason, until the next act."""
        self._fault = None if point is None else (point, words)
        self.viewport().update()

    @property
    def fault(self) -> tuple[Point, str] | None:
        """What is marked as impossible now, and where."""
        return self._fault

    def show_shapes(self, changed: Mapping[int, PanelShape]) -> None:
        """Show these shapes, by their places in ``Drawing.shapes``, and all others as recorded."""
        now = {p.panel_id: p for p in changed.values() if p.view_id == self.view_id}
        for panel_id in self._recorded.keys() - now.keys():
            self._items[panel_id] = self._recorded.pop(panel_id)
        for panel_id, placed in now.items():
            if panel_id not in self._recorded and panel_id in self._items:
                self._recorded[panel_id] = self._items[panel_id]
                self._items[panel_id] = [item.twin() for item in self._items[panel_id]]
            for item in self._items.get(panel_id, ()):
                item.set_shape(placed.shape)
        self.viewport().update()

    def show_as_drawn(self) -> None:
        """Show every shape as it is recorded."""
        self.show_shapes({})

    def outline_of(self, panel_id: PanelId) -> QPainterPath | None:
        """The outline of a panel on this view, in millimetres, as it shows now."""
        items = self._items.get(panel_id)
        return items[0].path if items else None

    def travel(self, direction: str) -> None:
        """Mark the panel that lies "left", "right", "up" or "down" of the one marked."""
        self._travel(direction)

    # What is shown

    def dots(self) -> tuple[Dot, ...]:
        """The pins as they show now; none while a tool has them out of the way."""
        return () if self.hides_pins else super().dots()

    def signs(self) -> dict[PanelId, QPointF]:
        """Where the signs of stages stand now; nowhere while a tool has them out of the way."""
        return {} if self.hides_pins else super().signs()

    def _named(self) -> PanelId | None:
        """The panel whose name is shown; none while a tool has the drawing to itself."""
        return None if self.hides_pins else super()._named()

    @property
    def hides_pins(self) -> bool:
        """Whether a tool has pins and signs out of the way."""
        return self._tool is not None and self._tool.hides_pins

    def set_drawing(self, drawing: Drawing) -> None:
        """Show this drawing; view, panel, scale and place stay where they still exist."""
        view, zoom = self._view, self._zoom
        centre = self.mapToScene(self.viewport().rect().center())
        self._recorded = {}
        super().set_drawing(drawing)
        if zoom > 1 and view is not None and self._view == view:
            self.zoom(zoom)
            self.centerOn(centre)
        self._tell_tool()

    def set_view(self, view_id: ViewId) -> None:
        """Show another view of the drawing."""
        before = self._view
        if view_id != self.view_id:
            self.show_as_drawn()
        super().set_view(view_id)
        if self._view != before:
            self._tell_tool()

    def _tell_tool(self) -> None:
        self._fault = None
        if self._tool is not None:
            self._tool.shown_changed()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint all; with a tool in hand what rests is painted once and kept as a picture."""
        if self._tool is None:
            super().paintEvent(event)
            return
        to_screen, viewport = self.viewportTransform(), self.viewport()
        if self._still is None or not self._still.fits(to_screen, viewport):
            self._still = Still(self.scene(), to_screen, viewport)
        self._still.leave_out(item for items in self._recorded.values() for item in items)
        moving = [item for panel_id in self._recorded for item in self._items[panel_id]]
        painter = QPainter(viewport)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.drawPixmap(0, 0, self._still.below)
        paint_items(painter, sorted(moving, key=lambda i: i.zValue()), to_screen, viewport)
        if self._still.above is not None:
            painter.drawPixmap(0, 0, self._still.above)
        painter.setTransform(to_screen)
        self.drawForeground(painter, self.sceneRect())
        painter.end()

    def drawForeground(self, painter: QPainter, rect: QRectF | QRect) -> None:
        """Paint what lies over the drawing: outlines and pins, layers, the tool's, a fault."""
        super().drawForeground(painter, rect)
        if not self._layers and self._tool is None and self._fault is None:
            return
        to_screen = self.viewportTransform()
        painter.save()
        painter.resetTransform()
        own = [] if self._tool is None else [self._tool.paint_over]
        for paint in (*self._layers, *own):
            painter.save()
            paint(painter, to_screen)
            painter.restore()
        if self._fault is not None:
            at = to_screen.map(QPointF(*self._fault[0]))
            colours, room = colours_of(self.palette()), self.viewport().rect()
            paint_fault(painter, at, self._fault[1], room, colours, self.font())
        painter.restore()

    def _forget_still(self) -> None:
        self._still = None
        self.viewport().update()

    def _forget_dots(self) -> None:
        self._still = None
        super()._forget_dots()

    # Qt

    def event(self, event: QEvent) -> bool:
        """Let the tool have Tab, and keys that are shortcuts elsewhere."""
        if self._tool is not None and isinstance(event, QKeyEvent):
            is_asked = event.type() == QEvent.Type.ShortcutOverride
            if is_asked and (self._is_tool_key(event) or self._steps_back(event)):
                event.accept()
                return True
            tabs = Qt.Key.Key_Tab, Qt.Key.Key_Backtab
            is_tab = event.type() == QEvent.Type.KeyPress and event.key() in tabs
            if is_tab and self._tool.key(event):
                event.accept()
                return True
        return super().event(event)

    def _steps_back(self, event: QKeyEvent) -> bool:
        """Whether Ctrl+Z is about what the tool has half done."""
        is_undo = event.matches(QKeySequence.StandardKey.Undo)
        return is_undo and self._tool is not None and self._tool.is_half_done

    @staticmethod
    def _is_tool_key(event: QKeyEvent) -> bool:
        if event.modifiers() & ~_PLAIN:
            return False
        return event.key() in _TOOL_KEYS or event.key() <= _LAST_SIGN

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Hand a key to the tool; the keys of scale and view stay as ever."""
        tool = self._tool
        if tool is None:
            super().keyPressEvent(event)
            return
        if self._fault is not None:
            self.mark_fault(None, "")
        digit = event.key() - Qt.Key.Key_0
        if self._steps_back(event):
            tool.step_back()
        elif tool.key(event):
            event.accept()
        elif event.key() == Qt.Key.Key_Escape:
            if not tool.cancel():
                self.left.emit()
        elif event.key() in _LOOKING_KEYS:
            super().keyPressEvent(event)
        elif 1 <= digit <= 9 and not event.modifiers() & ~_PLAIN:
            self.digit_pressed.emit(digit)
        else:
            event.ignore()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Tell the tool; other buttons than the left one pull the sheet about."""
        tool = self._tool
        if tool is None or event.button() != Qt.MouseButton.LeftButton:
            super().mousePressEvent(event)
            return
        self._fault = None
        tool.pressed(self._point(event), event.modifiers())

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Tell the tool."""
        point = self._point(event)
        pulls = event.buttons() & ~Qt.MouseButton.LeftButton
        if self._tool is None or pulls:
            super().mouseMoveEvent(event)
        else:
            self._tool.moved(point, event.modifiers())

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Tell the tool."""
        if self._tool is None or event.button() != Qt.MouseButton.LeftButton:
            super().mouseReleaseEvent(event)
        else:
            self._tool.released(self._point(event), event.modifiers())

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        """Tell the tool."""
        if self._tool is None:
            super().mouseDoubleClickEvent(event)
        elif event.button() == Qt.MouseButton.LeftButton:
            self._tool.double_clicked(self._point(event), event.modifiers())

    def _point(self, event: QMouseEvent) -> Point:
        back, _ = self.viewportTransform().inverted()
        at = back.map(event.position())
        self._pointer = Point(at.x(), at.y())
        return self._pointer
