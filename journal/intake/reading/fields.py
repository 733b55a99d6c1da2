"""The fields of a receipt out of the words on its pages."""

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date
from difflib import SequenceMatcher

from journal.domain.money import minor_units
from journal.domain.papers import DateOrder, Field, ReadLine, ReadReceipt, nothing_read
from journal.domain.when import When
from journal.intake.reading import keywords
from journal.intake.reading.amounts import amounts
from journal.intake.reading.currencies import currency_of
from journal.intake.reading.dates import FoundDate, dates
from journal.intake.reading.items import ReadRow, items
from journal.intake.reading.keywords import Kind
from journal.intake.reading.layout import Page, Row, rows
from journal.intake.reading.totals import cash_less_change, named_totals, tax, total
from journal.intake.reading.twins import one_below_another, two_receipts

#: Of the rows of a page, how many from the top may name the supplier.
_HEAD = 8
_ALIKE = 0.8
#: Misread words differ in length by so few letters.
_LETTERS_MORE = 2
#: How much less sure a date is that is another day in the other order: never more than to check.
_OPEN = 0.65
_ENDING = frozenset((Kind.SUBTOTAL, Kind.TAX, Kind.GRAND_TOTAL, Kind.CASH, Kind.CHANGE))

TWO_RECEIPTS = (
    "There seem to be two receipts on this paper; photograph each by itself, or fill in the one "
    "that is meant."
)


@dataclass(frozen=True, slots=True)
class Known:
    """What the journal knows already: ``currency`` is its own, ``suppliers`` its suppliers."""

    currency: str
    suppliers: tuple[str, ...] = ()
    date_order: DateOrder = DateOrder.DAY_FIRST


def receipt_of(pages: Sequence[Page], known: Known, today: date) -> ReadReceipt:
    """Read a receipt; what can't be told is left out, never made up."""
    all_rows = [row for page in pages for row in rows(page)]
    text = "\n".join(row.text for row in all_rows)
    turns = tuple(page.turn for page in pages) or (0,)
    if not all_rows:
        return nothing_read("No words could be read on this paper.")
    currency = currency_of(all_rows, known.currency)
    places = minor_units(currency.value if currency else known.currency)
    read = [_read_row(row, places) for row in all_rows]
    has_date = [bool(dates(row.text, known.date_order, today)) for row in all_rows]
    if any(two_receipts(page, places) for page in pages) or one_below_another(read, has_date):
        return ReadReceipt(None, None, None, None, None, (), text, None, (TWO_RECEIPTS,), turns)
    found = _without_total(items(read, _end_of_items(read)), read)
    made = sum(line.value.amount for _, line in found)
    whole = total(read, [number for number, _ in found], made)
    when, other = _date(all_rows, known.date_order, today)
    return ReadReceipt(
        supplier=_supplier(all_rows, known.suppliers),
        when=when,
        currency=currency,
        total=whole,
        tax=tax(read, whole.value if whole else None),
        lines=tuple(line for _, line in found),
        text=text,
        other_date=other,
        turns=turns,
    )


def _read_row(row: Row, places: int) -> ReadRow:
    return ReadRow(row, keywords.kind(row.text), amounts(row.text, places))


def _end_of_items(read: Sequence[ReadRow]) -> int:
    """The row that the lines end at: a subtotal, the tax or the total, after the first price."""
    priced = False
    total_rows = {number for number, _, _ in named_totals(read)}
    for number, one in enumerate(read):
        if priced and (one.kind in _ENDING or number in total_rows):
            return number
        if not priced and number in total_rows:
            return number
        priced = priced or (bool(one.amounts) and one.kind is Kind.ITEM)
    return len(read)


def _without_total(
    found: Sequence[tuple[int, Field[ReadLine]]], read: Sequence[ReadRow]
) -> Sequence[tuple[int, Field[ReadLine]]]:
    """The lines without a last one that is their sum or what was paid: a total misread."""
    if len(found) < 2:
        return found
    last = found[-1][1].value.amount
    before = [line.value.amount for _, line in found[:-1]]
    is_sum = len(before) > 1 and last == sum(before)
    return found[:-1] if is_sum or last in cash_less_change(read) else found


def _date(
    all_rows: Sequence[Row], order: DateOrder, today: date
) -> tuple[Field[When] | None, When | None]:
    best: tuple[float, Row, FoundDate] | None = None
    for row in all_rows:
        for found in dates(row.text, order, today):
            before = row.text[: found.start]
            score = 0.9
            if keywords.has_any(before, keywords.OTHER_DAYS):
                score = 0.4
            elif keywords.has_any(before, keywords.ITS_DAY):
                score = 0.97
            if best is None or score > best[0]:
                best = (score, row, found)
    if best is None:
        return None, None
    score, row, found = best
    sure = score * row.sure_of(found.start, found.end) * (_OPEN if found.other else 1.0)
    field = Field(When.on(found.day), sure, row.box_of(found.start, found.end), row.page)
    return field, When.on(found.other) if found.other else None


def _supplier(all_rows: Sequence[Row], known: Sequence[str]) -> Field[str] | None:
    first_page = [row for row in all_rows if row.page == all_rows[0].page]
    known_one = _known_supplier(all_rows, known)
    if known_one is not None:
        return known_one
    heads = list(_names(first_page[:_HEAD]))
    if not heads:
        return None
    tallest = max(row.height for row in heads)
    chosen = next(row for row in heads if row.height >= 0.8 * tallest)
    name = " ".join(chosen.text.split()).strip(" *-=_.:#")
    sure = 0.7 if chosen is heads[0] else 0.6
    return Field(name, sure * chosen.sure_of(0, len(chosen.text)), chosen.box, chosen.page)


def _names(head: Sequence[Row]) -> Iterator[Row]:
    """Rows that may be a name: mostly letters, no heading, nothing else that has a word."""
    for row in head:
        letters = sum(one.isalpha() for one in row.text)
        digits = sum(one.isdigit() for one in row.text)
        plain = keywords.plain(row.text)
        if letters < 3 or digits > letters / 3 or plain in keywords.HEADINGS:
            continue
        if keywords.kind(row.text) is not Kind.ITEM or "www" in plain or "@" in row.text:
            continue
        yield row


def _known_supplier(all_rows: Sequence[Row], known: Sequence[str]) -> Field[str] | None:
    """The journal's supplier that a row near the top names, or one further down exactly."""
    best: tuple[float, str, Row] | None = None
    for number, row in enumerate(all_rows):
        plain = keywords.plain(row.text)
        for name in known:
            alike = _likeness(keywords.plain(name), plain)
            least = _ALIKE if number < _HEAD else 1.0
            if alike >= least and (best is None or alike > best[0]):
                best = (alike, name, row)
    if best is None:
        return None
    alike, name, row = best
    return Field(name, 0.97 * alike, row.box, row.page)


def _likeness(name: str, text: str) -> float:
    """How much a row is a name, 0 to 1, with or without more words before and after it.

    Words may be misread or run together; one more between them makes it another name.
    """
    if len(name) < 3:
        return 0.0
    if f" {name} " in f" {text} ":
        return 1.0
    one, words = name.replace(" ", ""), text.split()
    many = name.count(" ") + 1
    runs = {
        "".join(words[at : at + size])
        for size in range(1, many + 1)
        for at in range(len(words) - size + 1)
    }
    return max((_alike(one, other) for other in runs), default=0.0)


def _alike(one: str, other: str) -> float:
    if abs(len(one) - len(other)) > _LETTERS_MORE:
        return 0.0
    counts = Counter(one) & Counter(other)
    if 2 * counts.total() < _ALIKE * (len(one) + len(other)):
        return 0.0
    return SequenceMatcher(None, one, other, autojunk=False).ratio()
