import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journal.domain.cautions import CAUTIONS, Caution, caution, suggest
from journal.domain.drawing import Panel, Side, System
from journal.domain.errors import JournalError
from journal.domain.ids import PanelId

DANGERS = {
    "welding",
    "isocyanate paint",
    "fuel and brake lines",
    "car on stands",
    "load-bearing",
    "belt anchorages",
    "lead",
    "asbestos",
    "airbags",
    "cutting discs",
}


def panel(name: str, system: System) -> Panel:
    return Panel(PanelId(1), name, Side.LEFT, system)


def test_every_danger_has_one_caution() -> None:
    assert {one.key for one in CAUTIONS} == DANGERS
    assert len(CAUTIONS) == len(DANGERS)


@pytest.mark.parametrize("one", CAUTIONS, ids=lambda one: one.key)
def test_a_caution_is_short_and_never_passes_a_car_as_safe(one: Caution) -> None:
    assert 60 < len(one.text) < 330
    assert len(one.title) < 50
    assert not re.search(r"\b(safe|safely|roadworthy|approved|pass(es)?)\b", one.text, re.I)


@pytest.mark.parametrize("key", ["load-bearing", "belt anchorages"])
def test_load_bearing_work_is_sent_to_an_inspection(key: str) -> None:
    assert "inspected" in caution(key).text


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("Cut out the rust and MIG welded a patch", {"welding", "cutting discs"}),
        ("Sprayed two-pack clearcoat", {"isocyanate paint"}),
        ("2K primer with hardener", {"isocyanate paint"}),
        ("New brake pipes to the rear", {"fuel and brake lines"}),
        ("Fitted new clutch and gaskets", {"asbestos"}),
        ("Sanded back the old paint", {"lead"}),
        ("Moved the seat belt mounting", {"belt anchorages"}),
        ("Took the airbag out", {"airbags"}),
        ("Car on stands, dropped the gearbox", {"car on stands"}),
        ("Left jacking point is soft", {"load-bearing", "welding", "car on stands"}),
        ("Polished the hub caps", set()),
        ("20k miles on the clock", set()),
        ("", set()),
    ],
)
def test_words_give_reason_for_cautions(text: str, expected: set[str]) -> None:
    assert set(suggest(text)) == expected


@pytest.mark.parametrize("text", ["discovered a wound", "tankard", "thigh", "cute", "a pleading"])
def test_parts_of_other_words_give_none(text: str) -> None:
    assert suggest(text) == ()


def test_a_sill_is_load_bearing_and_will_be_welded() -> None:
    assert {"load-bearing", "welding"} <= set(suggest("", [panel("Sill", System.OUTER)]))


def test_structure_is_load_bearing_whatever_it_is_called() -> None:
    assert set(suggest("", [panel("Leg", System.STRUCTURE)])) == {"load-bearing", "welding"}


def test_trim_gives_no_reason() -> None:
    assert suggest("", [panel("Bumper", System.TRIM)]) == ()


def test_cautions_come_in_the_order_they_are_shown_in() -> None:
    keys = suggest("airbag, weld, sill, 2K")
    order = [one.key for one in CAUTIONS]
    assert list(keys) == sorted(keys, key=order.index)


@given(st.text(), st.sampled_from(System))
def test_whatever_is_written_only_known_cautions_come_back(text: str, system: System) -> None:
    keys = suggest(text, [panel(text, system)])
    assert len(set(keys)) == len(keys)
    for key in keys:
        assert caution(key).key == key


def test_an_unknown_caution_is_named() -> None:
    with pytest.raises(JournalError, match="“moon”"):
        caution("moon")
