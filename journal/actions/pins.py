"""Pinning photos to the drawing."""

from collections.abc import Sequence

from journal.actions import labels
from journal.actions.session import Session
from journal.domain.changes import Changes
from journal.domain.errors import JournalError
from journal.domain.ids import PanelId, PhotoId, ViewId
from journal.domain.photos import Pin

#: A pin, told by its photo and the panel it is on.
PlacedPhoto = tuple[PhotoId, PanelId]


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


def move_pins(
    session: Session,
    pins: Sequence[PlacedPhoto],
    panel_id: PanelId,
    *,
    view_id: ViewId | None = None,
    spot: tuple[float, float] | None = None,
) -> Changes:
    """Move pins to another panel, or another spot of theirs (millimetres on the view).

    The way the camera faced goes along on the same view; on another it means nothing.

    Raises:
        JournalError: a photo has no pin on the panel it is to be moved from, or there is no such
            panel.
    """
    journal = session.journal
    label = f"Move {labels.count(len(pins), 'pin')} to {labels.panel(journal, panel_id)}"
    with journal.edit(label) as edit:
        for photo_id, before in pins:
            old = _pin(session, photo_id, before)
            facing = old.facing if old.view_id == view_id else None
            if before != panel_id:
                journal.pins.take(photo_id, before)
            journal.pins.put(photo_id, panel_id, view_id, spot, facing)
    return edit.changes()


def shift_pins(session: Session, pins: Sequence[PlacedPhoto], dx: float, dy: float) -> Changes:
    """Move pins by millimetres on their view; those without a spot stay where they are.

    Raises:
        JournalError: a photo has no such pin.
    """
    with session.journal.edit(f"Shift {labels.count(len(pins), 'pin')}") as edit:
        for photo_id, panel_id in pins:
            old = _pin(session, photo_id, panel_id)
            if old.x is not None and old.y is not None:
                spot = old.x + dx, old.y + dy
                session.journal.pins.put(photo_id, panel_id, old.view_id, spot, old.facing)
    return edit.changes()


def face_pins(
    session: Session,
    pins: Sequence[PlacedPhoto],
    facing: float | None,
    *,
    view_id: ViewId | None = None,
    spot: tuple[float, float] | None = None,
) -> Changes:
    """Record the way the camera faced: degrees clockwise from up on the pin's view, None: unknown.

    Pins that have no spot yet get this one.

    Raises:
        JournalError: a photo has no such pin, or the pin no spot and none is given.
    """
    degrees = None if facing is None else facing % 360
    count = labels.count(len(pins), "pin")
    label = f"Leave open which way {count} faced"
    if degrees is not None:
        label = f"Turn {count} to {degrees:.0f}\N{DEGREE SIGN}"
    with session.journal.edit(label) as edit:
        for photo_id, panel_id in pins:
            old = _pin(session, photo_id, panel_id)
            own = None if old.x is None or old.y is None else (old.x, old.y)
            view, at = (old.view_id, own) if own else (view_id, spot)
            if view is None or at is None:
                raise JournalError(
                    "The pin has no spot on the drawing yet: drag it to the one it belongs on."
                )
            session.journal.pins.put(photo_id, panel_id, view, at, degrees)
    return edit.changes()


def _pin(session: Session, photo_id: PhotoId, panel_id: PanelId) -> Pin:
    for found in session.journal.pins.of_photo(photo_id):
        if found.panel_id == panel_id:
            return found
    label = labels.panel(session.journal, panel_id)
    raise JournalError(f"Photo number {photo_id} has no pin on {label}.")


def pins(session: Session) -> tuple[Pin, ...]:
    """Every pin on the drawing."""
    return session.journal.pins.all()


def pins_of(session: Session, photo_id: PhotoId) -> tuple[Pin, ...]:
    """One photo's pins."""
    return session.journal.pins.of_photo(photo_id)
