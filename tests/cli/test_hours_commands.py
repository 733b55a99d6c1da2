"""Clock, people and hours from photos as a person types them."""

import json
from pathlib import Path

import pytest

from journal.actions import hours
from journal.actions.journals import open_journal
from journal.domain.work import WorkBasis
from tests.cli.conftest import Run
from tests.desktop import workshop
from tests.intake.made import jpeg


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    with workshop.furnished(tmp_path) as session:
        return session.folder


def test_clock_on_show_and_off(run: Run, folder: Path) -> None:
    on = ("--person", "Iris", "--area", "Boot lid lip", "--at", "yesterday 09:00")
    assert run("clock", folder, "on", *on) == (0, "", "Clock Iris on.\n")
    code, out, _ = run("clock", folder, "show", "--json")
    (shown,) = json.loads(out)
    assert (code, shown["person"], len(shown["areas"])) == (0, "Iris", 1)
    assert "T09:00:00" in shown["started"]
    assert "yesterday 09:00" in run("clock", folder, "show")[1]
    assert run("clock", folder, "off", "--person", "Tom")[::2] == (2, "No clock runs for Tom.\n")
    code, _, err = run("clock", folder, "off", "--at", "yesterday 12:02", "--note", "Lip")
    assert (code, err) == (0, "Clock Iris off: 3 h.\n")
    with open_journal(folder) as session:
        (made,) = [work for work in hours.work(session) if work.basis is WorkBasis.CLOCKED]
    assert (made.minutes, made.note, len(made.shares)) == (180, "Lip", 1)
    assert run("clock", folder, "show")[::2] == (0, "No clock runs.\n")


def test_with_two_clocks_it_must_be_said_whose(run: Run, folder: Path) -> None:
    for person in ("Iris", "Tom"):
        assert run("clock", folder, "on", "--person", person)[0] == 0
    code, _, err = run("clock", folder, "off")
    assert (code, err) == (2, "The clocks of Iris and Tom run; say whose with --person.\n")
    assert run("clock", folder, "away", "--person", "tom")[0] == 0
    assert run("clock", folder, "on", "--person", "Tom", "--at", "soon")[0] == 2


def test_people_are_recorded_and_listed_with_what_their_hours_come_to(
    run: Run, folder: Path
) -> None:
    assert run("people", folder, "Iris", "--rate", "25")[0] == 0
    assert run("people", folder, "Bo Lind", "--kind", "paid", "--note", "welds for hire")[0] == 0
    code, out, _ = run("people", folder, "--json")
    found = {one["name"]: (one["kind"], one["rate"], one["value"]) for one in json.loads(out)}
    assert code == 0
    assert found["Iris"] == ("own", 2500, 21_250)
    assert found["Bo Lind"] == ("paid", None, None)
    assert found["Tom"] == ("own", None, None)
    assert "€212.50" in run("people", folder)[1]
    code, _, err = run("people", folder, "Bo Lind", "--rate", "10")
    assert code == 2
    assert "no rate here" in err


def test_hours_from_photos(run: Run, folder: Path, tmp_path: Path) -> None:
    card = tmp_path / "card"
    card.mkdir()
    for number, time in enumerate(("14:05:00", "15:50:59")):
        made = jpeg(f"2016:03:05 {time}", size=(400 + number, 300))
        (card / f"IMG_{number}.jpg").write_bytes(made)
    assert run("add", folder, card)[0] == 0
    code, out, _ = run("work", folder, "--photos", "--json")
    (day,) = json.loads(out)
    assert (code, day["day"], day["minutes"], day["photos"]) == (0, "2016-03-05", 105, 2)
    assert "14:05 to 15:50" in run("work", folder, "--photos")[1]
    code, _, err = run("work", folder, "--photos", "--date", "2016-03-05", "--person", "Iris")
    assert (code, err) == (0, "Record at least 1 h 45 min from 2 photos.\n")
    code, _, err = run("work", folder, "--photos", "--date", "2016-03-05", "--person", "Iris")
    assert (code, err) == (2, "No photos without hours show a visit on “2016-03-05”.\n")
    assert run("export", folder, "--out", tmp_path / "out")[0] == 0
    table = (tmp_path / "out" / "work.csv").read_text(encoding="utf-8-sig").splitlines()
    assert table[0].endswith(",known by")
    assert any(row.endswith("at least (photos)") for row in table)
    assert (tmp_path / "out" / "people.csv").is_file()
