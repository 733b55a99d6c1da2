import os
from pathlib import Path

import pytest

from journal.intake.walking import walk


@pytest.fixture
def folder(tmp_path):
    """A card as phones and cameras leave it."""
    top = tmp_path / "card"
    for name in (
        "b/IMG_0002.JPG", "b/IMG_0001.HEIC", "b/IMG_0001.MOV", "b/IMG_0001.AAE", "b/IMG_0003.MOV",
        "b/IMG_0002.XMP", "a/MVI_0001.THM", "a/MVI_0001.MP4", "a/notes.txt", "Thumbs.db",
        ".DS_Store", "._IMG_0002.JPG", ".trash/old.jpg", "z.jpg",
    ):  # fmt: skip
        path = top / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(b"x")
    return top


def names(paths, top):
    return [path.relative_to(top).as_posix() for path in paths]


def test_files_come_in_order_and_companions_are_named_as_skipped(folder):
    found = walk([folder])
    assert names(found.files, folder) == [
        "z.jpg", "a/MVI_0001.MP4", "a/notes.txt", "b/IMG_0001.HEIC", "b/IMG_0002.JPG",
        "b/IMG_0003.MOV",
    ]  # fmt: skip
    reasons = {left.path.name: left.reason for left in found.skipped}
    assert "edits" in reasons["IMG_0001.AAE"]
    assert "notes" in reasons["IMG_0002.XMP"]
    assert "preview of a film" in reasons["MVI_0001.THM"]
    assert "film that belongs to the photo" in reasons["IMG_0001.MOV"]
    assert all("system" in reasons[n] for n in ("Thumbs.db", ".DS_Store", "._IMG_0002.JPG"))
    assert not found.refused
    assert not found.named


def test_a_film_of_its_own_is_no_companion(folder):
    assert "b/IMG_0003.MOV" in names(walk([folder]).files, folder)
    alone = walk([folder / "b" / "IMG_0001.MOV"])
    assert alone.files == [folder / "b" / "IMG_0001.MOV"]


def test_links_in_a_folder_are_not_followed(folder, tmp_path):
    outside = tmp_path / "outside"
    outside.mkdir()
    (outside / "secret.jpg").write_bytes(b"x")
    (folder / "link.jpg").symlink_to(outside / "secret.jpg")
    (folder / "out").symlink_to(outside)
    (folder / "round").symlink_to(folder)
    (folder / "broken.jpg").symlink_to(folder / "nowhere")
    found = walk([folder])
    assert not any("secret" in str(path) for path in found.files)
    links = {left.path.name for left in found.skipped if left.reason == "it is a link"}
    assert links == {"link.jpg", "out", "round", "broken.jpg"}


def test_what_is_named_twice_comes_once(folder):
    photo = folder / "z.jpg"
    found = walk([photo, folder, photo])
    assert found.files.count(photo) == 1
    assert found.named == {photo}


def test_what_cannot_be_read_is_named_with_the_reason(folder, tmp_path):
    found = walk([tmp_path / "nowhere.jpg", Path("x" * 10_000), Path("a\0b"), folder / "z.jpg"])
    assert len(found.refused) == 3
    assert "no such file" in found.refused[0].reason
    assert found.files == [folder / "z.jpg"]


@pytest.mark.skipif(os.name == "nt" or os.geteuid() == 0, reason="root may read everything")
def test_a_locked_folder_does_not_stop_the_walk(folder):
    (folder / "a").chmod(0)
    try:
        found = walk([folder])
    finally:
        (folder / "a").chmod(0o755)
    assert [left.path.name for left in found.refused] == ["a"]
    assert "b/IMG_0002.JPG" in names(found.files, folder)


def test_a_folder_that_cannot_be_listed_does_not_stop_the_walk(folder, monkeypatch):
    real = os.scandir

    def scandir(path):
        if Path(path).name == "a":
            raise PermissionError(13, "Permission denied")
        return real(path)

    monkeypatch.setattr(os, "scandir", scandir)
    found = walk([folder])
    assert [(left.path.name, left.reason) for left in found.refused] == [
        ("a", "it can't be read: permission denied")
    ]
    assert "b/IMG_0002.JPG" in names(found.files, folder)


@pytest.mark.skipif(os.name == "nt", reason="Windows names are Unicode")
def test_names_that_are_not_utf_8_are_walked(tmp_path):
    odd = tmp_path / os.fsdecode(b"Schweller_\xfc.jpg")
    odd.write_bytes(b"x")
    assert os.fsencode(walk([tmp_path]).files[0].name) == b"Schweller_\xfc.jpg"


def test_a_journal_inside_the_folder_is_left_alone(folder):
    inside = folder / "Halden Rook"
    (inside / "originals" / "ab").mkdir(parents=True)
    (inside / "journal.db").write_bytes(b"")
    (inside / "originals" / "ab" / "abcd.jpg").write_bytes(b"x")
    found = walk([folder])
    assert not any("abcd" in path.name for path in found.files)
    assert (inside, "it is the folder of a journal") in {(s.path, s.reason) for s in found.skipped}


def test_a_folder_whose_files_cannot_be_asked_about_does_not_stop_the_walk(folder, monkeypatch):
    closed = folder / "closed"
    closed.mkdir()
    ask = Path.is_file

    def is_file(path: Path) -> bool:
        if path.parent == closed:
            raise PermissionError(13, "Permission denied")
        return ask(path)

    before = len(walk([folder]).files)
    monkeypatch.setattr(Path, "is_file", is_file)
    found = walk([folder])
    assert len(found.files) == before
    assert [left.path for left in found.refused] == [closed]
