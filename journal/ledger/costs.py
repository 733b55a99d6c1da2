"""Costs summed by category, repair area, year and supplier, and the few figures above them."""

from collections import defaultdict
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass

from journal.domain.costs import (
    COSTS_BY,
    DIFFERENCE,
    HOURS,
    NO_DATE,
    NO_SUPPLIER,
    NOT_SHARED,
    CostRow,
    CostsBy,
    CostSummary,
    CostTable,
    MissingRate,
)
from journal.domain.errors import JournalError
from journal.domain.ids import ReceiptId
from journal.domain.receipts import Category, Condition, Receipt
from journal.ledger.books import (
    Books,
    Spent,
    Worked,
    difference,
    differs,
    has_rate,
    line_amounts,
    new_price,
    spent,
    worked,
)
from journal.ledger.hours import hours_table

_SECOND_HAND = frozenset({Condition.USED, Condition.NEW_OLD_STOCK, Condition.RECONDITIONED})

_LABELS = {
    DIFFERENCE: "printed totals less their lines",
    HOURS: "hours worked",
    NOT_SHARED: "not shared over repair areas",
    NO_DATE: "no date",
    NO_SUPPLIER: "no supplier named",
}


@dataclass(slots=True)
class _Sums:
    """A row of a table while it is added up."""

    restoration: int = 0
    upkeep: int = 0
    minutes: int = 0
    unproven: int = 0

    def add_money(self, piece: Spent) -> None:
        if piece.upkeep:
            self.upkeep += piece.money
        else:
            self.restoration += piece.money
        if piece.unproven:
            self.unproven += piece.money

    def row(self, key: str, label: str) -> CostRow:
        return CostRow(key, label, self.restoration, self.upkeep, self.minutes, self.unproven)


def cost_table(by: CostsBy, books: Books) -> CostTable:
    """Lay the costs out by one thing; the rows add up to the total, the same one for every thing.

    Rows come in the order of the categories, of the repair areas, of the years, or by supplier
    with the most money first; rows that stand for none of these come last.

    Raises:
        JournalError: costs can't be laid out by ``by``.
    """
    if by not in COSTS_BY:
        raise JournalError(f"Costs can't be laid out by “{by}”, only by {', '.join(COSTS_BY)}.")
    sums: defaultdict[str, _Sums] = defaultdict(_Sums)
    names: dict[str, str] = {}
    for piece in spent(books):
        sums[_money_key(by, piece, names)].add_money(piece)
    for time in worked(books):
        sums[_time_key(by, time)].minutes += time.minutes
    labels = {**_LABELS, **names, **{str(area.id): area.name for area in books.areas}}
    rows = [summed.row(key, labels.get(key, key)) for key, summed in sums.items()]
    rows.sort(key=_order(by, books))
    return CostTable(by, books.currency, tuple(rows), _total(rows))


def cost_summary(books: Books) -> CostSummary:
    """What the car cost, in a few figures."""
    pieces = tuple(spent(books))
    counted = [receipt for receipt in books.receipts if has_rate(receipt, books.currency)]
    time = hours_table("person", books)
    unshared_time = [piece.minutes for piece in worked(books) if piece.area_id is None]
    differing = [receipt for receipt in counted if differs(receipt)]
    saved, saved_on, saved_lines = _saved_against_new(counted, books.currency)
    return CostSummary(
        currency=books.currency,
        restoration=sum(piece.money for piece in pieces if not piece.upkeep),
        upkeep=sum(piece.money for piece in pieces if piece.upkeep),
        own_minutes=time.total.minutes,
        restoration_minutes=time.total.restoration,
        upkeep_minutes=time.total.upkeep,
        people=time.rows,
        unproven=sum(piece.money for piece in pieces if piece.unproven),
        difference=sum(difference(receipt, books.currency) for receipt in differing),
        differing=tuple(receipt.id for receipt in differing),
        saved_against_new=saved,
        saved_on=saved_on,
        saved_lines=saved_lines,
        not_shared=sum(piece.money for piece in pieces if _is_unshared_line(piece)),
        not_shared_minutes=sum(unshared_time),
        missing_rates=_missing_rates(books),
    )


def _money_key(by: CostsBy, piece: Spent, names: dict[str, str]) -> str:
    if piece.category is None:
        return DIFFERENCE
    if by == "category":
        return piece.category.value
    if by == "area":
        return NOT_SHARED if piece.area_id is None else str(piece.area_id)
    if by == "year":
        return piece.year
    supplier = " ".join(piece.supplier.split())
    # A name written with other capitals is the same shop; the spelling met first is shown.
    return names.setdefault(supplier.casefold(), supplier) or NO_SUPPLIER


def _time_key(by: CostsBy, piece: Worked) -> str:
    if by == "area":
        return NOT_SHARED if piece.area_id is None else str(piece.area_id)
    return piece.year if by == "year" else HOURS


def _total(rows: Iterable[CostRow]) -> CostRow:
    total = _Sums()
    for row in rows:
        total.restoration += row.restoration
        total.upkeep += row.upkeep
        total.minutes += row.minutes
        total.unproven += row.unproven
    return total.row("", "total")


def _order(by: CostsBy, books: Books) -> Callable[[CostRow], tuple[int, int, str]]:
    """The sort key of the rows of a table."""
    last = (NO_DATE, NO_SUPPLIER, NOT_SHARED, HOURS, DIFFERENCE)
    places: dict[str, int] = {}
    if by == "category":
        places = {category.value: place for place, category in enumerate(Category)}
    elif by == "area":
        places = {str(area.id): place for place, area in enumerate(books.areas)}

    def key(row: CostRow) -> tuple[int, int, str]:
        if row.key in last:
            return 1, last.index(row.key), row.key
        spent_first = -row.money if by == "supplier" else 0
        return 0, places.get(row.key, spent_first), row.key.casefold()

    return key


def _is_unshared_line(piece: Spent) -> bool:
    return piece.area_id is None and piece.category is not None


def _saved_against_new(receipts: Sequence[Receipt], currency: str) -> tuple[int, int, int]:
    """What was saved, the money it rests on, and how many lines that is."""
    saved = saved_on = count = 0
    for receipt in receipts:
        for line, money in zip(receipt.lines, line_amounts(receipt, currency), strict=True):
            price = new_price(line, receipt, currency)
            if price is None or line.condition not in _SECOND_HAND:
                continue
            saved += price - money
            saved_on += money
            count += 1
    return saved, saved_on, count


def _missing_rates(books: Books) -> tuple[MissingRate, ...]:
    """Receipts that can't be counted, by currency; each with its printed total where it has one."""
    sums: dict[str, int] = {}
    ids: dict[str, list[ReceiptId]] = {}
    for receipt in books.receipts:
        if has_rate(receipt, books.currency):
            continue
        paid = receipt.lines_total if receipt.printed_total is None else receipt.printed_total
        sums[receipt.currency] = sums.get(receipt.currency, 0) + paid
        ids.setdefault(receipt.currency, []).append(receipt.id)
    return tuple(MissingRate(code, sums[code], tuple(ids[code])) for code in sorted(sums))
