"""Where each photo of a grid lies: sums over rows, so that 50,000 cost no more than a few."""

from bisect import bisect_right
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import accumulate

from PySide6.QtCore import QPoint, QRect, QSize

from journal.domain.ids import PhotoId

#: A heading gets at least this width, in pixels, even above a single small photo.
_HEADING_WIDTH = 150


@dataclass(frozen=True, slots=True)
class Group:
    """A run of photos under one heading: a sitting.

    ``title`` is the heading, ``short`` what it is where there is no room for it, ``detail`` the
    quieter words after it. ``placed`` counts the photos that have a pin.
    """

    title: str
    detail: str
    ids: tuple[PhotoId, ...]
    placed: int = 0
    short: str = ""


@dataclass(frozen=True, slots=True)
class Run:
    """A part of a group that shows: its heading, and the photos from ``first`` up to ``end``."""

    group: int
    heading: QRect
    first: int
    end: int


class GridLayout:
    """Groups laid out in bands of equal cells, each group under its heading.

    A group of more than one row has a band of its own; smaller ones share one as long as they
    fit. All places are pixels from the top left corner of the whole grid; photos are told by
    their index over all groups.
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
        self._firsts = list(accumulate(counts, initial=0))
        self._lay_out(counts)

    def _lay_out(self, counts: Sequence[int]) -> None:
        """Fill the bands: their tops, the group each begins with, and each group's column."""
        least = -(-_HEADING_WIDTH // (self.cell.width() + self.gap))
        self._starts: list[int] = []
        self._columns: list[int] = []
        tops = [0]
        taken, rows = self.columns, 0
        for group, count in enumerate(counts):
            wide = min(self.columns, max(count, least))
            if count > self.columns or taken + wide > self.columns:
                if self._starts:
                    tops.append(tops[-1] + self._band_height(rows))
                self._starts.append(group)
                taken, rows = 0, 0
            self._columns.append(taken)
            taken += wide
            rows = max(rows, -(-count // self.columns))
        if self._starts:
            tops.append(tops[-1] + self._band_height(rows))
        self._tops = tops

    def _band_height(self, rows: int) -> int:
        return self.heading + rows * self.pitch + self.gap

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
        """Where a group's heading lies: up to the next group beside it, or to the edge."""
        band = self._band_of(group)
        left = self._left(self._columns[group])
        last = group + 1 == self._band_end(band)
        right = self.width - self.margin if last else self._left(self._columns[group + 1]) - 1
        return QRect(left, self._tops[band], max(1, right - left), self.heading)

    def rect(self, index: int) -> QRect:
        """Where a photo's cell lies."""
        group = self.group_of(index)
        row, column = divmod(index - self._firsts[group], self.columns)
        x = self._left(self._columns[group] + column)
        y = self._tops[self._band_of(group)] + self.heading + row * self.pitch
        return QRect(QPoint(x, y), self.cell)

    def runs(self, top: int, bottom: int) -> Iterator[Run]:
        """What shows between two heights, from the top."""
        band = max(0, bisect_right(self._tops, top) - 1)
        while band < len(self._starts) and self._tops[band] <= bottom:
            start = self._tops[band] + self.heading
            first_row = max(0, (top - start) // self.pitch)
            end_row = max(0, (bottom - start) // self.pitch + 1)
            for group in range(self._starts[band], self._band_end(band)):
                span = self.span(group)
                first = min(span.stop, span.start + first_row * self.columns)
                end = min(span.stop, span.start + end_row * self.columns)
                yield Run(group, self.heading_rect(group), first, end)
            band += 1

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

    def group_at(self, top: int) -> int:
        """The first group of the band at a height."""
        band = min(len(self._starts) - 1, max(0, bisect_right(self._tops, top) - 1))
        return self._starts[band]

    def _left(self, column: int) -> int:
        return self.margin + column * (self.cell.width() + self.gap)

    def _band_of(self, group: int) -> int:
        return bisect_right(self._starts, group) - 1

    def _band_end(self, band: int) -> int:
        """The group after the last one of a band."""
        return self._starts[band + 1] if band + 1 < len(self._starts) else len(self.groups)

    def _row_below(self, index: int) -> int:
        group = self.group_of(index)
        span = self.span(group)
        row, column = divmod(index - span.start, self.columns)
        if row < (len(span) - 1) // self.columns:
            return min(span.stop - 1, index + self.columns)
        return self._in_band(self._band_of(group) + 1, self._columns[group] + column, 1, index)

    def _row_above(self, index: int) -> int:
        group = self.group_of(index)
        row, column = divmod(index - self._firsts[group], self.columns)
        if row > 0:
            return index - self.columns
        return self._in_band(self._band_of(group) - 1, self._columns[group] + column, -1, index)

    def _in_band(self, band: int, column: int, step: int, otherwise: int) -> int:
        """The photo nearest to a column in the row of a band that is entered going ``step``.

        Bands without photos are passed over; ``otherwise`` where there is no further band.
        """
        while 0 <= band < len(self._starts):
            groups = range(self._starts[band], self._band_end(band))
            row = [index for group in groups for index in self._entered(group, step)]
            if row:
                x = self._left(column)
                return min(row, key=lambda index: abs(self.rect(index).left() - x))
            band += step
        return otherwise

    def _entered(self, group: int, step: int) -> range:
        """The row of a group that is entered going down (its first) or up (its last)."""
        span = self.span(group)
        if step > 0:
            return span[: self.columns]
        last_row = max(0, len(span) - 1) // self.columns
        return span[last_row * self.columns :]
