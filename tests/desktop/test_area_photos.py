"""The photos of a repair area on its page: dropped, dragged, chosen, side by side."""

import pytest
from PySide6.QtCore import QMimeData, QPoint, Qt
from PySide6.QtGui import QDragEnterEvent
from PySide6.QtWidgets import QPushButton

from journal.actions import areas
from journal.desktop.desk import PhotosSelected
from journal.desktop.dialogs.choose_photos import ChoosePhotosDialog
from journal.desktop.pages.areas import AreasPage
from journal.domain.photos import Role
from tests.desktop import workshop
from tests.desktop.area_hands import area_named, chosen, drop, pick
from tests.desktop.desks import desk_over, opened_dialog
from tests.desktop.garage import add_sittings


@pytest.fixture
def session(tmp_path):
    with workshop.furnished(tmp_path) as made:
        yield made


@pytest.fixture
def photos(session):
    return add_sittings(session, 4, 3)


@pytest.fixture
def desk(qapp, session):
    with desk_over(session) as made:
        yield made


@pytest.fixture
def page(qtbot, desk):
    made = AreasPage(desk)
    qtbot.addWidget(made)
    desk.changed.connect(made.refresh)
    desk.selected.connect(made.show_selection)
    made.resize(900, 700)
    made.refresh(None)
    made.show()
    yield made
    made.hide()


def test_photos_dropped_on_a_strip_are_chosen_and_change_sides(qtbot, page, session, photos):
    pick(qtbot, page, "Boot lid lip")
    known = area_named(session, "Boot lid lip")
    strips = page.detail.photos.strips
    drop(strips[Role.BEFORE], photos[0][:2])
    assert chosen(session, known.id) == [(Role.BEFORE, i) for i in photos[0][:2]]
    assert strips[Role.BEFORE].ids() == tuple(photos[0][:2])
    drop(strips[Role.AFTER], photos[0][1:2])
    assert chosen(session, known.id) == [
        (Role.BEFORE, photos[0][0]),
        (Role.AFTER, photos[0][1]),
    ]


def test_what_is_no_photo_is_not_taken(qtbot, page, session):
    pick(qtbot, page, "Boot lid lip")
    data = QMimeData()
    data.setText("words")
    event = QDragEnterEvent(
        QPoint(5, 5),
        Qt.DropAction.CopyAction,
        data,
        Qt.MouseButton.LeftButton,
        Qt.KeyboardModifier.NoModifier,
    )
    strip = page.detail.photos.strips[Role.BEFORE]
    strip.dragEnterEvent(event)
    assert not event.isAccepted()


def test_delete_takes_a_photo_out_of_the_strip(qtbot, page, session, photos):
    known = area_named(session, "Boot lid lip")
    areas.choose_photos(session, known.id, photos[0], Role.DURING)
    pick(qtbot, page, "Boot lid lip")
    strip = page.detail.photos.strips[Role.DURING]
    strip.setCurrentIndex(strip.model().index(1, 0))
    qtbot.keyClick(strip, Qt.Key.Key_Delete)
    assert [photo for _, photo in chosen(session, known.id)] == [
        p for p in photos[0] if p != photos[0][1]
    ]


def test_a_photo_of_a_strip_is_selected_and_dragged_as_the_grids_do(
    qtbot, page, desk, session, photos
):
    known = area_named(session, "Boot lid lip")
    areas.choose_photos(session, known.id, photos[0][:1], Role.BEFORE)
    pick(qtbot, page, "Boot lid lip")
    strip = page.detail.photos.strips[Role.BEFORE]
    index = strip.model().index(0, 0)
    qtbot.mouseClick(
        strip.viewport(), Qt.MouseButton.LeftButton, pos=strip.visualRect(index).center()
    )
    assert desk.selection == PhotosSelected((photos[0][0],))
    assert page.detail.area_id == known.id
    from journal.desktop.widgets.photo_drag import photos_from_mime

    assert photos_from_mime(strip.model().mimeData([index])) == (photos[0][0],)


def test_photos_are_chosen_from_those_pinned_to_its_panels(qtbot, page, desk, session, photos):
    from journal.actions import pins

    known = area_named(session, "Boot lid lip")
    pins.pin(session, photos[1], known.panel_ids[0])
    pick(qtbot, page, "Boot lid lip")
    choose = next(
        b
        for b in page.detail.findChildren(QPushButton)
        if b.accessibleName() == "Choose after photos"
    )
    choose.click()
    dialog = opened_dialog(ChoosePhotosDialog)
    assert not dialog.all_photos.isChecked()
    assert dialog.grid.selection.order == tuple(photos[1])
    assert not dialog.accept_button.isEnabled()
    dialog.grid.select(photos[1][:1])
    dialog.accept_button.click()
    assert chosen(session, known.id) == [(Role.AFTER, photos[1][0])]


def test_before_and_after_stand_side_by_side(qtbot, page, session, photos):
    known = area_named(session, "Boot lid lip")
    pick(qtbot, page, "Boot lid lip")
    assert not page.detail.photos.pair_button.isEnabled()
    areas.choose_photos(session, known.id, photos[0][:1], Role.BEFORE)
    areas.choose_photos(session, known.id, photos[1][:1], Role.AFTER)
    page.refresh(None)
    page.detail.photos.pair_button.click()
    pair = page.detail.photos._pair
    assert pair.isVisible()
    assert pair.accessibleDescription() == "Before and after: IMG_0001.jpg and IMG_0005.jpg"
