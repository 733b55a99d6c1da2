"""Laying an after photo over a before, in the dialog and on the area's page."""

import pytest
from PySide6.QtCore import QPointF, Qt
from PySide6.QtWidgets import QFileDialog, QPushButton

from journal.actions import areas, history, pairs
from journal.actions.journals import new_journal
from journal.desktop.dialogs.pair import PairDialog
from journal.desktop.dialogs.pair_finder import PairFinderDialog
from journal.desktop.inspector.photo_areas import PhotoAreas
from journal.desktop.widgets.area_pairs import AreaPairs
from journal.desktop.widgets.overlay_view import Look
from journal.domain.car import Car
from journal.domain.pairs import SIDE_BY_SIDE, How
from tests.actions.paired import paired
from tests.desktop.desks import desk_over, opened_dialog

LEFT = Qt.MouseButton.LeftButton


@pytest.fixture
def session(tmp_path):
    with new_journal(tmp_path / "rook", Car("Halden Rook")) as made:
        yield made


@pytest.fixture
def known(session, tmp_path):
    return paired(session, tmp_path / "card")


@pytest.fixture
def desk(qapp, session):
    with desk_over(session) as made:
        yield made


def dialog_of(qtbot, desk, session, known, after=None) -> PairDialog:
    made = PairDialog(desk, areas.area(session, known[0]), after=after)
    qtbot.addWidget(made)
    made.show()
    return made


def test_a_fit_is_found_shown_and_kept_only_when_the_owner_says_so(qtbot, desk, session, known):
    area, first, last, _ = known
    dialog = dialog_of(qtbot, desk, session, known, after=last)
    assert "spots agree" in dialog.verdict.text()
    assert "Does it lie right?" in dialog.verdict.text()
    assert dialog.view.look is Look.DIVIDED
    assert pairs.pairs(session) == ()
    dialog.caption.setText("The sill")
    qtbot.mouseClick(dialog.keep, LEFT)
    (kept,) = pairs.area_pairs(session, area)
    assert (kept.before_id, kept.after_id, kept.caption) == (first, last, "The sill")
    assert dialog.verdict.text().startswith("Kept")
    assert not dialog.keep.isEnabled()
    assert dialog.apart.isVisible()
    desk.act(history.undo)
    assert "Does it lie right?" in dialog.verdict.text()
    assert dialog.keep.isEnabled()
    dialog.close()


def test_what_cannot_be_laid_is_said_and_laid_by_hand(qtbot, desk, session, known):
    area, _, _, other = known
    dialog = dialog_of(qtbot, desk, session, known, after=other)
    assert dialog.verdict.text().startswith("Could not find how one lies on the other.")
    assert dialog.view.look is Look.SIDE_BY_SIDE
    assert not dialog.keep.isEnabled()
    qtbot.mouseClick(dialog.by_hand, LEFT)
    assert "0 of 6 spots" in dialog.verdict.text()
    spots = [(0.2, 0.2), (0.8, 0.2), (0.8, 0.8), (0.2, 0.8)]
    for x, y in spots:
        for view in dialog.points.views:
            view.placed.emit(QPointF(x, y))
    assert "4 spots, error 0.0 pixels: with four it is always nothing" in dialog.verdict.text()
    for at in (QPointF(0.5, 0.3), QPointF(0.52, 0.3)):
        dialog.points.views[at.x() > 0.5].placed.emit(at)
    assert "5 spots, error" in dialog.verdict.text()
    assert "always nothing" not in dialog.verdict.text()
    qtbot.mouseClick(dialog.by_hand, LEFT)
    assert "Laid by hand" in dialog.verdict.text()
    qtbot.mouseClick(dialog.keep, LEFT)
    (kept,) = pairs.area_pairs(session, area)
    assert (kept.fit.how, len(kept.fit.points)) == (How.BY_HAND, 5)
    assert kept.fit.error_px > 0
    qtbot.mouseClick(dialog.flat, LEFT)
    assert pairs.area_pairs(session, area)[0].fit == SIDE_BY_SIDE
    qtbot.mouseClick(dialog.apart, LEFT)
    assert pairs.pairs(session) == ()
    dialog.close()


def test_likely_photos_are_found_and_shown_and_nothing_is_kept(qtbot, desk, session, known):
    _, first, last, other = known
    dialog = dialog_of(qtbot, desk, session, known, after=other)
    qtbot.mouseClick(dialog.choice.look, LEFT)
    both = dialog.choice.both()
    assert [photo.id for photo in both] == [first, last]
    assert "spots agree" in dialog.verdict.text()
    assert pairs.pairs(session) == ()
    dialog.close()


def test_one_photo_makes_no_pair(qtbot, desk, session, known):
    area, _, last, other = known
    areas.unchoose_photos(session, area, [last, other])
    dialog = dialog_of(qtbot, desk, session, known)
    assert "needs two photos" in dialog.verdict.text()
    assert not any(act.isEnabled() for act in (dialog.keep, dialog.flat, dialog.by_hand))
    dialog.close()


def test_a_pair_is_saved_as_a_picture(qtbot, desk, session, known, tmp_path, monkeypatch):
    area, first, last, _ = known
    pairs.keep_pair(session, area, first, last)
    dialog = dialog_of(qtbot, desk, session, known, after=last)
    target = tmp_path / "given away.jpg"
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_a, **_k: (str(target), ""))
    qtbot.mouseClick(dialog.save, LEFT)
    assert target.is_file()
    assert dialog.verdict.text().startswith("Saved: given away.jpg")
    dialog.close()


def test_the_areas_page_shows_its_pairs_in_order(qtbot, desk, session, known):
    area, first, last, other = known
    part = AreaPairs(desk)
    qtbot.addWidget(part)
    part.resize(700, 600)
    part.show()
    desk.changed.connect(lambda _changes: part.show_area(areas.area(session, area)))
    part.show_area(areas.area(session, area))
    assert part.none.isVisible()
    desk.act(pairs.keep_pair, area, first, last, caption="Cut and let in")
    desk.act(pairs.keep_pair, area, first, other)
    assert part.view.isVisible()
    assert part.view.look is Look.SIDE_BY_SIDE
    assert "Cut and let in" in part.words.text()
    qtbot.mouseClick(part.down, LEFT)
    assert [pair.after_id for pair in pairs.area_pairs(session, area)] == [other, last]
    qtbot.mouseClick(part.open, LEFT)
    dialog = opened_dialog(PairDialog)
    assert dialog.caption.text() == "Cut and let in"
    dialog.close()
    qtbot.mouseClick(part.apart, LEFT)
    assert len(pairs.pairs(session)) == 1
    part.hide()


def test_two_photos_selected_are_laid_from_the_inspector(qtbot, desk, session, known):
    area, first, last, other = known
    part = PhotoAreas(desk)
    qtbot.addWidget(part)
    part.show()
    part.show_photos((first, last), ())
    (act,) = [b for b in part.findChildren(QPushButton) if b.text() == "&Lay over each other"]
    qtbot.mouseClick(act, LEFT)
    dialog = opened_dialog(PairDialog)
    qtbot.mouseClick(dialog.keep, LEFT)
    assert len(pairs.area_pairs(session, area)) == 1
    dialog.close()
    for photo, seen in ((first, True), (other, False)):
        part.show_photos((photo,), ())
        row = part._rows.itemAt(0).widget()
        words = [b.text() for b in row.findChildren(QPushButton)]
        assert ("Before and a&fter" in words) is seen
    part.hide()


def test_likely_pairs_of_every_area_are_listed_and_opened(qtbot, desk, session, known):
    area, first, last, _ = known
    finder = PairFinderDialog(desk)
    qtbot.addWidget(finder)
    finder.show()
    qtbot.waitUntil(lambda: finder.said.text().startswith("Every repair area was looked at."))
    assert finder.list.count() == 1
    assert "spots agree" in finder.list.item(0).text()
    assert pairs.pairs(session) == ()
    finder.list.setCurrentRow(0)
    qtbot.mouseClick(finder.look, LEFT)
    dialog = opened_dialog(PairDialog)
    assert "Does it lie right?" in dialog.verdict.text()
    qtbot.mouseClick(dialog.keep, LEFT)
    (kept,) = pairs.area_pairs(session, area)
    assert (kept.before_id, kept.after_id) == (first, last)
    dialog.close()
    finder.close()
    again = PairFinderDialog(desk)
    qtbot.addWidget(again)
    assert "No pair" in again.said.text()
