"""The people who work on the car: own or paid, with the rate that the owner gives own hours."""

from journal.actions.session import Session
from journal.domain.changes import Changes
from journal.domain.ids import PersonId
from journal.domain.people import Person, everybody, refuse_odd_person
from journal.store.rows import kept_text


def listed_people(session: Session) -> tuple[Person, ...]:
    """Everybody on the list, in order of name."""
    return session.journal.people.all()


def all_people(session: Session) -> tuple[Person, ...]:
    """Those on the list, and after them who worked without being on it, with number 0."""
    return everybody(session.journal.people.all(), session.journal.work.people())


def save_person(session: Session, person: Person) -> Changes:
    """Put somebody on the list (number 0) or record them anew.

    Another spelling of the name is written in all their hours too, as part of the same edit.

    Raises:
        JournalError: no name, a name on the list already, or a rate that can't be.
    """
    store = session.journal.people
    listed = store.all()
    kept = _tidy(person)
    refuse_odd_person(kept, listed)
    old = next((one.name for one in listed if one.id == person.id), kept.name)
    verb = "Change" if person.id else "List"
    with session.journal.edit(f"{verb} {kept.name}, {kept.kind.value}") as edit:
        if person.id:
            store.change(kept)
            made = person.id
        else:
            made = store.add(kept)
        if old != kept.name:
            store.rename_everywhere(old, kept.name)
    return edit.changes(made)


def remove_person(session: Session, person_id: PersonId) -> Changes:
    """Take somebody off the list; their hours stay, as own hours at no rate."""
    with session.journal.edit("Take somebody off the list of people") as edit:
        session.journal.people.remove(person_id)
    return edit.changes()


def _tidy(person: Person) -> Person:
    name = " ".join(kept_text(person.name).split())
    return Person(person.id, name, person.kind, person.rate, person.note.strip())
