"""From photos of one repair to what a stranger holds: dossiers, bundle, check and album."""

import json
import zipfile
from hashlib import sha256
from pathlib import Path
from typing import Any

import pypdfium2
import pytest

from journal import cli
from journal.actions.areas import add_area, choose_photos, move_to_stage
from journal.actions.drawings import find_panel
from journal.actions.journals import open_journal
from journal.actions.photos import all_photos
from journal.actions.pins import pin
from journal.demo.write import write_pictures
from journal.domain.ids import AreaId
from journal.domain.photos import Role
from journal.domain.progress import Silent
from journal.domain.when import parse

_PRIVATE = "Quarrymouth"


class Shell:
    """Commands typed one after another."""

    def __init__(self, capsys: pytest.CaptureFixture[str]) -> None:
        self.capsys = capsys

    def run(self, *words: object, status: int = 0) -> str:
        """What a command answers; it has to end with ``status``."""
        with pytest.raises(SystemExit) as left:
            cli.main([str(word) for word in words])
        out, err = self.capsys.readouterr()
        assert left.value.code == status, err
        return out


@pytest.fixture
def shell(capsys: pytest.CaptureFixture[str]) -> Shell:
    return Shell(capsys)


@pytest.mark.slow
def test_what_an_owner_gives_away_can_be_checked_by_a_stranger(
    shell: Shell, tmp_path: Path
) -> None:
    journal = made_journal(shell, tmp_path)
    for cut in ("buyer", "valuer", "own"):
        dossier(shell, journal, cut, tmp_path / f"{cut}.pdf")
    bundle = tmp_path / "bundle.zip"
    made = json.loads(
        shell.run("bundle", journal, "--for", "own", "--sign", "--out", bundle, "--json")
    )
    assert made["originals"] == 12
    assert made["missing"] == []
    assert checked(shell, bundle, status=0)["signature"]["good"]
    for part in ("data/dossier.pdf", "data/record/record.json", original_in(bundle)):
        spoilt = flipped(bundle, part)
        assert part in {fault["where"] for fault in checked(shell, spoilt, status=1)["faults"]}
    album(shell, journal, tmp_path / "album")
    one_original_lost(shell, journal, tmp_path)


def made_journal(shell: Shell, tmp_path: Path) -> Path:
    """A journal of twelve photos with one repair area, finished, and a pair kept."""
    journal, phone = tmp_path / "journal", tmp_path / "phone"
    write_pictures(phone, Silent(), 12)
    shell.run("new", journal, "--title", "Halden Rook")
    shell.run("add", journal, phone)
    with open_journal(journal) as session:
        photos = all_photos(session)
        panel = find_panel(session, "Sill, left").id
        pin(session, [photo.id for photo in photos[:6]], panel)
        words = f"Holes behind the jacking point; asked at {_PRIVATE} first."
        made = add_area(session, "Sill, left: outer", [panel], words, parse("2018-04")).made
        assert isinstance(made, int)
        area = AreaId(made)
        move_to_stage(session, area, "finished", parse("2021-07"))
        for number, role in enumerate((Role.BEFORE, Role.DURING, Role.AFTER)):
            choose_photos(session, area, [photos[number].id], role)
        pair = photos[0].id, photos[2].id
    shell.run("pair", journal, "outer", *pair, "--side-by-side")
    shell.run("private", journal, _PRIVATE, "--as", "other words")
    return journal


def dossier(shell: Shell, journal: Path, cut: str, out: Path) -> None:
    told = json.loads(shell.run("dossier", journal, "--for", cut, "--out", out, "--json"))
    with pypdfium2.PdfDocument(out) as pdf:
        words = "\n".join(page.get_textpage().get_text_range() for page in pdf)
        assert len(pdf) == told["pages"]
    assert "Sill, left: outer" in words
    assert (_PRIVATE in words) == (cut == "own")
    assert told["notes"] == []


def album(shell: Shell, journal: Path, out: Path) -> None:
    told = json.loads(shell.run("album", journal, "--out", out, "--json"))
    assert Path(told["start"]).is_file()
    pages = [page.read_text("utf-8") for page in out.rglob("*.html")]
    assert len(pages) == told["pages"]
    assert not any(_PRIVATE in page for page in pages)


def one_original_lost(shell: Shell, journal: Path, tmp_path: Path) -> None:
    """It is named by the dossier and the bundle, which go on, and by the check."""
    rows = json.loads(shell.run("photos", journal, "--json"))
    lost = next(
        path
        for path in (journal / "originals").rglob("*")
        if path.is_file() and sha256(path.read_bytes()).hexdigest() == rows[0]["sha256"]
    )
    lost.unlink()
    told = json.loads(shell.run("dossier", journal, "--out", tmp_path / "less.pdf", "--json"))
    assert any(rows[0]["name"] in note for note in told["notes"])
    less = tmp_path / "less.tar"
    told = json.loads(
        shell.run("bundle", journal, "--for", "own", "--out", less, "--json", status=1)
    )
    (missing,) = told["missing"]
    assert f"The original is missing (SHA-256 {rows[0]['sha256']})" in missing["what"]
    told = checked(shell, less, status=0)
    assert any("data/missing.txt" in note for note in told["notes"])
    faults = json.loads(shell.run("check", journal, "--json", status=1))["faults"]
    assert any(lost.name in fault["where"] for fault in faults)


def checked(shell: Shell, bundle: Path, *, status: int) -> Any:
    return json.loads(shell.run("check", bundle, "--json", status=status))


def original_in(bundle: Path) -> str:
    with zipfile.ZipFile(bundle) as packed:
        return next(name for name in inner(packed) if name.startswith("data/originals/photos/"))


def inner(packed: zipfile.ZipFile) -> list[str]:
    """Names in a packed bundle, seen from the bundle's own folder."""
    return [name.partition("/")[2] for name in packed.namelist()]


def flipped(bundle: Path, part: str) -> Path:
    """A copy of a packed bundle in which one bit of one file is another."""
    spoilt = bundle.with_name("spoilt.zip")
    with zipfile.ZipFile(bundle) as packed, zipfile.ZipFile(spoilt, "w") as copy:
        for info in packed.infolist():
            data = bytearray(packed.read(info))
            if info.filename.partition("/")[2] == part:
                data[len(data) // 2] ^= 1
            copy.writestr(info, bytes(data))
    return spoilt
