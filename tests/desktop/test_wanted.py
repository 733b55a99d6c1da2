"""Planning the buying through the window: the list, the pane beside it, and the receipt."""

from collections.abc import Iterator
from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from journal.actions import receipts
from journal.actions import wanted as actions
from journal.actions.journals import new_journal
from journal.desktop.desk import Desk, ReceiptSelected, WantedSelected
from journal.desktop.dialogs.receipt import ReceiptDialog
from journal.desktop.dialogs.sighting import SightingDialog
from journal.desktop.dialogs.wanted import WantedDialog, WantedStateDialog
from journal.desktop.dialogs.wanted_line import WantedLineDialog
from journal.desktop.inspector.wanted import WantedPane
from journal.desktop.pages.ledger_wanted import WantedList
from journal.domain.car import Car
from journal.domain.ids import SightingId, WantedId
from journal.domain.wanted import Sighting, Wanted, WantedState
from journal.domain.when import When
from tests.desktop.desks import desk_over, opened_dialog

_DAY = When.on(date(2024, 3, 9))


@pytest.fixture
def desk(tmp_path: Path, qapp: QApplication) -> Iterator[Desk]:
    with new_journal(tmp_path / "Rook", Car("Rook")) as session, desk_over(session) as made:
        yield made


def _want(desk: Desk, text: str, price: int | None = None, limit: int | None = 6000) -> WantedId:
    wanted = Wanted(WantedId(0), text, price_limit=limit)
    made = WantedId(actions.add_wanted(desk.session, wanted, _DAY).made or 0)
    if price is not None:
        seen = Sighting(SightingId(0), made, "Rustholm Breakers", price, "EUR", _DAY)
        actions.add_sighting(desk.session, seen)
    return made


def _list(desk: Desk, qtbot: QtBot) -> WantedList:
    page = WantedList(desk)
    qtbot.addWidget(page)
    desk.changed.connect(page.refresh)
    page.refresh(None)
    page.show()
    return page


def test_a_part_is_written_down_seen_and_ordered_by_the_keyboard(desk: Desk, qtbot: QtBot) -> None:
    page = _list(desk, qtbot)
    assert page.empty.isVisible()
    page.new()
    form = opened_dialog(WantedDialog)
    assert isinstance(form, WantedDialog)
    qtbot.keyClicks(form.text.edit, "Door hinge, upper")
    qtbot.keyClicks(form.price_limit.edit, "60")
    form.accept_button.click()
    (part,) = actions.wanted_parts(desk.session)
    assert (part.text, part.price_limit, part.state) == (
        "Door hinge, upper", 6000, WantedState.WANTED,
    )  # fmt: skip
    assert desk.selection == WantedSelected(part.id)
    pane = WantedPane(desk)
    qtbot.addWidget(pane)
    desk.changed.connect(pane.refresh)
    pane.show_selection(desk.selection)
    pane.seen.click()
    sighting = opened_dialog(SightingDialog)
    assert isinstance(sighting, SightingDialog)
    qtbot.keyClicks(sighting.place.edit, "Autumn fair")
    qtbot.keyClicks(sighting.price.edit, "75")
    assert sighting.price.note.text() == "€15.00 over your €60.00."
    sighting.accept_button.click()
    pane.state_buttons[WantedState.ORDERED].click()
    found = actions.wanted_part(desk.session, part.id)
    assert [c.state.value for c in found.changes] == ["wanted", "seen", "ordered"]
    assert page.sums.text() == "Nothing is left to buy. On order: 1 part, likely €75.00."


def test_several_parts_become_one_receipt_in_one_act(desk: Desk, qtbot: QtBot) -> None:
    hinge = _want(desk, "Door hinge", 5200)
    catch = _want(desk, "Door catch", 900)
    other = _want(desk, "Mirror")
    page = _list(desk, qtbot)
    page.table.selectAll()
    assert len(page.picked()) == 3
    page.came.click()
    form = opened_dialog(ReceiptDialog)
    assert isinstance(form, ReceiptDialog)
    assert form.head.supplier.text() == "Rustholm Breakers"
    rows = {shown.text.text(): shown for shown in form.lines.rows}
    assert (rows["Door hinge"].price.text(), rows["Mirror"].price.text()) == ("52.00", "")
    # The mirror did not come after all: its line goes, and it stays wanted.
    rows["Mirror"].remove_button.click()
    form.accept_button.click()
    (receipt,) = receipts.receipts(desk.session)
    parts = {part.id: part for part in actions.wanted_parts(desk.session)}
    lines = {line.text: line.id for line in receipt.lines}
    assert parts[hinge].line_id == lines["Door hinge"]
    assert parts[catch].line_id == lines["Door catch"]
    assert parts[hinge].state is WantedState.ARRIVED
    assert (parts[other].line_id, parts[other].state) == (None, WantedState.WANTED)
    pane = WantedPane(desk)
    qtbot.addWidget(pane)
    pane.show_selection(WantedSelected(hinge))
    pane.came.click()
    assert desk.selection == ReceiptSelected(receipt.id)


def test_a_part_whose_receipt_is_recorded_is_tied_to_its_line(desk: Desk, qtbot: QtBot) -> None:
    other, part = _want(desk, "Clock"), _want(desk, "Door hinge, upper")
    desk.act(receipts.record_receipt, actions.receipt_for(desk.session, [other], date.today()))
    free = actions.receipt_for(desk.session, [part], date.today())
    lines = tuple(replace(free.lines[0], text=text) for text in ("Hinge pin", "Hinge, upper door"))
    desk.act(receipts.record_receipt, replace(free, supplier="Rustholm", lines=lines))
    pane = WantedPane(desk)
    qtbot.addWidget(pane)
    desk.changed.connect(pane.refresh)
    pane.show_selection(WantedSelected(part))
    pane.recorded.click()
    form = opened_dialog(WantedLineDialog)
    assert isinstance(form, WantedLineDialog)
    qtbot.waitUntil(lambda: form.table.picked() is not None)
    # What sounds most like it stands first; words leave only what has them.
    assert form.table.picked().text == "Hinge, upper door"
    qtbot.keyClicks(form.words, "rusth pin")
    assert [line.text for line in form.table.rows_model.rows()] == ["Hinge pin"]
    qtbot.keyClicks(form.words, "x")
    assert form.said.text() == "No line has these words."
    form.accept_button.click()
    assert form.problem.text() == "Pick the line of the receipt first."
    form.words.clear()
    form.accept_button.click()
    tied = actions.wanted_part(desk.session, part)
    assert receipts.receipt(desk.session, tied.receipt_id).supplier == "Rustholm"
    assert pane.recorded.isHidden()
    assert actions.lines_to_tie(desk.session, part)[0].text == "Hinge pin"


def test_a_day_that_was_wrong_is_put_right_or_taken_back(desk: Desk, qtbot: QtBot) -> None:
    part = _want(desk, "Door hinge")
    dialog = WantedStateDialog(desk, actions.wanted_part(desk.session, part), WantedState.ARRIVED)
    qtbot.addWidget(dialog)
    dialog.when.set_text("2 April 2024")
    dialog.accept_button.click()
    change = actions.wanted_part(desk.session, part).change_to(WantedState.ARRIVED)
    assert change is not None
    assert change.when.edtf == "2024-04-02"
    pane = WantedPane(desk)
    qtbot.addWidget(pane)
    pane.show_selection(WantedSelected(part))
    assert "no receipt of it" in pane.receipt_said.text()
    assert not pane.receipt_said.isHidden()
    actions.remove_wanted(desk.session, part)
    pane.refresh(None)
    assert actions.wanted_parts(desk.session) == ()


def test_what_was_typed_wrong_is_said_at_the_field(desk: Desk, qtbot: QtBot) -> None:
    form = WantedDialog(desk)
    qtbot.addWidget(form)
    for field, text, said in (
        (form.text, "", "What is wanted?"),
        (form.quantity, "many", "is not a quantity"),
        (form.price_limit, "cheap", "is not a sum"),
        (form.panel, "nowhere", "means no one panel"),
    ):
        form.text.set_text("Hinge")
        form.quantity.set_text("1")
        field.set_text(text)
        form.accept_button.click()
        assert said in field.note.text()
        field.set_text("")
    assert actions.wanted_parts(desk.session) == ()
