"""The years taken out: a moving picture, a sheet of year-ends, and stopping half-way."""

from pathlib import Path

import pypdfium2
import pytest
from PIL import Image

from journal.actions import areas, drawings
from journal.actions.export_years import export_years
from journal.domain.errors import Cancelled, JournalError
from journal.domain.when import parse


@pytest.fixture
def welded(session):
    sill = drawings.find_panel(session, "Sill, left").id
    made = areas.add_area(session, "Sill", [sill], "Rust", parse("2015-03-02"))
    for stage, when in (("cut back", "2015-05-02"), ("welded", "2016-07-09"), ("dressed", "2018")):
        areas.move_to_stage(session, made.made, stage, parse(when))
    return session


class Listening:
    def __init__(self, stop_at=None):
        self.seen = []
        self.stop_at = stop_at

    def report(self, done, total, label):
        self.seen.append((done, total))

    def checkpoint(self):
        if self.stop_at is not None and len(self.seen) >= self.stop_at:
            raise Cancelled


@pytest.mark.parametrize("name", ["years.gif", "years.webp"])
def test_it_moves_through_every_change_once(welded, tmp_path, name):
    listening = Listening()
    left = drawings.views(welded)[0].id
    report = export_years(welded, tmp_path / name, left, longest=300, context=listening)
    frames = []
    with Image.open(report.path) as image:
        assert report.pictures == image.n_frames == 4
        assert max(image.size) == 300
        for number in range(4):
            image.seek(number)
            frames.append(image.convert("RGB").tobytes())
    assert len(set(frames)) == 4
    assert listening.seen[-1] == (5, 5)


def test_year_ends_stand_on_one_page_with_their_years(welded, tmp_path):
    report = export_years(welded, tmp_path / "ends.pdf")
    assert report.pictures == 4
    pdf = pypdfium2.PdfDocument(report.path)
    assert len(pdf) == 1
    words = pdf[0].get_textpage().get_text_range()
    for year in (2015, 2016, 2017, 2018):
        assert f"End of {year}" in words
    assert "dressed" in words
    pdf.close()
    with Image.open(export_years(welded, tmp_path / "e.png").path) as image:
        assert image.width == 2400


@pytest.mark.parametrize("name", ["years.gif", "ends.pdf"])
def test_stopped_half_way_leaves_what_was_there(welded, tmp_path, name):
    out = tmp_path / name
    out.write_bytes(b"before")
    with pytest.raises(Cancelled):
        export_years(welded, out, longest=200, context=Listening(stop_at=2))
    assert out.read_bytes() == b"before"
    assert list(tmp_path.glob("*.part")) == []


def test_what_has_no_years_or_no_known_ending_is_refused(session, tmp_path: Path):
    with pytest.raises(JournalError, match="No stage of a repair area has a date"):
        export_years(session, tmp_path / "years.gif")
    with pytest.raises(JournalError, match="has to end in"):
        export_years(session, tmp_path / "years.avi")
    assert list(tmp_path.glob("years*")) == []
