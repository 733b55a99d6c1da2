"""Wanted parts: what is still to be bought, where it was seen, and how far it has come.

Sums of a wanted part are for all of it, as on a receipt's line, in minor units of the journal's
currency; a sighting has a currency of its own.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum

from journal.domain.errors import JournalError
from journal.domain.ids import (
    AreaId,
    LineId,
    PanelId,
    ReceiptId,
    SightingId,
    WantedChangeId,
    WantedId,
)
from journal.domain.money import MOST
from journal.domain.quantities import LEAST_QUANTITY, MOST_QUANTITY
from journal.domain.receipts import Category, Condition
from journal.domain.when import When


class WantedState(StrEnum):
    """How far a wanted part has come; any state may be skipped."""

    WANTED = "wanted"
    SEEN = "seen"
    ORDERED = "ordered"
    ARRIVED = "arrived"
    FITTED = "fitted"

    @property
    def rank(self) -> int:
        """Its place in the order, from 0."""
        return list(WantedState).index(self)

    @property
    def following(self) -> "WantedState | None":
        """The state that comes next, None after the last."""
        order = list(WantedState)
        return order[self.rank + 1] if self.rank + 1 < len(order) else None


@dataclass(frozen=True, slots=True)
class Sighting:
    """One place where the part was seen; ``price`` is for all that is wanted, None if not said."""

    id: SightingId
    wanted_id: WantedId
    place: str
    price: int | None
    currency: str
    when: When
    note: str = ""


@dataclass(frozen=True, slots=True)
class WantedChange:
    """The day a part came to a state."""

    id: WantedChangeId
    state: WantedState
    when: When
    note: str = ""


@dataclass(frozen=True, slots=True)
class Wanted:
    """One part still wanted, or that was wanted once.

    ``condition`` is None where any will do. ``price_limit`` is the most to be paid for all of it,
    ``new_price`` what it would cost new. ``line_id`` is the receipt's line it became, in the
    receipt ``receipt_id``. ``changes`` has one date for each state that was reached, in order of
    the states.
    """

    id: WantedId
    text: str
    quantity: Decimal = Decimal(1)
    panel_id: PanelId | None = None
    area_id: AreaId | None = None
    category: Category = Category.OTHER
    condition: Condition | None = None
    price_limit: int | None = None
    new_price: int | None = None
    note: str = ""
    line_id: LineId | None = None
    receipt_id: ReceiptId | None = None
    changes: tuple[WantedChange, ...] = ()
    sightings: tuple[Sighting, ...] = ()

    @property
    def state(self) -> WantedState:
        """The furthest state that was reached."""
        return self.changes[-1].state if self.changes else WantedState.WANTED

    @property
    def since(self) -> When | None:
        """When it came to its state, None where nobody said."""
        return self.changes[-1].when if self.changes else None

    @property
    def is_open(self) -> bool:
        """Whether something is still to be done: it is not fitted yet."""
        return self.state is not WantedState.FITTED

    @property
    def is_to_buy(self) -> bool:
        """Whether it is neither ordered nor bought."""
        return self.state.rank < WantedState.ORDERED.rank and self.line_id is None

    @property
    def is_on_order(self) -> bool:
        """Whether it is ordered, and its receipt is still to come."""
        return self.state is WantedState.ORDERED and self.line_id is None

    def change_to(self, state: WantedState) -> WantedChange | None:
        """The date of a state, None where it was not reached or skipped."""
        return next((change for change in self.changes if change.state is state), None)


@dataclass(frozen=True, slots=True)
class BoughtLine:
    """A line of a recorded receipt that may be a wanted part; ``amount`` is in its currency."""

    line_id: LineId
    receipt_id: ReceiptId
    text: str
    supplier: str
    when: When
    amount: int
    currency: str


def best_sighting(wanted: Wanted, currency: str) -> Sighting | None:
    """The cheapest sighting within the limit, the earliest of equals; None where there is none.

    Sightings without a price, or in another currency than the limit's, are not compared.
    """
    within = [one for one in _comparable(wanted, currency) if not over_limit(wanted, one, currency)]
    return min(within, key=lambda one: (one.price or 0, one.when, one.id), default=None)


def over_limit(wanted: Wanted, sighting: Sighting, currency: str) -> int | None:
    """By how much a sighting is over the limit; 0 within it, None where that can't be said."""
    if wanted.price_limit is None or sighting.price is None or sighting.currency != currency:
        return None
    return max(0, sighting.price - wanted.price_limit)


def likely_price(wanted: Wanted, currency: str) -> int | None:
    """What it will likely cost: the best sighting, else the cheapest, else new, else the limit.

    The price new counts where the part is wanted new. None where nothing is known.
    """
    best = best_sighting(wanted, currency)
    if best is not None:
        return best.price
    seen = [one.price for one in _comparable(wanted, currency) if one.price is not None]
    if seen:
        return min(seen)
    if wanted.condition is Condition.NEW and wanted.new_price is not None:
        return wanted.new_price
    return wanted.price_limit


def _comparable(wanted: Wanted, currency: str) -> list[Sighting]:
    return [one for one in wanted.sightings if one.price is not None and one.currency == currency]


@dataclass(frozen=True, slots=True)
class BuyingSums:
    """What is still to be bought and what is on order, in minor units of the journal's currency.

    Attributes:
        to_buy, on_order, unfitted: how many parts are to be bought, ordered, here but not fitted.
        at_limits, with_limit: the limits of what is to be bought added up, and on how many.
        likely, with_likely: what it will likely cost, and on how many something is known.
        ordered_likely: what is on order will likely cost.
    """

    to_buy: int
    on_order: int
    unfitted: int
    at_limits: int
    with_limit: int
    likely: int
    with_likely: int
    ordered_likely: int


def buying_sums(parts: Iterable[Wanted], currency: str) -> BuyingSums:
    """What the wanted parts come to."""
    known = tuple(parts)
    to_buy = [part for part in known if part.is_to_buy]
    on_order = [part for part in known if part.is_on_order]
    limits = [part.price_limit for part in to_buy if part.price_limit is not None]
    likely = [price for part in to_buy if (price := likely_price(part, currency)) is not None]
    ordered = [likely_price(part, currency) or 0 for part in on_order]
    return BuyingSums(
        to_buy=len(to_buy),
        on_order=len(on_order),
        unfitted=sum(part.is_open for part in known) - len(to_buy) - len(on_order),
        at_limits=sum(limits),
        with_limit=len(limits),
        likely=sum(likely),
        with_likely=len(likely),
        ordered_likely=sum(ordered),
    )


def refuse_unreasonable(wanted: Wanted) -> None:
    """Refuse a part without words, or with numbers that no part has.

    Raises:
        JournalError: it has no words, or its quantity or a price is out of reason.
    """
    if not wanted.text.strip():
        raise JournalError("A wanted part needs a word for what it is.")
    shown = wanted.text.strip()[:40]
    quantity = wanted.quantity
    if not (quantity.is_finite() and LEAST_QUANTITY <= quantity <= MOST_QUANTITY):
        raise JournalError(f"{quantity:.6g} is not a quantity that “{shown}” comes in.")
    for price in (wanted.price_limit, wanted.new_price):
        refuse_odd_price(price, shown)


def refuse_odd_price(price: int | None, shown: str) -> None:
    """Refuse a price that nobody asks for a part.

    Raises:
        JournalError: it is below nothing or beyond all reason.
    """
    if price is not None and price < 0:
        raise JournalError(f"The price of “{shown}” can't be less than nothing.")
    if price is not None and price > MOST:
        raise JournalError(f"The price of “{shown}” is too large a sum for a car.")
