"""What comes in from a sheet: receipts and hours made of its rows, and bank lines that stand in."""

import hashlib
from collections import Counter, defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from enum import StrEnum

from journal.domain.ids import AreaId, LineId, ReceiptId, WorkId
from journal.domain.receipts import Line, Receipt, Share
from journal.domain.sheet_rows import SheetRow
from journal.domain.when import spoken
from journal.domain.work import Work

#: What a supplier is called whose name is not known.
UNKNOWN = "unknown"


class Fate(StrEnum):
    """What becomes of an item."""

    NEW = "comes in"
    STANDS_IN = "stands in"
    LEAVE = "left out"


@dataclass(frozen=True, slots=True)
class Item:
    """One receipt, one person's hours or one bank line.

    Attributes:
        rows: the row numbers that it is made of.
        fingerprints: one for each row, by which it is known again.
        receipt, work: what it would be; a bank line's receipt has the line as what stands in.
        fate: what is proposed to become of it.
        why: why that, in a few words; "" where there is nothing to say.
        match: the receipt that it is like, that has it already, or that it would stand in for.
        is_money_in: a bank line of money that came in.
        can_stand_in: a bank line that can stand in for the receipt ``match``.
        was_known: all its rows were brought in before.
        is_gone: what it became then was taken out since.
    """

    rows: tuple[int, ...]
    fingerprints: tuple[str, ...]
    receipt: Receipt | None = None
    work: Work | None = None
    fate: Fate = Fate.NEW
    why: str = ""
    match: ReceiptId | None = None
    is_money_in: bool = False
    can_stand_in: bool = False
    was_known: bool = False
    is_gone: bool = False

    @property
    def fates(self) -> tuple[Fate, ...]:
        """What can become of it."""
        both = (Fate.NEW, Fate.LEAVE)
        return (*both, Fate.STANDS_IN) if self.can_stand_in else both


@dataclass(frozen=True, slots=True)
class Source:
    """Where rows come from: the file's name, the sheet's, and whether it is a bank's list."""

    file: str
    sheet: str
    is_bank: bool


def fingerprints(rows: Sequence[SheetRow], kind: str) -> tuple[str, ...]:
    """For each row a SHA-256 by which it is known again, in this file or another.

    It is made of what the row says was paid or worked, and of its number among equal ones; not of
    what may be filled in later (category, repair area, note), nor of where the row stands.
    """
    seen: Counter[str] = Counter()
    made = []
    for row in rows:
        said = (
            kind, row.when.edtf, folded(row.supplier), folded(row.number), folded(row.what),
            str(row.quantity.normalize()), row.amount, row.currency, row.minutes,
            folded(row.person),
        )  # fmt: skip
        content = repr(said)
        seen[content] += 1
        made.append(hashlib.sha256(f"{content} {seen[content]}".encode()).hexdigest())
    return tuple(made)


def receipt_items(
    rows: Sequence[SheetRow], source: Source, areas: Mapping[str, AreaId]
) -> tuple[Item, ...]:
    """A receipt for each row that was paid for; those of one date, supplier and number are one."""
    paid = [row for row in rows if row.amount is not None]
    groups: defaultdict[object, list[tuple[SheetRow, str]]] = defaultdict(list)
    for row, mark in zip(paid, fingerprints(paid, "receipt"), strict=True):
        key: object = row.row
        if row.number and not source.is_bank:
            where = (row.when.edtf, folded(row.supplier), row.currency, row.paper)
            key = (folded(row.number), *where)
        groups[key].append((row, mark))
    made = []
    for group in groups.values():
        of = [row for row, _ in group]
        receipt = _bank_receipt(of[0], source) if source.is_bank else _receipt(of, source, areas)
        numbers, marks = tuple(row.row for row in of), tuple(mark for _, mark in group)
        is_in = source.is_bank and receipt.lines_total <= 0
        made.append(Item(numbers, marks, receipt, is_money_in=is_in))
    return tuple(made)


def work_items(rows: Sequence[SheetRow], areas: Mapping[str, AreaId]) -> tuple[Item, ...]:
    """Hours for each row of time worked."""
    worked = [row for row in rows if row.minutes]
    return tuple(
        Item(
            (row.row,),
            (mark,),
            work=Work(
                WorkId(0),
                row.when,
                row.minutes,
                row.person,
                ". ".join(part for part in (row.what, row.note) if part)
                if row.amount is None
                else row.note,
                _shares(row, areas),
            ),
        )
        for row, mark in zip(worked, fingerprints(worked, "work"), strict=True)
    )


def _receipt(rows: Sequence[SheetRow], source: Source, areas: Mapping[str, AreaId]) -> Receipt:
    first = rows[0]
    where = f"From “{source.file}”, {_rows(rows)}."
    number = f"Number {first.number}." if first.number else ""
    notes = dict.fromkeys(row.note for row in rows if row.note)
    return Receipt(
        id=ReceiptId(0),
        supplier=first.supplier or UNKNOWN,
        when=first.when,
        currency=first.currency,
        paper=first.paper,
        printed_total=_printed(rows),
        lines=tuple(_line(row, areas) for row in rows),
        stands_in="; ".join(dict.fromkeys(row.stands_in for row in rows if row.stands_in)),
        note=" ".join(part for part in (*notes, number, where) if part),
        rate=first.rate,
    )


def _printed(rows: Sequence[SheetRow]) -> int | None:
    """The total printed on a receipt of some rows: written once, beside each, or each row's own.

    None where nothing is written, or where it can't be told which it is.
    """
    totals = [row.total for row in rows if row.total is not None]
    each_its_own = len(totals) == len(rows) and (
        len(set(totals)) > 1 or totals == [row.amount for row in rows]
    )
    if each_its_own:
        return sum(totals)
    return totals[0] if len(set(totals)) == 1 else None


def _bank_receipt(row: SheetRow, source: Source) -> Receipt:
    words = " ".join(", ".join(one for one in (row.supplier, row.what) if one).split())[:120]
    stands_in = f"bank line of {spoken(row.when)}, “{words}”, row {row.row} of “{source.file}”"
    line = replace(_line(row, {}), text=row.what or words or "bank line")
    return Receipt(
        id=ReceiptId(0),
        supplier=row.supplier or words[:60] or UNKNOWN,
        when=row.when,
        currency=row.currency,
        paper=row.paper,
        printed_total=None,
        lines=(line,),
        stands_in=stands_in,
        note=row.note,
        rate=row.rate,
    )


def _line(row: SheetRow, areas: Mapping[str, AreaId]) -> Line:
    return Line(
        LineId(0),
        row.what or row.note or "bought, not said what",
        row.quantity,
        row.amount or 0,
        row.category,
        row.condition,
        row.new_price,
        _shares(row, areas),
        row.spread,
    )


def _shares(row: SheetRow, areas: Mapping[str, AreaId]) -> tuple[Share, ...]:
    found = {areas[folded(name)]: weight for name, weight in row.areas if folded(name) in areas}
    return tuple(Share(area, weight) for area, weight in found.items())


def unknown_areas(rows: Iterable[SheetRow], areas: Mapping[str, AreaId]) -> Counter[str]:
    """Names that are no repair area of the journal, and on how many rows each stands."""
    return Counter(name for row in rows for name, _ in row.areas if folded(name) not in areas)


def _rows(rows: Sequence[SheetRow]) -> str:
    if len(rows) == 1:
        return f"row {rows[0].row}"
    return "rows " + ", ".join(str(row.row) for row in rows)


def folded(text: str) -> str:
    """A name as it is compared: small letters, single spaces."""
    return " ".join(text.casefold().split())
