"""Standard views: the photographs that show a whole car, as a valuer asks for them."""

from dataclasses import dataclass

from journal.domain.errors import JournalError
from journal.domain.ids import PhotoId

#: Common practice, no source.
STANDARD_VIEWS = (
    "front",
    "rear",
    "left side",
    "right side",
    "interior",
    "engine bay",
    "underside",
)

#: Those of the outside, which show the whole length or width of the car.
OUTSIDE = frozenset(STANDARD_VIEWS[:4])


@dataclass(frozen=True, slots=True)
class ViewPhoto:
    """The photo chosen for a standard view."""

    name: str
    photo_id: PhotoId


def check_view(name: str) -> None:
    """Refuse a name that is no standard view's.

    Raises:
        JournalError: naming those there are.
    """
    if name not in STANDARD_VIEWS:
        raise JournalError(
            f"There is no standard view “{name}”; there are {', '.join(STANDARD_VIEWS)}."
        )
