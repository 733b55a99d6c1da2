"""The dialog that brings a spreadsheet in: columns, questions, what would come in, one edit."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import QItemSelectionModel
from PySide6.QtWidgets import QComboBox
from pytestqt.qtbot import QtBot

from journal.actions import history, receipts
from journal.actions.session import Session
from journal.desktop.desk import Desk
from journal.desktop.dialogs.bring_in_sheet import BringInSheetDialog
from journal.desktop.pages.ledger_papers import read_papers
from journal.domain.sheet_items import Fate
from journal.domain.sheet_rows import Decimals, Role
from tests.desktop.desks import Told, desk_over, opened_dialog
from tests.desktop.workshop import furnished
from tests.intake.sheets.drawn import csv_file, messy

BANK = (
    "Booking date;Payee;Purpose;Amount;Balance\n"
    "18.02.2016;YARD ON MILL LANE;card;-90,00;1\n"
    "09.03.2016;Grocer;food;-31,20;1\n"
    "30.03.2016;Employer;pay;2.000,00;1\n"
)


@pytest.fixture
def session(tmp_path: Path) -> Iterator[Session]:
    with furnished(tmp_path) as made:
        yield made


@pytest.fixture
def desk(session: Session, qtbot: QtBot) -> Iterator[Desk]:
    with desk_over(session) as made:
        yield made


def dialog_over(desk: Desk, path: Path, qtbot: QtBot) -> BringInSheetDialog:
    dialog = BringInSheetDialog(desk, path)
    qtbot.addWidget(dialog)
    dialog.show()
    return dialog


def choose(box: QComboBox, value: object) -> None:
    """Pick an entry as a person does."""
    box.setCurrentIndex(box.findData(value))
    box.activated.emit(box.currentIndex())


def test_a_messy_list_is_shown_asked_about_and_brought_in(
    desk: Desk, tmp_path: Path, qtbot: QtBot
) -> None:
    told, dialog = Told(desk), dialog_over(desk, messy(tmp_path / "old list.xlsx"), qtbot)
    columns, preview = dialog.columns, dialog.preview
    assert columns.sheet.currentText() == "Costs"
    assert columns.heading.value() == 4
    assert [box.currentData() for box in columns.roles][:3] == [Role.DATE, Role.SUPPLIER, Role.WHAT]
    assert columns.rows_model.data(columns.rows_model.index(0, 1)) == "Brandt Panels"
    assert "“37,00”" in columns.question.text()
    before = len(receipts.receipts(desk.session))
    dialog.accept_button.click()
    assert dialog.problem.text() == "Choose first how the decimals are written."
    choose(columns.decimals, Decimals.BOTH)
    assert columns.question.isHidden()
    dialog.accept_button.click()
    assert preview.summary.text() == (
        "6 receipts would come in, €1,289.90 and £18.00 in all. 3 rows can't be read."
    )
    assert [preview.tabs.tabText(place) for place in range(3)] == [
        "Receipts and hours (6)", "Can't be read (3)", "No record (2)",
    ]  # fmt: skip
    assert len(receipts.receipts(desk.session)) == before
    assert dialog.accept_button.text() == "&Bring in 6 receipts"
    with qtbot.waitSignal(desk.changed):
        dialog.accept_button.click()
    qtbot.waitUntil(lambda: bool(told.messages))
    assert told.messages == ["6 receipts came in; undo takes all back."]
    assert told.pages == ["Ledger"]
    assert len(receipts.receipts(desk.session)) == before + 6
    history.undo(desk.session)
    assert len(receipts.receipts(desk.session)) == before


def test_rows_are_left_out_and_taken_again_by_hand(
    desk: Desk, tmp_path: Path, qtbot: QtBot
) -> None:
    text = "Date,Shop,Cost\n2016-03-05,Brandt,1.00\n2016-03-06,Fenwright,2.00\n"
    dialog = dialog_over(desk, csv_file(tmp_path / "a.csv", text), qtbot)
    dialog.accept_button.click()
    preview = dialog.preview
    preview.items.selectAll()
    preview.leave.click()
    assert set(preview.fates.values()) == {Fate.LEAVE}
    assert not dialog.accept_button.isEnabled()
    preview.items.selectRow(1)
    preview.come_in.click()
    assert dialog.accept_button.text() == "&Bring in 1 receipt"
    dialog.back.click()
    assert dialog.accept_button.text() == "&See what would come in"


def test_a_bank_line_is_offered_to_stand_in(desk: Desk, tmp_path: Path, qtbot: QtBot) -> None:
    dialog = dialog_over(desk, csv_file(tmp_path / "bank.csv", BANK), qtbot)
    assert dialog.columns.kind.currentData()
    dialog.accept_button.click()
    preview, model = dialog.preview, dialog.preview.items.rows_model
    said = [model.data(model.index(row, 5)) for row in range(3)]
    assert said == [
        "left out: something stands in already (receipt 2)",
        "left out: no receipt of this sum near this day",
        "left out: money that came in",
    ]
    flags = QItemSelectionModel.SelectionFlag
    preview.items.selectionModel().select(model.index(0, 0), flags.ClearAndSelect | flags.Rows)
    preview.stand_in.click()
    with qtbot.waitSignal(desk.changed):
        dialog.accept_button.click()
    found = receipts.receipt(desk.session, receipts.receipts(desk.session)[1].id)
    assert found.stands_in.startswith("bank statement; bank line of 18 February 2016")


def test_a_column_called_something_else_is_asked_about_anew(
    desk: Desk, tmp_path: Path, qtbot: QtBot
) -> None:
    text = "Date,Other,Cost\n2016-03-05,03/04/2016,1.00\n2016-03-06,05/06/2016,2.00\n"
    dialog = dialog_over(desk, csv_file(tmp_path / "a.csv", text), qtbot)
    boxes = dialog.columns.roles
    assert dialog.columns.question.isHidden()
    choose(boxes[1], Role.DATE)
    assert boxes[0].currentData() == Role.LEAVE_OUT
    assert "“03/04/2016”" in dialog.columns.question.text()
    choose(boxes[0], Role.DATE)
    assert dialog.columns.question.isHidden()


def test_a_file_that_is_none_is_said_in_the_dialog(
    desk: Desk, tmp_path: Path, qtbot: QtBot
) -> None:
    (tmp_path / "a.xlsx").write_bytes(b"PK\x03\x04 nothing")
    dialog = dialog_over(desk, tmp_path / "a.xlsx", qtbot)
    assert "damaged" in dialog.problem.text()
    assert not dialog.accept_button.isEnabled()


def test_a_spreadsheet_dropped_on_the_ledger_is_brought_in(
    desk: Desk, tmp_path: Path, qtbot: QtBot
) -> None:
    from PySide6.QtWidgets import QWidget

    over = QWidget()
    qtbot.addWidget(over)
    assert read_papers(desk, [csv_file(tmp_path / "bank.csv", BANK)], over) is None
    dialog = opened_dialog(BringInSheetDialog)
    assert dialog.windowTitle() == "Bring in bank.csv"
    dialog.reject()
