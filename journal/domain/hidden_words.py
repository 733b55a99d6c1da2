"""Private words found in any text however they are written, and money found by itself.

Capitals, accents and what stands between the signs don't count: "AB 12-CD" is "ab12cd", and
"Soren" is "Sören". Words are found whole; in the name of a file also inside other words.
"""

import re
import unicodedata
from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache

from journal.domain.private_words import Private

#: What stands in the place of what is withheld.
MARK = "[withheld]"

#: Signs that no decomposition takes apart, as people write them without their marks.
_PLAIN = str.maketrans(
    {
        "ø": "o",
        "đ": "d",
        "ð": "d",
        "ł": "l",
        "ħ": "h",
        "ı": "i",
        "þ": "th",
        "æ": "ae",
        "œ": "oe",
        "ʼ": "'",
        "ʹ": "'",
    }
)

#: So much may stand between two signs of a number, in characters.
_BETWEEN = r"[\W_]{0,3}"

#: Writing without spaces between words (Thai to Khmer, Hangul, kana, Han): no word ends there.
_RUN_ON = r"\u0e00-\u0eff\u1000-\u11ff\u1780-\u17ff\u3040-\u30ff\u3400-\u9fff\uf900-\ufaff"

_START, _END = rf"(?<![^\W_{_RUN_ON}])", rf"(?![^\W_{_RUN_ON}])"

_RUNS = re.compile(r"\[withheld\](?:[\s,;/·-]{0,3}\[withheld\])+")

#: What reads as an address by its form alone: e-mail, web, a telephone number with its country or
#: after a word that says so.
_ADDRESS = re.compile(
    r"[\w.+-]+@[\w-]+(?:\.[\w-]+)+|\b(?:https?://|www\.)\S+|\+\d[\d\s()/.-]{6,}\d"
    r"|\b(?:tele?(?:phone|fon)?|phone|fax|mob(?:ile)?|call|ring)\b\W{0,3}(?P<number>\d[\d\s()/.-]{4,}\d)",
    re.IGNORECASE,
)


@dataclass(frozen=True, slots=True)
class Sought:
    """Words to be found: in ``names`` word by word, in ``numbers`` sign by sign."""

    names: Mapping[Private, frozenset[str]]
    numbers: Mapping[Private, frozenset[str]]
    money: "re.Pattern[str] | None" = None
    addresses: bool = False


class Finder:
    """Takes wanted words out of texts, and counts what it took by sort."""

    def __init__(self, sought: Sought) -> None:
        self._sought = sought
        self._whole = _pattern(sought, whole=True)
        self._inside = _pattern(sought, whole=False)
        self._known: dict[tuple[str, bool], tuple[str, Counter[Private]]] = {}
        self.counts: Counter[Private] = Counter()

    def text(self, text: str) -> str:
        """A text with all that is wanted taken out."""
        return self._taken(text, file_name=False)

    def file_name(self, name: str) -> str:
        """The name of a file likewise, words found also inside longer ones."""
        return self._taken(name, file_name=True)

    def has(self, text: str) -> bool:
        """Whether anything sought is in a text, counting nothing."""
        return next(iter(self._spans(text, self._whole)), None) is not None

    def found(self, text: str, *, by_form: bool = True) -> frozenset[Private]:
        """The sorts of what is sought that are in a text, counting nothing.

        ``by_form`` looks also for what reads as a price or an address by its form alone.
        """
        return frozenset(sort for _, _, sort in self._spans(text, self._whole, by_form=by_form))

    def _taken(self, text: str, *, file_name: bool) -> str:
        known = self._known.get((text, file_name))
        if known is None:
            known = self._known[text, file_name] = self._clean(text, file_name=file_name)
        self.counts.update(known[1])
        return known[0]

    def _clean(self, text: str, *, file_name: bool) -> tuple[str, Counter[Private]]:
        spans = list(self._spans(text, self._inside if file_name else self._whole))
        if not spans:
            return text, Counter()
        counts = Counter(sort for _, _, sort in spans)
        return _RUNS.sub(MARK, _cut(text, spans)), counts

    def _spans(
        self, text: str, pattern: "re.Pattern[str] | None", *, by_form: bool = True
    ) -> Iterable[tuple[int, int, Private]]:
        if by_form and self._sought.money is not None:
            for hit in self._sought.money.finditer(text):
                start, end = hit.span("sum") if hit["sum"] else hit.span()
                yield start, end, Private.PRICES
        if by_form and self._sought.addresses:
            for hit in _ADDRESS.finditer(text):
                yield *hit.span("number" if hit["number"] else 0), Private.ADDRESSES
        if pattern is None:
            return
        plain, places = folded(text)
        for hit in pattern.finditer(plain):
            sort = _SORTS[hit.lastgroup or ""]
            yield places[hit.start()], places[hit.end() - 1] + 1, sort


def _cut(text: str, spans: Sequence[tuple[int, int, Private]]) -> str:
    parts, at = [], 0
    for start, end, _ in sorted(spans):
        if end <= at:
            continue
        parts += [text[at : max(start, at)], MARK] if start >= at else [MARK]
        at = end
    return "".join([*parts, text[at:]])


def folded(text: str) -> tuple[str, Sequence[int]]:
    """A text without capitals, accents and invisible signs, and where each sign came from."""
    if text.isascii():
        return text.lower(), range(len(text))
    signs: list[str] = []
    places: list[int] = []
    for place, sign in enumerate(text):
        plain = _fold(sign)
        signs.append(plain)
        places += [place] * len(plain)
    return "".join(signs), places


@lru_cache(maxsize=4096)
def _fold(sign: str) -> str:
    apart = unicodedata.normalize("NFKD", sign)
    kept = "".join(s for s in apart if unicodedata.category(s) not in ("Mn", "Cf", "Me"))
    lowered = unicodedata.normalize("NFKD", kept.casefold()).translate(_PLAIN)
    return "".join(s for s in lowered if unicodedata.category(s) not in ("Mn", "Cf", "Me"))


_SORTS = {sort.name.lower(): sort for sort in Private}


def _pattern(sought: Sought, *, whole: bool) -> "re.Pattern[str] | None":
    groups = []
    for name, sort in _SORTS.items():
        rows = [*map(_name_pattern, sought.names.get(sort, ()))]
        rows += [*map(_number_pattern, sought.numbers.get(sort, ()))]
        rows = sorted({row for row in rows if row}, key=lambda row: (-len(row), row))
        if rows:
            body = "|".join(rows)
            groups.append(
                # The s of a genitive hangs on a name without an apostrophe in many languages.
                f"(?P<{name}>{_START}(?:{body})s?{_END})" if whole else f"(?P<{name}>{body})"
            )
    return re.compile("|".join(groups)) if groups else None


def _name_pattern(words: str) -> str:
    tokens = re.findall(r"[^\W_]+", folded(words)[0])
    return r"[\W_]*".join(re.escape(token) for token in tokens)


def _number_pattern(words: str) -> str:
    signs = re.findall(r"[^\W_]", folded(words)[0])
    return _BETWEEN.join(signs) if len(signs) > 2 else _name_pattern(words)


# --- money ---

_CODES = "EUR GBP USD CHF SEK NOK DKK ISK PLN CZK HUF RON BGN JPY CNY CAD AUD NZD ZAR INR BRL TRY"
_SYMBOLS = "€£$¥₹₽₺₴₩฿₫₦₪₱₡₲₵₸₼¢"
_NAMES = (
    r"euros?|pounds?|quid|dollars?|cents?|francs?|kronor|kroner|kronas?|krone|kr\.?|pence|yen"
    r"|z[łl]oty\w*|zł|kč|ft\.?|rand|bucks"
)
_DIGITS = r"\d(?:[\d.,'’  \u202f]*\d)?+(?:[.,][-–]{1,2})?"
_NOT_MONEY = (
    r"(?!\d)(?![.,]\d)(?!\s*(?:h\b|hours?|hrs?|min|days?|weeks?|weekends?|months?|years?|evenings?|mm\b|cm\b"
    r"|m\b|metres?|kg\b|g\b|l\b|litres?|%|photos?|times))"
)
_SPENT = (
    r"\b(?:paid|costs?|priced?|worth|spent|charged|invoiced?)\b(?:\W{1,3}(?:me|us|him|her|them|about"
    r"|around|only|just|over|under|nearly|of|was|is|at|the|a|total|for|it))*\W{1,3}"
)


def money_pattern(signs: Iterable[str]) -> "re.Pattern[str]":
    """What reads as a sum of money; ``signs`` are codes and symbols to know beside the usual."""
    own = sorted({sign for sign in signs if sign}, key=lambda sign: (-len(sign), sign))
    codes = "|".join([*map(re.escape, own), *_CODES.split()])
    unit = rf"(?:{codes}|[{re.escape(_SYMBOLS)}])"
    return re.compile(
        rf"[-−+]?(?<![^\W_]){unit}\s?[-−]?{_DIGITS}"
        rf"|[-−+]?{unit}\s?[-−]?{_DIGITS}"
        rf"|(?<![^\W_])kr\.?\s?{_DIGITS}"
        rf"|(?<![\w.,]){_DIGITS}\s?(?:{unit}(?![^\W\d_])|(?:{_NAMES})(?![^\W_]))"
        rf"|(?<![\w.,])\d[\d.,\s]*[,.:][-–](?!\d)"
        rf"|{_SPENT}(?P<sum>{_DIGITS}){_NOT_MONEY}",
        re.IGNORECASE,
    )
