"""Papers read for a journal: what it knows already is noticed, what is recorded can be found."""

import os
from datetime import date

import pytest

from journal.actions import reading, receipts
from journal.actions.find import find
from journal.actions.settings import Settings, load_settings, save_settings, settings_path
from journal.domain.errors import Cancelled, JournalError
from journal.domain.papers import DateOrder, nothing_read
from journal.domain.progress import Silent
from journal.domain.when import When
from tests.intake.reading import drawn


@pytest.fixture
def paper(tmp_path):
    def write(number=1, name=None):
        path = tmp_path / (name or f"{number}.pdf")
        path.write_bytes(drawn.pdf(drawn.drawn(number)))
        return path

    return write


def record(session, paper):
    return receipts.record_receipt(session, reading.receipt_from(paper.read, "EUR"), [paper.path])


def test_a_paper_is_read_recorded_and_found_by_its_words(session, paper):
    truth = drawn.drawn(1).truth
    (found,) = reading.read_papers(session, [paper(1)])
    changes = record(session, found)
    kept = receipts.receipt(session, changes.made)
    assert (kept.supplier, kept.printed_total, kept.tax) == (truth.supplier, truth.total, truth.tax)
    assert kept.when == When.on(truth.day)
    assert [line.amount for line in kept.lines] == [amount for _, _, amount in truth.lines]
    assert kept.read_text
    word = next(line for line in kept.read_text.splitlines() if "Lane" in line or "weg" in line)
    hits = find(session, word.split()[1])
    assert [hit.kind for hit in hits] == ["receipt"]


def test_the_same_paper_twice_is_noticed(session, paper):
    (first,) = reading.read_papers(session, [paper(1)])
    made = record(session, first).made
    (again,) = reading.read_papers(session, [paper(1, "copy.pdf")])
    assert again.held_by == made
    assert again.read.is_empty


def test_the_same_file_twice_at_once_is_noticed(session, paper):
    first, second = reading.read_papers(session, [paper(1), paper(1, "copy.pdf")])
    assert not first.read.is_empty
    assert "“copy.pdf” is the very same file as “1.pdf”" in second.read.remarks[0]


def test_the_same_supplier_day_and_total_are_noticed(session, paper):
    (first,) = reading.read_papers(session, [paper(1)])
    made = record(session, first).made
    other = paper(1, "scanned again.pdf")
    other.write_bytes(other.read_bytes() + b"\n")
    (again,) = reading.read_papers(session, [other])
    assert (again.held_by, again.like) == (None, (made,))


def test_another_day_or_total_is_another_receipt(session, paper):
    (first,) = reading.read_papers(session, [paper(1)])
    record(session, first)
    kept = receipts.receipts(session)
    same = {
        "supplier": kept[0].supplier.upper(),
        "when": kept[0].when,
        "total": kept[0].printed_total,
        "currency": kept[0].currency,
    }
    assert reading.alike(kept, **same) == (kept[0].id,)
    assert not reading.alike(kept, **{**same, "total": 1})
    assert not reading.alike(kept, **{**same, "when": When.on(date(2001, 1, 1))})
    assert not reading.alike(kept, **{**same, "currency": "JPY"})
    assert not reading.alike(kept, **{**same, "supplier": ""})


def test_one_bad_file_never_stops_the_rest(session, paper, tmp_path):
    bad = tmp_path / "bad.pdf"
    bad.write_bytes(b"%PDF-1.4\n")
    found = reading.read_papers(session, [bad, tmp_path / "gone.pdf", tmp_path, paper(1)])
    assert [bool(one.read.remarks) for one in found] == [True, True, True, False]
    assert all(one.path.name in one.read.remarks[0] for one in found[:3])


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="no named pipes here")
def test_a_pipe_is_refused_and_never_waited_for(session, tmp_path):
    os.mkfifo(tmp_path / "pipe.pdf")
    (found,) = reading.read_papers(session, [tmp_path / "pipe.pdf"])
    assert found.read.remarks == ("“pipe.pdf” is no file that can be read.",)


def test_reading_many_can_be_stopped(session, paper):
    class Stopping(Silent):
        def checkpoint(self):
            raise Cancelled

    with pytest.raises(Cancelled):
        reading.read_papers(session, [paper(1)], Stopping())


def test_what_is_missing_is_named_and_nothing_made_up(session):
    with pytest.raises(JournalError, match="No supplier and no date and no total could be read"):
        reading.receipt_from(nothing_read(), "EUR")


def test_the_order_of_day_and_month_is_asked_once_and_kept(home):
    from dataclasses import replace

    assert DateOrder(load_settings().date_order) is DateOrder.DAY_FIRST
    save_settings(replace(Settings(), date_order=DateOrder.MONTH_FIRST.value))
    assert DateOrder(load_settings().date_order) is DateOrder.MONTH_FIRST
    settings_path().write_text('{"date_order": "year of the ox"}')
    assert DateOrder(load_settings().date_order) is DateOrder.DAY_FIRST


def test_a_paper_is_shown_or_the_reason_told(paper, tmp_path):
    picture = reading.paper_picture(paper(1), longest=400)
    assert max(picture.width, picture.height) == 400
    (tmp_path / "no.pdf").write_bytes(b"words")
    with pytest.raises(JournalError, match=r"“no\.pdf” can't be shown: it is no picture"):
        reading.paper_picture(tmp_path / "no.pdf")
