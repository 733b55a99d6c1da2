"""Spreadsheets made for tests: an invented messy list, and plain ones in every format."""

import io
from collections.abc import Sequence
from datetime import date, datetime, time, timedelta
from decimal import Decimal
from pathlib import Path
from typing import Any

from openpyxl import Workbook

from journal.domain.sheet_rows import Cell, Grid

#: An old list as people keep it: titles, merged days, errors, blanks, words, both marks, a total.
MESSY: tuple[tuple[Any, ...], ...] = (
    ("Halden Rook, what it cost", None, None, None, None, None, None),
    ("kept by Nils, some of it from memory",),
    (),
    ("Date", "Bought from", "Item", "Qty", "Price", "New/used", "For", "Receipt?"),
    (date(2016, 3, 5), "Brandt Panels", "Sill, outer", 2, 149.9, "new", "Sill, left", "yes"),
    (None, None, "Sheet steel 1 mm", 1, "37,00", "new", "Sill, left", "yes"),
    (date(2016, 3, 19), "Yard on Mill Lane", "Front wing", 1, "1.090,50", "used", "Wing", "no"),
    (),
    ("2017",),
    (date(2017, 1, 4), "Fenwright", "Welding wire", 1, "24.50", "new", None, None),
    (date(2017, 2, 11), "Fenwright", "Gas", 1, "#REF!", None, None, None),
    ("some day in May", "Fenwright", "Grinding discs", 5, 19, "new", None, "lost"),
    (date(2017, 6, 30), "Harbour Forge", "Bracket sent back", 1, "-12,00", "new", None, "x"),
    (date(2017, 7, 8), "Harbour Forge", "Brackets", 3, "1.250", "worn", None, "maybe"),
    (date(2017, 8, 1), "Fenwright", "Primer", 1, "£18.00", "new", None, None),
    (None, None, "TOTAL", None, "=SUM(E5:E15)", None, None, None),
)  # fmt: skip


def messy(path: Path) -> Path:
    """The messy list as XLSX, with another sheet before it and its days merged over two rows."""
    book = Workbook()
    book.active.title = "Ideas"
    book.active.append(["Paint it green?"])
    page = book.create_sheet("Costs")
    for row in MESSY:
        page.append(row)
    page["E16"] = 1400  # as a formula's value is kept, and not what the rows come to
    page.merge_cells("A1:H1")
    page.merge_cells("A5:A6")
    page.merge_cells("B5:B6")
    book.save(path)
    return path


def xlsx(path: Path, rows: Sequence[Sequence[Any]], sheet: str = "Costs") -> Path:
    """Rows as a workbook by openpyxl."""
    book = Workbook(write_only=True)
    page = book.create_sheet(sheet)
    for row in rows:
        page.append(list(row))
    book.save(path)
    return path


def ods(path: Path, rows: Sequence[Sequence[Any]], sheet: str = "Costs") -> Path:
    """Rows as an OpenDocument spreadsheet by odfpy."""
    from odf.opendocument import OpenDocumentSpreadsheet
    from odf.table import Table, TableCell, TableRow
    from odf.text import P

    book = OpenDocumentSpreadsheet()
    table = Table(name=sheet)
    for row in rows:
        line = TableRow()
        for value in row:
            cell = TableCell(**_typed(value))
            if value is not None:
                cell.addElement(P(text=str(value)))
            line.addElement(cell)
        table.addElement(line)
    book.spreadsheet.addElement(table)
    book.save(str(path))
    return path


def _typed(value: Any) -> dict[str, str]:
    if value is None:
        return {}
    if isinstance(value, bool):
        return {"valuetype": "boolean", "booleanvalue": str(value).lower()}
    if isinstance(value, int | float | Decimal):
        return {"valuetype": "float", "value": str(value)}
    if isinstance(value, date | datetime):
        return {"valuetype": "date", "datevalue": value.isoformat()}
    if isinstance(value, time | timedelta):
        seconds = int(value.total_seconds()) if isinstance(value, timedelta) else value.hour * 3600
        return {
            "valuetype": "time",
            "timevalue": f"PT{seconds // 3600:02}H{seconds // 60 % 60:02}M00S",
        }
    return {"valuetype": "string"}


def csv_file(path: Path, text: str, encoding: str = "utf-8") -> Path:
    """A text as a file."""
    path.write_bytes(io.StringIO(text, newline="").getvalue().encode(encoding))
    return path


def grid(*rows: Sequence[Any]) -> Grid:
    """Rows as a sheet, with numbers as a workbook gives them."""

    def cell(value: Any) -> Cell:
        is_number = isinstance(value, int | float) and not isinstance(value, bool)
        made: Cell = Decimal(str(value)) if is_number else (None if value == "" else value)
        return made

    return Grid("Costs", tuple(tuple(cell(value) for value in row) for row in rows))
