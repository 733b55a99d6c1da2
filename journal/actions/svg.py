"""An SVG file brought into the drawing: every closed figure a panel."""

import stat
from dataclasses import dataclass, replace
from pathlib import Path

from journal.actions import labels
from journal.actions.session import Session
from journal.actions.shaping import reshape
from journal.domain.changes import Changes
from journal.domain.drawing import Drawing
from journal.domain.errors import JournalError
from journal.domain.ids import ViewId
from journal.domain.shaping.making import LONGEST_NAME
from journal.domain.shaping.merging import bring_in


@dataclass(frozen=True, slots=True)
class NotUsed:
    """Something in the file that became no panel, and why."""

    what: str
    reason: str


@dataclass(frozen=True, slots=True)
class BroughtIn:
    """What came of an SVG file.

    Attributes:
        changes: the one edit it was.
        panels: how many outlines were drawn.
        views: the names of the views they are on.
        not_used: what of the file became no panel, in the order of the file.
        scaled: whether the file or the person said how long a unit is; else one was taken for a
            millimetre.
    """

    changes: Changes
    panels: int
    views: tuple[str, ...]
    not_used: tuple[NotUsed, ...]
    scaled: bool


def bring_in_svg(
    session: Session,
    file: Path,
    view_id: ViewId | None = None,
    mm_per_unit: float | None = None,
) -> BroughtIn:
    """Bring the panels of an SVG file in, onto a view where one is given, else onto new ones.

    A unit of the file is ``mm_per_unit`` millimetres, else as long as the file says. It is one
    edit: all of it comes in, or nothing.

    Raises:
        JournalError: the file can't be read, is refused (huge, malformed, scripted, with links or
            entities), holds no closed figure, or doesn't fit the view.
    """
    from journal.intake.svg_drawing import read_svg

    found = read_svg(_content(file), name=f"“{file.name}”", mm_per_unit=mm_per_unit)
    brought = _named(found.drawing, file.stem)
    count = len(brought.shapes)
    label = f"Bring in {labels.count(count, 'panel')} from “{file.name}”"
    before = {each.view_id for each in session.journal.drawing.get().shapes}
    changes = reshape(session, label, lambda drawing: bring_in(drawing, brought, view_id))
    drawing = session.journal.drawing.get()
    drawn = {each.view_id for each in drawing.shapes} - before if view_id is None else {view_id}
    return BroughtIn(
        changes=changes,
        panels=count,
        views=tuple(view.name for view in drawing.views if view.id in drawn),
        not_used=tuple(NotUsed(left.what, left.reason) for left in found.left_out),
        scaled=found.scaled,
    )


def _content(file: Path) -> bytes:
    """What is in the file, unless it is far too large to be a drawing."""
    from journal.intake.svg_guard import MOST_BYTES

    try:
        status = file.stat()
        if not stat.S_ISREG(status.st_mode):
            raise JournalError(f"“{file.name}” is no ordinary file.")
        if status.st_size > MOST_BYTES:
            raise JournalError(
                f"“{file.name}” is too large to be read as a drawing: "
                f"{status.st_size / 1e6:.0f} MB, {MOST_BYTES / 1e6:.0f} MB at most."
            )
        return file.read_bytes()
    except (OSError, ValueError) as error:
        why = error.strerror if isinstance(error, OSError) and error.strerror else str(error)
        raise JournalError(f"“{file.name}” can't be read: {why}.") from error


def _named(drawing: Drawing, stem: str) -> Drawing:
    """The drawing with the view of a foreign file called by the file's name alone."""
    if len(drawing.views) != 1 or not drawing.views[0].name.startswith("“"):
        return drawing
    name = stem.strip()[:LONGEST_NAME] or "Brought in"
    return replace(drawing, views=(replace(drawing.views[0], name=name),))
