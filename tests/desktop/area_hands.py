"""What a hand does on the page of repair areas, for its tests."""

from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QDragEnterEvent, QDropEvent
from PySide6.QtWidgets import QApplication, QPushButton

from journal.actions import areas
from journal.desktop.widgets.photo_drag import photos_to_mime


def names(page):
    return [row.area.name for row in page.list.rows_model.rows()]


def area_named(session, name):
    return next(area for area in areas.areas(session) if area.name == name)


def pick(qtbot, page, name):
    index = page.list.model().index(names(page).index(name), 0)
    spot = page.list.visualRect(index).center()
    qtbot.mouseClick(page.list.viewport(), Qt.MouseButton.LeftButton, pos=spot)


def press(page, text):
    found = [b for b in page.findChildren(QPushButton) if b.text().replace("&", "") == text]
    assert found, f"no button “{text}”"
    found[0].click()


def drop(strip, ids, source_accepts=True):
    data = photos_to_mime(ids)
    enter = QDragEnterEvent(
        QPoint(5, 5),
        Qt.DropAction.CopyAction,
        data,
        Qt.MouseButton.LeftButton,
        Qt.KeyboardModifier.NoModifier,
    )
    QApplication.sendEvent(strip.viewport(), enter)
    QApplication.sendEvent(
        strip.viewport(),
        QDropEvent(
            QPointF(5, 5),
            Qt.DropAction.CopyAction,
            data,
            Qt.MouseButton.LeftButton,
            Qt.KeyboardModifier.NoModifier,
        ),
    )


def chosen(session, area_id):
    return [(role, photo.id) for role, photo in areas.area_photos(session, area_id)]
