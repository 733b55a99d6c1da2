"""Words that the undo menu uses for what was done."""

from collections.abc import Sequence

from journal.store.journal import Journal


def count(number: int, one: str, many: str = "") -> str:
    """A number with its noun: "1 photo", "3 photos"."""
    return f"{number:,} {one if number == 1 else many or one + 's'}"


def photos(ids: Sequence[object]) -> str:
    """So many photos."""
    return count(len(ids), "photo")


def panel(journal: Journal, panel_id: int) -> str:
    """A panel's label, or its number where there is none."""
    return next(
        (p.label for p in journal.drawing.panels() if p.id == panel_id), f"panel {panel_id}"
    )
