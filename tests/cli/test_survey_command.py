"""The survey from the command line."""

import json
from pathlib import Path

import pytest

from tests.cli.conftest import Run
from tests.desktop.workshop import furnished


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    with furnished(tmp_path) as session:
        return session.folder


def test_a_survey_is_begun_filled_shown_closed_and_gone_on_from(run: Run, folder: Path) -> None:
    def survey(*words: str) -> tuple[int, str, str]:
        return run("survey", folder, *words)

    assert survey("show")[0] == 2
    assert (
        survey("start", "Before", "--date", "2014-03", "--ceiling", "900", "--hours", "40")[0] == 0
    )
    code, _, err = survey(
        "add", "Holes", "--panel", "Sill, left", "--money", "40/90.50/320", "--hours", "6/12/40",
        "--severity", "perforated", "--cause", "It's worse inside", "--area", "rear end",
    )  # fmt: skip
    assert (code, err) == (0, "Finding 1 of “Before” recorded.\n")
    assert survey("add", "Rust", "--money", "20", "--cause", "It's worse inside")[0] == 0
    code, _, err = survey("add", "Rust", "--money", "30/20/10")
    assert code == 2
    assert "must grow from best over likely to worst" in err
    assert survey("add", "Rust", "--money", "30/20")[0] == 2

    found = json.loads(survey("show", "--json")[1])
    assert [one["money"] for one in found["findings"]] == [[4000, 9050, 32000], [2000] * 3]
    assert found["findings"][0]["cause"] == "It's worse inside"
    # (40 + 4 x 90.50 + 320) / 6 + 20, by the three-point formula.
    assert found["money"]["formula"]["mean"] == pytest.approx(12033.33 + 2000, abs=0.01)
    assert found["money"]["simulated"]["under"] == 1
    assert found == json.loads(survey("show", "--json")[1])
    assert "too few to judge the rest by" in survey("show")[2]

    out = folder.parent / "estimate.png"
    code, _, err = survey("show", "--chart", str(out))
    assert (code, err.splitlines()[-1]) == (0, f"The chart is in {out}.")
    assert out.read_bytes().startswith(b"\x89PNG")
    assert json.loads(survey("show", "--json", "--chart", str(out))[1])["file"] == str(out)
    assert survey("show", "--chart", "estimate.txt")[0] == 2
    assert survey("show", "--chart", str(folder / "journal.db"))[0] == 2

    assert survey("close")[0] == 0
    assert survey("add", "More")[0] == 2
    assert survey("go-on", "After", "--date", "2014-06")[0] == 0
    assert survey("add", "More")[0] == 0
    code, out, _ = survey("list", "--json")
    rows = json.loads(out)
    assert [(row["name"], row["closed"] is None) for row in rows] == [
        ("Before", False),
        ("After", True),
    ]


def test_a_finding_goes_into_the_latest_survey_that_is_open(run: Run, folder: Path) -> None:
    def survey(*words: str) -> tuple[int, str, str]:
        return run("survey", folder, *words)

    assert survey("start", "Walk", "--date", "2014-03")[0] == 0
    assert survey("start", "Later", "--date", "2015-03")[0] == 0
    assert survey("add", "Rust")[2] == "Finding 1 of “Later” recorded.\n"
    assert survey("close")[2] == "“Later” is kept as it is.\n"
    assert survey("add", "Rust", "--hours", "2")[2] == "Finding 1 of “Walk” recorded.\n"
    assert survey("close")[2] == "“Walk” is kept as it is.\n"
    assert "was closed" in survey("add", "Rust")[2]


@pytest.mark.parametrize("hours", ["1,234", "1.200", "12,345h", "999.999"])
def test_hours_that_can_be_read_in_two_ways_are_refused(run: Run, folder: Path, hours: str) -> None:
    assert run("survey", folder, "start", "Walk", "--date", "2014-03")[0] == 0
    code, _, err = run("survey", folder, "add", "Rust", "--hours", hours)
    assert (code, "can be read in two ways" in err) == (2, True)
