"""Bags that would harm whoever unpacks them are refused with the reason, and nothing is written."""

import io
import os
import random
import stat
import tarfile
import zipfile
from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journal.domain.errors import JournalError
from journal.domain.progress import Silent
from journal.dossier import bag_sources
from journal.dossier.bundle.check import check_bundle
from journal.files.names import why_unsafe
from tests.dossier.bags import as_folder, as_tar, as_zip, bag_files

GOOD = bag_files({"a.txt": b"a\n", "b/c.txt": b"c\n"})
PACKED = {"zip": as_zip, "tar": as_tar}


def refused(path: Path) -> str:
    before = sorted(path.parent.rglob("*"))
    said = check_bundle(path, Silent()).refused
    assert sorted(path.parent.rglob("*")) == before
    assert said.endswith(".")
    return said


@pytest.mark.parametrize("form", ["folder", "zip", "tar"])
def test_a_good_bag_is_whole_in_every_form(tmp_path: Path, form: str) -> None:
    make: Callable[..., Path] = {"folder": as_folder, **PACKED}[form]
    report = check_bundle(make(tmp_path / f"bag.{form}", GOOD), Silent())
    assert report.whole
    assert report.files == 4


@pytest.mark.parametrize("form", PACKED)
def test_a_bag_need_not_lie_in_a_folder_of_its_own(tmp_path: Path, form: str) -> None:
    assert check_bundle(PACKED[form](tmp_path / f"bag.{form}", GOOD, base=""), Silent()).whole


@pytest.mark.parametrize("form", PACKED)
@pytest.mark.parametrize(
    "name",
    [
        "../out.txt",
        "/etc/out.txt",
        "bag/data/../../out.txt",
        "bag/data/%2e%2e/%2e%2e/out.txt",
        "C:/out.txt",
        "bag/data\\..\\..\\out.txt",
        "//server/share/out.txt",
        "~root/out.txt",
        "bag/data/CON",
        "bag/data/aux.txt",
        "bag/data/lpt1.jpg",
        "bag/data/out.txt ",
        "bag/data/out.",
        "bag/data/out.txt:hidden",
        "bag/data/new\nline",
        "bag/data//out.txt",
        "bag/./data/out.txt",
    ],
)
def test_a_name_that_leads_astray_is_refused(tmp_path: Path, form: str, name: str) -> None:
    files = {f"bag/{path}": content for path, content in GOOD.items()} | {name: b"x"}
    path = PACKED[form](tmp_path / f"bag.{form}", files, base="")
    assert "name" in refused(path)
    assert not (tmp_path.parent / "out.txt").exists()


@pytest.mark.parametrize(
    ("one", "other"),
    [("Sill.jpg", "sill.JPG"), ("Zu\u0308rich", "Z\u00fcrich"), ("ß.txt", "SS.txt")],
)
@pytest.mark.parametrize("form", ["folder", "zip", "tar"])
def test_names_that_are_one_on_some_disks_are_refused(
    tmp_path: Path, form: str, one: str, other: str
) -> None:
    files = bag_files({one: b"1", other: b"2"})
    make: Callable[..., Path] = {"folder": as_folder, **PACKED}[form]
    assert "one and the same name" in refused(make(tmp_path / f"bag.{form}", files))


@pytest.mark.filterwarnings("ignore:Duplicate name")
@pytest.mark.parametrize("form", PACKED)
def test_a_file_that_is_there_twice_is_refused(tmp_path: Path, form: str) -> None:
    path = tmp_path / f"bag.{form}"
    if form == "zip":
        as_zip(path, GOOD)
        with zipfile.ZipFile(path, "a") as archive:
            archive.writestr("bag/data/a.txt", b"other")
    else:
        as_tar(path, GOOD)
        with tarfile.open(path, "a") as tar:
            info = tarfile.TarInfo("bag/data/a.txt")
            info.size = 5
            tar.addfile(info, io.BytesIO(b"other"))
    assert "twice" in refused(path)


def test_a_link_or_a_pipe_in_a_folder_is_refused(tmp_path: Path) -> None:
    bag = as_folder(tmp_path / "bag", GOOD)
    link = bag / "data" / "link.txt"
    link.symlink_to("/etc/hostname")
    assert "a link" in refused(bag)
    link.unlink()
    os.mkfifo(bag / "data" / "pipe")
    assert "a pipe" in refused(bag)


def test_a_folder_put_elsewhere_by_a_link_is_refused(tmp_path: Path) -> None:
    bag = as_folder(tmp_path / "bag", GOOD)
    (tmp_path / "elsewhere").mkdir()
    (bag / "data" / "more").symlink_to(tmp_path / "elsewhere")
    assert "a link" in refused(bag)


@pytest.mark.parametrize(
    ("kind", "said"),
    [
        (tarfile.SYMTYPE, "a link"),
        (tarfile.LNKTYPE, "a link"),
        (tarfile.CHRTYPE, "a device"),
        (tarfile.BLKTYPE, "a device"),
        (tarfile.FIFOTYPE, "a device"),
    ],
)
def test_what_is_no_file_in_a_tar_is_refused(tmp_path: Path, kind: bytes, said: str) -> None:
    path = as_tar(tmp_path / "bag.tar", GOOD)
    with tarfile.open(path, "a") as archive:
        info = tarfile.TarInfo("bag/data/odd")
        info.type, info.linkname = kind, "/etc/hostname"
        archive.addfile(info)
    assert said in refused(path)


def test_a_link_in_a_zip_is_refused(tmp_path: Path) -> None:
    path = as_zip(tmp_path / "bag.zip", GOOD)
    with zipfile.ZipFile(path, "a") as archive:
        info = zipfile.ZipInfo("bag/data/odd")
        info.create_system, info.external_attr = 3, (stat.S_IFLNK | 0o777) << 16
        archive.writestr(info, "/etc/hostname")
    assert "a link" in refused(path)


def test_a_file_that_would_fill_the_disk_is_refused_unread(tmp_path: Path) -> None:
    path = as_zip(tmp_path / "bag.zip", bag_files({"zeros": bytes(64 * 1024 * 1024)}))
    assert path.stat().st_size < 100_000
    assert "fills a disk" in refused(path)


def test_files_that_share_their_bytes_are_refused(tmp_path: Path) -> None:
    """As in D. Fifield, "A better zip bomb" (USENIX WOOT 2019): many entries, one content."""
    path = as_zip(tmp_path / "bag.zip", GOOD)
    with zipfile.ZipFile(path, "a") as archive:
        twin = archive.getinfo("bag/data/b/c.txt")
        other = zipfile.ZipInfo("bag/data/twin.txt")
        for name in ("CRC", "compress_size", "file_size", "header_offset", "compress_type"):
            setattr(other, name, getattr(twin, name))
        archive.filelist.append(other)
        archive._didModify = True
    assert "shares its bytes" in refused(path)


def test_a_locked_zip_is_refused(tmp_path: Path) -> None:
    path = as_zip(tmp_path / "bag.zip", GOOD)
    data = bytearray(path.read_bytes())
    at = data.rindex(b"PK\x01\x02")
    data[at + 8] |= 1
    path.write_bytes(data)
    assert "password" in refused(path)


@pytest.mark.parametrize("mode", ["w:gz", "w:bz2", "w:xz"])
def test_a_packed_tar_is_not_opened(tmp_path: Path, mode: str) -> None:
    path = as_tar(tmp_path / "bag.tar", GOOD, mode=mode)
    assert "damaged as a package" in refused(path)


def test_a_bag_that_wants_something_fetched_is_refused(tmp_path: Path) -> None:
    wants = b"https://example.org/b.jpg 120 data/b.jpg\n"
    bag = as_folder(tmp_path / "bag", bag_files({"a.txt": b"a"}, fetch_txt=wants))
    assert "fetch.txt wants “data/b.jpg”" in refused(bag)


def test_more_files_than_a_car_has_are_refused(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(bag_sources, "MOST_FILES", 3)
    assert "more than 3 files" in refused(as_zip(tmp_path / "bag.zip", GOOD))
    assert "more than 3 files" in refused(as_folder(tmp_path / "bag", GOOD))


def test_a_bag_beside_other_things_is_told(tmp_path: Path) -> None:
    files = {f"bag/{path}": content for path, content in GOOD.items()} | {"more.exe": b"x"}
    report = check_bundle(as_zip(tmp_path / "bag.zip", files, base=""), Silent())
    assert [fault.where for fault in report.faults] == ["more.exe"]


@pytest.mark.parametrize("form", PACKED)
def test_a_package_cut_short_is_refused_or_named(tmp_path: Path, form: str) -> None:
    content = random.Random(5).randbytes(40_000)
    path = PACKED[form](tmp_path / f"bag.{form}", bag_files({"a": content}))
    whole = path.read_bytes()
    for length in (0, 10, 600, len(whole) // 4, len(whole) // 2, 39_000):
        path.write_bytes(whole[:length])
        assert outcome(path)


def test_folders_without_end_are_refused(tmp_path: Path) -> None:
    bag = as_folder(tmp_path / "bag", GOOD)
    deep = bag / "data"
    for _ in range(60):
        deep /= "d"
    deep.mkdir(parents=True)
    assert "deeper than" in refused(bag)


@pytest.mark.parametrize(
    "history",
    [
        b"edit " + b"[" * 100_000 + b"\ndigest " + b"0" * 64 + b"\n",
        b'edit [1]\nchange ["originals", 1, "insert", null, 5]\ndigest x\n',
        b'edit [1, 2, {}, 7]\nchange ["originals", 1, "i", null, "[]"]\nchange {}\ndigest \n',
        b"\xff\xfe\n\0",
        b"x" * 200_000,
    ],
)
@pytest.mark.parametrize("rows", [b"[1, 2]", b"{" + b'"a":[' * 50_000, b'{"a": [{"id": {}}]}'])
def test_a_hostile_history_is_broken_and_never_an_error(
    tmp_path: Path, history: bytes, rows: bytes
) -> None:
    data = {"record/history.txt": history, "record/rows.json": rows}
    report = check_bundle(as_folder(tmp_path / "bag", bag_files(data)), Silent())
    assert "data/record/history.txt" in {fault.where for fault in report.faults}


@pytest.mark.parametrize("form", PACKED)
def test_a_package_of_spoilt_bytes_is_told_and_never_an_error(tmp_path: Path, form: str) -> None:
    path = PACKED[form](tmp_path / f"bag.{form}", GOOD)
    whole, chance = path.read_bytes(), random.Random(7)
    for _ in range(150):
        spoilt = bytearray(whole)
        for _ in range(chance.randrange(1, 6)):
            spoilt[chance.randrange(len(spoilt))] = chance.randrange(256)
        path.write_bytes(spoilt)
        outcome(path)


def outcome(path: Path) -> str:
    """What is wrong with a package, "" for nothing."""
    try:
        report = check_bundle(path, Silent())
    except JournalError as error:
        return str(error)
    return report.refused or "; ".join(fault.what for fault in report.faults)


@given(st.text(max_size=30))
def test_a_trusted_name_stays_in_its_folder(name: str) -> None:
    if not why_unsafe(name):
        assert Path(os.path.normpath("/base/" + name)).is_relative_to("/base/")
        assert "\\" not in name
        assert ":" not in name
