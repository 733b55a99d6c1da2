"""What a workbook's file says beyond values: errors, formulas never worked out, merging."""

import io
import re
import zipfile
import zlib
from collections.abc import Iterator
from dataclasses import dataclass, field
from xml.etree import ElementTree as ET

_NOT_WORKED_OUT = "a formula without its value"
_REMARK = (
    "Some formulas have no value in the file; open it in a spreadsheet program and save it there."
)
_MAIN = "{http://schemas.openxmlformats.org/spreadsheetml/2006/main}"
_ID = "{http://schemas.openxmlformats.org/officeDocument/2006/relationships}id"
_CELL = re.compile(rb'<c r="([A-Z]{1,3})([0-9]{1,7})"([^>]*[^/>])?>(.*?)</c>', re.DOTALL)
#: A cell of every column, and the last ones of the rows.
_EDGES = re.compile(rb'<c r="([A-Z]{1,3})([0-9]{1,7})"')
#: A sheet that reaches over fewer cells is harmless, filled or not.
_PLAIN_SIZE = 10_000_000
_VALUE = re.compile(rb"<v[^>]*>([^<]+)</v>")
_TABLE = "{urn:oasis:names:tc:opendocument:xmlns:table:1.0}"
_TEXT = "{urn:oasis:names:tc:opendocument:xmlns:text:1.0}"
_CALC = "{urn:org:documentfoundation:names:experimental:calc:xmlns:calcext:1.0}"

#: What a damaged package makes the libraries that read it raise.
BROKEN = (
    zipfile.BadZipFile, zlib.error, ET.ParseError, KeyError, OSError, ValueError, RuntimeError,
    EOFError,
)  # fmt: skip

Place = tuple[int, int]
Span = tuple[Place, Place]


@dataclass(frozen=True, slots=True)
class Faults:
    """Cells (row, column from 0) without a value and why, and ranges of merged cells."""

    bad: dict[Place, str] = field(default_factory=dict)
    spans: tuple[Span, ...] = ()
    remarks: tuple[str, ...] = ()


def faults(data: bytes, sheet: str) -> Faults:
    """What is to be known of a sheet; nothing where the file isn't built as it should be."""
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as parts:
            if "content.xml" in parts.namelist():
                return _of_document(parts.read("content.xml"), sheet)
            part = _part(parts, sheet)
            return _of_workbook(parts.read(part)) if part else Faults()
    except BROKEN:
        return Faults()


def extent(data: bytes, sheet: str) -> Place:
    """How many rows and columns the filled cells of an XLSX sheet reach over; 0 where not told."""
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as parts:
            part = _part(parts, sheet) if "xl/workbook.xml" in parts.namelist() else ""
            xml = parts.read(part) if part else b""
    except BROKEN:
        return 0, 0
    rows = columns = 0
    for letters, number in set(_EDGES.findall(xml)):
        rows, columns = max(rows, int(number)), max(columns, _column(letters) + 1)
    if rows * columns < _PLAIN_SIZE:
        return rows, columns
    filled = [found for found in _CELL.finditer(xml) if found[4].strip()]
    rows = max((int(found[2]) for found in filled), default=0)
    return rows, max((_column(found[1]) + 1 for found in filled), default=0)


def _part(parts: zipfile.ZipFile, sheet: str) -> str:
    """The file that holds a sheet of an XLSX workbook."""
    book = ET.fromstring(parts.read("xl/workbook.xml"))
    ids = {one.get("name"): one.get(_ID) for one in book.iter(f"{_MAIN}sheet")}
    for one in ET.fromstring(parts.read("xl/_rels/workbook.xml.rels")):
        if one.get("Id") == ids.get(sheet):
            target = str(one.get("Target"))
            return target.lstrip("/") if target.startswith("/") else f"xl/{target}"
    return ""


def _of_workbook(xml: bytes) -> Faults:
    if b't="e"' not in xml and b"<f" not in xml:
        return Faults()
    bad: dict[Place, str] = {}
    for found in _CELL.finditer(xml):
        kind, inside = found[3] or b"", found[4]
        value = _VALUE.search(inside)
        if b't="e"' in kind:
            text = value[1].decode(errors="replace") if value else "#ERROR"
        elif b"<f" in inside and value is None and b' t="' not in kind:
            text = _NOT_WORKED_OUT
        else:
            continue
        bad[int(found[2]) - 1, _column(found[1])] = text
    return Faults(bad, (), (_REMARK,) if _NOT_WORKED_OUT in bad.values() else ())


def _column(letters: bytes) -> int:
    place = 0
    for letter in letters:
        place = place * 26 + letter - ord("A") + 1
    return place - 1


def _of_document(xml: bytes, sheet: str) -> Faults:
    if b"number-rows-spanned" not in xml and b'"error"' not in xml:
        return Faults()
    bad: dict[Place, str] = {}
    spans: list[Span] = []
    for table in ET.fromstring(xml).iter(f"{_TABLE}table"):
        if table.get(f"{_TABLE}name") != sheet:
            continue
        for place, cell in _cells(table):
            if cell.get(f"{_CALC}value-type") == "error":
                said = cell.find(f"{_TEXT}p")
                bad[place] = ("" if said is None else "".join(said.itertext())) or "#ERROR"
            down = int(cell.get(f"{_TABLE}number-rows-spanned", "1"))
            if down > 1:
                spans.append((place, (place[0] + down - 1, place[1])))
    return Faults(bad, tuple(spans))


def _cells(table: ET.Element) -> Iterator[tuple[Place, ET.Element]]:
    row = 0
    for line in table.iter(f"{_TABLE}table-row"):
        column = 0
        for cell in line:
            yield (row, column), cell
            column += int(cell.get(f"{_TABLE}number-columns-repeated", "1"))
        row += int(line.get(f"{_TABLE}number-rows-repeated", "1"))
