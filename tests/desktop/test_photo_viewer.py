"""The large photo: walking, turning, captioning, leaving; and two photos side by side."""

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtWidgets import QApplication, QLineEdit, QWidget

from journal.actions import history
from journal.actions import photos as photo_actions
from journal.actions.journals import open_journal
from journal.actions.settings import Settings
from journal.desktop.desk import Desk
from journal.desktop.tasks import TaskRunner
from journal.desktop.widgets.photo_viewer import PhotoViewer
from journal.desktop.widgets.side_by_side import SideBySide
from journal.domain.ids import PhotoId
from tests.desktop.workshop import furnished, with_photos

LEFT = Qt.MouseButton.LeftButton
SHIFT = Qt.KeyboardModifier.ShiftModifier


@pytest.fixture
def session(tmp_path):
    with furnished(tmp_path) as made:
        with_photos(made, tmp_path / "card", 6)
        yield made


@pytest.fixture
def runner(qapp, session):
    made = TaskRunner()
    yield made
    made.close()


@pytest.fixture
def desk(session, runner):
    return Desk(session, runner, Settings())


@pytest.fixture
def over(qtbot):
    """A page with a field that has the keyboard."""
    made = QWidget()
    QLineEdit(made).setObjectName("field")
    qtbot.addWidget(made)
    made.resize(900, 700)
    made.show()
    made.findChild(QLineEdit).setFocus()
    return made


@pytest.fixture
def viewer(qtbot, desk, over):
    made = PhotoViewer(desk, None, over)
    made.open_at([PhotoId(n) for n in range(1, 7)], PhotoId(3))
    large(qtbot, made)
    return made


def large(qtbot, viewer):
    """Wait until the photo itself is there."""
    qtbot.waitUntil(lambda: viewer.view.pixmap is not None and viewer.view.pixmap.width() >= 300)


def test_it_shows_the_photo_over_the_whole_page(viewer, over):
    assert viewer.geometry() == over.rect()
    assert viewer.view.pixmap.size().toTuple() == (400, 300)
    over.resize(700, 500)
    assert viewer.size() == over.size()


def test_the_arrows_walk_and_stop_at_the_ends(qtbot, viewer):
    with qtbot.waitSignal(viewer.current_changed) as told:
        qtbot.keyClick(viewer, Qt.Key.Key_Right)
    assert told.args == [4]
    qtbot.keyClick(viewer, Qt.Key.Key_End)
    qtbot.keyClick(viewer, Qt.Key.Key_Right)
    assert viewer.photo.id == 6
    qtbot.keyClick(viewer, Qt.Key.Key_Home)
    qtbot.keyClick(viewer, Qt.Key.Key_Left)
    assert viewer.photo.id == 1


def test_the_neighbours_are_decoded_ahead(qtbot, viewer):
    longest = viewer._longest()
    neighbours = [photo_actions.photo(viewer._desk.session, PhotoId(n)) for n in (2, 4)]
    qtbot.waitUntil(lambda: all(viewer.source.have(one, longest) for one in neighbours))
    qtbot.keyClick(viewer, Qt.Key.Key_Right)
    assert viewer.view.pixmap is viewer.source.have(neighbours[1], longest)


def test_turning_shows_it_turned_and_undo_turns_it_back(qtbot, viewer):
    qtbot.keyClick(viewer, Qt.Key.Key_R)
    qtbot.waitUntil(lambda: viewer.view.pixmap.height() == 400)
    assert viewer.photo.turn == 90
    viewer._desk.act(history.undo)
    qtbot.waitUntil(lambda: viewer.view.pixmap.height() == 300)
    qtbot.keyClick(viewer, Qt.Key.Key_R, SHIFT)
    assert viewer.photo.turn == 270


def test_a_caption_is_saved_by_enter_or_by_walking_on(qtbot, viewer, session):
    qtbot.keyClick(viewer, Qt.Key.Key_C)
    qtbot.keyClicks(viewer.caption, "Rust behind the trim")
    qtbot.keyClick(viewer.caption, Qt.Key.Key_Return)
    assert photo_actions.photo(session, PhotoId(3)).caption == "Rust behind the trim"
    assert viewer.view.hasFocus()
    qtbot.keyClick(viewer, Qt.Key.Key_C)
    qtbot.keyClicks(viewer.caption, "Cut line")
    viewer.step(1)
    assert photo_actions.photo(session, PhotoId(3)).caption == "Cut line"
    assert viewer.caption.text() == ""


def test_escape_first_leaves_the_caption_as_it_was_then_the_viewer(qtbot, viewer, over, session):
    qtbot.keyClick(viewer, Qt.Key.Key_C)
    qtbot.keyClicks(viewer.caption, "Wrong photo")
    qtbot.keyClick(viewer.caption, Qt.Key.Key_Escape)
    assert viewer.isVisible()
    with qtbot.waitSignal(viewer.closed) as told:
        qtbot.keyClick(viewer, Qt.Key.Key_Escape)
    assert told.args == [3]
    assert photo_actions.photo(session, PhotoId(3)).caption == ""
    assert over.findChild(QLineEdit, "field").hasFocus()


def test_tab_stays_in_the_viewer(qtbot, viewer, over):
    for _ in range(30):
        qtbot.keyClick(QApplication.focusWidget(), Qt.Key.Key_Tab)
        assert viewer.isAncestorOf(QApplication.focusWidget())


def test_zooming_in_and_pulling_shows_another_part(qtbot, viewer):
    view = viewer.view
    looks = []
    view.looked.connect(lambda *look: looks.append(look))
    turn = QWheelEvent(
        QPointF(20, 20),
        QPointF(20, 20),
        QPoint(),
        QPoint(0, 120),
        Qt.MouseButton.NoButton,
        Qt.KeyboardModifier.NoModifier,
        Qt.ScrollPhase.NoScrollPhase,
        False,
    )
    for _ in range(6):
        QApplication.sendEvent(view, turn)
    assert view.zoom > 3
    before = looks[-1]
    qtbot.mousePress(view, LEFT, pos=QPoint(400, 300))
    qtbot.mouseMove(view, QPoint(300, 300))
    qtbot.mouseRelease(view, LEFT, pos=QPoint(300, 300))
    assert looks[-1][1] > before[1]
    qtbot.keyClick(viewer, Qt.Key.Key_0)
    assert looks[-1] == (1.0, 0.5, 0.5)


def test_a_photo_removed_elsewhere_closes_nothing_and_breaks_nothing(qtbot, viewer, session):
    viewer._desk.act(photo_actions.remove_photos, [PhotoId(3)])
    assert viewer.isVisible()
    qtbot.keyClick(viewer, Qt.Key.Key_Right)
    assert viewer.photo.id == 4


def test_a_journal_open_for_reading_can_be_looked_at(qtbot, session, runner, over):
    with open_journal(session.folder, read_only=True) as reading:
        viewer = PhotoViewer(Desk(reading, runner, Settings()), None, over)
        viewer.open_at([PhotoId(1), PhotoId(2)], PhotoId(1))
        large(qtbot, viewer)
        assert viewer.caption.isReadOnly()
        qtbot.keyClick(viewer, Qt.Key.Key_R)
        assert viewer.photo.turn == 0
        runner.stop_all()


def test_side_by_side_zooms_together(qtbot, desk):
    pair = SideBySide(desk)
    qtbot.addWidget(pair)
    pair.resize(800, 400)
    pair.show()
    pair.set_pair(PhotoId(1), PhotoId(6))
    qtbot.waitUntil(lambda: all(view.pixmap is not None for view in pair.views))
    qtbot.keyClick(pair, Qt.Key.Key_Plus)
    assert pair.views[0].zoom == pair.views[1].zoom > 1
    pair.views[1].zoom_by(2)
    assert pair.views[0].zoom == pair.views[1].zoom
    pair.set_pair(PhotoId(1), None)
    assert pair.views[1].pixmap is None
    assert "IMG_0000.jpg and none" in pair.accessibleDescription()
