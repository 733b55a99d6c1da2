"""Corners, handles and edges: moved with all that shares them, put in and taken out."""

import time

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from journal.domain.drawing import Drawing, PanelShape
from journal.domain.errors import JournalError
from journal.domain.hits import to_polygon
from journal.domain.ids import PanelId
from journal.domain.shapes import Curve, Point, polygon
from journal.domain.shaping.corners import (
    Node,
    Part,
    corner_points,
    corners,
    dragged_shapes,
    grab_corner,
    grab_handle,
    move_corner,
    move_handle,
)
from journal.domain.shaping.edges import (
    curve_edge,
    insert_corner,
    place_near,
    remove_corner,
    straighten_edge,
)
from journal.domain.shaping.placed import shape_of
from journal.domain.starters import starter
from tests.domain.quilts import VIEW, drawing_of, quilts, two_squares

A, B = PanelId(1), PanelId(2)

steps = st.integers(-1500, 1500).map(lambda n: n / 100)


def area(drawing: Drawing, panel: PanelId) -> float:
    return float(to_polygon(shape_of(drawing, panel, VIEW), 0.005).area)


def points(drawing: Drawing, panel: PanelId) -> set[Point]:
    return {p for _, p in corner_points(shape_of(drawing, panel, VIEW))}


def test_corners_and_handles_are_addressed_in_order() -> None:
    drawing = curve_edge(two_squares(), A, VIEW, 0, 0)
    found = corners(shape_of(drawing, A, VIEW))
    assert list(found) == [
        Node(0, 0, Part.HANDLE1), Node(0, 0, Part.HANDLE2), Node(0, 0, Part.TO),
        Node(0, 1, Part.TO), Node(0, 2, Part.TO), Node(0, 3, Part.TO),
    ]  # fmt: skip
    # The edge that closes the outline arrives at its start.
    assert found[Node(0, 3, Part.TO)] == Point(100, 100)


def test_a_shared_corner_moves_as_one() -> None:
    moved = move_corner(two_squares(), VIEW, Point(200, 100), Point(220, 90))
    assert Point(220, 90) in points(moved, A) & points(moved, B)
    assert area(moved, A) + area(moved, B) == pytest.approx(20_000 + 200 * 10 / 2)


def test_corners_that_nearly_coincide_move_as_one_and_keep_their_hair() -> None:
    drawing = drawing_of(
        polygon([(100, 100), (200, 100), (200, 200)]),
        polygon([(200.03, 100.03), (300, 100), (300, 200)]),
        polygon([(200.2, 100), (300, 50), (300, 90)]),
    )
    moved = move_corner(drawing, VIEW, Point(200, 100), Point(210, 110))
    assert Point(210, 110) in points(moved, A)
    assert Point(210.03, 110.03) in points(moved, B)
    assert Point(200.2, 100) in points(moved, PanelId(3))


@given(quilts(), st.data())
@settings(max_examples=60, deadline=None)
def test_a_corner_moved_and_moved_back_leaves_the_drawing_as_it_was(
    drawing: Drawing, data: st.DataObject
) -> None:
    spot = data.draw(
        st.sampled_from(sorted(points(drawing, PanelId(data.draw(st.integers(1, 6))))))
    )
    to = Point(round(spot.x + data.draw(steps), 2), round(spot.y + data.draw(steps), 2))
    try:
        moved = move_corner(drawing, VIEW, spot, to)
    except JournalError:
        assume(False)
    assert move_corner(moved, VIEW, to, spot) == drawing


@given(quilts(), st.integers(1, 6), steps, steps)
@settings(max_examples=60, deadline=None)
def test_shared_corners_stay_shared_and_the_whole_keeps_its_area(
    drawing: Drawing, panel: int, dx: float, dy: float
) -> None:
    inner = points(drawing, PanelId(1)) & points(drawing, PanelId(2)) & points(drawing, PanelId(5))
    (spot,) = inner
    to = Point(round(spot.x + dx, 2), round(spot.y + dy, 2))
    try:
        moved = move_corner(drawing, VIEW, spot, to)
    except JournalError:
        assume(False)
    held = [p.id for p in drawing.panels if spot in points(drawing, p.id)]
    assert [p.id for p in moved.panels if to in points(moved, p.id)] == held
    # Four patches meet at an inner corner: what one loses its neighbours gain.
    before = sum(area(drawing, p.id) for p in drawing.panels)
    after = sum(area(moved, p.id) for p in moved.panels)
    assert after == pytest.approx(before, abs=1)


def test_a_corner_takes_the_handles_beside_it_along() -> None:
    drawing = curve_edge(two_squares(), A, VIEW, 0, 1)
    moved = move_corner(drawing, VIEW, Point(200, 100), Point(206, 103))
    for panel in (A, B):
        handles = {
            p for n, p in corners(shape_of(moved, panel, VIEW)).items() if n.part is not Part.TO
        }
        assert handles == {Point(206, 136.33), Point(200, 166.67)}


def test_a_handle_moves_in_every_panel_that_shares_the_curve() -> None:
    drawing = curve_edge(two_squares(), A, VIEW, 0, 1)
    moved = move_handle(drawing, A, VIEW, Node(0, 1, Part.HANDLE1), Point(230, 140))
    assert area(moved, A) > 10_000 > area(moved, B)
    assert area(moved, A) + area(moved, B) == pytest.approx(20_000, abs=0.01)
    back = move_handle(moved, A, VIEW, Node(0, 1, Part.HANDLE1), Point(200, 133.33))
    assert back == drawing


@pytest.mark.parametrize(
    ("at", "to", "said"),
    [
        (Point(150, 100), Point(150, 90), "no corner at 150, 100 mm"),
        (Point(100, 100), Point(250, 150), "A, left crosses its own outline at"),
        (Point(100, 100), Point(-5, 100), "A, left reaches 5 mm over the left edge"),
        (Point(300, 200), Point(300, 900), "B, left reaches 100 mm over the bottom edge"),
        (Point(100, 100), Point(float("inf"), 0), "number is too large"),
    ],
)
def test_a_move_that_can_not_be_is_refused_in_a_sentence(at: Point, to: Point, said: str) -> None:
    with pytest.raises(JournalError, match=said) as caught:
        move_corner(two_squares(), VIEW, at, to)
    assert str(caught.value).endswith(".")


def test_what_is_no_handle_is_refused() -> None:
    with pytest.raises(JournalError, match="A, left has no such handle"):
        grab_handle(two_squares(), A, VIEW, Node(0, 0, Part.HANDLE1))
    with pytest.raises(JournalError, match="no panel number 9"):
        move_handle(two_squares(), PanelId(9), VIEW, Node(0, 0, Part.TO), Point(0, 0))


# Corners put in and taken out


@given(quilts(), st.integers(1, 6), st.integers(0, 3), st.floats(0.1, 0.9))
@settings(max_examples=60, deadline=None)
def test_a_corner_put_in_changes_no_outline_and_comes_out_again(
    drawing: Drawing, panel: int, edge: int, share: float
) -> None:
    number = PanelId(panel)
    shape = shape_of(drawing, number, VIEW)
    nodes = [p for n, p in corners(shape).items() if n.part is Part.TO]
    a, b = nodes[edge - 1], nodes[edge]
    near = Point(a.x + (b.x - a.x) * share, a.y + (b.y - a.y) * share)
    made = insert_corner(drawing, number, VIEW, near)
    new = points(made, number) - points(drawing, number)
    assert len(new) == 1
    for before, after in zip(drawing.shapes, made.shapes, strict=True):
        one, two = to_polygon(before.shape, 0.001), to_polygon(after.shape, 0.001)
        assert one.hausdorff_distance(two) < 0.02
    # The neighbour beyond the edge, where there is one, has the same corner.
    place = place_near(shape, next(iter(new)))
    holders = [p.id for p in made.panels if new <= points(made, p.id)]
    touching = [p.id for p in drawing.panels if _touches(drawing, p.id, place.point)]
    assert holders == touching
    node = next(n for n, p in corners(shape_of(made, number, VIEW)).items() if p in new)
    gone = remove_corner(made, number, VIEW, node)
    for before, after in zip(drawing.shapes, gone.shapes, strict=True):
        assert len(corners(after.shape)) == len(corners(before.shape))
        one, two = to_polygon(before.shape, 0.001), to_polygon(after.shape, 0.001)
        assert one.hausdorff_distance(two) < 0.1


def _touches(drawing: Drawing, panel: PanelId, spot: Point) -> bool:
    return place_near(shape_of(drawing, panel, VIEW), spot).distance < 0.02


def test_a_corner_is_not_put_upon_another() -> None:
    with pytest.raises(JournalError, match="has a corner at 200, 100 mm already"):
        insert_corner(two_squares(), A, VIEW, Point(203, 95))


def test_a_crossing_edge_gets_no_corner() -> None:
    base = two_squares()
    strip = polygon([(140, 50), (160, 50), (160, 250), (140, 250)])
    drawing = drawing_of(*(s.shape for s in base.shapes), strip)
    made = insert_corner(drawing, A, VIEW, Point(140, 100))
    assert shape_of(made, PanelId(3), VIEW) == strip


def test_removing_takes_the_corner_out_of_those_who_share_both_edges() -> None:
    made = insert_corner(two_squares(), A, VIEW, Point(200, 150))
    made = move_corner(made, VIEW, Point(200, 150), Point(215, 150))
    node = next(n for n, p in corners(shape_of(made, A, VIEW)).items() if p == Point(215, 150))
    assert area(remove_corner(made, A, VIEW, node), B) == pytest.approx(10_000)


def test_a_corner_where_edges_part_goes_from_its_own_panel_alone() -> None:
    drawing = two_squares()
    node = next(n for n, p in corners(shape_of(drawing, A, VIEW)).items() if p == Point(200, 100))
    made = remove_corner(drawing, A, VIEW, node)
    assert area(made, A) == pytest.approx(5_000)
    assert shape_of(made, B, VIEW) == shape_of(drawing, B, VIEW)


def test_the_last_three_corners_stay() -> None:
    drawing = drawing_of(polygon([(10, 10), (100, 10), (50, 90)]))
    with pytest.raises(JournalError, match="at least three"):
        remove_corner(drawing, A, VIEW, Node(0, 0, Part.TO))
    with pytest.raises(JournalError, match="no such corner"):
        remove_corner(drawing, A, VIEW, Node(0, 7, Part.TO))


def test_an_edge_is_bent_through_a_spot_and_made_straight_again_for_both() -> None:
    bent = curve_edge(two_squares(), A, VIEW, 0, 1, through=Point(220, 150))
    edge = shape_of(bent, A, VIEW).contours[0].edges[1]
    assert isinstance(edge, Curve)
    assert place_near(shape_of(bent, B, VIEW), Point(220, 150)).distance < 0.02
    assert area(bent, A) + area(bent, B) == pytest.approx(20_000, abs=0.05)
    straight = straighten_edge(bent, B, VIEW, 0, 3)
    for panel in (A, B):
        assert points(straight, panel) == points(two_squares(), panel)
        assert area(straight, panel) == pytest.approx(10_000)
    with pytest.raises(JournalError, match="straight already"):
        straighten_edge(two_squares(), A, VIEW, 0, 1)
    with pytest.raises(JournalError, match="no such edge"):
        curve_edge(two_squares(), A, VIEW, 2, 1)


def test_refused_moves_leave_nothing_half_done() -> None:
    drawing = two_squares()
    before = drawing.shapes
    with pytest.raises(JournalError):
        move_corner(drawing, VIEW, Point(200, 100), Point(-500, 100))
    assert drawing.shapes == before


@pytest.mark.slow
def test_a_drag_over_four_hundred_panels_fits_a_frame() -> None:
    base = starter("saloon")
    view = base.views[0]
    some = base.shapes_on(view.id)
    shapes = tuple(
        PanelShape(some[n % len(some)].panel_id, view.id, some[n % len(some)].shape, n)
        for n in range(400)
    )
    drawing = Drawing((view,), base.panels, shapes)
    spot = next(p for _, p in corner_points(some[4].shape))
    start = time.perf_counter()
    grip = grab_corner(drawing, view.id, spot)
    held = time.perf_counter()
    dragged_shapes(drawing, grip, Point(spot.x + 3, spot.y))
    end = time.perf_counter()
    assert held - start < 0.05
    assert end - held < 0.016
