from pathlib import Path

import pytest

from journal.files.scratch import scratch_folder, write_scratch


def test_a_scratch_folder_goes_with_all_in_it() -> None:
    with scratch_folder("test") as folder:
        write_scratch(folder / "a.bin", b"\x00\xff" * 1000)
        assert (folder / "a.bin").read_bytes() == b"\x00\xff" * 1000
    assert not folder.exists()


def test_a_scratch_folder_goes_when_the_work_fails() -> None:
    left: list[Path] = []

    def work() -> None:
        with scratch_folder("test") as folder:
            left.append(folder)
            write_scratch(folder / "a.bin", b"x")
            raise KeyError

    with pytest.raises(KeyError):
        work()
    assert not left[0].exists()


def test_a_scratch_file_never_replaces_another(tmp_path: Path) -> None:
    write_scratch(tmp_path / "a", b"one")
    with pytest.raises(FileExistsError):
        write_scratch(tmp_path / "a", b"two")
    assert (tmp_path / "a").read_bytes() == b"one"
