"""Money as whole minor units: read from what people type, written as people read it.

Minor units are those of ISO 4217: cents for EUR, yen for JPY, fils for KWD.
"""

import re
from decimal import ROUND_HALF_UP, Decimal, localcontext
from functools import lru_cache
from typing import TYPE_CHECKING

from journal.domain.errors import JournalError

if TYPE_CHECKING:
    from babel.numbers import NumberPattern

#: In ISO 4217's list of 2026-01-01 but too new for the libraries.
_NEWER = {"XAD": 2, "XCG": 2, "ZWG": 2}
#: Codes of ISO 4217 that are no money to pay with: metals, units of account, tests.
_NO_UNITS = frozenset(
    ("XAG", "XAU", "XBA", "XBB", "XBC", "XBD", "XDR", "XPD", "XPT", "XSU", "XTS", "XUA", "XXX")
)
#: The largest sum that is taken for a sum and not for a slip, in minor units.
MOST = 10**13
_MOST_DIGITS = 40

_DOLLARS = frozenset(
    ("USD", "CAD", "AUD", "NZD", "SGD", "HKD", "TWD", "MXN", "ARS", "CLP", "COP", "JMD", "TTD")
)
_CROWNS = frozenset(("SEK", "NOK", "DKK", "ISK"))
_SIGNS = {
    "€": frozenset({"EUR"}),
    "£": frozenset({"GBP"}),
    "$": _DOLLARS,
    "¥": frozenset({"JPY", "CNY"}),
    "kr": _CROWNS,
    "kr.": _CROWNS,
    "fr": frozenset({"CHF"}),
    "fr.": frozenset({"CHF"}),
    "sfr": frozenset({"CHF"}),
    "zł": frozenset({"PLN"}),
    "kč": frozenset({"CZK"}),
    "ft": frozenset({"HUF"}),
    "dm": frozenset({"DEM"}),
    "r": frozenset({"ZAR"}),
    "₹": frozenset({"INR"}),
    "₩": frozenset({"KRW"}),
    "₺": frozenset({"TRY"}),
}

_NUMBER = re.compile(r"[0-9](?:[0-9.,' ]*[0-9])?")
_DASH_FOR_CENTS = re.compile(r"(?<=[0-9])[.,]-+$")
_GROUPED = {
    mark: re.compile(rf"[1-9][0-9]{{0,2}}(?:{re.escape(mark)}[0-9]{{3}})+") for mark in ".,' "
}


@lru_cache(maxsize=256)
def minor_units(currency: str) -> int:
    """How many decimal places a currency has: 2 for EUR, 0 for JPY, 3 for KWD.

    Withdrawn currencies are known too, since old receipts are in them.

    Raises:
        JournalError: ``currency`` is no ISO 4217 code of money.
    """
    if currency in _NEWER:
        return _NEWER[currency]
    from babel.numbers import get_currency_precision
    from moneyed import CURRENCIES

    known = CURRENCIES.get(currency)
    if known is None or currency in _NO_UNITS:
        raise JournalError(f"“{currency[:20]}” is not the three-letter code of a currency.")
    # Both libraries have some places too few, for different codes; neither has too many.
    return max(len(str(known.sub_unit)) - 1, get_currency_precision(currency))


def format_money(minor: int, currency: str, locale: str = "en") -> str:
    """Write a sum the way ``locale`` does, always with all places of its currency: "€1,234.50"."""
    value = Decimal(minor).scaleb(-minor_units(currency))
    pattern = _pattern(currency, locale)
    written: str = pattern.apply(value, locale, currency=currency, currency_digits=False)
    return written


def format_whole(minor: int, currency: str, locale: str = "en") -> str:
    """Write a sum in whole units, for an axis: "€1,234"."""
    from babel.numbers import parse_pattern

    pattern = parse_pattern(_pattern(currency, locale).pattern)
    pattern.frac_prec = (0, 0)
    value = Decimal(minor).scaleb(-minor_units(currency))
    written: str = pattern.apply(value, locale, currency=currency, currency_digits=False)
    return written


def parse_money(text: str, currency: str) -> int:
    """Read a sum as people write it, in minor units: "1.234,56", "1,234.56", "12.5", "€ 12.50".

    Groups of thousands may be parted by a point, a comma, a space or an apostrophe; the sign of
    ``currency`` or its code may stand on either side. One mark with three digits after it ("1.234")
    could be either: it is refused, unless the currency has three decimal places, or none.

    Raises:
        JournalError: the text is no sum, can be read in two ways, has more places than the
            currency, is in another currency, or is beyond all reason.
    """
    shown = text.strip()[:40]
    places = minor_units(currency)
    number, negative = _number_in(_plain(text), shown, currency)
    whole, fraction = _split(number, places, shown)
    if len(fraction) > places:
        raise JournalError(f"“{shown}” has more decimal places than {currency} has ({places}).")
    digits = whole + fraction.ljust(places, "0")
    if len(digits) > _MOST_DIGITS or int(digits) > MOST:
        raise JournalError(f"“{shown}” is too large a sum to have been spent on a car.")
    return -int(digits) if negative else int(digits)


def to_currency(minor: int, currency: str, rate: Decimal, target: str) -> int:
    """Turn a sum into another currency, in whole minor units of ``target``.

    ``rate`` is how many units of ``target`` one unit of ``currency`` cost. Half a minor unit is
    rounded away from zero, so that a refund comes to what the purchase came to.

    Raises:
        JournalError: the rate is no positive number.
    """
    if not rate.is_finite() or rate <= 0:
        raise JournalError(f"The rate from {currency} to {target} must be a number above zero.")
    with localcontext() as context:
        context.prec = 100
        value = (Decimal(minor) * rate).scaleb(minor_units(target) - minor_units(currency))
        return int(value.to_integral_value(rounding=ROUND_HALF_UP))


@lru_cache(maxsize=64)
def _pattern(currency: str, locale: str) -> "NumberPattern":
    """How a locale lays out a sum, with all places of the currency."""
    from babel import Locale
    from babel.numbers import get_currency_symbol, parse_pattern

    standard = Locale.parse(locale).currency_formats["standard"].pattern
    if get_currency_symbol(currency, locale)[-1].isalpha():
        standard = standard.replace("¤#", "¤\u00a0#")  # "SEK 100", not "SEK100"
    pattern = parse_pattern(standard)
    pattern.frac_prec = (minor_units(currency),) * 2
    return pattern


def _plain(text: str) -> str:
    """The text with one kind of space, dash and apostrophe, and no bare decimal mark in front."""
    plain = re.sub(r"\s+", " ", text).strip().replace("\u2019", "'")
    plain = re.sub(r"[\u2010-\u2015\u2212]", "-", plain)
    plain = re.sub(r"^(-?)([.,][0-9])", r"\g<1>0\2", plain)
    return _DASH_FOR_CENTS.sub("", plain)


def _number_in(plain: str, shown: str, currency: str) -> tuple[str, bool]:
    """The digits and marks of a sum, and whether it is negative."""
    found = _NUMBER.search(plain)
    if found is None:
        raise JournalError(f"“{shown}” is not a sum of money.")
    around = plain[: found.start()] + " " + plain[found.end() :]
    if around.count("-") > 1:
        raise JournalError(f"“{shown}” is not a sum of money.")
    sign = around.replace("-", " ").strip()
    if sign and not _means(sign, currency):
        raise JournalError(f"“{shown}” is not a sum in {currency}.")
    return found[0], "-" in around


def _means(sign: str, currency: str) -> bool:
    """Whether a sign or code stands for the currency; "£GB" and "A$" are how some locales write."""
    if sign.upper() == currency or currency in _SIGNS.get(sign.casefold(), ()):
        return True
    letters = sign.strip("€£$¥")
    symbol = sign.replace(letters, "") if letters else sign
    return currency in _SIGNS.get(symbol, ()) and currency.startswith(letters.upper())


def _split(number: str, places: int, shown: str) -> tuple[str, str]:
    """Whole units and decimals of a number with whatever marks people put in."""
    last = max(number.rfind("."), number.rfind(","))
    if last < 0:
        return _ungrouped(number, shown), ""
    mark, before, after = number[last], number[:last], number[last + 1 :]
    if _GROUPED[mark].fullmatch(number):
        if number.count(mark) == 1 and places == 3:
            return before, after
        if number.count(mark) == 1 and places:
            raise JournalError(
                f"“{shown}” can be read in two ways: write it without a mark for thousands."
            )
        return number.replace(mark, ""), ""
    if mark in before or not after.isdigit():
        raise JournalError(f"“{shown}” is not a sum of money.")
    return _ungrouped(before, shown), after


def _ungrouped(whole: str, shown: str) -> str:
    """Whole units without the marks that part thousands."""
    marks = set(whole) - set("0123456789")
    if not marks:
        return whole
    mark = marks.pop()
    if marks or not _GROUPED[mark].fullmatch(whole):
        raise JournalError(f"“{shown}” is not a sum of money.")
    return whole.replace(mark, "")
