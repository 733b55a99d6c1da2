"""Which currency a paper is in, by the signs and codes on it."""

import re
from collections import Counter
from collections.abc import Sequence

from journal.domain.papers import Field
from journal.intake.reading.layout import Row

_CODES = (
    "EUR", "GBP", "USD", "CHF", "SEK", "NOK", "DKK", "ISK", "PLN", "CZK", "HUF", "JPY", "AUD",
    "CAD", "NZD",
)  # fmt: skip
_SIGNS = {"€": "EUR", "£": "GBP", "zł": "PLN", "Kč": "CZK"}
#: Signs of several currencies: the journal's own where it is one of them, else the first.
_SHARED = {
    "$": ("USD", "CAD", "AUD", "NZD"),
    "kr": ("SEK", "NOK", "DKK", "ISK"),
    "¥": ("JPY", "CNY"),
}
_CODE = re.compile(rf"(?<![A-Za-z])({'|'.join(_CODES)})(?![A-Za-z])")
_SIGN = re.compile(r"€|£|\$|¥|(?<=[0-9])\s?zł|(?<=[0-9])\s?Kč|(?<![A-Za-z])[Kk]r(?![A-Za-z])")


def currency_of(rows: Sequence[Row], own: str) -> Field[str] | None:
    """The currency most of the signs and codes stand for; None where there is none.

    ``own`` is the journal's currency, which settles signs that several share.
    """
    seen: Counter[str] = Counter()
    first: dict[str, tuple[Row, int, int, float]] = {}
    for row in rows:
        for found in (*_CODE.finditer(row.text), *_SIGN.finditer(row.text)):
            code, sure = _meant(found[0].strip(), own)
            seen[code] += 1
            first.setdefault(code, (row, found.start(), found.end(), sure))
    if not seen:
        return None
    code, _ = seen.most_common(1)[0]
    row, start, end, sure = first[code]
    if len(seen) > 1:
        sure *= 0.7
    return Field(code, sure * row.sure_of(start, end), row.box_of(start, end), row.page)


def _meant(sign: str, own: str) -> tuple[str, float]:
    if sign in _CODES:
        return sign, 0.97
    if sign in _SIGNS:
        return _SIGNS[sign], 0.97
    shared = _SHARED[sign.lower()]
    return (own, 0.95) if own in shared else (shared[0], 0.6)
