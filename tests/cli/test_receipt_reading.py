"""Receipts read from files by command: shown with how sure, recorded where asked for."""

import json

import pytest

from journal.actions import receipts
from journal.actions.journals import open_journal
from journal.domain.receipts import Category
from tests.cli.test_commands import folder  # noqa: F401, RUF100 - fixtures
from tests.intake.reading import drawn


@pytest.fixture
def paper(tmp_path):
    def write(number, name=None):
        path = tmp_path / (name or f"{number}.pdf")
        path.write_bytes(drawn.pdf(drawn.drawn(number)))
        return path

    return write


def euro():
    return next(n for n in range(60) if n % 10 != 9 and drawn.drawn(n).truth.currency == "EUR")


def recorded(folder):  # noqa: F811
    with open_journal(folder, read_only=True) as session:
        return receipts.receipts(session)


def test_a_file_alone_is_read_and_shown_and_nothing_is_recorded(run, folder, paper):  # noqa: F811
    truth = drawn.drawn(1).truth
    code, out, err = run("receipt", folder, paper(1))
    assert code == 0
    rows = {row.split()[0]: row for row in out.splitlines() if row.startswith("  ")}
    assert truth.supplier in rows["Supplier"]
    assert "(sure)" in rows["Total"]
    assert f"{truth.total / 100:.2f}" in rows["Total"]
    assert "Nothing was recorded; --record does." in err
    assert recorded(folder) == ()


def test_what_was_read_is_recorded_when_asked_for(run, folder, paper):  # noqa: F811
    number = euro()
    truth = drawn.drawn(number).truth
    code, out, _ = run("receipt", folder, paper(number), "--record", "--category", "tools")
    assert (code, "recorded as receipt 1" in out) == (0, True)
    (made,) = recorded(folder)
    assert (made.printed_total, made.tax, len(made.papers)) == (truth.total, truth.tax, 1)
    assert {line.category for line in made.lines} == {Category.TOOLS}
    code, out, _ = run("receipt", folder, paper(number, "copy.pdf"), "--record")
    assert code == 2
    assert "not recorded: this paper is already with receipt 1" in out
    assert len(recorded(folder)) == 1


def test_another_currency_needs_its_rate(run, folder, paper):  # noqa: F811
    path = paper(1)
    code, out, _ = run("receipt", folder, path, "--record")
    assert code == 2
    assert "it is in GBP: give --rate, what one GBP cost in EUR" in out
    assert run("receipt", folder, path, "--record", "--rate", "1.17")[0] == 0
    assert str(recorded(folder)[0].rate) == "1.17"


def test_json_has_every_field_with_where_and_how_sure(run, folder, paper, tmp_path):  # noqa: F811
    bad = tmp_path / "bad.pdf"
    bad.write_bytes(b"%PDF-1.4\n")
    truth = drawn.drawn(1).truth
    code, out, _ = run("receipt", folder, paper(1), bad, "--json")
    assert code == 1
    good, broken = json.loads(out)["papers"]
    assert good["total"]["value"] == truth.total
    assert 0 < good["total"]["sure"] <= 1
    left, top, right, bottom = good["total"]["box"]
    assert 0 <= left < right <= 1
    assert 0 <= top < bottom <= 1
    assert good["date"]["value"] == truth.day.isoformat()
    assert len(good["lines"]) == len(truth.lines)
    assert broken["total"] is None
    assert broken["remarks"] == ["“bad.pdf” can't be read: it is a broken PDF."]


@pytest.mark.parametrize(
    "options", [(), ("--supplier", "X"), ("--supplier", "X", "--date", "2016")]
)
def test_half_a_receipt_by_hand_is_refused(run, folder, options):  # noqa: F811
    code, _, err = run("receipt", folder, *options)
    assert code == 2
    assert "--supplier, --date and --line" in err


def test_what_belongs_to_a_receipt_by_hand_is_never_ignored(run, folder, paper):  # noqa: F811
    code, _, err = run("receipt", folder, paper(1), "--note", "mine")
    assert code == 2
    assert "--note is for a receipt by hand; a file alone is read." in err
