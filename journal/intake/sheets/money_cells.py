"""What a row of a sheet comes to, in minor units of its currency."""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal
from functools import lru_cache

from journal.domain.errors import JournalError
from journal.domain.money import MOST, minor_units
from journal.domain.quantities import LEAST_QUANTITY, MOST_QUANTITY
from journal.domain.sheet_rows import Cell, Choices, Decimals, Grid, Role, shown
from journal.intake.sheets.sums import Mark, value, written

_SIGNS = {"€": "EUR", "£": "GBP", "zł": "PLN", "kč": "CZK", "₹": "INR", "₩": "KRW", "₺": "TRY"}
#: Signs that several currencies share; the sheet's own where it is one of them.
_SHARED = {
    "$": ("USD", "CAD", "AUD", "NZD", "SGD", "HKD", "MXN"),
    "kr": ("SEK", "NOK", "DKK", "ISK"),
    "fr": ("CHF", "FRF"),
    "¥": ("JPY", "CNY"),
}


@dataclass(frozen=True, slots=True)
class Paid:
    """What a row comes to; ``rounded`` tells that parts of a minor unit were."""

    amount: int | None
    currency: str
    quantity: Decimal
    total: int | None
    new_price: int | None
    rounded: bool


@dataclass(slots=True)
class _Sum:
    """One cell as a number with its sign, and the currency that it names itself."""

    number: Decimal
    currency: str


class MoneyColumns:
    """The columns of a sheet that hold money, with what is settled for each as a whole."""

    def __init__(self, grid: Grid, choices: Choices) -> None:
        self._decimals = choices.decimals
        self._own = choices.currency
        self._is_bank = choices.is_bank
        self._places = {role: places[0] for role in Role if (places := choices.columns(role))}
        self._turned = {
            role
            for role in (Role.MONEY_OUT, Role.MONEY_IN)
            if self._all_negative(grid.rows[choices.heading :], role)
        }
        minor_units(self._own)

    def _all_negative(self, rows: Sequence[Sequence[Cell]], role: Role) -> bool:
        """Whether a column writes all its sums with a minus, as some banks do for money out."""
        found = False
        for row in rows:
            cell = self._cell(row, role)
            if isinstance(cell, Decimal):
                number = cell
            else:
                one = written(cell) if isinstance(cell, str) else None
                if one is None or not one.number.strip("0.,"):
                    continue
                number = Decimal(-1 if one.negative else 1)
            if number > 0:
                return False
            found = found or number < 0
        return found

    def read(self, row: Sequence[Cell]) -> Paid:
        """What a row comes to.

        Raises:
            JournalError: a cell can't be read as what it is called; without a full stop.
        """
        quantity = self._quantity(row)
        found = self._amount(row, quantity)
        currency = self._currency(row, found)
        amount, rounded = None, False
        if found is not None:
            amount, rounded = _minor(found.number, currency, typed=self._is_typed(row))
        total = self._other(row, Role.TOTAL, currency)
        return Paid(
            amount, currency, quantity, total, self._other(row, Role.NEW_PRICE, currency), rounded
        )

    def plain_amount(self, row: Sequence[Cell]) -> int | None:
        """The sum in a row that is perhaps a total, in minor units; None where there is none."""
        try:
            found = self._amount(row, Decimal(1))
            if found is None:
                return None
            return _minor(found.number, self._currency(row, found), typed=False)[0]
        except JournalError:
            return None

    def _amount(self, row: Sequence[Cell], quantity: Decimal) -> _Sum | None:
        if (one := self._sum(row, Role.AMOUNT)) is not None:
            return _Sum(-one.number if self._is_bank else one.number, one.currency)
        if (each := self._sum(row, Role.EACH)) is not None:
            return _Sum(each.number * quantity, each.currency)
        out, back = self._sum(row, Role.MONEY_OUT), self._sum(row, Role.MONEY_IN)
        if out is not None and back is not None and out.number and back.number:
            raise JournalError("money out and money in are both filled")
        if out is not None and (out.number or back is None):
            return _Sum(-out.number if Role.MONEY_OUT in self._turned else out.number, out.currency)
        if back is None:
            return None
        return _Sum(back.number if Role.MONEY_IN in self._turned else -back.number, back.currency)

    def _other(self, row: Sequence[Cell], role: Role, currency: str) -> int | None:
        found = self._sum(row, role)
        if found is None:
            return None
        if found.currency and found.currency != currency:
            raise JournalError(f"the {role.value} is in {found.currency}, the row in {currency}")
        return _minor(found.number, currency, typed=False)[0]

    def _sum(self, row: Sequence[Cell], role: Role) -> _Sum | None:
        cell = self._cell(row, role)
        if cell is None or (isinstance(cell, str) and cell in ("-", "–", "—")):
            return None
        if isinstance(cell, Decimal):
            return _Sum(cell, "")
        one = written(cell) if isinstance(cell, str) else None
        if one is None:
            raise JournalError(f"“{shown(cell)[:40]}” is no sum of money")
        try:
            number = value(one, self._decimals)
            currency = _currency_of(one.words, self._own) if one.words else ""
        except JournalError as error:
            raise JournalError(f"the {role.value}: {error}") from error
        return _Sum(-number if one.negative else number, currency)

    def _is_typed(self, row: Sequence[Cell]) -> bool:
        """Whether the amount is a text, whose places are as somebody wrote them."""
        return Role.EACH not in self._places and isinstance(self._cell(row, Role.AMOUNT), str)

    def _quantity(self, row: Sequence[Cell]) -> Decimal:
        cell = self._cell(row, Role.QUANTITY)
        if cell is None:
            return Decimal(1)
        number = cell
        if isinstance(cell, str):
            one = written(cell)
            if one is None or one.negative or len(one.words) > 12:
                raise JournalError(f"“{cell[:40]}” is no quantity")
            # How many is told by the number itself; "1.234" is by the sheet's mark, or a part.
            is_open = one.mark is Mark.OPEN
            settled = self._decimals in (Decimals.POINT, Decimals.COMMA)
            unsettled = Decimals.POINT if is_open else Decimals.BOTH
            number = value(one, self._decimals if is_open and settled else unsettled)
        if isinstance(number, bool) or not isinstance(number, Decimal):
            raise JournalError(f"“{shown(cell)[:40]}” is no quantity")
        if not LEAST_QUANTITY <= number <= MOST_QUANTITY:
            raise JournalError(f"{shown(cell)[:40]} is no quantity that a thing comes in")
        return number

    def _currency(self, row: Sequence[Cell], found: _Sum | None) -> str:
        """The currency of a row: what its own column says, the sign at the sum, or the sheet's."""
        cell = self._cell(row, Role.CURRENCY)
        beside = found.currency if found else ""
        if cell is None:
            return beside or self._own
        named = _currency_of(shown(cell), self._own)
        if beside and beside != named:
            raise JournalError(f"the amount is in {beside}, the row in {named}")
        return named

    def _cell(self, row: Sequence[Cell], role: Role) -> Cell:
        place = self._places.get(role)
        return row[place] if place is not None and place < len(row) else None


@lru_cache(maxsize=256)
def _currency_of(said: str, own: str) -> str:
    """The ISO 4217 code that a sign or a code stands for.

    Raises:
        JournalError: it stands for none, or for several.
    """
    word = said.strip().strip(".").casefold()
    if word in _SIGNS:
        return _SIGNS[word]
    if word in _SHARED:
        if own in _SHARED[word]:
            return own
        if word in "$¥":
            return _SHARED[word][0]
        raise JournalError(f"“{said}” is the sign of several currencies; write the code instead")
    code = word.upper()
    if len(code) == 3 and code.isalpha():
        try:
            minor_units(code)
        except JournalError:
            raise JournalError(f"“{said[:20]}” is the code of no currency") from None
        return code
    raise JournalError(f"“{said[:20]}” is no currency")


def _minor(number: Decimal, currency: str, *, typed: bool) -> tuple[int, bool]:
    """A sum in minor units, and whether parts of one were rounded.

    Raises:
        JournalError: a typed sum has more places than its currency, or it is out of all reason.
    """
    places = minor_units(currency)
    if not number.is_finite() or abs(number) > MOST:
        raise JournalError(f"{number:.6g} is too large a sum to have been spent on a car")
    exact = number.scaleb(places)
    whole = exact.to_integral_value(rounding=ROUND_HALF_UP)
    if typed and whole != exact:
        raise JournalError(f"{number} has more decimal places than {currency} has ({places})")
    if abs(whole) > MOST:
        raise JournalError(f"{number:.6g} is too large a sum to have been spent on a car")
    return int(whole), whole != exact
