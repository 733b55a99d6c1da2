"""A folder put in the place of an older one: whole or not at all, and nobody's files go."""

import os
from pathlib import Path

import pytest

from journal.files.scratch import write_scratch
from journal.files.swapping import new_folder

OWN = frozenset({"index.html", "pages/a.html", "pages/old.html"})


@pytest.fixture
def target(tmp_path: Path) -> Path:
    """A folder of two files that may go, and others that may not."""
    folder = tmp_path / "album"
    for name in ("index.html", "pages/a.html", "pages/mine.txt", "notes/of me.txt"):
        write_scratch(folder / name, b"old")
    (folder / "link").symlink_to(tmp_path)
    return folder


def tree(folder: Path) -> dict[str, str]:
    return {
        path.relative_to(folder).as_posix(): "link" if path.is_symlink() else path.read_text()
        for path in sorted(folder.rglob("*"))
        if path.is_symlink() or path.is_file()
    }


KEPT = {"pages/mine.txt": "old", "notes/of me.txt": "old", "link": "link"}


def test_own_files_go_and_others_stay(target: Path) -> None:
    with new_folder(target, OWN) as made:
        write_scratch(made / "index.html", b"new")
    assert tree(target) == KEPT | {"index.html": "new"}
    assert [path.name for path in target.parent.iterdir()] == ["album"]


def test_what_is_in_the_way_is_named_and_all_is_as_it_was(target: Path) -> None:
    before = tree(target)
    with (
        pytest.raises(FileExistsError) as caught,
        new_folder(target, OWN) as made,
    ):
        write_scratch(made / "pages/mine.txt", b"new")
    assert caught.value.filename == "pages/mine.txt"
    assert tree(target) == before
    assert [path.name for path in target.parent.iterdir()] == ["album"]


@pytest.mark.parametrize("failing", range(1, 7))
def test_a_failure_at_any_move_leaves_the_old_in_its_place(
    target: Path, monkeypatch: pytest.MonkeyPatch, failing: int
) -> None:
    before, moves, replace = tree(target), [0], Path.replace

    def fails(path: Path, to: Path) -> Path:
        moves[0] += 1
        if moves[0] == failing:
            raise OSError(5, "Input/output error")
        return replace(path, to)

    monkeypatch.setattr(Path, "replace", fails)
    try:
        with new_folder(target, OWN) as made:
            write_scratch(made / "index.html", b"new")
    except OSError:
        assert tree(target) == before
    else:
        assert failing > moves[0]
        assert tree(target) == KEPT | {"index.html": "new"}
    monkeypatch.undo()
    assert [path.name for path in target.parent.iterdir()] == ["album"]


def test_everything_is_for_all_to_read(tmp_path: Path) -> None:
    with new_folder(tmp_path / "a", ()) as made:
        write_scratch(made / "pages/a.html", b"new")
    if os.name != "nt":
        assert (tmp_path / "a/pages/a.html").stat().st_mode & 0o777 == 0o644
        assert (tmp_path / "a/pages").stat().st_mode & 0o777 == 0o755
