"""Pinning photos to the drawing."""

from collections.abc import Sequence

from journal.actions import labels
from journal.actions.session import Session
from journal.domain.changes import Changes
from journal.domain.ids import PanelId, PhotoId, ViewId
from journal.domain.photos import Pin


def pin(
    session: Session,
    photo_ids: Sequence[PhotoId],
    panel_id: PanelId,
    *,
    view_id: ViewId | None = None,
    x: float | None = None,
    y: float | None = None,
    facing: float | None = None,
) -> Changes:
    """Pin photos to a panel, on a spot of a view where one is given (millimetres).

    Raises:
        JournalError: there is no such panel or photo.
    """
    journal = session.journal
    spot = None if x is None or y is None else (x, y)
    label = f"Pin {labels.photos(photo_ids)} to {labels.panel(journal, panel_id)}"
    with journal.edit(label) as edit:
        for photo_id in photo_ids:
            journal.pins.put(photo_id, panel_id, view_id, spot, facing)
    return edit.changes()


def unpin(
    session: Session, photo_ids: Sequence[PhotoId], panel_id: PanelId | None = None
) -> Changes:
    """Take photos' pins from a panel, or all their pins."""
    with session.journal.edit(f"Unpin {labels.photos(photo_ids)}") as edit:
        for photo_id in photo_ids:
            session.journal.pins.take(photo_id, panel_id)
    return edit.changes()


def pins(session: Session) -> tuple[Pin, ...]:
    """Every pin on the drawing."""
    return session.journal.pins.all()


def pins_of(session: Session, photo_id: PhotoId) -> tuple[Pin, ...]:
    """One photo's pins."""
    return session.journal.pins.of_photo(photo_id)
