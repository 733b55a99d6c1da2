"""Bursts on the timeline: one tile each, opened by key and click, acts on all of them."""

import cv2
import pytest
from PySide6.QtCore import QPoint, QRect, QSize, Qt

from journal.actions import photos as photo_actions
from journal.actions.add_photos import add_photos
from journal.actions.journals import new_journal
from journal.desktop.desk import PhotosSelected
from journal.desktop.pages.timeline import TimelinePage
from journal.desktop.widgets.grid_paint import STRIP, fold_chip
from journal.domain.car import Car
from tests.actions.paired import blots, write
from tests.desktop.desks import desk_over, put_away

LEFT = Qt.MouseButton.LeftButton


@pytest.fixture
def session(tmp_path):
    with new_journal(tmp_path / "rook", Car("Halden Rook")) as made:
        yield made


@pytest.fixture
def card(session, tmp_path):
    """A photo, then three of one view within seconds of which the last is sharp."""
    view = blots(1)
    shots = [blots(9), *(cv2.GaussianBlur(view, (0, 0), s) for s in (3, 2)), view]
    paths = [
        write(tmp_path / f"IMG_{n}.jpg", shot, f"2018:04:14 10:00:{3 * n:02}")
        for n, shot in enumerate(shots)
    ]
    added = {row.path: row.photo_id for row in add_photos(session, paths).added}
    return [added[path] for path in paths]


@pytest.fixture
def page(qtbot, session, card):
    with desk_over(session) as desk:
        made = TimelinePage(desk)
        qtbot.addWidget(made)
        desk.changed.connect(made.refresh)
        made.resize(900, 600)
        made.refresh(None)
        made.show()
        yield made
        put_away(made)


def chip(page, photo) -> QPoint:
    rect = page.grid.cell_rect(photo)
    return fold_chip(QRect(rect.topLeft(), QSize(rect.width(), rect.height() - STRIP))).center()


def test_a_burst_is_one_tile_with_a_count_and_opens_by_click_and_key(qtbot, page, card):
    alone, first, _, sharp = card
    assert page.grid.selection.order == (alone, first)
    assert page.grid.folds.count(first) == 3
    assert page.grid.all_photos() == tuple(card)
    assert "1 burst folded" in page.bar._folds.text()
    qtbot.mouseClick(page.grid.viewport(), LEFT, pos=chip(page, first))
    assert page.grid.selection.order == tuple(card)
    assert page.grid.folds.best == {sharp}
    page.grid.select([sharp])
    assert "the sharpest of its burst" in page.grid.current_words()
    qtbot.keyClick(page.grid, Qt.Key.Key_F)
    assert page.grid.selection.order == (alone, sharp), "the sharpest stands for them now"
    qtbot.waitUntil(lambda: page.grid.cache.card(sharp) is not None)
    assert "stands for 3 photos" in page.grid.tip_at(page.grid.cell_rect(sharp).center())


def test_what_is_done_to_a_tile_is_done_to_all_it_stands_for(page, session, card):
    page.grid.select([card[1]])
    assert page.grid.selected() == tuple(card[1:])
    assert page.desk.selection == PhotosSelected(tuple(card[1:]))
    page.acts.remove()
    assert session.journal.photos.count() == 1
    page.desk.act(photo_actions.bring_back_photos, card[1:])
    assert session.journal.photos.count() == 4


def test_one_photo_of_a_burst_selected_elsewhere_opens_it(page, card):
    page.show_selection(PhotosSelected((card[2],)))
    assert page.grid.selected() == (card[2],)
    assert page.grid.selection.order == tuple(card)


def test_all_bursts_can_lie_open(page, card):
    page.bar._folds.click()
    assert page.grid.selection.order == tuple(card)
    assert "1 burst open" in page.bar._folds.text()
    page.bar._folds.click()
    assert len(page.grid.selection.order) == 2
