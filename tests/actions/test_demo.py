"""The demo journal, made by the acts a person uses."""

from collections import Counter
from collections.abc import Iterator
from pathlib import Path

import pytest

from journal.actions import areas, cars, gaps, hours, photos, receipts, surveys
from journal.actions.checking import check
from journal.actions.demo import make_demo
from journal.actions.journals import open_journal
from journal.actions.session import Session
from journal.demo.plan import plan
from journal.demo.write import chosen
from journal.domain.errors import Cancelled, JournalError
from journal.domain.photos import Basis
from journal.domain.receipts import Paper

PHOTOS = 44


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    made = tmp_path_factory.mktemp("demo") / "Halden Rook"
    make_demo(made, photos=PHOTOS)
    return made


@pytest.fixture
def session(folder: Path) -> Iterator[Session]:
    with open_journal(folder) as opened:
        yield opened


def test_the_record_is_there(session: Session) -> None:
    assert cars.car(session).title == "Halden Rook"
    assert len(areas.areas(session)) == 25
    papers = Counter(receipt.paper for receipt in receipts.receipts(session))
    assert papers == {Paper.HELD: 55, Paper.LOST: 3, Paper.NEVER: 2}
    held = [r for r in receipts.receipts(session) if r.paper is Paper.HELD]
    assert all(receipt.papers for receipt in held)
    assert 285 <= sum(day.minutes for day in hours.work(session)) / 60 <= 315
    assert len(photos.all_photos(session)) == PHOTOS


def test_photos_are_dated_by_the_truth(session: Session) -> None:
    truth = {Path(p.path).name: p for p in chosen(PHOTOS)}
    corrected = 0
    for photo in photos.all_photos(session):
        true = truth[photo.name]
        if true.true is None:
            continue
        assert photo.when, photo.name
        assert abs((photo.when.earliest - true.true).total_seconds()) < 1, photo.name
        corrected += true.true != true.shown
    assert corrected > 0


def test_prints_have_the_owners_word(session: Session) -> None:
    said = {Path(p.path).name for p in chosen(PHOTOS) if p.said}
    owners = {p.name for p in photos.all_photos(session) if p.basis is Basis.OWNER}
    assert said
    assert owners == said


def test_most_photos_are_placed_and_some_are_not(session: Session) -> None:
    placed = [photo.placed for photo in photos.all_photos(session)]
    assert 0.7 < sum(placed) / len(placed) < 0.95


def test_photos_are_chosen_for_their_areas(session: Session) -> None:
    named = {Path(p.path).name: p for p in chosen(PHOTOS)}
    count = 0
    for area in areas.areas(session):
        for role, photo in areas.area_photos(session, area.id):
            story = named[photo.name].subject.area
            assert story
            assert story.name == area.name
            assert named[photo.name].role is role
            count += 1
    assert count == sum(p.subject.area is not None for p in chosen(PHOTOS))


def test_there_are_gaps_to_fill(session: Session) -> None:
    kinds = {str(gap.kind) for gap in gaps.gaps(session)}
    assert len(kinds) >= 4


def test_the_survey_was_too_hopeful_and_is_kept(session: Session) -> None:
    (survey,) = surveys.surveys(session)
    assert survey.closed
    sheet, held = surveys.sheet(session, survey.id), surveys.outcome(session, survey.id)
    assert (len(sheet.findings), len(sheet.causes)) == (18, 2)
    assert held.finished == len(held.areas) == 14
    assert held.ratio is not None
    assert held.ratio_minutes is not None
    assert 1.2 < held.ratio.ratio < 1.5
    assert 1.2 < held.ratio_minutes.ratio < 1.5
    assert held.pace is None
    anchors = surveys.anchors(session)
    assert any(surveys.finding_marks(anchors, one) for one in sheet.findings)


def test_the_journal_checks_clean(folder: Path) -> None:
    report = check(folder)
    assert report.faults == ()
    assert report.originals >= PHOTOS + 55


def test_a_folder_that_holds_something_is_refused(tmp_path: Path) -> None:
    (tmp_path / "mine.txt").write_text("keep me")
    with pytest.raises(JournalError):
        make_demo(tmp_path, photos=1)
    assert [path.name for path in tmp_path.iterdir()] == ["mine.txt"]


def test_stopping_leaves_a_journal_that_is_whole(tmp_path: Path) -> None:
    class Impatient:
        def report(self, done: int, total: int, label: str) -> None:
            self.label = label

        def checkpoint(self) -> None:
            if getattr(self, "label", "") == "Drawing the pictures":
                raise Cancelled

    with pytest.raises(Cancelled):
        make_demo(tmp_path / "stopped", Impatient(), 3)
    assert check(tmp_path / "stopped").faults == ()
    with open_journal(tmp_path / "stopped") as session:
        assert len(areas.areas(session)) == 25


@pytest.mark.slow
def test_the_whole_demo(tmp_path: Path) -> None:
    make_demo(tmp_path / "whole")
    assert check(tmp_path / "whole").faults == ()
    with open_journal(tmp_path / "whole") as session:
        shown = photos.all_photos(session)
        assert len(shown) == len(plan()) >= 240
        assert 0.8 < sum(photo.placed for photo in shown) / len(shown) < 0.9
        assert all(photo.damage == "" for photo in shown)
