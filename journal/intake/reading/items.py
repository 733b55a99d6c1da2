"""What was bought: rows with words and a price, or a price on the row below."""

import re
from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from journal.domain.papers import Field, ReadLine
from journal.domain.quantities import LEAST_QUANTITY, MOST_QUANTITY
from journal.intake.reading.amounts import Amount, digits_mended
from journal.intake.reading.keywords import Kind
from journal.intake.reading.layout import Row

_TIMES = r"[xX×*@]"
_NUMBER = r"(?P<number>[0-9]{1,4}(?:[.,][0-9]{1,3})?)"
_UNIT = r"(?:\s?(?:st|stk|pcs|pc|ea|kg|g|l|m|cm|mm|stück|pièces?|stuks?)\b\.?)?"
_IN_FRONT = re.compile(rf"^\s*{_NUMBER}{_UNIT}\s?(?:{_TIMES}\s*|(?=\s|[A-ZÀ-Þ]))")
_BEHIND = re.compile(rf"(?:(?<=\s)|^){_NUMBER}{_UNIT}\s*(?:{_TIMES}|\s)?\s*$")
_POSITION = re.compile(rf"^\s*([0-9]{{1,2}})[.)]?\s+(?!{_TIMES}\s)")
_CODE_IN_FRONT = re.compile(r"^\s*[0-9]{5,}\s+")
_LONGEST_TEXT = 120


@dataclass(frozen=True, slots=True)
class ReadRow:
    """A row with its sums and what it is about."""

    row: Row
    kind: Kind
    amounts: tuple[Amount, ...]

    @property
    def last(self) -> Amount | None:
        """The sum furthest to the right."""
        return self.amounts[-1] if self.amounts else None


def items(rows: Sequence[ReadRow], end: int) -> tuple[tuple[int, Field[ReadLine]], ...]:
    """The lines among the first ``end`` rows, each with the number of its row."""
    found: list[tuple[int, Field[ReadLine]]] = []
    numbered = _are_numbered(rows[:end])
    waiting: Row | None = None
    for number, read in enumerate(rows[:end]):
        if read.kind not in (Kind.ITEM, Kind.TOTAL):
            waiting = None
            continue
        line = _line(read, waiting, numbered=numbered)
        if line is not None:
            found.append((number, line))
        waiting = read.row if line is None and _is_words(read) else None
    return tuple(found)


def _are_numbered(rows: Sequence[ReadRow]) -> bool:
    """Whether lines begin with their number in the list, 1, 2, 3, which is no quantity."""
    priced = [read for read in rows if read.kind is Kind.ITEM and read.amounts]
    numbers = [_POSITION.match(read.row.text) for read in priced]
    in_order = [int(found[1]) if found else 0 for found in numbers] == [*range(1, len(priced) + 1)]
    return (
        len(priced) > 1
        and in_order
        and any(
            len(read.amounts) < 2
            or not _makes(Decimal(place), read.amounts[-2].minor, read.amounts[-1].minor)
            for place, read in enumerate(priced, start=1)
        )
    )


def _is_words(read: ReadRow) -> bool:
    return not read.amounts and _letters(read.row.text) >= 3


def _line(read: ReadRow, above: Row | None, *, numbered: bool) -> Field[ReadLine] | None:
    last = read.last
    if last is None or _letters(read.row.text[last.end :]) > 3:
        return None
    text = read.row.text[: read.amounts[0].start]
    if numbered:
        text = _POSITION.sub("", text)
    quantity, text = _quantity(text, read.amounts)
    shown = read.row
    if _letters(text) < 2:
        if above is None:
            return None
        text = _CODE_IN_FRONT.sub("", above.text)
        box = above.box.joined(read.row.box)
    else:
        box = shown.box
    clean = _clean(text)
    if _letters(clean) < 2:
        return None
    sure = shown.sure_of(0, len(shown.text)) * (0.95 if len(read.amounts) < 3 else 0.7)
    return Field(ReadLine(clean, quantity, last.minor), sure, box, shown.page)


def _quantity(text: str, found: Sequence[Amount]) -> tuple[Decimal, str]:
    """How many, and the text without it.

    A number beside a price of one counts where the two make the price of all; a number with a
    sign of multiplication counts by itself.
    """
    mended = digits_mended(text)
    unit, total = (found[-2].minor, found[-1].minor) if len(found) > 1 else (None, None)
    for pattern in (_IN_FRONT, _BEHIND):
        match = pattern.search(mended)
        if match is None:
            continue
        quantity = Decimal(match["number"].replace(",", "."))
        if not LEAST_QUANTITY <= quantity <= MOST_QUANTITY:
            continue
        makes = unit is not None and total is not None and _makes(quantity, unit, total)
        multiplied = bool(re.search(_TIMES, match[0])) and unit is None
        if makes or multiplied:
            return quantity, text[: match.start()] + " " + text[match.end() :]
    return Decimal(1), text


def _makes(quantity: Decimal, unit: int, total: int) -> bool:
    return abs(quantity * unit - total) <= max(Decimal(1), abs(quantity) / 2)


def _clean(text: str) -> str:
    text = re.sub(rf"\s{_TIMES}\s*$", "", text)
    text = _CODE_IN_FRONT.sub("", text)
    text = re.sub(r"[\s.·:_€£$¥|]+$|^[\s.·:_|*#-]+", "", text)
    return " ".join(text.split())[:_LONGEST_TEXT]


def _letters(text: str) -> int:
    return sum(one.isalpha() for one in text)
