"""The grid of photos as a person uses it: by mouse and by key."""

import pytest
from PySide6.QtCore import QEvent, QPoint, QPointF, Qt
from PySide6.QtGui import QColor, QWheelEvent
from PySide6.QtWidgets import QApplication

from journal.desktop import theme
from journal.desktop.tasks import TaskRunner
from journal.desktop.widgets.photo_drag import photos_from_mime
from journal.desktop.widgets.photo_grid import PhotoGrid
from journal.desktop.widgets.thumbs import ThumbCache
from journal.domain.ids import PhotoId
from tests.desktop.photo_fakes import fake_groups, fake_load

LEFT = Qt.MouseButton.LeftButton
SHIFT = Qt.KeyboardModifier.ShiftModifier
CONTROL = Qt.KeyboardModifier.ControlModifier
NONE = Qt.KeyboardModifier.NoModifier


@pytest.fixture
def runner(qtbot):
    made = TaskRunner()
    yield made
    made.close()


@pytest.fixture
def grid(qtbot, runner):
    """Sixty photos in sittings of 23, seven in a row, with the first screen's pictures in."""
    made = PhotoGrid(ThumbCache(fake_load, runner))
    qtbot.addWidget(made)
    made.resize(1240, 800)
    made.set_groups(fake_groups(60))
    made.show()
    qtbot.waitUntil(lambda: all(made.cache.card(photo) for photo in made.visible_photos()))
    return made


def click(qtbot, grid, photo, modifier=NONE):
    qtbot.mouseClick(grid.viewport(), LEFT, modifier, grid.cell_rect(PhotoId(photo)).center())


def test_a_click_selects_one_photo_and_says_so(qtbot, grid):
    with qtbot.waitSignal(grid.selection_changed) as told:
        click(qtbot, grid, 5)
    assert told.args == [(5,)]
    click(qtbot, grid, 9)
    assert grid.selected() == (9,)


def test_shift_reaches_and_control_picks(qtbot, grid):
    click(qtbot, grid, 3)
    click(qtbot, grid, 6, SHIFT)
    assert grid.selected() == (3, 4, 5, 6)
    click(qtbot, grid, 5, CONTROL)
    click(qtbot, grid, 20, CONTROL)
    assert grid.selected() == (3, 4, 6, 20)


def test_the_heading_selects_its_sitting(qtbot, grid):
    qtbot.mouseClick(grid.viewport(), LEFT, NONE, grid.heading_rect(1).center())
    assert grid.selected() == tuple(range(24, 47))
    qtbot.mouseClick(grid.viewport(), LEFT, CONTROL, grid.heading_rect(0).center())
    assert grid.selected() == tuple(range(1, 47))


def test_a_rubber_band_selects_what_it_touches(qtbot, grid):
    start = grid.cell_rect(PhotoId(23)).topRight() + QPoint(30, 10)
    end = grid.cell_rect(PhotoId(15)).center()
    view = grid.viewport()
    qtbot.mousePress(view, LEFT, NONE, start)
    qtbot.mouseMove(view, (start + end) / 2)
    qtbot.mouseMove(view, end)
    qtbot.mouseRelease(view, LEFT, NONE, end)
    assert grid.selected() == (15, 16, 17, 22, 23)


def test_a_click_on_the_ground_lets_go(qtbot, grid):
    click(qtbot, grid, 5)
    ground = grid.cell_rect(PhotoId(23)).topRight() + QPoint(200, 40)
    qtbot.mouseClick(grid.viewport(), LEFT, NONE, ground)
    assert grid.selected() == ()


def test_a_click_on_one_of_several_selects_it_alone_when_let_go(qtbot, grid):
    click(qtbot, grid, 3)
    click(qtbot, grid, 6, SHIFT)
    spot = grid.cell_rect(PhotoId(5)).center()
    qtbot.mousePress(grid.viewport(), LEFT, NONE, spot)
    assert grid.selected() == (3, 4, 5, 6)
    qtbot.mouseRelease(grid.viewport(), LEFT, NONE, spot)
    assert grid.selected() == (5,)


def test_the_arrows_walk_and_shift_takes_along(qtbot, grid):
    click(qtbot, grid, 2)
    columns = grid.grid_layout.columns
    qtbot.keyClick(grid, Qt.Key.Key_Right)
    assert grid.selected() == (3,)
    qtbot.keyClick(grid, Qt.Key.Key_Down)
    assert grid.selected() == (3 + columns,)
    qtbot.keyClick(grid, Qt.Key.Key_Up)
    qtbot.keyClick(grid, Qt.Key.Key_Right, SHIFT)
    qtbot.keyClick(grid, Qt.Key.Key_Right, SHIFT)
    assert grid.selected() == (3, 4, 5)


def test_down_goes_on_into_the_next_sitting(qtbot, grid):
    click(qtbot, grid, 23)
    column = grid.cell_rect(PhotoId(23)).left()
    qtbot.keyClick(grid, Qt.Key.Key_Down)
    (photo,) = grid.selected()
    assert 24 <= photo < 24 + grid.grid_layout.columns
    assert grid.cell_rect(photo).left() == column


def test_end_and_home_go_to_the_ends_and_show_them(qtbot, grid):
    click(qtbot, grid, 2)
    qtbot.keyClick(grid, Qt.Key.Key_End)
    assert grid.selected() == (60,)
    assert grid.viewport().rect().contains(grid.cell_rect(PhotoId(60)))
    qtbot.keyClick(grid, Qt.Key.Key_Home)
    assert grid.selected() == (1,)
    assert grid.viewport().rect().contains(grid.cell_rect(PhotoId(1)))


def test_pages_and_sittings_are_stepped_over(qtbot, grid):
    click(qtbot, grid, 2)
    qtbot.keyClick(grid, Qt.Key.Key_PageDown)
    assert grid.selected()[0] >= 2 + 3 * grid.grid_layout.columns
    qtbot.keyClick(grid, Qt.Key.Key_Home)
    qtbot.keyClick(grid, Qt.Key.Key_PageDown, CONTROL)
    assert grid.selection.current == 24
    qtbot.keyClick(grid, Qt.Key.Key_PageUp, CONTROL)
    assert grid.selection.current == 1


def test_control_walks_without_selecting_and_space_picks(qtbot, grid):
    click(qtbot, grid, 2)
    qtbot.keyClick(grid, Qt.Key.Key_Right, CONTROL)
    qtbot.keyClick(grid, Qt.Key.Key_Right, CONTROL)
    assert grid.selected() == (2,)
    qtbot.keyClick(grid, Qt.Key.Key_Space)
    assert grid.selected() == (2, 4)
    qtbot.keyClick(grid, Qt.Key.Key_Space)
    assert grid.selected() == (2,)


def test_all_one_sitting_and_none_by_key(qtbot, grid):
    qtbot.keyClick(grid, Qt.Key.Key_A, CONTROL)
    assert len(grid.selected()) == 60
    qtbot.keyClick(grid, Qt.Key.Key_Escape)
    assert grid.selected() == ()
    qtbot.keyClick(grid, Qt.Key.Key_End)
    qtbot.keyClick(grid, Qt.Key.Key_S)
    assert grid.selected() == tuple(range(47, 61))


def test_enter_and_double_click_open(qtbot, grid):
    click(qtbot, grid, 7)
    with qtbot.waitSignal(grid.opened) as told:
        qtbot.keyClick(grid, Qt.Key.Key_Return)
    assert told.args == [7]
    with qtbot.waitSignal(grid.opened) as told:
        qtbot.mouseDClick(grid.viewport(), LEFT, NONE, grid.cell_rect(PhotoId(8)).center())
    assert told.args == [8]


def test_pulling_the_selection_carries_every_selected_photo(qtbot, grid, monkeypatch):
    carried = []
    mouse = grid._mouse
    monkeypatch.setattr(mouse, "carry", lambda: carried.append(mouse.make_drag()))
    click(qtbot, grid, 3)
    click(qtbot, grid, 6, SHIFT)
    start = grid.cell_rect(PhotoId(4)).center()
    qtbot.mousePress(grid.viewport(), LEFT, NONE, start)
    qtbot.mouseMove(grid.viewport(), start + QPoint(30, 0))
    (drag,) = carried
    assert photos_from_mime(drag.mimeData()) == (3, 4, 5, 6)
    assert not drag.pixmap().isNull()
    qtbot.mouseRelease(grid.viewport(), LEFT, NONE, start)
    assert grid.selected() == (3, 4, 5, 6)


def test_a_sitting_is_carried_by_its_heading(qtbot, grid, monkeypatch):
    carried = []
    mouse = grid._mouse
    monkeypatch.setattr(mouse, "carry", lambda: carried.append(mouse.make_drag()))
    start = grid.heading_rect(0).center()
    qtbot.mousePress(grid.viewport(), LEFT, NONE, start)
    qtbot.mouseMove(grid.viewport(), start + QPoint(40, 0))
    assert photos_from_mime(carried[0].mimeData()) == tuple(range(1, 24))


def test_control_and_the_wheel_change_the_size_and_keep_the_place(qtbot, grid):
    grid.scroll_to_group(1)
    first = grid.visible_photos()[0]
    turn = QWheelEvent(
        QPointF(50, 50),
        QPointF(50, 50),
        QPoint(),
        QPoint(0, -120),
        Qt.MouseButton.NoButton,
        CONTROL,
        Qt.ScrollPhase.NoScrollPhase,
        False,
    )
    with qtbot.waitSignal(grid.edge_changed) as told:
        QApplication.sendEvent(grid.viewport(), turn)
    assert told.args == [128]
    assert first in grid.visible_photos()
    qtbot.keyClick(grid, Qt.Key.Key_Plus, CONTROL)
    assert grid.edge == 160


def test_new_sittings_keep_the_selection_that_is_still_there(qtbot, grid):
    grid.select([PhotoId(3), PhotoId(50)])
    with qtbot.waitSignal(grid.selection_changed) as told:
        grid.set_groups(fake_groups(40))
    assert told.args == [(3,)]


def test_the_tool_tip_says_what_the_marks_mean(qtbot, grid):
    words = grid.tip_at(grid.cell_rect(PhotoId(5)).center())
    assert "IMG_0005.jpg" in words
    assert "damaged: the last rows are missing" in words
    assert "date from the camera" in words
    assert "not placed" in words
    assert "raw" in grid.tip_at(grid.cell_rect(PhotoId(13)).center())


def test_a_screen_reader_is_told_where_the_keyboard_is(qtbot, grid):
    click(qtbot, grid, 2)
    qtbot.keyClick(grid, Qt.Key.Key_Right)
    spoken = grid.accessibleDescription()
    assert "IMG_0003.jpg" in spoken
    assert "photo 3 of 60" in spoken
    assert "1 selected" in spoken


@pytest.mark.parametrize("choice", ["light", "dark"])
def test_selected_cells_have_a_tick_in_the_themes_colour(qtbot, grid, choice):
    colours = theme.LIGHT if choice == "light" else theme.DARK
    grid.setPalette(theme.palette(colours))
    click(qtbot, grid, 2)
    shot = grid.viewport().grab().toImage()
    rect = grid.cell_rect(PhotoId(2))
    tick = shot.pixelColor(rect.topLeft() + QPoint(10, 10))
    assert tick == QColor(colours.accent)
    other = shot.pixelColor(grid.cell_rect(PhotoId(3)).topLeft() + QPoint(10, 10))
    assert other != QColor(colours.accent)


def test_only_what_shows_is_painted_and_read(qtbot, runner):
    read = []

    def load(ids):
        read.extend(ids)
        return fake_load(ids)

    grid = PhotoGrid(ThumbCache(load, runner))
    qtbot.addWidget(grid)
    grid.resize(1240, 800)
    grid.set_groups(fake_groups(20_000))
    grid.show()
    qtbot.waitUntil(lambda: len(read) >= len(grid.visible_photos()))
    qtbot.waitUntil(lambda: not grid.cache._coming)
    assert len(read) < 200
    grid.verticalScrollBar().setValue(grid.verticalScrollBar().maximum())
    qtbot.waitUntil(lambda: grid.cache.card(PhotoId(20_000)) is not None)
    assert 10_000 not in read


def test_an_empty_grid_takes_keys_and_clicks_in_peace(qtbot, runner):
    grid = PhotoGrid(ThumbCache(fake_load, runner))
    qtbot.addWidget(grid)
    grid.show()
    qtbot.keyClick(grid, Qt.Key.Key_Down)
    qtbot.keyClick(grid, Qt.Key.Key_A, CONTROL)
    qtbot.mouseClick(grid.viewport(), LEFT, NONE, QPoint(40, 40))
    grid.changeEvent(QEvent(QEvent.Type.PaletteChange))
    assert grid.selected() == ()
    assert grid.current_words() == "0 photos, none selected"
