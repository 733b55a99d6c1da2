"""What repair areas have, shared over the panels they touch, piece by piece."""

from collections.abc import Iterable, Iterator

from journal.domain.areas import Area
from journal.domain.costs import NO_PANEL, NOT_SHARED
from journal.domain.ids import AreaId
from journal.domain.sharing import share


class OverPanels:
    """Shares pieces over panels so that both the pieces and the panels' sums come out right.

    Each area's sum so far is what is shared equally over its panels; a panel's part of a piece is
    what its share of that sum grows by. So the parts add up to the piece, and a panel's parts to
    its share of the whole sum (``domain.states.over_panels``): many small pieces favour no panel.
    """

    def __init__(self, areas: Iterable[Area]) -> None:
        self._panels = {area.id: [str(panel_id) for panel_id in area.panel_ids] for area in areas}
        self._sums: dict[tuple[AreaId, int], int] = {}

    def touches(self, area_id: AreaId | None, key: str) -> bool:
        """Whether pieces of an area have a part in the row of that key."""
        return key in self._keys(area_id)

    def parts(self, area_id: AreaId | None, column: int, amount: int) -> Iterator[tuple[str, int]]:
        """The parts of an area's next piece by the key of the row; each column is its own sum."""
        keys = self._keys(area_id)
        if area_id is None or len(keys) == 1:
            yield keys[0], amount
            return
        before = self._sums.get((area_id, column), 0)
        after = self._sums[area_id, column] = before + amount
        even = [1] * len(keys)
        for key, new, old in zip(keys, share(after, even), share(before, even), strict=True):
            yield key, new - old

    def _keys(self, area_id: AreaId | None) -> list[str]:
        return [NOT_SHARED] if area_id is None else self._panels.get(area_id) or [NO_PANEL]
