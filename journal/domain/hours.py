"""Time worked: read from what people type, written as people read it, in whole minutes."""

import re
from decimal import ROUND_HALF_UP, Decimal

from journal.domain.errors import JournalError

#: More than this by one person on one day is taken for a slip.
_DAY = 24 * 60

_CLOCK = re.compile(r"(?P<hours>[0-9]{1,2}):(?P<minutes>[0-5][0-9])(?: ?h(?:ours?|rs?)?)?")
_HOURS = re.compile(r"(?P<hours>[0-9]{1,3}(?:[.,][0-9]{1,4})?) ?(?:h(?:ours?|rs?)?\.?)?")
_BOTH = re.compile(
    r"(?P<hours>[0-9]{1,2}) ?h(?:ours?|rs?)?\.?,?(?: and)? ?"
    r"(?P<minutes>[0-9]{1,2}) ?(?:m(?:in(?:ute)?s?)?\.?)?"
)
_MINUTES = re.compile(r"(?P<minutes>[0-9]{1,4}) ?m(?:in(?:ute)?s?)?\.?")
_FRACTIONS = {"½": ".5", "¼": ".25", "¾": ".75"}


def parse_hours(text: str) -> int:
    """Read a time worked on one day as people write it: "3", "3.5", "3:30", "2h 15", "45 min".

    Parts of a minute are rounded to the nearest whole one.

    Raises:
        JournalError: the text is no time, is nothing, or is more than a day has.
    """
    shown = text.strip()[:40]
    minutes = _read(_plain(text))
    if minutes is None:
        raise JournalError(
            f"“{shown}” is no time worked; write for instance 3, 3.5, 3:30, 2h 15 or 45 min."
        )
    if minutes == 0:
        raise JournalError("The time worked must be more than nothing.")
    if minutes > _DAY:
        raise JournalError(f"“{shown}” is more time than a day has.")
    return minutes


def spoken_hours(minutes: int) -> str:
    """A time as a screen shows it: "45 min", "3 h", "1,212 h 30 min"."""
    whole, rest = divmod(minutes, 60)
    if not whole:
        return f"{rest} min"
    return f"{whole:,} h {rest} min" if rest else f"{whole:,} h"


def _plain(text: str) -> str:
    plain = re.sub(r"\s+", " ", text).strip().lower()
    for sign, digits in _FRACTIONS.items():
        plain = re.sub(rf"(?<=[0-9]) ?{sign}", digits, plain).replace(sign, f"0{digits}")
    return re.sub(r"^(?=[.,][0-9])", "0", plain)


def _read(plain: str) -> int | None:
    """Whole minutes, None where the text is no time."""
    if found := _CLOCK.fullmatch(plain) or _BOTH.fullmatch(plain):
        minutes = int(found["minutes"])
        return None if minutes > 59 else int(found["hours"]) * 60 + minutes
    if found := _HOURS.fullmatch(plain):
        exact = Decimal(found["hours"].replace(",", ".")) * 60
        return int(exact.to_integral_value(rounding=ROUND_HALF_UP))
    if found := _MINUTES.fullmatch(plain):
        return int(found["minutes"])
    return None
