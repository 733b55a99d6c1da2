"""What others say the car is worth, and what others like it were offered and sold for.

A valuation is neither money spent nor hours worked, and is never added to either.
"""

from dataclasses import dataclass
from enum import StrEnum

from journal.domain.errors import JournalError
from journal.domain.ids import ComparableId, Sha256, ValuationId
from journal.domain.money import MOST, minor_units
from journal.domain.when import When


class ValuationBasis(StrEnum):
    """What a valuation is for (common practice, no source)."""

    MARKET = "market value"
    AGREED = "agreed value"
    REPLACEMENT = "replacement value"
    OWN = "the owner's own view"


class PriceKind(StrEnum):
    """How a comparable's price is known (common practice, no source)."""

    ASKED = "asked"
    OFFERED = "offered"
    SOLD = "sold for"


@dataclass(frozen=True, slots=True)
class Valuation:
    """What somebody said the car is worth on a day; minor units of the journal's currency.

    ``sha256`` is the original of the valuer's paper, None where there is none.
    """

    id: ValuationId
    when: When
    amount: int
    valuer: str
    basis: ValuationBasis = ValuationBasis.MARKET
    note: str = ""
    sha256: Sha256 | None = None


@dataclass(frozen=True, slots=True)
class Comparable:
    """Another car like this one, with its price in minor units of its own currency."""

    id: ComparableId
    when: When
    text: str
    price: int
    currency: str
    kind: PriceKind = PriceKind.ASKED
    source: str = ""
    note: str = ""


def refuse_odd_valuation(valuation: Valuation) -> None:
    """Refuse a valuation by nobody, or of an amount that no car has.

    Raises:
        JournalError: naming what is wrong.
    """
    if not valuation.valuer.strip():
        raise JournalError("A valuation needs the name of whoever made it.")
    _refuse_odd_price(valuation.amount, "A valuation")


def refuse_odd_comparable(comparable: Comparable) -> None:
    """Refuse a comparable without words, in no currency, or at a price that no car has.

    Raises:
        JournalError: naming what is wrong.
    """
    if not comparable.text.strip():
        raise JournalError("A comparable car needs a few words saying which it is.")
    minor_units(comparable.currency)
    _refuse_odd_price(comparable.price, "A comparable car's price")


def _refuse_odd_price(amount: int, what: str) -> None:
    if not 0 <= amount <= MOST:
        raise JournalError(f"{what} is nothing or more, and not beyond all reason.")


@dataclass(frozen=True, slots=True)
class ThreeFigures:
    """What the car came to, as three figures that are never added up.

    Attributes:
        currency: ISO 4217 code that all money is in.
        spent: money spent, restoration and upkeep together.
        own_minutes: time worked by people who are not paid for it.
        own_value: what that time is worth at the rates the owner gives; None where none is given.
        valued_minutes: the part of ``own_minutes`` that has a rate, and so is in ``own_value``.
        paid_minutes: time worked by people who are paid: what they were is part of ``spent``.
        valuation: the latest, None where there is none.
        valuations: all of them, in order of date.
    """

    currency: str
    spent: int
    own_minutes: int
    own_value: int | None
    valued_minutes: int
    paid_minutes: int
    valuation: Valuation | None
    valuations: tuple[Valuation, ...]
