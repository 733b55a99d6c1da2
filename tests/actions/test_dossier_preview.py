"""The dossier's pages, looked at before it is made."""

from pathlib import Path

import pytest

from journal.actions import dossier_preview
from journal.actions.dossiers import make_dossier
from journal.domain.cuts import Cut, Part, usual
from journal.domain.errors import Cancelled
from journal.domain.progress import Silent
from tests.desktop import workshop


class Stopped(Silent):
    """Asks for the job to stop at once."""

    def checkpoint(self) -> None:
        raise Cancelled


def test_the_pages_shown_are_those_that_would_be_made(tmp_path: Path) -> None:
    with workshop.furnished(tmp_path) as session:
        choices = usual(Cut.VALUER)
        pages = dossier_preview.preview_pages(session, choices)
        report = make_dossier(session, tmp_path / "rook.pdf", choices=choices)
        assert (pages.count, pages.photos) == (report.pages, report.photos)
        fewer = dossier_preview.preview_pages(session, choices.with_part(Part.AREAS, wanted=False))
        assert fewer.count < pages.count
    first, last = (
        dossier_preview.page_picture(pages, number, 300) for number in (0, pages.count - 1)
    )
    assert abs(first.width - 300) <= 1
    # A4 is 210 by 297 millimetres: ISO 216.
    assert first.height / first.width == pytest.approx(297 / 210, rel=0.01)
    assert len(first.rgb) == first.width * first.height * 3
    assert first.rgb != last.rgb


def test_one_that_is_out_of_date_stops(tmp_path: Path) -> None:
    with workshop.furnished(tmp_path) as session, pytest.raises(Cancelled):
        dossier_preview.preview_pages(session, usual(Cut.BUYER), Stopped())
