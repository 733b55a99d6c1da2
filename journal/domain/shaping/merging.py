"""Bringing another drawing in: its views beside one's own, or its panels onto one of them."""

from dataclasses import replace

from journal.domain.drawing import Drawing, PanelShape, Side, View
from journal.domain.errors import JournalError
from journal.domain.ids import PanelId, ViewId
from journal.domain.shaping.making import add_view, top_order, with_new_panel
from journal.domain.shaping.placed import check_placed


def bring_in(drawing: Drawing, brought: Drawing, onto: ViewId | None = None) -> Drawing:
    """The drawing with another one's panels.

    With ``onto`` they are laid on that view, above what is there, without their background lines;
    the other drawing must then have one view. Else each of its views fills the one of its name and
    size that has nothing on it yet, or becomes a new one, with a number after its name where that
    is taken. A panel whose name and side the drawing has already
    is that panel; where it has a shape on the view already, the new shape takes its place.

    Raises:
        JournalError: the other drawing is empty, has more than one view to lay on one, or a shape
            would leave the sheet or is unsound.
    """
    if not brought.shapes:
        raise JournalError("There is nothing to bring in: no panel was found.")
    if onto is not None and len({s.view_id for s in brought.shapes}) > 1:
        raise JournalError(
            f"The panels of more than one view ({len(brought.views)}) can't be laid on one."
        )
    made, panels = _with_panels(drawing, brought)
    made, views = _with_views(made, brought, onto)
    for view in brought.views:
        for placed in brought.shapes_on(view.id):
            made = _put(made, placed, panels[placed.panel_id], views[view.id])
    if onto is None:
        lines = tuple(replace(line, view_id=views[line.view_id]) for line in brought.decor)
        made = replace(made, decor=(*made.decor, *lines))
    return made


def _with_panels(drawing: Drawing, brought: Drawing) -> tuple[Drawing, dict[PanelId, PanelId]]:
    """The drawing with the panels it lacks, and which of its panels each brought one is."""
    known = {_key(p.name, p.side): p.id for p in drawing.panels}
    found = {}
    for panel in brought.panels:
        key = _key(panel.name, panel.side)
        if key not in known:
            drawing, new = with_new_panel(drawing, panel.name, panel.side, panel.system)
            known[key] = new.id
        found[panel.id] = known[key]
    return drawing, found


def _key(name: str, side: Side) -> tuple[str, Side]:
    return name.casefold(), side


def _with_views(
    drawing: Drawing, brought: Drawing, onto: ViewId | None
) -> tuple[Drawing, dict[ViewId, ViewId]]:
    if onto is not None:
        drawing.view(onto)
        return drawing, {view.id: onto for view in brought.views}
    found = {}
    for view in brought.views:
        empty = _empty_like(drawing, view)
        if empty is not None:
            found[view.id] = empty
            continue
        taken = {v.name.casefold() for v in drawing.views}
        name, number = view.name, 2
        while name.casefold() in taken:
            name, number = f"{view.name} {number}", number + 1
        drawing = add_view(drawing, name, view.width, view.height)
        found[view.id] = drawing.views[-1].id
    return drawing, found


def _empty_like(drawing: Drawing, view: View) -> ViewId | None:
    """The view of that name and size on which nothing is drawn."""
    drawn = {s.view_id for s in drawing.shapes} | {line.view_id for line in drawing.decor}
    for own in drawing.views:
        alike = (own.name.casefold(), own.width, own.height)
        if alike == (view.name.casefold(), view.width, view.height) and own.id not in drawn:
            return own.id
    return None


def _put(drawing: Drawing, placed: PanelShape, panel: PanelId, view: ViewId) -> Drawing:
    there = PanelShape(panel, view, placed.shape, top_order(drawing, view))
    check_placed(drawing, there)
    rest = tuple(s for s in drawing.shapes if (s.panel_id, s.view_id) != (panel, view))
    return replace(drawing, shapes=(*rest, there))
