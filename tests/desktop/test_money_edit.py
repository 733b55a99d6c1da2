"""The line for sums of money."""

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from journal.desktop.widgets.money_edit import MoneyEdit
from journal.domain.errors import JournalError


@pytest.fixture
def edit(qtbot):
    made = MoneyEdit("EUR")
    qtbot.addWidget(made)
    return made


def test_reads_what_people_write_and_says_how(qtbot, edit):
    qtbot.keyClicks(edit, "1.234,5")
    assert edit.amount() == 123_450
    assert edit.toolTip() == "€1,234.50"


def test_marks_what_is_no_sum_until_it_is_one(qtbot, edit):
    qtbot.keyClicks(edit, "about 5")
    with pytest.raises(JournalError):
        edit.amount()
    assert edit.property("wrong") is True
    edit.setText("5")
    assert edit.property("wrong") is False
    assert edit.amount() == 500


def test_empty_is_refused_unless_it_may_be(qtbot, edit):
    with pytest.raises(JournalError):
        edit.amount()
    optional = MoneyEdit("EUR", optional=True)
    qtbot.addWidget(optional)
    assert optional.amount() is None


def test_another_currency_has_other_places(edit):
    edit.setText("1500")
    edit.set_currency("JPY")
    assert edit.amount() == 1500
    edit.set_currency("KWD")
    assert edit.amount() == 1_500_000


@settings(deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(st.integers(-(10**9), 10**9), st.sampled_from(["EUR", "JPY", "KWD"]))
def test_a_sum_put_in_comes_out_to_the_last_unit(edit, minor, currency):
    edit.set_currency(currency)
    edit.set_amount(minor)
    assert edit.amount() == minor
