"""The panel under a spot, and the way from panel to panel by arrow keys."""

import math

import pytest

from journal.domain.drawing import Drawing, Panel, PanelShape, Side, System, View
from journal.domain.errors import JournalError
from journal.domain.hits import Direction, PanelMap, to_polygon
from journal.domain.ids import PanelId, ViewId
from journal.domain.shapes import Shape, circle, polygon, rectangle, with_hole

VIEW = ViewId(1)
OTHER_VIEW = ViewId(2)


def drawing(*shapes: Shape) -> Drawing:
    """A drawing of one panel a shape, numbered from 1, later ones on top."""
    panels = tuple(
        Panel(PanelId(n), f"Panel {n}", Side.CENTRE, System.OUTER)
        for n in range(1, len(shapes) + 1)
    )
    placed = tuple(PanelShape(PanelId(n), VIEW, s, n) for n, s in enumerate(shapes, 1))
    views = View(VIEW, "Top", 1000, 1000), View(OTHER_VIEW, "Front", 1000, 1000)
    return Drawing(views, panels, placed)


def test_the_topmost_panel_is_hit() -> None:
    panels = PanelMap(drawing(rectangle(0, 0, 100, 100), rectangle(40, 40, 20, 20)))
    assert panels.panel_at(VIEW, 50, 50) == 2
    assert panels.panel_at(VIEW, 10, 10) == 1


def test_order_decides_and_not_the_place_in_the_list() -> None:
    low = drawing(rectangle(0, 0, 10, 10), rectangle(0, 0, 10, 10))
    turned = Drawing(low.views, low.panels, tuple(reversed(low.shapes)))
    assert PanelMap(turned).panel_at(VIEW, 5, 5) == 2


def test_empty_paper_and_other_views_hit_nothing() -> None:
    panels = PanelMap(drawing(rectangle(0, 0, 100, 100)))
    assert panels.panel_at(VIEW, 150, 50) is None
    assert panels.panel_at(OTHER_VIEW, 50, 50) is None


def test_a_hole_lets_through_to_what_lies_below() -> None:
    ring = with_hole(circle(50, 50, 40), circle(50, 50, 20))
    assert PanelMap(drawing(ring)).panel_at(VIEW, 50, 50) is None
    panels = PanelMap(drawing(rectangle(0, 0, 100, 100), ring))
    assert panels.panel_at(VIEW, 50, 50) == 1
    assert panels.panel_at(VIEW, 50, 20) == 2


def test_an_outline_inside_a_hole_is_filled_again() -> None:
    area = to_polygon(with_hole(circle(0, 0, 30), circle(0, 0, 20), circle(0, 0, 10)), 0.001)
    assert area.area == pytest.approx(math.pi * (900 - 400 + 100), rel=1e-3)


def test_an_outline_that_crosses_itself_still_has_an_area() -> None:
    bow = polygon([(0, 0), (10, 10), (10, 0), (0, 10)])
    assert to_polygon(bow).area == pytest.approx(50)
    assert PanelMap(drawing(bow)).panel_at(VIEW, 1, 5) == 1


def test_near_panels_come_nearest_first() -> None:
    panels = PanelMap(
        drawing(rectangle(0, 0, 10, 10), rectangle(30, 0, 10, 10), rectangle(15, 0, 5, 10))
    )
    assert panels.panels_near(VIEW, 12, 5, 100) == (1, 3, 2)
    assert panels.panels_near(VIEW, 12, 5, 2.5) == (1,)
    assert panels.panels_near(VIEW, 500, 500, 10) == ()


def test_of_panels_under_the_spot_the_topmost_is_nearest() -> None:
    panels = PanelMap(drawing(rectangle(0, 0, 100, 100), rectangle(40, 40, 20, 20)))
    assert panels.panels_near(VIEW, 50, 50, 5) == (2, 1)


def test_the_centre_lies_inside_even_a_crescent() -> None:
    moon = with_hole(circle(100, 100, 100), circle(130, 100, 70))
    panels = PanelMap(drawing(moon))
    assert panels.panel_at(VIEW, *panels.centre(VIEW, PanelId(1))) == 1


def test_the_centre_keeps_clear_of_what_lies_on_top() -> None:
    panels = PanelMap(drawing(rectangle(0, 0, 100, 100), rectangle(10, 10, 80, 60)))
    x, y = panels.centre(VIEW, PanelId(1))
    assert panels.panel_at(VIEW, x, y) == 1
    assert y > 70


def test_a_wholly_hidden_panel_has_the_centre_of_its_shape() -> None:
    panels = PanelMap(drawing(rectangle(40, 40, 20, 20), rectangle(0, 0, 100, 100)))
    assert panels.centre(VIEW, PanelId(1)) == pytest.approx((50, 50), abs=2)


def test_a_panel_with_two_shapes_on_a_view_has_one_centre_on_the_larger() -> None:
    one = drawing(rectangle(0, 0, 10, 10), rectangle(200, 0, 100, 100))
    both = tuple(PanelShape(PanelId(1), VIEW, s.shape, s.order) for s in one.shapes)
    panels = PanelMap(Drawing(one.views, one.panels[:1], both))
    assert panels.centre(VIEW, PanelId(1)) == pytest.approx((250, 50), abs=3)
    assert panels.panels_on(VIEW) == (1,)
    assert panels.panels_near(VIEW, 0, 0, 1000) == (1,)


def test_arrows_lead_to_the_neighbour_on_that_side() -> None:
    grid = [rectangle(100 * column, 100 * row, 90, 90) for row in range(3) for column in range(3)]
    panels = PanelMap(drawing(*grid))
    middle = PanelId(5)
    assert panels.next_panel(VIEW, middle, Direction.UP) == 2
    assert panels.next_panel(VIEW, middle, Direction.DOWN) == 8
    assert panels.next_panel(VIEW, middle, Direction.LEFT) == 4
    assert panels.next_panel(VIEW, middle, "right") == 6
    assert panels.next_panel(VIEW, PanelId(1), Direction.UP) is None
    assert panels.next_panel(VIEW, PanelId(1), Direction.LEFT) is None


def test_a_panel_that_is_not_on_the_view_has_no_centre_there() -> None:
    panels = PanelMap(drawing(rectangle(0, 0, 10, 10)))
    with pytest.raises(JournalError, match=r"Panel 1 isn't drawn on the view Front\."):
        panels.centre(OTHER_VIEW, PanelId(1))


def test_unknown_views_and_panels_are_named() -> None:
    car = drawing(rectangle(0, 0, 10, 10))
    with pytest.raises(JournalError, match="no view number 9"):
        car.view(ViewId(9))
    with pytest.raises(JournalError, match="no panel number 7"):
        car.panel(PanelId(7))
    with pytest.raises(JournalError, match="no panel number 7"):
        PanelMap(car).centre(VIEW, PanelId(7))


def test_the_views_of_a_panel() -> None:
    car = drawing(rectangle(0, 0, 10, 10))
    assert [v.name for v in car.views_of(PanelId(1))] == ["Top"]
