"""Costs summed by whatever they are laid out by, and the few figures above them."""

from collections import defaultdict
from collections.abc import Callable, Iterator, Sequence

from journal.domain.costs import (
    COSTS_BY,
    DIFFERENCE,
    HOURS,
    NO_PANEL,
    NOT_SHARED,
    CostRow,
    CostsBy,
    CostSummary,
    CostTable,
    MissingRate,
)
from journal.domain.errors import JournalError
from journal.domain.ids import AreaId, ReceiptId
from journal.domain.receipts import Condition, Line
from journal.domain.states import over_panels
from journal.ledger.books import Books, has_rate
from journal.ledger.hours import hours_table
from journal.ledger.keys import Keys, keys, label_of, labels, order
from journal.ledger.pieces import COLUMNS, Account, Paid, PaidLine, taken_apart

_SECOND_HAND = frozenset({Condition.USED, Condition.NEW_OLD_STOCK, Condition.RECONDITIONED})

#: A row while it is added up: four columns of money, then minutes.
_Sums = defaultdict[str, list[int]]
_MINUTES = len(COLUMNS)


def cost_table(by: CostsBy, books: Books | Account) -> CostTable:
    """Lay the costs out by one thing; the rows add up to the total, the same one for every thing.

    Rows come in the order of the categories, conditions, repair areas, panels, phases, years and
    months, or by supplier and person with the most first; rows that stand for none of these come
    last. Money and time of a repair area are shared equally over its panels to the last unit, each
    column of the table by itself.

    Raises:
        JournalError: costs can't be laid out by ``by``.
    """
    if by not in COSTS_BY:
        raise JournalError(f"Costs can't be laid out by “{by}”, only by {', '.join(COSTS_BY)}.")
    account = books if isinstance(books, Account) else taken_apart(books)
    sums: _Sums = defaultdict(_nothing)
    found = keys(by, account)
    if by == "panel":
        _add_panels(sums, account)
    else:
        _add_money(sums, found, account)
        _add_time(sums, found, account)
    names = labels(by, account)
    rows = [_row(key, label_of(by, key, names), summed) for key, summed in sums.items()]
    rows.sort(key=order(by, account))
    total = [sum(column) for column in zip(*sums.values(), strict=True)] or _nothing()
    return CostTable(by, account.books.currency, tuple(rows), _row("", "total", total))


def _row(key: str, label: str, sums: Sequence[int]) -> CostRow:
    proven, unproven, upkeep_proven, upkeep_unproven, minutes = sums
    restoration, upkeep = proven + unproven, upkeep_proven + upkeep_unproven
    return CostRow(str(key), label, restoration, upkeep, minutes, unproven + upkeep_unproven)


def _add_money(sums: _Sums, found: Keys, account: Account) -> None:
    if found.of_area is not None:
        for area_id, columns in account.area_money.items():
            for column in COLUMNS:
                sums[found.of_area(area_id)][column] += columns[column]
    elif found.of_receipt is not None:
        for paid in account.paid:
            sums[found.of_receipt(paid)][paid.column] += paid.money
    elif found.of_line is not None:
        _add_lines(sums, found.of_line, account)
    for paid, rest in differences(account):
        sums[DIFFERENCE][paid.column] += rest.money


def _add_lines(sums: _Sums, of_line: Callable[[Line], str], account: Account) -> None:
    for paid in account.paid:
        column = paid.column
        for line in paid.lines:
            if line.line is not None:
                sums[of_line(line.line)][column] += line.money


def _add_time(sums: _Sums, found: Keys, account: Account) -> None:
    if found.of_area is not None:
        for area_id, minutes in account.area_minutes.items():
            sums[found.of_area(area_id)][_MINUTES] += sum(minutes)
        return
    for done in account.done:
        key = HOURS if found.of_work is None else found.of_work(done)
        sums[key][_MINUTES] += done.work.minutes


def _add_panels(sums: _Sums, account: Account) -> None:
    """Every repair area's sums over the panels it touches; what is on none by itself."""
    areas = account.books.areas
    on_panels = {area.id for area in areas if area.panel_ids}
    for column in COLUMNS:
        money = {area_id: sums_[column] for area_id, sums_ in account.area_money.items()}
        _add_over_panels(sums, column, money, account, on_panels)
    for side in range(2):
        time = {area_id: sums_[side] for area_id, sums_ in account.area_minutes.items()}
        _add_over_panels(sums, _MINUTES, time, account, on_panels)
    for paid, rest in differences(account):
        sums[DIFFERENCE][paid.column] += rest.money


def _add_over_panels(
    sums: _Sums,
    column: int,
    by_area: dict[AreaId | None, int],
    account: Account,
    on_panels: set[AreaId],
) -> None:
    shown = {area_id: amount for area_id, amount in by_area.items() if area_id is not None}
    for panel_id, part in over_panels(shown, account.books.areas).items():
        if part or str(panel_id) in sums:
            sums[str(panel_id)][column] += part
    for area_id, amount in by_area.items():
        if area_id not in on_panels:
            sums[NOT_SHARED if area_id is None else NO_PANEL][column] += amount


def _nothing() -> list[int]:
    return [0] * (_MINUTES + 1)


def cost_summary(books: Books | Account) -> CostSummary:
    """What the car cost, in a few figures."""
    account = books if isinstance(books, Account) else taken_apart(books)
    currency = account.books.currency
    total = cost_table("year", account).total
    time = hours_table("person", account)
    unshared = account.area_money.get(None, [0] * len(COLUMNS))
    saved = list(savings(account))
    return CostSummary(
        currency=currency,
        restoration=total.restoration,
        upkeep=total.upkeep,
        minutes=time.total.minutes,
        restoration_minutes=time.total.restoration,
        upkeep_minutes=time.total.upkeep,
        people=time.rows,
        unproven=total.unproven,
        difference=sum(line.money for _, line in differences(account)),
        differing=tuple(paid.receipt.id for paid, _ in differences(account)),
        saved_against_new=sum(amount for _, _, amount in saved),
        saved_on=sum(line.money for _, line, _ in saved),
        saved_lines=len(saved),
        not_shared=sum(unshared),
        not_shared_minutes=sum(account.area_minutes.get(None, ())),
        missing_rates=_missing_rates(account.books),
    )


def differences(account: Account) -> Iterator[tuple[Paid, PaidLine]]:
    """The pieces by which printed totals differ from their lines."""
    for paid in account.paid:
        if paid.difference is not None:
            yield paid, paid.lines[-1]


def savings(account: Account) -> Iterator[tuple[Paid, PaidLine, int]]:
    """Parts not bought new whose price new is known, each with what was saved on it."""
    for paid in account.paid:
        for line in paid.lines:
            if line.line is None or line.new_price is None:
                continue
            if line.line.condition in _SECOND_HAND:
                yield paid, line, line.new_price - line.money


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
