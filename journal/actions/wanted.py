"""Wanted parts: planning the buying, up to the receipt and the fitting."""

import re
from collections import Counter
from collections.abc import Sequence
from datetime import date

from journal.actions.session import Session
from journal.domain.changes import Changes
from journal.domain.errors import JournalError
from journal.domain.ids import AreaId, LineId, ReceiptId, SightingId, WantedId
from journal.domain.receipts import Condition, Line, Paper, Receipt, Share
from journal.domain.wanted import (
    BoughtLine,
    Sighting,
    Wanted,
    WantedState,
    best_sighting,
    refuse_odd_price,
    refuse_unreasonable,
)
from journal.domain.when import When


def wanted_parts(session: Session) -> tuple[Wanted, ...]:
    """Every part that is wanted, or was."""
    return session.journal.wanted.all()


def wanted_part(session: Session, wanted_id: WantedId) -> Wanted:
    """One part.

    Raises:
        JournalError: there is none of that number.
    """
    return session.journal.wanted.get(wanted_id)


def wanted_for_area(session: Session, area_id: AreaId) -> tuple[Wanted, ...]:
    """The parts wanted for a repair area."""
    return session.journal.wanted.for_area(area_id)


def places(session: Session) -> tuple[str, ...]:
    """Every place a part was seen at or bought from, without doubles."""
    journal = session.journal
    return tuple(dict.fromkeys((*journal.wanted.places(), *journal.receipts.suppliers())))


def find_wanted(session: Session, text: str) -> Wanted:
    """The part that a person means: its number, its words, or words only it holds.

    Raises:
        JournalError: there is none, or more than one.
    """
    from journal.domain.ids import typed_number

    parts = wanted_parts(session)
    plain = text.strip().casefold()
    number = typed_number(plain)
    exact = [p for p in parts if p.id == number or p.text.casefold() == plain]
    near = exact or [p for p in parts if plain and plain in p.text.casefold()]
    if not near:
        raise JournalError(f"There is no wanted part “{text}”.")
    if len(near) > 1:
        names = "; ".join(f"{p.id} {p.text}" for p in near[:5])
        raise JournalError(f"“{text}” could be several wanted parts: {names}. Say its number.")
    return near[0]


def add_wanted(session: Session, wanted: Wanted, when: When | None = None) -> Changes:
    """Record a part that is wanted, since ``when``.

    Raises:
        JournalError: it has no words, or a number is out of reason.
    """
    _check(session, wanted)
    with session.journal.edit(f"Want {_short(wanted)}") as edit:
        made = session.journal.wanted.add(wanted)
        if when is not None:
            session.journal.wanted.set_state(made, WantedState.WANTED, when, "")
    return edit.changes(made)


def change_wanted(session: Session, wanted: Wanted) -> Changes:
    """Record what is said of a part anew; its states and sightings stay.

    Raises:
        JournalError: as for ``add_wanted``, or there is none of its number.
    """
    _check(session, wanted)
    with session.journal.edit(f"Change wanted {_short(wanted)}") as edit:
        session.journal.wanted.change(wanted)
    return edit.changes(wanted.id)


def remove_wanted(session: Session, wanted_id: WantedId) -> Changes:
    """Take a part out, with its states and sightings; a receipt of it stays."""
    found = session.journal.wanted.get(wanted_id)
    with session.journal.edit(f"Remove wanted {_short(found)}") as edit:
        session.journal.wanted.remove(wanted_id)
    return edit.changes()


def move_wanted(
    session: Session, wanted_ids: Sequence[WantedId], state: WantedState, when: When, note: str = ""
) -> Changes:
    """Record the day on which parts came to a state; a day recorded for it before is replaced.

    Raises:
        JournalError: there is none of a number.
    """
    found = [session.journal.wanted.get(one) for one in dict.fromkeys(wanted_ids)]
    if not found:
        raise JournalError("Pick a wanted part first.")
    what = _short(found[0]) if len(found) == 1 else f"{len(found)} wanted parts"
    with session.journal.edit(f"{what[:1].upper()}{what[1:]}: {state.value}") as edit:
        for one in found:
            session.journal.wanted.set_state(one.id, state, when, note)
    return edit.changes(found[0].id)


def remove_wanted_state(session: Session, wanted_id: WantedId, state: WantedState) -> Changes:
    """Take the day of a state out.

    Raises:
        JournalError: the part never came to it.
    """
    found = session.journal.wanted.get(wanted_id)
    with session.journal.edit(f"Take “{state.value}” back from {_short(found)}") as edit:
        session.journal.wanted.remove_state(wanted_id, state)
    return edit.changes(wanted_id)


def lines_to_tie(session: Session, wanted_id: WantedId) -> tuple[BoughtLine, ...]:
    """Lines of receipts that no wanted part is tied to: what sounds most like it first.

    Of those that sound alike, the latest comes first.
    """
    journal = session.journal
    words = _words(journal.wanted.get(wanted_id).text)
    tied = {part.line_id for part in journal.wanted.all()}
    found = [
        BoughtLine(line.id, one.id, line.text, one.supplier, one.when, line.amount, one.currency)
        for one in reversed(journal.receipts.all())
        for line in one.lines
        if line.id not in tied
    ]
    return tuple(sorted(found, key=lambda line: -len(words & _words(line.text))))


def tie_wanted(session: Session, wanted_id: WantedId, line_id: LineId) -> Changes:
    """Say that a part became a line of a receipt that is recorded already.

    Raises:
        JournalError: there is none of a number.
    """
    found = session.journal.wanted.get(wanted_id)
    with session.journal.edit(f"Tie {_short(found)} to its receipt") as edit:
        session.journal.wanted.tie(wanted_id, line_id)
    return edit.changes(wanted_id)


def add_sighting(session: Session, sighting: Sighting) -> Changes:
    """Record where a part was seen; one that was only wanted is seen from that day on.

    Raises:
        JournalError: it has no place, its price is out of reason, or its currency is unknown.
    """
    found = _checked_sighting(session, sighting)
    with session.journal.edit(f"See {_short(found)} at {sighting.place}") as edit:
        made = session.journal.wanted.add_sighting(sighting)
        if found.state.rank < WantedState.SEEN.rank:
            session.journal.wanted.set_state(found.id, WantedState.SEEN, sighting.when, "")
    return edit.changes(made)


def change_sighting(session: Session, sighting: Sighting) -> Changes:
    """Record a sighting anew.

    Raises:
        JournalError: as for ``add_sighting``.
    """
    found = _checked_sighting(session, sighting)
    label = f"Change where {_short(found)} was seen"
    with session.journal.edit(label) as edit:
        session.journal.wanted.change_sighting(sighting)
    return edit.changes(sighting.id)


def remove_sighting(session: Session, wanted_id: WantedId, sighting_id: SightingId) -> Changes:
    """Take a sighting out."""
    found = session.journal.wanted.get(wanted_id)
    with session.journal.edit(f"Remove where {_short(found)} was seen") as edit:
        session.journal.wanted.remove_sighting(sighting_id)
    return edit.changes(wanted_id)


def receipt_for(session: Session, wanted_ids: Sequence[WantedId], today: date) -> Receipt:
    """A receipt to be checked and recorded, with one line for each part that came.

    Supplier and currency are those of the place where most of the parts were best seen; parts
    seen at another place, or nowhere, have the price left at 0.

    Raises:
        JournalError: no part is given, there is none of a number, or one has a receipt already.
    """
    journal = session.journal
    own = journal.car.get().currency
    parts = [journal.wanted.get(one) for one in dict.fromkeys(wanted_ids)]
    if not parts:
        raise JournalError("Pick a wanted part first.")
    for part in parts:
        if part.line_id is not None:
            raise JournalError(f"{_short(part)} has its receipt already.")
    seen = [one for part in parts if (one := _bought_where(part, own)) is not None]
    places = Counter((one.place, one.currency) for one in seen)
    place, currency = places.most_common(1)[0][0] if places else ("", own)
    return Receipt(
        id=ReceiptId(0),
        supplier=place,
        when=When.on(today),
        currency=currency,
        paper=Paper.HELD,
        printed_total=None,
        lines=tuple(_line(part, place, currency, own) for part in parts),
    )


def _bought_where(part: Wanted, currency: str) -> Sighting | None:
    """Where a part was most likely bought: the best sighting, else the latest one."""
    return best_sighting(part, currency) or (part.sightings[-1] if part.sightings else None)


def _line(part: Wanted, place: str, currency: str, own: str) -> Line:
    there = [
        one
        for one in part.sightings
        if one.place == place and one.currency == currency and one.price is not None
    ]
    price = there[-1].price if there else None
    return Line(
        id=LineId(0),
        text=part.text,
        quantity=part.quantity,
        amount=price or 0,
        category=part.category,
        condition=part.condition or Condition.NEW,
        new_price=part.new_price if currency == own else None,
        shares=() if part.area_id is None else (Share(part.area_id, 1),),
    )


def _check(session: Session, wanted: Wanted) -> None:
    refuse_unreasonable(wanted)
    if wanted.area_id is not None:
        session.journal.areas.get(wanted.area_id)
    panels = session.journal.drawing.panels() if wanted.panel_id is not None else ()
    if wanted.panel_id is not None and all(p.id != wanted.panel_id for p in panels):
        raise JournalError(f"There is no panel number {wanted.panel_id}.")


def _checked_sighting(session: Session, sighting: Sighting) -> Wanted:
    from journal.domain.money import minor_units

    found = session.journal.wanted.get(sighting.wanted_id)
    if not sighting.place.strip():
        raise JournalError("Where was it seen? A shop, a stall or a name is enough.")
    refuse_odd_price(sighting.price, found.text.strip()[:40])
    minor_units(sighting.currency)
    return found


def _words(text: str) -> set[str]:
    return set(re.findall(r"\w+", text.casefold()))


def _short(wanted: Wanted) -> str:
    text = wanted.text.strip()
    return f"“{text if len(text) <= 40 else text[:37] + '...'}”"
