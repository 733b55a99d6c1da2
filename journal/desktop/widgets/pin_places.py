"""Pins sorted by where they show; fifty thousand of them are sorted in a reader's thread."""

from collections import Counter, defaultdict
from collections.abc import Iterable
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from journal.domain.ids import PanelId, PhotoId, ViewId
    from journal.domain.photos import Pin


@dataclass(frozen=True, slots=True)
class PinPlaces:
    """Every pin, by view and panel.

    Attributes:
        counts: how many photos each panel has.
        loose: by panel, the photos that are on it somewhere; they show on each of its views.
        exact: by view, the pins whose spot is known.
    """

    counts: "Counter[PanelId]" = field(default_factory=Counter)
    loose: "dict[PanelId, tuple[PhotoId, ...]]" = field(default_factory=dict)
    exact: "dict[ViewId, tuple[Pin, ...]]" = field(default_factory=dict)


def sort_pins(pins: "Iterable[Pin]") -> PinPlaces:
    """Find out where each pin shows."""
    counts: Counter[PanelId] = Counter()
    loose: defaultdict[PanelId, list[PhotoId]] = defaultdict(list)
    exact: defaultdict[ViewId, list[Pin]] = defaultdict(list)
    for pin in pins:
        counts[pin.panel_id] += 1
        if pin.view_id is None or pin.x is None:
            loose[pin.panel_id].append(pin.photo_id)
        elif pin.y is not None:
            exact[pin.view_id].append(pin)
    return PinPlaces(
        counts,
        {panel_id: tuple(ids) for panel_id, ids in loose.items()},
        {view_id: tuple(found) for view_id, found in exact.items()},
    )
