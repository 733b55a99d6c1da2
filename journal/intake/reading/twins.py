"""Two receipts on one paper or in one photo: noticed, so that nothing is guessed."""

from collections.abc import Iterator, Sequence
from itertools import pairwise

from journal.intake.reading.amounts import amounts
from journal.intake.reading.items import ReadRow
from journal.intake.reading.keywords import Kind, kind
from journal.intake.reading.layout import Page, Word, rows
from journal.intake.reading.totals import named_totals

#: Fewer words than this on one side are no receipt.
_FEWEST = 5
#: How much of the page's width must lie bare between two receipts.
_GUTTER = 0.03


def two_receipts(page: Page, places: int) -> bool:
    """Whether a page shows two receipts side by side, each with a total and sums of its own.

    ``places`` are the decimals of the currency.
    """
    return any(_parts(page, gutter, places) for gutter in _gutters(page.words))


def _parts(page: Page, gutter: float, places: int) -> bool:
    """Whether a bare strip down the page has a receipt on either side."""
    left = tuple(word for word in page.words if word.x < gutter)
    right = tuple(word for word in page.words if word.x >= gutter)
    if min(len(left), len(right)) < _FEWEST:
        return False
    return _is_receipt(page, left, places) and _is_receipt(page, right, places)


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


def _is_receipt(page: Page, words: Sequence[Word], places: int) -> bool:
    """Whether words are a receipt by themselves: a total, its sum and another one."""
    found = rows(Page(tuple(words), page.aspect, page.number))
    read = [ReadRow(row, kind(row.text), amounts(row.text, places)) for row in found]
    priced = sum(bool(one.amounts) for one in read)
    return bool(named_totals(read)) and priced > 1


def _gutters(words: Sequence[Word]) -> Iterator[float]:
    """The middles of bare strips that run down the page: also those between columns."""
    spans = sorted((word.box.left, word.box.right) for word in words)
    reach = spans[0][1] if spans else 0.0
    for left, right in spans:
        if left - reach > _GUTTER:
            yield (left + reach) / 2
        reach = max(reach, right)
