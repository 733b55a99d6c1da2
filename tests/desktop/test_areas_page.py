"""The page of repair areas: list, detail, cautions, and the pane of one."""

from dataclasses import replace
from datetime import date

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel, QPushButton, QToolButton

from journal.actions import areas, drawings, history, hours, receipts, surveys
from journal.actions.journals import open_journal
from journal.desktop.desk import AreaSelected, PanelSelected
from journal.desktop.dialogs.receipt import ReceiptDialog
from journal.desktop.inspector.area import AreaPane
from journal.desktop.pages.areas import AreasPage
from journal.desktop.widgets.area_list import AreaListModel
from journal.domain.findings import Finding, Severity, Survey, Three
from journal.domain.ids import FindingId, SurveyId
from journal.domain.photos import Role
from journal.domain.when import When
from tests.desktop import workshop
from tests.desktop.area_hands import area_named, chosen, drop, names, pick, press
from tests.desktop.desks import Told, desk_over, opened_dialog, put_away
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
    put_away(made)


# --- the list ---


def test_the_list_keeps_qts_rules(qtmodeltester, page):
    model = AreaListModel()
    model.set_rows(page.list.rows_model.rows())
    qtmodeltester.check(model)


def test_areas_are_listed_least_advanced_first_and_sorted_otherwise_on_demand(page):
    assert names(page)[-1] == "Front wing, lower edge"
    page.sort.setCurrentText("By name")
    assert names(page)[0] == "Boot lid lip"
    page.sort.setCurrentText("Most money first")
    assert names(page)[0] == "Sill, left, rear end"


def test_the_list_is_filtered_by_words_and_stage(qtbot, page):
    qtbot.keyClicks(page.filter, "boot pinholes")
    assert names(page) == ["Boot lid lip"]
    assert page.count.text() == "1 of 4 repair areas"
    page.filter.clear()
    page.stage_filter.setCurrentText("Not finished")
    assert "Front wing, lower edge" not in names(page)
    page.stage_filter.setCurrentText("finished")
    assert names(page) == ["Front wing, lower edge"]


def test_a_row_says_all_it_shows_to_a_screen_reader(page):
    words = page.list.rows_model.rows()[-1].words()
    assert "finished, 7 of 7" in words
    assert "8 March 2014 to July 2016" in words


def test_a_click_opens_an_area_in_full(qtbot, page, desk, session):
    pick(qtbot, page, "Sill, left, rear end")
    known = area_named(session, "Sill, left, rear end")
    assert desk.selection == AreaSelected(known.id)
    assert page.detail.name.text() == known.name
    assert page.detail.found.text() == known.found
    assert [row.part for row in page.detail.spent.table.rows_model.rows()] == [
        "€99.93",
        "€24.67",
        "3 h 30 min",
        "2 h 30 min",
    ]
    assert page.detail.spent.total.text() == "6 h   €124.60"
    assert page.detail.spent.expected.isHidden()


def test_an_area_says_what_the_latest_survey_expected_of_it(qtbot, page, desk, session):
    known = area_named(session, "Sill, left, rear end")
    begun = Survey(SurveyId(0), "Before buying", When.on(date(2013, 1, 5)), None, None)
    number = SurveyId(surveys.start_survey(session, begun).made)
    for money, minutes in (((40_00, 90_50, 320_00), (360, 720, 2400)), ((10_00,) * 3, (60,) * 3)):
        figures = Three(*money), Three(*minutes)
        found = Finding(FindingId(0), number, "holes", Severity.PERFORATED, *figures)
        desk.act(surveys.add_finding, replace(found, area_id=known.id))
    pick(qtbot, page, known.name)
    # (40 + 4 x 90.50 + 320) / 6 + 10 and (6 + 4 x 12 + 40) / 6 + 1, by the three-point formula.
    qtbot.waitUntil(lambda: not page.detail.spent.expected.isHidden())
    said = page.detail.spent.expected.text()
    assert said == "“Before buying” expected €130 and 17 h of it."


def test_an_area_selected_elsewhere_is_shown_even_where_a_filter_hides_it(page, desk, session):
    page.filter.setText("boot")
    known = area_named(session, "Sill, left, rear end")
    desk.select(AreaSelected(known.id))
    assert page.detail.area_id == known.id
    assert page.filter.text() == ""


def test_an_empty_journal_invites(qtbot, tmp_path):
    with workshop.empty(tmp_path) as session, desk_over(session) as desk:
        page = AreasPage(desk)
        qtbot.addWidget(page)
        page.refresh(None)
        page.show()
        assert any(b.text() == "&New repair area" for b in visible_buttons(page))


def visible_buttons(page):
    return [b for b in page.findChildren(QPushButton) if b.isVisible()]


# --- the rest of the detail ---


def test_cautions_are_proposed_and_kept(qtbot, page, session):
    pick(qtbot, page, "Sill, left, rear end")
    shown = [w.accessibleName() for w in page.detail.cautions.findChildren(QPushButton)]
    assert "Always show the caution “Load-bearing: have it inspected” with this area" in shown
    keep = next(
        b
        for b in page.detail.cautions.findChildren(QPushButton)
        if "Load-bearing" in b.accessibleName()
    )
    keep.click()
    assert area_named(session, "Sill, left, rear end").cautions == ("load-bearing",)
    kept = next(
        b
        for b in page.detail.cautions.findChildren(QPushButton)
        if b.accessibleName().startswith("Don't always show")
    )
    kept.click()
    assert area_named(session, "Sill, left, rear end").cautions == ()


def test_cautions_are_in_full_while_work_lies_ahead_and_by_title_after(qtbot, page, session):
    pick(qtbot, page, "Sill, left, rear end")
    texts = page.detail.cautions._texts
    assert texts.isVisible()
    known = area_named(session, "Front wing, lower edge")
    areas.change_area(session, replace(known, cautions=("welding", "lead")))
    page.refresh(None)
    pick(qtbot, page, "Front wing, lower edge")
    assert not texts.isVisible()
    assert "Lead in old paint" in page.detail.cautions._titles.text()
    qtbot.mouseClick(page.detail.cautions.read_button, Qt.MouseButton.LeftButton)
    assert texts.isVisible()


def test_a_panel_leads_to_the_drawing(qtbot, page, desk, session):
    told = Told(desk)
    pick(qtbot, page, "Boot lid lip")
    press(page.detail, "Boot lid")
    assert desk.selection == PanelSelected(workshop.panel(session, "Boot lid"))
    assert told.pages == ["Drawing"]


def test_a_line_is_opened_in_its_receipt(qtbot, page):
    pick(qtbot, page, "Sill, left, rear end")
    page.detail.spent.table.selectRow(0)
    qtbot.keyClick(page.detail.spent.table, Qt.Key.Key_Return)
    dialog = opened_dialog(ReceiptDialog)
    assert dialog.head.supplier.text() == "Brandt Panels"
    dialog.reject()


def test_removing_an_area_needs_no_question_since_undo_brings_it_back(qtbot, page, desk, session):
    pick(qtbot, page, "Boot lid lip")
    away = next(
        b for b in page.detail.findChildren(QToolButton) if b.toolTip() == "Remove this repair area"
    )
    away.click()
    assert "Boot lid lip" not in names(page)
    assert page.detail.isHidden() or not page.detail.isVisible()
    desk.act(history.undo)
    assert "Boot lid lip" in names(page)


def test_reading_only_offers_no_change(qtbot, tmp_path):
    with workshop.furnished(tmp_path) as first:
        folder = first.folder
        with open_journal(folder, read_only=True) as session, desk_over(session) as desk:
            page = AreasPage(desk)
            qtbot.addWidget(page)
            page.refresh(None)
            desk.select(AreaSelected(areas.areas(session)[0].id))
            page.show_selection(desk.selection)
            assert not page.detail.move_button.isEnabled()
            assert not page.detail.photos.strips[Role.BEFORE].acceptDrops()


# --- the inspector's pane ---


def test_the_pane_moves_on_takes_photos_and_leads_to_the_page(qtbot, desk, session, photos):
    told = Told(desk)
    pane = AreaPane(desk)
    qtbot.addWidget(pane)
    desk.changed.connect(pane.refresh)
    known = area_named(session, "Sill, left, rear end")
    pane.show_selection(AreaSelected(known.id))
    pane.show()
    assert pane.panels.text() == drawings.area_panels(session, known)[0].label
    assert pane.figures.text() == "€124.60, 6 h"
    assert "Load-bearing" in pane.cautions.text()
    pane.move_button.click()
    assert pane.since.text().startswith("since ")
    assert areas.area(session, known.id).stage == "welded"
    drop(pane.strip, photos[0][:1])
    assert chosen(session, known.id) == [(Role.DURING, photos[0][0])]
    press(pane, "Open in Areas")
    assert told.pages == ["Areas"]


def test_of_many_entries_the_latest_show_and_the_others_when_asked_for(qtbot, desk, session, page):
    area = areas.areas(session)[0]
    for day in range(1, 14):
        areas.add_entry(session, When.on(date(2017, 5, day)), f"Note of day {day}", area.id)
    page.refresh(None)
    desk.select(AreaSelected(area.id))

    def notes():
        said = [
            label.text() for label in page.detail.findChildren(QLabel) if label.isVisibleTo(page)
        ]
        return [int(words.split()[-1]) for words in said if words.startswith("Note of day")]

    assert notes() == list(range(13, 3, -1))
    left = len(areas.area_entries(session, area.id)) - 10
    assert page.detail.more.text() == f"{left} earlier entries"
    qtbot.mouseClick(page.detail.more, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: notes() == list(range(13, 0, -1)))


def test_what_went_into_an_area_is_every_receipt_and_day_with_a_share_for_it(session):
    def shares(receipt):
        return {part.area_id for line in receipt.lines for part in line.shares}

    for area in areas.areas(session):
        bought, worked = areas.area_spent(session, area.id)
        assert bought == tuple(r for r in receipts.receipts(session) if area.id in shares(r))
        assert worked == tuple(
            w for w in hours.work(session) if area.id in {part.area_id for part in w.shares}
        )
    assert any(areas.area_spent(session, area.id)[0] for area in areas.areas(session))
