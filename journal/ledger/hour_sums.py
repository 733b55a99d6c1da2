"""Hours summed: own apart from paid, what the owner values them at, and how they are known."""

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import datetime

from journal.domain.costs import NO_DATE, NO_PERSON, NOT_SHARED
from journal.domain.errors import JournalError
from journal.domain.hour_sums import NO_MONTH, NO_PANEL, SUMS_BY, HourSum, HourTable, SumsBy
from journal.domain.ids import PanelId
from journal.domain.people import Person, PersonKind, same_name
from journal.domain.sharing import share
from journal.domain.when import When
from journal.domain.work import WorkBasis
from journal.ledger.books import Books, year_of
from journal.ledger.panels import OverPanels
from journal.ledger.pieces import Done, taken_apart

_LAST = {
    NO_DATE: "no date",
    NO_MONTH: "no month known",
    NO_PERSON: "nobody named",
    NOT_SHARED: "not shared over repair areas",
    NO_PANEL: "on no panel",
}
_Keyed = Iterator[tuple[str, int]]


@dataclass(slots=True)
class _Row:
    """What comes together for one row."""

    by_person: dict[str, int]
    clocked: int = 0
    at_least: int = 0


def sum_hours(
    by: SumsBy,
    books: Books,
    people: Sequence[Person] = (),
    panels: Mapping[PanelId, str] | None = None,
) -> HourTable:
    """Sum the hours by one thing.

    The hours of a repair area go to its panels evenly. A person's value is what their minutes
    come to at their rate, to the nearest minor unit (half up); it is shared over the rows by
    their minutes there, so that the rows add up to the same total whatever they are summed by.
    Somebody who is not among ``people`` counts as own, at no rate.

    Rows come in the order of the repair areas, panels (``panels`` are their labels), years and
    months, people with the most time first; what belongs to none comes last.

    Raises:
        JournalError: hours can't be summed by ``by``.
    """
    if by not in SUMS_BY:
        raise JournalError(f"Hours can't be summed by “{by}”, only by {', '.join(SUMS_BY)}.")
    listed = {same_name(person.name): person for person in people}
    rows: dict[str, _Row] = defaultdict(lambda: _Row(defaultdict(int)))
    over = OverPanels(books.areas)
    for done in taken_apart(replace(books, receipts=())).done:
        work, person = done.work, same_name(done.work.person)
        for key, minutes in _keyed(by, done, over):
            row = rows[key]
            row.by_person[person] += minutes
            row.clocked += minutes * (work.basis is WorkBasis.CLOCKED)
            row.at_least += minutes * (work.basis is WorkBasis.PHOTOS)
    labels = _labels(by, books, listed, panels or {})
    values = _values(rows, listed)
    sums = [_sum(key, labels.get(key, key), row, listed, values[key]) for key, row in rows.items()]
    places = {key: place for place, key in enumerate(labels)}
    sums.sort(key=lambda row: _order(by, row, places))
    return HourTable(by, books.currency, tuple(sums), _total(sums))


def _keyed(by: SumsBy, done: Done, over: OverPanels) -> _Keyed:
    """The keys that a day's work counts under, with the minutes for each."""
    work = done.work
    if by == "person":
        yield same_name(work.person) or NO_PERSON, work.minutes
    elif by == "year":
        yield year_of(work.when), work.minutes
    elif by == "month":
        yield _month(work.when), work.minutes
    else:
        for area_id, minutes in done.parts:
            if by == "area":
                yield (NOT_SHARED if area_id is None else str(area_id)), minutes
                continue
            for key, part in over.parts(area_id, done.upkeep, minutes):
                yield (NO_PANEL if key == NOT_SHARED else key), part


def _month(when: When) -> str:
    first, last = when.earliest, when.latest
    if first == datetime.min or (first.year, first.month) != (last.year, last.month):
        return NO_DATE if first == datetime.min else NO_MONTH
    return f"{first.year:04d}-{first.month:02d}"


def _values(rows: Mapping[str, _Row], listed: Mapping[str, Person]) -> dict[str, int]:
    """What each row's own hours come to; together exactly what each person's do."""
    values = dict.fromkeys(rows, 0)
    for name, person in listed.items():
        if person.rate is None or person.kind is PersonKind.PAID:
            continue
        minutes = {key: row.by_person.get(name, 0) for key, row in rows.items()}
        whole = (2 * sum(minutes.values()) * person.rate + 60) // 120
        if any(minutes.values()):
            for key, part in zip(minutes, share(whole, list(minutes.values())), strict=True):
                values[key] += part
    return values


def _sum(key: str, label: str, row: _Row, listed: Mapping[str, Person], value: int) -> HourSum:
    own = paid = valued = 0
    for name, minutes in row.by_person.items():
        person = listed.get(name)
        if person is not None and person.kind is PersonKind.PAID:
            paid += minutes
            continue
        own += minutes
        if person is not None and person.rate is not None:
            valued += minutes
    return HourSum(
        key=key,
        label=label,
        own=own,
        paid=paid,
        valued=valued,
        value=value if valued else None,
        clocked=row.clocked,
        at_least=row.at_least,
    )


def _total(sums: Sequence[HourSum]) -> HourSum:
    values = [row.value for row in sums if row.value is not None]
    return HourSum(
        key="",
        label="total",
        own=sum(row.own for row in sums),
        paid=sum(row.paid for row in sums),
        valued=sum(row.valued for row in sums),
        value=sum(values) if values else None,
        clocked=sum(row.clocked for row in sums),
        at_least=sum(row.at_least for row in sums),
    )


def _labels(
    by: SumsBy, books: Books, listed: Mapping[str, Person], panels: Mapping[PanelId, str]
) -> dict[str, str]:
    """What people read for each key, in the order that rows come in."""
    if by == "area":
        return {**{str(area.id): area.name for area in books.areas}, **_LAST}
    if by == "panel":
        return {**{str(panel_id): label for panel_id, label in panels.items()}, **_LAST}
    if by == "person":
        spelt: dict[str, str] = {}
        for work in books.work:
            spelt.setdefault(same_name(work.person), " ".join(work.person.split()))
        return {**spelt, **{key: person.name for key, person in listed.items()}, **_LAST}
    return dict(_LAST)


def _order(by: SumsBy, row: HourSum, places: Mapping[str, int]) -> tuple[bool, int, str]:
    first = -row.minutes if by == "person" else places.get(row.key, 0)
    return row.key in _LAST, first, row.label.casefold()
