"""People who work on the car: the owner and friends, whose hours cost nothing, and those paid."""

from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum

from journal.domain.errors import JournalError
from journal.domain.ids import PersonId
from journal.domain.money import MOST


class PersonKind(StrEnum):
    """Whether somebody's hours are given or bought."""

    OWN = "own"
    PAID = "paid"


@dataclass(frozen=True, slots=True)
class Person:
    """Somebody who works on the car.

    ``rate`` is what the owner values an own hour at, in minor units of the journal's currency;
    None values nothing. A paid person has none: what was paid stands on receipts. ``id`` 0 is
    somebody who worked and was never put on the list.
    """

    id: PersonId
    name: str
    kind: PersonKind = PersonKind.OWN
    rate: int | None = None
    note: str = ""


def same_name(name: str) -> str:
    """What two spellings of one name have in common: capitals and spaces don't count."""
    return " ".join(name.split()).casefold()


def refuse_odd_person(person: Person, others: Iterable[Person]) -> None:
    """Refuse somebody without a name, known already, or with a rate that can't be.

    Raises:
        JournalError: naming what is wrong.
    """
    if not person.name.strip():
        raise JournalError("Somebody on the list of people needs a name.")
    if any(
        same_name(other.name) == same_name(person.name) and other.id != person.id
        for other in others
    ):
        raise JournalError(f"“{person.name.strip()}” is on the list of people already.")
    if person.rate is None:
        return
    if person.kind is PersonKind.PAID:
        raise JournalError(
            "A paid person has no rate here: what was paid stands on receipts. Rates value own "
            "hours alone."
        )
    if not 0 <= person.rate <= MOST:
        raise JournalError("A rate is nothing or more, and no larger than a sum can be.")


def everybody(listed: Iterable[Person], worked: Iterable[str]) -> tuple[Person, ...]:
    """Those on the list, and after them who worked without being on it: own, at no rate."""
    known = list(listed)
    names = {same_name(person.name) for person in known}
    for name in worked:
        plain = same_name(name)
        if plain and plain not in names:
            names.add(plain)
            known.append(Person(PersonId(0), " ".join(name.split())))
    return tuple(known)
