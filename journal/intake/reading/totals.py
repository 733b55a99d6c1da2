"""The total of a receipt and the tax in it: by the words beside it, and by what adds up."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from journal.domain.papers import Field
from journal.intake.reading.amounts import Amount
from journal.intake.reading.items import ReadRow
from journal.intake.reading.keywords import Kind
from journal.intake.reading.layout import Row

_RATE = re.compile(r"([0-9]{1,2}(?:[.,][0-9]{1,2})?)\s?%")


@dataclass(frozen=True, slots=True)
class _Candidate:
    number: int
    row: Row
    amount: Amount
    score: float
    supported: bool


def named_totals(rows: Sequence[ReadRow]) -> tuple[tuple[int, ReadRow, Amount], ...]:
    """Rows that call themselves the total, with the sum on them or alone on the row below."""
    return tuple(_named(rows))


def _named(rows: Sequence[ReadRow]) -> Iterator[tuple[int, ReadRow, Amount]]:
    for number, read in enumerate(rows):
        if read.kind not in (Kind.TOTAL, Kind.GRAND_TOTAL):
            continue
        if read.last is not None:
            yield number, read, read.last
            continue
        following = rows[number + 1] if number + 1 < len(rows) else None
        if following and len(following.amounts) == 1 and _is_bare(following):
            yield number, following, following.amounts[0]


def _is_bare(read: ReadRow) -> bool:
    return sum(one.isalpha() for one in read.row.text) <= 3


def total(rows: Sequence[ReadRow], item_rows: Sequence[int], items_sum: int) -> Field[int] | None:
    """The total as it stands on the paper; None where no row says so and nothing adds up to it.

    ``item_rows`` are the numbers of the rows that are lines, ``items_sum`` is what those make.
    """
    paid = cash_less_change(rows)
    taxes = [a.minor for read in rows if read.kind is Kind.TAX for a in read.amounts]
    nets = [a.minor for read in rows if read.kind is Kind.SUBTOTAL for a in read.amounts]
    settled = {a.minor for read in rows if read.kind is Kind.CASH for a in read.amounts}
    proofs = {items_sum} if item_rows else set()
    proofs |= paid | settled | {net + tax for net in nets for tax in taxes}
    candidates = []
    for number, read, amount in named_totals(rows):
        if number in item_rows:
            continue
        score = 3.0 if read.kind is Kind.GRAND_TOTAL or rows[number].kind is Kind.GRAND_TOTAL else 2
        supported = amount.minor in proofs
        candidates.append(_Candidate(number, read.row, amount, score + 2 * supported, supported))
    if not candidates:
        candidates = list(_unnamed(rows, item_rows, paid, items_sum))
    return _best(candidates)


def _unnamed(
    rows: Sequence[ReadRow], item_rows: Sequence[int], paid: set[int], items_sum: int
) -> Iterator[_Candidate]:
    """Sums on the paper that no word calls the total, yet that the lines or the payment make."""
    wanted = set(paid)
    if len(item_rows) > 1:
        wanted.add(items_sum)
    for number, read in enumerate(rows):
        last = read.last
        if last is None or number in item_rows or read.kind is not Kind.ITEM:
            continue
        if last.minor in wanted and last.minor > 0:
            yield _Candidate(number, read.row, last, 1.0, supported=False)


def _best(candidates: Sequence[_Candidate]) -> Field[int] | None:
    if not candidates:
        return None
    best = max(candidates, key=lambda one: (one.score, one.number))
    rivals = {one.amount.minor for one in candidates if one.score == best.score}
    sure = 0.95 if best.supported else 0.75 if best.score >= 2 else 0.5
    if len(rivals) > 1:
        sure = min(sure, 0.5)
    amount, row = best.amount, best.row
    read = row.sure_of(amount.start, amount.end)
    return Field(amount.minor, sure * read, row.box_of(amount.start, amount.end), row.page)


def cash_less_change(rows: Sequence[ReadRow]) -> set[int]:
    """What was paid: cash given less the change, one sum for each pair that makes sense."""
    cash = [read.last.minor for read in rows if read.kind is Kind.CASH and read.last]
    change = [abs(read.last.minor) for read in rows if read.kind is Kind.CHANGE and read.last]
    return {given - back for given in cash for back in change if given > back > 0}


def tax(rows: Sequence[ReadRow], total_minor: int | None) -> Field[int] | None:
    """The tax printed: what its rate makes of the total, or the one sum beside its word."""
    found: list[Field[int]] = []
    for number, read in enumerate(rows):
        if read.kind is not Kind.TAX:
            continue
        rate = _RATE.search(read.row.text)
        amount = _tax_on(read, float(rate[1].replace(",", ".")) if rate else None, total_minor)
        if amount is None and not read.amounts and rate:
            amount = _below(rows, number)
        if amount is not None:
            row = read.row
            sure = (0.9 if rate else 0.8) * row.sure_of(amount.start, amount.end)
            found.append(Field(amount.minor, sure, row.box_of(amount.start, amount.end), row.page))
    return _together(found)


def _below(rows: Sequence[ReadRow], number: int) -> Amount | None:
    following = rows[number + 1] if number + 1 < len(rows) else None
    bare = following is not None and len(following.amounts) == 1 and _is_bare(following)
    return following.amounts[0] if bare and following else None


def _tax_on(read: ReadRow, rate: float | None, total_minor: int | None) -> Amount | None:
    if not read.amounts:
        return None
    if len(read.amounts) == 1:
        return read.amounts[0]
    if rate is None:
        return None
    sums = [amount.minor for amount in read.amounts]
    for amount in read.amounts:
        for base in [*sums, *([total_minor] if total_minor else [])]:
            contained, added = base * rate / (100 + rate), base * rate / 100
            if (
                base != amount.minor
                and min(abs(amount.minor - contained), abs(amount.minor - added)) <= 1.01
            ):
                return amount
    return None


def _together(found: Sequence[Field[int]]) -> Field[int] | None:
    """One field for the tax: the sum of rates that stand one below the other."""
    if not found:
        return None
    values = [field.value for field in found]
    same = len(set(values)) == 1
    last_is_sum = len(values) > 2 and sum(values[:-1]) == values[-1]
    if len(found) == 1 or same or last_is_sum:
        return found[-1]
    box = found[0].box
    for one, other in pairwise(found):
        if one.page != other.page:
            return found[0]
        box = box.joined(other.box)
    return Field(sum(values), min(field.sure for field in found) * 0.8, box, found[0].page)
