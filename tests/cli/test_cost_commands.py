"""Costs to the line and in the money of a year, price indices and valuations, by command."""

import json
from pathlib import Path

import pytest

from journal.domain.costs import COSTS_BY
from tests.cli.conftest import Run

INDEX = "period,value\n2016,100\n2016-03,101\n2024-01,130\n2024-02,134\n"


@pytest.fixture
def folder(run: Run, tmp_path: Path) -> Path:
    made = tmp_path / "Halden Rook"
    assert run("new", made, "--title", "Halden Rook")[0] == 0
    for day, price in (("2016-03-05", "89.50"), ("2009", "12.40")):
        receipt = ("--supplier", "Marrow & Quill", "--date", day, "--line", f"Outer sill; {price}")
        assert run("receipt", made, *receipt, "--category", "panels and metal")[0] == 0
    worked = ("--date", "2016-03-06", "--hours", "3", "--person", "Ines")
    assert run("work", made, *worked)[0] == 0
    return made


def test_a_row_opens_its_lines_and_they_add_up_to_it(run: Run, folder: Path) -> None:
    for by in COSTS_BY:
        rows = json.loads(run("costs", folder, "--by", by, "--json")[1])[:-1]
        for row in rows:
            code, out, _ = run("costs", folder, "--by", by, "--lines", row["label"], "--json")
            pieces = json.loads(out)
            assert code == 0
            assert sum(p.get("money", 0) for p in pieces) == row["restoration"] + row["upkeep"]
            assert sum(p.get("minutes", 0) for p in pieces) == row["minutes"]
    code, out, _ = run("costs", folder, "--by", "year", "--lines", "2016")
    assert code == 0
    assert "Outer sill" in out
    assert "€89.50" in out
    assert "3 h" in out
    code, out, err = run("costs", folder, "--by", "year", "--lines", "1999")
    assert (code, out) == (2, "")
    assert "no row “1999”" in err


def test_costs_in_the_money_of_a_year(run: Run, folder: Path, tmp_path: Path) -> None:
    code, _, err = run("costs", folder, "--in-money-of", "2024")
    assert code == 2
    assert "No price index is chosen" in err
    file = tmp_path / "index.csv"
    file.write_text(INDEX, encoding="utf-8")
    told = ("--in", file, "--name", "Workshop prices", "--source", "made up")
    assert run("index", folder, *told)[0] == 0
    (index,) = json.loads(run("index", folder, "--json")[1])
    assert index == {
        "name": "Workshop prices", "currency": "EUR", "source": "made up",
        "span": "2016 to 2024-02", "values": 4, "chosen": True,
    }  # fmt: skip
    code, out, err = run("costs", folder, "--in-money-of", "2024", "--json")
    assert code == 0
    assert json.loads(out)[-1]["restoration"] == round(8950 * 132 / 101)
    assert "mean of 2 months" in err
    assert "€12.40 can't be revalued: no index for 2009." in err
    named = ("--in-money-of", "2016", "--index", "workshop PRICES")
    assert json.loads(run("costs", folder, *named, "--json")[1])[-1]["restoration"] == 8861
    assert run("costs", folder, "--in-money-of", "moon")[0] == 2
    assert run("costs", folder, "--index", "Workshop prices")[0] == 2


def test_an_index_that_cant_be_used_is_refused_in_words(
    run: Run, folder: Path, tmp_path: Path
) -> None:
    file = tmp_path / "bad.csv"
    file.write_text("2016,100\n2017,x\n", encoding="utf-8")
    code, _, err = run("index", folder, "--in", file, "--source", "made up")
    assert code == 2
    assert "“bad.csv”: Row 2: “x” is no value" in err
    file.write_text("2016,100\n", encoding="utf-8")
    assert run("index", folder, "--in", file)[0] == 2
    foreign = ("--in", file, "--name", "Foreign", "--currency", "USD", "--source", "made up")
    assert run("index", folder, *foreign)[0] == 0
    assert run("index", folder, "--choose", "Foreign")[0] == 2
    code, _, err = run("costs", folder, "--in-money-of", "2016", "--index", "Foreign")
    assert code == 2
    assert "is for USD" in err
    assert run("index", folder, "--remove", "Foreign")[0] == 0
    assert json.loads(run("index", folder, "--json")[1]) == []


def test_what_the_car_is_valued_at(run: Run, folder: Path) -> None:
    assert run("worth", folder)[0] == 0
    agreed = ("18500", "--by", "M. Sandvik", "--basis", "agreed value", "--date", "2024-05")
    assert run("worth", folder, *agreed)[0] == 0
    other = ("17,250.00", "--like", "A saloon, 1967", "--currency", "gbp", "--kind", "sold for")
    assert run("worth", folder, *other)[0] == 0
    found = json.loads(run("worth", folder, "--json")[1])
    assert [(v["amount"], v["by"], v["date"]) for v in found["valuations"]] == [
        (1_850_000, "M. Sandvik", "2024-05")
    ]
    assert [(c["amount"], c["currency"], c["kind"]) for c in found["comparables"]] == [
        (1_725_000, "GBP", "sold for")
    ]
    code, out, err = run("worth", folder)
    assert code == 0
    assert "M. Sandvik" in out
    assert "A saloon, 1967" in out
    code, out, err = run("costs", folder)
    assert code == 0
    assert "Valued at €18,500.00 by M. Sandvik" in err
    assert "not valued in money" in err
    assert "18,500" not in out
    assert run("worth", folder, "100")[0] == 2
