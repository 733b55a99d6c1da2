"""The years taken out: the drawing as it changed, as a moving picture or a sheet of year-ends."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date
from itertools import pairwise
from pathlib import Path

from journal.actions.export_drawing import heading, refuse_place, with_shapes, write_out
from journal.actions.session import Session
from journal.domain.errors import JournalError
from journal.domain.ids import ViewId
from journal.domain.looks import stage_looks
from journal.domain.progress import Context, Silent
from journal.domain.states import PanelYears
from journal.domain.svg_marks import Row
from journal.domain.svg_text import drawing_svg
from journal.domain.when import When, parse_edtf

#: A picture that moves, and a sheet of year-ends, by the file's ending.
MOVING, SHEETS = (".gif", ".webp"), (".pdf", ".png")

#: Longer side of a moving picture in pixels, how long a frame stays and how long the last one
#: does, in milliseconds; and the most frames.
_LONGEST, _EACH, _LAST, _MOST = 1000, 500, 3000, 120


@dataclass(frozen=True, slots=True)
class YearsReport:
    """What was written: where, and how many frames or year-ends it holds."""

    path: Path
    pictures: int


def export_years(
    session: Session,
    out: Path,
    view_id: ViewId | None = None,
    *,
    longest: int = _LONGEST,
    context: Context | None = None,
) -> YearsReport:
    """Write how the car changed, one view or all, by the ending of ``out``.

    A .gif or .webp moves, a frame for each day or month on which a panel came to another state; a
    .pdf or .png is one sheet with the state at the end of each year. Nothing is left behind where
    it is cancelled.

    Raises:
        JournalError: the ending is another, no stage has a date, or ``out`` can't be written.
        Cancelled: the person asked to stop.
    """
    kind = out.suffix.lower()
    if kind not in MOVING + SHEETS:
        raise JournalError(f"“{out.name}” has to end in .gif, .webp, .pdf or .png.")
    refuse_place(session, out)
    frames = _Frames(session, view_id)
    if kind in SHEETS:
        data, count = _sheet(frames, kind, context or Silent())
    else:
        data, count = _moving(frames, kind, longest, context or Silent())
    write_out(out, data)
    return YearsReport(out, count)


class _Frames:
    """The drawing on any day, as SVG."""

    def __init__(self, session: Session, view_id: ViewId | None) -> None:
        self.car = session.journal.car.get()
        self.drawing = with_shapes(session.journal.drawing.get(), view_id)
        self._view_id = view_id
        self._years = PanelYears(session.journal.areas.all(), self.car.stages)
        self.days = self._years.days
        if not self.days:
            raise JournalError("No stage of a repair area has a date yet: nothing changes.")

    def svg(self, when: When, *, alone: bool = False) -> str:
        """The drawing by the end of a date; ``alone`` without heading and legend."""
        looks, legend = stage_looks(self._years.on(when), self.car.stages)
        words = () if alone else heading(self.car, self.drawing, self._view_id, when)
        rows: Sequence[Row] = () if alone else legend
        return drawing_svg(
            self.drawing, self._view_id, looks, heading=words, legend=rows, named=not alone
        )

    def legend(self) -> str:
        """The legend with nothing above it."""
        from journal.domain.svg_legend import legend_alone

        _, rows = stage_looks({}, self.car.stages)
        return legend_alone(rows)

    def moments(self) -> tuple[When, ...]:
        """The dates that a moving picture stops at: days, months where they are too many."""
        days = [parse_edtf(day.isoformat()) for day in self.days]
        if len(days) > _MOST:
            months = dict.fromkeys(day.isoformat()[:7] for day in self.days)
            days = [parse_edtf(month) for month in months]
        changed = [b for a, b in pairwise(days) if self._years.on(a) != self._years.on(b)]
        moments = [days[0], *changed]
        step = -(-len(moments) // _MOST)
        return tuple(moments[len(moments) - 1 :: -step][::-1])

    def year_ends(self) -> Iterator[int]:
        """The years from the first change to the last."""
        return iter(range(self.days[0].year, min(self.days[-1], date.today()).year + 1))


def _moving(frames: _Frames, kind: str, longest: int, context: Context) -> tuple[bytes, int]:
    from journal.dossier.moving import MOVING as FORMATS
    from journal.dossier.moving import moving
    from journal.dossier.paper import Setting

    moments = frames.moments()
    made = []
    with Setting() as setting:
        for number, when in enumerate(moments):
            context.checkpoint()
            made.append(setting.picture(frames.svg(when), longest))
            context.report(number + 1, len(moments) + 1, "Drawing the years")
    times = [_EACH] * (len(made) - 1) + [_LAST]
    data = moving(made, times, FORMATS[kind])
    context.report(len(moments) + 1, len(moments) + 1, "Putting them together")
    return data, len(made)


def _sheet(frames: _Frames, kind: str, context: Context) -> tuple[bytes, int]:
    from journal.dossier.paper import Cell, Setting

    years = list(frames.year_ends())
    cells = []
    for number, year in enumerate(years):
        context.checkpoint()
        svg = frames.svg(parse_edtf(f"{year:04}"), alone=True)
        cells.append(Cell(f"End of {year}", svg))
        context.report(number + 1, len(years) + 1, "Drawing the years")
    title = f"{frames.car.title}: as it stood at the end of each year"
    with Setting() as setting:
        as_pdf = kind == ".pdf"
        data = setting.sheet(
            cells, title=title, foot=frames.legend(), kind="pdf" if as_pdf else "png"
        )
    context.report(len(years) + 1, len(years) + 1, "Setting the sheet")
    return data, len(cells)
