"""Covering on photos, private words, and the standard views: what a person does in the dialogs."""

import pytest
from PySide6.QtCore import QMimeData, QPoint, QPointF, Qt
from PySide6.QtGui import QDropEvent, QPixmap

from journal.actions import covers, dossier_cuts, history, privacy
from journal.actions import photos as photo_actions
from journal.desktop.dialogs.cover_boxes import CoverBoxesDialog
from journal.desktop.dialogs.covered_photos import CoveredPhotosDialog
from journal.desktop.dialogs.private_words import PrivateWordsDialog
from journal.desktop.dialogs.standard_views import StandardViewsDialog
from journal.desktop.widgets.cover_paint import box_rect
from journal.desktop.widgets.photo_drag import photos_to_mime
from journal.domain.private_words import Private
from tests.desktop.desks import desk_over, opened_dialog, put_away
from tests.desktop.garage import garage

_LEFT = Qt.MouseButton.LeftButton


@pytest.fixture
def session(tmp_path):
    with garage(tmp_path, 3, 2) as made:
        yield made


@pytest.fixture
def desk(qapp, session):
    with desk_over(session) as made:
        yield made


@pytest.fixture
def photo(session):
    from journal.actions.timeline import sittings

    return photo_actions.photo(session, sittings(session)[0].photo_ids[0])


@pytest.fixture
def covering(qtbot, desk, photo):
    made = CoverBoxesDialog(desk, photo)
    qtbot.addWidget(made)
    made.show()
    made.canvas.show_picture(QPixmap(400, 300))
    yield made
    put_away(made)


def spot(dialog, x, y):
    area = dialog.canvas._area()
    return QPoint(round(area.x() + x * area.width()), round(area.y() + y * area.height()))


def drag(qtbot, canvas, start, end):
    qtbot.mousePress(canvas, _LEFT, pos=start)
    qtbot.mouseMove(canvas, end)
    qtbot.mouseRelease(canvas, _LEFT, pos=end)


def test_a_box_drawn_by_hand_is_kept_and_can_be_undone(qtbot, covering, desk, session, photo):
    covering.hides.setCurrentIndex(covering.hides.findData(Private.PLATE))
    drag(qtbot, covering.canvas, spot(covering, 0.2, 0.4), spot(covering, 0.6, 0.8))
    (box,) = covers.covers_on(session, photo)
    assert box.hides is Private.PLATE
    assert (box.x, box.y) == pytest.approx((0.2, 0.4), abs=0.01)
    assert (box.width, box.height) == pytest.approx((0.4, 0.4), abs=0.01)
    assert covering.list.count() == 1
    desk.act(history.undo)
    assert not covers.covers_on(session, photo)
    assert covering.list.count() == 0


def test_a_box_is_pulled_sized_and_named(qtbot, covering, session, photo):
    drag(qtbot, covering.canvas, spot(covering, 0.2, 0.2), spot(covering, 0.4, 0.4))
    drag(qtbot, covering.canvas, spot(covering, 0.3, 0.3), spot(covering, 0.5, 0.5))
    (box,) = covers.covers_on(session, photo)
    assert (box.x, box.width) == pytest.approx((0.4, 0.2), abs=0.01)
    drag(qtbot, covering.canvas, spot(covering, 0.6, 0.6), spot(covering, 0.8, 0.7))
    (box,) = covers.covers_on(session, photo)
    assert (box.x, box.width, box.height) == pytest.approx((0.4, 0.4, 0.3), abs=0.015)
    covering.hides.setCurrentIndex(covering.hides.findData(Private.PEOPLE))
    covering.hides.activated.emit(covering.hides.currentIndex())
    assert covers.covers_on(session, photo)[0].hides is Private.PEOPLE


def test_the_keyboard_draws_moves_sizes_and_removes(qtbot, covering, session, photo):
    canvas = covering.canvas
    qtbot.keyClick(canvas, Qt.Key.Key_Insert)
    (first,) = covers.covers_on(session, photo)
    for _ in range(5):
        qtbot.keyClick(canvas, Qt.Key.Key_Right)
    qtbot.keyClick(canvas, Qt.Key.Key_Down, Qt.KeyboardModifier.ShiftModifier)
    before = len(history.edits(session))
    canvas.keep()
    (moved,) = covers.covers_on(session, photo)
    assert moved.x == pytest.approx(first.x + 0.05)
    assert moved.height == pytest.approx(first.height + 0.01)
    assert len(history.edits(session)) == before + 1
    qtbot.keyClick(canvas, Qt.Key.Key_Delete)
    assert not covers.covers_on(session, photo)


def test_boxes_turn_with_their_photo(covering, desk, session, photo):
    desk.act(covers.add_cover, photo, (0.1, 0.2, 0.3, 0.1), Private.PLATE)
    desk.act(photo_actions.turn, [photo.id], 90)
    (box,) = covering.canvas.boxes
    assert (box.x, box.y, box.width, box.height) == pytest.approx((0.7, 0.1, 0.1, 0.3))


def test_closing_keeps_what_was_moved_by_key(qtbot, covering, session, photo):
    qtbot.keyClick(covering.canvas, Qt.Key.Key_Insert)
    (first,) = covers.covers_on(session, photo)
    qtbot.keyClick(covering.canvas, Qt.Key.Key_Left)
    covering.accept()
    assert covers.covers_on(session, photo)[0].x == pytest.approx(first.x - 0.01)


def test_small_boxes_are_hatched_where_they_lie(covering, desk, photo):
    desk.act(covers.add_cover, photo, (0.25, 0.5, 0.25, 0.25), Private.OTHER)
    area = covering.canvas._area()
    rect = box_rect(covering.canvas.boxes[0], area)
    inside = covering.canvas.grab().toImage().pixelColor(rect.center().toPoint())
    assert inside.lightness() > 60


def test_covered_photos_come_first_and_open(qtbot, desk, session, photo):
    desk.act(covers.add_cover, photo, (0.1, 0.1, 0.2, 0.2), Private.PLATE)
    dialog = CoveredPhotosDialog(desk)
    qtbot.addWidget(dialog)
    dialog.show()
    assert dialog.count.text() == "Something is covered on 1 photo."
    assert dialog.grid.selection.order[0] == photo.id
    assert len(dialog.grid.selection.order) == 5
    dialog.grid.opened.emit(photo.id)
    opened_dialog(CoverBoxesDialog).accept()


def test_private_words_are_listed_refused_and_taken_off(qtbot, desk, session):
    dialog = PrivateWordsDialog(desk)
    qtbot.addWidget(dialog)
    dialog.show()
    assert not dialog.add.isEnabled()
    qtbot.keyClicks(dialog.words.edit, "17 Sluice Lane")
    qtbot.keyClick(dialog.words.edit, Qt.Key.Key_Return)
    (word,) = privacy.private_words(session)
    assert (word.words, word.kind) == ("17 Sluice Lane", Private.ADDRESSES)
    assert dialog.list.topLevelItem(0).text(2) == "listed by you"
    qtbot.keyClicks(dialog.words.edit, "17 Sluice Lane")
    dialog.add.click()
    assert "is listed already" in dialog.words.note.text()
    dialog.list.setCurrentItem(dialog.list.topLevelItem(0))
    dialog.remove.click()
    assert not privacy.private_words(session)


def test_a_photo_fills_a_side_by_press_by_drop_and_leaves_it(qtbot, desk, session, photo):
    dialog = StandardViewsDialog(desk)
    qtbot.addWidget(dialog)
    dialog.show()
    front, rear = dialog.slots["front"], dialog.slots["rear"]
    front.click()
    assert "Pick the photo below first" in dialog.said.text()
    dialog.grid.select([photo.id])
    front.click()
    data: QMimeData = photos_to_mime([photo.id])
    rear.dropEvent(
        QDropEvent(
            QPointF(5, 5), Qt.DropAction.CopyAction, data, _LEFT, Qt.KeyboardModifier.NoModifier
        )
    )
    chosen = {row.name: row.photo_id for row in dossier_cuts.standard_views(session)}
    assert chosen == {"front": photo.id, "rear": photo.id}
    assert photo.name in front.accessibleName()
    qtbot.keyClick(front, Qt.Key.Key_Delete)
    assert [row.name for row in dossier_cuts.standard_views(session)] == ["rear"]
    assert dialog.said.text() == "1 of 7 sides have their photo."
