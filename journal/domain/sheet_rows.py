"""Spreadsheets brought in: their cells, what each column is, and what a row says.

A row number is that of the file as a spreadsheet shows it, from 1.
"""

from dataclasses import dataclass
from datetime import date, datetime, time, timedelta
from decimal import Decimal
from enum import StrEnum

from journal.domain.ids import ReceiptId, WorkId
from journal.domain.receipts import Category, Condition, Paper, Spread
from journal.domain.when import When

#: More rows than this are no list of what a car cost.
MOST_ROWS = 200_000
#: More columns than this are no list either.
MOST_COLUMNS = 200


@dataclass(frozen=True, slots=True)
class BadCell:
    """A cell that holds no value: an error such as "#REF!", or why else there is none."""

    text: str


Cell = str | Decimal | bool | date | datetime | time | timedelta | BadCell | None


class Role(StrEnum):
    """What a column is, in the words of the screen."""

    LEAVE_OUT = "leave out"
    DATE = "date"
    SUPPLIER = "supplier"
    NUMBER = "receipt number"
    WHAT = "what was bought"
    QUANTITY = "quantity"
    AMOUNT = "amount"
    EACH = "price each"
    MONEY_OUT = "money out"
    MONEY_IN = "money in"
    TOTAL = "printed total"
    CURRENCY = "currency"
    RATE = "rate paid"
    NEW_PRICE = "price new"
    CATEGORY = "category"
    CONDITION = "condition"
    SPREAD = "spread over the receipt"
    AREA = "repair area"
    PAPER = "paper"
    STANDS_IN = "what stands in"
    HOURS = "hours"
    MINUTES = "minutes"
    PERSON = "person"
    NOTE = "note"


#: Roles of columns that say what a row comes to, and of all that hold money.
AMOUNTS = (Role.AMOUNT, Role.EACH, Role.MONEY_OUT, Role.MONEY_IN)
MONEY = frozenset((*AMOUNTS, Role.TOTAL, Role.NEW_PRICE))
#: Roles that several columns may have; their words are put together.
REPEATABLE = frozenset((Role.LEAVE_OUT, Role.WHAT, Role.SUPPLIER, Role.NOTE, Role.AREA))


class DayOrder(StrEnum):
    """In which order dates of three numbers are written."""

    DMY = "dmy"
    MDY = "mdy"
    YMD = "ymd"


class Decimals(StrEnum):
    """What parts whole units from their decimals.

    ``BOTH``: each sum as it is written; one that can be read in two ways is refused.
    """

    POINT = "point"
    COMMA = "comma"
    BOTH = "both"


@dataclass(frozen=True, slots=True)
class Grid:
    """One sheet: a name and its rows, each cut behind its last filled cell.

    ``remarks`` are sentences on what could not be kept of it.
    """

    name: str
    rows: tuple[tuple[Cell, ...], ...]
    remarks: tuple[str, ...] = ()

    @property
    def width(self) -> int:
        """How many columns the widest row has."""
        return max(map(len, self.rows), default=0)


@dataclass(frozen=True, slots=True)
class Choices:
    """How a sheet is to be read.

    Attributes:
        heading: the row number of the headings, 0 where there are none.
        roles: what each column is.
        is_bank: whether it is a bank's list of lines instead of the owner's own list.
        dates: the order of dates of three numbers; None while that is open.
        decimals: the decimal mark of sums written as text; None while that is open.
        currency: ISO 4217 code where a row names none.
        person: who worked where a row names nobody.
        fill_down: whether an empty date or supplier is that of the row above.
    """

    heading: int
    roles: tuple[Role, ...]
    is_bank: bool = False
    dates: DayOrder | None = None
    decimals: Decimals | None = None
    currency: str = "EUR"
    person: str = ""
    fill_down: bool = False

    def columns(self, role: Role) -> tuple[int, ...]:
        """The places of the columns of a role, from 0."""
        return tuple(place for place, has in enumerate(self.roles) if has is role)


@dataclass(frozen=True, slots=True)
class Known:
    """What the journal knows already, by which columns are told: names, and its currency."""

    currency: str
    suppliers: frozenset[str] = frozenset()
    areas: frozenset[str] = frozenset()
    people: frozenset[str] = frozenset()
    person: str = ""


@dataclass(frozen=True, slots=True)
class Question:
    """What only the person can say of a whole sheet: examples of what is open."""

    examples: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Proposal:
    """How a sheet is probably to be read, and what has to be asked first.

    ``headings`` are the words over the columns, letters where there are none. ``dates`` and
    ``decimals`` are the questions; None where nothing is open.
    """

    choices: Choices
    headings: tuple[str, ...]
    dates: Question | None = None
    decimals: Question | None = None

    @property
    def is_open(self) -> bool:
        """Whether something has to be asked before the sheet can be read."""
        return self.dates is not None or self.decimals is not None


@dataclass(frozen=True, slots=True)
class Told:
    """A row that brings nothing in, and why, in a plain sentence without its full stop.

    ``text`` is what stands in the row.
    """

    row: int
    reason: str
    text: str = ""


@dataclass(frozen=True, slots=True)
class SheetRow:
    """What one row says.

    ``amount`` is in minor units of ``currency``: what was paid, less than nothing for money back;
    None where the row is of hours alone. ``areas`` are names with whole-number weights.
    ``minutes`` is the time worked, 0 for none.
    """

    row: int
    when: When
    supplier: str = ""
    number: str = ""
    what: str = ""
    quantity: Decimal = Decimal(1)
    amount: int | None = None
    currency: str = ""
    total: int | None = None
    rate: Decimal = Decimal(1)
    new_price: int | None = None
    category: Category = Category.OTHER
    condition: Condition = Condition.NEW
    spread: Spread = Spread.NONE
    areas: tuple[tuple[str, int], ...] = ()
    paper: Paper = Paper.LOST
    stands_in: str = ""
    minutes: int = 0
    person: str = ""
    note: str = ""


@dataclass(frozen=True, slots=True)
class Understood:
    """A sheet as read: what its rows say, which can't be read, and which are no record at all.

    ``remarks`` are sentences on what holds for many rows.
    """

    rows: tuple[SheetRow, ...]
    refused: tuple[Told, ...]
    left_out: tuple[Told, ...]
    remarks: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class BroughtBefore:
    """What became of a row that was brought in before; both None where it was taken out since."""

    receipt_id: ReceiptId | None
    work_id: WorkId | None


def letter(place: int) -> str:
    """The name a spreadsheet gives to a column by its place from 0: A, B, ... Z, AA."""
    name, left = "", place + 1
    while left:
        left, digit = divmod(left - 1, 26)
        name = chr(ord("A") + digit) + name
    return name


def shown(cell: Cell) -> str:
    """A cell as people read it."""
    if cell is None:
        return ""
    if isinstance(cell, BadCell):
        return cell.text
    if isinstance(cell, bool):
        return "yes" if cell else "no"
    if isinstance(cell, Decimal):
        return f"{cell:f}"
    if isinstance(cell, datetime) and cell.time() == time():
        return cell.date().isoformat()
    if isinstance(cell, datetime):
        return cell.isoformat(" ", "minutes")
    return str(cell)
