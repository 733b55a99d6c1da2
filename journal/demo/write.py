"""Writing the demo's pictures into a folder as a person's cameras and scanner would have."""

import os
from collections.abc import Callable, Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from datetime import datetime
from functools import partial
from pathlib import Path
from typing import TypeVar

from journal.demo.cameras import encode
from journal.demo.papers import paper
from journal.demo.pictures import draw
from journal.demo.plan import Planned, plan
from journal.demo.story import ReceiptStory
from journal.domain.photos import Role
from journal.domain.progress import Context
from journal.files.scratch import write_scratch

T = TypeVar("T")


@dataclass(frozen=True, slots=True)
class DemoPicture:
    """A picture that was written, and the truth about it.

    ``true_time`` is when it was taken, in local time, None where only the owner could say;
    ``shown_time`` is what the file says, None where it says nothing. ``panel`` is a panel's label,
    "" for none, ``area`` the key of a repair area, "" for none. ``said`` is the date in the
    owner's words.
    """

    path: Path
    true_time: datetime | None
    shown_time: datetime | None
    panel: str
    area: str
    role: Role | None
    camera: str
    caption: str = ""
    said: str = ""


def chosen(limit: int | None) -> tuple[Planned, ...]:
    """The pictures to draw: all, or so many spread evenly over the years."""
    everything = plan()
    if limit is None or limit >= len(everything):
        return everything
    last = len(everything) - 1
    return tuple(everything[last * i // max(1, limit - 1)] for i in range(limit))


def write_pictures(
    folder: Path, context: Context, limit: int | None = None
) -> tuple[DemoPicture, ...]:
    """Draw the demo's pictures into ``folder``, all or ``limit`` of them.

    What was written when the person asks to stop stays.

    Raises:
        Cancelled: the person asked to stop.
        OSError: a file could not be written.
    """
    pictures = chosen(limit)
    written = in_parallel(
        [partial(_write, folder, picture) for picture in pictures], context, "Drawing the pictures"
    )
    return tuple(written)


def write_papers(
    folder: Path, receipts: Sequence[ReceiptStory], context: Context
) -> list[Path | None]:
    """Draw the receipts' papers into ``folder``: for each receipt its file, None where it has none.

    Raises:
        Cancelled: the person asked to stop.
        OSError: a file could not be written.
    """
    jobs = [partial(_write_paper, folder, receipt) for receipt in receipts]
    return in_parallel(jobs, context, "Drawing the receipts")


def in_parallel(jobs: Sequence[Callable[[], T]], context: Context, label: str) -> list[T]:
    """What each job gives, in their order; they run on all cores.

    Raises:
        Cancelled: the person asked to stop; jobs not yet begun are left out.
    """
    done: list[T] = []
    with ThreadPoolExecutor(max_workers=min(4, os.cpu_count() or 1)) as pool:
        try:
            for number, running in enumerate([pool.submit(job) for job in jobs]):
                context.checkpoint()
                context.report(number, len(jobs), label)
                done.append(running.result())
        except BaseException:
            pool.shutdown(cancel_futures=True)
            raise
    context.report(len(jobs), len(jobs), label)
    return done


def _write_paper(folder: Path, receipt: ReceiptStory) -> Path | None:
    drawn = paper(receipt)
    if drawn is None:
        return None
    name, content = drawn
    write_scratch(folder / name, content)
    return folder / name


def _write(folder: Path, planned: Planned) -> DemoPicture:
    shot = planned.subject.shot
    path = folder / planned.path
    # A card or a phone keeps the day it wrote a file; a scanner likewise.
    content = encode(draw(planned), planned.camera, planned.shown, shot.light)
    write_scratch(path, content, modified=planned.shown)
    return DemoPicture(
        path=path,
        true_time=planned.true,
        shown_time=planned.shown if planned.camera.writes != "nothing" else None,
        panel=planned.panel,
        area=planned.subject.area.key if planned.subject.area else "",
        role=planned.role,
        camera=planned.camera.key,
        caption=planned.caption,
        said=planned.said,
    )
