"""The command that reads and draws charts."""

import json

import pytest
from click.testing import CliRunner

from journal.cli import commands
from tests.desktop import workshop


@pytest.fixture(scope="module")
def folder(tmp_path_factory):
    with workshop.furnished(tmp_path_factory.mktemp("chart")) as session:
        return session.folder


def run(*arguments):
    return CliRunner().invoke(commands, ["chart", *map(str, arguments)])


def test_the_bars_are_listed(folder):
    said = run(folder, "spend")
    assert said.exit_code == 0
    assert "2015" in said.stdout
    assert "€187.90" in said.stdout


def test_the_values_are_given_for_machines(folder):
    found = json.loads(run(folder, "hours", "--each", "month", "--json").stdout)
    assert found["currency"] == ""
    assert found["parts"] == [{"key": "own", "label": "own hours"}]
    assert found["bars"] == [{"key": "2015-05", "label": "May 2015", "values": [605]}]


def test_a_file_is_drawn_for_a_locale(folder, tmp_path):
    out = tmp_path / "proven.svg"
    said = run(folder, "proven", "--locale", "de", "--out", out)
    assert said.exit_code == 0
    assert "90,00\u00a0€" in out.read_text(encoding="utf-8")


@pytest.mark.parametrize(
    ("more", "why"),
    [
        (("spend", "--locale", "nowhere"), "no locale"),
        (("spend", "--in-money-of", "2020"), "No price index"),
        (("metre", "--out", "a.png"), "nothing to draw yet"),
        (("spend", "--out", "a.gif"), "has to end"),
    ],
)
def test_what_cant_be_done_is_said(folder, more, why):
    said = run(folder, *more)
    assert why in str(said.exception)
