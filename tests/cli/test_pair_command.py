"""The command that lays an after photo over a before."""

import json

import cv2
import pytest
from click.testing import CliRunner
from PIL import Image

from journal.actions.add_photos import add_photos
from journal.actions.journals import new_journal, open_journal
from journal.actions.pairs import pairs
from journal.cli import commands
from journal.domain.car import Car
from tests.actions.paired import MOVED, SIZE, blots, paired, write


@pytest.fixture
def folder(tmp_path):
    with new_journal(tmp_path / "rook", Car("Halden Rook")) as session:
        paired(session, tmp_path / "card")
    return tmp_path / "rook"


def run(*words):
    return CliRunner().invoke(commands, ["pair", *map(str, words)])


def test_a_pair_is_looked_at_then_kept_then_taken_apart(folder, tmp_path):
    out = tmp_path / "pair.png"
    looked = run(folder, "sill", "before.jpg", "after.jpg", "--out", out, "--divided", "--json")
    assert looked.exit_code == 0, looked.output
    (found,) = json.loads(looked.stdout)
    assert found["id"] is None
    assert found["how"] == "found"
    assert found["inliers"] >= 20
    assert len(found["matrix"]) == 9
    with Image.open(out) as image:
        assert image.width > 200
    with open_journal(folder, read_only=True) as session:
        assert pairs(session) == (), "nothing is kept unasked"
    assert run(folder, "sill", 1, 2, "--keep", "--caption", "New sill").exit_code == 0
    listed = run(folder, "sill")
    assert "spots agree" in listed.stdout
    assert "New sill" in listed.stdout
    (shown,) = json.loads(run(folder, "sill", 1, 2, "--json").stdout)
    assert shown["id"] is not None, "a kept pair is shown as it is kept"
    assert run(folder, "sill", 1, 2, "--remove").exit_code == 0
    assert "No pair" in run(folder, "sill").stderr
    again = run(folder, "sill", 1, 2, "--remove")
    assert (again.exit_code, "no pair" in str(again.exception)) == (1, True)


def test_photos_of_one_view_are_proposed(folder):
    for words in (("sill",), ()):
        (found,) = json.loads(run(folder, *words, "--propose", "--json").stdout)
        assert (found["before"], found["after"], found["id"]) == (1, 2, None)


def test_what_cannot_be_laid_is_laid_by_points_or_side_by_side(folder, tmp_path):
    refused = run(folder, "sill", 1, 3)
    assert "Could not find how" in str(refused.exception)
    points = tmp_path / "points.txt"
    rows = []
    for x, y in ((60, 50), (400, 60), (390, 300), (70, 290), (230, 60), (240, 300)):
        u, v, w = MOVED @ [x, y, 1.0]
        rows.append(f"{x} {y}, {u / w:.3f} {v / w:.3f}")
    points.write_text("# before; after\n\n" + "\n".join(rows))
    made = run(folder, "sill", 1, 3, "--points", points, "--json")
    assert made.exit_code == 0, made.output
    (found,) = json.loads(made.stdout)
    assert (found["how"], found["inliers"]) == ("by hand", None)
    assert found["error"] < 0.05
    assert run(folder, "sill", 1, 3, "--side-by-side").exit_code == 0
    (kept,) = json.loads(run(folder, "sill", "--json").stdout)
    assert (kept["how"], kept["matrix"]) == ("side by side", None)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("1 2 3", "Line 1 of “points.txt” isn't four numbers"),
        ("1 2 3 4\n5 6 7 x", "Line 2"),
        ("1 2 3 4\n" * 3, "needs 4 points"),
        (f"1 2 3 {SIZE[1] + 1}\n" * 6, "Point 1 lies beside"),
        ("1 2 3 4\n" * 61, "more than 60"),
        ("nan nan 1 1\n" * 6, "Point 1 lies beside"),
    ],
)
def test_points_that_tell_nothing_are_refused_in_words(folder, tmp_path, text, said):
    path = tmp_path / "points.txt"
    path.write_text(text)
    assert said in str(run(folder, "sill", 1, 3, "--points", path).exception)


def test_one_photo_alone_is_no_pair(folder):
    assert run(folder, "sill", 1).exit_code == 2


def test_bursts_and_photos_that_look_the_same_are_listed(folder, tmp_path):
    with open_journal(folder) as session:
        view = blots(7)
        soft = cv2.GaussianBlur(view, (0, 0), 3)
        add_photos(
            session,
            [
                write(tmp_path / "one.jpg", soft, "2019:05:04 10:00:00"),
                write(tmp_path / "two.jpg", view, "2019:05:04 10:00:03"),
                write(tmp_path / "copy.jpg", view, "2020:05:04 10:00:03"),
            ],
        )
    asked = CliRunner().invoke(commands, ["photos", str(folder), "--bursts", "--json"])
    (burst,) = json.loads(asked.stdout)
    assert len(burst) == 2
    listed = CliRunner().invoke(commands, ["photos", str(folder), "--bursts"]).stdout
    assert listed.index("two.jpg") < listed.index("one.jpg"), "the sharpest comes first"
    alike = CliRunner().invoke(commands, ["photos", str(folder), "--alike"]).stdout
    assert "two.jpg" in alike
    assert "copy.jpg" in alike
    assert "before.jpg" not in alike
