"""Welding drawn on the car: seams, patches, anchor points, and what they come to."""

from collections.abc import Sequence
from dataclasses import dataclass

from journal.actions.session import Session
from journal.domain.anchors import AnchorPoint, Mark, check_anchor, marks, near_patch, near_seam
from journal.domain.changes import Changes
from journal.domain.ids import AnchorId, AreaId, PatchId, PhotoId, SeamChangeId, SeamId, ViewId
from journal.domain.patches import Patch, PatchSums, check_patch, patch_sums, patch_sums_by
from journal.domain.seam_sums import SeamSums, SumsOn, panel_under, series, sums, sums_by
from journal.domain.seams import (
    Seam,
    SeamChange,
    SeamState,
    check_change,
    check_seam,
    length,
    redrawn,
)
from journal.domain.when import When
from journal.store.journal import Journal


@dataclass(frozen=True, slots=True)
class Metal:
    """All that is welded and let in, with every state, and the anchor points."""

    seams: tuple[Seam, ...]
    changes: tuple[SeamChange, ...]
    patches: tuple[Patch, ...]
    anchors: tuple[AnchorPoint, ...]


@dataclass(frozen=True, slots=True)
class MetalSums:
    """What it comes to: seams in millimetres by state, patches in cm² and grams.

    By repair area, panel and view; panels are those that lie under a seam's middle.
    """

    seams: SeamSums
    patches: PatchSums
    seams_by_area: dict[AreaId, SeamSums]
    seams_by_panel: dict[int, SeamSums]
    seams_by_view: dict[ViewId, SeamSums]
    patches_by_area: dict[AreaId, PatchSums]


def metal(session: Session) -> Metal:
    """All the metalwork of the journal."""
    store = session.journal.metalwork
    return Metal(store.seams(), store.changes(), store.patches(), store.anchors())


def metal_sums(session: Session, on: When | None = None) -> MetalSums:
    """What the metalwork comes to, by the end of ``on``, or by now."""
    from journal.domain.hits import PanelMap

    found = metal(session)
    panels = PanelMap(session.journal.drawing.get())
    seams, changes = found.seams, found.changes
    patches = found.patches
    return MetalSums(
        seams=sums(seams, changes, on),
        patches=patch_sums(patches, on),
        seams_by_area=sums_by(seams, changes, lambda seam: seam.area_id, on),
        seams_by_panel=sums_by(seams, changes, lambda seam: panel_under(seam, panels), on),
        seams_by_view=sums_by(seams, changes, lambda seam: seam.view_id, on),
        patches_by_area=patch_sums_by(patches, lambda patch: patch.area_id, on),
    )


def seam_series(session: Session) -> tuple[SumsOn, ...]:
    """How many millimetres were planned, tacked, welded and dressed, day by day."""
    found = metal(session)
    return series(found.seams, found.changes)


def add_seam(session: Session, seam: Seam) -> Changes:
    """Draw a seam on a view, part of a repair area.

    Raises:
        JournalError: it is one point, has no length, or its joint and spacing don't go together.
    """
    check_seam(seam)
    name = _area(session.journal, seam.area_id)
    with session.journal.edit(f"Draw a seam for “{name}”") as edit:
        made = session.journal.metalwork.add_seam(seam)
    return edit.changes(made)


def change_seam(session: Session, seam: Seam) -> Changes:
    """Draw a seam anew, or say something else of it; its states keep their parts, in proportion.

    Raises:
        JournalError: as for ``add_seam``.
    """
    check_seam(seam)
    store = session.journal.metalwork
    before = store.seam(seam.id)
    own = [change for change in store.changes() if change.seam_id == seam.id]
    moved = [(old, redrawn(old, before, seam)) for old in own]
    for _, change in moved:
        check_change(seam, change)
    with session.journal.edit("Change a seam") as edit:
        store.change_seam(seam)
        for old, change in moved:
            if change != old:
                store.change_part(change)
    return edit.changes(seam.id)


def remove_seam(session: Session, seam_id: SeamId) -> Changes:
    """Take a seam out, with its states."""
    with session.journal.edit("Remove a seam") as edit:
        session.journal.metalwork.remove_seam(seam_id)
    return edit.changes()


def move_seam(
    session: Session,
    seam_id: SeamId,
    state: SeamState,
    when: When,
    *,
    part: tuple[float, float] | None = None,
    note: str = "",
    photo_ids: Sequence[PhotoId] = (),
) -> Changes:
    """Record the day a seam came to a state; ``part`` is from and to in millimetres, or all of it.

    Raises:
        JournalError: the part is not on the seam.
    """
    store = session.journal.metalwork
    seam = store.seam(seam_id)
    start, end = part or (0.0, length(seam))
    change = SeamChange(SeamChangeId(0), seam_id, state, start, end, when, note, tuple(photo_ids))
    check_change(seam, change)
    with session.journal.edit(f"A seam {state.value}") as edit:
        made = store.add_change(change)
    return edit.changes(made)


def remove_seam_change(session: Session, change_id: SeamChangeId) -> Changes:
    """Take the day of a seam's state out."""
    with session.journal.edit("Remove the date of a seam's state") as edit:
        session.journal.metalwork.remove_change(change_id)
    return edit.changes()


def add_patch(session: Session, patch: Patch) -> Changes:
    """Draw a piece of new metal, part of a repair area.

    Raises:
        JournalError: its outline crosses itself or has no area, or its thickness is absurd.
    """
    check_patch(patch)
    with session.journal.edit(
        f"Draw a patch for “{_area(session.journal, patch.area_id)}”"
    ) as edit:
        made = session.journal.metalwork.add_patch(patch)
    return edit.changes(made)


def change_patch(session: Session, patch: Patch) -> Changes:
    """Draw a patch anew, or say something else of it."""
    check_patch(patch)
    with session.journal.edit("Change a patch") as edit:
        session.journal.metalwork.change_patch(patch)
    return edit.changes(patch.id)


def remove_patch(session: Session, patch_id: PatchId) -> Changes:
    """Take a patch out."""
    with session.journal.edit("Remove a patch") as edit:
        session.journal.metalwork.remove_patch(patch_id)
    return edit.changes()


def add_anchor(session: Session, anchor: AnchorPoint) -> Changes:
    """Mark a load-bearing mounting on a view.

    Raises:
        JournalError: it has no name, place or sensible radius.
    """
    check_anchor(anchor)
    with session.journal.edit(f"Mark anchor point “{anchor.name}”") as edit:
        made = session.journal.metalwork.add_anchor(anchor)
    return edit.changes(made)


def change_anchor(session: Session, anchor: AnchorPoint) -> Changes:
    """Mark a mounting anew."""
    check_anchor(anchor)
    with session.journal.edit(f"Change anchor point “{anchor.name}”") as edit:
        session.journal.metalwork.change_anchor(anchor)
    return edit.changes(anchor.id)


def remove_anchor(session: Session, anchor_id: AnchorId) -> Changes:
    """Take a mounting out."""
    with session.journal.edit("Remove an anchor point") as edit:
        session.journal.metalwork.remove_anchor(anchor_id)
    return edit.changes()


def seam_marks(found: Metal, seam: Seam) -> tuple[Mark, ...]:
    """What to say of a seam near anchor points; it never says pass or fail."""
    return marks(near_seam(found.anchors, seam))


def patch_marks(found: Metal, patch: Patch) -> tuple[Mark, ...]:
    """What to say of a patch near anchor points; it never says pass or fail."""
    return marks(near_patch(found.anchors, patch))


def _area(journal: Journal, area_id: AreaId) -> str:
    return journal.areas.get(area_id).name
