"""What is kept of the ledger's sums always says what the record says now."""

from collections.abc import Callable
from dataclasses import replace
from datetime import date
from decimal import Decimal

import pytest

from journal.actions import areas, cars, costs, history, hours, people, price_indices, receipts
from journal.actions.journals import open_journal
from journal.actions.session import Session
from journal.domain.car import MilestoneKind
from journal.domain.costs import COSTS_BY
from journal.domain.errors import JournalError
from journal.domain.ids import AreaId, LineId, PersonId, ReceiptId, WorkId
from journal.domain.people import Person, PersonKind
from journal.domain.price_index import InMoneyOf
from journal.domain.receipts import Category, Condition, Line, Paper, Receipt, Share
from journal.domain.when import When
from journal.domain.work import Work

DAY = When.on(date(2019, 3, 2))
WISH = InMoneyOf("2020")


def bought(amount: int, *area_ids: AreaId) -> Receipt:
    shares = tuple(Share(area_id, 1) for area_id in area_ids)
    line = Line(
        LineId(0), "Sheet", Decimal(1), amount, Category.PANELS, Condition.NEW, None, shares
    )
    return Receipt(ReceiptId(0), "Fenwick Metal", DAY, "EUR", Paper.HELD, None, (line, line))


def everything(session: Session) -> tuple[object, ...]:
    return (
        costs.laid_out(session),
        costs.costs_in_money_of(session, "panel", WISH),
        costs.summary(session, WISH),
        costs.three_figures(session),
        costs.cost_series(session, "month"),
        costs.hours_series(session, "month"),
        costs.metre_costs(session),
        [costs.lines_of_row(session, by, "1") for by in COSTS_BY],
    )


def share_anew(session: Session, found: ReceiptId, area_id: AreaId) -> None:
    old = receipts.receipt(session, found)
    line = replace(old.lines[0], shares=(Share(area_id, 3),))
    receipts.change_receipt(session, replace(old, lines=(line, *old.lines[1:])))


def take_a_line_out(session: Session, found: ReceiptId) -> None:
    old = receipts.receipt(session, found)
    receipts.change_receipt(session, replace(old, lines=old.lines[:1]))


def move_in_time(session: Session, found: ReceiptId, year: int) -> None:
    old = receipts.receipt(session, found)
    receipts.change_receipt(session, replace(old, when=When.on(date(year, 1, 1))))


def refund_later(session: Session, found: ReceiptId) -> None:
    back = replace(bought(-5), when=When.on(date(2021, 1, 1)), refund_of=found)
    receipts.record_receipt(session, back)
    move_in_time(session, found, 2022)


def test_sums_follow_every_kind_of_change(session: Session) -> None:
    panels = [panel.id for panel in session.journal.drawing.panels()]
    values = {"2019": Decimal(100), "2020": Decimal("103.3")}
    price_indices.record_index(session, "Made-up", "EUR", "made up", values)
    sill = AreaId(areas.add_area(session, "Sill", panels[:1], "holes").made or 0)
    arch = AreaId(areas.add_area(session, "Arch", panels[1:3], "holes").made or 0)
    first = ReceiptId(receipts.record_receipt(session, bought(1001, sill, arch)).made or 0)
    second = ReceiptId(receipts.record_receipt(session, bought(555)).made or 0)
    worked = Work(WorkId(0), DAY, 90, "Ada", "", (Share(arch, 1),))

    changes: list[Callable[[], object]] = [
        lambda: receipts.record_receipt(session, bought(20, sill)),
        lambda: share_anew(session, first, arch),
        lambda: take_a_line_out(session, first),
        lambda: move_in_time(session, second, 2018),
        lambda: history.undo(session),
        lambda: history.redo(session),
        lambda: refund_later(session, second),
        lambda: move_in_time(session, second, 2018),
        lambda: receipts.remove_receipt(session, second),
        lambda: history.undo(session),
        lambda: hours.record_work(session, worked),
        lambda: people.save_person(session, Person(PersonId(0), "Ada", PersonKind.OWN, 2500)),
        lambda: cars.add_milestone(session, MilestoneKind.STRIPPED, DAY, ""),
        lambda: areas.change_area(session, replace(areas.area(session, sill), panel_ids=())),
        lambda: price_indices.record_index(
            session, "Made-up", "EUR", "made up", {**values, "2020": Decimal(200)}
        ),
        lambda: areas.add_entry(session, DAY, "Nothing to do with money", None, None),
    ]
    cars.add_milestone(session, MilestoneKind.ON_THE_ROAD, When.on(date(2020, 6, 1)), "")
    everything(session)
    for change in changes:
        change()
        with open_journal(session.folder, read_only=True) as other:
            assert everything(session) == everything(other)


def test_what_touches_no_sum_leaves_them_as_they_are(session: Session) -> None:
    receipts.record_receipt(session, bought(20))
    table = costs.costs(session, "category")
    areas.add_entry(session, DAY, "A note", None, None)
    assert costs.costs(session, "category") is table


def test_the_three_figures_are_apart(session: Session) -> None:
    receipts.record_receipt(session, bought(500))
    hours.record_work(session, Work(WorkId(0), DAY, 90, "Ada"))
    hours.record_work(session, Work(WorkId(0), DAY, 60, "Bo"))
    found = costs.three_figures(session)
    assert (found.spent, found.own_minutes, found.own_value) == (1000, 150, None)
    people.save_person(session, Person(PersonId(0), "Ada", PersonKind.OWN, 2000))
    people.save_person(session, Person(PersonId(0), "Bo", PersonKind.PAID))
    found = costs.three_figures(session)
    assert (found.own_minutes, found.paid_minutes) == (90, 60)
    assert (found.own_value, found.valued_minutes, found.spent) == (3000, 90, 1000)


def test_without_an_index_the_money_of_a_year_is_refused(session: Session) -> None:
    with pytest.raises(JournalError, match="No price index is chosen"):
        costs.costs_in_money_of(session, "year", WISH)
    with pytest.raises(JournalError, match="no period"):
        costs.costs_in_money_of(session, "year", InMoneyOf("moon"))
