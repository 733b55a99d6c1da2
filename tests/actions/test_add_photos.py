import errno
import os
import sqlite3
import stat
import threading
from hashlib import sha256
from pathlib import Path

import pytest

from journal.actions import adding, history, photos
from journal.actions.add_photos import add_photos
from journal.actions.checking import check
from journal.actions.journals import open_journal
from journal.actions.receipts import record_receipt
from journal.actions.session import Session
from journal.domain.errors import Cancelled, ReadOnlyError
from journal.domain.photos import Basis
from journal.files import copying
from journal.store.originals import path_of
from tests.files.faults import FullDisk, full_disk
from tests.intake.made import (
    bomb_png,
    circling_tiff,
    jpeg,
    lying,
    png_chunk,
    png_with,
    saved,
    scene,
    with_thumbnail,
)
from tests.store.values import receipt

__all__ = ["full_disk"]


@pytest.fixture
def card(tmp_path):
    """A folder of seven photos, one a minute."""
    folder = tmp_path / "card"
    folder.mkdir()
    for i in range(7):
        (folder / f"IMG_{i + 1:04}.JPG").write_bytes(jpeg(f"2016:03:05 14:{i:02}:00", seed=i))
    return folder


@pytest.fixture
def small_batches(monkeypatch):
    monkeypatch.setattr(adding, "BATCH", 3)


class Watch:
    """A context that notes every report and, if told to, stops at one of them."""

    def __init__(self, stop_at: int = 0, on_report=None) -> None:
        self.reports = []
        self.stop_at = stop_at
        self.on_report = on_report

    def report(self, done: int, total: int, label: str) -> None:
        self.reports.append((label, done, total))
        if self.on_report:
            self.on_report(len(self.reports))

    def checkpoint(self) -> None:
        if self.stop_at and len(self.reports) >= self.stop_at:
            raise Cancelled


def assert_sound(session: Session, report) -> None:
    """What was called added is there and whole, and nothing else is left about."""
    by_sha = {p.sha256: p for p in session.journal.photos.all()}
    for one in report.added:
        photo = by_sha[one.sha256]
        assert photo.id == one.photo_id
        original = path_of(session.folder, photo.sha256, photo.suffix)
        assert sha256(original.read_bytes()).hexdigest() == one.sha256
    assert not list(session.journal.staging.iterdir())
    kept = [p for p in (session.folder / "originals").rglob("*") if p.is_file()]
    assert len(kept) == len(session.journal.photos.all())
    assert not [t for t in threading.enumerate() if t.name.startswith("arriving")]


def assert_checks_clean(folder: Path) -> None:
    found = check(folder)
    assert not found.faults
    assert found.loose == 0


def test_photos_come_in_dated_whole_and_read_only(session, card):
    report = add_photos(session, [card])
    assert [one.path.name for one in report.added] == [f"IMG_{i:04}.JPG" for i in range(1, 8)]
    assert report.already == report.skipped == report.refused == ()
    assert not report.cancelled
    assert_sound(session, report)
    for one, photo in zip(report.added, session.journal.photos.all(), strict=True):
        assert photo.id == one.photo_id
        assert photo.basis is Basis.CAMERA
        assert session.journal.previews.is_final(photo.sha256)
        original = path_of(session.folder, photo.sha256, photo.suffix)
        assert original.read_bytes() == one.path.read_bytes()
        assert not original.stat().st_mode & (stat.S_IWUSR | stat.S_IWGRP | stat.S_IWOTH)
    assert report.changes.edit_id
    assert "photos" in report.changes.kinds
    assert_checks_clean(session.folder)


def test_the_same_photos_from_anywhere_add_nothing_twice(session, card, tmp_path):
    first = add_photos(session, [card])
    elsewhere = tmp_path / "elsewhere.heic"
    elsewhere.write_bytes((card / "IMG_0003.JPG").read_bytes())
    edits = len(history.edits(session))
    second = add_photos(session, [card, elsewhere])
    assert not second.added
    assert {one.sha256 for one in second.already} == {one.sha256 for one in first.added}
    assert len(second.already) == 8
    assert second.changes.edit_id is None
    assert len(history.edits(session)) == edits
    assert_sound(session, second)


@pytest.mark.usefixtures("small_batches")
def test_a_photo_that_comes_twice_at_once_is_added_once(session, card):
    for i in range(1, 6):
        (card / f"Z{i}.jpg").write_bytes((card / "IMG_0004.JPG").read_bytes())
    report = add_photos(session, [card])
    assert len(report.added) == 7
    assert len(report.already) == 5
    assert len({one.photo_id for one in report.already}) == 1
    assert_sound(session, report)


def test_every_bad_file_is_named_and_the_rest_comes_in(session, card):
    bad = {
        "zero.jpg": b"",
        "page.jpg": b"<!DOCTYPE html><html>not found</html>",
        "bomb.png": bomb_png(),
        "paper.jpg": b"%PDF-1.7 and so on",
        "noise.heic": os.urandom(3000),
    }
    for name, data in bad.items():
        (card / name).write_bytes(data)
    (card / "notes.txt").write_text("paint code 1234")
    (card / "loop.tif").write_bytes(circling_tiff())
    (card / "cut.jpg").write_bytes(jpeg("2016:03:06 10:00:00", seed=50)[:-700])
    (card / "link.jpg").symlink_to("/etc/passwd")
    report = add_photos(session, [card, card / "gone.jpg", Path("x" * 10_000)])
    refused = {one.path.name[:20]: one.reason for one in report.refused}
    assert set(refused) == {*bad, "gone.jpg", "x" * 20}
    assert "0 bytes" in refused["zero.jpg"]
    assert "megapixels" in refused["bomb.png"]
    assert "PDF" in refused["paper.jpg"]
    assert {one.path.name for one in report.skipped} == {"notes.txt", "link.jpg"}
    assert all(reason for reason in refused.values())
    assert len(report.added) == 9
    damaged = {p.name: p.damage for p in session.journal.photos.all() if p.damage}
    assert set(damaged) == {"loop.tif", "cut.jpg"}
    assert_sound(session, report)
    assert_checks_clean(session.folder)


@pytest.mark.skipif(os.name == "nt", reason="Windows names are Unicode")
def test_a_name_that_is_not_utf_8_comes_in_under_a_readable_one(session, card):
    (card / os.fsdecode(b"Schweller_\xfc.jpg")).write_bytes(jpeg(seed=80))
    report = add_photos(session, [card])
    names = {p.name for p in session.journal.photos.all()}
    assert any(name.startswith("Schweller_") for name in names)
    assert_sound(session, report)


def test_what_only_decoding_shows_is_noted_as_damage(session, card):
    whole = saved(scene(), "PNG")
    at = whole.index(b"IDAT") + 40
    (card / "broken.png").write_bytes(whole[:at] + bytes(200) + whole[at + 200 :])
    report = add_photos(session, [card])
    damaged = {p.name: p.damage for p in session.journal.photos.all() if p.damage}
    assert set(damaged) == {"broken.png"}
    assert "can't be decoded" in damaged["broken.png"]
    assert len(report.added) == 8


def test_the_cameras_own_thumbnail_stands_in_until_ours_is_made(session, card, monkeypatch):
    small = saved(scene(160, 120))
    (card / "turned.jpg").write_bytes(with_thumbnail(saved(lying(scene(), 6)), small, 6))
    monkeypatch.setattr(adding.Adding, "make_thumbnails", lambda self: None)
    add_photos(session, [card])
    turned = next(p for p in session.journal.photos.all() if p.name == "turned.jpg")
    assert session.journal.previews.get(turned.sha256)
    assert not session.journal.previews.is_final(turned.sha256)


def test_an_undated_photo_is_dated_by_its_neighbours(session, card):
    (card / "IMG_0004.JPG").write_bytes(jpeg(seed=99))
    os.utime(card / "IMG_0004.JPG", (1_700_000_000, 1_700_000_000))
    report = add_photos(session, [card])
    photo = next(p for p in session.journal.photos.all() if p.name == "IMG_0004.JPG")
    assert photo.basis is Basis.NEIGHBOURS
    assert photo.when.edtf == "2016-03-05"
    order = [p.name for p in session.journal.photos.all()]
    assert order.index("IMG_0003.JPG") < order.index("IMG_0004.JPG") < order.index("IMG_0005.JPG")
    sources = [c.basis for c in photos.date_candidates(session, photo.id)]
    assert sources == [Basis.FILE_TIME, Basis.NEIGHBOURS]
    assert_sound(session, report)


@pytest.mark.usefixtures("small_batches")
def test_adding_is_one_act_to_undo_and_to_do_again(session, card):
    report = add_photos(session, [card])
    assert len(history.edits(session)) == 1 + 3
    history.undo(session)
    assert session.journal.photos.count() == 0
    history.redo(session)
    assert session.journal.photos.count() == len(report.added) == 7
    assert_checks_clean(session.folder)


def test_after_undo_the_same_photos_can_be_added_again(session, card):
    add_photos(session, [card])
    history.undo(session)
    report = add_photos(session, [card])
    assert len(report.added) == 7
    assert_sound(session, report)


def test_a_removed_photo_comes_back_when_it_is_added_again(session, card):
    report = add_photos(session, [card])
    gone = report.added[2].photo_id
    photos.remove_photos(session, [gone])
    again = add_photos(session, [card / "IMG_0003.JPG"])
    assert [one.photo_id for one in again.already] == [gone]
    assert session.journal.photos.count() == 7
    history.undo(session)
    assert session.journal.photos.count() == 6


def test_what_is_kept_as_a_paper_can_be_a_photo_too(session, card):
    scan = card / "IMG_0001.JPG"
    record_receipt(session, receipt(), [scan])
    report = add_photos(session, [scan])
    assert len(report.added) == 1
    assert_checks_clean(session.folder)


def test_progress_says_what_and_how_many(session, card):
    watch = Watch()
    add_photos(session, [card], watch)
    assert watch.reports == [("Copying", i, 7) for i in range(1, 8)] + [
        ("Making thumbnails", i, 7) for i in range(1, 8)
    ]


@pytest.mark.usefixtures("small_batches")
@pytest.mark.parametrize("stop_at", range(1, 14))
def test_stopping_keeps_whole_photos_and_the_rest_can_follow(session, card, stop_at):
    report = add_photos(session, [card], Watch(stop_at))
    assert report.cancelled
    assert len(report.added) == min(stop_at, 7)
    assert_sound(session, report)
    rest = add_photos(session, [card])
    assert not rest.cancelled
    assert len(rest.added) + len(rest.already) == 7
    assert session.journal.photos.count() == 7
    assert_checks_clean(session.folder)


@pytest.mark.usefixtures("small_batches")
@pytest.mark.parametrize("at", range(1, 9))
def test_a_full_disk_at_any_write_loses_nothing_that_was_called_added(
    session, card, full_disk: FullDisk, at
):
    full_disk.fill(at)
    report = add_photos(session, [card])
    assert len(report.added) < at
    assert len(report.added) + len(report.refused) == 7
    assert all("no space left" in one.reason.lower() for one in report.refused)
    assert bool(report.refused) == (at < 8)
    assert_sound(session, report)
    assert_checks_clean(session.folder)
    full_disk.fill(0)
    assert len(add_photos(session, [card]).added) == len(report.refused)


@pytest.mark.usefixtures("small_batches")
@pytest.mark.parametrize("batch", [1, 2, 3])
def test_a_database_that_takes_no_more_leaves_no_loose_originals(session, card, monkeypatch, batch):
    store, calls = session.journal.photos, []
    real = type(store).add

    def add(self, new):
        calls.append(len(new))
        if len(calls) == batch:
            raise sqlite3.OperationalError("database or disk is full")
        return real(self, new)

    monkeypatch.setattr(type(store), "add", add)
    report = add_photos(session, [card])
    assert len(report.added) == 3 * (batch - 1)
    assert len(report.refused) == 7 - len(report.added)
    assert all("no space left" in one.reason for one in report.refused)
    assert_sound(session, report)
    assert_checks_clean(session.folder)
    monkeypatch.undo()
    assert session.journal.photos.count() == len(report.added)


@pytest.mark.usefixtures("small_batches")
def test_settling_that_fails_leaves_nothing_behind(session, card, monkeypatch):
    from journal.store import originals

    def sync_files(paths):
        raise OSError(errno.EIO, "Input/output error")

    monkeypatch.setattr(originals, "sync_files", sync_files)
    report = add_photos(session, [card])
    assert not report.added
    assert len(report.refused) == 7
    assert_sound(session, report)
    assert_checks_clean(session.folder)


@pytest.mark.usefixtures("small_batches")
def test_a_card_pulled_out_half_way_refuses_the_rest(session, card, monkeypatch):
    real, chunks = copying._read, []

    class Gone:
        def readinto(self, room):
            raise OSError(errno.EIO, "Input/output error")

    def read(handle, room):
        chunks.append(1)
        return real(handle if len(chunks) <= 5 else Gone(), room)

    monkeypatch.setattr(copying, "_read", read)
    report = add_photos(session, [card])
    assert {one.reason for one in report.refused} == {"it can't be read: input/output error"}
    assert len(report.added) == 5
    assert len(report.refused) == 2
    assert_sound(session, report)
    assert_checks_clean(session.folder)


@pytest.mark.usefixtures("small_batches")
def test_files_that_vanish_on_the_way_are_named(session, tmp_path):
    folder = tmp_path / "large card"
    folder.mkdir()
    for i in range(60):
        (folder / f"P{i:07}.jpg").write_bytes(jpeg("2016:03:05 10:00:00", size=(60, 40), seed=i))

    def pull_out(count):
        if count == 1:
            for path in sorted(folder.iterdir())[40:]:
                path.unlink()

    report = add_photos(session, [folder], Watch(on_report=pull_out))
    assert len(report.added) + len(report.refused) == 60
    assert len(report.refused) >= 10
    assert all("no such file" in one.reason for one in report.refused)
    assert_sound(session, report)


def test_a_fault_in_a_library_stays_with_its_file(session, card, monkeypatch):
    from journal.intake import arriving

    real = arriving.inspect

    def inspect(staged, name, now):
        if name == "IMG_0005.JPG":
            raise RecursionError("a library went round in circles")
        return real(staged, name, now)

    monkeypatch.setattr(arriving, "inspect", inspect)
    report = add_photos(session, [card])
    assert [one.path.name for one in report.refused] == ["IMG_0005.JPG"]
    assert "round in circles" in report.refused[0].reason
    assert len(report.added) == 6
    assert_sound(session, report)


def test_a_journal_open_for_reading_takes_none(session, card):
    with open_journal(session.folder) as second:
        assert second.read_only
        with pytest.raises(ReadOnlyError, match="No photos can be added"):
            add_photos(second, [card])


def test_nothing_to_add_changes_nothing(session, tmp_path):
    empty = tmp_path / "empty"
    empty.mkdir()
    report = add_photos(session, [empty])
    assert report.changes.edit_id is None
    assert report.added == report.refused == report.skipped == ()


def test_png_chunks_are_all_kept(session, tmp_path):
    path = tmp_path / "extra.png"
    path.write_bytes(png_with(saved(scene(), "PNG"), png_chunk(b"prVt", b"private")))
    report = add_photos(session, [path])
    kept = path_of(session.folder, report.added[0].sha256, ".png")
    assert kept.read_bytes() == path.read_bytes()
