"""Price indices: brought in or typed by the owner, and one of them chosen."""

from collections.abc import Mapping
from dataclasses import replace
from decimal import Decimal
from pathlib import Path

from journal.actions.session import Session
from journal.domain.changes import Changes
from journal.domain.errors import JournalError
from journal.domain.ids import PriceIndexId
from journal.domain.price_index import PriceIndex, read_index

#: A price index is a few kilobytes; a file beyond this is something else.
_MOST_BYTES = 4_000_000


def price_indices(session: Session) -> tuple[PriceIndex, ...]:
    """Every price index of the journal, by name."""
    return session.journal.price_indices.all()


def chosen_index(session: Session) -> PriceIndex | None:
    """The index that the ledger revalues by, None where none is chosen."""
    return next((index for index in price_indices(session) if index.chosen), None)


def find_index(session: Session, name: str) -> PriceIndex:
    """The index of a name, whatever its capitals.

    Raises:
        JournalError: there is none.
    """
    plain = " ".join(name.split()).casefold()
    for index in price_indices(session):
        if index.name.casefold() == plain:
            return index
    raise JournalError(f"The journal has no price index “{name[:60]}”.")


def read_index_file(path: Path) -> dict[str, Decimal]:
    """The values in a file of two columns, period and value, without recording them.

    Raises:
        JournalError: the file can't be read, or naming the first row that can't be.
    """
    try:
        with path.open("rb") as file:
            data = file.read(_MOST_BYTES + 1)
    except OSError as error:
        raise JournalError(f"“{path.name}” can't be read: {error.strerror or error}.") from error
    if len(data) > _MOST_BYTES:
        raise JournalError(f"“{path.name}” is too large to be a price index.")
    if b"\0" in data:
        raise JournalError(f"“{path.name}” is no text: save it as CSV, two columns.")
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError:
        text = data.decode("cp1252", errors="replace")  # Only headings can hold such a sign.
    try:
        return read_index(text)
    except JournalError as error:
        raise JournalError(f"“{path.name}”: {error}") from error


def record_index(
    session: Session, name: str, currency: str, source: str, values: Mapping[str, Decimal]
) -> Changes:
    """Record a price index; one of the same name gets the new values, currency and source.

    The first of a journal in the journal's own currency is chosen at once.

    Raises:
        JournalError: it has no name, no source or no value, or its currency is unknown.
    """
    from journal.domain.money import minor_units

    name, source = " ".join(name.split()), source.strip()
    if not name:
        raise JournalError("A price index needs a name.")
    if not source:
        raise JournalError("Say where the price index is from: who publishes it, and which series.")
    if not values:
        raise JournalError("A price index needs values.")
    minor_units(currency)
    store = session.journal.price_indices
    known = store.all()
    old = next((i for i in known if i.name.casefold() == name.casefold()), None)
    if old is not None:
        with session.journal.edit(f"Replace the price index “{old.name}”") as edit:
            store.change(replace(old, currency=currency, source=source, values=values))
        return edit.changes(old.id)
    first = currency == session.journal.car.get().currency and not any(i.chosen for i in known)
    with session.journal.edit(f"Record the price index “{name}”") as edit:
        made = store.add(PriceIndex(PriceIndexId(0), name, currency, source, values, first))
    return edit.changes(made)


def choose_index(session: Session, index_id: PriceIndexId | None) -> Changes:
    """Revalue by this index from now on; None by none.

    Raises:
        JournalError: there is none of that number, or it is in another currency than the journal.
    """
    from journal.domain.price_index import refuse_other_currency

    label = "Choose no price index"
    if index_id is not None:
        index = session.journal.price_indices.get(index_id)
        refuse_other_currency(index, session.journal.car.get().currency)
        label = f"Choose the price index “{index.name}”"
    with session.journal.edit(label) as edit:
        session.journal.price_indices.choose(index_id)
    return edit.changes(index_id)


def remove_index(session: Session, index_id: PriceIndexId) -> Changes:
    """Take a price index out.

    Raises:
        JournalError: there is none of that number.
    """
    index = session.journal.price_indices.get(index_id)
    with session.journal.edit(f"Remove the price index “{index.name}”") as edit:
        session.journal.price_indices.remove(index_id)
    return edit.changes()
