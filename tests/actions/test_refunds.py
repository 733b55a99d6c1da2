"""Returns and refunds: receipts of their own against the old ones."""

from dataclasses import replace
from datetime import date
from decimal import Decimal

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from journal.actions import receipts
from journal.actions.costs import laid_out
from journal.actions.session import Session
from journal.domain.errors import JournalError
from journal.domain.ids import LineId, ReceiptId
from journal.domain.receipts import Category, Condition, Line, Paper, Receipt
from journal.domain.when import When

_LINES = st.lists(
    st.builds(
        Line,
        id=st.just(LineId(0)),
        text=st.just("Part"),
        quantity=st.just(Decimal(1)),
        amount=st.integers(0, 10**7),
        category=st.sampled_from(Category),
        condition=st.sampled_from(Condition),
        new_price=st.none() | st.integers(0, 10**7),
    ),
    min_size=1,
    max_size=4,
)


def _bought(lines: list[Line], currency: str = "EUR", rate: str = "1") -> Receipt:
    when = When.on(date(2024, 3, 9))
    return Receipt(
        ReceiptId(0), "Rustholm Breakers", when, currency, Paper.HELD, None, tuple(lines),
        rate=Decimal(rate),
    )  # fmt: skip


@settings(max_examples=15, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(lines=_LINES, rate=st.sampled_from(["1", "0.8571", "0.0913"]))
def test_a_receipt_taken_back_whole_comes_to_nothing(
    session: Session, lines: list[Line], rate: str
) -> None:
    made = receipts.record_receipt(session, _bought(lines, "USD", rate)).made
    back = receipts.refund_for(session, ReceiptId(made or 0), date(2024, 4, 2))
    receipts.record_receipt(session, back)
    found = laid_out(session).summary
    assert (found.restoration, found.upkeep, found.saved_against_new) == (0, 0, 0)


def test_what_was_taken_back_is_found_from_the_receipt_and_the_other_way(session: Session) -> None:
    line = Line(LineId(0), "Hinge", Decimal(2), 5200, Category.OTHER, Condition.USED, 9000)
    made = ReceiptId(receipts.record_receipt(session, _bought([line])).made or 0)
    back = receipts.refund_for(session, made, date(2024, 4, 2))
    assert [(one.amount, one.new_price, one.quantity) for one in back.lines] == [(-5200, -9000, 2)]
    back = replace(back, lines=(replace(back.lines[0], amount=-2600),))
    taken = ReceiptId(receipts.record_receipt(session, back).made or 0)
    assert [one.id for one in receipts.refunds_of(session, made)] == [taken]
    with pytest.raises(JournalError, match="takes another one back already"):
        receipts.refund_for(session, taken, date(2024, 4, 3))
    receipts.remove_receipt(session, made)
    assert receipts.receipt(session, taken).refund_of is None
