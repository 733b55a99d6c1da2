"""Measures on the drawing, and the readings taken at them."""

from collections.abc import Sequence
from dataclasses import replace

from journal.actions.session import Session
from journal.domain.changes import Changes
from journal.domain.ids import MeasureId, ReadingId
from journal.domain.readings import Measure, Reading, check_measure, check_reading


def measures(session: Session) -> tuple[Measure, ...]:
    """Every place that is measured."""
    return session.journal.readings.measures()


def readings(session: Session) -> tuple[Reading, ...]:
    """Every number read, in order of date."""
    return session.journal.readings.all()


def add_measure(session: Session, measure: Measure) -> Changes:
    """Define a place to be measured.

    Raises:
        JournalError: it has no name or point, or its target can't be.
    """
    check_measure(measure)
    with session.journal.edit(f"New measure “{measure.name}”") as edit:
        made = session.journal.readings.add_measure(measure)
    return edit.changes(made)


def change_measure(session: Session, measure: Measure) -> Changes:
    """Define a place anew.

    Raises:
        JournalError: as for ``add_measure``, or a reading of it has no place any more.
    """
    check_measure(measure)
    store = session.journal.readings
    for reading in store.all():
        if reading.measure_id == measure.id:
            check_reading(measure, reading)
    with session.journal.edit(f"Change measure “{measure.name}”") as edit:
        store.change_measure(measure)
    return edit.changes(measure.id)


def remove_measure(session: Session, measure_id: MeasureId) -> Changes:
    """Take a place out, with its readings."""
    name = session.journal.readings.measure(measure_id).name
    with session.journal.edit(f"Remove measure “{name}”") as edit:
        session.journal.readings.remove_measure(measure_id)
    return edit.changes()


def record_readings(session: Session, taken: Sequence[Reading]) -> Changes:
    """Record numbers read at one measure, a whole row at once; numbers of id 0 are new.

    Raises:
        JournalError: a number can't be, or is of a place that the measure doesn't have.
    """
    store = session.journal.readings
    names: dict[str, None] = {}
    for reading in taken:
        measure = store.measure(reading.measure_id)
        check_reading(measure, reading)
        names[measure.name] = None
    with session.journal.edit(f"Read {', '.join(names) or 'nothing'}") as edit:
        for reading in taken:
            if reading.id:
                store.change(reading)
            else:
                store.add(replace(reading, id=ReadingId(0)))
    return edit.changes()


def remove_reading(session: Session, reading_id: ReadingId) -> Changes:
    """Take a number read out."""
    with session.journal.edit("Remove a reading") as edit:
        session.journal.readings.remove(reading_id)
    return edit.changes()
