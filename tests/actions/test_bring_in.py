"""Bringing in a sheet: shown first, recorded as one edit, never doubled, undone as one."""

from dataclasses import replace
from pathlib import Path

import pytest

from journal.actions import history, hours, receipts
from journal.actions.areas import add_area
from journal.actions.bring_in import (
    OpenSheet,
    Plan,
    ask_again,
    bring_in,
    is_sheet,
    open_sheet,
    plan,
)
from journal.actions.exporting import export_tables
from journal.actions.journals import new_journal
from journal.actions.session import Session
from journal.domain.car import Car
from journal.domain.errors import Cancelled, JournalError
from journal.domain.receipts import Paper
from journal.domain.sheet_items import Fate
from journal.domain.sheet_rows import DayOrder, Decimals
from journal.domain.when import parse
from tests.desktop.workshop import line, receipt, work
from tests.intake.sheets.drawn import csv_file, messy, ods, xlsx

LIST = "Date,Shop,Item,Cost,Hours,Who\n2016-03-05,Brandt,a sill,12.50,,\n2016-03-06,,weld,,3,Nils\n"
MORE = LIST + "2016-03-05,Brandt,a sill,12.50,,\n2016-04-01,Fenwright,wire,8.00,,\n"
BANK = (
    "Booking date;Payee;Purpose;Amount;Balance\n"
    "08.03.2016;BRANDT PANELS;card;-90,00;1\n"
    "09.03.2016;Grocer;food;-31,20;1\n"
    "30.03.2016;Employer;pay;2.000,00;1\n"
)


def planned(session: Session, path: Path, name: str = "") -> Plan:
    sheet = open_sheet(session, path, name)
    return plan(session, sheet, sheet.proposal.choices)


def test_nothing_is_recorded_before_it_is_said(session: Session, tmp_path: Path) -> None:
    found = planned(session, csv_file(tmp_path / "list.csv", LIST))
    assert not receipts.receipts(session)
    assert found.coming_in().words() == "1 receipt and 1 record of hours"
    made = bring_in(session, found)
    assert made.changes.label == "Bring in “list.csv”: 1 receipt and 1 record of hours"
    assert made.changes.kinds == {"receipts", "work"}
    assert [one.lines_total for one in receipts.receipts(session)] == [1_250]
    assert [one.minutes for one in hours.work(session)] == [180]


def test_it_is_one_edit_and_undone_as_one(session: Session, tmp_path: Path) -> None:
    path = csv_file(tmp_path / "list.csv", LIST)
    bring_in(session, planned(session, path))
    history.undo(session)
    assert not receipts.receipts(session)
    assert not hours.work(session)
    assert planned(session, path).coming_in().receipts == 1
    history.redo(session)
    assert planned(session, path).coming_in().is_nothing


def test_the_same_list_and_a_longer_one_double_nothing(session: Session, tmp_path: Path) -> None:
    first = planned(session, csv_file(tmp_path / "list.csv", LIST))
    bring_in(session, first)
    again = planned(session, csv_file(tmp_path / "other name.csv", LIST))
    assert {item.why for item in again.items} == {"brought in before"}
    with pytest.raises(JournalError, match=r"Nothing of “other name\.csv”"):
        bring_in(session, again)
    with pytest.raises(JournalError, match="came in since"):
        bring_in(session, first)
    longer = planned(session, csv_file(tmp_path / "list.csv", MORE))
    assert longer.coming_in().words() == "2 receipts"
    bring_in(session, longer)
    assert sum(one.lines_total for one in receipts.receipts(session)) == 3_300


def test_the_same_rows_in_another_format_double_nothing(session: Session, tmp_path: Path) -> None:
    rows = [("Date", "Shop", "Cost"), ("2016-03-05", "Brandt", 12.5)]
    bring_in(session, planned(session, xlsx(tmp_path / "a.xlsx", rows)))
    assert planned(session, ods(tmp_path / "a.ods", rows)).coming_in().is_nothing
    text = "Date;Shop;Cost\n05.03.2016;Brandt;12,50\n"
    assert planned(session, csv_file(tmp_path / "a.csv", text)).coming_in().is_nothing


def test_what_was_taken_out_stays_out_unless_asked_for(session: Session, tmp_path: Path) -> None:
    path = csv_file(tmp_path / "list.csv", LIST)
    bring_in(session, planned(session, path))
    receipts.remove_receipt(session, receipts.receipts(session)[0].id)
    hours.remove_work(session, hours.work(session)[0].id)
    found = planned(session, path)
    assert {item.why for item in found.items} == {"brought in before, and taken out since"}
    bring_in(session, found, {0: Fate.NEW})
    assert len(receipts.receipts(session)) == 1
    history.undo(session)
    history.undo(session)
    history.undo(session)
    assert len(receipts.receipts(session)) == len(hours.work(session)) == 1


@pytest.mark.parametrize(
    ("totals", "printed"),
    [
        (("30.00", "30.00"), 3_000),  # written beside every line
        (("30.00", ""), 3_000),
        (("", "30.00"), 3_000),  # written under the last line, as on paper
        (("12.00", "24.00"), 3_600),  # of each line, with its tax
        (("10.00", "20.00"), 3_000),  # the amounts again
        (("", ""), None),
    ],
)
def test_the_printed_total_is_that_of_all_its_lines(
    session: Session, tmp_path: Path, totals: tuple[str, str], printed: int | None
) -> None:
    text = (
        "Date,Shop,Receipt number,Item,Amount,Printed total\n"
        f"2016-03-05,Brandt,A7,sill,10.00,{totals[0]}\n"
        f"2016-03-05,Brandt,A7,wire,20.00,{totals[1]}\n"
    )
    bring_in(session, planned(session, csv_file(tmp_path / "list.csv", text)))
    (made,) = receipts.receipts(session)
    assert (made.lines_total, made.printed_total) == (3_000, printed)


def test_two_equal_lines_with_totals_of_their_own_are_no_difference(
    session: Session, tmp_path: Path
) -> None:
    row = "2016-03-05,Brandt,A7,sill,10.00,10.00\n"
    text = f"Date,Shop,Receipt number,Item,Amount,Printed total\n{row}{row}"
    bring_in(session, planned(session, csv_file(tmp_path / "list.csv", text)))
    (made,) = receipts.receipts(session)
    assert (made.lines_total, made.printed_total) == (2_000, 2_000)


def test_a_receipt_typed_in_before_is_already_there(session: Session, tmp_path: Path) -> None:
    receipts.record_receipt(session, receipt("brandt", "2016-03-05", line("x", 1_250)))
    found = planned(session, csv_file(tmp_path / "list.csv", LIST))
    assert (found.items[0].fate, found.items[0].why) == (Fate.LEAVE, "already there")
    assert found.items[0].match == receipts.receipts(session)[0].id


def test_a_bank_line_stands_in_for_a_lost_paper(session: Session, tmp_path: Path) -> None:
    lost = receipt("Brandt Panels", "2016-03-05", line("wing", 9_000), paper=Paper.LOST)
    receipts.record_receipt(session, lost)
    path = csv_file(tmp_path / "bank.csv", BANK)
    found = planned(session, path)
    assert found.source.is_bank
    assert [item.fate for item in found.items] == [Fate.STANDS_IN, Fate.LEAVE, Fate.LEAVE]
    made = bring_in(session, found)
    assert made.changes.label.endswith("1 bank line")
    (kept,) = receipts.receipts(session)
    assert kept.paper is Paper.LOST
    assert kept.stands_in.startswith("bank line of 8 March 2016, “BRANDT PANELS, card”, row 2")
    assert {item.fate for item in planned(session, path).items} == {Fate.LEAVE}
    history.undo(session)
    assert receipts.receipts(session)[0].stands_in == ""


def test_a_supplier_is_known_by_whole_words_of_a_bank_line(
    session: Session, tmp_path: Path
) -> None:
    for number, name in enumerate(("Ocer", "March", "Bank line", "unknown", "-", "Panels")):
        receipts.record_receipt(session, receipt(name, f"2009-01-0{number + 1}", line("x", 5)))
    found = planned(session, csv_file(tmp_path / "bank.csv", BANK))
    assert [item.why for item in found.items] == [
        "a supplier of the journal",
        "no receipt of this sum near this day",
        "money that came in",
    ]


def test_a_bank_line_becomes_a_receipt_where_the_person_says(
    session: Session, tmp_path: Path
) -> None:
    found = planned(session, csv_file(tmp_path / "bank.csv", BANK))
    assert found.coming_in().is_nothing
    bring_in(session, found, {1: Fate.NEW})
    (made,) = receipts.receipts(session)
    assert (made.supplier, made.lines_total, made.paper) == ("Grocer", 3_120, Paper.LOST)
    assert "bank line" in made.stands_in


def test_our_own_tables_go_out_and_come_in_alike(session: Session, tmp_path: Path) -> None:
    add_area(session, "Sill, left", [], "", parse("2016"))
    shares = work("2016-03-05", 210, "Nils", *[a.id for a in session.journal.areas.all()]).shares
    odd = receipt(
        "=Evil", "summer 2009", line("+x, “y”", -500), line("Post; a\nb", 1_250, shares=shares)
    )
    for one in (odd, receipt("Brandt", "2016-03", line("wing", 9_000, new_price=20_000))):
        receipts.record_receipt(session, one)
    hours.record_work(session, work("2016-03-05", 210, "Nils", note="weld"))
    export_tables(session, tmp_path / "out")
    with new_journal(tmp_path / "Second", Car("Halden Rook")) as other:
        add_area(other, "Sill, left", [], "", parse("2016"))
        for name, sheet in (("journal.xlsx", "lines"), ("work.csv", "")):
            found = planned(other, tmp_path / "out" / name, sheet)
            assert (found.refused, found.left_out, found.remarks) == ((), (), ())
            bring_in(other, found)
        assert planned(other, tmp_path / "out/lines.csv").coming_in().is_nothing
        assert _told(other) == _told(session)
        assert [replace(w, id=0) for w in hours.work(other)] == [
            replace(w, id=0) for w in hours.work(session)
        ]


def _told(session: Session) -> list[object]:
    return [
        (one.supplier, one.when, one.currency, [replace(ln, id=0) for ln in one.lines])
        for one in receipts.receipts(session)
    ]


def test_the_sheet_that_looks_like_a_list_is_proposed(session: Session, tmp_path: Path) -> None:
    sheet = open_sheet(session, messy(tmp_path / "old.xlsx"))
    assert sheet.grid.name == "Costs"
    assert sheet.names == ("Ideas", "Costs")
    assert sheet.proposal.decimals is not None


def test_areas_and_rates_that_are_missing_are_told(session: Session, tmp_path: Path) -> None:
    sheet = open_sheet(session, messy(tmp_path / "old.xlsx"))
    found = plan(session, sheet, replace(sheet.proposal.choices, decimals=Decimals.BOTH))
    said = " ".join(found.remarks)
    assert "“Sill, left” is no repair area here: 2 rows" in said
    assert "1 receipt in GBP without a rate" in said
    assert [told.row for told in found.refused] == [11, 12, 14]
    assert found.refused[0].text == "2017-02-11 · Fenwright · Gas · 1 · #REF!"


def test_what_is_settled_by_the_person_is_kept(session: Session, tmp_path: Path) -> None:
    text = "Date,Cost\n03/04/2016,1.234\n"
    sheet = open_sheet(session, csv_file(tmp_path / "a.csv", text))
    assert sheet.proposal.is_open
    said = replace(sheet.proposal.choices, dates=DayOrder.MDY, decimals=Decimals.COMMA)
    assert not ask_again(sheet, said).is_open
    (item,) = plan(session, sheet, said).items
    assert item.receipt is not None
    assert (item.receipt.when.edtf, item.receipt.lines_total) == ("2016-03-04", 123_400)


class _Stopping:
    def report(self, done: int, total: int, label: str) -> None: ...

    def checkpoint(self) -> None:
        raise Cancelled


def test_stopped_nothing_comes_in(session: Session, tmp_path: Path) -> None:
    found = planned(session, csv_file(tmp_path / "list.csv", LIST))
    with pytest.raises(Cancelled):
        bring_in(session, found, None, _Stopping())
    assert not receipts.receipts(session)


def test_an_unknown_currency_is_refused_and_absurd_rows_told(
    session: Session, tmp_path: Path
) -> None:
    sheet: OpenSheet = open_sheet(session, csv_file(tmp_path / "list.csv", LIST))
    with pytest.raises(JournalError, match="“XYZ” is not the three-letter code"):
        plan(session, sheet, replace(sheet.proposal.choices, currency="XYZ"))
    text = "Date,Qty,Cost,Rate\n2016-03-05,9999999,1.00,\n2016-03-05,1,1.00,0\n2016-03-05,1,2.00,\n"
    found = planned(session, csv_file(tmp_path / "a.csv", text))
    assert [told.row for told in found.refused] == [2, 3]
    assert found.coming_in().receipts == 1


@pytest.mark.parametrize(("name", "is_one"), [("a.CSV", True), ("a.ods", True), ("a.pdf", False)])
def test_spreadsheets_are_told_by_their_names(name: str, is_one: bool) -> None:
    assert is_sheet(Path(name)) is is_one
