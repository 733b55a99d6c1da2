"""How many of a thing, and what a currency cost: read from what people type, within reason."""

import re
from decimal import Decimal

from journal.domain.errors import JournalError

_NUMBER = re.compile(r"[0-9]{1,6}(?:[.,][0-9]{1,4})?|[.,][0-9]{1,4}")

_RATE = re.compile(r"[0-9]{1,9}(?:[.,][0-9]{1,9})?|[.,][0-9]{1,9}")

#: A quantity lies between these, both included.
LEAST_QUANTITY, MOST_QUANTITY = Decimal("0.0001"), Decimal("999999.9999")
#: A rate lies between these, both included.
LEAST_RATE, MOST_RATE = Decimal("0.000000001"), Decimal("999999999.999999999")


def parse_rate(text: str) -> Decimal:
    """Read how many units of one currency a unit of another cost: "1.17" or "0,0061".

    Raises:
        JournalError: the text is no number above zero, or one beyond all reason.
    """
    plain = text.strip()
    if not _RATE.fullmatch(plain) or not (rate := Decimal(plain.replace(",", "."))):
        raise JournalError(f"“{plain[:40]}” is not a rate; write for instance 1.17 or 0.0061.")
    return rate


def parse_quantity(text: str) -> Decimal:
    """Read a quantity: "4", "2.5" or "2,5"; nothing at all counts as one.

    Raises:
        JournalError: the text is no number above zero, or one beyond all reason.
    """
    plain = text.strip()
    if not plain:
        return Decimal(1)
    if not _NUMBER.fullmatch(plain):
        raise JournalError(f"“{plain[:40]}” is not a quantity; write for instance 4 or 2.5.")
    number = Decimal(plain.replace(",", "."))
    if not number:
        raise JournalError("A quantity is more than nothing.")
    return number


def write_quantity(quantity: Decimal) -> str:
    """A quantity as a screen shows it: "4", "2.5"."""
    return f"{quantity.normalize():f}"
