"""Bringing in a sheet from the command line."""

import json
from pathlib import Path

import pytest

from journal.actions import hours, receipts
from journal.actions.journals import new_journal, open_journal
from journal.cli import main
from journal.domain.car import Car
from tests.intake.sheets.drawn import csv_file, messy


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    new_journal(tmp_path / "Rook", Car("Halden Rook")).close()
    return tmp_path / "Rook"


def run(*arguments: object) -> int:
    with pytest.raises(SystemExit) as left:
        main([str(one) for one in arguments])
    assert isinstance(left.value.code, int)
    return left.value.code


def recorded(folder: Path) -> list[tuple[str, int]]:
    with open_journal(folder, read_only=True) as session:
        return [(one.supplier, one.lines_total) for one in receipts.receipts(session)]


def test_it_shows_first_and_records_when_told(
    folder: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    sheet = messy(tmp_path / "old.xlsx")
    assert run("sheet", folder, sheet, "--decimals", "both") == 1
    shown = capsys.readouterr()
    assert "€1,090.50" in shown.out
    assert "Row 11 can't be read: the amount is “#REF!”." in shown.err
    assert "Row 16 left out: a total (“TOTAL”)." in shown.err
    assert "nothing was recorded" in shown.err
    assert recorded(folder) == []
    assert run("sheet", folder, sheet, "--decimals", "both", "--record") == 1
    assert len(recorded(folder)) == 6
    assert run("sheet", folder, sheet, "--decimals", "both", "--record") == 1
    assert len(recorded(folder)) == 6


def test_as_json_with_columns_named_and_rows_chosen(
    folder: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    text = "a;b;c;d\n03/04/2016;Brandt;12,50;2h\n04/05/2016;Fenwright;8,00;\n"
    sheet = csv_file(tmp_path / "list.csv", text)
    roles = [f"--role={column}" for column in ("A=date", "B=supplier", "C=amount", "D=hours")]
    more = ["--dates", "mdy", "--person", "Nils", "--leave", "3", "--heading", "1"]
    assert run("sheet", folder, sheet, *roles, *more, "--record", "--json") == 0
    told = json.loads(capsys.readouterr().out)
    assert told["recorded"] is True
    assert told["columns"][2] == {"heading": "c", "role": "amount"}
    assert [(one["rows"], one["date"], one["fate"]) for one in told["items"]] == [
        ([2], "2016-03-04", "comes in"), ([2], "2016-03-04", "comes in"),
        ([3], "2016-04-05", "left out"),
    ]  # fmt: skip
    assert recorded(folder) == [("Brandt", 1_250)]
    with open_journal(folder, read_only=True) as session:
        assert [one.minutes for one in hours.work(session)] == [120]


def test_a_row_of_money_and_hours_is_left_out_whole(
    folder: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    text = "date;supplier;amount;hours\n2016-03-04;Brandt;12,50;2h\n2016-04-05;Fenwright;8;1h\n"
    sheet = csv_file(tmp_path / "list.csv", text)
    said = ("--person", "Nils", "--leave", "3", "--record", "--json")
    assert run("sheet", folder, sheet, *said) == 0
    told = json.loads(capsys.readouterr().out)
    assert [(one["rows"], one["fate"]) for one in told["items"]] == [
        ([2], "comes in"), ([2], "comes in"), ([3], "left out"), ([3], "left out"),
    ]  # fmt: skip
    with open_journal(folder, read_only=True) as session:
        assert [one.minutes for one in hours.work(session)] == [120]


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        ((), "give --dates dmy or mdy"),
        (("--dates", "dmy"), "give --decimals comma, point or both"),
        (("--dates", "dmy", "--decimals", "comma", "--role", "Z=date"), "There is no column “Z”"),
        (("--role", "A=nonsense"), "the roles are: leave out, date"),
        (("--dates", "dmy", "--decimals", "comma", "--take", "9"), "take or leave in row 9"),
        (("--sheet", "Other"), "has no sheet “Other”"),
    ],
)
def test_what_is_open_or_wrong_is_said_with_the_way_out(
    folder: Path,
    tmp_path: Path,
    capsys: pytest.CaptureFixture[str],
    arguments: tuple[str, ...],
    words: str,
) -> None:
    sheet = csv_file(tmp_path / "list.csv", "Date,Cost\n03/04/2016,1.234\n")
    assert run("sheet", folder, sheet, *arguments) == 2
    assert words in capsys.readouterr().err
