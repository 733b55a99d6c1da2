"""Placing photos by key: proposals beside the drawing, one by one or by sitting, never unasked."""

import io
from datetime import datetime, timedelta

import pytest
from PIL import Image
from PySide6.QtCore import Qt
from skimage import data

from journal.actions import pins as pin_actions
from journal.actions.journals import new_journal, open_journal
from journal.actions.settings import Settings
from journal.desktop.desk import Desk, PhotosSelected
from journal.desktop.pages.drawing import DrawingPage
from journal.desktop.tasks import TaskRunner
from journal.domain.car import Car
from journal.domain.when import When
from tests.desktop.garage import new_photo, panel_id

START = datetime(2016, 3, 5, 9, 30)
SCENES = (data.coffee, data.rocket, data.chelsea)
PANELS = ("Sill, left", "Roof", "Front wing, left")
KEY = Qt.Key


def thumb(scene):
    image = Image.fromarray(scene())
    image.thumbnail((256, 256))
    content = io.BytesIO()
    image.save(content, "JPEG")
    return content.getvalue()


def add(session, scenes, start):
    first = session.journal.photos.count() + 1
    new = [
        new_photo(first + n, When.at(start + timedelta(minutes=3 * n))) for n in range(len(scenes))
    ]
    with session.journal.edit("Add photos"):
        ids = session.journal.photos.add(new)
    for photo, scene in zip(new, scenes, strict=True):
        session.journal.previews.put(photo.sha256, thumb(scene), rough=False)
    return ids


@pytest.fixture
def session(tmp_path):
    """One sitting pinned, scene by scene to its panel; two more sittings to place."""
    with new_journal(tmp_path / "Halden Rook", Car(title="Halden Rook")) as made:
        for photo, label in zip(add(made, SCENES, START), PANELS, strict=True):
            pin_actions.pin(made, [photo], panel_id(made, label))
        add(made, (SCENES[2], SCENES[0]), START + timedelta(days=7))
        add(made, (SCENES[1], SCENES[2], SCENES[0]), START + timedelta(days=14))
        yield made


@pytest.fixture
def runner(qapp):
    made = TaskRunner()
    yield made
    made.close()


def shown(qtbot, runner, session):
    desk = Desk(session, runner, Settings())
    made = DrawingPage(desk)
    qtbot.addWidget(made)
    desk.changed.connect(made.refresh)
    desk.selected.connect(made.show_selection)
    made.resize(1200, 800)
    made.show()
    made.refresh(None)
    settled(qtbot, made)
    return made


def settled(qtbot, page):
    qtbot.waitUntil(lambda: page.is_read and page.pinning.proposing.is_read)


@pytest.fixture
def page(qtbot, runner, session):
    return shown(qtbot, runner, session)


def take(qtbot, page, row):
    page.tray.list.setCurrentIndex(page.tray.model.index(row))
    page.tray.list.setFocus()
    settled(qtbot, page)


def press(qtbot, page, key, widget=None):
    qtbot.keyClick(widget or page.tray.list, key)
    settled(qtbot, page)


def panels_of(page):
    labels = {panel.id: panel.label for panel in page._drawing.panels}
    return {pin.photo_id: labels[pin.panel_id] for pin in pin_actions.pins(page.desk.session)}


def listed(page):
    return [row.text() for row in page.side.proposals.rows if row.isVisible()]


def test_a_photo_in_hand_shows_its_panels_with_the_reason_and_the_look_alike(qtbot, page):
    take(qtbot, page, 1)
    page.tray.grid.select((4,))
    settled(qtbot, page)
    first = page.side.proposals.rows[0]
    assert listed(page)[0] == "Front wing, left"
    assert first.reason == "7 days after a photo there; looks much like it"
    assert first._image is not None
    assert first.accessibleName() == "1: Front wing, left"
    assert first.accessibleDescription() == first.reason


def test_the_proposed_panels_are_ringed_on_a_view_that_has_the_likeliest(qtbot, page):
    take(qtbot, page, 1)
    rings = page.pinning.proposing.rings
    assert rings.panels == tuple(p.panel_id for p in page.side.proposals.proposals)
    at = rings.spots()[1]
    assert page.canvas.panel_at(at.toPoint()) == rings.panels[0]
    with_rings = page.canvas.viewport().grab().toImage()
    rings.show_panels(())
    assert page.canvas.viewport().grab().toImage() != with_rings


def test_nothing_is_pinned_until_a_key_is_pressed(qtbot, page):
    take(qtbot, page, 1)
    assert len(panels_of(page)) == 3
    press(qtbot, page, KEY.Key_2)
    assert len(panels_of(page)) == 5


def test_one_by_one_each_photo_goes_where_it_belongs_without_the_mouse(qtbot, page):
    take(qtbot, page, 0)
    press(qtbot, page, KEY.Key_O)
    for _ in range(5):
        press(qtbot, page, KEY.Key_1)
    assert panels_of(page) == {
        1: PANELS[0], 2: PANELS[1], 3: PANELS[2],
        4: PANELS[2], 5: PANELS[0],
        6: PANELS[1], 7: PANELS[2], 8: PANELS[0],
    }  # fmt: skip
    assert page.tray.model.rowCount() == 0
    assert page.side.proposals.isHidden()
    assert page.pinning.proposing.rings.panels == ()


def test_one_by_one_the_photo_in_hand_is_shown_in_full(qtbot, page):
    take(qtbot, page, 0)
    press(qtbot, page, KEY.Key_O)
    press(qtbot, page, KEY.Key_1)
    assert page.tray.in_hand() == (7,)
    assert page.desk.selection == PhotosSelected((7,))


def test_enter_in_the_tray_takes_the_first_proposal(qtbot, page):
    take(qtbot, page, 1)
    page.tray.grid.select((5,))
    settled(qtbot, page)
    press(qtbot, page, KEY.Key_Return)
    assert panels_of(page)[5] == PANELS[0]


def test_a_row_is_chosen_by_click_and_by_enter(qtbot, page):
    take(qtbot, page, 1)
    page.tray.grid.select((5,))
    settled(qtbot, page)
    first, second = page.side.proposals.rows[:2]
    wanted = second.text()
    second.setFocus()
    press(qtbot, page, KEY.Key_Return, second)
    assert panels_of(page)[5] == wanted
    qtbot.mouseClick(first, Qt.MouseButton.LeftButton)
    settled(qtbot, page)
    assert panels_of(page)[4] == PANELS[2]


def test_skipping_leaves_photos_for_later_and_comes_round_again(qtbot, page):
    take(qtbot, page, 0)
    assert page.tray.in_hand() == (6, 7, 8)
    press(qtbot, page, KEY.Key_N)
    assert page.tray.in_hand() == (4, 5)
    press(qtbot, page, KEY.Key_N)
    assert page.tray.in_hand() == (6, 7, 8)
    press(qtbot, page, KEY.Key_O)
    press(qtbot, page, KEY.Key_N)
    press(qtbot, page, KEY.Key_N)
    assert page.tray.in_hand() == (8,)
    press(qtbot, page, KEY.Key_N)
    assert page.tray.in_hand() == (4,)
    assert len(panels_of(page)) == 3


def test_after_a_skipped_photo_comes_the_one_behind_it_not_the_skipped_one(qtbot, page):
    take(qtbot, page, 0)
    press(qtbot, page, KEY.Key_O)
    press(qtbot, page, KEY.Key_N)
    press(qtbot, page, KEY.Key_1)
    assert page.tray.in_hand() == (8,)


def test_one_key_repeats_the_last_pin(qtbot, page):
    take(qtbot, page, 0)
    press(qtbot, page, KEY.Key_O)
    press(qtbot, page, KEY.Key_1)
    press(qtbot, page, KEY.Key_P)
    assert panels_of(page)[7] == panels_of(page)[6] == PANELS[1]


def test_a_key_pressed_before_the_proposals_are_there_pins_nothing(qtbot, page):
    take(qtbot, page, 1)
    page.tray.list.setCurrentIndex(page.tray.model.index(0))
    qtbot.keyClick(page.tray.list, KEY.Key_1)
    settled(qtbot, page)
    assert len(panels_of(page)) == 3


def test_a_whole_sitting_is_proposed_what_fits_most_of_it(qtbot, page):
    take(qtbot, page, 0)
    assert page.side.proposals.rows[0].reason.startswith("for 1 of 3: ")


def test_photos_that_have_a_place_are_proposed_none(qtbot, page):
    page.desk.select(PhotosSelected((1, 2)))
    settled(qtbot, page)
    assert page.tray.in_hand() == (1, 2)
    assert listed(page) == []


def test_with_nothing_pinned_the_list_says_what_it_needs(qtbot, runner, session):
    pin_actions.unpin(session, [1, 2, 3])
    page = shown(qtbot, runner, session)
    take(qtbot, page, 0)
    assert listed(page) == []
    assert page.side.proposals.title.isVisible()
    assert "few photos are pinned" in page.side.proposals.title.text()


def test_in_a_journal_open_for_reading_proposals_show_but_pin_nothing(qtbot, runner, session):
    with open_journal(session.folder, read_only=True) as reader:
        page = shown(qtbot, runner, reader)
        take(qtbot, page, 1)
        assert listed(page)
        press(qtbot, page, KEY.Key_1)
        assert not page.side.proposals.rows[0].isEnabled()
        assert len(panels_of(page)) == 3
        runner.close()


def test_rings_follow_the_drawing_when_it_is_drawn_larger(qtbot, page):
    take(qtbot, page, 1)
    before = page.pinning.proposing.rings.spots()[1]
    qtbot.keyClick(page.canvas, KEY.Key_Plus)
    after = page.pinning.proposing.rings.spots()[1]
    assert (after - before).manhattanLength() > 1
    assert page.canvas.panel_at(after.toPoint()) == page.pinning.proposing.rings.panels[0]
