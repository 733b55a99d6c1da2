"""What was read from the paper of a receipt, field by field, with where and how surely."""

from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum
from typing import Generic, TypeVar

from journal.domain.when import When

T = TypeVar("T")

#: From here on a field is called sure, and likely.
SURE, LIKELY = 0.9, 0.65


class DateOrder(StrEnum):
    """In which order a date of three numbers is written, where the numbers leave it open."""

    DAY_FIRST = "day first"
    MONTH_FIRST = "month first"


@dataclass(frozen=True, slots=True)
class Box:
    """A rectangle on a page, in parts of its width and height: 0, 0 is the upper left corner."""

    left: float
    top: float
    right: float
    bottom: float

    def joined(self, other: "Box") -> "Box":
        """The smallest box round both."""
        return Box(
            min(self.left, other.left),
            min(self.top, other.top),
            max(self.right, other.right),
            max(self.bottom, other.bottom),
        )


@dataclass(frozen=True, slots=True)
class Field(Generic[T]):
    """A value read from a paper: how sure, 0 to 1, and where; ``page`` counts from 0."""

    value: T
    sure: float
    box: Box
    page: int = 0


@dataclass(frozen=True, slots=True)
class ReadLine:
    """A line as printed; ``amount`` is for all of it, in minor units."""

    text: str
    quantity: Decimal
    amount: int


@dataclass(frozen=True, slots=True)
class ReadReceipt:
    """A receipt as read; a field that isn't on the paper, or can't be told, is None.

    ``turns`` is by how many degrees clockwise each page had to be turned to be read; boxes are
    those of the turned page. ``other_date`` is what the date is in the other order of day and
    month, where the numbers leave it open. ``remarks`` are sentences for the person. ``text``
    is all that was read, row by row.
    """

    supplier: Field[str] | None
    when: Field[When] | None
    currency: Field[str] | None
    total: Field[int] | None
    tax: Field[int] | None
    lines: tuple[Field[ReadLine], ...]
    text: str
    other_date: When | None = None
    remarks: tuple[str, ...] = ()
    turns: tuple[int, ...] = (0,)

    @property
    def is_empty(self) -> bool:
        """Whether no field could be filled."""
        fields = (self.supplier, self.when, self.total, self.tax)
        return not self.lines and not any(fields)


def nothing_read(*remarks: str) -> ReadReceipt:
    """A paper that nothing could be read from, and why."""
    return ReadReceipt(None, None, None, None, None, (), "", remarks=remarks)


def sure_word(sure: float) -> str:
    """How sure a field is, in a word or two."""
    if sure >= SURE:
        return "sure"
    return "likely" if sure >= LIKELY else "please check"
