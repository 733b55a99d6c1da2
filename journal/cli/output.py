"""What commands print: answers on standard output, everything else on standard error."""

import json
import re
import signal
import sys
from collections.abc import Iterable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from types import FrameType
from typing import Any

import click
from rich.console import Console
from rich.markup import escape
from rich.progress import BarColumn, MofNCompleteColumn, Progress, TextColumn, TimeRemainingColumn
from rich.table import Table

from journal.domain.errors import Cancelled

#: Exit statuses: all done, done in part (each failure named), could not.
DONE, IN_PART, COULD_NOT = 0, 1, 2


#: Signs that steer a terminal; words from sheets, papers and bundles may hold any.
_STEERING = {code: chr(0x2400 + code) for code in range(32)} | dict.fromkeys(range(127, 160), "�")
_IN_LINES = {code: sign for code, sign in _STEERING.items() if chr(code) not in "\n\t"}
_IN_CELLS = _STEERING | dict.fromkeys(map(ord, "\n\r\t"), " ")


def answer(value: Any) -> None:
    """Print one JSON document."""
    document = json.dumps(value, ensure_ascii=False, indent=1, default=str)
    click.echo(re.sub("[\x7f-\x9f]", lambda sign: f"\\u{ord(sign[0]):04x}", document))


def put(text: str) -> None:
    """Print a line of the answer on standard output."""
    click.echo(text.translate(_IN_LINES))


def tell(text: str) -> None:
    """Print a line for the person on standard error."""
    click.echo(text.translate(_IN_LINES), err=True)


def table(headings: Sequence[str], rows: Iterable[Sequence[str]], right: frozenset[int]) -> None:
    """Print rows under headings; the columns numbered in ``right`` are set to the right."""
    cells = [[cell.translate(_IN_CELLS) for cell in row] for row in rows]
    if not sys.stdout.isatty():
        _plain([headings, *cells], right)
        return
    grid = Table(box=None, pad_edge=False, header_style="bold")
    for number, heading in enumerate(headings):
        grid.add_column(heading, justify="right" if number in right else "left")
    for row in cells:
        grid.add_row(*(escape(cell) for cell in row))
    Console(file=sys.stdout).print(grid, highlight=False)


def _plain(cells: Sequence[Sequence[str]], right: frozenset[int]) -> None:
    """The same for a file or a pipe, never cut to the width of a screen."""
    widths = [max(len(row[i]) for row in cells) for i in range(len(cells[0]))]
    for row in cells:
        parts = [
            cell.rjust(width) if i in right else cell.ljust(width)
            for i, (cell, width) in enumerate(zip(row, widths, strict=True))
        ]
        put("  ".join(parts).rstrip())


class Bar:
    """A job's progress as a bar on standard error; Ctrl-C asks the job to stop."""

    def __init__(self, progress: Progress) -> None:
        self._progress = progress
        self._task = progress.add_task("", total=None)
        self._stop = False

    def report(self, done: int, total: int, label: str) -> None:
        """Move the bar."""
        self._progress.update(self._task, completed=done, total=total or None, description=label)

    def checkpoint(self) -> None:
        """Raise Cancelled once Ctrl-C was pressed."""
        if self._stop:
            raise Cancelled

    def stop(self) -> None:
        """Have the next checkpoint end the job."""
        self._stop = True


@contextmanager
def progress() -> Iterator[Bar]:
    """A bar for as long as a job runs; a second Ctrl-C ends the program at once."""
    shown = Progress(
        TextColumn("{task.description}"),
        BarColumn(),
        MofNCompleteColumn(),
        TimeRemainingColumn(),
        console=Console(stderr=True),
        transient=True,
        disable=not sys.stderr.isatty(),
    )
    with shown:
        bar = Bar(shown)

        def asked(_number: int, _frame: FrameType | None) -> None:
            bar.stop()
            signal.signal(signal.SIGINT, signal.default_int_handler)

        before = signal.signal(signal.SIGINT, asked)
        try:
            yield bar
        finally:
            signal.signal(signal.SIGINT, before)


def plain(value: Mapping[str, Any]) -> dict[str, Any]:
    """A row for JSON with everything that is empty by nature as null."""
    return {key: None if part == "" else part for key, part in value.items()}
