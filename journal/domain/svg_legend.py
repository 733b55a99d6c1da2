"""What stands round a drawing on paper: a heading above, swatches with their words below.

All of it is marked ``data-look``: it is for the eye alone, and doesn't come back as panels.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from journal.domain.svg_marks import Look, Row, attribute, content, number, pattern_id, patterns

#: In heights of a letter: the room round it all, a line of the heading, a line of the legend, a
#: swatch's width and height, and what is between two swatches.
_MARGIN, _HEADING, _LINE, _SWATCH, _HIGH, _APART = 1.2, 1.5, 2.2, 3.2, 1.8, 1.4

#: How wide a letter is on the whole, against its height, and a first line against the others.
_LETTER, _FIRST = 0.52, 1.5

#: So many letters fit across a sheet.
_ACROSS = 95

_INK, _FAINT, _PAPER = "#24211d", "#595349", "#ffffff"


@dataclass(frozen=True, slots=True)
class Surround:
    """The heading and the legend of a drawing of ``width`` by ``height`` millimetres.

    Without either there is no room round the drawing at all. ``line`` is the width of its lines.
    """

    width: float
    height: float
    heading: tuple[str, ...]
    legend: tuple[Row, ...]
    line: float

    @property
    def _letter(self) -> float:
        return max(self.width, self.height * 0.7) / _ACROSS

    @property
    def left(self) -> float:
        """Room beside the drawing."""
        return _MARGIN * self._letter if self.heading or self.legend else 0.0

    @property
    def top(self) -> float:
        """Room above the drawing."""
        lines = len(self.heading)
        if not lines:
            return self.left
        return self.left + (_HEADING * (_FIRST + lines - 1) + 0.5) * self._letter

    @property
    def whole_width(self) -> float:
        """The drawing with the room beside it."""
        return self.width + 2 * self.left

    @property
    def whole_height(self) -> float:
        """The drawing with all round it."""
        places = self._places()
        low = places[-1][1] + _LINE * self._letter if places else self.top + self.height
        return low + self.left

    def drawn(self) -> Iterator[str]:
        """Paper, heading and legend as elements of SVG."""
        if not self.left:
            return
        size = f'width="{number(self.whole_width)}" height="{number(self.whole_height)}"'
        yield f'<rect data-look="paper" {size} fill="{_PAPER}" stroke="none"/>'
        letter, y = self._letter, self.left
        for n, words in enumerate(self.heading):
            large = letter * (1 if n else _FIRST)
            y += large * _HEADING
            yield _words(self.left, y - large * 0.4, large, words, _FAINT if n else _INK)
        for (look, words), place in zip(self.legend, self._places(), strict=True):
            yield from self._row(look, words, place)

    def _row(self, look: Look, words: str, place: tuple[float, float]) -> Iterator[str]:
        letter = self._letter
        x, y = place
        wide, high = _SWATCH * letter, _HIGH * letter
        box = f'x="{number(x)}" y="{number(y)}" width="{number(wide)}" height="{number(high)}"'
        edge = f'stroke="{_INK}" stroke-width="{number(self.line)}"'
        yield f'<rect data-look="legend" {box} fill="{attribute(look.fill)}" {edge}/>'
        if look.pattern:
            yield f'<rect data-look="legend" {box} fill="url(#{pattern_id(look)})"/>'
        yield _words(x + wide + 0.5 * letter, y + 1.25 * letter, letter, words, _INK)

    def _places(self) -> list[tuple[float, float]]:
        """Where each swatch begins: side by side, in as many lines as it takes."""
        letter = self._letter
        x, y = self.left, self.top + self.height + 0.6 * letter
        found = []
        for _, words in self.legend:
            needed = (_SWATCH + 0.5 + len(words) * _LETTER) * letter
            if x > self.left and x + needed > self.left + self.width:
                x, y = self.left, y + _LINE * letter
            found.append((x, y))
            x += needed + _APART * letter
        return found


def _words(x: float, y: float, size: float, words: str, ink: str) -> str:
    font = f'font-family="Cabin, sans-serif" font-size="{number(size)}" fill="{ink}"'
    return f'<text data-look="words" x="{number(x)}" y="{number(y)}" {font}>{content(words)}</text>'


def legend_alone(legend: tuple[Row, ...], width: float = 3000.0) -> str:
    """A legend as a document of its own, ``width`` millimetres wide."""
    alone = Surround(width, 0.0, (), legend, width / 2000)
    wide, high = number(alone.whole_width), number(alone.whole_height)
    size = f'width="{wide}mm" height="{high}mm" viewBox="0 0 {wide} {high}"'
    tiles = "".join(patterns([look for look, _ in legend], width / 650))
    drawn = "".join(alone.drawn())
    return f'<svg xmlns="http://www.w3.org/2000/svg" {size}>{tiles}{drawn}</svg>'
