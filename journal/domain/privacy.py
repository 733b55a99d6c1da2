"""What leaves the house: the record redacted once, before anything is made of it.

Everything that is made for others (dossier, bundle, album) is made from a redacted record, so that
what is withheld can't come back by another way. The redacted record says itself what isn't in it.
"""

import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, fields, is_dataclass, replace
from datetime import datetime
from enum import Enum
from typing import Any

from journal.domain.car import Car
from journal.domain.drawing import Drawing
from journal.domain.hidden_words import MARK, Finder, Sought, money_pattern
from journal.domain.money import format_money
from journal.domain.people import Person
from journal.domain.private_words import Private, PrivateWord
from journal.domain.record import Record
from journal.domain.shapes import Shape, Stroke
from journal.domain.when import When

#: Words in names that are nobody's: left alone by themselves, withheld in the whole name.
_NOBODYS = frozenset(
    re.findall(
        r"\w+",
        """and the my his her our von van de der den del la le di da dos mr mrs ms dr jr sr brother
        sister father mother friend neighbour neighbor uncle aunt cousin son daughter wife husband
        owner self me january february march april may june july august september october november
        december monday tuesday wednesday thursday friday saturday sunday""",
    )
)

#: Words in names of suppliers that are the trade's (common practice, no source).
_TRADE = _NOBODYS | frozenset(
    re.findall(
        r"\w+",
        """auto autos bank bodies body bros brothers car cars classic classics club co company
        corner engineering factors fair fasteners foundry gas garage gmbh glass hardware house inc
        iron ltd machine market mart metal metals motor motors motoring oil one online paint paints
        panel panels parts plating post powder private coating rubber sale sales scrap sheet shop
        show spares steel steels store stores supplies supply swap technical tool tools trade
        trading trim tyre tyres upholstery wax welding works workshop yard for of at from in on old
        new north south east west anchor chrome radiator exhaust brake brakes weld welder hire
        inspection inspector breakers breaker stationers post insurance registry office state
        county city town village station electric electrics electrical engine engines gearbox sill
        sills door doors wing wings roof floor seat seats carpet rust primer filler""",
    )
)

#: Fields that are keys and codes, not words.
_KEYS = frozenset({"sha256", "suffix", "edtf", "offset", "currency", "unit", "body", "how"})

#: Sums of money by the name of their field: those that may be unknown, and those that may not.
_MAY_LACK = frozenset({"printed_total", "new_price", "tax", "price_limit", "ceiling"})
_SUMS = frozenset({"amount", "price", "best", "likely", "worst"})

#: So many digits of a car's number are as good as the number.
_LONG_RUN = 5

#: Times that have the names of sums.
_TIMES = frozenset({("Finding", "minutes")})

_WHOLE_TYPES = (When, Shape, Stroke, datetime, Enum)


@dataclass(frozen=True, slots=True)
class Redacted:
    """A record without what is withheld.

    ``text`` and ``file_name`` take the same out of any other text. ``counts`` is how often each
    sort was found in the record's own words.
    """

    record: Record
    withheld: frozenset[Private]
    counts: Mapping[Private, int]
    text: Callable[[str], str]
    file_name: Callable[[str], str]
    finder: Finder


def redact(record: Record, withheld: Iterable[Private], words: Iterable[PrivateWord]) -> Redacted:
    """The record without prices, names, numbers and words that are ``withheld``.

    People and suppliers become "person 1" and "supplier 2", the same one everywhere. Sums become
    nothing, and ``Record.withheld`` tells whoever reads it that they are not noughts. Camera serial
    numbers go always. Only boxes that cover what is withheld stay in it.
    """
    kinds = frozenset(withheld)
    finder = Finder(sought(record, kinds, tuple(words)))
    walker = _Walker(record, kinds, finder)
    made: Record = walker.value(record)
    made = replace(
        made,
        car=_car(made, kinds),
        withheld=kinds,
        boxes=tuple(box for box in made.boxes if box.hides in kinds),
    )
    return Redacted(made, kinds, dict(finder.counts), finder.text, finder.file_name, finder)


def gives_papers(withheld: Iterable[Private]) -> bool:
    """Whether scans of receipts may go along: they show prices, suppliers and addresses."""
    shown = {Private.PRICES, Private.SUPPLIERS, Private.ADDRESSES, Private.PEOPLE}
    return not shown & set(withheld)


def gives_originals(withheld: Iterable[Private]) -> bool:
    """Whether photos may go along byte for byte: what is withheld may be seen in them."""
    return not set(withheld)


def title_for_others(
    car: Car, people: Iterable[Person], withheld: Iterable[Private], words: Iterable[PrivateWord]
) -> str:
    """The car's title without what is withheld, as a file that leaves the house may be called.

    "" where nothing is left of it.
    """
    alone = Record(car, (), Drawing((), (), ()), (), (), (), (), (), (), (), (), people=(*people,))
    title = redact(alone, withheld, words).record.car.title
    return " ".join(re.sub(rf"{re.escape(MARK)}(?:['’]s?\b)?[^\w\s]*", " ", title).split())


# --- what is looked for ---


def sought(record: Record, kinds: frozenset[Private], words: tuple[PrivateWord, ...]) -> Sought:
    """The words and numbers to be found in the record's texts."""
    names: dict[Private, set[str]] = {kind: set() for kind in kinds}
    numbers: dict[Private, set[str]] = {kind: set() for kind in kinds}
    for word in words:
        if word.kind in kinds:
            into = numbers if word.kind in (Private.PLATE, Private.CHASSIS) else names
            into[word.kind].add(word.words)
    if Private.PEOPLE in kinds:
        names[Private.PEOPLE].update(_with_parts(people(record), _NOBODYS, 2))
    if Private.SUPPLIERS in kinds:
        names[Private.SUPPLIERS].update(_with_parts(suppliers(record), _trade(record), 4))
    car = record.car
    if Private.PLATE in kinds:
        numbers[Private.PLATE].update(_numbers(car.registration))
    if Private.CHASSIS in kinds:
        numbers[Private.CHASSIS].update(_numbers(car.chassis_number, car.engine_number))
    money = money_pattern(_money_signs(record)) if Private.PRICES in kinds else None
    return Sought(
        {kind: frozenset(found) for kind, found in names.items()},
        {kind: frozenset(found) for kind, found in numbers.items()},
        money,
        Private.ADDRESSES in kinds,
    )


def people(record: Record) -> tuple[str, ...]:
    """Everybody the record names, the owner first, in order of their first hours."""
    found = [record.car.owner, *(person.name for person in record.people)]
    found += [work.person for work in record.work]
    found += [getattr(row, "valuer", "") for row in record.valuations]
    return tuple(dict.fromkeys(name.strip() for name in found if name.strip()))


def suppliers(record: Record) -> tuple[str, ...]:
    """Every supplier the record names, in order of the first receipt."""
    found = [receipt.supplier for receipt in record.receipts]
    found += [sighting.place for row in record.wanted for sighting in row.sightings]
    return tuple(dict.fromkeys(name.strip() for name in found if name.strip()))


def _trade(record: Record) -> frozenset[str]:
    """Words that say nothing of whose shop it is: the trade's own, the panels' and the car's."""
    car = record.car
    known = [panel.name for panel in record.drawing.panels]
    known += [car.title, car.maker, car.model, car.colour]
    return _TRADE | {part.casefold() for text in known for part in _parts(text)}


def _parts(text: str) -> list[str]:
    return re.findall(r"[^\W\d_]+", text)


def _with_parts(names: Iterable[str], common: frozenset[str], least: int) -> Iterable[str]:
    for name in names:
        if any(sign.isalnum() for sign in name):
            yield name
        for part in _parts(name):
            # A part in small letters is a word of its language, not a name.
            if len(part) >= least and part.casefold() not in common and not part.islower():
                yield part


def _numbers(*typed: str) -> Iterable[str]:
    """Those of the typed texts that are a number of a car: a remark without a digit is none.

    A long run of digits in one names the car by itself, and people write it without its noughts.
    """
    for text in typed:
        if any(sign.isdigit() for sign in text):
            yield text
            for run in re.findall(rf"\d{{{_LONG_RUN},}}", text):
                yield run
                if len(run.lstrip("0")) >= _LONG_RUN:
                    yield run.lstrip("0")


def _money_signs(record: Record) -> Iterable[str]:
    codes = {record.car.currency, *(receipt.currency for receipt in record.receipts)}
    for code in codes:
        yield code
        yield re.sub(r"[\d.,\s]", "", format_money(0, code))


# --- taking it out ---


class _Walker:
    """Goes through every value of a record, whatever kinds of row it will hold one day."""

    def __init__(self, record: Record, kinds: frozenset[Private], finder: Finder) -> None:
        self._kinds = kinds
        self._finder = finder
        self._names: dict[type, tuple[str, ...]] = {}
        self._people = _numbered(people(record), "person") if Private.PEOPLE in kinds else {}
        shops = suppliers(record)
        self._suppliers = _numbered(shops, "supplier") if Private.SUPPLIERS in kinds else {}

    def value(self, value: Any) -> Any:
        """A value with everything withheld taken out of it."""
        if isinstance(value, _WHOLE_TYPES):
            return value
        if isinstance(value, str):
            return self._finder.text(value)
        if type(value) is tuple:
            return tuple(self.value(item) for item in value)
        if is_dataclass(value) and not isinstance(value, type):
            return self._row(value)
        return value

    def _row(self, row: Any) -> Any:
        changed = {}
        for name in self._names_of(row):
            before = getattr(row, name)
            after = self._field(type(row).__name__, name, before)
            if after is not before:
                changed[name] = after
        return replace(row, **changed) if changed else row

    def _names_of(self, row: Any) -> tuple[str, ...]:
        found = self._names.get(type(row))
        if found is None:
            found = self._names[type(row)] = tuple(field.name for field in fields(row))
        return found

    def _field(self, owner: str, name: str, value: Any) -> Any:
        if name in _KEYS or value is None or (owner, name) in _TIMES:
            return value
        if isinstance(value, str) and not isinstance(value, Enum):
            return self._words(owner, name, value)
        if Private.PRICES in self._kinds and type(value) is int:
            if name in _MAY_LACK or (owner, name) == ("Person", "rate"):
                return None
            return 0 if name in _SUMS else value
        return self.value(value)

    def _words(self, owner: str, name: str, text: str) -> str:
        if (owner, name) in _PERSONS and text.strip():
            return self._people.get(text.strip(), self._finder.text(text))
        if (owner, name) in _SHOPS and text.strip():
            return self._suppliers.get(text.strip(), self._finder.text(text))
        if (owner, name) == ("Camera", "serial"):
            return ""
        if (owner, name) == ("Photo", "name"):
            return self._finder.file_name(text)
        if name == "read_text" and self._kinds:
            return ""
        return self._finder.text(text)


_PERSONS = frozenset(
    {("Work", "person"), ("Person", "name"), ("Clocking", "person"), ("Valuation", "valuer")}
)
_SHOPS = frozenset({("Receipt", "supplier"), ("Sighting", "place")})


def _numbered(names: tuple[str, ...], noun: str) -> dict[str, str]:
    return {name: f"{noun} {number}" for number, name in enumerate(names, 1)}


def _car(made: Record, kinds: frozenset[Private]) -> Any:
    car = made.car
    if Private.PEOPLE in kinds:
        car = replace(car, owner="")
    if Private.PLATE in kinds:
        car = replace(car, registration="")
    if Private.CHASSIS in kinds:
        car = replace(car, chassis_number="", engine_number="")
    return car


# --- what is said of it ---

_SAID = {
    Private.PRICES: "Prices: every sum of money.",
    Private.SUPPLIERS: "Suppliers: they are numbered in place of their names.",
    Private.PEOPLE: "People: they are numbered in place of their names.",
    Private.ADDRESSES: "Addresses: of places, e-mail, the web and telephones.",
    Private.PLATE: "The number plate.",
    Private.CHASSIS: "The chassis number and the engine number.",
    Private.OTHER: "Other words that the owner listed.",
}

ALWAYS = (
    "Always withheld: positions, serial numbers of cameras, and whatever else a picture's file "
    "says beside the picture. The originals keep all of it."
)


def said_of(redacted: Redacted, photos_covered: int = 0) -> tuple[str, ...]:
    """What is withheld, one sentence each, for the reader."""
    rows = [words for kind, words in _SAID.items() if kind in redacted.withheld]
    found = sum(redacted.counts.values())
    if found:
        times = "once" if found == 1 else f"in {found:,} places of the whole record"
        rows.append(f"In the owner's words {MARK} stands for it, {times}.")
    if photos_covered:
        noun = "1 photo" if photos_covered == 1 else f"{photos_covered:,} photos"
        rows.append(f"Grey boxes cover it on {noun} of the record; the originals are as they were.")
    return (*rows, ALWAYS)
