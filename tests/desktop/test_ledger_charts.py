"""The Ledger's figures, charts and years: what is shown, and that it adds up again when opened."""

from decimal import Decimal

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QImage
from PySide6.QtWidgets import QLabel

from journal.actions import hours, people, price_indices, receipts, valuations
from journal.actions.costs import costs, lines_of_row, summary
from journal.desktop import theme
from journal.desktop.dialogs.comparable import ComparableDialog
from journal.desktop.dialogs.price_index import PriceIndexDialog, PriceIndicesDialog
from journal.desktop.dialogs.valuation import ValuationDialog, ValuationsDialog
from journal.desktop.locales import known
from journal.desktop.pages.ledger import LedgerPage
from journal.desktop.widgets.chart import look_of
from journal.domain.charts import ChartKind
from journal.domain.ids import PersonId
from journal.domain.people import Person, PersonKind
from journal.domain.price_index import InMoneyOf
from journal.domain.receipts import Share
from journal.domain.valuations import PriceKind, ValuationBasis
from tests.desktop import workshop
from tests.desktop.desks import desk_over, opened_dialog, put_away

_INDEX = {"2015": Decimal(100), "2016": Decimal(110), "2020": Decimal(125)}


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
    made.resize(1000, 700)
    made.refresh(None)
    made.show()
    yield made
    put_away(made)


def front(page):
    return page.tabs.tabText(page.tabs.currentIndex())


def listed(page, title):
    """The numbers and the parts of the rows that a list shows."""
    tab = page.tab(title)
    return {row.id: tab._part(row) for row in tab.table.rows_model.rows()}


# --- what a figure is made of ---


@pytest.mark.parametrize("name", ["Money spent", "Restoration", "Not proven", "Not shared"])
def test_what_a_figure_opens_adds_up_to_it(page, session, name):
    page.figures[name].click()
    found = summary(session)
    figure = {"Money spent": found.money, "Restoration": found.restoration,
              "Not proven": found.unproven, "Not shared": found.not_shared}[name]  # fmt: skip
    assert sum(listed(page, "Receipts").values()) == figure
    assert page.tab("Receipts").count.text().endswith(f"together €{figure / 100:.2f}")


def test_a_row_of_an_area_opens_its_share_of_each_receipt_and_its_hours_beside(page, session):
    row = next(r for r in costs(session, "area").rows if r.label == "Jacking point, left")
    page.show_tab("Costs")
    page.tab("Costs").lay_out_by("area")
    page.tab("Costs").view.opened.emit(row)
    assert front(page) == "Receipts"
    assert list(listed(page, "Receipts").values()) == [row.money]
    what = page.tab("Receipts").table.model().index(0, 2).data()
    assert what == "Sill, outer; Sheet steel, 1 mm"
    assert page.tab("Receipts").rest.text() == "and 2 h 30 min of work"
    page.tab("Receipts").rest.click()
    assert front(page) == "Hours"
    assert list(listed(page, "Hours").values()) == [150]
    page.tab("Hours").only.click()
    assert not page.tab("Receipts").only.isVisible()
    assert len(listed(page, "Receipts")) == 4


def test_what_is_listed_follows_a_change(page, desk, session):
    page.figures["Not proven"].click()
    lost = next(r for r in receipts.receipts(session) if r.supplier == "Yard on Mill Lane")
    area = lost.lines[0].shares[0].area_id
    more = workshop.line("Arch piece", 1_000, shares=(Share(area, 1),))
    desk.act(receipts.record_receipt, workshop.receipt("Mill", "2016", more, paper=lost.paper))
    assert sum(listed(page, "Receipts").values()) == 10_000
    assert front(page) == "Receipts"


def test_a_list_that_gets_the_keyboard_picks_nothing_by_itself(page, desk):
    page.activateWindow()
    page.figures["Restoration"].click()
    assert page.tab("Receipts").table.hasFocus()
    assert not page.tab("Receipts").table.selectionModel().hasSelection()


# --- three figures ---


def test_own_hours_are_valued_apart_and_said_to_be_no_money_spent(page, desk):
    desk.act(people.save_person, Person(PersonId(0), "Iris", rate=2_000))
    assert page.figures["Money spent"].number == "€342.30"
    said = page.figures["Own hours"].words
    assert said == "8 h 30 min of them worth €170.00 at your rates: no money spent"


def test_own_hours_open_without_those_paid_for(page, desk):
    desk.act(people.save_person, Person(PersonId(0), "Tom", PersonKind.PAID))
    card = page.figures["Own hours"]
    assert card.number == "8 h 30 min"
    assert card.words.endswith("besides, 1 h 35 min paid for")
    card.click()
    assert front(page) == "Hours"
    assert sum(listed(page, "Hours").values()) == 510


def test_a_valuation_is_entered_changed_and_stands_by_itself(qtbot, page, session):
    page.figures["Valuation"].click()
    listing = opened_dialog(ValuationsDialog)
    assert listing.valuations.empty.isVisible()
    listing.valuations.add.click()
    form = opened_dialog(ValuationDialog)
    form.accept_button.click()
    assert form.problem.text() == "Say what the car is valued at."
    form.when.edit.setText("2020-06-01")
    form.amount.setText("12500")
    form.valuer.setText("O. Brandvik")
    form.basis.setCurrentIndex(list(ValuationBasis).index(ValuationBasis.AGREED))
    form.accept_button.click()
    card = page.figures["Valuation"]
    assert (card.number, card.words) == (
        "€12,500.00",
        "agreed value, O. Brandvik, 1 June 2020",
    )
    listing.valuations.table.selectRow(0)
    listing.valuations.change.click()
    form = opened_dialog(ValuationDialog)
    form.amount.setText("13000")
    form.accept_button.click()
    assert card.number == "€13,000.00"
    assert page.figures["Money spent"].number == "€342.30"
    listing.valuations.table.selectRow(0)
    listing.valuations.remove.click()
    assert valuations.valuations(session) == ()
    listing.reject()


def test_a_car_to_compare_with_has_its_own_currency(qtbot, page, session):
    page.figures["Valuation"].click()
    listing = opened_dialog(ValuationsDialog)
    listing.tabs.setCurrentIndex(1)
    listing.comparables.add.click()
    form = opened_dialog(ComparableDialog)
    form.text.setText("Halden Rook, unrestored")
    form.currency.setText("XYZ")
    form.currency.editingFinished.emit()
    assert "XYZ" in form.problem.text()
    form.currency.setText("sek")
    form.price.setText("45000")
    form.kind.setCurrentIndex(list(PriceKind).index(PriceKind.SOLD))
    form.accept_button.click()
    found = valuations.comparables(session)[0]
    assert (found.price, found.currency, found.kind) == (4_500_000, "SEK", PriceKind.SOLD)
    assert listing.comparables.table.model().index(0, 2).data() == "sold for SEK\u00a045,000.00"
    listing.comparables.table.selectRow(0)
    listing.comparables.remove.click()
    assert valuations.comparables(session) == ()
    listing.reject()


# --- the money of a year ---


def test_an_index_is_brought_in_used_and_the_whole_page_follows(qtbot, page, session, tmp_path):
    assert not page.head.money_of.isEnabled()
    page._show_indices()
    listing = opened_dialog(PriceIndicesDialog)
    listing.list.add.click()
    form = opened_dialog(PriceIndexDialog)
    bad, good = tmp_path / "bad.csv", tmp_path / "Prices.csv"
    bad.write_text("2015;a lot\n")
    good.write_text("period;value\n" + "\n".join(f"{p};{v}" for p, v in _INDEX.items()))
    for file in (bad, good):
        form.choose = lambda file=file: file
        form.file.click()
        if file is bad:
            assert "is no value" in form.problem.text()
    form.source.setText("made up for a test")
    form.accept_button.click()
    assert listing.list.table.model().index(0, 0).data() == "in use"
    listing.reject()
    assert [page.head.money_of.itemText(n) for n in range(4)] == [
        "as it was paid", "2020", "2016", "2015",
    ]  # fmt: skip
    page.head.money_of.setCurrentIndex(1)
    page.head.money_of.activated.emit(1)
    # 187.90 x 125/100 + 114.50 x 125/110, by the ratio of two values; and 39.90 as it was.
    assert page.figures["Money spent"].number == "€404.89"
    assert page.figures["Saved"].words == "as paid, for €90.00"
    table = page.tab("Costs").view
    assert "Together €404.89" in table.table.accessibleDescription()
    page.figures["Money spent"].click()
    assert sum(listed(page, "Receipts").values()) == 404_89


def test_money_that_cant_be_revalued_is_said_and_shown(page, desk, session):
    price_indices.record_index(session, "Short", "EUR", "made up", {"2016": Decimal(1)})
    page.show_in_money_of(InMoneyOf("2016"))
    said = [shown.text() for shown in page.head.findChildren(QLabel)]
    assert next(words for words in said if "can't be revalued" in words) == (
        "Every sum is in the money of 2016 by “Short”; €227.80 can't be revalued and stands in no "
        "sum: no index for 2015-04, 2020-03."
    )
    page.show_in_money_of(InMoneyOf("1955"))
    assert page.figures["Money spent"].number == "€342.30"
    assert page.head.money_of.currentText() == "as it was paid"


# --- charts ---


@pytest.fixture
def charts(qtbot, page):
    page.show_tab("Charts")
    tab = page.tab("Charts")
    qtbot.waitUntil(lambda: bool(tab.view.marks), timeout=20_000)
    return tab


def test_a_bar_pressed_opens_the_lines_it_is_made_of(qtbot, page, charts, session):
    mark = next(m for m in charts.view.marks if m.bar == "2016" and m.part == "consumables")
    spot = QPoint(
        round((mark.left + mark.right) / 2 * charts.view.width()),
        round((mark.top + mark.bottom) / 2 * charts.view.height()),
    )
    qtbot.mouseClick(charts.view, Qt.MouseButton.LeftButton, pos=spot)
    assert front(page) == "Receipts"
    assert page.tab("Receipts").only.text() == "Only: 2016, consumables"
    assert sum(listed(page, "Receipts").values()) == 24_50


def test_a_chart_is_walked_by_keys_and_said_in_words(qtbot, page, charts):
    view = charts.view
    assert view.accessibleName() == "Money spent over time, by category"
    assert "€342.30 in all" in view.accessibleDescription()
    qtbot.keyClick(view, Qt.Key.Key_Return)
    assert front(page) == "Charts"
    for key in (Qt.Key.Key_Right, Qt.Key.Key_Right, Qt.Key.Key_Left):
        qtbot.keyClick(view, key)
    first = view.marks[0]
    qtbot.keyClick(view, Qt.Key.Key_Return)
    assert first.words in page.tab("Receipts").only.text()


def test_a_chart_wears_the_colours_of_the_theme(charts):
    for colours in (theme.LIGHT, theme.DARK):
        look = look_of(theme.palette(colours))
        assert look.ground == colours.surface
        for fill in look.fills:
            by_itself = theme.contrast(fill, look.ground) >= 3
            assert by_itself or theme.contrast(look.outline, look.ground) >= 3
            assert theme.contrast(look.outline, fill) >= 3, "the hatching shows"


def test_a_chart_is_saved_as_it_is_named(qtbot, charts, tmp_path, desk):
    told = []
    desk.message.connect(lambda text, _level: told.append(text))
    for name, made in (("chart.svg", "chart.svg"), ("chart.png", "chart.png"), ("c", "c.png")):
        charts.choose = lambda _proposed, name=name: tmp_path / name
        charts.save.click()
        qtbot.waitUntil((tmp_path / made).is_file, timeout=20_000)
    assert QImage(str(tmp_path / "c.png")).width() == 1800
    qtbot.waitUntil(lambda: len(told) == 3)


def test_the_car_shows_where_the_money_went_and_opens_it(qtbot, page, charts, session):
    charts.kind.setCurrentIndex(2)
    car = charts.car
    assert "Front wing, left €90.00" in car.accessibleDescription()
    assert not charts.save.isVisible()
    sill = workshop.panel(session, "Sill, left")
    car.canvas.panel_clicked.emit(sill)
    made_of = lines_of_row(session, "panel", str(sill))
    assert sum(listed(page, "Receipts").values()) == made_of.total > 0
    assert page.tab("Receipts").only.text() == "Only: Sill, left"


def test_a_chart_without_anything_says_how_it_comes_to_something(page, charts):
    charts.show_chart(ChartKind.METRE)
    assert charts.empty.isVisible()
    assert not charts.save.isEnabled()


def test_an_empty_journal_has_its_tabs_and_no_figures(qtbot, tmp_path):
    with workshop.empty(tmp_path / "other") as bare, desk_over(bare) as desk:
        page = LedgerPage(desk)
        qtbot.addWidget(page)
        page.refresh(None)
        page.show()
        assert not page.head.isVisible()
        page.show_tab("Charts")
        assert page.tab("Charts").empty.isVisible()
        desk.act(hours.record_work, workshop.work("2016-01-02", 60, "Iris"))
        page.refresh(None)
        assert page.head.isVisible()


def test_a_system_without_a_language_is_written_for_in_english():
    assert known("C") == "en"
    assert known("de_DE") == "de_DE"
    assert known("tlh_XX") == "en"
