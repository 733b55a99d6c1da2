"""The letters of a chart: which fonts draw them, what is cut short, how money and hours read."""

from functools import cache, lru_cache
from typing import Any

#: Longer names are cut short; the whole stands in the words for the chart.
_MOST_LETTERS = 44
_MISSING = "\N{WHITE SQUARE}"


@cache
def fonts() -> tuple[str, ...]:
    """The families that letters are taken from, in turn: the program's own, and a wide one."""
    from matplotlib import font_manager

    from journal.files.assets import asset

    font_manager.fontManager.addfont(str(asset("fonts/Cabin-Regular.otf")))
    return ("Cabin", "DejaVu Sans")


@lru_cache(maxsize=1024)
def fitting(text: str) -> str:
    """Text in one line, with a square for what no font at hand can draw."""
    flat = "\n".join(" ".join(line.split()) for line in text.splitlines())
    has = _drawable()
    shown = "".join(sign if ord(sign) in has or sign == "\n" else _MISSING for sign in flat)
    return f" {shown}" if shown.startswith("_") else shown


def shortened(text: str, most: int = _MOST_LETTERS) -> str:
    """A name short enough to stand beside a bar."""
    flat = " ".join(text.split())
    return flat if len(flat) <= most else flat[: most - 1].rstrip() + "\N{HORIZONTAL ELLIPSIS}"


def tick_words(value: float, currency: str, locale: str) -> str:
    """A value on an axis: whole units of money, or hours."""
    from babel.numbers import format_decimal

    if not currency:
        return f"{format_decimal(round(value / 60, 2), locale=locale)} h"
    from journal.domain.money import format_whole

    return format_whole(round(value), currency, locale)


@cache
def _drawable() -> frozenset[int]:
    from matplotlib import font_manager

    found: set[int] = set()
    for family in fonts():
        font: Any = font_manager.get_font(font_manager.findfont(family))
        found.update(font.get_charmap())
    return frozenset(found)
