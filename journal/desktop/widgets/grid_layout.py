"""Where each photo of a grid lies: sums over rows, so that 50,000 cost no more than a few."""

from bisect import bisect_left, bisect_right
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import accumulate

from PySide6.QtCore import QPoint, QRect, QSize

from journal.domain.ids import PhotoId


@dataclass(frozen=True, slots=True)
class Group:
    """A run of photos under one heading: a sitting.

    ``title`` is the heading, ``detail`` the quieter words after it. ``placed`` counts the photos
    that have a pin.
    """

    title: str
    detail: str
    ids: tuple[PhotoId, ...]
    placed: int = 0


@dataclass(frozen=True, slots=True)
class Run:
    """A part of a group that shows: its heading, and the photos from ``first`` up to ``end``."""

    group: int
    heading: QRect
    first: int
    end: int


class GridLayout:
    """Groups laid out in rows of equal cells, each group under its heading.

    All places are pixels from the top left corner of the whole grid; photos are told by their
    index over all groups.
    """

    def __init__(
        self,
        groups: Sequence[Group],
        *,
        width: int,
        cell: QSize,
        heading: int = 40,
        gap: int = 8,
        margin: int = 12,
    ) -> None:
        self.groups = tuple(groups)
        self.width = width
        self.cell = cell
        self.heading = heading
        self.gap = gap
        self.margin = margin
        room = max(0, width - 2 * margin + gap)
        self.columns = max(1, room // (cell.width() + gap))
        self.pitch = cell.height() + gap
        counts = [len(group.ids) for group in self.groups]
        heights = [heading + -(-count // self.columns) * self.pitch + gap for count in counts]
        self._firsts = list(accumulate(counts, initial=0))
        self._tops = list(accumulate(heights, initial=0))

    @property
    def count(self) -> int:
        """How many photos there are."""
        return self._firsts[-1]

    @property
    def height(self) -> int:
        """The height of the whole grid."""
        return self._tops[-1] + (self.margin if self.groups else 0)

    def group_of(self, index: int) -> int:
        """The group that holds a photo."""
        return bisect_right(self._firsts, index) - 1

    def span(self, group: int) -> range:
        """The photos of a group."""
        return range(self._firsts[group], self._firsts[group + 1])

    def heading_rect(self, group: int) -> QRect:
        """Where a group's heading lies."""
        return QRect(0, self._tops[group], self.width, self.heading)

    def rect(self, index: int) -> QRect:
        """Where a photo's cell lies."""
        group = self.group_of(index)
        row, column = divmod(index - self._firsts[group], self.columns)
        x = self.margin + column * (self.cell.width() + self.gap)
        y = self._tops[group] + self.heading + row * self.pitch
        return QRect(QPoint(x, y), self.cell)

    def runs(self, top: int, bottom: int) -> Iterator[Run]:
        """What shows between two heights, from the top."""
        group = max(0, bisect_right(self._tops, top) - 1)
        while group < len(self.groups) and self._tops[group] <= bottom:
            span = self.span(group)
            start = self._tops[group] + self.heading
            first_row = max(0, (top - start) // self.pitch)
            end_row = max(0, (bottom - start) // self.pitch + 1)
            first = min(span.stop, span.start + first_row * self.columns)
            end = min(span.stop, span.start + end_row * self.columns)
            yield Run(group, self.heading_rect(group), first, end)
            group += 1

    def index_at(self, spot: QPoint) -> int | None:
        """The photo under a spot, None between cells."""
        for run in self.runs(spot.y(), spot.y()):
            for index in range(run.first, run.end):
                if self.rect(index).contains(spot):
                    return index
        return None

    def heading_at(self, spot: QPoint) -> int | None:
        """The group whose heading is under a spot."""
        for run in self.runs(spot.y(), spot.y()):
            if run.heading.contains(spot):
                return run.group
        return None

    def within(self, area: QRect) -> Iterator[int]:
        """The photos whose cells touch an area."""
        for run in self.runs(area.top(), area.bottom()):
            for index in range(run.first, run.end):
                if self.rect(index).intersects(area):
                    yield index

    def row_step(self, index: int, rows: int) -> int:
        """The photo so many rows below (above if negative), as near as may be in the same column.

        Stops at the first and the last row.
        """
        for _ in range(abs(rows)):
            moved = self._row_below(index) if rows > 0 else self._row_above(index)
            if moved == index:
                break
            index = moved
        return index

    def _row_below(self, index: int) -> int:
        span = self.span(self.group_of(index))
        row, column = divmod(index - span.start, self.columns)
        last_row = (len(span) - 1) // self.columns
        if row < last_row:
            return min(span.stop - 1, index + self.columns)
        if span.stop >= self.count:
            return index
        after = self.span(self.group_of(span.stop))
        return min(after.stop - 1, after.start + column)

    def _row_above(self, index: int) -> int:
        span = self.span(self.group_of(index))
        row, column = divmod(index - span.start, self.columns)
        if row > 0:
            return index - self.columns
        if span.start == 0:
            return index
        before = self.span(self.group_of(span.start - 1))
        last_row = (len(before) - 1) // self.columns
        return min(before.stop - 1, before.start + last_row * self.columns + column)

    def first_of_group_at(self, top: int) -> int:
        """The first photo of the group that lies at a height."""
        group = min(len(self.groups) - 1, max(0, bisect_right(self._tops, top) - 1))
        return self._firsts[group]

    def group_from(self, index: int) -> int:
        """The first group that starts at a photo or after it."""
        return bisect_left(self._firsts, index)
