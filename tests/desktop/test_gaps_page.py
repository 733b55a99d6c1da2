"""The gaps: grouped, weightiest first, each a press away from being filled."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QStyleOptionViewItem

from journal.actions import areas, history
from journal.actions.gaps import gaps
from journal.desktop.desk import (
    AreaSelected,
    PanelSelected,
    PhotosSelected,
    ReceiptSelected,
)
from journal.desktop.dialogs.area import AreaDialog
from journal.desktop.dialogs.car import CarDialog
from journal.desktop.dialogs.choose_photos import ChoosePhotosDialog
from journal.desktop.dialogs.hours import HoursDialog
from journal.desktop.dialogs.milestones import MilestonesDialog
from journal.desktop.dialogs.receipt import ReceiptDialog
from journal.desktop.dialogs.stage import StageDialog
from journal.desktop.dialogs.standard_views import StandardViewsDialog
from journal.desktop.pages.gap_list import ACT_WORDS, GapListModel
from journal.desktop.pages.gaps import GapsPage
from journal.domain.gaps import Gap, GapKind, Reader
from journal.domain.when import parse
from tests.desktop import workshop
from tests.desktop.desks import Told, desk_over, opened_dialog
from tests.desktop.garage import add_sittings


@pytest.fixture
def session(tmp_path):
    with workshop.furnished(tmp_path) as made:
        add_sittings(made, 3, undated=2)
        yield made


@pytest.fixture
def desk(qapp, session):
    with desk_over(session) as made:
        yield made


@pytest.fixture
def page(qtbot, desk):
    made = GapsPage(desk)
    qtbot.addWidget(made)
    desk.changed.connect(made.refresh)
    made.resize(900, 700)
    made.refresh(None)
    made.show()
    qtbot.waitUntil(lambda: bool(rows(made)))
    yield made
    made.hide()


def rows(page):
    model = page.list.gaps_model
    return [model.row_at(n) for n in range(model.rowCount())]


def press_kind(qtbot, page, kind):
    place = next(n for n, r in enumerate(rows(page)) if isinstance(r, Gap) and r.kind is kind)
    page.list.setCurrentIndex(page.list.model().index(place, 0))
    qtbot.keyClick(page.list, Qt.Key.Key_Return)


def test_the_list_keeps_qts_rules(qtmodeltester, session):
    model = GapListModel()
    model.set_gaps(gaps(session))
    qtmodeltester.check(model)


def test_every_gap_stands_under_its_heading_and_the_weightiest_come_first(page, session):
    found = [row for row in rows(page) if isinstance(row, Gap)]
    assert sorted(found, key=str) == sorted(gaps(session), key=str)
    assert found[0].weight == max(gap.weight for gap in found)
    assert rows(page)[0] == "Repair areas with no photo from after  (1)"
    assert page.count.text() == f"{len(found)} gaps"


def test_every_kind_of_gap_has_an_act():
    assert set(ACT_WORDS) == set(GapKind)


def test_the_keyboard_passes_over_headings(qtbot, page):
    page.list.setFocus()
    for _ in range(6):
        qtbot.keyClick(page.list, Qt.Key.Key_Down)
        assert isinstance(rows(page)[page.list.currentIndex().row()], Gap)


@pytest.mark.parametrize(
    ("kind", "dialog"),
    [
        (GapKind.AREA_NO_AFTER, ChoosePhotosDialog),
        (GapKind.AREA_NO_BEFORE, ChoosePhotosDialog),
        (GapKind.AREA_NOT_FINISHED, StageDialog),
        (GapKind.AREA_NOTHING_SAID, AreaDialog),
        (GapKind.AREA_NO_HOURS, HoursDialog),
        (GapKind.RECEIPT_LOST, ReceiptDialog),
        (GapKind.RECEIPT_NO_SCAN, ReceiptDialog),
        (GapKind.NO_ACQUIRED, MilestonesDialog),
        (GapKind.CAR_IDENTITY, CarDialog),
    ],
)
def test_enter_opens_what_fills_the_gap(qtbot, page, kind, dialog):
    press_kind(qtbot, page, kind)
    opened_dialog(dialog).reject()


def test_a_gap_once_filled_is_gone_and_comes_back_with_undo(qtbot, page, desk, session):
    known = next(a for a in areas.areas(session) if a.name == "Front wing, lower edge")
    before = len(gaps(session))
    press_kind(qtbot, page, GapKind.AREA_NOTHING_SAID)
    dialog = opened_dialog(AreaDialog)
    dialog.what_done.setPlainText("New edge let in")
    dialog.accept_button.click()
    qtbot.waitUntil(lambda: page.count.text() == f"{before - 1} gaps")
    desk.act(history.undo)
    qtbot.waitUntil(lambda: page.count.text() == f"{before} gaps")
    assert known is not None


def test_photos_are_shown_on_the_timeline(qtbot, page, desk):
    told = Told(desk)
    press_kind(qtbot, page, GapKind.PHOTOS_UNDATED)
    assert told.pages == ["Timeline"]
    assert isinstance(desk.selection, PhotosSelected)
    assert len(desk.selection.ids) == 2


def test_a_panel_in_no_photo_is_shown_on_the_drawing(qtbot, page, desk):
    told = Told(desk)
    press_kind(qtbot, page, GapKind.PANELS_NO_PHOTO)
    assert told.pages == ["Drawing"]
    assert isinstance(desk.selection, PanelSelected)


def test_a_click_selects_what_the_gap_is_about_too(qtbot, page, desk):
    place = next(
        n
        for n, r in enumerate(rows(page))
        if isinstance(r, Gap) and r.kind is GapKind.AREA_NO_AFTER
    )
    spot = page.list.visualRect(page.list.model().index(place, 0)).center()
    qtbot.mouseClick(page.list.viewport(), Qt.MouseButton.LeftButton, pos=spot)
    assert isinstance(desk.selection, AreaSelected)
    opened_dialog(ChoosePhotosDialog).reject()
    press_kind(qtbot, page, GapKind.RECEIPT_LOST)
    assert isinstance(desk.selection, ReceiptSelected)
    opened_dialog(ReceiptDialog).reject()


def test_they_are_sorted_by_what_a_buyer_or_a_valuer_asks_first(qtbot, page, session):
    for reader in (Reader.BUYER, Reader.VALUER, None):
        page.readers[reader].click()
        found = [row for row in rows(page) if isinstance(row, Gap)]
        assert sorted(found, key=str) == sorted(gaps(session, reader), key=str)
        assert found[0] == gaps(session, reader)[0]
        assert page.readers[reader].isChecked()


def test_a_gap_says_which_claim_it_would_make_stronger(page):
    model = page.list.gaps_model
    place, gap = next((n, r) for n, r in enumerate(rows(page)) if isinstance(r, Gap) and r.claim)
    index = model.index(place)
    said = f"Would make stronger: “{gap.claim}”"
    assert said in model.data(index, Qt.ItemDataRole.AccessibleTextRole)
    assert said in model.data(index, Qt.ItemDataRole.ToolTipRole)
    plain = next(n for n, r in enumerate(rows(page)) if isinstance(r, Gap) and not r.claim)
    delegate, option = page.list.itemDelegate(), QStyleOptionViewItem()
    tall = delegate.sizeHint(option, index).height()
    assert tall > delegate.sizeHint(option, model.index(plain)).height()


def test_a_vague_date_opens_that_stage(page, session, desk):
    area = areas.areas(session)[0]
    areas.move_to_stage(session, area.id, "welded", parse("2016"))
    gap = next(g for g in gaps(session) if g.kind is GapKind.STAGE_VAGUE)
    page.fill(gap)
    dialog = opened_dialog(StageDialog)
    assert dialog.windowTitle().startswith("Stage of")
    assert dialog.stage.currentText() == gap.claim_key
    dialog.reject()


def test_standard_views_are_chosen_at_once(page):
    page.fill(Gap(GapKind.NO_STANDARD_VIEWS, "Standard views", "None has its photo.", 40, "car"))
    opened_dialog(StandardViewsDialog).reject()


def test_nothing_missing_is_said_and_leads_on(qtbot, page, desk):
    told = Told(desk)
    page._show(())
    assert page.nothing.isVisible()
    page._to_dossier()
    assert told.pages == ["Dossier"]
