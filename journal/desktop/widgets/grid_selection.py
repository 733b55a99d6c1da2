"""Which photos of a grid are selected, and which one the keyboard is on."""

from collections.abc import Iterable

from journal.domain.ids import PhotoId


class Selection:
    """Selected photos in the order of the grid, with a current one and the anchor of ranges."""

    def __init__(self) -> None:
        self.order: tuple[PhotoId, ...] = ()
        self.chosen: set[PhotoId] = set()
        self.current: PhotoId | None = None
        self.anchor: PhotoId | None = None
        self._places: dict[PhotoId, int] = {}

    def set_order(self, order: tuple[PhotoId, ...]) -> bool:
        """Take a new order; what is no longer in it is dropped. True if the selection changed."""
        before, index = len(self.chosen), self.current_index
        self.order = order
        self._places = {}
        if before or index is not None:
            self.chosen = {photo for photo in self.chosen if photo in self.places}
            if self.current not in self.places:
                self.current = self._stand_in(index)
            if self.anchor not in self.places:
                self.anchor = self.current
        return len(self.chosen) != before

    def _stand_in(self, index: int | None) -> PhotoId | None:
        """The photo to be current where the one at ``index`` is gone: what took its place."""
        if self.chosen:
            return self.ids()[0]
        if index is None or not self.order:
            return None
        return self.order[min(index, len(self.order) - 1)]

    @property
    def places(self) -> dict[PhotoId, int]:
        """The index of each photo; made when first asked for."""
        if not self._places:
            self._places = {photo: index for index, photo in enumerate(self.order)}
        return self._places

    @property
    def current_index(self) -> int | None:
        """The index of the current photo."""
        return None if self.current is None else self.places.get(self.current)

    def ids(self) -> tuple[PhotoId, ...]:
        """The selected photos in the order of the grid."""
        if len(self.chosen) == len(self.order):
            return self.order
        return tuple(sorted(self.chosen, key=self.places.__getitem__))

    def only(self, index: int) -> None:
        """Select one photo alone."""
        self.current = self.anchor = self.order[index]
        self.chosen = {self.order[index]}

    def toggle(self, index: int) -> None:
        """Select a photo beside the others, or let it go."""
        self.current = self.anchor = self.order[index]
        self.chosen ^= {self.order[index]}

    def extend(self, index: int, *, keep: bool = False) -> None:
        """Select from the anchor to a photo; ``keep`` leaves what was selected before."""
        if self.anchor is None:
            self.only(index)
            return
        start, end = sorted((self.places[self.anchor], index))
        reach = set(self.order[start : end + 1])
        self.chosen = self.chosen | reach if keep else reach
        self.current = self.order[index]

    def go(self, index: int) -> None:
        """Move the current photo and leave the selection as it is."""
        self.current = self.order[index]

    def replace(self, ids: Iterable[PhotoId]) -> None:
        """Select exactly these, so far as they are in the grid."""
        self.chosen = {photo for photo in ids if photo in self.places}
        first = next(iter(self.ids()), None)
        if first is not None and self.current not in self.chosen:
            self.current = first
        self.anchor = self.current

    def all(self) -> None:
        """Select every photo."""
        self.chosen = set(self.order)
        if self.current is None and self.order:
            self.current = self.anchor = self.order[0]

    def clear(self) -> None:
        """Select nothing; the current photo stays."""
        self.chosen = set()
