"""Words on a page brought together into rows, on paper that was photographed at a slant."""

from collections.abc import Sequence
from dataclasses import dataclass
from statistics import median

from journal.domain.papers import Box

#: A word further from its row than this part of a letter's height begins another.
_REACH = 0.55
#: A gap wider than this, in heights of a letter, parts columns and not words.
_COLUMN_GAP = 1.0
#: Slopes steeper than this belong to no line of print.
_STEEPEST = 0.35


@dataclass(frozen=True, slots=True)
class Word:
    """One or more words that stand together, as they were read.

    ``box`` is in parts of the page; ``slope`` is by how many page heights the line of print falls
    over one page width; ``sure`` is how surely the letters were read, 0 to 1.
    """

    text: str
    box: Box
    sure: float = 1.0
    slope: float = 0.0

    @property
    def x(self) -> float:
        """The middle, from the left."""
        return (self.box.left + self.box.right) / 2

    @property
    def y(self) -> float:
        """The middle, from the top."""
        return (self.box.top + self.box.bottom) / 2

    @property
    def height(self) -> float:
        """The height of its letters: that of the box without what its slope adds."""
        fall = abs(self.slope) * (self.box.right - self.box.left)
        high = self.box.bottom - self.box.top
        return max(high - fall, high * 0.3)


@dataclass(frozen=True, slots=True)
class Page:
    """The words of one page; ``aspect`` is its width by its height."""

    words: tuple[Word, ...]
    aspect: float
    number: int = 0
    turn: int = 0


@dataclass(frozen=True, slots=True)
class Row:
    """A row of print: its words from left to right, one space between words, two at a wide gap."""

    words: tuple[Word, ...]
    text: str
    starts: tuple[int, ...]
    page: int = 0

    @property
    def box(self) -> Box:
        """The box round all of it."""
        return self.box_of(0, len(self.text))

    @property
    def height(self) -> float:
        """The height of its largest letters."""
        return max(word.height for word in self.words)

    def box_of(self, start: int, end: int) -> Box:
        """Where the letters from ``start`` to ``end`` of the text stand."""
        found: Box | None = None
        for word, begins in zip(self.words, self.starts, strict=True):
            first, last = max(start - begins, 0), min(end - begins, len(word.text))
            if first < last:
                part = _part(word, first, last)
                found = part if found is None else found.joined(part)
        return found or self.words[0].box

    def sure_of(self, start: int, end: int) -> float:
        """How surely the letters from ``start`` to ``end`` were read."""
        found = [
            word.sure
            for word, begins in zip(self.words, self.starts, strict=True)
            if begins < end and start < begins + len(word.text)
        ]
        return min(found, default=0.0)


def rows(page: Page) -> tuple[Row, ...]:
    """The rows of a page from top to bottom.

    Print photographed at a slant runs along lines whose slope changes evenly from the top of the
    paper to the bottom; along those, words with nearly one height make a row.
    """
    words = [word for word in page.words if word.text.strip()]
    if not words:
        return ()
    at_top, per_height = _slopes(words)
    levels = []
    for word in words:
        slope = at_top + per_height * word.y
        levels.append((word.y - slope * (word.x - 0.5), word))
    levels.sort(key=lambda level: level[0])
    typical = median(word.height for word in words)
    groups: list[list[tuple[float, Word]]] = []
    for level, word in levels:
        if groups and level - _level(groups[-1]) < _REACH * _height(groups[-1], word, typical):
            groups[-1].append((level, word))
        else:
            groups.append([(level, word)])
    return tuple(_row([word for _, word in group], page) for group in groups)


def _level(group: Sequence[tuple[float, Word]]) -> float:
    return sum(level for level, _ in group) / len(group)


def _height(group: Sequence[tuple[float, Word]], word: Word, typical: float) -> float:
    """The height of letters to judge nearness by: the smaller of the two, but no speck."""
    of_group = max(other.height for _, other in group)
    return max(min(of_group, word.height), 0.7 * typical)


def _slopes(words: Sequence[Word]) -> tuple[float, float]:
    """Slope at the top of the page, and what it gains per page height, by the wider words."""
    wide = [
        word
        for word in words
        if word.box.right - word.box.left > 3 * (word.height * 0.5) and abs(word.slope) < _STEEPEST
    ]
    if len(wide) < 3:
        return (median(word.slope for word in wide) if wide else 0.0), 0.0
    middle = median(word.slope for word in wide)
    spread = median(abs(word.slope - middle) for word in wide)
    kept = [word for word in wide if abs(word.slope - middle) <= 4 * spread + 0.01]
    return _straight_line([(word.y, word.slope, word.box.right - word.box.left) for word in kept])


def _straight_line(points: Sequence[tuple[float, float, float]]) -> tuple[float, float]:
    """The weighted straight line through points of (x, y, weight): its y at 0, and its rise."""
    total = sum(weight for _, _, weight in points)
    mean_x = sum(x * weight for x, _, weight in points) / total
    mean_y = sum(y * weight for _, y, weight in points) / total
    across = sum(weight * (x - mean_x) ** 2 for x, _, weight in points)
    if across < 0.01 * total:
        return mean_y, 0.0
    rise = sum(weight * (x - mean_x) * (y - mean_y) for x, y, weight in points) / across
    return mean_y - rise * mean_x, rise


def _row(words: list[Word], page: Page) -> Row:
    words.sort(key=lambda word: word.box.left)
    text, starts = "", []
    for number, word in enumerate(words):
        if number:
            gap = (word.box.left - words[number - 1].box.right) * page.aspect
            text += "  " if gap > _COLUMN_GAP * min(word.height, words[number - 1].height) else " "
        starts.append(len(text))
        text += word.text
    return Row(tuple(words), text, tuple(starts), page.number)


def _part(word: Word, first: int, last: int) -> Box:
    """The part of a word's box that some of its letters take, as if all were equally wide."""
    wide = (word.box.right - word.box.left) / len(word.text)
    left = word.box.left + first * wide
    return Box(left, word.box.top, left + (last - first) * wide, word.box.bottom)
