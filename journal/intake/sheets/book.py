"""One file of tables, whatever it is written in, opened to choose a sheet from."""

from pathlib import Path

from journal.domain.errors import JournalError
from journal.domain.sheet_rows import MOST_COLUMNS, MOST_ROWS, Cell, Grid
from journal.intake.sheets import delimited
from journal.intake.sheets.workbooks import Workbook, is_workbook

#: No list of what a car cost is larger, in bytes.
_MOST_BYTES = 200_000_000
_STARTS = {b"%PDF": "a PDF", b"\xff\xd8\xff": "a picture", b"\x89PNG": "a picture"}


class Book:
    """A file with its sheets.

    Raises:
        JournalError: it can't be read, holds no table, or is locked.
    """

    def __init__(self, path: Path) -> None:
        self.path = path
        data = _content(path)
        self._book = Workbook(data, path.name) if is_workbook(data) else None
        self._text = "" if self._book else _text(data, path.name)
        if not self.sheets:
            raise JournalError(f"“{path.name}” has no sheet with cells.")

    @property
    def sheets(self) -> tuple[str, ...]:
        """The names of its sheets; a file of plain text is one sheet of the file's name."""
        return self._book.sheets if self._book else (self.path.stem,)

    def grid(self, sheet: str = "") -> Grid:
        """The cells of a sheet, the first one where none is named.

        Raises:
            JournalError: there is no such sheet, it is empty, or is beyond all reason.
        """
        name = sheet or self.sheets[0]
        if name not in self.sheets:
            named = ", ".join(f"“{one}”" for one in self.sheets[:20])
            raise JournalError(f"“{self.path.name}” has no sheet “{name}”; it has {named}.")
        remarks: tuple[str, ...] = ()
        if self._book:
            raw, remarks = self._book.rows(name)
            rows = [_cut(row) for row in raw]
        else:
            rows = self._records()
        while rows and not rows[-1]:
            rows.pop()
        if not rows:
            where = f"The sheet “{name}” of “{self.path.name}”" if sheet else f"“{self.path.name}”"
            raise JournalError(f"{where} is empty.")
        if max(map(len, rows)) > MOST_COLUMNS:
            raise JournalError(
                f"“{self.path.name}” has more than {MOST_COLUMNS} columns; that is no list."
            )
        return Grid(name, tuple(rows), remarks)

    def _records(self) -> list[tuple[Cell, ...]]:
        rows: list[tuple[Cell, ...]] = []
        for record in delimited.records(self._text, self.path.name):
            rows.append(_cut([cell.strip() or None for cell in record]))
            if len(rows) > MOST_ROWS:
                raise JournalError(
                    f"“{self.path.name}” has more than {MOST_ROWS:,} rows; bring it in by parts."
                )
        return rows


def _content(path: Path) -> bytes:
    try:
        if path.stat().st_size > _MOST_BYTES:
            raise JournalError(f"“{path.name}” is larger than a list of a car's costs can be.")
        data = path.read_bytes()
    except OSError as error:
        raise JournalError(f"“{path.name}” can't be read: {error.strerror or error}.") from error
    if not data.strip():
        raise JournalError(f"“{path.name}” is empty.")
    for start, kind in _STARTS.items():
        if data.startswith(start):
            raise JournalError(f"“{path.name}” is {kind}, no spreadsheet.")
    return data


def _text(data: bytes, name: str) -> str:
    text = delimited.decoded(data, name)
    odd = sum(not (letter.isprintable() or letter.isspace()) for letter in text[:4_000])
    if odd * 20 > min(len(text), 4_000):
        raise JournalError(f"“{name}” is no spreadsheet: it is neither text nor a workbook.")
    return text


def _cut(row: list[Cell]) -> tuple[Cell, ...]:
    """A row without the empty cells at its end."""
    end = len(row)
    while end and row[end - 1] in (None, ""):
        end -= 1
    return tuple(row[:end])
