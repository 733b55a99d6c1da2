"""Words and numbers that nobody means to type, in every act that takes some."""

from dataclasses import replace
from datetime import date
from decimal import Decimal
from pathlib import Path

import pytest

from journal.actions import (
    areas,
    cars,
    clockings,
    costs,
    drawings,
    find,
    history,
    hours,
    people,
    price_indices,
    receipts,
    timeline,
    valuations,
)
from journal.actions.checking import check
from journal.actions.journals import new_journal
from journal.actions.session import Session
from journal.domain.car import MilestoneKind
from journal.domain.costs import COSTS_BY
from journal.domain.errors import JournalError
from journal.domain.ids import (
    AreaId,
    ComparableId,
    PanelId,
    PersonId,
    ValuationId,
    typed_number,
)
from journal.domain.people import Person
from journal.domain.receipts import Share
from journal.domain.valuations import Comparable, Valuation
from journal.domain.when import When
from tests.store.values import receipt, work

DAY = When.on(date(2016, 3, 5))
ODD = ["a\udcffb", "\ud83d", "nul\0byte", "\0", "x" * 100_000, "two\nlines\r\n\tand more", "‮odd"]


@pytest.mark.parametrize("word", ODD)
def test_every_act_takes_any_words_and_can_be_undone(session: Session, word: str) -> None:
    text = "it: " + word
    area = AreaId(areas.add_area(session, text, [PanelId(1)], text, DAY).made or 0)
    areas.change_area(session, replace(areas.area(session, area), done=text, cautions=()))
    areas.move_to_stage(session, area, "welded", DAY, text)
    areas.add_entry(session, DAY, text, area)
    cars.add_milestone(session, MilestoneKind.OTHER, DAY, text)
    cars.change_car(session, replace(cars.car(session), title=text, story=text))
    hours.record_work(session, replace(work(area), person=text, note=text))
    people.save_person(session, Person(PersonId(0), text, note=text))
    with pytest.raises(JournalError, match="already"):
        people.save_person(session, Person(PersonId(0), text.upper()))
    clockings.clock_on(session, text, (Share(area, 1),), text)
    with pytest.raises(JournalError, match="runs already"):
        clockings.clock_on(session, text)
    clockings.clock_off(session, clockings.running(session)[0])
    bought = receipt(Share(area, 1), supplier=text, note=text, stands_in=text)
    receipts.record_receipt(session, bought)
    price_indices.record_index(session, text, "EUR", text, {"2016": Decimal(1)})
    worth = Valuation(ValuationId(0), DAY, 1, text, note=text)
    valuations.record_valuation(session, worth)
    other = Comparable(ComparableId(0), DAY, text, 1, "EUR", source=text, note=text)
    valuations.record_comparable(session, other)
    assert check(session).faults == ()
    labels = [edit.label for edit in history.edits(session)]
    assert all(len(label) <= 120 and label.isprintable() for label in labels if "‮" not in label)
    acts = len(labels) - 1
    for _ in range(acts):
        history.undo(session)
    for _ in range(acts):
        history.redo(session)
    assert check(session).faults == ()
    assert len(receipts.receipts(session)) == 1


@pytest.mark.parametrize("word", [*ODD, "²", "٣", "9" * 30, "9" * 5000, "", "%", "_", '"', "*"])
def test_searching_for_anything_finds_or_refuses_in_words(session: Session, word: str) -> None:
    find.find(session, word)
    for seek in (drawings.find_panel, drawings.find_view, timeline.find_photo, areas.find_area):
        with pytest.raises(JournalError):
            seek(session, word)


@pytest.mark.parametrize("text", ["7", "007", "1" * 18])
def test_a_row_number_is_read_as_typed(text: str) -> None:
    assert typed_number(text) == int(text)


@pytest.mark.parametrize("text", ["", "-1", "²", "٣", "1.0", " 1", "1" * 19])
def test_what_no_row_can_be_numbered_is_no_number(text: str) -> None:
    assert typed_number(text) is None


@pytest.mark.parametrize(
    ("line", "head"),
    [
        ({"quantity": Decimal("1e400")}, {}),
        ({"quantity": Decimal("1e-400")}, {}),
        ({"quantity": Decimal("NaN")}, {}),
        ({"quantity": Decimal("Infinity")}, {}),
        ({"quantity": Decimal(-1)}, {}),
        ({"amount": 2**63}, {}),
        ({"amount": -(2**63)}, {}),
        ({"new_price": 2**63}, {}),
        ({"shares": (Share(AreaId(1), -1),)}, {}),
        ({"shares": (Share(AreaId(1), 2**63),)}, {}),
        ({}, {"printed_total": 10**14}),
        ({}, {"rate": Decimal("1e30"), "currency": "USD"}),
        ({}, {"rate": Decimal("1e-30"), "currency": "USD"}),
        ({}, {"rate": Decimal("NaN"), "currency": "USD"}),
    ],
)
def test_numbers_beyond_all_reason_are_refused(
    session: Session, line: dict[str, object], head: dict[str, object]
) -> None:
    areas.add_area(session, "Sill", [PanelId(1)])
    plain = receipt(**head)
    bad = replace(plain, lines=(replace(plain.lines[0], **line), *plain.lines[1:]))  # type: ignore[arg-type]
    with pytest.raises(JournalError):
        receipts.record_receipt(session, bad)
    with pytest.raises(JournalError):
        hours.record_work(session, replace(work(), shares=(Share(AreaId(1), -1),)))
    assert receipts.receipts(session) == ()
    for by in COSTS_BY:
        assert costs.costs(session, by).total.money == 0


def test_a_share_of_an_area_that_is_gone_is_refused_in_words(session: Session) -> None:
    area = AreaId(areas.add_area(session, "Sill", [PanelId(1)]).made or 0)
    areas.remove_area(session, area)
    with pytest.raises(JournalError, match="not in the journal, or not any more"):
        receipts.record_receipt(session, receipt(Share(area, 1)))


def test_a_new_journal_takes_any_title(tmp_path: Path, session: Session) -> None:
    odd = replace(cars.car(session), title="a\udcffb\0")
    with new_journal(tmp_path / "odd", odd) as made:
        assert cars.car(made).title == "a\ufffdb"
        assert check(made).faults == ()
