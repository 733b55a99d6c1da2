"""What the rows of a sheet say, by the roles of its columns; and which say nothing, and why."""

from collections import Counter
from collections.abc import Sequence
from datetime import date

from journal.domain.errors import JournalError
from journal.domain.money import format_money
from journal.domain.progress import Context, Silent
from journal.domain.sheet_rows import (
    AMOUNTS,
    BadCell,
    Cell,
    Choices,
    Grid,
    Role,
    SheetRow,
    Told,
    Understood,
    shown,
)
from journal.domain.when import When
from journal.intake.sheets import cells, words
from journal.intake.sheets.days import read_day
from journal.intake.sheets.money_cells import MoneyColumns

_DITTO = frozenset(('"', "''", "“", "”", "„", "do.", "ditto", "dto", "dto.", "idem", "id."))
#: After so many rows the person may stop it.
_BETWEEN = 500
_NEEDED = frozenset((
    Role.DATE, *AMOUNTS, Role.QUANTITY, Role.TOTAL, Role.NEW_PRICE, Role.RATE, Role.HOURS,
    Role.MINUTES,
))  # fmt: skip


def understand(
    grid: Grid, choices: Choices, today: date, context: Context | None = None
) -> Understood:
    """Read every row below the headings.

    Raises:
        Cancelled: as the person asked.
        JournalError: no column says when, or none says how much.
    """
    _refuse_incomplete(choices)
    return _Reader(grid, choices, today).read(context or Silent())


def _refuse_incomplete(choices: Choices) -> None:
    roles = set(choices.roles)
    hours = {Role.HOURS, Role.MINUTES}
    if Role.DATE not in roles:
        raise JournalError("No column is the date; say over one of them that it is.")
    if not roles & {*AMOUNTS, *hours}:
        raise JournalError("No column is the amount or the hours; say over one of them that it is.")
    if Role.AMOUNT in roles and roles & {Role.EACH, Role.MONEY_OUT, Role.MONEY_IN}:
        raise JournalError(
            "A row can have one amount: leave out either the amount, or the columns of price each,"
            " money out and money in."
        )
    if choices.is_bank and roles & hours:
        raise JournalError("A bank's list has no hours; leave that column out.")


class _Reader:
    def __init__(self, grid: Grid, choices: Choices, today: date) -> None:
        self._rows = grid.rows
        self._choices = choices
        self._today = today
        self._places = {role: choices.columns(role) for role in Role}
        self._needed = [(place, role) for role in _NEEDED for place in self._places[role]]
        self._money = MoneyColumns(grid, choices)
        self._unknown: cells.Unknown = Counter()
        self._rounded = 0
        self._above: dict[Role, Cell] = {}
        self._sum: Counter[str] = Counter()
        self._since: Counter[str] = Counter()
        self._summed = 0
        self._found: list[SheetRow] = []
        self._refused: list[Told] = []
        self._left_out: list[Told] = []
        self._remarks = list(grid.remarks)

    def read(self, context: Context) -> Understood:
        heading = self._choices.heading
        head = self._rows[heading - 1] if 0 < heading <= len(self._rows) else ()
        for number, row in enumerate(self._rows[heading:], heading + 1):
            if number % _BETWEEN == 0:
                context.checkpoint()
                context.report(number, len(self._rows), "Reading rows")
            if not row:
                continue
            reason = "the headings again" if row == head else self._no_record(row)
            if reason:
                self._left_out.append(Told(number, reason))
                continue
            try:
                self._found.append(self._record(number, row))
            except JournalError as error:
                self._refused.append(Told(number, str(error).rstrip(".")))
        return Understood(
            tuple(self._found),
            tuple(self._refused),
            tuple(self._left_out),
            (*self._remarks, *self._said()),
        )

    # --- rows that are no record ---

    def _no_record(self, row: Sequence[Cell]) -> str:
        """Why a row is no record at all; "" where it may be one."""
        filled = [cell for cell in row if cell is not None]
        day = self._cell(row, Role.DATE)
        has_day = day is not None and not (isinstance(day, str) and words.is_total(day))
        texts = [] if has_day else [cell for cell in filled if isinstance(cell, str)]
        label = next((text for text in texts if words.is_total(text)), None)
        if label is not None:
            return self._total(label, self._money.plain_amount(row))
        if len(filled) == 1 and not self._has_figures(row):
            return f"“{' '.join(shown(filled[0]).split())[:40]}” alone"
        if has_day:
            return ""
        amount = self._money.plain_amount(row)
        is_bare = self._summed > 1 and not self._words(row, Role.SUPPLIER, Role.WHAT)
        if is_bare and amount in self._sum.values():
            return f"the sum of the {self._summed} rows above"
        return ""

    def _total(self, label: str, amount: int | None) -> str:
        """What is said of a row of totals, and whether it agrees with the rows above."""
        text = " ".join(label.split())[:40].rstrip(" :")
        since, self._since = self._since, Counter()
        if amount is None or len(self._sum) != 1:
            return f"a total (“{text}”)"
        ((currency, above),) = self._sum.items()
        if amount in (above, since[currency]):
            return f"a total (“{text}”), and the rows above come to it"
        said, come_to = format_money(amount, currency), format_money(above, currency)
        return f"a total (“{text}”): {said}; the rows above come to {come_to}"

    def _has_figures(self, row: Sequence[Cell]) -> bool:
        return any(
            self._cell(row, role) is not None for role in (*AMOUNTS, Role.HOURS, Role.MINUTES)
        )

    # --- rows that are one ---

    def _record(self, number: int, row: Sequence[Cell]) -> SheetRow:
        for place, role in self._needed:
            if place < len(row) and isinstance(bad := row[place], BadCell):
                raise JournalError(f"the {role.value} is “{bad.text}”")
        when = self._when(row)
        supplier = self._filled(row, Role.SUPPLIER)
        paid = self._money.read(row)
        minutes = cells.minutes(self._cell(row, Role.HOURS), self._cell(row, Role.MINUTES))
        if paid.amount is None and not minutes:
            hours = self._places[Role.HOURS] or self._places[Role.MINUTES]
            raise JournalError("there is no amount and no time" if hours else "there is no amount")
        if paid.amount is not None:
            self._sum[paid.currency] += paid.amount
            self._since[paid.currency] += paid.amount
            self._summed += 1
        self._rounded += paid.rounded
        person = self._words(row, Role.PERSON) or self._choices.person
        if minutes and not person:
            raise JournalError("nobody is named who worked")
        category = cells.category(self._words(row, Role.CATEGORY), self._unknown)
        return SheetRow(
            number,
            when,
            supplier,
            self._words(row, Role.NUMBER),
            self._words(row, Role.WHAT),
            paid.quantity,
            paid.amount,
            paid.currency,
            paid.total,
            cells.rate(self._cell(row, Role.RATE)),
            paid.new_price,
            category,
            cells.condition(self._words(row, Role.CONDITION), category, self._unknown),
            cells.spread(self._words(row, Role.SPREAD)),
            cells.areas(self._words(row, Role.AREA, mark="; ")),
            cells.paper(self._cell(row, Role.PAPER), self._unknown),
            self._words(row, Role.STANDS_IN),
            minutes,
            person if minutes else "",
            self._words(row, Role.NOTE),
        )

    def _when(self, row: Sequence[Cell]) -> When:
        cell = self._cell(row, Role.DATE)
        is_ditto = isinstance(cell, str) and cell.casefold() in _DITTO
        if is_ditto or (cell is None and self._choices.fill_down):
            cell = self._above.get(Role.DATE)
        elif cell is not None:
            # Also one that can't be read: what stands below it is no day of an earlier row.
            self._above = {Role.DATE: cell}
        return read_day(cell, self._choices.dates, self._today)

    def _filled(self, row: Sequence[Cell], role: Role) -> str:
        """The words of a column, those of the row above where they are left out."""
        said = self._words(row, role)
        own_day = self._cell(row, Role.DATE) is not None
        if said.casefold() in _DITTO or (not said and self._choices.fill_down and not own_day):
            return shown(self._above.get(role))
        self._above[role] = said
        return said

    def _cell(self, row: Sequence[Cell], role: Role) -> Cell:
        places = self._places[role]
        return row[places[0]] if places and places[0] < len(row) else None

    def _words(self, row: Sequence[Cell], *roles: Role, mark: str = ", ") -> str:
        said = [
            words.disarmed(shown(row[place]))
            for role in roles
            for place in self._places[role]
            if place < len(row) and row[place] is not None and not isinstance(row[place], BadCell)
        ]
        return said[0] if len(said) == 1 else mark.join(one for one in dict.fromkeys(said) if one)

    def _said(self) -> list[str]:
        """Sentences on what holds for many rows."""
        said = [
            f"{kind}: {rows(count)}, {outcome}."
            for (kind, outcome), count in sorted(self._unknown.items())
        ]
        if self._rounded:
            said.append(f"In {rows(self._rounded)} parts of the smallest coin were rounded.")
        return said


def rows(count: int) -> str:
    """So many rows, in words."""
    return "1 row" if count == 1 else f"{count:,} rows"
