from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journal.domain.errors import JournalError
from journal.domain.quantities import parse_quantity, write_quantity


@pytest.mark.parametrize(
    ("text", "quantity"),
    [("4", "4"), (" 2.5 ", "2.5"), ("2,5", "2.5"), ("", "1"), (".5", "0.5"), ("100", "100")],
)
def test_quantities_as_people_write_them(text, quantity):
    assert parse_quantity(text) == Decimal(quantity)


@pytest.mark.parametrize("text", ["0", "-1", "a few", "1e5", "12345678", "1.2.3", "NaN"])
def test_what_is_no_quantity_is_refused_in_one_sentence(text):
    with pytest.raises(JournalError) as refused:
        parse_quantity(text)
    assert str(refused.value).endswith(".")


@given(st.decimals(min_value="0.0001", max_value="999999", places=4))
def test_what_is_shown_can_be_typed_again(quantity):
    assert parse_quantity(write_quantity(quantity)) == quantity
