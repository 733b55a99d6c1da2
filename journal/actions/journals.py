"""Making and opening journals."""

from pathlib import Path

from journal.actions.session import Session
from journal.domain.car import Car
from journal.domain.errors import JournalError
from journal.store import folder as store


def new_journal(folder: Path, car: Car) -> Session:
    """Make a journal with the starter drawing of the car's body, and open it.

    Raises:
        JournalError: the title is empty, the sizes can't be a car's, the currency is unknown, or
            the folder holds something already or can't be written to.
    """
    # Shapes bring a geometry library along, which opening a journal does not need.
    from journal.domain.money import minor_units
    from journal.domain.starters import starter

    if not car.title.strip():
        raise JournalError("The car needs a name.")
    minor_units(car.currency)
    drawing = starter(car.body, car.wheelbase_mm, car.length_mm)
    return Session(store.make(folder, car, drawing))


def open_journal(folder: Path, *, read_only: bool = False) -> Session:
    """Open a journal; to read only where it can't be written to, with the reason in ``notice``.

    Raises:
        JournalError: it is no journal, is damaged, or can't be read.
    """
    return Session(store.open_folder(folder, read_only=read_only))
