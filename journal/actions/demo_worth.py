"""What the demo's car is valued at, and a made-up price index."""

from journal.actions import price_indices, valuations
from journal.actions.session import Session


def record_worth(session: Session) -> None:
    """Record the demo's price index, valuations and cars to compare with."""
    from journal.demo import worth

    currency = session.journal.car.get().currency
    price_indices.record_index(
        session, worth.INDEX_NAME, currency, worth.INDEX_SOURCE, worth.index_values()
    )
    for valuation in worth.VALUATIONS:
        valuations.record_valuation(session, valuation)
    for comparable in worth.COMPARABLES:
        valuations.record_comparable(session, comparable)
