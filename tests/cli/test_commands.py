"""Commands as a person types them: answers, messages, exit statuses."""

import json
import os
from pathlib import Path

import pytest

from journal.cli import COMMANDS
from tests.cli.conftest import Run


@pytest.fixture
def folder(run: Run, tmp_path: Path) -> Path:
    made = tmp_path / "Halden Rook"
    assert run("new", made, "--title", "Halden Rook", "--wheelbase", 2520)[0] == 0
    return made


@pytest.mark.parametrize("command", COMMANDS)
def test_every_command_explains_itself(run: Run, command: str) -> None:
    code, out, _ = run(command, "--help")
    assert code == 0
    assert "Usage: restoration-journal" in out
    if "--json" in out:
        assert "With --json:" in out or command in ("costs", "add", "photos")


def test_the_list_of_commands_is_whole(run: Run) -> None:
    code, out, _ = run("--help")
    assert code == 0
    for command, words in COMMANDS.items():
        assert command in out
        assert words in out


def test_a_slip_of_the_finger_is_status_2(run: Run, folder: Path) -> None:
    assert run("ad", folder)[0] == 2
    assert run("photos")[0] == 2
    code, out, err = run("photos", folder / "nowhere", "--json")
    assert (code, out) == (2, "")
    assert "is not a journal" in err
    assert "Traceback" not in err


def test_new_refuses_what_cannot_be_a_car(run: Run, tmp_path: Path) -> None:
    code, _, err = run("new", tmp_path / "x", "--title", "Rook", "--wheelbase", 12)
    assert code == 2
    assert "12" in err
    assert not (tmp_path / "x").exists()


def test_work_receipts_and_costs(run: Run, folder: Path, tmp_path: Path) -> None:
    paper = tmp_path / "roll.pdf"
    paper.write_bytes(b"%PDF-1.4 made up")
    code, _, err = run(
        "receipt", folder, paper, "--supplier", "Marrow & Quill", "--date", "5 March 2016",
        "--line", "Outer sill; 89.50", "--line", "Zinc primer; 2; 24,75",
        "--category", "panels and metal", "--total", "114.25",
    )  # fmt: skip
    assert code == 0, err
    code, _, err = run(
        "receipt", folder, "--supplier", "Autojumble", "--date", "2017", "--line", "Used door; 40",
        "--paper", "lost", "--condition", "used", "--currency", "gbp", "--rate", "1.2",
    )  # fmt: skip
    assert code == 0, err
    assert (
        run("work", folder, "--date", "2016-03-06", "--hours", "2h 30", "--person", "Ines")[0] == 0
    )
    code, out, err = run("costs", folder, "--json")
    rows = {row["label"]: row for row in json.loads(out)}
    assert code == 0
    assert rows["panels and metal"]["restoration"] == 11425
    total = json.loads(out)[-1]
    assert (total["restoration"], total["unproven"], total["minutes"]) == (11425 + 4800, 4800, 150)
    code, out, err = run("costs", folder, "--by", "year")
    assert code == 0
    assert "Ines: 2 h 30 min" in err
    assert "2016" in out
    assert "€114.25" in out


@pytest.mark.parametrize(
    "options",
    [
        ("--line", "no price"),
        ("--line", "part; many; 3"),
        ("--line", "part; 3", "--area", "nowhere"),
        ("--line", "part; 3", "--rate", "-1"),
        ("--line", "part; 3", "--currency", "ZZZ"),
    ],
)
def test_a_receipt_that_cannot_be_read_records_nothing(
    run: Run, folder: Path, options: tuple[str, ...]
) -> None:
    code, _, err = run("receipt", folder, "--supplier", "X", "--date", "2016", *options)
    assert code == 2
    assert err.count("\n") == 1
    assert json.loads(run("costs", folder, "--json")[1])[-1]["restoration"] == 0


def test_gaps_find_and_check_of_an_empty_journal(run: Run, folder: Path) -> None:
    code, out, _ = run("gaps", folder, "--json")
    assert code == 0
    assert {gap["target"] for gap in json.loads(out)} >= {"milestone"}
    assert run("find", folder, "bonnet", "--json")[1].count('"panel"') == 1
    code, out, err = run("check", folder, "--json")
    assert code == 0
    assert json.loads(out)["faults"] == []
    assert "all whole" in err


def test_panel_without_a_story_says_so(run: Run, folder: Path) -> None:
    code, out, _ = run("panel", folder, "left sill")
    assert code == 0
    assert "Sill, left" in out
    assert "Nothing is recorded" in out
    assert run("panel", folder, "flux capacitor")[0] == 2


def test_check_is_1_and_names_the_fault(run: Run, folder: Path) -> None:
    paper = folder.parent / "roll.pdf"
    paper.write_bytes(b"%PDF-1.4 made up")
    run("receipt", folder, paper, "--supplier", "X", "--date", "2016", "--line", "a; 1")
    (kept,) = folder.glob("originals/*/*.pdf")
    kept.chmod(0o644)
    kept.write_bytes(b"%PDF-1.4 made uq")
    code, _, err = run("check", folder)
    assert code == 1
    assert kept.name in err


def test_hours_in_one_line_of_words(run: Run, folder: Path) -> None:
    code, _, err = run("work", folder, "--person", "Runa", "3h cleaning with Edo yesterday")
    assert code == 0, err
    assert "Record 3 h by Runa and Edo" in err
    assert "no repair area" in err
    total = json.loads(run("costs", folder, "--json")[1])[-1]
    assert total["minutes"] == 360
    assert run("work", folder, "--person", "Runa", "cleaning")[0] == 2
    assert run("work", folder, "3h cleaning")[0] == 2
    assert run("work", folder, "--hours", "3")[0] == 2


def test_the_record_leaves_as_tables(run: Run, folder: Path, tmp_path: Path) -> None:
    run("receipt", folder, "--supplier", "=cmd", "--date", "2016", "--line", "a; 1.50")
    code, _, err = run("export", folder, "--out", tmp_path / "tables")
    assert code == 0, err
    document = json.loads((tmp_path / "tables" / "journal.json").read_text(encoding="utf-8"))
    assert document["lines"][0]["amount"] == "1.50"
    assert "'=cmd" in (tmp_path / "tables" / "receipts.csv").read_text(encoding="utf-8-sig")
    assert run("export", folder, "--out", folder / "tables")[0] == 2
    assert not (folder / "tables").exists()


def test_backup_and_restore(run: Run, folder: Path, tmp_path: Path) -> None:
    code, _, err = run("backup", folder, tmp_path / "safe")
    assert code == 0, err
    (made,) = (tmp_path / "safe").iterdir()
    assert run("restore", made, tmp_path / "again")[0] == 0
    assert run("check", tmp_path / "again")[0] == 0
    assert run("restore", made, tmp_path / "again")[0] == 2


def test_add_photos_and_pin_them(run: Run, folder: Path, tmp_path: Path) -> None:
    import numpy as np
    from PIL import Image

    card = tmp_path / "card"
    card.mkdir()
    for number in (1, 2):
        exif = Image.Exif()
        exif[306] = f"2016:03:05 10:00:0{number}"
        grain = np.random.default_rng(number).integers(0, 255, (60, 80, 3), np.uint8)
        Image.fromarray(grain).save(card / f"DSCF000{number}.JPG", exif=exif)
    (card / "note.jpg").write_text("not a picture")
    code, out, err = run("add", folder, card, "--json")
    report = json.loads(out)
    assert code == 1
    assert [len(report[key]) for key in ("added", "already", "skipped", "refused")] == [2, 0, 0, 1]
    assert "note.jpg" in err
    code, out, _ = run("add", folder, card / "DSCF0001.JPG", "--json")
    assert (code, len(json.loads(out)["already"])) == (0, 1)
    assert (
        run("pin", folder, "DSCF0002.JPG", "sill left", "--at", "2000,900", "--view", "left side")[
            0
        ]
        == 0
    )
    assert run("pin", folder, "DSCF0002.JPG", "sill left", "--at", "2000")[0] == 2
    code, out, _ = run("photos", folder, "--json")
    rows = json.loads(out)
    assert [row["name"] for row in rows] == ["DSCF0001.JPG", "DSCF0002.JPG"]
    assert rows[1]["panels"] == ["Sill, left"]
    assert rows[1]["earliest"] == "2016-03-05T10:00:02"
    assert rows[1]["width"] == 80
    code, out, _ = run("photos", folder)
    assert out.splitlines()[2].split()[-1] == "DSCF0002.JPG"
    assert "Sill, left" in out


def test_an_area_named_twice_has_one_share(run: Run, folder: Path) -> None:
    from journal.actions.areas import add_area
    from journal.actions.journals import open_journal
    from journal.domain.ids import PanelId

    with open_journal(folder) as session:
        add_area(session, "Sill", [PanelId(1)])
    twice = ("--area", "Sill", "--area", "sill")
    assert run("work", folder, "--date", "2016", "--hours", 2, "--person", "Ines", *twice)[0] == 0
    bought = ("--supplier", "X", "--date", "2016", "--line", "Primer; 2,5; 9")
    assert run("receipt", folder, *bought, *twice)[0] == 0
    (row,) = json.loads(run("costs", folder, "--by", "area", "--json")[1])[:-1]
    assert (row["label"], row["restoration"], row["minutes"]) == ("Sill", 900, 120)


def test_a_word_that_is_no_path_is_no_journal_and_no_command(run: Run) -> None:
    from journal.__main__ import asks_for_window

    assert not asks_for_window(["x" * 5000])
    assert run("x" * 5000)[0] == 2


@pytest.mark.skipif(os.name == "nt", reason="Windows has no such rights")
def test_a_folder_that_is_closed_to_us_is_named_and_the_rest_comes_in(
    run: Run, folder: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    from tests.intake.made import jpeg

    closed, photo = tmp_path / "closed", tmp_path / "IMG_0001.JPG"
    closed.mkdir()
    photo.write_bytes(jpeg("2016:03:05 14:00:00", seed=1))
    ask, scan = os.access, os.scandir

    def scandir(path: str | Path) -> object:
        if Path(path) == closed:
            raise PermissionError(13, "Permission denied", str(path))
        return scan(path)

    # Rights mean nothing to root, so the system's answers are stood in for.
    monkeypatch.setattr(os, "access", lambda path, mode: Path(path) != closed and ask(path, mode))
    monkeypatch.setattr(os, "scandir", scandir)
    code, out, err = run("add", folder, closed, photo, "--json")
    assert code == 1
    assert len(json.loads(out)["added"]) == 1
    assert "ermission denied" in err


def test_no_words_of_a_journal_steer_the_terminal(run: Run, folder: Path) -> None:
    odd = "\x1b]0;title\x07\x9b31m red\rover\nnext"
    assert run("worth", folder, "1", "--by", odd, "--note", odd)[0] == 0
    assert run("wanted", folder, "add", odd)[0] == 0
    said = [run("worth", folder), run("find", folder, "title"), run("work", folder, odd)]
    for _, out, err in said:
        assert not [sign for sign in out + err if sign not in "\n\t" and not sign.isprintable()]
    assert "␛]0;title␇" in said[0][1]
    document = run("worth", folder, "--json")[1]
    assert "\x9b" not in document
    assert json.loads(document)["valuations"][0]["by"] == odd
