"""Recording a receipt as a person does: by keys, with everything said at the field."""

import re
from decimal import Decimal

import pytest
from PySide6.QtCore import QMimeData, QPointF, Qt, QUrl
from PySide6.QtGui import QDragEnterEvent, QDropEvent
from PySide6.QtWidgets import QAbstractButton, QApplication, QLabel, QScrollArea

from journal.actions import areas, cars, history, receipts
from journal.desktop.desk import AreaSelected, ReceiptSelected
from journal.desktop.dialogs.receipt import ReceiptDialog
from journal.desktop.inspector.receipt import ReceiptPane
from journal.domain.receipts import Category, Condition, Paper, Spread
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
def make(qtbot, desk):
    def make_dialog(**how):
        made = ReceiptDialog(desk, **how)
        qtbot.addWidget(made)
        made.show()
        made.activateWindow()
        qtbot.waitUntil(lambda: made.isActiveWindow())
        return made

    return make_dialog


def type_in(qtbot, text):
    qtbot.keyClicks(QApplication.focusWidget(), text)


def press(qtbot, *keys):
    for key in keys:
        qtbot.keyClick(QApplication.focusWidget(), key)


def drop_on(widget, *paths):
    data = QMimeData()
    data.setUrls([QUrl.fromLocalFile(str(path)) for path in paths])
    how = (Qt.DropAction.CopyAction, data, Qt.MouseButton.LeftButton)
    QApplication.sendEvent(
        widget, QDragEnterEvent(QPointF(5, 5).toPoint(), *how, Qt.KeyboardModifier.NoModifier)
    )
    QApplication.sendEvent(widget, QDropEvent(QPointF(5, 5), *how, Qt.KeyboardModifier.NoModifier))


def newest(session):
    return max(receipts.receipts(session), key=lambda r: r.id)


@pytest.mark.parametrize("field", ["supplier", "printed", "note"])
def test_enter_goes_on_and_records_nothing_half_typed(qtbot, make, session, field):
    dialog = make()
    dialog.lines.rows[0].text.setText("Welding gloves")
    dialog.lines.rows[0].price.setText("12.50")
    fields = {"supplier": dialog.head.supplier, "printed": dialog._printed, "note": dialog.note}
    before = len(receipts.receipts(session))
    type_in(qtbot, "Tollgate Motor Factors")
    fields[field].setFocus()
    press(qtbot, Qt.Key.Key_Return)
    assert len(receipts.receipts(session)) == before
    assert dialog.isVisible()
    assert QApplication.focusWidget() is not fields[field]


def test_a_receipt_is_typed_without_the_mouse(qtbot, make, session, desk):
    dialog = make()
    type_in(qtbot, "Tollgate Motor Factors")
    dialog.head.when.set_text("3 May 2016")
    dialog.lines.rows[0].text.setFocus()
    type_in(qtbot, "Welding gloves")
    press(qtbot, Qt.Key.Key_Tab)
    type_in(qtbot, "12.50")
    press(qtbot, Qt.Key.Key_Tab, Qt.Key.Key_Tab, Qt.Key.Key_Tab)
    assert len(dialog.lines.rows) == 2
    assert QApplication.focusWidget() is dialog.lines.rows[1].text
    type_in(qtbot, "Masks, box")
    press(qtbot, Qt.Key.Key_Return)
    type_in(qtbot, "8")
    qtbot.keyClick(dialog, Qt.Key.Key_Return, Qt.KeyboardModifier.ControlModifier)
    assert not dialog.isVisible()
    made = newest(session)
    assert made.supplier == "Tollgate Motor Factors"
    assert [(line.text, line.amount) for line in made.lines] == [
        ("Welding gloves", 1250),
        ("Masks, box", 800),
    ]
    assert made.when.edtf == "2016-05-03"
    assert desk.selection == ReceiptSelected(made.id)
    assert history.undo_label(session).startswith("Record receipt from Tollgate")


def test_tab_stops_only_where_something_can_be_said(make):
    dialog = make()
    stops = []
    for _ in range(40):
        dialog.focusNextChild()
        stops.append(dialog.focusWidget())
    assert dialog.accept_button in stops
    line = dialog.lines.rows[0]
    way = [stops.index(each) for each in (line.quantity, line.text, dialog.lines.add_button)]
    assert way == sorted(way)
    assert not [stop for stop in stops if isinstance(stop, QScrollArea)]


def test_no_two_fields_answer_to_the_same_letter(make):
    dialog = make()
    buttons = [one.text() for one in dialog.findChildren(QAbstractButton)]
    labels = [one.text() for one in dialog.findChildren(QLabel) if one.buddy()]
    letters = re.findall(r"&(\w)", " ".join((*buttons, *labels)).lower())
    assert len(letters) > 8
    assert sorted(letters) == sorted(set(letters))


def test_a_new_receipt_starts_shared_to_the_area_selected(make, session, desk):
    first = areas.areas(session)[0]
    desk.select(AreaSelected(first.id))
    dialog = make()
    dialog.head.supplier.set_text("Brandt Panels")
    for text, price in (("Steel", "10"), ("Rod", "5")):
        dialog.lines.rows[-1].text.setText(text)
        dialog.lines.rows[-1].price.setText(price)
        dialog.lines.add_line()
    dialog.accept_button.click()
    made = newest(session)
    assert {share.area_id for line in made.lines for share in line.shares} == {first.id}
    assert len(made.lines) == 2


def test_a_line_may_be_shared_by_itself(qtbot, make, session):
    one, other = areas.areas(session)[:2]
    dialog = make(area_id=one.id)
    dialog.head.supplier.set_text("Brandt Panels")
    dialog.lines.rows[0].text.setText("Steel")
    dialog.lines.rows[0].price.setText("10")
    dialog.lines.add_line()
    dialog.lines.rows[1].text.setText("Rod")
    dialog.lines.rows[1].price.setText("5")
    dialog.same_for_all.setChecked(False)
    dialog.lines.rows[1].price.setFocus()
    dialog.shares.set_shares(())
    dialog.shares.add(other.id)
    assert dialog.shares_title.text() == "Line 2 shared to"
    dialog.accept_button.click()
    lines = newest(session).lines
    assert [[s.area_id for s in line.shares] for line in lines] == [[one.id], [other.id]]


def test_each_fault_is_said_at_its_field_and_nothing_is_recorded(qtbot, make, session):
    before = receipts.receipts(session)
    dialog = make()
    dialog.accept_button.click()
    assert "Who was paid?" in dialog.head.supplier.note.text()
    assert QApplication.focusWidget() is dialog.head.supplier.edit
    dialog.head.supplier.set_text("Brandt Panels")
    assert not dialog.head.supplier.is_wrong
    dialog.head.when.set_text("one fine day")
    dialog.accept_button.click()
    assert dialog.head.when.is_wrong
    dialog.head.when.set_today()
    dialog.accept_button.click()
    assert "needs a line" in dialog.problem.text()
    dialog.lines.rows[0].text.setText("Steel")
    dialog.lines.rows[0].price.setText("ten")
    dialog.accept_button.click()
    assert dialog.problem.text().startswith("Line 1: ")
    assert dialog.lines.rows[0].price.property("wrong") is True
    assert QApplication.focusWidget() is dialog.lines.rows[0].price
    dialog.lines.rows[0].price.setText("10")
    dialog.printed_total.set_text("ten")
    dialog.accept_button.click()
    assert dialog.printed_total.is_wrong
    assert receipts.receipts(session) == before


def test_the_sum_stands_level_with_its_name(make):
    dialog = make()
    name = next(label for label in dialog.findChildren(QLabel) if label.buddy() is dialog.sum)
    middles = [w.mapTo(dialog, w.rect().center()).y() for w in (name, dialog.sum)]
    assert abs(middles[0] - middles[1]) <= 1


def test_a_printed_total_that_differs_is_shown_and_kept(make, session):
    dialog = make()
    dialog.head.supplier.set_text("Brandt Panels")
    dialog.lines.rows[0].text.setText("Steel")
    dialog.lines.rows[0].price.setText("10")
    dialog.printed_total.set_text("9.50")
    assert "€0.50 more" in dialog.printed_total.note.text()
    dialog.accept_button.click()
    made = newest(session)
    assert (made.printed_total, made.lines_total) == (950, 1000)


def test_a_lost_paper_asks_for_what_stands_in(qtbot, make, session):
    dialog = make()
    assert dialog.head.stands_in.isHidden()
    lost = dialog.head.paper.buttons()[1]
    qtbot.mouseClick(lost, Qt.MouseButton.LeftButton)
    assert dialog.head.stands_in.isVisible()
    dialog.head.supplier.set_text("Yard on Mill Lane")
    dialog.head.stands_in.setText("bank statement")
    dialog.lines.rows[0].text.setText("Door, used")
    dialog.lines.rows[0].price.setText("40")
    dialog.lines.rows[0].condition.setCurrentText("used")
    dialog.lines.rows[0].new_price.setText("220")
    dialog.accept_button.click()
    made = newest(session)
    assert (made.paper, made.stands_in) == (Paper.LOST, "bank statement")
    assert (made.lines[0].condition, made.lines[0].new_price) == (Condition.USED, 22_000)


def test_money_of_another_country_asks_for_its_rate(make, session):
    dialog = make()
    dialog.head.supplier.set_text("Harbour Spares")
    dialog.head.currency.set_text("gbp")
    assert dialog.head.rate.isVisible()
    dialog.lines.rows[0].text.setText("Hinge")
    dialog.lines.rows[0].price.setText("£10")
    dialog.accept_button.click()
    assert "How many EUR did one GBP cost?" in dialog.head.rate.note.text()
    dialog.head.rate.set_text("1,17")
    dialog.accept_button.click()
    made = newest(session)
    assert (made.currency, made.rate, made.lines[0].amount) == ("GBP", Decimal("1.17"), 1000)
    assert cars.car(session).currency == "EUR"


def test_scans_are_attached_by_dropping_them(qtbot, make, session, tmp_path):
    scan = tmp_path / "scan.jpg"
    scan.write_bytes(workshop.picture(3))
    dialog = make()
    dialog.head.paper.buttons()[1].setChecked(True)
    drop_on(dialog.papers, scan, tmp_path)
    assert dialog.papers.files() == (scan,)
    assert dialog.head.paper_is() is Paper.HELD
    dialog.head.supplier.set_text("Brandt Panels")
    dialog.head.when.set_text("5 March 2016")
    dialog.lines.rows[0].text.setText("Steel")
    dialog.lines.rows[0].price.setText("10")
    dialog.accept_button.click()
    qtbot.waitUntil(dialog.isHidden)
    made = newest(session)
    assert len(made.papers) == 1
    assert receipts.paper_path(session, made.papers[0]).read_bytes() == scan.read_bytes()


def test_a_receipt_that_is_there_is_changed_in_place(make, session):
    known = receipts.receipts(session)[0]
    dialog = make(receipt=known)
    assert [row.text.text() for row in dialog.lines.rows] == ["Sill, outer", "Sheet steel, 1 mm"]
    assert dialog.same_for_all.isChecked()
    dialog.lines.rows[1].category.setCurrentText(Category.CONSUMABLES.value)
    dialog.accept_button.click()
    changed = receipts.receipt(session, known.id)
    assert changed.lines[1].category is Category.CONSUMABLES
    assert changed.lines[0] == known.lines[0]
    assert changed.printed_total == known.printed_total
    assert changed.lines[0].shares == known.lines[0].shares


def test_nothing_changed_makes_no_edit(make, session):
    known = receipts.receipts(session)[0]
    before = history.edits(session)
    dialog = make(receipt=known)
    dialog.accept_button.click()
    assert not dialog.isVisible()
    assert history.edits(session) == before


def test_a_line_is_removed(qtbot, make, session):
    known = receipts.receipts(session)[0]
    dialog = make(receipt=known)
    qtbot.mouseClick(dialog.lines.rows[0].remove_button, Qt.MouseButton.LeftButton)
    dialog.accept_button.click()
    assert [line.text for line in receipts.receipt(session, known.id).lines] == [
        "Sheet steel, 1 mm"
    ]


def test_a_faulty_line_out_of_sight_is_brought_into_view(make):
    dialog = make()
    dialog.head.supplier.set_text("Brandt Panels")
    for number in range(12):
        dialog.lines.rows[-1].text.setText(f"Bracket {number}")
        dialog.lines.rows[-1].price.setText("free" if number == 0 else "4")
        dialog.lines.add_line()
    QApplication.processEvents()
    price = dialog.lines.rows[0].price
    assert price.visibleRegion().isEmpty()
    dialog.accept_button.click()
    assert QApplication.focusWidget() is price
    assert not price.visibleRegion().isEmpty()


def test_postage_goes_over_the_other_lines_and_stays_so(qtbot, make, session):
    dialog = make()
    dialog.head.supplier.set_text("Grelling")
    dialog.same_for_all.setChecked(False)
    for number, (text, price) in enumerate((("Sill", "89.50"), ("Freight", "9.00"))):
        if number:
            dialog.lines.add_line()
        dialog.lines.rows[number].text.setText(text)
        dialog.lines.rows[number].price.setText(price)
    dialog.spread.setFocus()
    press(qtbot, Qt.Key.Key_Down)
    assert dialog.lines.rows[1].share_button.text() == "the other lines"
    dialog.accept_button.click()
    kept = receipts.receipts(session)[-1]
    assert [line.spread for line in kept.lines] == [Spread.NONE, Spread.VALUE]
    again = make(receipt=kept)
    again.accept_button.click()
    assert receipts.receipt(session, kept.id).lines == kept.lines


def test_what_came_back_is_a_receipt_of_its_own(qtbot, session, desk):
    known = receipts.receipts(session)[0]
    pane = ReceiptPane(desk)
    qtbot.addWidget(pane)
    pane.show_selection(ReceiptSelected(known.id))
    pane.take_back.click()
    dialog = opened_dialog(ReceiptDialog)
    assert [row.price.seen() for row in dialog.lines.rows] == [-line.amount for line in known.lines]
    dialog.lines.rows[1].remove_button.click()
    dialog.accept_button.click()
    made = newest(session)
    assert made.refund_of == known.id
    assert [line.amount for line in made.lines] == [-known.lines[0].amount]
    pane.show_selection(ReceiptSelected(made.id))
    assert pane.take_back.isHidden(), "what takes back is not taken back itself"
