"""Files of tables opened: encodings, marks between cells, workbooks alike, and what is refused."""

import io
import zipfile
from datetime import date, datetime
from decimal import Decimal
from pathlib import Path

import openpyxl
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from journal.domain.errors import JournalError
from journal.domain.sheet_rows import MOST_ROWS, BadCell
from journal.intake.sheets.book import Book
from journal.intake.sheets.delimited import decoded, records
from tests.intake.sheets.drawn import csv_file, messy, ods, xlsx

#: RFC 4180 (October 2005), section 2, rules 1, 2, 5, 6 and 7 with their own examples.
RFC_4180 = (
    ("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n", [["aaa", "bbb", "ccc"], ["zzz", "yyy", "xxx"]]),
    ("aaa,bbb,ccc\r\nzzz,yyy,xxx", [["aaa", "bbb", "ccc"], ["zzz", "yyy", "xxx"]]),
    ('"aaa","bbb","ccc"\r\nzzz,yyy,xxx', [["aaa", "bbb", "ccc"], ["zzz", "yyy", "xxx"]]),
    ('"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx', [["aaa", "b\r\nbb", "ccc"], ["zzz", "yyy", "xxx"]]),
    ('"aaa","b""bb","ccc"', [["aaa", 'b"bb', "ccc"]]),
)


@pytest.mark.parametrize(("text", "rows"), RFC_4180)
def test_the_examples_of_rfc_4180_are_read(text: str, rows: list[list[str]]) -> None:
    assert list(records(text, "x.csv")) == rows


@pytest.mark.parametrize("mark", [",", ";", "\t", "|"])
@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "cp1252", "utf-16", "utf-32"])
def test_mark_and_encoding_are_found(tmp_path: Path, mark: str, encoding: str) -> None:
    rows = ["Datum|Händler|Was|Betrag", "05.03.2016|Müller & Söhne|Türschloß, links|1.234,56"]
    text = "\r\n".join(line.replace("|", mark) for line in rows)
    if mark == ",":
        text = text.replace("Türschloß, links", '"Türschloß, links"')
        text = text.replace("1.234,56", '"1.234,56"')
    grid = Book(csv_file(tmp_path / "liste.csv", text, encoding)).grid()
    assert grid.rows[1] == ("05.03.2016", "Müller & Söhne", "Türschloß, links", "1.234,56")


def test_other_code_pages_are_told_by_their_letters() -> None:
    text = "Datum;Sklep;Opis;Kwota\n" + "".join(
        f"{day:02}.03.2016;Żółw i Synowie;Łożysko koła przedniego, śruba zęba;{day},50\n"
        for day in range(1, 20)
    )
    assert decoded(text.encode("cp1250"), "lista.csv") == text


def test_a_line_that_names_the_mark_is_no_row_of_the_table() -> None:
    assert list(records("sep=|\r\na|b;c\r\n", "x.csv")) == [[], ["a", "b;c"]]


VALUES = (
    ("Date", "Supplier", "Amount", "Paid", "Note"),
    (date(2016, 3, 5), "Müller", 12.5, True, None),
    (datetime(2017, 1, 2, 14, 30), "Fenwright", Decimal("1090.10"), False, "=not run"),
    (None, None, None, None, None),
    (date(2018, 12, 31), "  two words ", -3, None, "end"),
)


def test_xlsx_by_openpyxl_and_ods_by_odfpy_read_alike(tmp_path: Path) -> None:
    book = openpyxl.Workbook()
    for number, row in enumerate(VALUES, 1):
        for place, value in enumerate(row, 1):
            cell = book.active.cell(number, place, value)
            if isinstance(value, str):
                cell.data_type = "s"
    book.active.title = "Costs"
    book.save(tmp_path / "a.xlsx")
    one = Book(tmp_path / "a.xlsx").grid()
    other = Book(ods(tmp_path / "a.ods", VALUES)).grid()
    assert one.rows == other.rows
    assert one.rows[2][2] == Decimal("1090.1")
    assert one.rows[3] == ()


def test_merged_words_hold_for_all_rows_and_errors_are_kept(tmp_path: Path) -> None:
    book = Book(messy(tmp_path / "old.xlsx"))
    assert book.sheets == ("Ideas", "Costs")
    rows = book.grid("Costs").rows
    assert rows[5][:2] == (date(2016, 3, 5), "Brandt Panels")
    assert rows[10][4] == BadCell("#REF!")


def test_merged_rows_and_errors_of_ods(tmp_path: Path) -> None:
    from odf.opendocument import OpenDocumentSpreadsheet
    from odf.table import CoveredTableCell, Table, TableCell, TableRow
    from odf.text import P

    book, table = OpenDocumentSpreadsheet(), Table(name="Costs")
    first, second = TableRow(), TableRow()
    supplier = TableCell(valuetype="string", numberrowsspanned=2, numbercolumnsspanned=1)
    supplier.addElement(P(text="Brandt"))
    sums = [TableCell(valuetype="float", value=str(amount)) for amount in (5, 7)]
    for row, cells in ((first, (supplier, sums[0])), (second, (CoveredTableCell(), sums[1]))):
        for cell in cells:
            row.addElement(cell)
        table.addElement(row)
    book.spreadsheet.addElement(table)
    book.save(str(tmp_path / "m.ods"))
    assert Book(tmp_path / "m.ods").grid().rows == (("Brandt", Decimal(5)), ("Brandt", Decimal(7)))


def test_a_number_merged_over_rows_counts_once(tmp_path: Path) -> None:
    book = openpyxl.Workbook()
    book.active.append(["a", 90])
    book.active.append(["b", None])
    book.active.merge_cells("B1:B2")
    book.save(tmp_path / "m.xlsx")
    assert Book(tmp_path / "m.xlsx").grid().rows == (("a", Decimal(90)), ("b",))


def test_a_formula_gives_its_value_and_one_never_worked_out_says_so(tmp_path: Path) -> None:
    book = openpyxl.Workbook()
    book.active.append(["2016-03-05", "=1+1"])
    book.save(tmp_path / "f.xlsx")
    grid = Book(tmp_path / "f.xlsx").grid()
    assert isinstance(grid.rows[0][1], BadCell)
    assert "save it there" in grid.remarks[0]
    kept = _with_value(tmp_path / "f.xlsx", b"<v></v>", b"<v>2</v>")
    assert Book(kept).grid().rows[0][1] == Decimal(2)


def _with_value(path: Path, old: bytes, new: bytes) -> Path:
    """The workbook as a spreadsheet program keeps it, with a formula's value beside it."""
    made = io.BytesIO()
    with zipfile.ZipFile(path) as parts, zipfile.ZipFile(made, "w") as copy:
        for name in parts.namelist():
            data = parts.read(name)
            copy.writestr(name, data.replace(old, new).replace(b"<v />", new))
    path.write_bytes(made.getvalue())
    return path


_LOCKED = b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1" + bytes(600) + "EncryptedPackage".encode("utf-16-le")


@pytest.mark.parametrize(
    ("name", "data", "words"),
    [
        ("a.csv", b"", "is empty"),
        ("a.csv", b" \r\n\r\n", "is empty"),
        ("a.csv", b",,,\r\n,,\r\n", "is empty"),
        ("a.csv", b"%PDF-1.7 ...", "is a PDF"),
        ("a.csv", b"\x89PNG\r\n\x1a\n....", "is a picture"),
        ("a.csv", b"\x00\x01\x02\x03" * 40, "no spreadsheet"),
        ("a.csv", bytes(range(1, 32)) * 40, "no spreadsheet"),
        ("a.csv", b"\xff\xfea", "damaged"),
        ("a.csv", b'a,"b\n' + b"c,d\n" * 40_000, "never closed"),
        ("a.xlsx", b"PK\x03\x04" + b"junk" * 99, "damaged"),
        ("a.xlsx", _LOCKED, "locked with a password"),
        ("a.csv", ("x," * 300).encode(), "columns"),
        ("a.csv", b"2016-03-05,1\n" * (MOST_ROWS + 1), "rows"),
    ],
)
def test_what_is_no_spreadsheet_is_said_in_a_sentence(
    tmp_path: Path, name: str, data: bytes, words: str
) -> None:
    (tmp_path / name).write_bytes(data)
    with pytest.raises(JournalError, match=words) as told:
        Book(tmp_path / name).grid()
    assert str(told.value).endswith(".")


def test_a_locked_document_is_named_as_locked(tmp_path: Path) -> None:
    with zipfile.ZipFile(tmp_path / "a.ods", "w") as parts:
        parts.writestr("mimetype", "application/vnd.oasis.opendocument.spreadsheet")
        parts.writestr("META-INF/manifest.xml", "<m><encryption-data/></m>")
    with pytest.raises(JournalError, match="locked"):
        Book(tmp_path / "a.ods")


def test_a_sheet_that_reaches_over_the_world_is_refused_unread(tmp_path: Path) -> None:
    book = openpyxl.Workbook()
    book.active["A1"] = "x"
    book.active["XFD1048576"] = "y"
    book.save(tmp_path / "far.xlsx")
    with pytest.raises(JournalError, match="rows"):
        Book(tmp_path / "far.xlsx").grid()


def test_a_missing_file_and_a_missing_sheet_are_named(tmp_path: Path) -> None:
    with pytest.raises(JournalError, match=r"“gone\.csv” can't be read"):
        Book(tmp_path / "gone.csv")
    with pytest.raises(JournalError, match="has no sheet “Other”; it has “Costs”"):
        Book(xlsx(tmp_path / "a.xlsx", [["x", 1]])).grid("Other")


@settings(max_examples=60, deadline=None)
@given(
    st.binary(max_size=400),
    st.sampled_from([b"", b"PK\x03\x04", b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1"]),
)
def test_any_bytes_are_read_or_refused_in_words(
    tmp_path_factory: pytest.TempPathFactory, data: bytes, start: bytes
) -> None:
    path = tmp_path_factory.getbasetemp() / "any.csv"
    path.write_bytes(start + data)
    try:
        Book(path).grid()
    except JournalError as told:
        assert str(told).endswith(".")  # noqa: PT017 - either outcome is right
