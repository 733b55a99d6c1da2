"""SVG in: names, sides, units, what is left out; and the drawing out and in again."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from journal.domain.drawing import Decor, Drawing, Panel, Side, System, View, Weight
from journal.domain.errors import JournalError
from journal.domain.hits import to_polygon
from journal.domain.ids import PanelId, ViewId
from journal.domain.shapes import Line, Point, Stroke, bounds, rectangle
from journal.domain.shaping.making import add_panel, blank_sheet, with_new_panel
from journal.domain.starters import BODIES, starter
from journal.domain.svg_text import Look, drawing_svg
from journal.intake.svg_drawing import LeftOut, SvgDrawing, read_svg
from tests.domain.quilts import VIEW, quilts, two_squares

HEAD = '<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink"'


def svg(body: str, size: str = 'width="400mm" height="300mm" viewBox="0 0 400 300"') -> bytes:
    return f"{HEAD} {size}>{body}</svg>".encode()


def read(body: str, size: str | None = None, **more: float) -> SvgDrawing:
    data = svg(body) if size is None else svg(body, size)
    return read_svg(data, name="wing.svg", mm_per_unit=more.get("mm_per_unit"))


def labels(result: SvgDrawing) -> list[str]:
    return [p.label for p in result.drawing.panels]


# Out and in


@pytest.mark.parametrize("body", BODIES)
def test_a_starter_drawing_goes_out_and_comes_in_the_same(body: str) -> None:
    drawing = starter(body)
    looks = {PanelId(1): Look("#f7dcc9", "M0 0L8 8"), PanelId(2): Look("#d8e8f4")}
    result = read_svg(drawing_svg(drawing, looks=looks).encode())
    assert result.left_out == ()
    assert result.scaled
    back = result.drawing
    assert (back.views, back.panels, back.shapes) == (
        drawing.views, drawing.panels, drawing.shapes,
    )  # fmt: skip
    assert sorted(map(_written, back.decor)) == sorted(map(_written, drawing.decor))


def _written(line: Decor) -> str:
    """A line of the background as it is stored."""
    from journal.domain.shapes import stroke_to_path_data

    return f"{line.view_id} {line.weight} {stroke_to_path_data(line.stroke)}"


@given(quilts())
@settings(max_examples=25, deadline=None)
def test_one_view_goes_out_and_comes_in_the_same(drawing: Drawing) -> None:
    assert read_svg(drawing_svg(drawing, VIEW).encode()).drawing == drawing


names = st.text(
    st.characters(codec="utf-8", exclude_categories=["C", "Z"]) | st.just(" "), min_size=1
).map(lambda text: " ".join(text.split())[:100]).filter(bool)  # fmt: skip


@given(names, st.sampled_from(Side), st.sampled_from(System), names)
@settings(max_examples=60, deadline=None)
def test_every_name_survives(name: str, side: Side, system: System, view: str) -> None:
    drawing = blank_sheet([(view, 500, 400)])
    drawing = add_panel(drawing, name, side, system, VIEW, rectangle(10, 10, 50.25, 40))
    assert read_svg(drawing_svg(drawing).encode()).drawing == drawing


def test_stack_numbers_and_panels_without_a_shape_survive() -> None:
    drawing, _ = with_new_panel(two_squares(), "Sound deadening", Side.RIGHT, System.CABIN)
    back = read_svg(drawing_svg(drawing).encode()).drawing
    assert back == drawing


def test_a_sheet_that_another_program_scaled_and_added_to_keeps_its_millimetres() -> None:
    text = drawing_svg(two_squares(), VIEW)
    text = text.replace('width="1000mm" height="800mm"', 'width="500px" height="400px"')
    new = '<rect id="patch_right" x="400" y="400" width="100" height="50"/>'
    text = text.replace("</svg>", f'<g transform="translate(0 50)">{new}</g></svg>')
    back = read_svg(text.encode()).drawing
    assert back.views == two_squares().views
    assert back.shapes[:2] == two_squares().shapes
    assert back.panels[-1].label == "Patch, right"
    assert bounds(back.shapes[-1].shape) == (400, 450, 500, 500)


def test_the_document_says_its_size_in_millimetres_and_each_panel_its_name() -> None:
    text = drawing_svg(two_squares(), VIEW)
    assert 'width="1000mm" height="800mm" viewBox="0 0 1000 800"' in text
    assert "<title>A, left</title>" in text
    with pytest.raises(JournalError, match="no view number 7"):
        drawing_svg(two_squares(), ViewId(7))


def test_signs_that_xml_can_not_hold_do_no_harm() -> None:
    panel = Panel(PanelId(1), 'Sill\x07 "&<>', Side.LEFT, System.OUTER)
    view = View(VIEW, "Left & right", 100, 100)
    line = Decor(VIEW, Stroke(Point(1, 2), (Line(Point(3, 4)),)), Weight.DETAIL)
    back = read_svg(drawing_svg(Drawing((view,), (panel,), (), (line,))).encode()).drawing
    assert back.panels[0].name == 'Sill "&<>'
    assert back.views[0].name == "Left & right"
    assert back.decor == (line,)


# Names and sides


def test_names_come_from_the_title_the_label_or_the_id() -> None:
    result = read(
        """<g xmlns:inkscape="http://www.inkscape.org/namespaces/inkscape">
        <rect id="rect12" width="50" height="50"><title>Sill, left</title></rect>
        <rect id="rect13" x="60" inkscape:label="Floor pan" width="50" height="50"/>
        <rect id="front_wing-right" x="120" width="50" height="50"/>
        <rect id="path44" x="180" width="50" height="50"/>
        <rect x="240" width="50" height="50"><title>Sill, left</title></rect></g>
        <g id="Tailgate"><path id="path9" d="M0 100h50v50z"/></g>"""
    )
    assert labels(result) == [
        "Sill, left", "Floor pan", "Front wing, right", "Panel 1", "Sill 2, left", "Tailgate",
    ]  # fmt: skip
    assert result.drawing.panels[0].system is System.OUTER
    assert result.left_out == ()
    assert [s.order for s in result.drawing.shapes] == [0, 1, 2, 3, 4, 5]


def test_a_known_name_brings_its_system() -> None:
    result = read('<rect id="windscreen" width="50" height="50"/>')
    assert result.drawing.panels[0].system is System.GLASS


def test_uses_are_drawn_where_they_are_used_under_their_own_name() -> None:
    result = read(
        """<defs><rect id="lamp" width="20" height="20"/></defs>
        <use id="lamp_left" xlink:href="#lamp" x="50" y="10"/>
        <use xlink:href="#lamp" x="100"/>"""
    )
    assert labels(result) == ["Lamp, left", "Lamp"]
    assert bounds(result.drawing.shapes[0].shape) == (50, 10, 70, 30)


# What is left out


def test_what_is_no_closed_figure_is_listed_with_the_reason() -> None:
    result = read(
        """<rect id="sill" width="50" height="50"/>
        <path id="seam" d="M0 0 L50 50 L80 0"/>
        <line id="ground" x2="90"/><text id="words">hello</text>
        <image id="photo" width="9" height="9" href="data:image/png;base64,AA"/>
        <path id="bow" d="M0 100L50 150V100L0 150z"/>
        <path id="flat" d="M0 100L50 100z"/>
        <rect id="unseen" style="display:none" width="9" height="9"/>
        <path id="part" d="M100 100h50v50z M200 200 l50 50"/>
        <rect id="cut" clip-path="url(#c)" x="200" width="50" height="50"/>
        <clipPath id="c"><rect width="5" height="5"/></clipPath>"""
    )
    assert labels(result) == ["Sill", "Part", "Cut"]
    reasons = {left.what: left.reason for left in result.left_out}
    assert reasons["Seam"] == "it isn't closed"
    assert reasons["Ground"] == "it isn't closed"
    assert reasons["Words"].startswith("it is writing")
    assert reasons["Photo"] == "it is a picture"
    assert reasons["Bow"].startswith("Bow crosses its own outline at 25, 125 mm")
    assert "at least three corners" in reasons["Flat"]
    assert reasons["Unseen"] == "it is hidden or has no size"
    assert reasons["Part"] == "lines of it that aren't closed (1) were left out"
    assert reasons["Cut"] == "its clip or mask isn't used: it is taken whole"
    assert len(reasons) == 9


def test_the_paper_is_no_panel() -> None:
    result = read('<rect width="400" height="300"/><rect id="sill" width="50" height="50"/>')
    assert labels(result) == ["Sill"]
    reason = "it covers the whole sheet and was taken for paper"
    assert result.left_out == (LeftOut("rect", reason),)
    # Alone, or with a name, it is a panel.
    assert labels(read('<rect width="400" height="300"/>')) == ["Panel 1"]


def test_a_picture_without_a_closed_figure_is_an_empty_view() -> None:
    result = read('<path d="M0 0L10 10"/>')
    assert result.drawing.panels == ()
    assert result.drawing.views[0].name == "wing.svg"
    assert len(result.left_out) == 1


# Scale and size


def test_without_a_unit_of_length_the_scale_is_not_known_and_can_be_given() -> None:
    body = '<rect id="sill" x="10" width="40" height="20"/>'
    plain = read(body, 'width="800" height="600" viewBox="0 0 400 300"')
    assert not plain.scaled
    assert bounds(plain.drawing.shapes[0].shape) == (10, 0, 50, 20)
    given_ = read(body, 'width="800" height="600" viewBox="0 0 400 300"', mm_per_unit=2.5)
    assert given_.scaled
    assert bounds(given_.drawing.shapes[0].shape) == (25, 0, 125, 50)
    assert (given_.drawing.views[0].width, given_.drawing.views[0].height) == (1000, 750)
    # What the person says goes before what the file says.
    other = read(body, 'width="4cm" viewBox="0 0 400 300"', mm_per_unit=2.5)
    assert bounds(other.drawing.shapes[0].shape) == (25, 0, 125, 50)


def test_a_picture_without_a_size_gets_paper_round_it() -> None:
    result = read('<rect x="-30" y="500" width="1000" height="200"/>', "")
    view = result.drawing.views[0]
    assert (view.width, view.height) == (1100, 300)
    assert bounds(result.drawing.shapes[0].shape) == (50, 50, 1050, 250)


def test_a_figure_beside_the_page_makes_the_sheet_larger() -> None:
    result = read(
        '<rect id="a" x="-50" width="20" height="20"/><rect id="b" x="390" width="60" height="10"/>'
    )
    assert result.drawing.views[0].width == 500
    assert bounds(result.drawing.shapes[0].shape) == (0, 0, 20, 20)
    assert labels(result) == ["A", "B"]


@pytest.mark.parametrize("scale", [0.0, -1.0, float("nan"), 1e9])
def test_a_scale_that_is_none_is_refused(scale: float) -> None:
    with pytest.raises(JournalError, match=r"can't be used for wing\.svg"):
        read("<rect width='5' height='5'/>", mm_per_unit=scale)


def test_a_size_that_no_sheet_has_asks_for_the_scale() -> None:
    with pytest.raises(JournalError, match="which no sheet of a drawing has: give its scale"):
        read('<rect width="5" height="5"/>', 'width="5" height="5"')
    with pytest.raises(JournalError, match="give its scale"):
        read('<rect width="9e6" height="5e5"/>', 'width="9e6" height="5e6"')


def test_holes_stay_holes() -> None:
    result = read('<path id="ring" fill-rule="evenodd" d="M0 0h100v100h-100z M25 25h50v50h-50z"/>')
    assert to_polygon(result.drawing.shapes[0].shape).area == pytest.approx(7_500)
