import os
import stat

import pytest

from journal.files.durable import (
    move_into_place,
    open_temporary,
    sync_files,
    sync_folder,
    write_all,
    write_atomically,
)
from tests.files.faults import FullDisk


def test_what_is_written_is_what_is_read(tmp_path):
    target = tmp_path / "settings.json"
    write_atomically(target, b"old")
    write_atomically(target, b"new and longer")
    assert target.read_bytes() == b"new and longer"
    assert [p.name for p in tmp_path.iterdir()] == ["settings.json"]


def test_the_permissions_of_a_file_outlive_its_replacement(tmp_path):
    target = tmp_path / "settings.json"
    write_atomically(target, b"one")
    target.chmod(0o600)
    write_atomically(target, b"two")
    assert stat.S_IMODE(target.stat().st_mode) == 0o600


@pytest.mark.parametrize("short", [True, False])
def test_a_full_disk_leaves_the_old_content_and_no_rubbish(tmp_path, full_disk: FullDisk, short):
    target = tmp_path / "settings.json"
    write_atomically(target, b"old")
    full_disk.short = short
    full_disk.fill(at=1)
    with pytest.raises(OSError, match="No space left"):
        write_atomically(target, b"new")
    assert target.read_bytes() == b"old"
    assert [p.name for p in tmp_path.iterdir()] == ["settings.json"]


def test_the_content_is_flushed_before_the_name_and_the_name_before_the_return(
    tmp_path, monkeypatch
):
    order = []
    fsync, replace = os.fsync, type(tmp_path).replace

    def note_fsync(descriptor):
        order.append("folder" if stat.S_ISDIR(os.fstat(descriptor).st_mode) else "file")
        fsync(descriptor)

    def note_replace(path, target):
        order.append("name")
        return replace(path, target)

    monkeypatch.setattr(os, "fsync", note_fsync)
    monkeypatch.setattr(type(tmp_path), "replace", note_replace)
    write_atomically(tmp_path / "a", b"x")
    assert order == ["file", "name", "folder"]


def test_a_write_that_the_system_cuts_short_is_carried_on(tmp_path, monkeypatch):
    descriptor, path = open_temporary(tmp_path)
    real = os.write
    monkeypatch.setattr(os, "write", lambda fd, data: real(fd, memoryview(data)[:7]))
    write_all(descriptor, bytes(range(256)))
    os.close(descriptor)
    assert path.read_bytes() == bytes(range(256))


def test_a_staged_file_ends_read_only_under_its_name(tmp_path):
    descriptor, staged = open_temporary(tmp_path)
    write_all(descriptor, b"picture")
    os.close(descriptor)
    target = tmp_path / "originals" / "ab" / "abcd.jpg"
    sync_files([staged])
    move_into_place(staged, target)
    sync_folder(target.parent)
    assert target.read_bytes() == b"picture"
    assert not target.stat().st_mode & (stat.S_IWUSR | stat.S_IWGRP | stat.S_IWOTH)
    assert not staged.exists()
