"""The command that plans the buying."""

import json
from pathlib import Path

from journal.actions.journals import new_journal
from journal.domain.car import Car
from tests.cli.conftest import Run


def test_a_part_is_planned_from_the_first_word_to_the_fitting(run: Run, tmp_path: Path) -> None:
    folder = tmp_path / "Halden Rook"
    new_journal(folder, Car("Halden Rook")).close()
    made = run(
        "wanted", folder, "add", "Door hinge, upper", "--quantity", "2", "--panel", "sill, left",
        "--condition", "used", "--limit", "60", "--new-price", "140", "--date", "2024-03-09",
    )  # fmt: skip
    assert made[0] == 0
    assert "number 1" in made[2]
    assert run("wanted", folder, "seen", "hinge", "Rustholm Breakers", "--price", "52")[0] == 0
    dear = run("wanted", folder, "seen", "1", "Fair in Oberlund", "--price", "75")
    assert "€15.00 over the limit" in dear[2]
    code, out, err = run("wanted", folder)
    assert code == 0
    assert "2 × Door hinge, upper" in out
    assert "Rustholm Breakers, €52.00" in out
    assert "Still to buy: 1 part, €60.00 at the limits, likely €52.00." in err
    assert run("wanted", folder, "state", "fitted", "hinge", "--date", "2024-05")[0] == 0
    code, out, _ = run("wanted", folder, "list", "--json")
    assert json.loads(out)["parts"] == []
    (part,) = json.loads(run("wanted", folder, "list", "--all", "--json")[1])["parts"]
    assert (part["state"], part["since"], part["panel"]) == ("fitted", "2024-05", "Sill, left")
    assert [(s["best"], s["over"]) for s in part["sightings"]] == [(True, 0), (False, 1500)]


def test_what_is_not_there_or_odd_is_said_in_a_sentence(run: Run, tmp_path: Path) -> None:
    folder = tmp_path / "Halden Rook"
    new_journal(folder, Car("Halden Rook")).close()
    for words in (
        ("seen", "hinge", "Rustholm"),
        ("state", "ordered", "7"),
        ("add", " "),
        ("add", "Hinge", "--limit", "cheap"),
        ("add", "Hinge", "--limit=-5"),
    ):
        code, _, err = run("wanted", folder, *words)
        assert code == 2, words
        assert len(err.strip().splitlines()) == 1, words
