"""How many of a thing: read from what people type, written without needless noughts."""

import re
from decimal import Decimal

from journal.domain.errors import JournalError

_NUMBER = re.compile(r"[0-9]{1,6}(?:[.,][0-9]{1,4})?|[.,][0-9]{1,4}")


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
