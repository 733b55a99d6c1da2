"""A whole first evening by commands: from a folder of photos to a page a buyer can read."""

import json
import subprocess
import sys
from pathlib import Path

import pypdfium2
import pytest

from journal.demo.write import DemoPicture, write_pictures
from journal.domain.progress import Silent


def run(*words: object) -> tuple[int, str, str]:
    """A command in a process of its own, as a person's shell starts it."""
    done = subprocess.run(
        [sys.executable, "-m", "journal", *map(str, words)],
        capture_output=True,
        text=True,
        encoding="utf-8",
        check=False,
    )
    return done.returncode, done.stdout, done.stderr


@pytest.fixture(scope="module")
def pictures(tmp_path_factory: pytest.TempPathFactory) -> tuple[DemoPicture, ...]:
    return write_pictures(tmp_path_factory.mktemp("phone"), Silent(), 14)


@pytest.mark.slow
def test_first_evening(pictures: tuple[DemoPicture, ...], tmp_path: Path) -> None:
    journal = tmp_path / "Halden Rook"
    assert run("new", journal, "--title", "Halden Rook", "--wheelbase", 2520)[0] == 0
    shown = add(journal, pictures)
    pin(journal, pictures, shown)
    record(journal, tmp_path / "invoice.pdf")
    read(journal, unplaced=len(pictures) - 3)
    print_dossier(journal, tmp_path / "dossier.pdf")
    assert run("backup", journal, tmp_path / "safe")[0] == 0
    (copy,) = (tmp_path / "safe").iterdir()
    code, _, err = run("check", copy)
    assert code == 0, err


def add(journal: Path, pictures: tuple[DemoPicture, ...]) -> dict[str, dict[str, object]]:
    code, out, err = run("add", journal, *{picture.path.parent for picture in pictures}, "--json")
    assert code == 0, err
    report = json.loads(out)
    assert len(report["added"]) == len(pictures)
    assert report["refused"] == []
    rows = {row["name"]: row for row in json.loads(run("photos", journal, "--json")[1])}
    for picture in pictures:
        row = rows[picture.path.name]
        if picture.shown_time and row["basis"] == "camera":
            assert row["earliest"][:19] == picture.shown_time.isoformat()[:19]
    return rows


def pin(
    journal: Path, pictures: tuple[DemoPicture, ...], shown: dict[str, dict[str, object]]
) -> None:
    for picture in pictures[:3]:
        assert run("pin", journal, shown[picture.path.name]["id"], "Sill, left")[0] == 0
    assert run("pin", journal, pictures[0].path.name, "sil lft")[0] == 2


def record(journal: Path, paper: Path) -> None:
    paper.write_bytes(b"%PDF-1.4 made up")
    code, _, err = run(
        "receipt", journal, paper, "--supplier", "Grelling Panels", "--date", "6 November 2018",
        "--line", "Outer sill; 1; 89.50", "--category", "panels and metal",
    )  # fmt: skip
    assert code == 0, err
    day = ("--date", "2018-11-17", "--hours", "3:30", "--person", "Runa Mellgard")
    assert run("work", journal, *day, "--note", "sill clamped and set")[0] == 0


def read(journal: Path, unplaced: int) -> None:
    story = json.loads(run("panel", journal, "left sill", "--json")[1])
    assert "photos" in {event["kind"] for event in story}
    hits = json.loads(run("find", journal, "clamped", "--json")[1])
    assert [hit["kind"] for hit in hits] == ["work"]
    assert json.loads(run("costs", journal, "--json")[1])[-1]["restoration"] == 8950
    gaps = json.loads(run("gaps", journal, "--json")[1])
    assert unplaced in {len(gap["photos"]) for gap in gaps}


def print_dossier(journal: Path, dossier: Path) -> None:
    code, _, err = run("dossier", journal, "--out", dossier)
    assert code == 0, err
    pages = pypdfium2.PdfDocument(dossier)
    text = "\n".join(page.get_textpage().get_text_bounded() for page in pages)
    pages.close()
    assert "Halden Rook" in text
    assert "89.50" in text
