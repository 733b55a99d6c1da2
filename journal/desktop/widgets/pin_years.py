"""The pins as they were by a day: those of photos taken until then."""

from bisect import bisect_right
from collections.abc import Iterable, Mapping
from datetime import date

from journal.desktop.widgets.pin_places import PinPlaces, sort_pins
from journal.domain.ids import PhotoId
from journal.domain.photos import Pin


class PinYears:
    """Every pin with the day its photo was taken; photos without a date show today alone."""

    def __init__(self, pins: Iterable[Pin], taken: Mapping[PhotoId, str]) -> None:
        """``taken`` is the earliest moment of each photo in ISO 8601, "" where unknown."""
        found = tuple(pins)
        dated = [(taken[pin.photo_id][:10], pin) for pin in found if taken.get(pin.photo_id)]
        dated.sort(key=lambda pair: pair[0])
        self._days = [day for day, _ in dated]
        self._pins = [pin for _, pin in dated]
        self._today = sort_pins(found)
        self._then: tuple[int, PinPlaces] = (0, PinPlaces())

    def on(self, day: date | None) -> PinPlaces:
        """Where the pins are by the end of a day; None: today."""
        if day is None:
            return self._today
        count = bisect_right(self._days, day.isoformat())
        if count != self._then[0]:
            self._then = count, sort_pins(self._pins[:count])
        return self._then[1]
