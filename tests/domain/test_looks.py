"""Looks on paper: told apart without colour, and what stands round a drawing."""

from xml.etree import ElementTree

from journal.domain.areas import DEFAULT_STAGES
from journal.domain.drawing import Drawing, Panel, PanelShape, Side, System, View
from journal.domain.ids import PanelId, ViewId
from journal.domain.looks import LEVEL_LOOKS, STAGE_LOOKS, level_looks, stage_look, stage_looks
from journal.domain.shapes import rectangle
from journal.domain.svg_text import drawing_svg

_SVG = "{http://www.w3.org/2000/svg}"


def drawing(*sizes: tuple[float, float]) -> Drawing:
    views = tuple(View(ViewId(n), f"View {n}", *size) for n, size in enumerate(sizes, start=1))
    panel = Panel(PanelId(1), "Sill", Side.LEFT, System.STRUCTURE)
    shapes = tuple(PanelShape(panel.id, v.id, rectangle(10, 10, 50, 20), 0) for v in views)
    return Drawing(views, (panel,), shapes)


def test_no_two_looks_of_a_kind_share_a_pattern() -> None:
    for looks in (STAGE_LOOKS, LEVEL_LOOKS):
        assert len({look.pattern for look in looks}) == len(looks)


def test_every_stage_of_the_usual_list_looks_its_own_way() -> None:
    looks, legend = stage_looks({PanelId(1): "welded"}, DEFAULT_STAGES)
    assert len({look for look, _ in legend}) == len(DEFAULT_STAGES)
    assert [words for _, words in legend] == list(DEFAULT_STAGES)
    assert looks[PanelId(1)] == stage_look("welded", DEFAULT_STAGES)
    assert stage_look("last", ["first", "last"]) == STAGE_LOOKS[-1]
    assert stage_look("unheard of", DEFAULT_STAGES) == STAGE_LOOKS[0]
    assert level_looks({PanelId(3): 5}) == {PanelId(3): LEVEL_LOOKS[5]}


def test_heading_and_legend_stand_on_the_paper_and_the_view_keeps_its_size() -> None:
    _, legend = stage_looks({}, DEFAULT_STAGES)
    one = drawing((4000, 1500))
    svg = drawing_svg(one, ViewId(1), heading=("Rook", "Left"), legend=legend)
    root = ElementTree.fromstring(svg)
    wide, high = (float(root.attrib[side].removesuffix("mm")) for side in ("width", "height"))
    assert wide > 4000
    for box in root.iter(f"{_SVG}rect"):
        if box.get("data-look") == "legend":
            assert 0 < float(box.attrib["y"]) < high - float(box.attrib["height"])
            assert float(box.attrib["x"]) + float(box.attrib["width"]) < wide
    (frame,) = (box for box in root.iter(f"{_SVG}rect") if box.get("data-look") == "frame")
    assert (frame.get("width"), frame.get("height")) == ("4000", "1500")


def test_views_of_a_sheet_never_lie_on_each_other() -> None:
    sheet = drawing((4000, 1500), (4000, 1500), (4000, 1800), (1900, 1500), (900, 2600), (300, 300))
    root = ElementTree.fromstring(drawing_svg(sheet))
    boxes = []
    for group, view in zip(root.iter(f"{_SVG}g"), sheet.views, strict=True):
        x, y = map(float, group.attrib["transform"][10:-1].split())
        boxes.append((x, y, x + view.width, y + view.height))
    whole = [float(root.attrib[side].removesuffix("mm")) for side in ("width", "height")]
    for n, (left, top, right, low) in enumerate(boxes):
        assert right < whole[0]
        assert low < whole[1]
        for other in boxes[:n]:
            apart = left >= other[2] or other[0] >= right or top >= other[3] or other[1] >= low
            assert apart
