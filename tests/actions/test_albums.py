"""The album's folder: made whole, made anew, and refused where anything of somebody's would go."""

import io
import json
import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from PIL import Image

from journal.actions import areas, covers, history, photos
from journal.actions.albums import album_place, make_album
from journal.actions.session import Session
from journal.cli import _run
from journal.domain.albums import MARKER, START_PAGE
from journal.domain.cuts import Cut, Part, usual
from journal.domain.errors import Cancelled, JournalError
from journal.domain.photos import Role
from journal.domain.private_words import Private
from journal.files import scratch
from tests.actions.bundled import small_journal
from tests.files.faults import FullDisk, full_disk

__all__ = ["full_disk"]

#: Everything but charts, for which a large library would be loaded.
OWN = usual(Cut.OWN).with_part(Part.MONEY, wanted=False).with_part(Part.HOURS, wanted=False)


@pytest.fixture
def session(tmp_path: Path) -> Iterator[Session]:
    with small_journal(tmp_path / "j") as made:
        area = made.journal.areas.all()[0]
        for photo in made.journal.photos.all():
            areas.choose_photos(made, area.id, [photo.id], Role.DURING)
        yield made


def tree(folder: Path) -> dict[str, bytes]:
    return {
        p.relative_to(folder).as_posix(): p.read_bytes() for p in folder.rglob("*") if p.is_file()
    }


def test_an_album_is_made_anew_in_its_own_folder_and_nobodys_file_goes(
    session: Session, tmp_path: Path
) -> None:
    out = tmp_path / "of mine" / "album"
    report = make_album(session, out, choices=OWN)
    assert (report.path, report.photos, report.notes) == (out, 3, ())
    assert (out / START_PAGE).is_file()
    assert len(list((out / "pages").glob("photo-*.html"))) == 3
    (out / "mine.txt").write_text("mine")
    photos.remove_photos(session, [session.journal.photos.all()[0].id])
    again = make_album(session, out, choices=OWN)
    assert again.photos == 2
    assert len(list((out / "pages").glob("photo-*.html"))) == 2, "a removed photo is gone"
    assert (out / "mine.txt").read_text() == "mine"
    assert [path.name for path in out.parent.iterdir()] == ["album"]
    history.undo(session)
    assert make_album(session, out, choices=OWN).photos == 3


def test_a_page_changed_by_hand_is_named_and_left(session: Session, tmp_path: Path) -> None:
    out = tmp_path / "album"
    make_album(session, out, choices=OWN)
    (out / "look" / "album.css").write_text("mine")
    before = tree(out)
    with pytest.raises(JournalError, match=r"look/album\.css"):
        make_album(session, out, choices=OWN)
    assert tree(out) == before


@pytest.mark.parametrize(
    "marker",
    [
        None,
        "",
        "[]",
        "{}",
        '{"made_by": "Other", "files": {}}',
        '{"made_by": "Restoration Journal", "files": []}',
        "[" * 9999,
    ],
)
def test_a_folder_of_somebodys_is_left_alone(
    session: Session, tmp_path: Path, marker: str | None
) -> None:
    out = tmp_path / "Pictures"
    out.mkdir()
    (out / "holiday.jpg").write_bytes(b"x")
    if marker is not None:
        (out / MARKER).write_text(marker)
    before = tree(out)
    with pytest.raises(JournalError, match="holds something already"):
        make_album(session, out)
    assert tree(out) == before


def test_a_marker_that_lists_files_outside_has_none_of_them_gone(
    session: Session, tmp_path: Path
) -> None:
    out, other = tmp_path / "album", tmp_path / "other.txt"
    make_album(session, out, choices=OWN)
    other.write_text("mine")
    listed = json.loads((out / MARKER).read_text())
    listed["files"]["../other.txt"] = "0" * 64
    (out / MARKER).write_text(json.dumps(listed))
    make_album(session, out, choices=OWN)
    assert other.read_text() == "mine"


def test_places_that_can_not_be_are_refused_in_words(session: Session, tmp_path: Path) -> None:
    file, link = tmp_path / "file", tmp_path / "link"
    file.write_text("mine")
    link.symlink_to(tmp_path)
    for out in (session.folder, session.folder / "album", session.folder / "originals" / "a"):
        with pytest.raises(JournalError, match="inside the journal"):
            make_album(session, out)
    for out in (file, link):
        with pytest.raises(JournalError, match="no folder"):
            make_album(session, out)
    for out in (file / "album", tmp_path / "a\0b", tmp_path / ("x" * 300)):
        with pytest.raises(JournalError):
            make_album(session, out)
    assert file.read_text() == "mine"


@pytest.mark.parametrize("at", [1, 3, 9, 20])
def test_a_full_disk_leaves_nothing_of_it_and_an_older_one_as_it_was(
    session: Session, tmp_path: Path, full_disk: FullDisk, monkeypatch: pytest.MonkeyPatch, at: int
) -> None:
    monkeypatch.setattr(scratch, "write_all", full_disk.write_all)
    out = tmp_path / "of mine" / "album"
    full_disk.fill(at)
    with pytest.raises(JournalError, match="No space left"):
        make_album(session, out, choices=OWN)
    assert list(out.parent.iterdir()) == []
    full_disk.fill(0)
    make_album(session, out, choices=OWN)
    before = tree(out)
    full_disk.fill(at)
    with pytest.raises(JournalError, match="No space left"):
        make_album(session, out, choices=OWN)
    assert tree(out) == before
    assert [path.name for path in out.parent.iterdir()] == ["album"]


class Stops:
    """Asks to stop at the n-th whole item, and keeps what was reported."""

    def __init__(self, at: int) -> None:
        self.left = at
        self.seen: set[str] = set()

    def report(self, _done: int, _total: int, label: str) -> None:
        self.seen.add(label)

    def checkpoint(self) -> None:
        self.left -= 1
        if not self.left:
            raise Cancelled


@pytest.mark.parametrize("at", [1, 3, 6])
def test_stopping_leaves_nothing(session: Session, tmp_path: Path, at: int) -> None:
    out = tmp_path / "of mine" / "album"
    with pytest.raises(Cancelled):
        make_album(session, out, Stops(at), OWN)
    assert list(out.parent.iterdir()) == []
    told = Stops(0)
    make_album(session, out, told, OWN)
    assert told.seen == {"Preparing pictures", "Writing pages"}


def test_boxes_are_burnt_into_both_sizes_and_the_original_is_as_it_was(
    session: Session, tmp_path: Path
) -> None:
    photo = session.journal.photos.all()[0]
    covers.add_cover(session, photo, (0.0, 0.0, 1.0, 1.0), Private.PLATE)
    before = tree(session.folder / "originals")
    make_album(session, tmp_path / "a", choices=usual(Cut.BUYER))
    covered = 0
    for path in (tmp_path / "a" / "photos").iterdir():
        with Image.open(io.BytesIO(path.read_bytes())) as image:
            covered += image.convert("RGB").getextrema() == ((96, 96),) * 3
    assert covered == 2
    assert tree(session.folder / "originals") == before


def test_a_title_with_slashes_makes_a_name_in_the_folder(tmp_path: Path) -> None:
    place = album_place(tmp_path, "../../etc/<Rook> 1500: A/B\\C?")
    assert place.parent == tmp_path
    assert "/" not in place.name
    place.mkdir()
    assert album_place(tmp_path, "../../etc/<Rook> 1500: A/B\\C?") != place


def test_by_command_a_buyers_album_names_what_it_could_not_show(
    session: Session, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    shutil.rmtree(session.folder / "originals")
    folder = str(session.folder)
    session.close()
    asked = ("album", folder, "--out", str(tmp_path / "a"), "--tell", "prices", "--json")
    assert _run(list(asked)) == 0
    said = json.loads(capsys.readouterr().out)
    assert said["photos"] == 0
    assert len(said["notes"]) == 3
    assert Path(said["start"]).is_file()
    assert not any(words.startswith("Prices") for words in said["withheld"])
    assert _run(["album", folder, "--out", folder]) == 2
    assert "inside the journal" in capsys.readouterr().err
