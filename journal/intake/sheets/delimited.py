"""Tables in plain text (CSV and its kin): their encoding, their mark between cells, their rows."""

import codecs
import csv
import io
import re
from collections import Counter
from collections.abc import Iterable, Iterator

from journal.domain.errors import JournalError

_MARKS = ",;\t|"
_SAMPLED_ROWS = 200
_SAMPLED_BYTES = 65_536
_BYTE_ORDERS = (
    (codecs.BOM_UTF8, "utf-8-sig"),
    (codecs.BOM_UTF32_LE, "utf-32"),
    (codecs.BOM_UTF32_BE, "utf-32"),
    (codecs.BOM_UTF16_LE, "utf-16"),
    (codecs.BOM_UTF16_BE, "utf-16"),
)
#: A first line that names the mark between cells, as some spreadsheets write and read.
_SEPARATOR_LINE = re.compile(r"sep=(.)\r?\n", re.IGNORECASE)
#: No cell of a list is longer; without a limit an open quote swallows the whole file.
_LONGEST_CELL = 100_000


def decoded(data: bytes, name: str) -> str:
    """The text of a file, in the encoding that its bytes are in.

    Raises:
        JournalError: it is no text.
    """
    for mark, encoding in _BYTE_ORDERS:
        if data.startswith(mark):
            return _strict(data, encoding, name)
    if b"\0" in data:
        raise JournalError(f"“{name}” is no spreadsheet: it is neither text nor a workbook.")
    try:
        return data.decode("utf-8")
    except UnicodeDecodeError:
        return data.decode(_guessed(data), errors="replace")


def _strict(data: bytes, encoding: str, name: str) -> str:
    try:
        return data.decode(encoding)
    except UnicodeDecodeError as error:
        raise JournalError(f"“{name}” is damaged: its text breaks off or is mixed up.") from error


def _guessed(data: bytes) -> str:
    """The likeliest encoding of a text that is not UTF-8.

    Only lines with other letters than English ones tell anything. The code page of Western Europe
    is what old lists are in, where nothing speaks against it.
    """
    from charset_normalizer import from_bytes

    telling = b"\n".join(line for line in data.splitlines() if any(byte > 0x7F for byte in line))[
        :_SAMPLED_BYTES
    ]
    western = telling.decode("cp1252", errors="replace")
    if "\ufffd" not in western and _is_plain_western(western):
        return "cp1252"
    best = from_bytes(telling).best()
    return best.encoding if best is not None else "cp1252"


def _is_plain_western(text: str) -> bool:
    """Whether the letters beyond English are those that Western languages use, inside words."""
    others = [letter for letter in text if ord(letter) > 0x7F]
    usual = sum(
        letter in "äöüÄÖÜßéèêëàâáçñåÅøØæÆôîïûùóíúœ£€§°²³µ´–—’‘“”„…\xa0×½¼¾" for letter in others
    )
    return usual >= 0.9 * len(others)


def records(text: str, name: str) -> Iterator[list[str]]:
    """The records of a table in text, blank lines as empty ones; quotes as RFC 4180 has them.

    Raises:
        JournalError: a cell is beyond all reason, as behind a quote that is never closed.
    """
    found = _SEPARATOR_LINE.match(text)
    if found:
        yield []
        yield from _read(text[found.end() :], found[1], name)
        return
    yield from _read(text, _mark(text), name)


def _read(text: str, mark: str, name: str) -> Iterator[list[str]]:
    before = csv.field_size_limit(_LONGEST_CELL)
    try:
        yield from csv.reader(io.StringIO(text, newline=""), delimiter=mark)
    except csv.Error as error:
        raise JournalError(
            f"“{name}” can't be read as a table: a quotation mark is opened and never closed, or a"
            f" cell is longer than {_LONGEST_CELL:,} letters."
        ) from error
    finally:
        csv.field_size_limit(before)


def _mark(text: str) -> str:
    """The mark between cells: the one that parts most rows into the same number of cells."""
    return max(_MARKS, key=lambda mark: _evenness(_sampled(text, mark)))


def _sampled(text: str, mark: str) -> Iterable[int]:
    rows = csv.reader(io.StringIO(text[:_SAMPLED_BYTES], newline=""), delimiter=mark)
    widths: list[int] = []
    try:
        for row in rows:
            if len(widths) == _SAMPLED_ROWS:
                break
            if any(row):
                widths.append(len(row))
    except csv.Error:
        pass
    return widths


def _evenness(widths: Iterable[int]) -> tuple[int, int]:
    """How many rows have the commonest number of cells above one, and that number."""
    counted = Counter(width for width in widths if width > 1)
    if not counted:
        return 0, 0
    width, rows = counted.most_common(1)[0]
    return rows, width
