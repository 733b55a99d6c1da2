"""Where the arrow keys lead among pieces of a drawing: to the neighbour, and in the end everywhere.

Pieces are told by number; each has a centre and the box it spans, in millimetres.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from typing import TypeVar

from journal.domain.shapes import Point

#: What a piece spans: left, top, right, bottom.
Box = tuple[float, float, float, float]

K = TypeVar("K")

#: Centres nearer to each other than this, in millimetres, are level: measuring leaves dust.
_DUST = 0.01


class Direction(StrEnum):
    """The arrow keys."""

    UP = "up"
    DOWN = "down"
    LEFT = "left"
    RIGHT = "right"


_STEPS = {
    Direction.UP: (0, -1),
    Direction.DOWN: (0, 1),
    Direction.LEFT: (-1, 0),
    Direction.RIGHT: (1, 0),
}


@dataclass(frozen=True, slots=True)
class Piece:
    """Where a piece is."""

    centre: Point
    box: Box


def arrows(pieces: Mapping[K, Piece]) -> dict[tuple[K, Direction], K]:
    """The piece each arrow leads to from each piece; nothing where nothing lies that way.

    A piece that would be nobody's neighbour (a handle on a door) is put on the way from the piece
    nearest to it to that one's neighbour, so that every piece can be reached from the first.
    """
    found = {
        (start, direction): goal
        for start in pieces
        for direction in Direction
        if (goal := _neighbour(pieces, start, direction)) is not None
    }
    first = next(iter(pieces), None)
    while first is not None and (lost := pieces.keys() - _reached(found, first)):
        _put_on_a_way(found, pieces, lost)
    return found


def _neighbour(pieces: Mapping[K, Piece], start: K, direction: Direction) -> K | None:
    here = pieces[start].centre
    costs = {
        goal: cost
        for goal, piece in pieces.items()
        if goal != start and (cost := _cost(here, piece, direction)) is not None
    }
    return min(costs, key=lambda goal: costs[goal]) if costs else None


def _cost(here: Point, piece: Piece, direction: Direction) -> tuple[bool, float] | None:
    """How far a piece is in a direction, None where it doesn't lie that way.

    Going straight is told by what the piece spans across the way, since a long one (a sill, a
    roof) is the neighbour of all it runs along, wherever its centre is. What lies within 45
    degrees of straight ahead comes before all else.
    """
    step_x, step_y = _STEPS[direction]
    ahead = (piece.centre.x - here.x) * step_x + (piece.centre.y - here.y) * step_y
    if ahead < _DUST:
        return None
    across, low, high = (here.y, 1, 3) if step_x else (here.x, 0, 2)
    aside = max(0.0, piece.box[low] - across, across - piece.box[high])
    return aside > ahead, ahead + 2 * aside


def _reached(found: Mapping[tuple[K, Direction], K], first: K) -> set[K]:
    seen, edge = {first}, [first]
    while edge:
        start = edge.pop()
        for direction in Direction:
            goal = found.get((start, direction))
            if goal is not None and goal not in seen:
                seen.add(goal)
                edge.append(goal)
    return seen


def _put_on_a_way(
    found: dict[tuple[K, Direction], K], pieces: Mapping[K, Piece], lost: set[K]
) -> None:
    """Put the lost piece nearest to one that isn't on the way from that one to its neighbour."""
    pairs = [(start, piece) for start in pieces if start not in lost for piece in lost]
    start, piece = min(pairs, key=lambda pair: _apart(pieces, *pair))
    here, there = pieces[start].centre, pieces[piece].centre
    dx, dy = there.x - here.x, there.y - here.y
    if abs(dx) >= abs(dy):
        direction = Direction.RIGHT if dx >= 0 else Direction.LEFT
    else:
        direction = Direction.DOWN if dy > 0 else Direction.UP
    before = found.get((start, direction))
    found[start, direction] = piece
    if before is not None:
        found[piece, direction] = before


def _apart(pieces: Mapping[K, Piece], one: K, other: K) -> float:
    a, b = pieces[one].centre, pieces[other].centre
    return abs(a.x - b.x) + abs(a.y - b.y)
