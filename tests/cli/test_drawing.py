"""The drawing command as a person types it."""

import json
from pathlib import Path

import pytest

from tests.cli.conftest import Run

_SVG = (
    '<svg xmlns="http://www.w3.org/2000/svg" width="400" height="200">'
    '<rect id="Strap" x="10" y="20" width="100" height="50"/>{}</svg>'
)


@pytest.fixture
def folder(run: Run, tmp_path: Path) -> Path:
    made = tmp_path / "Rook"
    assert run("new", made, "--title", "Halden Rook")[0] == 0
    return made


@pytest.mark.parametrize("body", ["motorcycle", "tractor", "blank"])
def test_new_makes_what_is_no_car_too(run: Run, tmp_path: Path, body: str) -> None:
    code, _, err = run("new", tmp_path / body, "--title", "It", "--body", body)
    assert code == 0, err
    assert body in run("new", "--help")[1]


def test_out_by_the_ending_of_the_file(run: Run, folder: Path, tmp_path: Path) -> None:
    for name, start in (("a.svg", b"<?xml"), ("a.png", b"\x89PNG"), ("a.pdf", b"%PDF")):
        code, out, err = run("drawing", folder, "--out", tmp_path / name, "--json")
        assert code == 0, err
        assert json.loads(out) == {"path": str(tmp_path / name)}
        assert (tmp_path / name).read_bytes().startswith(start)


def test_one_view_on_a_date_and_by_a_tint(run: Run, folder: Path, tmp_path: Path) -> None:
    file = tmp_path / "a.svg"
    assert (
        run("drawing", folder, "--out", file, "--view", "left side", "--on", "March 2016")[0] == 0
    )
    assert "Left side. As it stood at the end of March 2016" in file.read_text("utf-8")
    assert run("drawing", folder, "--out", file, "--tint", "hours")[0] == 0
    assert "Hours. As it stands" in file.read_text("utf-8")
    assert run("drawing", folder, "--out", file, "--plain")[0] == 0
    assert "As it st" not in file.read_text("utf-8")


def test_years_without_a_dated_stage_are_refused(run: Run, folder: Path, tmp_path: Path) -> None:
    code, _, err = run("drawing", folder, "--out", tmp_path / "y.gif", "--years")
    assert code == 2
    assert "No stage" in err
    assert not (tmp_path / "y.gif").exists()


def test_in_names_what_was_not_used(run: Run, folder: Path, tmp_path: Path) -> None:
    file = tmp_path / "strap.svg"
    file.write_text(_SVG.format("<text>Note</text>"), "utf-8")
    code, out, err = run("drawing", folder, "--in", file, "--json")
    assert code == 1
    report = json.loads(out)
    assert (report["panels"], report["views"], report["scaled"]) == (1, ["strap"], False)
    assert [one["what"] for one in report["not_used"]] == ["text"]
    assert "Not used: text" in err
    file.write_text(_SVG.format(""), "utf-8")
    code, _, err = run("drawing", folder, "--in", file, "--view", "Top", "--mm-per-unit", 10)
    assert code == 0, err
    assert "1 panel is on Top." in err


@pytest.mark.parametrize(
    "options",
    [
        (),
        ("--out", "a.svg", "--in", "b.svg"),
        ("--out", "a.dxf"),
        ("--out", "a.svg", "--plain", "--on", "2016"),
        ("--out", "a.svg", "--mm-per-unit", "3"),
        ("--out", "a.gif", "--years", "--plain"),
        ("--out", "a.svg", "--view", "nowhere"),
        ("--out", "a.svg", "--on", "whenever"),
        ("--in", "missing.svg"),
        ("--in", "a.svg", "--years"),
    ],
)
def test_what_does_not_go_together_is_status_2(
    run: Run,
    folder: Path,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    options: tuple[str, ...],
) -> None:
    monkeypatch.chdir(tmp_path)
    code, _, err = run("drawing", folder, *options)
    assert code == 2
    assert err.count("\n") == 1
    assert [path.name for path in tmp_path.iterdir()] == ["Rook"]


def test_a_scripted_file_is_refused_whole(run: Run, folder: Path, tmp_path: Path) -> None:
    file = tmp_path / "bad.svg"
    file.write_text(_SVG.format("<script>x</script>"), "utf-8")
    code, _, err = run("drawing", folder, "--in", file)
    assert code == 2
    assert "bad.svg" in err
    assert run("panel", folder, "Strap")[0] == 2
