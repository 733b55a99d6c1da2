"""Money and hours as the dossier prints them, from the ledger's figures."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from journal.domain.areas import Area
from journal.domain.costs import CostRow, CostsBy, CostSummary, CostTable
from journal.domain.cuts import Choices, Part
from journal.domain.money import format_money
from journal.domain.private_words import Private
from journal.domain.receipts import Paper, Receipt
from journal.domain.record import Record
from journal.domain.when import spoken
from journal.dossier.document import Costs, Grid, Labelled, Paid
from journal.dossier.story import receipt_numbers
from journal.dossier.words import count, hours, listed, sentence, shortened

_TITLES: dict[CostsBy, tuple[str, str]] = {
    "category": ("By category", "Category"),
    "area": ("By repair area", "Repair area"),
    "year": ("By year", "Year"),
    "supplier": ("By supplier", "Supplier"),
}


def table_by(tables: Sequence[CostTable], by: CostsBy) -> CostTable | None:
    """The table laid out by ``by``, None where it wasn't given."""
    return next((table for table in tables if table.by == by), None)


def costs(
    record: Record,
    summary: CostSummary,
    tables: Sequence[CostTable],
    areas: Sequence[Area],
    choices: Choices,
) -> Costs:
    """All that the dossier says of money and hours; ``areas`` are in the document's order.

    Where prices are withheld no sum is named: the receipts stand without their totals.
    """
    order = {str(area.id): number for number, area in enumerate(areas, 1)}
    has_money = choices.has(Part.MONEY) and Private.PRICES not in record.withheld
    has_money = has_money and bool(summary.money or record.receipts)
    figures = _money_figures(summary) if has_money else ()
    if choices.has(Part.HOURS) and summary.minutes:
        figures = (*figures, *_hours_figures(summary))
    paid = _receipts(record, named=has_money) if choices.has(Part.RECEIPTS) else ()
    if not has_money:
        return Costs(figures, (), (), paid)
    grids = tuple(_grid(t, order, hours_too=choices.has(Part.HOURS)) for t in tables if t.rows)
    return Costs(figures, _remarks(record, summary), grids, paid)


def _money_figures(summary: CostSummary) -> tuple[Labelled, ...]:
    def money(amount: int) -> str:
        return format_money(amount, summary.currency)

    rows = [Labelled("Restoration", money(summary.restoration))]
    if summary.upkeep:
        rows.append(Labelled("Upkeep since on the road", money(summary.upkeep)))
    rows.append(Labelled("All money, proven by paper", money(summary.money - summary.unproven)))
    if summary.unproven:
        rows.append(Labelled("All money, without paper", money(summary.unproven)))
    return tuple(rows)


def _hours_figures(summary: CostSummary) -> tuple[Labelled, ...]:
    people = [Labelled(f"Of them {row.label}", hours(row.minutes)) for row in summary.people]
    worked = Labelled("Hours worked", hours(summary.minutes))
    return (worked, *(people if len(people) > 1 else ()))


def _remarks(record: Record, summary: CostSummary) -> tuple[str, ...]:
    remarks = [
        (
            "Money spent and hours worked are two figures and are never added up: the hours "
            "carry no price. What was spent is not what the car is worth."
        )
    ]
    if summary.differing:
        numbers = receipt_numbers(record)
        names = [f"R{numbers[i]}" for i in summary.differing if i in numbers]
        difference = format_money(summary.difference, summary.currency)
        remarks.append(
            f"The printed total of {listed(sorted(names, key=_number))} differs from the lines "
            f"recorded; the printed totals count. They are {difference} more than the lines."
        )
    if summary.saved_lines:
        lines = count(summary.saved_lines, "part").capitalize()
        cost = format_money(summary.saved_on, summary.currency)
        saved = format_money(summary.saved_against_new, summary.currency)
        remarks.append(
            f"{lines} bought used, old stock or reconditioned cost {cost}, {saved} less than the "
            "owner says they cost new."
        )
    for rate in summary.missing_rates:
        amount = format_money(rate.amount, rate.currency)
        receipts = count(len(rate.receipt_ids), "receipt")
        remarks.append(
            f"{amount} from {receipts} is in no sum here: no rate from {rate.currency} was given."
        )
    return tuple(remarks)


def _number(name: str) -> int:
    return int(name[1:])


def _grid(table: CostTable, order: dict[str, int], *, hours_too: bool) -> Grid:
    title, first = _TITLES[table.by]
    rows = list(table.rows)
    if table.by == "area":
        rows.sort(key=lambda row: order.get(row.key, len(order) + 1))
    columns = [c for c in _columns(table) if hours_too or c.name != "Hours"]

    def cells(row: CostRow, name: str) -> tuple[str, ...]:
        return (name, *(column.write(row) for column in columns))

    return Grid(
        title,
        (first, *(column.name for column in columns)),
        tuple(cells(row, _row_name(table, row, order)) for row in rows),
        cells(table.total, "Total"),
    )


@dataclass(frozen=True, slots=True)
class _Column:
    name: str
    amount: Callable[[CostRow], int]
    unit: Callable[[int], str]

    def write(self, row: CostRow) -> str:
        amount = self.amount(row)
        return self.unit(amount) if amount else "–"


def _columns(table: CostTable) -> tuple[_Column, ...]:
    """The columns that hold anything; money restoring always does."""

    def money(amount: int) -> str:
        return format_money(amount, table.currency)

    every = (
        _Column("Restoration", lambda row: row.restoration, money),
        _Column("Upkeep", lambda row: row.upkeep, money),
        _Column("Without paper", lambda row: row.unproven, money),
        _Column("Hours", lambda row: row.minutes, hours),
    )
    return tuple(c for c in every if c is every[0] or any(c.amount(row) for row in table.rows))


def _row_name(table: CostTable, row: CostRow, order: dict[str, int]) -> str:
    number = order.get(row.key) if table.by == "area" else None
    label = row.label[:1].upper() + row.label[1:]
    return f"{number}  {label}" if number else label


def _receipts(record: Record, *, named: bool) -> tuple[Paid, ...]:
    numbers = receipt_numbers(record)
    rows = [_paid(receipt, numbers[receipt.id], named=named) for receipt in record.receipts]
    return tuple(sorted(rows, key=lambda row: row.number))


def _paid(receipt: Receipt, number: int, *, named: bool) -> Paid:
    total = receipt.lines_total if receipt.printed_total is None else receipt.printed_total
    items = [line.text.strip() or line.category.value for line in receipt.lines]
    paper = f"paper {receipt.paper.value}"
    if receipt.paper is Paper.HELD and not receipt.papers:
        paper = "paper held, no scan"
    return Paid(
        number,
        spoken(receipt.when),
        receipt.supplier.strip() or "no supplier",
        shortened(items, 5),
        format_money(total, receipt.currency) if named else "",
        paper,
        sentence(receipt.stands_in),
        receipt.papers,
    )
