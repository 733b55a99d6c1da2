"""A blank sheet: a few empty views of a likely size, for an owner who draws from nothing."""

from journal.domain.errors import JournalError
from journal.domain.starters.proportions import MARGIN
from journal.domain.starters.sheet import Draft

#: What stands for a length that isn't known, and the shares of it that width and height are.
_LENGTH, _WIDTH, _HEIGHT = 4200.0, 0.38, 0.34


def draw_blank(draft: Draft, wheelbase_mm: int, length_mm: int) -> None:
    """Lay out empty views, large enough for a vehicle of that length.

    Raises:
        JournalError: no vehicle is that long.
    """
    for what, size in (("wheelbase", wheelbase_mm), ("length", length_mm)):
        if size and not 300 <= size <= 15_000:
            raise JournalError(f"A {what} of {size} mm can't be drawn: 300 to 15000 mm can.")
    length = length_mm or wheelbase_mm * 1.65 or _LENGTH
    along, across = length + 2 * MARGIN, length * _WIDTH + 2 * MARGIN
    high = length * _HEIGHT + 2 * MARGIN
    for name, wide, tall in (
        ("Left side", along, high),
        ("Right side", along, high),
        ("Top", along, across),
        ("Front", across, high),
        ("Rear", across, high),
    ):
        draft.sheet(name, wide, tall)
