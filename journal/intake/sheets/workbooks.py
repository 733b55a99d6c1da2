"""Workbooks (XLSX, ODS and what else calamine reads): their sheets and the values of their cells.

Calamine reads the values many times faster than openpyxl, but gives nothing for a cell with an
error; ``faults`` finds these in the file itself.
"""

import io
import math
import zipfile
from collections.abc import Iterable
from datetime import date, datetime, time, timedelta
from decimal import Decimal
from typing import Any

from journal.domain.errors import JournalError
from journal.domain.sheet_rows import MOST_COLUMNS, MOST_ROWS, BadCell, Cell
from journal.intake.sheets import faults

_ZIP, _COMPOUND = b"PK\x03\x04", b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1"
#: Unpacked, no list of what a car cost is larger than this, in bytes.
_MOST_UNPACKED = 1_000_000_000
#: Rows times columns of a sheet that is laid out in memory.
_MOST_CELLS = 20_000_000
#: Numbers in files are binary; fifteen digits of them are what a person typed.
_DIGITS = 15


def is_workbook(data: bytes) -> bool:
    """Whether bytes begin as a workbook does."""
    return data.startswith((_ZIP, _COMPOUND))


class Workbook:
    """An open workbook.

    Raises:
        JournalError: it is none, is damaged, or is locked with a password.
    """

    def __init__(self, data: bytes, name: str) -> None:
        from python_calamine import CalamineError, CalamineWorkbook, PasswordError, ZipError

        self._data, self._name = data, name
        _refuse_locked(data, name)
        _refuse_huge(data, name)
        try:
            self._book = CalamineWorkbook.from_filelike(io.BytesIO(data))
        except PasswordError as error:
            raise JournalError(_LOCKED.format(name)) from error
        except (CalamineError, ZipError, ValueError, OSError) as error:
            raise JournalError(
                f"“{name}” is no spreadsheet that can be read here, or it is damaged."
            ) from error

    @property
    def sheets(self) -> tuple[str, ...]:
        """The names of the sheets with cells, those that are shown first."""
        from python_calamine import SheetTypeEnum, SheetVisibleEnum

        cells = [s for s in self._book.sheets_metadata if s.typ is SheetTypeEnum.WorkSheet]
        cells.sort(key=lambda sheet: sheet.visible is not SheetVisibleEnum.Visible)
        return tuple(sheet.name for sheet in cells)

    def rows(self, sheet: str) -> tuple[list[list[Cell]], tuple[str, ...]]:
        """The cells of a sheet from its first row on, and remarks on what could not be kept.

        Raises:
            JournalError: the sheet can't be read, or is beyond all reason.
        """
        from python_calamine import CalamineError, XmlError, ZipError

        # Calamine lays out all the cells between the first and the last before it says how many.
        _refuse_large(*faults.extent(self._data, sheet), self._name)
        try:
            found = self._book.get_sheet_by_name(sheet)
            _refuse_large(found.total_height, found.total_width, self._name)
            raw = found.to_python(skip_empty_area=False)
            spans = found.merged_cell_ranges or ()
        except (CalamineError, XmlError, ZipError, ValueError, OSError) as error:
            raise JournalError(f"The sheet “{sheet}” of “{self._name}” is damaged.") from error
        rows = [[_cell(value) for value in row] for row in raw]
        marked = faults.faults(self._data, sheet)
        for (row, column), text in marked.bad.items():
            _put(rows, row, column, BadCell(text))
        _fill(rows, [*spans, *marked.spans])
        return rows, marked.remarks


_LOCKED = "“{}” is locked with a password; save a copy without one, and bring that in."


def _refuse_locked(data: bytes, name: str) -> None:
    if data.startswith(_COMPOUND) and "EncryptedPackage".encode("utf-16-le") in data:
        raise JournalError(_LOCKED.format(name))
    if data.startswith(_ZIP) and b"META-INF/manifest.xml" in data:
        try:
            with zipfile.ZipFile(io.BytesIO(data)) as parts:
                locked = b"encryption-data" in parts.read("META-INF/manifest.xml")
        except faults.BROKEN:
            return
        if locked:
            raise JournalError(_LOCKED.format(name))


def _refuse_huge(data: bytes, name: str) -> None:
    if not data.startswith(_ZIP):
        return
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as parts:
            size = sum(part.file_size for part in parts.infolist())
    except faults.BROKEN as error:
        raise JournalError(f"“{name}” is damaged: it breaks off, or was not all copied.") from error
    if size > _MOST_UNPACKED:
        raise JournalError(f"“{name}” unpacks to more than a spreadsheet of a car's costs can be.")


def _refuse_large(height: int, width: int, name: str) -> None:
    if height > MOST_ROWS:
        raise JournalError(
            f"“{name}” has {height:,} rows; more than {MOST_ROWS:,} can't be brought in at once."
        )
    if height * width > _MOST_CELLS:
        raise JournalError(f"“{name}” has {height:,} rows and {width:,} columns: that is no list.")


def _cell(value: Any) -> Cell:
    if value is None or value == "":
        return None
    if isinstance(value, bool | str | date | datetime | time | timedelta):
        return value
    if isinstance(value, float) and not math.isfinite(value):
        return BadCell("#NUM!")
    if isinstance(value, int | float):
        return Decimal(f"{value:.{_DIGITS}g}")
    return str(value)


def _put(rows: list[list[Cell]], row: int, column: int, cell: Cell) -> None:
    """Put a cell in its place, which may lie beyond the last value."""
    if row >= MOST_ROWS or column >= MOST_COLUMNS:
        return
    rows.extend([] for _ in range(row + 1 - len(rows)))
    rows[row].extend([None] * (column + 1 - len(rows[row])))
    rows[row][column] = cell


def _fill(rows: list[list[Cell]], spans: Iterable[tuple[tuple[int, int], tuple[int, int]]]) -> None:
    """Words and dates merged over several rows hold for each of them; a number counts once."""
    for (top, left), (bottom, _) in spans:
        if bottom == top or top >= len(rows) or left >= len(rows[top]):
            continue
        value = rows[top][left]
        if value is None or isinstance(value, bool | Decimal | timedelta | time | BadCell):
            continue
        for row in rows[top + 1 : bottom + 1]:
            if left < len(row) and row[left] is None:
                row[left] = value
