"""The commands of the metalwork: sums as of a day, what lies near mountings, readings."""

import json
from pathlib import Path

import pytest

from tests.cli.conftest import Run
from tests.welding import welded


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    with welded(tmp_path) as session:
        return session.folder


def test_metal_sums_by_area_panel_and_view_add_up(run: Run, folder: Path) -> None:
    code, out, _ = run("metal", folder, "--json")
    assert code == 0
    found = json.loads(out)
    for state in ("planned_mm", "tacked_mm", "welded_mm", "dressed_mm"):
        for by in ("area", "view"):
            parts = sum(row["seams"][state] for row in found["by"] if row["by"] == by)
            assert parts == pytest.approx(found["seams"][state], abs=0.5)
    assert found["seams"]["planned_mm"] > found["seams"]["welded_mm"] > 0
    assert found["patches"]["count"] == 1
    assert {row["name"] for row in found["by"] if row["by"] == "panel"} == {
        "Sill, left",
        "Front door, left",
    }


def test_metal_goes_back_to_a_day(run: Run, folder: Path) -> None:
    now = json.loads(run("metal", folder, "--json")[1])
    then = json.loads(run("metal", folder, "--on", "2016-04-03", "--json")[1])
    assert then["on"] == "2016-04-03"
    assert then["seams"]["welded_mm"] == 0 < now["seams"]["welded_mm"]
    assert then["seams"]["tacked_mm"] > 0
    before = json.loads(run("metal", folder, "--on", "2016-04-01", "--json")[1])
    assert before["patches"]["count"] == 0


def test_metal_says_how_far_from_a_mounting_and_never_passes(run: Run, folder: Path) -> None:
    code, out, err = run("metal", folder)
    assert code == 0
    assert "whole car" in out
    assert "Load-bearing: have it inspected." in err
    assert "mm from the seat belt anchor point “Belt, left, lower”" in err
    near = json.loads(run("metal", folder, "--json")[1])["bearings"]
    assert {one["anchor"] for one in near} == {"Belt, left, lower"}
    assert all(0 <= one["distance_mm"] <= 300 for one in near)


def test_readings_are_told_before_against_after(run: Run, folder: Path) -> None:
    code, out, err = run("readings", folder)
    assert code == 0
    row = next(line for line in out.splitlines() if line.startswith("Door, A low to B high"))
    assert row.split()[-8:-3] == ["1284", "1286.5", "+2.5", "mm", "outside"]
    assert "the difference between them changed by +3 mm" in err
    rows = json.loads(run("readings", folder, "--json")[1])
    films = [row for row in rows if row["unit"] == "µm"]
    assert [(row["place"], row["value"]) for row in films] == [
        (1, "95"),
        (2, "140"),
        (3, "420"),
        (4, "1250"),
    ]
    outside = {(row["measure"], row["value"]) for row in rows if row["outside"]}
    assert outside == {("Door, A low to B high", "1286.5")}


def test_a_date_that_is_none_is_refused(run: Run, folder: Path) -> None:
    code, out, err = run("metal", folder, "--on", "someday", "--json")
    assert (code, out) == (2, "")
    assert "someday" in err
