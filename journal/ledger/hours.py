"""Hours summed by repair area, person and year."""

from journal.domain.costs import (
    HOURS_BY,
    NO_DATE,
    NO_PERSON,
    NOT_SHARED,
    HoursBy,
    HoursRow,
    HoursTable,
)
from journal.domain.errors import JournalError
from journal.ledger.books import Books, Worked, worked

_LAST = {
    NO_DATE: "no date",
    NO_PERSON: "nobody named",
    NOT_SHARED: "not shared over repair areas",
}


def hours_table(by: HoursBy, books: Books) -> HoursTable:
    """Lay the hours out by one thing; the rows add up to the total, the same one for every thing.

    Rows come in the order of the repair areas, of the years, or by person with the most time
    first; rows that stand for none of these come last.

    Raises:
        JournalError: hours can't be laid out by ``by``.
    """
    if by not in HOURS_BY:
        raise JournalError(f"Hours can't be laid out by “{by}”, only by {', '.join(HOURS_BY)}.")
    sums: dict[str, tuple[int, int]] = {}
    names: dict[str, str] = {}
    for piece in worked(books):
        key = _key(by, piece, names)
        restoration, upkeep = sums.get(key, (0, 0))
        if piece.upkeep:
            sums[key] = restoration, upkeep + piece.minutes
        else:
            sums[key] = restoration + piece.minutes, upkeep
    labels = {**names, **_LAST, **{str(area.id): area.name for area in books.areas}}
    rows = [HoursRow(key, labels.get(key, key), *sums[key]) for key in sums]
    places = {str(area.id): place for place, area in enumerate(books.areas)}
    rows.sort(key=lambda row: _order(by, row, places))
    total = HoursRow("", "total", sum(r.restoration for r in rows), sum(r.upkeep for r in rows))
    return HoursTable(by, tuple(rows), total)


def _key(by: HoursBy, piece: Worked, names: dict[str, str]) -> str:
    if by == "area":
        return NOT_SHARED if piece.area_id is None else str(piece.area_id)
    if by == "year":
        return piece.year
    person = " ".join(piece.person.split())
    # A name written with other capitals is the same person; the spelling met first is shown.
    return names.setdefault(person.casefold(), person) or NO_PERSON


def _order(by: HoursBy, row: HoursRow, places: dict[str, int]) -> tuple[bool, int, str]:
    first = -row.minutes if by == "person" else places.get(row.key, 0)
    return row.key in _LAST, first, row.key.casefold()
