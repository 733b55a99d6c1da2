from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journal.domain.cuts import Choices, Cut, Part, check_choices, from_json, to_json, usual
from journal.domain.errors import JournalError
from journal.domain.ids import AreaId
from journal.domain.private_words import Private

_CHOICES = st.builds(
    Choices,
    cut=st.sampled_from(list(Cut)),
    parts=st.frozensets(st.sampled_from(list(Part))),
    withheld=st.frozensets(st.sampled_from(list(Private))),
    paper=st.sampled_from(["a4", "letter"]),
    pictures=st.sampled_from(["print", "screen"]),
    photos=st.integers(0, 50),
    areas=st.frozensets(st.integers(1, 9).map(AreaId)),
)


@given(_CHOICES)
def test_choices_come_back_as_they_were_kept(choices: Choices) -> None:
    check_choices(choices)
    assert from_json(choices.cut, to_json(choices)) == choices


@given(st.text() | st.sampled_from(['{"parts": 3}', '{"photos": -1}', "[]", '{"paper": "a3"}']))
def test_what_cannot_be_read_is_as_usual(text: str) -> None:
    found = from_json(Cut.BUYER, text)
    check_choices(found)
    assert found == usual(Cut.BUYER)


def test_a_buyer_gets_no_private_data_unless_told() -> None:
    assert usual(Cut.BUYER).withheld == frozenset(Private)
    for part in (Part.MONEY, Part.RECEIPTS, Part.VALUES, Part.PEOPLE):
        assert not usual(Cut.BUYER).has(part)
    for part in (Part.STORY, Part.PAIRS, Part.REMAINING, Part.CLAIMS):
        assert usual(Cut.BUYER).has(part)


def test_a_valuer_gets_what_a_valuation_rests_on() -> None:
    for part in (Part.IDENTITY, Part.CONDITION, Part.VIEWS, Part.MONEY, Part.HOURS, Part.VALUES):
        assert usual(Cut.VALUER).has(part)
    assert Private.CHASSIS not in usual(Cut.VALUER).withheld


def test_the_own_shelf_gets_everything() -> None:
    assert usual(Cut.OWN).parts == frozenset(Part)
    assert not usual(Cut.OWN).withheld


def test_choices_that_cannot_be_are_refused() -> None:
    with pytest.raises(JournalError, match="a4 and letter"):
        check_choices(replace(usual(Cut.OWN), paper="a3"))  # type: ignore[arg-type]
    with pytest.raises(JournalError, match="fewer photos than none"):
        check_choices(replace(usual(Cut.OWN), photos=-1))
