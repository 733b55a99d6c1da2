"""Making the drawing one's own: every step is one edit, and can be undone."""

from collections.abc import Callable

from journal.actions import labels
from journal.actions.session import Session
from journal.domain.changes import Changes
from journal.domain.drawing import Drawing
from journal.domain.errors import JournalError
from journal.domain.ids import PanelId, ViewId
from journal.domain.shaping import joining, making
from journal.store.journal import Journal


def reshape(session: Session, label: str, change: Callable[[Drawing], Drawing]) -> Changes:
    """Change the drawing by one of the acts of ``journal.domain.shaping``.

    Args:
        session: the open journal.
        label: what the person did, as the undo menu names it.
        change: gives the changed drawing, or refuses.

    Raises:
        JournalError: the act refuses, or takes off a panel or a view on which something hangs.
    """
    journal = session.journal
    before = journal.drawing.get()
    after = change(before)
    for panel in before.panels:
        if panel.id not in {kept.id for kept in after.panels}:
            _refuse_hanging(journal, panel.id)
    _refuse_drawn_on(journal, before, after)
    with journal.edit(label) as edit:
        _forget_views(journal, before, after)
        journal.drawing.redraw(after)
    new = {panel.id for panel in after.panels} - {panel.id for panel in before.panels}
    return edit.changes(min(new, default=None))


def join_panels(session: Session, keep: PanelId, gone: PanelId) -> Changes:
    """Make one panel of two neighbours; all that hangs on the one that goes moves over.

    Raises:
        JournalError: they are no neighbours on any view.
    """
    journal = session.journal
    after = joining.join_panels(journal.drawing.get(), keep, gone)
    names = labels.panel(journal, gone), labels.panel(journal, keep)
    with journal.edit(f"Join {names[0]} to {names[1]}") as edit:
        journal.drawing.hang_over(gone, keep)
        journal.drawing.redraw(after)
    return edit.changes(keep)


def remove_panel(session: Session, panel_id: PanelId) -> Changes:
    """Take a panel out of the drawing.

    Raises:
        JournalError: something hangs on it, named with how much.
    """
    label = f"Remove panel {labels.panel(session.journal, panel_id)}"
    return reshape(session, label, lambda drawing: making.remove_panel(drawing, panel_id))


def _refuse_hanging(journal: Journal, panel_id: PanelId) -> None:
    found = journal.drawing.hanging(panel_id)
    if not found:
        return
    many = {"entry": "entries"}
    words = [labels.count(n, word, many.get(word, "")) for word, n in found.items()]
    name = labels.panel(journal, panel_id)
    hang = f"{' and '.join(words)} hang{'s' if sum(found.values()) == 1 else ''} on {name}"
    closed = _closed_on(journal, panel_id)
    if not closed:
        raise JournalError(f"{hang}: move them first, or join it to a neighbour.")
    surveys = " and ".join(f"“{survey}”" for survey in closed)
    raise JournalError(
        f"{hang}, and what {surveys} found there is kept as it was on that day. Join the panel to "
        "a neighbour, and all goes along; or remove that survey first."
    )


def _closed_on(journal: Journal, panel_id: PanelId) -> list[str]:
    """The closed surveys that found something on a panel: their findings can't be moved."""
    numbers = {found.survey_id for found in journal.surveys.on_panel(panel_id)}
    return [one.name for one in journal.surveys.all() if one.id in numbers and one.closed]


def _gone_views(before: Drawing, after: Drawing) -> set[ViewId]:
    return {view.id for view in before.views} - {view.id for view in after.views}


def _refuse_drawn_on(journal: Journal, before: Drawing, after: Drawing) -> None:
    gone = _gone_views(before, after)
    if not gone:
        return
    metal = journal.metalwork
    drawn: list[ViewId] = [
        *(seam.view_id for seam in metal.seams()),
        *(patch.view_id for patch in metal.patches()),
        *(anchor.view_id for anchor in metal.anchors()),
        *(measure.view_id for measure in journal.readings.measures()),
    ]
    for view in before.views:
        if view.id in gone and view.id in drawn:
            raise JournalError(
                f"Welds, anchor points or measures are drawn on “{view.name}”: remove them first."
            )


def _forget_views(journal: Journal, before: Drawing, after: Drawing) -> None:
    """Pins keep their panel where the view they had a spot on goes."""
    for view_id in _gone_views(before, after):
        journal.underlays.take(view_id)
        journal.surveys.off_view(view_id)
        for pin in journal.pins.all():
            if pin.view_id == view_id:
                journal.pins.put(pin.photo_id, pin.panel_id, None, None, None)
