"""Cautions as the dossier prints them."""

from collections.abc import Iterable

from journal.domain.cautions import caution
from journal.domain.errors import JournalError
from journal.dossier.document import Warned
from journal.dossier.words import sentence

#: What every dossier says of its own limits.
NEVER_A_PASS = (
    "This document says what is recorded. It never passes the car, a weld or a repair as safe: "
    "that takes an inspection by somebody qualified to make it, under local rules."
)


def warned(keys: Iterable[str]) -> tuple[Warned, ...]:
    """The caution of each key, in the order given; a key of the owner's own stands for itself."""
    return tuple(_warned(key) for key in keys)


def gathered(areas: Iterable[tuple[int, tuple[Warned, ...]]]) -> tuple[Warned, ...]:
    """Each caution once, with the numbers of its repair areas, in the order they are met."""
    numbers: dict[Warned, list[int]] = {}
    for number, cautions in areas:
        for one in cautions:
            numbers.setdefault(one, []).append(number)
    return tuple(Warned(one.title, one.text, tuple(where)) for one, where in numbers.items())


def _warned(key: str) -> Warned:
    try:
        known = caution(key)
    except JournalError:
        return Warned(sentence(key).rstrip("."), "Take care, and follow local rules.")
    source = f" ({known.source}.)" if known.source else ""
    return Warned(known.title, known.text + source)
