"""Starter drawings: a vehicle's views, drawn from its body style and a few dimensions."""

from functools import lru_cache

from journal.domain.drawing import Drawing
from journal.domain.starters.blank import draw_blank
from journal.domain.starters.bodies import BODIES
from journal.domain.starters.cabin import draw_cabin
from journal.domain.starters.ends import draw_front
from journal.domain.starters.engine_bay import draw_engine_bay
from journal.domain.starters.motorcycle import draw_motorcycle
from journal.domain.starters.proportions import MARGIN, proportions
from journal.domain.starters.rear_view import draw_rear
from journal.domain.starters.sheet import Draft
from journal.domain.starters.side_view import draw_left_side
from journal.domain.starters.top_view import draw_top
from journal.domain.starters.tractor import draw_tractor
from journal.domain.starters.underside import draw_underside

__all__ = ["BODIES", "starter"]


def starter(body: str, wheelbase_mm: int = 0, length_mm: int = 0) -> Drawing:
    """The starter drawing of a body of ``BODIES``, panels and views numbered from 1.

    A dimension of 0 stands for one typical of the body.

    Raises:
        JournalError: the body is unknown, or the dimensions are not those of such a vehicle.
    """
    return _drawn(body, wheelbase_mm, length_mm)


@lru_cache(maxsize=4)
def _drawn(body: str, wheelbase_mm: int, length_mm: int) -> Drawing:
    """The whole drawing; kept, since a preview and the journal made of it ask for the same."""
    draft = Draft()
    if body in _NO_CARS:
        _NO_CARS[body](draft, wheelbase_mm, length_mm)
    else:
        _draw_car(draft, body, wheelbase_mm, length_mm)
    return draft.finish()


#: What is drawn of itself, without a car's lines.
_NO_CARS = {"motorcycle": draw_motorcycle, "tractor": draw_tractor, "blank": draw_blank}


def _draw_car(draft: Draft, body: str, wheelbase_mm: int, length_mm: int) -> None:
    """The eight views of a car."""
    p = proportions(body, wheelbase_mm, length_mm)
    left = draft.sheet("Left side", p.length + 2 * MARGIN, p.height + 2 * MARGIN)
    draw_left_side(left, p)
    left.mirrored("Right side")
    draw_top(draft.sheet("Top", p.length + 2 * MARGIN, p.width + 2 * MARGIN), p)
    draw_underside(draft.sheet("Underside", p.length + 2 * MARGIN, p.width + 2 * MARGIN), p)
    end = p.width * 1.1 + 2 * MARGIN, p.height + 2 * MARGIN
    draw_front(draft.sheet("Front", *end), p)
    draw_rear(draft.sheet("Rear", *end), p)
    draw_engine_bay(draft, p)
    draw_cabin(draft, p)
