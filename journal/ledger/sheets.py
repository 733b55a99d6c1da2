"""The record as tables that any spreadsheet opens: headings and rows, then CSV, XLSX and JSON."""

import csv
import io
import json
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import Any

from journal.domain.ids import AreaId
from journal.domain.money import minor_units
from journal.domain.private_words import Private
from journal.domain.receipts import Receipt, Share
from journal.domain.record import Record
from journal.domain.wanted import Wanted
from journal.domain.when import When
from journal.domain.work import BASIS_WORDS
from journal.ledger.proof_rows import CLAIMS, PAIRS, VIEWS, claim_rows, pair_rows, view_rows
from journal.ledger.survey_rows import FINDINGS, SURVEYS, finding_rows, survey_rows
from journal.ledger.worth_rows import (
    COMPARABLES,
    INDEX_VALUES,
    VALUATIONS,
    comparable_rows,
    index_rows,
    valuation_rows,
)

Cell = str | int | Decimal | None

#: A text cell that begins so would be taken for a formula, and run, by the program that opens it.
_FORMULA_STARTS = ("=", "+", "-", "@", "\t", "\r")


@dataclass(frozen=True, slots=True)
class Sheet:
    """One table: a name, headings, and rows of as many cells."""

    name: str
    headings: tuple[str, ...]
    rows: tuple[tuple[Cell, ...], ...]


def sheets(record: Record) -> tuple[Sheet, ...]:
    """Every table of the record. Money is in whole units with decimals, dates are EDTF.

    In a record that prices are withheld from, the cells of money are empty.
    """
    made = _all_sheets(record)
    return tuple(map(_without_money, made)) if Private.PRICES in record.withheld else made


def _without_money(sheet: Sheet) -> Sheet:
    kept = [name in _NO_MONEY for name in sheet.headings]
    rows = tuple(
        tuple(
            cell if keep or not isinstance(cell, Decimal) else None
            for cell, keep in zip(row, kept, strict=True)
        )
        for row in sheet.rows
    )
    return Sheet(sheet.name, sheet.headings, rows)


def _all_sheets(record: Record) -> tuple[Sheet, ...]:
    areas = {area.id: area.name for area in record.areas}
    labels = {panel.id: panel.label for panel in record.drawing.panels}
    return (
        _sheet("receipts", _RECEIPTS, record.receipts, _receipt),
        Sheet("lines", _LINES, tuple(_lines(record.receipts, areas))),
        Sheet("work", _WORK, tuple(_work(record, areas))),
        Sheet("people", _PEOPLE, tuple(_people(record))),
        Sheet("areas", _AREAS, tuple(_areas(record, labels))),
        Sheet("stages", ("area", "area id", "stage", "date", "note"), tuple(_stages(record))),
        Sheet("entries", _ENTRIES, tuple(_entries(record, areas, labels))),
        _sheet("wanted", _WANTED, record.wanted, lambda part: _wanted(part, record, areas, labels)),
        Sheet("wanted states", _WANTED_STATES, tuple(_wanted_states(record))),
        Sheet("sightings", _SIGHTINGS, tuple(_sightings(record))),
        Sheet("surveys", SURVEYS, tuple(survey_rows(record))),
        Sheet("findings", FINDINGS, tuple(finding_rows(record, areas, labels))),
        Sheet("valuations", VALUATIONS, tuple(valuation_rows(record))),
        Sheet("comparables", COMPARABLES, tuple(comparable_rows(record))),
        Sheet("price indices", INDEX_VALUES, tuple(index_rows(record))),
        Sheet("milestones", ("kind", "date", "note"), tuple(_milestones(record))),
        Sheet("photos", _PHOTOS, tuple(_photos(record, labels))),
        Sheet("claims", CLAIMS, tuple(claim_rows(record, areas))),
        Sheet("pairs", PAIRS, tuple(pair_rows(record, areas))),
        Sheet("standard views", VIEWS, tuple(view_rows(record))),
    )  # fmt: skip


#: Columns of decimals that are no money.
_NO_MONEY = frozenset({"quantity", "rate", "value"})


_RECEIPTS = (
    "id", "date", "supplier", "currency", "rate", "lines total", "printed total", "tax", "paper",
    "stands in", "refund of", "note", "papers sha256",
)  # fmt: skip
_LINES = (
    "receipt id", "line id", "date", "supplier", "text", "quantity", "amount", "currency",
    "category", "condition", "new price", "spread", "areas",
)  # fmt: skip
_ENTRIES = ("id", "date", "text", "area", "panel")
_WORK = ("id", "date", "person", "minutes", "note", "areas", "known by")
_PEOPLE = ("name", "kind", "rate an hour", "currency", "note")
_AREAS = ("id", "name", "panels", "stage", "found", "done", "cautions")
_WANTED = (
    "id", "text", "quantity", "panel", "area", "category", "condition", "price limit",
    "new price", "currency", "state", "since", "receipt id", "line id", "note",
)  # fmt: skip
_WANTED_STATES = ("wanted id", "text", "state", "date", "note")
_SIGHTINGS = ("id", "wanted id", "text", "place", "price", "currency", "date", "note")
_PHOTOS = (
    "id", "name", "taken", "earliest", "latest", "known by", "camera", "caption", "panels",
    "damage", "sha256",
)  # fmt: skip


def _sheet(
    name: str,
    headings: tuple[str, ...],
    things: Sequence[Any],
    row: Callable[[Any], tuple[Cell, ...]],
) -> Sheet:
    return Sheet(name, headings, tuple(row(thing) for thing in things))


def _receipt(receipt: Receipt) -> tuple[Cell, ...]:
    def money(minor: int | None) -> Decimal | None:
        return _money(minor, receipt.currency)

    return (
        receipt.id, receipt.when.edtf, receipt.supplier, receipt.currency, receipt.rate,
        money(receipt.lines_total), money(receipt.printed_total), money(receipt.tax),
        receipt.paper.value, receipt.stands_in, receipt.refund_of, receipt.note,
        " ".join(receipt.papers),
    )  # fmt: skip


def _lines(receipts: Sequence[Receipt], areas: Mapping[AreaId, str]) -> Iterator[tuple[Cell, ...]]:
    for receipt in receipts:
        for line in receipt.lines:
            yield (
                receipt.id, line.id, receipt.when.edtf, receipt.supplier, line.text, line.quantity,
                _money(line.amount, receipt.currency), receipt.currency, line.category.value,
                line.condition.value, _money(line.new_price, receipt.currency), line.spread.value,
                _shares(line.shares, areas),
            )  # fmt: skip


def _work(record: Record, areas: Mapping[AreaId, str]) -> Iterator[tuple[Cell, ...]]:
    for work in record.work:
        shares = _shares(work.shares, areas)
        known = BASIS_WORDS[work.basis] or work.basis.value
        yield work.id, work.when.edtf, work.person, work.minutes, work.note, shares, known


def _people(record: Record) -> Iterator[tuple[Cell, ...]]:
    currency = record.car.currency
    for person in record.people:
        rate = _money(person.rate, currency)
        yield person.name, person.kind.value, rate, currency, person.note


def _areas(record: Record, labels: Mapping[Any, str]) -> Iterator[tuple[Cell, ...]]:
    for area in record.areas:
        panels = "; ".join(labels[panel] for panel in area.panel_ids if panel in labels)
        cautions = "; ".join(area.cautions)
        yield area.id, area.name, panels, area.stage, area.found, area.done, cautions


def _stages(record: Record) -> Iterator[tuple[Cell, ...]]:
    for area in record.areas:
        for change in area.changes:
            yield area.name, area.id, change.stage, change.when.edtf, change.note


def _entries(
    record: Record, areas: Mapping[AreaId, str], labels: Mapping[Any, str]
) -> Iterator[tuple[Cell, ...]]:
    for entry in record.entries:
        area = areas.get(entry.area_id) if entry.area_id is not None else None
        panel = labels.get(entry.panel_id) if entry.panel_id is not None else None
        yield entry.id, entry.when.edtf, entry.text, area, panel


def _wanted(
    part: Wanted, record: Record, areas: Mapping[AreaId, str], labels: Mapping[Any, str]
) -> tuple[Cell, ...]:
    currency = record.car.currency
    panel = labels.get(part.panel_id) if part.panel_id is not None else None
    area = areas.get(part.area_id) if part.area_id is not None else None
    return (
        part.id, part.text, part.quantity, panel, area, part.category.value,
        part.condition.value if part.condition else "any", _money(part.price_limit, currency),
        _money(part.new_price, currency), currency, part.state.value,
        part.since.edtf if part.since else None, part.receipt_id, part.line_id, part.note,
    )  # fmt: skip


def _wanted_states(record: Record) -> Iterator[tuple[Cell, ...]]:
    for part in record.wanted:
        for change in part.changes:
            yield part.id, part.text, change.state.value, change.when.edtf, change.note


def _sightings(record: Record) -> Iterator[tuple[Cell, ...]]:
    for part in record.wanted:
        for one in part.sightings:
            price = _money(one.price, one.currency)
            yield (
                one.id, part.id, part.text, one.place, price, one.currency, one.when.edtf, one.note,
            )  # fmt: skip


def _milestones(record: Record) -> Iterator[tuple[Cell, ...]]:
    for milestone in record.milestones:
        yield milestone.kind.value, milestone.when.edtf, milestone.note


def _photos(record: Record, labels: Mapping[Any, str]) -> Iterator[tuple[Cell, ...]]:
    places: dict[int, list[str]] = {}
    for pin in record.pins:
        places.setdefault(pin.photo_id, []).append(labels.get(pin.panel_id, ""))
    for photo in record.photos:
        yield (
            photo.id, photo.name, photo.when.edtf if photo.when else None,
            _iso(photo.when, first=True), _iso(photo.when, first=False), photo.basis.value,
            photo.camera, photo.caption, "; ".join(places.get(photo.id, [])), photo.damage,
            photo.sha256,
        )  # fmt: skip


def _iso(when: When | None, *, first: bool) -> str | None:
    if when is None:
        return None
    return (when.earliest if first else when.latest).isoformat()


def _money(minor: int | None, currency: str) -> Decimal | None:
    return None if minor is None else Decimal(minor).scaleb(-minor_units(currency))


def _shares(shares: Sequence[Share], areas: Mapping[AreaId, str]) -> str:
    parts = []
    for share in shares:
        name = areas.get(share.area_id, str(share.area_id))
        parts.append(name if share.weight == 1 else f"{name} × {share.weight}")
    return "; ".join(parts)


# Written forms


def as_csv(sheet: Sheet) -> bytes:
    """The table as CSV in UTF-8 with a mark that spreadsheets know it by; formulas are disarmed."""
    room = io.StringIO(newline="")
    writer = csv.writer(room)
    writer.writerow(sheet.headings)
    writer.writerows([_disarmed(cell) for cell in row] for row in sheet.rows)
    return room.getvalue().encode("utf-8-sig")


def _disarmed(cell: Cell) -> Cell:
    """A text that would be run as a formula, with an apostrophe before it; numbers as they are."""
    if isinstance(cell, str) and cell.startswith(_FORMULA_STARTS):
        return "'" + cell
    return cell


def as_json(tables: Sequence[Sheet]) -> bytes:
    """Every table in one JSON document: name -> list of objects; money is text, so exact."""
    document = {
        sheet.name: [dict(zip(sheet.headings, map(_plain, row), strict=True)) for row in sheet.rows]
        for sheet in tables
    }
    return json.dumps(document, ensure_ascii=False, indent=1).encode()


def _plain(cell: Cell) -> str | int | None:
    return str(cell) if isinstance(cell, Decimal) else cell


def as_xlsx(tables: Sequence[Sheet]) -> bytes:
    """Every table as a sheet of one XLSX workbook; texts stay texts, so no formula runs."""
    from openpyxl import Workbook
    from openpyxl.cell.cell import ILLEGAL_CHARACTERS_RE

    book = Workbook()
    book.remove(book.active)
    for sheet in tables:
        page = book.create_sheet(sheet.name)
        page.append(sheet.headings)
        page.freeze_panes = "A2"
        for number, row in enumerate(sheet.rows, 2):
            for column, cell in enumerate(row, 1):
                if isinstance(cell, str):
                    # As text, and without the control characters that XML can't hold.
                    text = ILLEGAL_CHARACTERS_RE.sub("\ufffd", cell)[:32_767]
                    place = page.cell(number, column)
                    place.value = text
                    place.data_type = "s"
                elif cell is not None:
                    page.cell(number, column, cell)
    room = io.BytesIO()
    book.save(room)
    return room.getvalue()
