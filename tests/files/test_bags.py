"""Writing a bag: read once, hashed twice, and nothing under the name before it is whole."""

import hashlib
import io
import os
import random
import tarfile
import zipfile
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from journal.files import bags, copying
from journal.files.ahead import in_order
from journal.files.bags import Wanted, new_bag

FORMS = ("folder", "zip", "tar")


def nothing(_done: int) -> None:
    """Neither progress nor a way to stop."""


def content_of(path: Path, form: str) -> dict[str, bytes]:
    """Every file of a finished bag, as other programs read it."""
    if form == "zip":
        with zipfile.ZipFile(path) as archive:
            assert archive.testzip() is None
            return {name: archive.read(name) for name in archive.namelist()}
    if form == "tar":
        with tarfile.open(path) as archive:
            members = {one.name: archive.extractfile(one) for one in archive}
            return {name: member.read() for name, member in members.items() if member}
    return {
        f"base/{file.relative_to(path).as_posix()}": file.read_bytes()
        for file in path.rglob("*")
        if file.is_file()
    }


@settings(max_examples=12, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(sizes=st.lists(st.integers(0, 1_200_000), max_size=5), form=st.sampled_from(FORMS))
def test_what_goes_in_is_what_other_programs_read(
    tmp_path_factory: pytest.TempPathFactory, sizes: list[int], form: str
) -> None:
    folder = tmp_path_factory.mktemp("bag")
    chance = random.Random(sum(sizes))
    files = {f"data/{n}.bin": chance.randbytes(size) for n, size in enumerate(sizes)}
    wanted = []
    for path, content in files.items():
        source = folder / Path(path).name
        source.write_bytes(content)
        wanted.append(Wanted(path, source, hashlib.sha256(content).hexdigest()))
    out = folder / "out"
    with new_bag(out, form, "base") as bag:
        assert not out.exists()
        assert bag.copy(wanted, nothing) == []
        bag.put("tag.txt", b"tag\n")
    assert content_of(out, form) == {
        f"base/{path}": content for path, content in (files | {"tag.txt": b"tag\n"}).items()
    }
    for path, content in files.items():
        assert bag.digests[path].sha512 == hashlib.sha512(content).hexdigest()
        assert bag.digests[path].size == len(content)


@pytest.mark.parametrize("form", FORMS)
def test_each_file_is_read_once(tmp_path: Path, form: str, monkeypatch: pytest.MonkeyPatch) -> None:
    source = tmp_path / "a.bin"
    source.write_bytes(random.Random(1).randbytes(3_000_000))
    read = []
    real = bags._read

    def count(handle: io.FileIO, room: memoryview) -> int:
        read.append(real(handle, room))
        return read[-1]

    monkeypatch.setattr(bags, "_read", count)
    with new_bag(tmp_path / "out", form, "base") as bag:
        bag.copy([Wanted("data/a.bin", source)], nothing)
    assert sum(read) == 3_000_000


@pytest.mark.parametrize("form", FORMS)
def test_a_file_too_large_to_be_held_comes_in_all_the_same(
    tmp_path: Path, form: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(bags, "_HELD", 1000)
    source = tmp_path / "film.mp4"
    source.write_bytes(random.Random(2).randbytes(700_000))
    with new_bag(tmp_path / "out", form, "base") as bag:
        assert bag.copy([Wanted("data/film.mp4", source)], nothing) == []
    assert content_of(tmp_path / "out", form)["base/data/film.mp4"] == source.read_bytes()


@pytest.mark.parametrize("form", FORMS)
def test_what_is_gone_altered_or_no_file_is_left_out_with_the_reason(
    tmp_path: Path, form: str
) -> None:
    good, altered, pipe = tmp_path / "good", tmp_path / "altered", tmp_path / "pipe"
    good.write_bytes(b"good")
    altered.write_bytes(b"altered")
    os.mkfifo(pipe)
    other = hashlib.sha256(b"as it was").hexdigest()
    wanted = [
        Wanted("data/gone", tmp_path / "gone"),
        Wanted("data/altered", altered, other),
        Wanted("data/pipe", pipe),
        Wanted("data/good", good),
    ]
    with new_bag(tmp_path / "out", form, "base") as bag:
        left = bag.copy(wanted, nothing)
    reasons = {one.path: reason for one, reason in left}
    assert "no such file" in reasons["data/gone"].lower()
    assert "altered since it came in" in reasons["data/altered"]
    assert "not an ordinary file" in reasons["data/pipe"]
    assert set(content_of(tmp_path / "out", form)) == {"base/data/good"}
    assert set(bag.digests) == {"data/good"}


@pytest.mark.parametrize("form", FORMS)
def test_it_is_on_the_disk_before_it_has_its_name(
    tmp_path: Path, form: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    flushed: list[int] = []
    real_fsync, real_replace = os.fsync, Path.replace

    def fsync(descriptor: int) -> None:
        flushed.append(os.fstat(descriptor).st_ino)
        real_fsync(descriptor)

    def replace(path: Path, target: Path) -> Path:
        inside = [path, *path.rglob("*")] if path.is_dir() else [path]
        assert {one.stat().st_ino for one in inside} <= set(flushed)
        return real_replace(path, target)

    monkeypatch.setattr(os, "fsync", fsync)
    monkeypatch.setattr(Path, "replace", replace)
    with new_bag(tmp_path / "out", form, "base") as bag:
        for number in range(3):
            bag.put(f"data/folder {number}/a.txt", b"a")
    assert (tmp_path / "out").exists()


def test_results_come_in_order_and_a_fault_where_it_belongs() -> None:
    def work(number: int) -> int:
        if number == 7:
            raise copying.SourceError("seven")
        return number * 2

    results = in_order(work, range(100), ahead=3)
    assert [next(results) for _ in range(7)] == [(n, 2 * n) for n in range(7)]
    with pytest.raises(copying.SourceError, match="seven"):
        next(results)
    assert list(in_order(work, [])) == []
