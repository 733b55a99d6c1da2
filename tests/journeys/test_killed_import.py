"""The importer killed without warning, at random moments, again and again in one journal."""

import random
import subprocess
import sys
import time
from hashlib import sha256
from pathlib import Path

import pytest

from journal.actions.add_photos import add_photos
from journal.actions.checking import check
from journal.actions.journals import new_journal, open_journal
from journal.domain.car import Car
from journal.store.originals import path_of
from tests.intake.made import jpeg

SCRIPT = Path(__file__).with_name("adding_in_a_process.py")
PHOTOS_A_ROUND = 24
#: How many photos the process puts on record at a time.
BATCH = 4
ROOM = 200_000


def _fill(folder: Path, first: int) -> None:
    """New photos, made large by bytes behind their end, so that copying takes a while."""
    folder.mkdir()
    chance = random.Random(first)
    picture = jpeg("2016:03:05 14:00:00", size=(1200, 900))
    for number in range(first, first + PHOTOS_A_ROUND):
        (folder / f"IMG_{number:04}.JPG").write_bytes(picture + chance.randbytes(ROOM))


def _start(journal: Path, folder: Path) -> subprocess.Popen[str]:
    return subprocess.Popen(
        [sys.executable, str(SCRIPT), str(journal), str(folder)],
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        text=True,
    )


def _told(lines: list[str]) -> list[tuple[str, int]]:
    """What was called added; a line torn by the kill does not count."""
    words = [line.split() for line in lines if line.endswith("\n")]
    return [(w[1], int(w[2])) for w in words if len(w) == 3 and w[0] == "added"]


def _assert_all_there(journal: Path, told: list[tuple[str, int]]) -> None:
    with open_journal(journal) as session:
        assert not session.read_only, session.notice
        assert not list(session.journal.staging.iterdir())
        photos = {p.id: p for p in session.journal.photos.all()}
        for digest, number in told:
            photo = photos[number]
            assert photo.sha256 == digest
            original = path_of(session.folder, photo.sha256, photo.suffix)
            assert sha256(original.read_bytes()).hexdigest() == digest
        for photo in photos.values():
            original = path_of(session.folder, photo.sha256, photo.suffix)
            assert sha256(original.read_bytes()).hexdigest() == photo.sha256
    assert check(journal).faults == ()


def _kill_rounds(tmp_path: Path, rounds: int, seed: int) -> tuple[int, int]:
    """Kill so many imports; how many had told of some photos, and of all."""
    chance = random.Random(seed)
    journal = tmp_path / "Halden Rook"
    new_journal(journal, Car("Halden Rook")).close()
    usual, told, some, whole = 1.0, [], 0, 0
    for turn in range(rounds + 1):
        folder = tmp_path / f"card {turn}"
        _fill(folder, turn * PHOTOS_A_ROUND + 1)
        process = _start(journal, folder)
        assert process.stdout
        assert process.stdout.readline() == "ready\n"
        start, lines = time.monotonic(), []
        if turn % 2:
            time.sleep(chance.uniform(0, usual))
            process.kill()
        elif turn:
            # Some way in, however busy the machine is, then at a random moment of the next step.
            batches = chance.randrange(PHOTOS_A_ROUND // BATCH)
            lines = [process.stdout.readline() for _ in range(batches * BATCH)]
            time.sleep(chance.uniform(0, usual / PHOTOS_A_ROUND))
            process.kill()
        told_now = _told(lines + process.stdout.readlines())
        process.wait()
        process.stdout.close()
        if not turn:
            usual = time.monotonic() - start
            assert len(told_now) == PHOTOS_A_ROUND
        told += told_now
        some += 0 < len(told_now) < PHOTOS_A_ROUND
        whole += len(told_now) == PHOTOS_A_ROUND
        _assert_all_there(journal, told)
    _assert_that_the_rest_can_follow(journal, tmp_path, rounds + 1)
    return some, whole


def _assert_that_the_rest_can_follow(journal: Path, cards: Path, rounds: int) -> None:
    with open_journal(journal) as session:
        folders = sorted(cards.glob("card *"))
        report = add_photos(session, folders)
        assert not report.refused
        assert len(report.added) + len(report.already) == rounds * PHOTOS_A_ROUND
        assert session.journal.photos.count() == rounds * PHOTOS_A_ROUND
    found = check(journal)
    assert found.faults == ()
    assert found.loose == 0


def test_a_killed_import_loses_nothing_that_was_called_added(tmp_path):
    _kill_rounds(tmp_path, 4, seed=1)


@pytest.mark.slow
def test_fifty_killed_imports_lose_nothing_that_was_called_added(tmp_path):
    some, whole = _kill_rounds(tmp_path, 50, seed=2)
    # Otherwise the kills all came too early or too late to mean anything.
    assert some >= 5
    assert whole < 45


@pytest.mark.parametrize("read_only", [True, False])
def test_a_journal_that_stopped_in_the_middle_of_a_write_opens_as_it_was_before(
    tmp_path, read_only
):
    """What a kill leaves is SQLite's own journal beside the database, waiting to be rolled back."""
    folder, copy = tmp_path / "Halden Rook", tmp_path / "as the kill left it"
    with new_journal(folder, Car("Halden Rook")) as session:
        db = session.journal.db
        db.execute("PRAGMA cache_size = 4")
        db.execute("BEGIN IMMEDIATE")
        db.execute("CREATE TABLE half_written (content BLOB)")
        for _ in range(40):
            db.execute("INSERT INTO half_written VALUES (zeroblob(20000))")
        (copy / "originals" / "arriving").mkdir(parents=True)
        for name in ("journal.db", "journal.db-journal"):
            (copy / name).write_bytes((folder / name).read_bytes())
        db.execute("ROLLBACK")
    assert (copy / "journal.db").stat().st_size > (folder / "journal.db").stat().st_size
    with open_journal(copy, read_only=read_only) as session:
        assert session.journal.car.get().title == "Halden Rook"
        tables = session.journal.db.execute("SELECT name FROM sqlite_master").fetchall()
        assert ("half_written",) not in tables
    assert check(copy).faults == ()
