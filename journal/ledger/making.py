"""What each figure and each row of a table is made of, so that it adds up to it again exactly."""

from collections.abc import Callable, Iterator

from journal.domain.costs import (
    COSTS_BY,
    DIFFERENCE,
    HOURS,
    CostsBy,
)
from journal.domain.errors import JournalError
from journal.domain.ids import AreaId
from journal.domain.made_of import FIGURES, FigureName, MadeOf, MoneyPiece, TimePiece
from journal.ledger.costs import differences, savings
from journal.ledger.keys import Keys, keys
from journal.ledger.panels import OverPanels
from journal.ledger.pieces import Account, Done, Paid, PaidLine

#: A receipt, one of its lines, and a part of it with the repair area it went to.
_Money = tuple[Paid, PaidLine, AreaId | None, int]
_Time = tuple[Done, AreaId | None, int]


def made_of_row(by: CostsBy, key: str, account: Account) -> MadeOf:
    """What one row of the table by ``by`` is made of; nothing for a key it has no row for.

    Raises:
        JournalError: costs can't be laid out by ``by``.
    """
    if by not in COSTS_BY:
        raise JournalError(f"Costs can't be laid out by “{by}”, only by {', '.join(COSTS_BY)}.")
    if key == DIFFERENCE:
        return made_of_figure("difference", account)
    if by == "panel":
        return _made(_panel_money(key, account), _panel_time(key, account))
    found = keys(by, account)
    return _made(_money_where(found, key, account), _time_where(found, key, account))


def made_of_figure(figure: FigureName, account: Account) -> MadeOf:
    """What one of the figures above the tables is made of.

    Raises:
        JournalError: there is no such figure.
    """
    if figure not in FIGURES:
        raise JournalError(f"There is no figure “{figure}”, only {', '.join(FIGURES)}.")
    if figure == "difference":
        return _made(((paid, line, None, line.money) for paid, line in differences(account)), ())
    if figure == "saved":
        saved = savings(account)
        return _made(((paid, line, None, amount) for paid, line, amount in saved), ())
    if figure == "saved on":
        parts = (piece for paid, line, _ in savings(account) for piece in _parts(paid, line))
        return _made(parts, ())
    if figure in _TIME:
        passes = _TIME[figure]
        return _made((), (piece for piece in _all_time(account) if passes(piece)))
    wanted = _MONEY[figure]
    return _made((piece for piece in _all_money(account) if wanted(piece)), ())


_MONEY: dict[FigureName, Callable[[_Money], bool]] = {
    "money": lambda _piece: True,
    "restoration": lambda piece: not piece[0].upkeep,
    "upkeep": lambda piece: piece[0].upkeep,
    "proven": lambda piece: not piece[0].unproven,
    "unproven": lambda piece: piece[0].unproven,
    "not shared": lambda piece: piece[2] is None and piece[1].line is not None,
}
_TIME: dict[FigureName, Callable[[_Time], bool]] = {
    "hours": lambda _piece: True,
    "restoration hours": lambda piece: not piece[0].upkeep,
    "upkeep hours": lambda piece: piece[0].upkeep,
    "not shared hours": lambda piece: piece[1] is None,
}


def _parts(paid: Paid, line: PaidLine) -> Iterator[_Money]:
    for area_id, money in line.parts:
        yield paid, line, area_id, money


def _all_money(account: Account) -> Iterator[_Money]:
    for paid in account.paid:
        for line in paid.lines:
            yield from _parts(paid, line)


def _all_time(account: Account) -> Iterator[_Time]:
    for done in account.done:
        for area_id, minutes in done.parts:
            yield done, area_id, minutes


def _money_where(found: Keys, key: str, account: Account) -> Iterator[_Money]:
    for paid in account.paid:
        if found.of_receipt is not None and found.of_receipt(paid) != key:
            continue
        for line in paid.lines:
            if line.line is None:
                continue
            if found.of_line is not None and found.of_line(line.line) != key:
                continue
            for area_id, money in line.parts:
                if found.of_area is None or found.of_area(area_id) == key:
                    yield paid, line, area_id, money


def _time_where(found: Keys, key: str, account: Account) -> Iterator[_Time]:
    for done in account.done:
        if found.of_area is None:
            own = HOURS if found.of_work is None else found.of_work(done)
            if own != key:
                continue
        for area_id, minutes in done.parts:
            if found.of_area is None or found.of_area(area_id) == key:
                yield done, area_id, minutes


def _panel_money(key: str, account: Account) -> Iterator[_Money]:
    over = OverPanels(account.books.areas)
    for paid, line, area_id, money in _all_money(account):
        if line.line is not None and over.touches(area_id, key):
            for panel, part in over.parts(area_id, paid.column, money):
                if panel == key:
                    yield paid, line, area_id, part


def _panel_time(key: str, account: Account) -> Iterator[_Time]:
    over = OverPanels(account.books.areas)
    for done, area_id, minutes in _all_time(account):
        if over.touches(area_id, key):
            for panel, part in over.parts(area_id, done.upkeep, minutes):
                if panel == key:
                    yield done, area_id, part


def _made(money: "Iterator[_Money] | tuple[()]", time: "Iterator[_Time] | tuple[()]") -> MadeOf:
    return MadeOf(
        tuple(_money_piece(*piece) for piece in money), tuple(_time_piece(*piece) for piece in time)
    )


def _money_piece(paid: Paid, line: PaidLine, area_id: AreaId | None, money: int) -> MoneyPiece:
    receipt, bought = paid.receipt, line.line
    return MoneyPiece(
        receipt_id=receipt.id,
        line_id=None if bought is None else bought.id,
        when=receipt.when,
        supplier=receipt.supplier,
        text="printed total less its lines" if bought is None else bought.text,
        money=money,
        area_id=area_id,
        upkeep=paid.upkeep,
        unproven=paid.unproven,
    )


def _time_piece(done: Done, area_id: AreaId | None, minutes: int) -> TimePiece:
    work = done.work
    return TimePiece(work.id, work.when, work.person, work.note, minutes, area_id, done.upkeep)
