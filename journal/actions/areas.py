"""Repair areas, their stages and photos, and the owner's entries."""

from collections.abc import Sequence
from typing import TYPE_CHECKING

from journal.actions import labels
from journal.actions.session import Session
from journal.domain.areas import Area, Entry, StageChange
from journal.domain.changes import Changes
from journal.domain.errors import JournalError
from journal.domain.ids import AreaId, EntryId, PanelId, PhotoId, StageChangeId
from journal.domain.photos import AreaPhoto, Photo, Role
from journal.domain.when import When

if TYPE_CHECKING:
    from journal.domain.receipts import Receipt
    from journal.domain.work import Work


def areas(session: Session) -> tuple[Area, ...]:
    """Every repair area, in order of its first date."""
    return session.journal.areas.all()


def area(session: Session, area_id: AreaId) -> Area:
    """One repair area.

    Raises:
        JournalError: there is none of that number.
    """
    return session.journal.areas.get(area_id)


def find_area(session: Session, text: str) -> Area:
    """The repair area that a number, a name or a part of one means.

    Raises:
        JournalError: it means none, or more than one.
    """
    found = areas(session)
    wanted = text.casefold().strip()
    exact = [a for a in found if str(a.id) == wanted or a.name.casefold() == wanted]
    exact = exact or [a for a in found if wanted and wanted in a.name.casefold()]
    if len(exact) == 1:
        return exact[0]
    if exact:
        names = ", ".join(f"“{a.name}”" for a in exact[:6])
        raise JournalError(f"“{text}” means more than one repair area: {names}.")
    raise JournalError(f"There is no repair area “{text}”.")


def add_area(
    session: Session,
    name: str,
    panel_ids: Sequence[PanelId],
    found: str = "",
    when: When | None = None,
) -> Changes:
    """Mark a repair area on panels; with a date, it is at the first stage since then.

    Raises:
        JournalError: the name is empty, or there is no such panel.
    """
    if not name.strip():
        raise JournalError("A repair area needs a name.")
    journal = session.journal
    with journal.edit(f"New repair area “{name}”") as edit:
        area_id = journal.areas.add(name.strip(), panel_ids, found)
        if when is not None:
            journal.areas.add_stage_change(area_id, journal.car.get().stages[0], when, "")
    return edit.changes(area_id)


def change_area(session: Session, area: Area) -> Changes:
    """Record an area's name, panels, words and cautions anew.

    Raises:
        JournalError: the name is empty.
    """
    if not area.name.strip():
        raise JournalError("A repair area needs a name.")
    with session.journal.edit(f"Change repair area “{area.name}”") as edit:
        session.journal.areas.change(area)
    return edit.changes()


def move_to_stage(
    session: Session, area_id: AreaId, stage: str, when: When, note: str = ""
) -> Changes:
    """Record the day an area came to a stage.

    Raises:
        JournalError: the journal has no such stage.
    """
    journal = session.journal
    stages = journal.car.get().stages
    if stage not in stages:
        raise JournalError(f"There is no stage “{stage}”; there are {', '.join(stages)}.")
    name = journal.areas.get(area_id).name
    with journal.edit(f"Move “{name}” to {stage}") as edit:
        journal.areas.add_stage_change(area_id, stage, when, note)
    return edit.changes()


def change_stage_change(session: Session, change: StageChange) -> Changes:
    """Record a change of stage anew: its stage, day and note.

    Raises:
        JournalError: the area has no such change, or the journal no such stage.
    """
    journal = session.journal
    area = journal.areas.get(change.area_id)
    before = next((c for c in area.changes if c.id == change.id), None)
    if before is None:
        raise JournalError(f"“{area.name}” has no such date of a stage.")
    stages = journal.car.get().stages
    if change.stage not in (*stages, before.stage):
        raise JournalError(f"There is no stage “{change.stage}”; there are {', '.join(stages)}.")
    with journal.edit(f"Change the date of “{change.stage}” of “{area.name}”") as edit:
        journal.areas.change_stage_change(change)
    return edit.changes()


def remove_stage_change(session: Session, change_id: StageChangeId) -> Changes:
    """Take the date of a stage out."""
    with session.journal.edit("Remove the date of a stage") as edit:
        session.journal.areas.remove_stage_change(change_id)
    return edit.changes()


def remove_area(session: Session, area_id: AreaId) -> Changes:
    """Take a repair area out; its photos, receipts and hours stay."""
    name = session.journal.areas.get(area_id).name
    with session.journal.edit(f"Remove repair area “{name}”") as edit:
        session.journal.areas.remove(area_id)
    return edit.changes()


def area_photos(session: Session, area_id: AreaId) -> tuple[tuple[Role, Photo], ...]:
    """The photos chosen for an area: before, during, after, each in the owner's order."""
    chosen = session.journal.areas.photos_of(area_id)
    by_id = {p.id: p for p in session.journal.photos.of_area(area_id)}
    order = list(Role)
    ranked = sorted(chosen, key=lambda c: (order.index(c.role), c.rank))
    return tuple((c.role, by_id[c.photo_id]) for c in ranked if c.photo_id in by_id)


def photo_areas(session: Session, photo_id: PhotoId) -> tuple[tuple[AreaPhoto, Area], ...]:
    """The areas that one photo was chosen for, with its role in each."""
    chosen = session.journal.areas.photo_areas(photo_id)
    return tuple((c, session.journal.areas.get(c.area_id)) for c in chosen)


def choose_photos(
    session: Session, area_id: AreaId, photo_ids: Sequence[PhotoId], role: Role
) -> Changes:
    """Choose photos to show an area before, during or after the work."""
    name = session.journal.areas.get(area_id).name
    label = f"Choose {labels.photos(photo_ids)} of “{name}” {role.value} the work"
    with session.journal.edit(label) as edit:
        for photo_id in photo_ids:
            session.journal.areas.choose_photo(area_id, photo_id, role)
    return edit.changes()


def unchoose_photos(session: Session, area_id: AreaId, photo_ids: Sequence[PhotoId]) -> Changes:
    """Take photos out of an area's choice; they stay in the journal."""
    name = session.journal.areas.get(area_id).name
    with session.journal.edit(f"Take {labels.photos(photo_ids)} out of “{name}”") as edit:
        for photo_id in photo_ids:
            session.journal.areas.drop_photo(area_id, photo_id)
    return edit.changes()


def entries(session: Session) -> tuple[Entry, ...]:
    """Every note in the owner's words, in order of date."""
    return session.journal.areas.entries()


def area_entries(session: Session, area_id: AreaId) -> tuple[Entry, ...]:
    """The notes on a repair area, in order of date."""
    return session.journal.areas.entries_of(area_id)


def area_spent(session: Session, area_id: AreaId) -> "tuple[tuple[Receipt, ...], tuple[Work, ...]]":
    """The receipts and the hours that a repair area has a share of, each in order of date."""
    journal = session.journal
    return journal.receipts.for_area(area_id), journal.work.for_area(area_id)


def add_entry(
    session: Session,
    when: When,
    text: str,
    area_id: AreaId | None = None,
    panel_id: PanelId | None = None,
) -> Changes:
    """Write a dated note, on an area or a panel where it belongs to one.

    Raises:
        JournalError: the text is empty.
    """
    if not text.strip():
        raise JournalError("An entry needs some words.")
    with session.journal.edit("Add entry") as edit:
        entry = Entry(EntryId(0), when, text.strip(), area_id, panel_id)
        made = session.journal.areas.add_entry(entry)
    return edit.changes(made)


def change_entry(session: Session, entry: Entry) -> Changes:
    """Write a note anew."""
    with session.journal.edit("Change entry") as edit:
        session.journal.areas.change_entry(entry)
    return edit.changes()


def remove_entry(session: Session, entry_id: EntryId) -> Changes:
    """Take a note out."""
    with session.journal.edit("Remove entry") as edit:
        session.journal.areas.remove_entry(entry_id)
    return edit.changes()
