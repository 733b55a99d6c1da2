"""The drawing, and how far each panel is."""

import re
from collections.abc import Iterable

from journal.actions.session import Session
from journal.domain.areas import Area
from journal.domain.drawing import Drawing, Panel, View
from journal.domain.errors import JournalError
from journal.domain.ids import PanelId, typed_number
from journal.domain.when import When


def drawing(session: Session) -> Drawing:
    """The whole drawing of the car."""
    return session.journal.drawing.get()


def first_view(session: Session) -> Drawing:
    """The drawing with the outlines and lines of its first view alone: quick to read."""
    faces = views(session)
    return session.journal.drawing.get(faces[0].id if faces else None)


def panels(session: Session) -> tuple[Panel, ...]:
    """Every panel, in order of number."""
    return session.journal.drawing.panels()


def views(session: Session) -> tuple[View, ...]:
    """Every face of the drawing."""
    return session.journal.drawing.views()


def find_view(session: Session, text: str) -> View:
    """The view of a name.

    Raises:
        JournalError: there is none.
    """
    found = views(session)
    wanted = _plain(text)
    for view in found:
        if _plain(view.name) == wanted:
            return view
    names = ", ".join(view.name for view in found)
    raise JournalError(f"The drawing has no view “{text}”; it has {names}.")


def find_panel(session: Session, text: str) -> Panel:
    """The panel that a number, a label or a part of one means: "Sill, left", "left sill", "SILL L".

    Raises:
        JournalError: it means none (near ones are named) or more than one.
    """
    found = panels(session)
    number, wanted = typed_number(text), _words(text)
    exact = [p for p in found if p.id == number or _words(p.label) == wanted]
    if number is None and wanted:
        exact = exact or [p for p in found if wanted <= _words(p.label)]
    if len(exact) == 1:
        return exact[0]
    if exact:
        raise JournalError(f"“{text}” means more than one panel: {_listed(exact)}.")
    import difflib

    near = difflib.get_close_matches(_plain(text), [_plain(p.label) for p in found], 4, 0.5)
    like = [p for p in found if _plain(p.label) in near]
    hint = f" Do you mean {_listed(like)}?" if like else ""
    raise JournalError(f"The drawing has no panel “{text}”.{hint}")


def _plain(text: str) -> str:
    return " ".join(re.findall(r"[\w-]+", text.casefold()))


def _words(text: str) -> frozenset[str]:
    short = {"l": "left", "r": "right", "lh": "left", "rh": "right"}
    return frozenset(short.get(word, word) for word in _plain(text).split())


def _listed(panels: Iterable[Panel]) -> str:
    return ", ".join(f"“{panel.label}”" for panel in list(panels)[:6])


def panel_stages(session: Session, on: When | None = None) -> dict[PanelId, str]:
    """The stage of every panel that has repair areas: the least advanced of them.

    With ``on``, as it stood by the end of that date; panels without trouble known then are left
    out.
    """
    stages = session.journal.car.get().stages
    order = {stage: rank for rank, stage in enumerate(stages)}
    found: dict[PanelId, str] = {}
    for area in session.journal.areas.all():
        stage = area.stage if on is None else area.stage_on(on)
        if not stage:
            continue
        for panel_id in area.panel_ids:
            found[panel_id] = min(found.get(panel_id, stage), stage, key=lambda s: order.get(s, -1))
    return found


def area_panels(session: Session, area: Area) -> tuple[Panel, ...]:
    """The panels that a repair area touches, in its own order."""
    by_id = {panel.id: panel for panel in panels(session)}
    return tuple(by_id[i] for i in area.panel_ids if i in by_id)
