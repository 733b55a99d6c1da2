"""A hand on the canvas, and a Drawing page in the shaping mode to use it on."""

from collections.abc import Iterator
from contextlib import contextmanager

from PySide6.QtCore import QEvent, QPointF, Qt
from PySide6.QtGui import QMouseEvent
from PySide6.QtWidgets import QApplication

from journal.actions import drawings, history, shaping
from journal.actions.session import Session
from journal.desktop.desk import PanelSelected
from journal.domain.drawing import Side, System
from journal.domain.ids import ViewId
from journal.domain.shapes import rectangle
from journal.domain.shaping import making
from journal.domain.shaping.corners import corner_points
from journal.domain.shaping.placed import shape_of
from tests.desktop.workshop import empty

KEY, HELD = Qt.Key, Qt.KeyboardModifier
LEFT = Qt.MouseButton.LeftButton


class Hand:
    """A hand on the canvas: it knows millimetres."""

    def __init__(self, qtbot, page):
        self.qtbot, self.page, self.canvas = qtbot, page, page.canvas

    def _send(self, kind, at, held, *, down):
        spot = QPointF(self.canvas.mapFromScene(QPointF(*at)))
        button = Qt.MouseButton.NoButton if kind is QEvent.Type.MouseMove else LEFT
        buttons = LEFT if down else Qt.MouseButton.NoButton
        event = QMouseEvent(kind, spot, spot, button, buttons, held)
        QApplication.sendEvent(self.canvas.viewport(), event)

    def press(self, *at, held=HELD.NoModifier):
        self._send(QEvent.Type.MouseMove, at, held, down=False)
        self._send(QEvent.Type.MouseButtonPress, at, held, down=True)

    def move(self, *at, held=HELD.NoModifier, down=True):
        self._send(QEvent.Type.MouseMove, at, held, down=down)

    def release(self, *at, held=HELD.NoModifier):
        self._send(QEvent.Type.MouseButtonRelease, at, held, down=False)

    def click(self, *at, held=HELD.NoModifier):
        self.press(*at, held=held)
        self.release(*at, held=held)

    def double_click(self, *at):
        self.click(*at)
        self._send(QEvent.Type.MouseButtonDblClick, at, HELD.NoModifier, down=True)
        self.release(*at)

    def drag(self, start, end, held=HELD.NoModifier):
        self.press(*start, held=held)
        middle = (start[0] + end[0]) / 2, (start[1] + end[1]) / 2
        self.move(*middle, held=held)
        self.move(*end, held=held)
        self.release(*end, held=held)

    def keys(self, *keys, held=HELD.NoModifier):
        for key in keys:
            self.qtbot.keyClick(self.canvas, key, held)


@contextmanager
def two_plates(folder) -> Iterator[Session]:
    """A blank left side of 2000 x 1000 mm and an underside, with two plates that share an edge."""

    def drawn(_drawing):
        drawing = making.blank_sheet((("Left side", 2000, 1000), ("Underside", 2000, 1000)))
        view = drawing.views[0].id
        for name, left in (("Plate", 200), ("Fellow", 800)):
            shape = rectangle(left, 200, 600, 400)
            drawing = making.add_panel(drawing, name, Side.LEFT, System.FLOOR, view, shape)
        return drawing

    with empty(folder) as made:
        shaping.reshape(made, "Draw two plates", drawn)
        yield made


def panel(page, label):
    return next(p.id for p in drawings.panels(page.desk.session) if p.label == label)


def corners(page, label, view=1):
    drawing = drawings.drawing(page.desk.session)
    found = shape_of(drawing, panel(page, label), ViewId(view))
    return {(round(p.x), round(p.y)) for _, p in corner_points(found)}


def choose(page, label):
    page.desk.select(PanelSelected(panel(page, label)))
    return page.modes.mode.corners


def tool(page, name):
    found = next(t for t in page.modes.mode.tools if t.name == name)
    page.canvas.set_tool(found)
    return found


def edits(page):
    return len(history.edits(page.desk.session))


def name_it(qtbot, page, name):
    field = page.modes.mode.pane().name._name
    field.setText(name)
    qtbot.keyClick(field, KEY.Key_Return)
