"""The small parts that SVG documents are written with: text, numbers, looks and patterns."""

import html
import re
from collections.abc import Iterable, Iterator
from typing import NamedTuple

#: Edge of the tile that a pattern is drawn in, in the pattern's own units.
TILE = 8.0

#: What XML can't hold.
_UNWRITABLE = re.compile("[^\t\n\r\x20-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")


class Look(NamedTuple):
    """How a panel is filled.

    Attributes:
        fill: a colour as SVG writes it: "#f7dcc9".
        pattern: path data of lines drawn over the fill, in a tile of 8 by 8; empty for none.
        ink: the colour of the pattern's lines.
    """

    fill: str
    pattern: str = ""
    ink: str = "#35312b"


#: A panel nothing is said of.
PLAIN = Look("#f4f1ea")

#: A swatch of a legend with its words.
Row = tuple[Look, str]


def patterns(looks: Iterable[Look], scale: float) -> Iterator[str]:
    """The definitions of the patterns of these looks, a tile unit being ``scale`` long."""
    drawn = {pattern_id(look): look for look in looks if look.pattern}
    if not drawn:
        return
    yield "<defs>"
    for name, look in drawn.items():
        edge = f'width="{number(TILE)}" height="{number(TILE)}" patternUnits="userSpaceOnUse"'
        ink = f'fill="none" stroke="{attribute(look.ink)}" stroke-width="1"'
        yield f'<pattern id="{name}" {edge} patternTransform="scale({number(scale)})">'
        yield f'<path data-look="tile" d="{attribute(look.pattern)}" {ink}/></pattern>'
    yield "</defs>"


def pattern_id(look: Look) -> str:
    """The name of a look's pattern."""
    letters = "".join(c if c.isalnum() else "-" for c in f"{look.ink} {look.pattern}")
    return f"pattern-{letters}"


def content(words: str) -> str:
    """Text as an element holds it."""
    return html.escape(_UNWRITABLE.sub(" ", words), quote=False)


def attribute(words: str) -> str:
    """Text as an attribute holds it: line ends and tabs too, which XML would make spaces."""
    escaped = html.escape(_UNWRITABLE.sub(" ", words))
    return escaped.replace("\n", "&#10;").replace("\t", "&#9;").replace("\r", "&#13;")


def number(value: float) -> str:
    """A number without idle zeros, to a thousandth of a millimetre."""
    digits = f"{value:.3f}".rstrip("0").rstrip(".")
    return "0" if digits == "-0" else digits
