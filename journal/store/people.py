"""The people who work on the car."""

from typing import Any

from journal.domain.ids import PersonId
from journal.domain.people import Person, PersonKind, same_name
from journal.store.opened import Subject
from journal.store.rows import delete, insert, update


class People(Subject):
    """The list of people. Hours name somebody by their words, so nobody need be on it."""

    def all(self) -> tuple[Person, ...]:
        """Everybody on the list, in order of name."""
        found = self._db.execute("SELECT id, name, kind, rate, note FROM people ORDER BY name, id")
        return tuple(
            Person(PersonId(i), name, PersonKind(kind), rate, note)
            for i, name, kind, rate, note in found
        )

    def add(self, person: Person) -> PersonId:
        """Put somebody on the list."""
        return PersonId(insert(self._db, "people", _values(person)))

    def change(self, person: Person) -> None:
        """Record somebody anew."""
        update(self._db, "people", person.id, _values(person))

    def remove(self, person_id: PersonId) -> None:
        """Take somebody off the list; their hours stay."""
        delete(self._db, "people", person_id)

    def rename_everywhere(self, old: str, new: str) -> None:
        """Write a name in its new spelling in all hours and clockings."""
        for table in ("work", "clockings"):
            for number, name in self._db.execute(f"SELECT id, person FROM {table}").fetchall():
                if same_name(name) == same_name(old):
                    update(self._db, table, number, {"person": new})


def _values(person: Person) -> dict[str, Any]:
    return {
        "name": person.name,
        "kind": person.kind.value,
        "rate": person.rate,
        "note": person.note,
    }
