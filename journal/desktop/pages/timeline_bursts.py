"""Bursts on the timeline: folded into one tile each, opened one by one, the sharpest marked."""

from collections.abc import Iterable, Sequence
from dataclasses import replace

from PySide6.QtCore import QObject, Signal

from journal.actions.bursts import bursts, sharpest
from journal.desktop.desk import Desk
from journal.desktop.tasks import Task
from journal.desktop.widgets.grid_folds import Folds
from journal.desktop.widgets.grid_layout import Group
from journal.domain.bursts import Burst
from journal.domain.ids import PhotoId


class TimelineBursts(QObject):
    """What is known of bursts, and which of them lie open."""

    #: The tiles are others now: read, opened or folded.
    changed = Signal()

    def __init__(self, desk: Desk, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._found: tuple[Burst, ...] = ()
        self._of: dict[PhotoId, Burst] = {}
        self._open: set[PhotoId] = set()
        self._reading: Task | None = None
        self._is_folded = True

    @property
    def count(self) -> int:
        """How many bursts there are."""
        return len(self._found)

    @property
    def is_folded(self) -> bool:
        """Whether bursts are folded unless they were opened."""
        return self._is_folded

    def read(self) -> None:
        """Look for bursts, in a reader's thread: the photos are shown long before."""
        session = self._desk.session
        if self._reading is not None:
            self._reading.cancel()
        self._reading = self._desk.read(
            lambda context: _by_photo(bursts(session, context)), self._on_read, self
        )

    def _on_read(self, read: tuple[tuple[Burst, ...], dict[PhotoId, Burst]]) -> None:
        self._reading = None
        found, by_photo = read
        if found != self._found:
            self._found, self._of = found, by_photo
            self.changed.emit()

    def fold_all(self, *, folded: bool) -> None:
        """Fold every burst, or let all lie open."""
        self._is_folded = folded
        self._open.clear()
        self.changed.emit()

    def toggle(self, photo: PhotoId) -> None:
        """Open the burst of a photo, or fold it again."""
        burst = self._of.get(photo)
        if burst is None:
            return
        self._open ^= set(burst.photo_ids)
        self.changed.emit()
        if self._lies_open(burst):
            self._look(burst)

    def open_for(self, photos: Iterable[PhotoId]) -> None:
        """Open the bursts of which some photos are wanted but not all."""
        wanted = set(photos)
        for burst in {self._of[photo] for photo in wanted if photo in self._of}:
            if not self._lies_open(burst) and not wanted.issuperset(burst.photo_ids):
                self.toggle(burst.photo_ids[0])

    def _lies_open(self, burst: Burst) -> bool:
        return (burst.photo_ids[0] in self._open) == self._is_folded

    def _look(self, burst: Burst) -> None:
        """Find the sharpest photo of a burst that was opened; it is kept for the next time."""
        session = self._desk.session
        self._desk.read(
            lambda context: sharpest(session, [burst], context), self._on_sharpest, self
        )

    def _on_sharpest(self, found: tuple[Burst, ...]) -> None:
        for burst in found:
            known = self._of.get(burst.photo_ids[0])
            if known is not None and known.photo_ids == burst.photo_ids:
                self._of.update(dict.fromkeys(burst.photo_ids, burst))
                self._found = tuple(burst if one is known else one for one in self._found)
        self.changed.emit()

    def folded(self, groups: Sequence[Group]) -> tuple[tuple[Group, ...], Folds]:
        """The groups with one tile for each burst that is folded, and what the tiles stand for."""
        if not self._of:
            return tuple(groups), Folds()
        made = []
        behind: dict[PhotoId, tuple[PhotoId, ...]] = {}
        lying: set[PhotoId] = set()
        for group in groups:
            if self._of.keys().isdisjoint(group.ids):
                made.append(group)
            else:
                ids = self._tiles(group.ids, behind, lying)
                made.append(group if len(ids) == len(group.ids) else replace(group, ids=ids))
        best = frozenset(self._of[photo].best for photo in lying) & lying
        fronts = {photo: front for front, photos in behind.items() for photo in photos}
        return tuple(made), Folds(behind, frozenset(lying), frozenset(best), fronts)

    def _tiles(
        self,
        ids: Sequence[PhotoId],
        behind: dict[PhotoId, tuple[PhotoId, ...]],
        lying: set[PhotoId],
    ) -> tuple[PhotoId, ...]:
        """The tiles of a group: every photo, or the one that stands for its burst."""
        shown: list[PhotoId] = []
        inside, known = set(ids), self._of
        done: set[PhotoId] = set()
        for photo in ids:
            burst = known.get(photo)
            if burst is None:
                shown.append(photo)
            elif self._lies_open(burst):
                shown.append(photo)
                lying.add(photo)
            elif burst.photo_ids[0] not in done:
                done.add(burst.photo_ids[0])
                here = tuple(one for one in burst.photo_ids if one in inside)
                front = burst.best if burst.best in inside else here[0]
                shown.append(front)
                if len(here) > 1:
                    behind[front] = here
        return tuple(shown)


def _by_photo(
    found: tuple[Burst, ...],
) -> tuple[tuple[Burst, ...], dict[PhotoId, Burst]]:
    """The bursts, and the burst of each photo."""
    return found, {photo: burst for burst in found for photo in burst.photo_ids}
