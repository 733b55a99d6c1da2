"""Planning the buying: wanted parts, where they were seen, and the receipt they become."""

from dataclasses import replace
from datetime import date
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journal.actions import areas, history, panels, receipts
from journal.actions import wanted as actions
from journal.actions.drawings import find_panel
from journal.actions.find import find
from journal.actions.session import Session
from journal.domain.errors import JournalError
from journal.domain.ids import AreaId, PanelId, ReceiptId, SightingId, WantedId
from journal.domain.receipts import Category, Condition, Share
from journal.domain.wanted import (
    Sighting,
    Wanted,
    WantedState,
    best_sighting,
    buying_sums,
    likely_price,
    over_limit,
)
from journal.domain.when import When

_DAY = When.on(date(2024, 3, 9))
_LATER = When.on(date(2024, 4, 2))
_HINGE = Wanted(
    WantedId(0), "Door hinge, upper", Decimal(2), category=Category.MECHANICAL,
    condition=Condition.USED, price_limit=6000, new_price=14000,
)  # fmt: skip


def _want(session: Session, wanted: Wanted = _HINGE) -> WantedId:
    return WantedId(actions.add_wanted(session, wanted, _DAY).made or 0)


def _see(
    session: Session, part: WantedId, place: str, price: int | None, currency: str = "EUR"
) -> None:
    sighting = Sighting(SightingId(0), part, place, price, currency, _DAY)
    actions.add_sighting(session, sighting)


def test_a_part_goes_from_wanted_to_fitted_and_every_step_can_be_undone(session: Session) -> None:
    part = _want(session)
    _see(session, part, "Rustholm Breakers", 5200)
    steps = [actions.wanted_part(session, part)]
    assert steps[0].state is WantedState.SEEN, "where it was seen says that it was seen"
    # Arrived is skipped: any state may be.
    for state in (WantedState.ORDERED, WantedState.FITTED):
        actions.move_wanted(session, [part], state, _LATER)
        steps.append(actions.wanted_part(session, part))
    assert [step.state.value for step in steps] == ["seen", "ordered", "fitted"]
    assert not steps[-1].is_open
    for step in reversed(steps[:-1]):
        history.undo(session)
        assert actions.wanted_part(session, part) == step
    actions.remove_wanted(session, part)
    assert actions.wanted_parts(session) == ()
    history.undo(session)
    assert actions.wanted_part(session, part) == steps[0]


def test_a_state_has_one_day_however_often_it_is_said(session: Session) -> None:
    part = _want(session)
    actions.move_wanted(session, [part], WantedState.ORDERED, _DAY)
    actions.move_wanted(session, [part], WantedState.ORDERED, _LATER, "by telephone")
    found = actions.wanted_part(session, part)
    assert [(c.state.value, c.when) for c in found.changes] == [
        ("wanted", _DAY), ("ordered", _LATER),
    ]  # fmt: skip
    actions.remove_wanted_state(session, part, WantedState.ORDERED)
    assert actions.wanted_part(session, part).state is WantedState.WANTED


def test_the_best_sighting_is_the_cheapest_within_the_limit(session: Session) -> None:
    part = _want(session)
    for place, price in (("Dear", 7500), ("Fair", 5900), ("Silent", None), ("Good", 5100)):
        _see(session, part, place, price)
    _see(session, part, "Abroad", 100, "USD")
    found = actions.wanted_part(session, part)
    best = best_sighting(found, "EUR")
    assert best is not None
    assert best.place == "Good"
    over = {one.place: over_limit(found, one, "EUR") for one in found.sightings}
    assert over == {"Dear": 1500, "Fair": 0, "Silent": None, "Good": 0, "Abroad": None}
    assert likely_price(found, "EUR") == 5100
    dear = replace(found, sightings=tuple(s for s in found.sightings if s.place == "Dear"))
    assert best_sighting(dear, "EUR") is None
    assert likely_price(dear, "EUR") == 7500, "what is asked, since nothing cheaper is known"


@given(
    st.lists(
        st.builds(
            lambda limit, prices: replace(
                _HINGE,
                price_limit=limit,
                sightings=tuple(
                    Sighting(SightingId(i), WantedId(0), str(i), price, "EUR", _DAY)
                    for i, price in enumerate(prices)
                ),
            ),
            st.none() | st.integers(0, 10**6),
            st.lists(st.none() | st.integers(0, 10**6), max_size=5),
        ),
        max_size=6,
    )
)
def test_sums_are_those_of_the_parts_and_no_best_is_over_its_limit(parts: list[Wanted]) -> None:
    found = buying_sums(parts, "EUR")
    assert found.to_buy == len(parts)
    assert found.at_limits == sum(p.price_limit or 0 for p in parts)
    assert found.likely == sum(likely_price(p, "EUR") or 0 for p in parts)
    for part in parts:
        best = best_sighting(part, "EUR")
        asked = [s.price for s in part.sightings if s.price is not None]
        limit = part.price_limit
        within = [price for price in asked if limit is None or price <= limit]
        assert (best.price if best else None) == (min(within) if within else None)


def test_parts_from_one_place_become_one_receipt_without_typing(session: Session) -> None:
    area = AreaId(areas.add_area(session, "Door, left", [], "").made or 0)
    hinge = _want(session, replace(_HINGE, area_id=area))
    catch = _want(session, replace(_HINGE, text="Door catch", quantity=Decimal(1)))
    other = _want(session, replace(_HINGE, text="Check strap"))
    for part, price in ((hinge, 5200), (catch, 900)):
        _see(session, part, "Rustholm Breakers", price)
    _see(session, other, "Elsewhere", 400)
    draft = actions.receipt_for(session, [hinge, catch, other], date(2024, 4, 2))
    assert (draft.supplier, draft.currency) == ("Rustholm Breakers", "EUR")
    assert [(line.text, line.quantity, line.amount) for line in draft.lines] == [
        ("Door hinge, upper", 2, 5200), ("Door catch", 1, 900), ("Check strap", 2, 0),
    ]  # fmt: skip
    first = draft.lines[0]
    assert (first.category, first.condition) == (Category.MECHANICAL, Condition.USED)
    assert (first.new_price, first.shares) == (14000, (Share(area, 1),))
    made = receipts.record_receipt(session, draft, came=[hinge, catch, None]).made
    parts = {p.id: p for p in actions.wanted_parts(session)}
    recorded = receipts.receipt(session, ReceiptId(made or 0))
    assert [parts[i].line_id for i in (hinge, catch)] == [line.id for line in recorded.lines[:2]]
    assert parts[hinge].receipt_id == recorded.id
    assert parts[hinge].state is WantedState.ARRIVED
    assert parts[other].line_id is None
    with pytest.raises(JournalError, match="has its receipt already"):
        actions.receipt_for(session, [hinge], date(2024, 4, 2))


def test_a_part_outlives_its_receipt_and_undo_ties_it_again(session: Session) -> None:
    part = _want(session)
    draft = actions.receipt_for(session, [part], date(2024, 4, 2))
    draft = replace(draft, supplier="Rustholm Breakers")
    made = ReceiptId(receipts.record_receipt(session, draft, came=[part]).made or 0)
    tied = actions.wanted_part(session, part)
    # A change of the receipt that keeps the line keeps the tie; another line takes its place.
    before = receipts.receipt(session, made)
    receipts.change_receipt(session, replace(before, note="collected"))
    assert actions.wanted_part(session, part) == tied
    receipts.change_receipt(session, replace(before, lines=draft.lines))
    assert actions.wanted_part(session, part) == replace(tied, line_id=None, receipt_id=None)
    history.undo(session)
    assert actions.wanted_part(session, part) == tied
    receipts.remove_receipt(session, made)
    assert actions.wanted_part(session, part).line_id is None
    history.undo(session)
    assert actions.wanted_part(session, part) == tied
    history.undo(session)
    history.undo(session)
    assert actions.wanted_part(session, part).state is WantedState.WANTED
    assert receipts.receipts(session) == ()


def test_the_panels_story_has_what_is_still_open_and_what_was_fitted(session: Session) -> None:
    sill = find_panel(session, "Sill, left").id
    area = AreaId(areas.add_area(session, "Sill end", [sill], "").made or 0)
    _want(session, replace(_HINGE, text="Sill end cap", panel_id=sill))
    strip = _want(session, replace(_HINGE, text="Sill strip", area_id=area))
    actions.move_wanted(session, [strip], WantedState.FITTED, _LATER)
    told = [e for e in panels.history(session, sill).events if e.kind == "wanted"]
    assert [(e.title, e.when) for e in told] == [
        ("Wanted: Sill end cap", _DAY), ("Fitted: Sill strip", _LATER),
    ]  # fmt: skip
    areas.remove_area(session, area)
    assert actions.wanted_part(session, strip).area_id is None


def test_a_wanted_part_is_found_by_its_words(session: Session) -> None:
    part = _want(session, replace(_HINGE, note="the one with the long leaf"))
    assert [(h.kind, h.id) for h in find(session, "long leaf")] == [("wanted", part)]


@pytest.mark.parametrize(
    ("wanted", "said"),
    [
        (replace(_HINGE, text=" "), "needs a word"),
        (replace(_HINGE, quantity=Decimal(0)), "not a quantity"),
        (replace(_HINGE, quantity=Decimal("NaN")), "not a quantity"),
        (replace(_HINGE, price_limit=-1), "less than nothing"),
        (replace(_HINGE, new_price=10**14), "too large"),
        (replace(_HINGE, panel_id=PanelId(9999)), "no panel"),
        (replace(_HINGE, area_id=AreaId(9999)), "no repair area"),
    ],
)
def test_odd_parts_are_refused_in_words(session: Session, wanted: Wanted, said: str) -> None:
    with pytest.raises(JournalError, match=said):
        actions.add_wanted(session, wanted, _DAY)
    assert actions.wanted_parts(session) == ()
