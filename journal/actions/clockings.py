"""Clocking on and off."""

from dataclasses import replace
from datetime import datetime

from journal.actions.hours import refuse_impossible
from journal.actions.session import Session
from journal.domain.changes import Changes
from journal.domain.clockings import Clocking, minutes_run, spoken_moment, stretches
from journal.domain.errors import JournalError
from journal.domain.hours import spoken_hours
from journal.domain.ids import ClockingId, WorkId
from journal.domain.people import same_name
from journal.domain.receipts import Share, refuse_odd_shares
from journal.domain.when import When
from journal.domain.work import Work
from journal.store.rows import kept_text


def now() -> datetime:
    """The moment it is, in local time with its offset, to the second."""
    return datetime.now().astimezone().replace(microsecond=0)


def local(moment: datetime) -> datetime:
    """A moment by this computer's zone, with the offset that held then.

    Raises:
        JournalError: no zone goes back so far.
    """
    try:
        return moment.astimezone().replace(microsecond=0)
    except (ValueError, OverflowError, OSError) as error:
        raise JournalError(f"The year {moment.year} is too long ago for a clock.") from error


def running(session: Session) -> tuple[Clocking, ...]:
    """The clocks that run, the one that ran longest first."""
    return session.journal.clockings.running()


def latest(session: Session) -> Clocking | None:
    """What somebody was clocked on for last."""
    return session.journal.clockings.latest()


def clock_on(
    session: Session,
    person: str,
    shares: tuple[Share, ...] = (),
    note: str = "",
    started: datetime | None = None,
) -> Changes:
    """Start a clock; it is in the journal for good, whatever becomes of the program.

    ``started`` has its offset; None is now.

    Raises:
        JournalError: nobody named, a clock that runs for them already, or a start that has not
            been yet.
    """
    name = " ".join(kept_text(person).split())
    if not name:
        raise JournalError("Whose clock is it? Say who is working.")
    for other in running(session):
        if same_name(other.person) == same_name(name):
            since = spoken_moment(other.started, now().date())
            raise JournalError(f"The clock of {other.person} runs already, since {since}.")
    begin = started or now()
    if begin > now():
        raise JournalError("The clock can't start at a time that has not been yet.")
    refuse_odd_shares(shares)
    with session.journal.edit(f"Clock {name} on") as edit:
        made = session.journal.clockings.add(
            Clocking(ClockingId(0), name, begin, note.strip(), shares)
        )
    return edit.changes(made)


def clock_off(
    session: Session,
    clocking: Clocking,
    stopped: datetime | None = None,
    minutes: int | None = None,
) -> Changes:
    """Stop a clock and record its hours, as one edit; over midnight they are one day's each.

    The hours get the note and the shares of ``clocking``. ``stopped`` has its offset, None is now;
    ``minutes`` are what is recorded, None for the time run to the nearest five minutes.

    Raises:
        JournalError: it is stopped already, would run backwards or longer than a day, or
            ``minutes`` are more than it ran.
    """
    store = session.journal.clockings
    kept = store.get(clocking.id)
    if kept.stopped is not None:
        raise JournalError(f"The clock of {kept.person} is stopped already.")
    end = stopped or now()
    if end > now():
        raise JournalError("The clock can't stop at a time that has not been yet.")
    parts = stretches(kept.started, end, minutes)
    shares = _known(session, clocking.shares)
    total = sum(part.minutes for part in parts)
    with session.journal.edit(f"Clock {kept.person} off: {spoken_hours(total)}") as edit:
        for number, part in enumerate(parts):
            work = Work(
                WorkId(0), When.on(part.day), part.minutes, kept.person, clocking.note, shares
            )
            refuse_impossible(work)
            run = replace(
                clocking,
                id=kept.id if number == 0 else ClockingId(0),
                person=kept.person,
                started=part.started,
                stopped=part.stopped,
                shares=shares,
                work_id=session.journal.work.add(work),
            )
            if number == 0:
                store.change(run)
            else:
                store.add(run)
    return edit.changes(kept.id)


def throw_away(session: Session, clocking_id: ClockingId) -> Changes:
    """Take a running clock out, with nothing recorded of it.

    Raises:
        JournalError: it is stopped already: its hours are what is to be removed then.
    """
    found = session.journal.clockings.get(clocking_id)
    if found.stopped is not None:
        raise JournalError(f"The clock of {found.person} is stopped; remove its hours instead.")
    with session.journal.edit(f"Throw the clock of {found.person} away") as edit:
        session.journal.clockings.remove(clocking_id)
    return edit.changes()


def ran(clocking: Clocking, at: datetime) -> int:
    """The whole minutes that a clock has run; 0 where this computer's clock was put back."""
    return minutes_run(clocking.started, at) if at > clocking.started else 0


def _known(session: Session, shares: tuple[Share, ...]) -> tuple[Share, ...]:
    """The shares of areas that are still there."""
    known = {area.id for area in session.journal.areas.all()}
    return tuple(share for share in shares if share.area_id in known)
