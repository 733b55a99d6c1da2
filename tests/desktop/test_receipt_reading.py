"""Papers read into the form: filled, framed, checked by keys, one after the other."""

from dataclasses import replace
from datetime import date
from decimal import Decimal

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication

from journal.actions import receipts
from journal.actions.settings import load_settings
from journal.desktop.dialogs.receipt import ReceiptDialog
from journal.desktop.pages.ledger import LedgerPage
from journal.domain.papers import DateOrder
from tests.desktop import workshop
from tests.desktop.desks import desk_over, opened_dialog
from tests.desktop.test_receipt_dialog import drop_on
from tests.intake.reading import drawn


@pytest.fixture
def session(tmp_path):
    with workshop.furnished(tmp_path) as made:
        yield made


@pytest.fixture
def desk(qapp, session):
    with desk_over(session) as made:
        yield made


@pytest.fixture
def paper(tmp_path):
    def write(number=1, name=None):
        path = tmp_path / (name or f"{number}.pdf")
        path.write_bytes(drawn.pdf(drawn.drawn(number)))
        return path

    return write


@pytest.fixture
def page(qtbot, desk):
    made = LedgerPage(desk)
    qtbot.addWidget(made)
    made.refresh(None)
    made.show()
    return made


@pytest.fixture
def read(qtbot, desk):
    def read_into_form(path):
        made = ReceiptDialog(desk)
        qtbot.addWidget(made)
        made.show()
        made.activateWindow()
        qtbot.waitUntil(made.isActiveWindow)
        made.papers.add_files([path])
        qtbot.waitUntil(lambda: made.reading.pane.view.pixmap is not None)
        return made

    return read_into_form


def newest(session):
    return max(receipts.receipts(session), key=lambda r: r.id)


def test_a_paper_fills_the_form_and_is_recorded_with_its_words(qtbot, read, session, paper):
    truth = drawn.drawn(1).truth
    dialog = read(paper(1))
    assert dialog.head.supplier.text() == truth.supplier
    assert dialog.head.currency_code() == truth.currency
    if dialog.head.rate.isVisible():
        dialog.head.rate.set_text("1.17")
    dialog.accept_button.click()
    qtbot.waitUntil(dialog.isHidden)
    made = newest(session)
    assert (made.supplier, made.printed_total, made.tax) == (truth.supplier, truth.total, truth.tax)
    assert made.when.earliest.date() == truth.day
    assert [(Decimal(line.quantity), line.amount) for line in made.lines] == [
        (quantity, amount) for _, quantity, amount in truth.lines
    ]
    assert len(made.papers) == 1
    assert truth.supplier in made.read_text


def test_each_field_says_how_sure_and_is_framed_when_the_keyboard_is_there(qtbot, read, paper):
    dialog = read(paper(1))
    pane = dialog.reading.pane
    names = [pane.list.item(i).text() for i in range(pane.list.count())]
    assert any(name.startswith("Supplier: ") for name in names)
    assert "Line 1: sure" in names
    assert "Read from the paper: " in dialog.head.supplier.note.text()
    dialog.lines.rows[1].price.setFocus()
    assert pane.view.chosen == "Line 2"
    assert pane.said.text() == "Line 2 was read in the frame: sure."
    frame = pane.view.frame_of("Line 2")
    assert pane.view.rect().toRectF().contains(frame.center())
    dialog.printed_total.edit.setFocus()
    assert pane.view.chosen == "Printed total"
    dialog.note.setFocus()
    assert pane.view.chosen == "Printed total"


def test_a_name_in_the_list_leads_to_its_field(qtbot, read, paper):
    dialog = read(paper(1))
    shown = dialog.reading.pane.list
    rows = [shown.item(i).text().split(":")[0] for i in range(shown.count())]
    place = shown.visualItemRect(shown.item(rows.index("Printed total"))).center()
    qtbot.mouseClick(shown.viewport(), Qt.MouseButton.LeftButton, pos=place)
    assert QApplication.focusWidget() is dialog.printed_total.edit


def test_what_was_typed_before_is_never_overwritten(qtbot, desk, paper):
    dialog = ReceiptDialog(desk)
    qtbot.addWidget(dialog)
    dialog.show()
    dialog.head.supplier.set_text("My own words")
    dialog.papers.add_files([paper(1)])
    assert dialog.head.supplier.text() == "My own words"
    assert dialog.lines.rows[0].is_blank()


def test_changing_a_receipt_keeps_its_words_and_tax(qtbot, read, desk, session, paper):
    dialog = read(paper(3))
    dialog.head.rate.set_text("1.1")
    dialog.accept_button.click()
    qtbot.waitUntil(dialog.isHidden)
    before = newest(session)
    again = ReceiptDialog(desk, receipt=before)
    qtbot.addWidget(again)
    again.note.setText("seen")
    again.accept_button.click()
    after = receipts.receipt(session, before.id)
    assert (after.read_text, after.tax, after.note) == (before.read_text, before.tax, "seen")


def test_a_broken_paper_is_told_beside_an_empty_form(qtbot, desk, tmp_path):
    path = tmp_path / "bad.pdf"
    path.write_bytes(b"%PDF-1.4\n")
    dialog = ReceiptDialog(desk)
    qtbot.addWidget(dialog)
    dialog.show()
    dialog.papers.add_files([path])
    assert "“bad.pdf” can't be read: it is a broken PDF." in dialog.reading.pane.remark.text()
    assert dialog.head.supplier.text() == ""
    assert dialog.head.when.text() == "", "a paper has its own day; today is not made up for it"
    qtbot.waitUntil(lambda: not desk.tasks.is_busy())


def test_a_paper_recorded_already_is_told(qtbot, read, session, paper):
    first = read(paper(1))
    if first.head.rate.isVisible():
        first.head.rate.set_text("1.17")
    first.accept_button.click()
    qtbot.waitUntil(first.isHidden)
    dialog = ReceiptDialog(first._desk)
    qtbot.addWidget(dialog)
    dialog.show()
    dialog.papers.add_files([paper(1, "copy.pdf")])
    assert "This very paper is already with the receipt from" in dialog.reading.pane.remark.text()
    qtbot.waitUntil(lambda: not first._desk.tasks.is_busy())


def test_the_other_order_of_day_and_month_is_one_press_and_kept(qtbot, read, desk, paper):
    number = next(
        n
        for n in range(60)
        if n % 3 == 2 and drawn.drawn(n).truth.day.day <= 12
        and drawn.drawn(n).truth.day.day != drawn.drawn(n).truth.day.month
        and drawn.drawn(n).truth.order is DateOrder.DAY_FIRST
    )  # fmt: skip
    dialog = read(paper(number))
    day = drawn.drawn(number).truth.day
    assert dialog.head.when.required().earliest.date() == day
    dialog.head.currency.set_text("EUR")
    dialog.reading.pane.other_order.click()
    assert dialog.head.when.required().earliest.date() == day.replace(day=day.month, month=day.day)
    assert desk.settings.date_order == "month first"
    assert load_settings().date_order == "month first"


def test_a_paper_from_abroad_says_nothing_of_dates_at_home(qtbot, read, desk, tmp_path):
    paper = tmp_path / "abroad.pdf"
    rows = (
        ("CEDARVALE PARTS", "", True),
        ("Date: 03/04/2024", "", False),
        ("Door seal", "12.50", False),
        ("TOTAL USD", "12.50", True),
    )
    paper.write_bytes(drawn.pdf(replace(drawn.drawn(1), rows=rows)))
    dialog = read(paper)
    assert dialog.head.when.required().earliest.date() == date(2024, 4, 3)
    assert "please check" in dialog.head.when.note.text()
    assert dialog.reading.pane.other_order.text() == "Rather 4 March 2024"
    dialog.reading.pane.other_order.click()
    assert dialog.head.when.required().earliest.date() == date(2024, 3, 4)
    assert not dialog.reading.pane.other_order.isVisible()
    assert desk.settings.date_order == "day first"


def test_papers_dropped_on_the_ledger_are_read_one_after_the_other(qtbot, page, session, paper):
    before = len(receipts.receipts(session))
    drop_on(page, paper(1), paper(5))
    first = opened_dialog(ReceiptDialog)
    assert "1 of 2" in first.windowTitle()
    qtbot.waitUntil(lambda: first.head.supplier.text() == drawn.drawn(1).truth.supplier)
    if first.head.rate.isVisible():
        first.head.rate.set_text("1.17")
    first.accept_button.click()
    qtbot.waitUntil(lambda: "2 of 2" in opened_dialog(ReceiptDialog).windowTitle())
    second = opened_dialog(ReceiptDialog)
    known = drawn.drawn(5).truth.supplier.upper()
    qtbot.waitUntil(lambda: second.head.supplier.text() == known)
    second.cancel_button.click()
    assert len(receipts.receipts(session)) == before + 1
    qtbot.waitUntil(lambda: not page.desk.tasks.is_busy())


def test_the_rest_of_many_papers_can_be_left(qtbot, page, session, paper):
    before = len(receipts.receipts(session))
    drop_on(page, paper(1), paper(3), paper(5))
    first = opened_dialog(ReceiptDialog)
    leave = next(b for b in first.buttons.buttons() if "the rest" in b.text())
    leave.click()
    assert not [w for w in QApplication.topLevelWidgets()
                if isinstance(w, ReceiptDialog) and w.isVisible()]  # fmt: skip
    assert len(receipts.receipts(session)) == before
    qtbot.waitUntil(lambda: not page.desk.tasks.is_busy())


def test_folders_dropped_on_the_ledger_open_nothing(qtbot, page, tmp_path):
    drop_on(page, tmp_path)
    assert not [w for w in QApplication.topLevelWidgets() if isinstance(w, ReceiptDialog)]
