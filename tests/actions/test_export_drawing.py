"""The drawing taken out: what is in the file, what comes back of it, what is refused."""

from dataclasses import replace
from pathlib import Path

import pypdfium2
import pytest
from PIL import Image

from journal.actions import areas, drawings, hours, pins, shaping
from journal.actions.export_drawing import export_drawing
from journal.actions.journals import new_journal
from journal.actions.svg import bring_in_svg
from journal.domain.car import Car
from journal.domain.drawing import Drawing, Side, System
from journal.domain.errors import JournalError
from journal.domain.ids import WorkId
from journal.domain.receipts import Share
from journal.domain.shapes import ellipse, to_path_data
from journal.domain.shaping.making import add_panel
from journal.domain.tints import TintBy
from journal.domain.when import parse
from journal.domain.work import Work


@pytest.fixture
def worked_on(session):
    sill = drawings.find_panel(session, "Sill, left").id
    made = areas.add_area(session, "Sill", [sill], "Rust", parse("2015-03-02"))
    areas.move_to_stage(session, made.made, "welded", parse("2016-07-09"))
    hours.record_work(
        session,
        Work(WorkId(0), parse("2016-07-09"), 300, "Ines", "", (Share(made.made, 1),)),
    )
    return session


def content(drawing: Drawing):
    """Everything of a drawing but its numbers."""
    views = {view.id: view.name for view in drawing.views}
    panels = {panel.id: (panel.name, panel.side, panel.system) for panel in drawing.panels}
    shapes = [
        (views[view.id], panels[shape.panel_id], to_path_data(shape.shape))
        for view in drawing.views
        for shape in drawing.shapes_on(view.id)
    ]
    sizes = [(view.name, view.width, view.height) for view in drawing.views]
    return sizes, sorted(panels.values()), shapes


def brought_back(file: Path, folder: Path) -> Drawing:
    """The drawing of a journal that had nothing but a sheet of another name."""
    with new_journal(folder, Car("Another", body="blank")) as other:
        only = replace(drawings.views(other)[0], name="Mine")
        shaping.reshape(other, "Clear", lambda _drawing: Drawing((only,), (), ()))
        report = bring_in_svg(other, file)
        assert report.not_used == ()
        found = drawings.drawing(other)
    return replace(found, views=found.views[1:])


@pytest.mark.parametrize("plain", [True, False])
def test_out_and_in_again_loses_nothing(worked_on, tmp_path, plain):
    view = drawings.views(worked_on)[0]
    shaping.reshape(
        worked_on,
        "Draw",
        lambda d: add_panel(
            d, "Hatch & lid <2>", Side.RIGHT, System.ENGINE, view.id, ellipse(900, 700, 77.25, 40)
        ),
    )
    file = export_drawing(worked_on, tmp_path / "all.svg", plain=plain)
    assert content(brought_back(file, tmp_path / "Other")) == content(drawings.drawing(worked_on))


def test_as_it_stood_shows_stages_with_pattern_heading_and_legend(worked_on, tmp_path):
    on = parse("2015")
    svg = export_drawing(worked_on, tmp_path / "then.svg", on=on).read_text("utf-8")
    assert "As it stood at the end of 2015" in svg
    assert "Halden Rook" in svg
    for stage in ("found", "cut back", "welded", "finished"):
        assert f">{stage}</text>" in svg
    found_look = 'data-look="pattern" fill="url(#pattern--c24e00'
    assert found_look in svg
    now = export_drawing(worked_on, tmp_path / "now.svg").read_text("utf-8")
    assert found_look not in now
    assert "As it stands on" in now
    plain = export_drawing(worked_on, tmp_path / "plain.svg", plain=True).read_text("utf-8")
    assert 'data-look="pattern"' not in plain
    assert "legend" not in plain


def test_a_plain_view_is_of_true_size(worked_on, tmp_path):
    view = drawings.views(worked_on)[1]
    svg = export_drawing(worked_on, tmp_path / "v.svg", view.id, plain=True).read_text("utf-8")
    assert f'width="{view.width:g}mm" height="{view.height:g}mm"' in svg


def test_a_picture_and_a_page_hold_what_was_asked(worked_on, tmp_path):
    view = drawings.views(worked_on)[0]
    png = export_drawing(worked_on, tmp_path / "left.PNG", view.id)
    with Image.open(png) as image:
        assert max(image.size) == 3000
        colours = {colour for _, colour in image.convert("RGB").getcolors(1 << 20)}
    assert (0xF2, 0xE7, 0xC4) in colours
    pdf = pypdfium2.PdfDocument(export_drawing(worked_on, tmp_path / "all.pdf"))
    assert len(pdf) == 1
    words = pdf[0].get_textpage().get_text_range()
    assert "Halden Rook" in words
    assert "welded" in words
    pdf.close()


@pytest.mark.parametrize("by", list(TintBy))
def test_every_tint_can_be_taken_out_with_its_legend(worked_on, tmp_path, by):
    svg = export_drawing(worked_on, tmp_path / "tint.svg", by=by).read_text("utf-8")
    assert by.value[1:] in svg
    assert 'data-look="legend"' in svg


def test_hours_on_a_date_are_those_worked_by_then(worked_on, tmp_path):
    before = export_drawing(worked_on, tmp_path / "a.svg", on=parse("2015"), by=TintBy.HOURS)
    after = export_drawing(worked_on, tmp_path / "b.svg", on=parse("2016"), by=TintBy.HOURS)
    assert 'data-look="pattern"' not in before.read_text("utf-8")
    assert 'data-look="pattern"' in after.read_text("utf-8")


def test_what_cannot_be_written_is_refused_and_leaves_nothing(worked_on, tmp_path):
    for out, says in (
        (tmp_path / "drawing.dxf", "has to end in"),
        (tmp_path / "nowhere" / "a.svg", "can't be written"),
        (worked_on.folder / "originals" / "a.svg", "among the originals"),
    ):
        with pytest.raises(JournalError, match=says):
            export_drawing(worked_on, out)
        assert not out.exists()
    with pytest.raises(JournalError, match="no view number 99"):
        export_drawing(worked_on, tmp_path / "a.svg", 99)


def test_a_blank_sheet_has_nothing_to_take_out(tmp_path):
    with new_journal(tmp_path / "Blank", Car("Rook", body="blank")) as blank:
        with pytest.raises(JournalError, match="Nothing is drawn yet"):
            export_drawing(blank, tmp_path / "a.png")
        assert drawings.views(blank)


def test_a_title_in_any_writing_is_set(tmp_path):
    with new_journal(tmp_path / "J", Car('路 "Rook" #[x] $1')) as session:
        pdf = pypdfium2.PdfDocument(export_drawing(session, tmp_path / "a.pdf"))
        assert 'Rook" #[x] $1' in pdf[0].get_textpage().get_text_range()
        pdf.close()
        assert pins.pins(session) == ()
