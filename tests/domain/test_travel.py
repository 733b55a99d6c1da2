"""Arrow keys lead to the neighbour, and every piece can be reached."""

from hypothesis import given
from hypothesis import strategies as st

from journal.domain.shapes import Point
from journal.domain.travel import Direction, Piece, arrows


def piece(left: float, top: float, right: float, bottom: float) -> Piece:
    return Piece(Point((left + right) / 2, (top + bottom) / 2), (left, top, right, bottom))


def reached(found: dict[tuple[int, Direction], int], first: int) -> set[int]:
    seen, edge = {first}, [first]
    while edge:
        start = edge.pop()
        goals = {found[start, d] for d in Direction if (start, d) in found} - seen
        seen |= goals
        edge.extend(goals)
    return seen


sides = st.integers(0, 3000)
boxes = st.builds(
    lambda x, y, w, h: piece(x, y, x + w, y + h),
    sides,
    sides,
    st.integers(1, 900),
    st.integers(1, 900),
)


@given(st.lists(boxes, min_size=1, max_size=25))
def test_every_piece_can_be_reached_from_the_first(drawn):
    pieces = dict(enumerate(drawn))
    assert reached(arrows(pieces), 0) == set(pieces)


@given(st.lists(boxes, min_size=2, max_size=25))
def test_no_arrow_leads_to_where_it_starts(drawn):
    assert all(start != goal for (start, _), goal in arrows(dict(enumerate(drawn))).items())


def test_a_long_piece_is_the_neighbour_of_all_it_runs_along():
    doors = {"front": piece(0, 0, 800, 600), "rear": piece(810, 0, 1600, 600)}
    sill = Piece(Point(50, 650), (0, 610, 1600, 700))
    found = arrows({**doors, "sill": sill})
    assert found["front", Direction.DOWN] == "sill"
    assert found["rear", Direction.DOWN] == "sill"
    assert found["front", Direction.RIGHT] == "rear"
    assert ("rear", Direction.RIGHT) not in found


def test_a_handle_on_a_door_can_be_reached():
    pieces = {
        "wing": piece(0, 0, 800, 600),
        "door": piece(810, 0, 1600, 600),
        "handle": piece(1500, 100, 1560, 115),
        "quarter": piece(1610, 0, 2400, 600),
    }
    assert "handle" in reached(arrows(pieces), "wing")


def test_nothing_leads_nowhere():
    assert arrows({}) == {}
    assert arrows({"roof": piece(0, 0, 1, 1)}) == {}
