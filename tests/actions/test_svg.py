"""SVG in: panels as one edit, what couldn't be used listed, bad files refused whole."""

from pathlib import Path

import pytest

from journal.actions import drawings, history
from journal.actions.export_drawing import export_drawing
from journal.actions.journals import new_journal
from journal.actions.session import Session
from journal.actions.shaping import reshape
from journal.actions.svg import bring_in_svg
from journal.domain.car import Car
from journal.domain.drawing import Side, System
from journal.domain.errors import JournalError
from journal.domain.shapes import bounds, rectangle
from journal.domain.shaping.making import add_panel

_WING = ("Front wing", Side.LEFT, System.OUTER)

_HEAD = '<svg xmlns="http://www.w3.org/2000/svg" width="400mm" height="200mm" viewBox="0 0 400 200"'


@pytest.fixture
def blank(tmp_path: Path):
    with new_journal(tmp_path / "Blank", Car("Halden Rook", body="blank")) as made:
        yield made


def written(tmp_path: Path, body: str, head: str = _HEAD + ">") -> Path:
    path = tmp_path / "floor repair.svg"
    path.write_text(f"{head}{body}</svg>", encoding="utf-8")
    return path


def labels(session: Session) -> set[str]:
    return {panel.label for panel in drawings.panels(session)}


def test_closed_shapes_become_panels_of_a_new_view_in_one_edit(blank, tmp_path):
    file = written(
        tmp_path,
        '<rect id="r" x="10" y="20" width="100" height="50"><title>Patch, left</title></rect>'
        '<path id="floor" d="M0 0H200V100Z" transform="translate(50 60)"/>'
        '<line x1="0" y1="0" x2="9" y2="9"/><text>words</text>',
    )
    before = len(drawings.views(blank))
    report = bring_in_svg(blank, file)
    assert report.panels == 2
    assert report.views == ("floor repair",)
    assert report.scaled
    assert labels(blank) == {"Patch, left", "Floor"}
    assert {left.what for left in report.not_used} == {"line", "text"}
    assert all(left.reason for left in report.not_used)
    patch = next(s for s in drawings.drawing(blank).shapes if bounds(s.shape).left == 10)
    assert bounds(patch.shape) == pytest.approx((10, 20, 110, 70))
    assert report.changes.label == "Bring in 2 panels from “floor repair.svg”"
    history.undo(blank)
    assert labels(blank) == set()
    assert len(drawings.views(blank)) == before


def test_a_drawing_taken_out_fills_the_empty_views_of_another_journal(blank, tmp_path):
    left = drawings.views(blank)[0]
    reshape(blank, "Draw", lambda d: add_panel(d, *_WING, left.id, rectangle(100, 200, 600, 500)))
    file = export_drawing(blank, tmp_path / "out.svg")
    with new_journal(tmp_path / "Other", Car("Another", body="blank")) as other:
        before = drawings.views(other)
        report = bring_in_svg(other, file)
        assert report.views == (left.name,)
        assert drawings.views(other) == before
        shape = drawings.drawing(other).shapes_on(before[0].id)[0].shape
        assert bounds(shape) == pytest.approx((100, 200, 700, 700))
        again = bring_in_svg(other, file)
        assert again.views == (f"{left.name} 2",)
        history.undo(other)
        history.undo(other)
        assert drawings.views(other) == before
        assert not drawings.drawing(other).shapes


def test_panels_are_laid_onto_a_view_by_a_scale_given(blank, tmp_path):
    view = drawings.views(blank)[0]
    file = written(tmp_path, '<rect id="Sill" x="10" y="20" width="100" height="50"/>')
    report = bring_in_svg(blank, file, view.id, mm_per_unit=10)
    (shape,) = drawings.drawing(blank).shapes
    assert bounds(shape.shape) == pytest.approx((100, 200, 1100, 700))
    assert report.views == (view.name,)
    assert shape.view_id == view.id


@pytest.mark.parametrize(
    ("body", "says"),
    [
        ("<rect", "line 1"),
        ('<script>alert("x")</script><rect width="9" height="9"/>', "script"),
        ('<image href="http://example.invalid/a.png"/><rect width="9" height="9"/>', "link"),
        ('<rect width="9" height="9" onclick="x()"/>', "script"),
        ('<line x1="0" y1="0" x2="9" y2="9"/>', "nothing to bring in"),
    ],
)
def test_a_bad_file_is_refused_with_its_name_and_leaves_nothing(blank, tmp_path, body, says):
    file = written(tmp_path, body)
    with pytest.raises(JournalError, match=rf"(?i){says}") as refusal:
        bring_in_svg(blank, file)
    assert "\n" not in str(refusal.value)
    assert drawings.drawing(blank).shapes == ()
    assert history.undo_label(blank) is None


def test_entities_are_refused_unread(blank, tmp_path):
    file = tmp_path / "laughs.svg"
    file.write_text('<!DOCTYPE svg [<!ENTITY a "ha">]><svg xmlns="http://www.w3.org/2000/svg"/>')
    with pytest.raises(JournalError, match=r"“laughs\.svg”"):
        bring_in_svg(blank, file)


def test_a_huge_file_is_refused_without_being_read(blank, tmp_path, monkeypatch):
    file = tmp_path / "huge.svg"
    with file.open("wb") as handle:
        handle.truncate(3_000_000_000)
    monkeypatch.setattr(Path, "read_bytes", lambda _self: pytest.fail("it was read"))
    with pytest.raises(JournalError, match="3000 MB"):
        bring_in_svg(blank, file)


@pytest.mark.parametrize("scale", [0, -3, float("nan")])
def test_a_scale_of_nothing_is_refused(blank, tmp_path, scale):
    file = written(tmp_path, '<rect width="90" height="90"/>')
    with pytest.raises(JournalError, match="scale"):
        bring_in_svg(blank, file, mm_per_unit=scale)


def test_what_is_missing_or_no_file_is_said_plainly(blank, tmp_path):
    for file in (tmp_path / "nowhere.svg", tmp_path):
        with pytest.raises(JournalError, match=f"“{file.name}”"):
            bring_in_svg(blank, file)


def test_what_would_leave_the_view_brings_nothing(blank, tmp_path):
    view = drawings.views(blank)[0]
    file = written(tmp_path, '<rect id="Sill" x="10" y="20" width="100" height="50"/>')
    with pytest.raises(JournalError):
        bring_in_svg(blank, file, view.id, mm_per_unit=900)
    assert drawings.drawing(blank).shapes == ()
