"""Photos in groups for a grid, as they are chosen from."""

from collections.abc import Collection

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QSizePolicy

from journal.actions import timeline
from journal.desktop.desk import Desk
from journal.desktop.widgets.parts import label
from journal.desktop.widgets.photo_grid import Group, PhotoGrid
from journal.domain.ids import PhotoId
from journal.domain.words import day_in_words


def sitting_groups(desk: Desk, without: Collection[PhotoId] = ()) -> list[Group]:
    """All photos by sitting, but for those ``without``."""
    groups = []
    for sitting in desk.ask(timeline.sittings) or ():
        day = day_in_words(sitting.first.date()) if sitting.first else "No date"
        photos = tuple(photo for photo in sitting.photo_ids if photo not in without)
        if photos:
            groups.append(Group(day, count_words(len(photos)), photos, sitting.placed))
    return groups


def say_if_none(grid: PhotoGrid, *, none: bool) -> None:
    """Over a grid without photos, say how they come."""
    grid.setVisible(not none)
    holder = grid.parentWidget()
    if none and holder is not None and (layout := holder.layout()) is not None:
        words = label(
            "No photo is in the journal yet. Add photos first, then choose here.", "muted"
        )
        words.setAlignment(Qt.AlignmentFlag.AlignCenter)
        words.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Expanding)
        layout.replaceWidget(grid, words)


def count_words(count: int) -> str:
    """So many photos."""
    return "1 photo" if count == 1 else f"{count:,} photos"
