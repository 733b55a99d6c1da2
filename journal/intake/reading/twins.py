"""Two receipts on one paper or in one photo: noticed, so that nothing is guessed."""

from collections.abc import Sequence
from itertools import pairwise

from journal.intake.reading.items import ReadRow
from journal.intake.reading.keywords import Kind, kind
from journal.intake.reading.layout import Page, Word, rows
from journal.intake.reading.totals import named_totals

#: Fewer words than this on one side are no receipt.
_FEWEST = 5
#: How much of the page's width must lie bare between two receipts.
_GUTTER = 0.03


def two_receipts(page: Page) -> bool:
    """Whether a page shows two receipts side by side: each with a total and sums of its own."""
    gutter = _gutter(page.words)
    if gutter is None:
        return False
    left = tuple(word for word in page.words if word.x < gutter)
    right = tuple(word for word in page.words if word.x >= gutter)
    if min(len(left), len(right)) < _FEWEST:
        return False
    return _is_receipt(page, left) and _is_receipt(page, right)


def one_below_another(read: Sequence[ReadRow], has_date: Sequence[bool]) -> bool:
    """Whether a second receipt follows the first: another date, prices and a total that differs.

    A slip of a card below a receipt has its date and its total again, and no prices.
    """
    totals = named_totals(read)
    for (first, _, before), (second, _, after) in pairwise(totals):
        between = read[first + 1 : second]
        priced = any(one.kind is Kind.ITEM and one.amounts for one in between)
        dated = any(has_date[:first]) and any(has_date[first + 1 : second])
        if before.minor != after.minor and priced and dated:
            return True
    return False


def _is_receipt(page: Page, words: Sequence[Word]) -> bool:
    found = rows(Page(tuple(words), page.aspect, page.number))
    named = any(kind(row.text) in (Kind.TOTAL, Kind.GRAND_TOTAL) for row in found)
    with_numbers = sum(any(one.isdigit() for one in row.text) for row in found)
    return named and with_numbers >= 3


def _gutter(words: Sequence[Word]) -> float | None:
    """The middle of the widest bare strip that runs down the page, away from the edges."""
    spans = sorted((word.box.left, word.box.right) for word in words)
    widest: tuple[float, float] | None = None
    reach = spans[0][1] if spans else 0.0
    for left, right in spans:
        if left - reach > _GUTTER and (widest is None or left - reach > widest[0]):
            widest = (left - reach, (left + reach) / 2)
        reach = max(reach, right)
    return widest[1] if widest else None
