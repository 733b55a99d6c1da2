"""The ledger: figures, tables that add up, and the receipts each of them is made of."""

from dataclasses import replace
from decimal import Decimal

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QPushButton

from journal.actions import history, hours, receipts
from journal.actions.costs import costs
from journal.desktop.desk import ReceiptSelected
from journal.desktop.dialogs.hours import HoursDialog
from journal.desktop.dialogs.receipt import ReceiptDialog
from journal.desktop.inspector.receipt import ReceiptPane, paper_words, rate_words, total_words
from journal.desktop.pages.ledger import LedgerPage
from journal.domain.costs import COSTS_BY
from journal.domain.receipts import Paper
from tests.desktop import workshop
from tests.desktop.desks import desk_over, opened_dialog


@pytest.fixture
def session(tmp_path):
    with workshop.furnished(tmp_path) as made:
        yield made


@pytest.fixture
def desk(qapp, session):
    with desk_over(session) as made:
        yield made


@pytest.fixture
def page(qtbot, desk):
    made = LedgerPage(desk)
    qtbot.addWidget(made)
    desk.changed.connect(made.refresh)
    desk.selected.connect(made.show_selection)
    made.resize(1000, 700)
    made.refresh(None)
    made.show()
    yield made
    made.hide()


def suppliers(page):
    return [r.supplier for r in page.tab("Receipts").table.rows_model.rows()]


def front(page):
    return page.tabs.tabText(page.tabs.currentIndex())


def laid_out(page, by):
    page.show_tab("Costs")
    page.tab("Costs").lay_out_by(by)
    return page.tab("Costs").view


def click(qtbot, figure):
    qtbot.mouseClick(figure, Qt.MouseButton.LeftButton)


def remark_button(page):
    return next(b for b in page.findChildren(QPushButton) if b.text() == "Show them")


def test_the_figures_say_what_they_are_and_rest_on(page):
    said = {name: (figure.number, figure.words) for name, figure in page.figures.items()}
    assert said == {
        "Money spent": ("€342.30", "restoration and upkeep together, as it was paid"),
        "Own hours": ("10 h 5 min", "no rate is given; no money was spent on them"),
        "Valuation": ("none entered", "press to enter what it is worth"),
        "Restoration": ("€302.40", "until on the road"),
        "Upkeep": ("€39.90", "since on the road"),
        "Not proven": ("€90.00", "€252.30 is proven"),
        "Saved": ("€230.00", "bought for €90.00"),
        "Not shared": ("€64.40", "and 1 h 35 min, to no area"),
    }


@pytest.mark.parametrize(
    ("figure", "made_of"),
    [
        ("Restoration", ["Fenwright", "Yard on Mill Lane", "Brandt Panels"]),
        ("Upkeep", ["Fenwright"]),
        ("Not proven", ["Yard on Mill Lane"]),
        ("Saved", ["Yard on Mill Lane"]),
        ("Not shared", ["Fenwright", "Fenwright"]),
    ],
)
def test_a_figure_opens_the_receipts_it_is_made_of(qtbot, page, figure, made_of):
    click(qtbot, page.figures[figure])
    assert front(page) == "Receipts"
    assert suppliers(page) == made_of
    assert page.tab("Receipts").only.isVisible()
    qtbot.mouseClick(page.tab("Receipts").only, Qt.MouseButton.LeftButton)
    assert len(suppliers(page)) == 4
    assert not page.tab("Receipts").only.isVisible()


def test_lines_that_differ_from_the_print_are_remarked_on(qtbot, page):
    remark_button(page).click()
    assert suppliers(page) == ["Brandt Panels"]


def test_money_without_a_rate_is_remarked_on(page, desk):
    foreign = workshop.receipt("Harbour", "2016", workshop.line("Hinge", 1000), currency="GBP")
    desk.act(receipts.record_receipt, foreign)
    shows = [b for b in page.findChildren(QPushButton) if b.text() == "Show them"]
    shows[-1].click()
    assert suppliers(page) == ["Harbour"]


@pytest.mark.parametrize("by", COSTS_BY)
def test_every_table_shows_the_ledgers_rows_and_total(page, session, by):
    table = costs(session, by)
    shown = laid_out(page, by)
    view, total = shown.table, shown.total
    assert view.rows_model.rows() == table.rows
    assert total.model().rowCount() == 1
    assert total.model().index(0, 0).data() == "total"
    assert total.model().index(0, 4).data() == "€342.30"
    assert "Together €342.30" in view.accessibleDescription()


def test_the_total_stays_in_sight_under_its_own_columns(qtbot, page):
    page.resize(700, 330)
    view = laid_out(page, "category")
    qtbot.waitUntil(lambda: not view.total.visibleRegion().isEmpty())
    qtbot.waitUntil(
        lambda: all(
            view.total.columnWidth(place) == view.table.columnWidth(place) for place in range(7)
        )
    )
    assert view.table.columnWidth(4) >= view.total.sizeHintForColumn(4)
    assert view.total.geometry().bottom() <= view.rect().bottom()


def test_an_empty_ledger_says_what_belongs_there(qtbot, tmp_path):
    with workshop.empty(tmp_path / "other") as bare, desk_over(bare) as desk:
        page = LedgerPage(desk)
        qtbot.addWidget(page)
        page.refresh(None)
        page.show()
        assert page.tab("Costs").empty.isVisible()
        desk.act(receipts.record_receipt, workshop.receipt("Mill", "2016", workshop.line("Oil", 9)))
        page.refresh(None)
        assert not page.tab("Costs").empty.isVisible()


@pytest.mark.parametrize(
    ("by", "row", "made_of"),
    [
        ("category", "consumables", ["Fenwright"]),
        ("area", "Jacking point, left", ["Brandt Panels"]),
        ("area", "not shared over repair areas", ["Fenwright", "Fenwright"]),
        ("year", "2016", ["Fenwright", "Yard on Mill Lane"]),
        ("supplier", "Fenwright", ["Fenwright", "Fenwright"]),
        ("category", "printed totals less their lines", ["Brandt Panels"]),
    ],
)
def test_a_row_opens_the_receipts_it_is_made_of(qtbot, page, by, row, made_of):
    view = laid_out(page, by)
    rows = view.table.rows_model.rows()
    view.table.selectRow([r.label for r in rows].index(row))
    qtbot.keyClick(view.table, Qt.Key.Key_Return)
    assert suppliers(page) == made_of


def test_a_row_of_hours_alone_opens_the_hours(qtbot, page):
    view = laid_out(page, "category")
    labels = [r.label for r in view.table.rows_model.rows()]
    view.table.selectRow(labels.index("hours worked"))
    qtbot.keyClick(view.table, Qt.Key.Key_Return)
    assert front(page) == "Hours"
    assert len(page.tab("Hours").table.rows_model.rows()) == 3


def test_bars_are_split_by_restoration_and_upkeep(page):
    view = laid_out(page, "year")
    bars = {
        row.label: view.table.model().index(n, 1).data(Qt.ItemDataRole.UserRole + 1)
        for n, row in enumerate(view.table.rows_model.rows())
    }
    assert bars["2015"] == (1.0, 1.0)
    assert bars["2020"][1] == 0.0


def test_receipts_are_filtered_by_words(qtbot, page):
    page.show_tab("Receipts")
    qtbot.keyClicks(page.tab("Receipts").filter, "wing bank")
    assert suppliers(page) == ["Yard on Mill Lane"]
    assert page.tab("Receipts").count.text() == "1 of 4 receipts"


def test_a_receipt_is_removed_by_key_and_brought_back_by_undo(qtbot, page, desk):
    page.show_tab("Receipts")
    page.tab("Receipts").table.selectRow(0)
    page.tab("Receipts").table.setFocus()
    qtbot.keyClick(page.tab("Receipts").table, Qt.Key.Key_Delete)
    assert len(suppliers(page)) == 3
    assert page.figures["Upkeep"].number == "€0.00"
    desk.act(history.undo)
    assert len(suppliers(page)) == 4


def test_enter_opens_a_receipt_to_be_changed(qtbot, page):
    page.show_tab("Receipts")
    page.tab("Receipts").table.selectRow(3)
    qtbot.keyClick(page.tab("Receipts").table, Qt.Key.Key_Return)
    dialog = opened_dialog(ReceiptDialog)
    assert dialog.head.supplier.text() == "Brandt Panels"
    dialog.reject()


def test_a_receipt_picked_is_selected_and_one_selected_is_picked(qtbot, page, desk, session):
    page.show_tab("Receipts")
    page.tab("Receipts").filter.setText("oil")
    known = receipts.receipts(session)[0]
    desk.select(ReceiptSelected(known.id))
    assert page.tab("Receipts").table.picked() == known
    page.activateWindow()
    page.tab("Receipts").table.setFocus()
    qtbot.keyClick(page.tab("Receipts").table, Qt.Key.Key_Up)
    assert desk.selection == ReceiptSelected(page.tab("Receipts").table.picked().id)


def test_hours_are_added_changed_and_removed(qtbot, page, session):
    page.show_tab("Hours")
    press = {b.text(): b for b in page.tab("Hours").findChildren(QPushButton) if b.isVisible()}
    press["New h&ours"].click()
    dialog = opened_dialog(HoursDialog)
    dialog.hours.set_text("2")
    dialog.accept_button.click()
    dialog.reject()
    assert len(hours.work(session)) == 4
    page.tab("Hours").table.selectRow(3)
    press["E&dit"].click()
    dialog = opened_dialog(HoursDialog)
    dialog.hours.set_text("4")
    dialog.accept_button.click()
    assert hours.work(session)[0].minutes == 240
    page.tab("Hours").table.selectRow(3)
    press["Re&move"].click()
    assert len(hours.work(session)) == 3


def test_what_is_not_shared_is_said(page):
    table = page.tab("Hours").table
    shared = [table.model().index(n, 5).data() for n in range(table.model().rowCount())]
    assert "not shared" in shared
    model = page.tab("Receipts").table.model()
    assert model.index(0, 6).data() == "not shared"


def test_an_empty_list_invites(qtbot, tmp_path):
    with workshop.empty(tmp_path) as session, desk_over(session) as desk:
        page = LedgerPage(desk)
        qtbot.addWidget(page)
        hours.record_work(session, workshop.work("2015-05-02", 210, "Iris"))
        page.refresh(None)
        page.show()
        page.show_tab("Receipts")
        shown = [b.text() for b in page.tab("Receipts").findChildren(QPushButton) if b.isVisible()]
        assert shown == ["New re&ceipt"]


# --- the inspector's pane ---


def test_the_pane_tells_what_was_paid_and_what_proves_it(qtbot, desk, session):
    pane = ReceiptPane(desk)
    qtbot.addWidget(pane)
    desk.changed.connect(pane.refresh)
    known = receipts.receipts(session)[0]
    pane.show_selection(ReceiptSelected(known.id))
    pane.show()
    assert pane.supplier.text() == "Brandt Panels"
    assert pane.paper.text() == "Paper held, no scan here."
    assert pane.total.text() == "The paper says €187.90; the lines make €186.90, €1.00 less."
    desk.selection = ReceiptSelected(known.id)
    next(b for b in pane.findChildren(QPushButton) if b.text() == "Remove").click()
    assert known.id not in {r.id for r in receipts.receipts(session)}
    assert desk.selection != ReceiptSelected(known.id)


def test_papers_and_totals_in_words():
    line = workshop.line("Steel", 1000)
    lost = workshop.receipt("A", "2016", line, paper=Paper.LOST, stands_in="bank statement")
    assert paper_words(lost) == "Paper lost; instead: bank statement."
    never = workshop.receipt("A", "2016", line, paper=Paper.NEVER)
    assert paper_words(never) == "There never was a paper."
    assert total_words(never) == "Together €10.00."
    more = workshop.receipt("A", "2016", line, printed_total=900, rate=Decimal(1))
    assert total_words(more) == "The paper says €9.00; the lines make €10.00, €1.00 more."
    abroad = replace(never, currency="USD", rate=Decimal("0.920"))
    assert rate_words(abroad, "EUR") == " At 0.92 EUR for 1 USD that is €9.20."
    assert rate_words(never, "EUR") == ""
