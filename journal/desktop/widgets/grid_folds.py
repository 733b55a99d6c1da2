"""Which photos of a grid stand for others that are folded away: bursts, of which one is shown."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from journal.domain.ids import PhotoId


@dataclass(frozen=True, slots=True)
class Folds:
    """Photos folded away behind one, and those of bursts that lie open.

    ``behind`` holds for each photo shown all that it stands for, itself among them, in order.
    ``open`` holds the photos of bursts that lie open, ``best`` the sharpest of those.
    """

    behind: Mapping[PhotoId, tuple[PhotoId, ...]] = field(default_factory=dict)
    open: frozenset[PhotoId] = frozenset()
    best: frozenset[PhotoId] = frozenset()
    fronts: Mapping[PhotoId, PhotoId] = field(default_factory=dict)

    def front(self, photo: PhotoId) -> PhotoId:
        """The photo shown in the place of one."""
        return self.fronts.get(photo, photo)

    def count(self, photo: PhotoId) -> int:
        """How many photos one stands for."""
        return len(self.behind.get(photo, (photo,)))

    def unfolded(self, photos: Sequence[PhotoId]) -> tuple[PhotoId, ...]:
        """Photos with all that they stand for."""
        if self.behind.keys().isdisjoint(photos):
            return tuple(photos)
        return tuple(one for photo in photos for one in self.behind.get(photo, (photo,)))

    def is_of_burst(self, photo: PhotoId) -> bool:
        """Whether it stands for a burst, or is one of a burst that lies open."""
        return photo in self.behind or photo in self.open

    def words(self, photo: PhotoId) -> list[str]:
        """What a tile says of it, to be read out."""
        if photo in self.behind:
            return [f"stands for {self.count(photo)} photos much alike; F opens them"]
        if photo in self.best:
            return ["the sharpest of its burst; F folds it"]
        return ["of a burst; F folds it"] if photo in self.open else []
