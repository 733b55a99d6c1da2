"""Photos carried from one page to another over the rail."""

import pytest
from PySide6.QtCore import QMimeData, QPoint, QPointF, Qt
from PySide6.QtGui import QDragEnterEvent, QDragMoveEvent, QDropEvent
from PySide6.QtWidgets import QToolButton

from journal.desktop.rail import Rail
from journal.desktop.widgets.photo_drag import photos_to_mime
from journal.domain.ids import PhotoId

COPY, LEFT = Qt.DropAction.CopyAction, Qt.MouseButton.LeftButton
NONE = Qt.KeyboardModifier.NoModifier


@pytest.fixture
def rail(qtbot):
    made = Rail([("Drawing", "drawing"), ("Timeline", "timeline")])
    qtbot.addWidget(made)
    made.show()
    return made


def middle(rail, title):
    button = next(b for b in rail.findChildren(QToolButton) if b.text() == title)
    return button.geometry().center()


def test_photos_held_over_a_page_bring_it_to_the_front(qtbot, rail):
    data = photos_to_mime([PhotoId(3)])
    enter = QDragEnterEvent(QPoint(5, 5), COPY, data, LEFT, NONE)
    rail.dragEnterEvent(enter)
    assert enter.isAccepted()
    with qtbot.waitSignal(rail.chosen) as told:
        rail.dragMoveEvent(QDragMoveEvent(middle(rail, "Drawing"), COPY, data, LEFT, NONE))
    assert told.args == ["Drawing"]
    drop = QDropEvent(QPointF(middle(rail, "Drawing")), COPY, data, LEFT, NONE)
    rail.dropEvent(drop)
    assert not drop.isAccepted()


def test_passing_over_brings_nothing(qtbot, rail):
    data = photos_to_mime([PhotoId(3)])
    with qtbot.assertNotEmitted(rail.chosen, wait=600):
        rail.dragMoveEvent(QDragMoveEvent(middle(rail, "Timeline"), COPY, data, LEFT, NONE))
        rail.dragMoveEvent(QDragMoveEvent(QPoint(2, 2), COPY, data, LEFT, NONE))


def test_files_from_outside_are_left_to_the_window(rail):
    data = QMimeData()
    data.setText("a list")
    enter = QDragEnterEvent(QPoint(5, 5), COPY, data, LEFT, NONE)
    rail.dragEnterEvent(enter)
    assert not enter.isAccepted()
