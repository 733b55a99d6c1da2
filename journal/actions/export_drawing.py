"""The drawing taken out: as SVG, PNG or PDF, plain or as it stands on a date."""

from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path

from journal.actions.session import Session
from journal.actions.tints import tinted
from journal.domain.car import Car
from journal.domain.drawing import Drawing
from journal.domain.errors import JournalError
from journal.domain.ids import PanelId, ViewId
from journal.domain.looks import LEVEL_LOOKS, level_looks, stage_looks
from journal.domain.progress import Context, Silent
from journal.domain.states import panel_states
from journal.domain.svg_marks import Look, Row
from journal.domain.svg_text import drawing_svg
from journal.domain.tints import TintBy
from journal.domain.when import When, spoken
from journal.domain.words import day_in_words
from journal.store.folder import refuse_own_place

#: What the drawing can be taken out as, by the file's ending.
KINDS = (".svg", ".png", ".pdf")

#: The longer side of a picture, in pixels.
LONGEST = 3000


@dataclass(frozen=True, slots=True)
class Dressed:
    """How a drawing stands on paper: what fills its panels, and what stands round it."""

    looks: dict[PanelId, Look]
    heading: tuple[str, ...]
    legend: tuple[Row, ...]


def export_drawing(
    session: Session,
    out: Path,
    view_id: ViewId | None = None,
    *,
    on: When | None = None,
    plain: bool = False,
    by: TintBy | None = None,
    context: Context | None = None,
) -> Path:
    """Write one view, or the sheet of all, as SVG, PNG or PDF by the ending of ``out``.

    Plain it is the drawing alone. Else panels show how they stand now, or by the end of ``on``:
    their stages, or what ``by`` says, with a heading and a legend. It appears whole or not at all.

    Raises:
        JournalError: the ending is another, there is no such view or nothing drawn, or ``out``
            can't be written or lies among the originals.
    """
    run = context or Silent()
    kind = out.suffix.lower()
    if kind not in KINDS:
        raise JournalError(f"“{out.name}” has to end in .svg, .png or .pdf.")
    refuse_place(session, out)
    run.report(0, 2, "Drawing")
    drawing = with_shapes(session.journal.drawing.get(), view_id)
    dress = Dressed({}, (), ()) if plain else dressed(session, drawing, view_id, on=on, by=by)
    svg = drawing_svg(drawing, view_id, dress.looks, heading=dress.heading, legend=dress.legend)
    run.checkpoint()
    run.report(1, 2, "Setting")
    data = svg.encode() if kind == ".svg" else _set(svg, kind, dress)
    run.checkpoint()
    write_out(out, data)
    run.report(2, 2, "Done")
    return out


def dressed(
    session: Session,
    drawing: Drawing,
    view_id: ViewId | None,
    *,
    on: When | None = None,
    by: TintBy | None = None,
) -> Dressed:
    """The drawing's stages or tint by the end of ``on``, with its heading and legend."""
    car = session.journal.car.get()
    if by is None:
        states = panel_states(session.journal.areas.all(), car.stages, on)
        looks, legend = stage_looks(states, car.stages)
        return Dressed(looks, heading(car, drawing, view_id, on), legend)
    found = tinted(session, by, on)
    rows = tuple((LEVEL_LOOKS[row.level], row.text) for row in found.rows)
    shown = heading(car, drawing, view_id, on, by.value)
    return Dressed(level_looks(found.levels), shown, rows)


def heading(
    car: Car, drawing: Drawing, view_id: ViewId | None, on: When | None, what: str = ""
) -> tuple[str, ...]:
    """What stands above a drawing: the car; the view, what it shows, and the day."""
    view = drawing.view(view_id).name if view_id is not None else ""
    day = f"stood at the end of {spoken(on)}" if on else f"stands on {day_in_words(date.today())}"
    parts = (view, what[:1].upper() + what[1:], f"As it {day}")
    return car.title, ". ".join(words for words in parts if words)


def with_shapes(drawing: Drawing, view_id: ViewId | None) -> Drawing:
    """The drawing, without views that nothing is drawn on where the whole sheet is meant.

    Raises:
        JournalError: there is no such view, or nothing is drawn at all.
    """
    if view_id is not None:
        drawing.view(view_id)
        return drawing
    full = {s.view_id for s in drawing.shapes} | {line.view_id for line in drawing.decor}
    if not full:
        raise JournalError("Nothing is drawn yet, so there is nothing to take out.")
    return replace(drawing, views=tuple(v for v in drawing.views if v.id in full))


def refuse_place(session: Session, out: Path) -> None:
    """Refuse to write over what the journal itself consists of.

    Raises:
        JournalError: ``out`` is a place of the journal's own files, or is a folder.
    """
    refuse_own_place(session.folder, out)
    if out.is_dir():
        raise JournalError(f"“{out.name}” is a folder; name a file.")


def write_out(out: Path, data: bytes) -> None:
    """Put a finished file in its place, whole.

    Raises:
        JournalError: it can't be written.
    """
    from journal.files.durable import write_atomically

    try:
        write_atomically(out, data)
    except OSError as error:
        why = error.strerror or str(error)
        raise JournalError(f"“{out.name}” can't be written: {why}.") from error


def _set(svg: str, kind: str, dress: Dressed) -> bytes:
    from journal.dossier.paper import Setting

    title = ". ".join(dress.heading) or "Drawing"
    with Setting() as setting:
        if kind == ".png":
            return setting.picture(svg, LONGEST)
        return setting.page(svg, title=title, alt=title)
