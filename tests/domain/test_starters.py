"""Starter drawings: whole, named, mirrored, to scale."""

import time
from functools import cache

import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from journal.domain.drawing import Drawing, Side, View, Weight
from journal.domain.errors import JournalError
from journal.domain.hits import PanelMap, to_polygon
from journal.domain.ids import PanelId
from journal.domain.shapes import bounds, flatten, from_path_data, mirror, tidy, to_path_data
from journal.domain.starters import BODIES, starter
from journal.domain.starters.bodies import CARS
from journal.domain.starters.parts import SYSTEMS

VIEWS = {
    **dict.fromkeys(
        CARS,
        ("Left side", "Right side", "Top", "Underside", "Front", "Rear", "Engine bay", "Cabin"),
    ),
    "motorcycle": (
        "Left side",
        "Right side",
        "Top",
        "Front",
        "Rear",
        "Frame, left side",
        "Frame, right side",
    ),
    "tractor": ("Left side", "Right side", "Top", "Front", "Rear"),
    "blank": ("Left side", "Right side", "Top", "Front", "Rear"),
}

#: Small, large, short, long: wheelbase and length in millimetres, 0 for typical.
SIZES = [(1000, 1300), (2036, 3054), (2000, 4800), (6000, 7300)]

#: The same for what is no car, whose sizes have other bounds.
OTHER_SIZES = {
    "motorcycle": [(800, 1040), (1400, 2500), (2500, 3300), (1450, 2000)],
    "tractor": [(900, 1220), (1950, 4400), (3500, 4800), (2300, 3700)],
}

every_body = pytest.mark.parametrize("body", BODIES)
drawn_bodies = pytest.mark.parametrize("body", [b for b in BODIES if b != "blank"])
cars = pytest.mark.parametrize("body", CARS)


@cache
def drawn(body: str, wheelbase: int = 0, length: int = 0) -> Drawing:
    return starter(body, wheelbase, length)


def view_of(drawing: Drawing, name: str) -> View:
    return next(v for v in drawing.views if v.name == name)


def labels(drawing: Drawing) -> dict[PanelId, str]:
    return {p.id: p.label for p in drawing.panels}


def faults(drawing: Drawing) -> list[str]:
    """Outlines that cross themselves, shapes without an area, shapes beyond the paper."""
    found = []
    names = labels(drawing)
    for placed in drawing.shapes:
        view = drawing.view(placed.view_id)
        what = f"{names[placed.panel_id]} on {view.name}"
        rings = [shapely.Polygon(ring) for ring in flatten(placed.shape)]
        if not all(ring.is_valid for ring in rings):
            found.append(f"{what} crosses itself")
        area = to_polygon(placed.shape)
        if not area.is_valid or area.area < 25:
            found.append(f"{what} has an area of {area.area}")
        box = bounds(placed.shape)
        if min(box.left, box.top) < 0 or box.right > view.width or box.bottom > view.height:
            found.append(f"{what} leaves the paper: {box}")
    return found


def hidden(drawing: Drawing) -> list[str]:
    """Panels that their own centre doesn't hit, of those that can be seen at all."""
    panels = PanelMap(drawing)
    names = labels(drawing)
    return [
        f"{names[panel]} on {view.name}"
        for view in drawing.views
        for panel in panels.panels_on(view.id)
        if panels.panel_at(view.id, *panels.centre(view.id, panel)) != panel
    ]


@drawn_bodies
def test_every_panel_is_a_sound_shape_on_its_view(body: str) -> None:
    assert faults(drawn(body)) == []


@drawn_bodies
def test_every_panel_is_hit_by_its_own_centre(body: str) -> None:
    assert hidden(drawn(body)) == []


@cars
@pytest.mark.parametrize(("wheelbase", "length"), SIZES)
def test_unusual_sizes_keep_every_shape_sound(body: str, wheelbase: int, length: int) -> None:
    assert faults(drawn(body, wheelbase, length)) == []


@every_body
def test_names_with_sides_are_unique_and_known(body: str) -> None:
    panels = drawn(body).panels
    assert len({(p.name, p.side) for p in panels}) == len(panels)
    assert all(SYSTEMS[p.name] == p.system for p in panels)


@every_body
def test_no_name_carries_its_side(body: str) -> None:
    for panel in drawn(body).panels:
        assert not {"left", "right"} & set(panel.name.lower().replace(",", " ").split())


@every_body
def test_a_panel_of_one_side_has_a_fellow_on_the_other(body: str) -> None:
    sides: dict[str, set[Side]] = {}
    for panel in drawn(body).panels:
        sides.setdefault(panel.name, set()).add(panel.side)
    assert all(s in ({Side.CENTRE}, {Side.LEFT, Side.RIGHT}) for s in sides.values()), sides


@every_body
def test_numbers_count_from_one(body: str) -> None:
    drawing = drawn(body)
    assert [v.id for v in drawing.views] == list(range(1, len(VIEWS[body]) + 1))
    assert tuple(v.name for v in drawing.views) == VIEWS[body]
    assert [p.id for p in drawing.panels] == list(range(1, len(drawing.panels) + 1))
    assert {s.panel_id for s in drawing.shapes} == {p.id for p in drawing.panels}


@every_body
def test_a_panel_has_one_shape_a_view_and_orders_are_distinct(body: str) -> None:
    shapes = drawn(body).shapes
    assert len({(s.panel_id, s.view_id) for s in shapes}) == len(shapes)
    assert len({(s.view_id, s.order) for s in shapes}) == len(shapes)


def test_a_saloon_has_sixty_panels_and_more() -> None:
    assert len(drawn("saloon").panels) >= 60


def test_panels_are_seen_on_the_views_an_owner_would_look_at() -> None:
    drawing = drawn("saloon")
    by_label = {p.label: p.id for p in drawing.panels}

    def seen(label: str) -> set[str]:
        return {v.name for v in drawing.views_of(by_label[label])}

    assert seen("Sill, left") == {"Left side", "Underside"}
    assert seen("Front wing, right") >= {"Right side", "Top", "Front", "Underside"}
    assert seen("Front door, left") == {"Left side", "Top", "Cabin"}
    assert seen("Roof") == {"Left side", "Right side", "Top", "Front", "Rear"}
    assert "Left side" not in seen("Front wing, right")


@drawn_bodies
def test_the_right_side_is_the_mirror_of_the_left(body: str) -> None:
    drawing = drawn(body)
    left, right = view_of(drawing, "Left side"), view_of(drawing, "Right side")
    panels = {p.id: p for p in drawing.panels}
    other = {Side.LEFT: Side.RIGHT, Side.CENTRE: Side.CENTRE}
    one, two = drawing.shapes_on(left.id), drawing.shapes_on(right.id)
    assert len(one) == len(two)
    for near, far in zip(one, two, strict=True):
        assert panels[far.panel_id].name == panels[near.panel_id].name
        assert panels[far.panel_id].side == other[panels[near.panel_id].side]
        assert tidy(mirror(near.shape, left.width / 2)) == far.shape


@drawn_bodies
@pytest.mark.parametrize(("name", "level"), [("Top", True), ("Front", False), ("Rear", False)])
def test_left_and_right_mirror_each_other(body: str, name: str, level: bool) -> None:
    drawing = drawn(body)
    view = view_of(drawing, name)
    panels = {p.id: p for p in drawing.panels}
    middle = view.height / 2 if level else view.width / 2
    areas = {
        (panels[s.panel_id].name, panels[s.panel_id].side): to_polygon(s.shape)
        for s in drawing.shapes_on(view.id)
    }
    sides = [key for key in areas if key[1] == Side.LEFT]
    assert sides
    for name_, side in sides:
        one, two = areas[name_, side], areas[name_, Side.RIGHT]
        origin = (0, middle) if level else (middle, 0)
        scale = (1, -1) if level else (-1, 1)
        turned = shapely.affinity.scale(two, *scale, origin=origin)
        assert one.symmetric_difference(turned).area < 1 + 1e-3 * one.area


def wheel_centres(drawing: Drawing, view: str) -> tuple[float, float]:
    view_id = view_of(drawing, view).id
    names = {p.id: p.name for p in drawing.panels}
    boxes = {names[s.panel_id]: bounds(s.shape) for s in drawing.shapes_on(view_id)}
    front, rear = boxes["Front wheel"], boxes["Rear wheel"]
    return (front.left + front.right) / 2, (rear.left + rear.right) / 2


@given(st.sampled_from(sorted(CARS)), st.integers(1200, 4500), st.floats(1.35, 2.0))
@settings(max_examples=8, deadline=None)
def test_wheels_stand_the_wheelbase_apart_and_bumpers_the_length(
    body: str, wheelbase: int, ratio: float
) -> None:
    length = round(wheelbase * ratio)
    drawing = starter(body, wheelbase, length)
    for name in ("Left side", "Right side", "Underside"):
        front, rear = wheel_centres(drawing, name)
        assert abs(rear - front) == pytest.approx(wheelbase, abs=0.05)
    names = {p.id: p.name for p in drawing.panels}
    for name in ("Left side", "Top", "Underside"):
        shapes = drawing.shapes_on(view_of(drawing, name).id)
        boxes = [bounds(s.shape) for s in shapes if "bumper" in names[s.panel_id]]
        span = max(b.right for b in boxes) - min(b.left for b in boxes)
        assert span == pytest.approx(length, abs=0.05)


@drawn_bodies
def test_views_fit_the_car_with_a_margin(body: str) -> None:
    drawing = drawn(body)
    for view in drawing.views:
        boxes = [bounds(s.shape) for s in drawing.shapes_on(view.id)]
        assert 50 < min(b.left for b in boxes) < 250
        assert 50 < view.width - max(b.right for b in boxes) < 250
        assert 50 < min(b.top for b in boxes) < 250
        assert 50 < view.height - max(b.bottom for b in boxes) < 250


@cars
@pytest.mark.parametrize("name", ["Left side", "Top", "Underside", "Front", "Rear"])
def test_the_body_has_no_holes(body: str, name: str) -> None:
    drawing = drawn(body)
    shapes = drawing.shapes_on(view_of(drawing, name).id)
    whole = shapely.union_all([to_polygon(s.shape) for s in shapes])
    parts = getattr(whole, "geoms", [whole])
    holes = [shapely.Polygon(ring) for part in parts for ring in part.interiors]
    # Curves that neighbours share are flattened apart by hairs; a hole is wider than that.
    assert [hole.centroid.wkt for hole in holes if not hole.buffer(-0.6).is_empty] == []


@cars
def test_panels_of_the_body_side_hardly_overlap(body: str) -> None:
    drawing = drawn(body)
    names = {p.id: p.name for p in drawing.panels}
    outer = {
        "Front wing", "Front door", "Rear door", "Rear wing", "Side panel", "Bed side", "Sill",
        "Roof", "Bonnet", "Boot lid", "A-post", "C-post", "D-post", "Front valance", "Rear valance",
    }  # fmt: skip
    shapes = drawing.shapes_on(view_of(drawing, "Left side").id)
    areas = {names[s.panel_id]: to_polygon(s.shape) for s in shapes if names[s.panel_id] in outer}
    found = sorted(areas)
    for i, one in enumerate(found):
        for two in found[i + 1 :]:
            if body == "estate" and {one, two} == {"C-post", "Rear wing"}:
                continue  # the post lies on the wing's window frame
            assert areas[one].intersection(areas[two]).area < 150, (one, two)


@every_body
def test_shapes_come_back_from_their_written_form_unchanged(body: str) -> None:
    for placed in drawn(body).shapes:
        assert from_path_data(to_path_data(placed.shape)) == placed.shape


@drawn_bodies
def test_lines_of_the_background_stay_on_their_paper(body: str) -> None:
    drawing = drawn(body)
    lines = starter(body).decor
    assert {line.view_id for line in lines} == {v.id for v in drawing.views}
    assert {line.weight for line in lines} == set(Weight)
    for line in lines:
        view = drawing.view(line.view_id)
        for spot in (line.stroke.start, line.stroke.end):
            assert 0 <= spot.x <= view.width
            assert 0 <= spot.y <= view.height


def test_bodies_are_the_cars_and_the_others_that_can_be_picked() -> None:
    assert set(CARS) == {
        "saloon", "saloon two-door", "estate", "coupe", "roadster", "pickup", "van",
    }  # fmt: skip
    assert set(BODIES) == {*CARS, "motorcycle", "tractor", "blank"}
    assert len(set(BODIES.values())) == 10


def test_bodies_differ_where_they_should() -> None:
    names = {body: {p.name for p in drawn(body).panels} for body in CARS}
    assert "Rear door" in names["saloon"]
    assert "Rear door" not in names["saloon two-door"]
    assert "Tailgate" in names["estate"]
    assert "Boot lid" not in names["estate"]
    assert {"Hood", "Boot lid"} <= names["roadster"]
    assert not {"Roof", "Headlining"} & names["roadster"]
    assert {"Tailboard", "Bed side", "Load floor"} <= names["pickup"]
    assert {"Back door", "Side panel"} <= names["van"]
    assert "Rear seat" not in names["van"]


@pytest.mark.parametrize(
    ("body", "wheelbase", "length", "named"),
    [
        ("saloon", 999, 0, "wheelbase of 999 mm"),
        ("saloon", 6001, 0, "wheelbase of 6001 mm"),
        ("saloon", -2500, 0, "wheelbase of -2500 mm"),
        ("saloon", 2500, 2700, "at least 500 mm beyond its axles"),
        ("saloon", 1000, 1299, "length of 1299 mm"),
        ("saloon", 0, 12, "length of 12 mm"),
        ("saloon", 0, 9001, "length of 9001 mm"),
        ("saloon", 1000, 3000, "only 1000 mm"),
        ("motorcycle", 700, 0, "700 mm is not that of a motorcycle: 800 to 2500 mm"),
        ("motorcycle", 1400, 1500, "motorcycle 1500 mm long"),
        ("tractor", 0, 9000, "tractor 9000 mm long"),
        ("tractor", 1950, 6000, "can't have a wheelbase of 1950 mm"),
        ("blank", 0, 20000, "length of 20000 mm"),
        ("hovercraft", 0, 0, "hovercraft"),
        ("", 0, 0, "known: saloon"),
    ],
)
def test_implausible_cars_are_refused_in_a_sentence(
    body: str, wheelbase: int, length: int, named: str
) -> None:
    with pytest.raises(JournalError, match=named) as caught:
        starter(body, wheelbase, length)
    assert str(caught.value).endswith(".")


@pytest.mark.parametrize(
    ("body", "wheelbase", "length"), [(b, *size) for b in OTHER_SIZES for size in OTHER_SIZES[b]]
)
def test_unusual_motorcycles_and_tractors_are_sound_too(
    body: str, wheelbase: int, length: int
) -> None:
    drawing = drawn(body, wheelbase, length)
    assert faults(drawing) == []
    front, rear = wheel_centres(drawing, "Left side")
    assert rear - front == pytest.approx(wheelbase, abs=0.05)
    names = {p.id: p.name for p in drawing.panels}
    boxes = {
        names[s.panel_id]: bounds(s.shape)
        for s in drawing.shapes_on(view_of(drawing, "Left side").id)
    }
    # Both wheels stand on the same ground, however the machine is stretched.
    assert boxes["Front tyre"].bottom == pytest.approx(boxes["Rear tyre"].bottom, abs=0.02)
    span = max(b.right for b in boxes.values()) - min(b.left for b in boxes.values())
    assert 0.9 * length <= span <= length + 0.05


def test_a_motorcycle_and_a_tractor_have_their_own_parts() -> None:
    motorcycle = {p.name for p in drawn("motorcycle").panels}
    assert motorcycle >= {
        "Fuel tank", "Seat", "Swinging arm", "Fork tube", "Fork slider", "Down tube", "Crankcase",
        "Cylinder head", "Exhaust pipe", "Silencer", "Side panel", "Front mudguard",
    }  # fmt: skip
    tractor = {p.name for p in drawn("tractor").panels}
    assert tractor >= {
        "Bonnet", "Grille", "Fuel tank", "Rear mudguard", "Engine block", "Gearbox housing",
        "Rear axle housing", "Drawbar", "Top link", "Lower link", "Seat", "Steering wheel",
    }  # fmt: skip
    assert not {"Windscreen", "Sill", "Roof"} & (motorcycle | tractor)


def test_a_blank_sheet_has_room_for_the_length_and_nothing_on_it() -> None:
    drawing = drawn("blank", 0, 3000)
    assert drawing.panels == drawing.shapes == drawing.decor == ()
    assert view_of(drawing, "Left side").width == view_of(drawing, "Top").width == 3320
    assert drawn("blank").views[0].width > 4000


def test_one_dimension_alone_finds_the_other() -> None:
    by_wheelbase = starter("saloon", 2540, 0)
    by_length = starter("saloon", 0, 4300)
    assert by_wheelbase == by_length == drawn("saloon")


@pytest.mark.slow
def test_a_hit_takes_less_than_a_millisecond() -> None:
    drawing = drawn("saloon")
    panels = PanelMap(drawing)
    view = view_of(drawing, "Underside")
    panels.panel_at(view.id, 0, 0)
    spots = [(x, y) for x in range(0, int(view.width), 60) for y in range(0, int(view.height), 60)]
    start = time.perf_counter()
    for x, y in spots:
        panels.panel_at(view.id, x, y)
    assert (time.perf_counter() - start) / len(spots) < 1e-3
