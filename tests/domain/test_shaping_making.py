"""Panels and views: made, named, ordered, mirrored, brought in."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from journal.domain.drawing import Drawing, Side, System, View
from journal.domain.errors import JournalError
from journal.domain.ids import PanelId, ViewId
from journal.domain.shapes import Point, Shape, mirror, polygon, rectangle, tidy, translate
from journal.domain.shaping.making import (
    add_panel,
    add_view,
    blank_sheet,
    put_shape,
    remove_panel,
    remove_view,
    rename_panel,
    rename_view,
    reorder,
    resize_view,
    take_shape_off,
)
from journal.domain.shaping.merging import bring_in
from journal.domain.shaping.mirroring import (
    Axis,
    axis_of,
    mirror_panel,
    mirror_view,
    other_side_name,
)
from journal.domain.shaping.placed import shape_of
from journal.domain.starters import starter
from tests.domain.quilts import VIEW, drawing_of, quilts, two_squares

A, B = PanelId(1), PanelId(2)
BOX = rectangle(400, 400, 100, 50)


def added(name: str, side: Side = Side.LEFT, shape: Shape = BOX) -> Drawing:
    return add_panel(two_squares(), name, side, System.FLOOR, VIEW, shape)


def test_a_new_panel_lies_on_top_under_a_number_of_its_own() -> None:
    made = added("  Repair   panel ")
    new = made.panels[-1]
    assert (new.id, new.name, new.side, new.system) == (3, "Repair panel", Side.LEFT, System.FLOOR)
    assert made.shapes_on(VIEW)[-1].panel_id == new.id
    assert remove_panel(made, new.id) == two_squares()


@pytest.mark.parametrize(
    ("shape", "said"),
    [
        (polygon([(10, 10), (90, 90), (90, 10), (10, 90)]), "crosses its own outline at 50, 50 mm"),
        (polygon([(10, 10), (90, 90), (50, 50)]), "without any area"),
        (polygon([(10, 10), (10.2, 10), (10, 10.2)]), "without any area"),
        (polygon([(10, 10), (90, 90), (10, 10)]), "at least three corners"),
        (Shape(()), "has no outline"),
        (rectangle(-20, 10, 50, 50), "20 mm over the left edge of the view Left side"),
        (rectangle(970, 10, 50, 50), "20 mm over the right edge"),
        (rectangle(10, 770, 50, 50), "20 mm over the bottom edge"),
        (rectangle(10, -0.5, 50, 50), "over the top edge"),
        (Shape(BOX.contours * 2), "its outlines cover each other"),
    ],
)
def test_unsound_outlines_are_refused_where_they_are_wrong(shape: Shape, said: str) -> None:
    with pytest.raises(JournalError, match=said) as caught:
        added("Wing", shape=shape)
    assert str(caught.value).startswith("Wing, left ")
    assert str(caught.value).endswith(".")


@pytest.mark.parametrize(
    ("name", "side", "said"),
    [
        ("a", Side.LEFT, "a panel “A, left” already"),
        (" ", Side.LEFT, "needs a name"),
        ("x" * 121, Side.LEFT, "120 characters at most, not 121"),
        ("Si\x00ll", Side.LEFT, "can't be printed"),
    ],
)
def test_names_that_can_not_be_are_refused(name: str, side: Side, said: str) -> None:
    with pytest.raises(JournalError, match=said):
        added(name, side)
    with pytest.raises(JournalError, match=said):
        rename_panel(two_squares(), B, name=name)


def test_a_name_is_free_on_the_other_side() -> None:
    made = added("A", Side.RIGHT)
    assert made.panels[-1].label == "A, right"
    with pytest.raises(JournalError, match="“A, left” already"):
        rename_panel(made, PanelId(3), side=Side.LEFT)


def test_renaming_changes_what_is_given_and_nothing_else() -> None:
    made = rename_panel(two_squares(), A, system=System.GLASS)
    assert made.panel(A).name == "A"
    assert made.panel(A).system is System.GLASS
    # A panel may keep its own name in other letters.
    assert rename_panel(made, A, name="a").panel(A).name == "a"


def test_panels_move_in_the_stack() -> None:
    drawing = drawing_of(*(rectangle(100 * n, 100, 50, 50) for n in range(1, 5)))

    def stack(step: str) -> list[int]:
        return [s.panel_id for s in reorder(drawing, B, VIEW, step).shapes_on(VIEW)]

    assert stack("up") == [1, 3, 2, 4]
    assert stack("down") == [2, 1, 3, 4]
    assert stack("top") == [1, 3, 4, 2]
    assert stack("bottom") == [2, 1, 3, 4]
    assert reorder(drawing, A, VIEW, "down") == drawing
    assert reorder(drawing, PanelId(4), VIEW, "up") == drawing


def test_views_are_added_named_sized_and_taken_away() -> None:
    made = add_view(two_squares(), "Boot", 1200, 900.456)
    boot = made.views[-1]
    assert boot == View(ViewId(2), "Boot", 1200, 900.46)
    with pytest.raises(JournalError, match="a view “Boot” already"):
        add_view(made, "boot", 100, 100)
    assert rename_view(made, boot.id, "Boot floor").view(boot.id).name == "Boot floor"
    assert remove_view(made, boot.id) == two_squares()
    with pytest.raises(JournalError, match=r"Left side has panels on it \(2\)"):
        remove_view(made, VIEW)
    with pytest.raises(JournalError, match="the only view"):
        remove_view(blank_sheet([("Left side", 100, 100)]), VIEW)
    with pytest.raises(JournalError, match="a height of 0 mm"):
        add_view(made, "Cabin", 100, 0)
    with pytest.raises(JournalError, match="a width of nan mm"):
        add_view(made, "Cabin", float("nan"), 100)


def test_a_sheet_is_resized_with_what_is_on_it_kept_at_its_size() -> None:
    made = resize_view(two_squares(), VIEW, 700, 500, dx=-50, dy=20)
    moved = translate(shape_of(two_squares(), A, VIEW), -50, 20)
    assert shape_of(made, A, VIEW) == moved
    with pytest.raises(JournalError, match="50 mm over the right edge"):
        resize_view(two_squares(), VIEW, 250, 500)


def test_a_panel_is_taken_off_one_view_but_not_off_its_last() -> None:
    made = add_view(two_squares(), "Top", 500, 500)
    made = put_shape(made, A, ViewId(2), rectangle(10, 10, 50, 50))
    assert take_shape_off(made, A, ViewId(2)).shapes == two_squares().shapes
    with pytest.raises(JournalError, match="drawn on no other view"):
        take_shape_off(two_squares(), A, VIEW)


# Mirroring


def test_views_of_one_side_know_their_fellow() -> None:
    assert other_side_name("Left side") == "Right side"
    assert other_side_name("Frame, right side") == "Frame, left side"
    assert other_side_name("Top") == ""


@pytest.mark.parametrize(
    ("name", "axis"),
    [
        ("Top", Axis.LEVEL), ("Underside", Axis.LEVEL), ("Cabin", Axis.LEVEL),
        ("Front", Axis.UPRIGHT), ("Rear", Axis.UPRIGHT), ("Engine bay", Axis.UPRIGHT),
    ],
)  # fmt: skip
def test_the_centre_line_runs_as_starter_drawings_have_it(name: str, axis: Axis) -> None:
    assert axis_of(View(VIEW, name, 100, 100)) is axis
    drawing = starter("saloon")
    view = next(v for v in drawing.views if v.name == name)
    # Mirroring the left of a drawing that is symmetrical already changes nothing.
    assert mirror_view(drawing, view.id) == drawing


@given(quilts(), st.integers(1, 6))
@settings(max_examples=40, deadline=None)
def test_a_panel_mirrored_twice_is_itself(drawing: Drawing, number: int) -> None:
    panel = PanelId(number)
    there = mirror_panel(drawing, panel, VIEW)
    fellow = there.panels[-1]
    assert (fellow.name, fellow.side) == (drawing.panel(panel).name, Side.RIGHT)
    right = there.views[-1]
    assert right.name == "Right side"
    expected = tidy(mirror(shape_of(drawing, panel, VIEW), drawing.views[0].width / 2))
    assert shape_of(there, fellow.id, right.id) == expected
    assert mirror_panel(there, fellow.id, right.id) == there


def test_a_mirrored_panel_replaces_its_counterpart() -> None:
    drawing = starter("saloon")
    left, right = drawing.views[:2]
    sill = next(p for p in drawing.panels if p.label == "Sill, left")
    fellow = next(p for p in drawing.panels if p.label == "Sill, right")
    changed = put_shape(drawing, sill.id, left.id, rectangle(1000, 1200, 500, 100))
    made = mirror_panel(changed, sill.id, left.id)
    assert shape_of(made, fellow.id, right.id) == tidy(
        mirror(rectangle(1000, 1200, 500, 100), left.width / 2)
    )
    assert made.panels == drawing.panels
    assert len(made.shapes) == len(drawing.shapes)


def test_a_whole_side_is_mirrored_with_its_stack_and_lines_and_keeps_what_is_alone() -> None:
    drawing = starter("saloon")
    left, right = drawing.views[:2]
    there = mirror_view(drawing, left.id)
    assert there.shapes_on(right.id) == drawing.shapes_on(right.id)
    assert mirror_view(there, left.id) == there
    alone = add_panel(there, "Filler flap", Side.RIGHT, System.OPENINGS, right.id, BOX)
    again = mirror_view(alone, left.id)
    assert again.shapes_on(right.id)[-1].panel_id == alone.panels[-1].id
    back = mirror_view(mirror_view(drawing, left.id), right.id)
    assert back.shapes == there.shapes
    assert len(back.decor) == len(drawing.decor)


def test_mirroring_over_a_centre_line_makes_the_fellow() -> None:
    drawing = blank_sheet([("Front", 1000, 800)])
    drawing = add_panel(drawing, "Lamp", Side.LEFT, System.ELECTRICAL, VIEW, BOX)
    made = mirror_view(drawing, VIEW)
    fellow = made.panels[-1]
    assert fellow.label == "Lamp, right"
    assert shape_of(made, fellow.id, VIEW) == tidy(mirror(BOX, 500))
    level = mirror_panel(drawing, A, VIEW, Axis.LEVEL)
    assert Point(400, 400) in {s.contours[0].start for s in [shape_of(level, fellow.id, VIEW)]}


def test_what_can_not_be_mirrored_is_refused() -> None:
    drawing = blank_sheet([("Top", 1000, 800), ("Left side", 1000, 800)])
    drawing = add_panel(drawing, "Roof", Side.CENTRE, System.OUTER, VIEW, BOX)
    with pytest.raises(JournalError, match="Roof is on the centre line of Top"):
        mirror_panel(drawing, A, VIEW)
    with pytest.raises(JournalError, match="Top has no panels of the left side"):
        mirror_view(drawing, VIEW)
    with pytest.raises(JournalError, match="Left side has no panels to mirror"):
        mirror_view(drawing, ViewId(2))


# Bringing in


def test_brought_views_stand_beside_ones_own() -> None:
    made = bring_in(two_squares(), two_squares())
    assert [v.name for v in made.views] == ["Left side", "Left side 2"]
    # The same name and side is the same panel.
    assert made.panels == two_squares().panels
    assert shape_of(made, A, made.views[1].id) == shape_of(made, A, VIEW)


def test_brought_panels_are_laid_on_a_view() -> None:
    brought = rename_panel(two_squares(), A, name="New piece")
    made = bring_in(two_squares(), brought, VIEW)
    assert [p.name for p in made.panels] == ["A", "B", "New piece"]
    assert [s.panel_id for s in made.shapes_on(VIEW)] == [1, 3, 2]
    with pytest.raises(JournalError, match="nothing to bring in"):
        bring_in(two_squares(), blank_sheet([("Top", 100, 100)]))
    with pytest.raises(JournalError, match=r"more than one view \(8\)"):
        bring_in(two_squares(), starter("saloon"), VIEW)
    small = blank_sheet([("Left side", 150, 150)])
    with pytest.raises(JournalError, match="A, left reaches 50 mm over"):
        bring_in(small, two_squares(), VIEW)
