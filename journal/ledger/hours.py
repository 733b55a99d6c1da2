"""Hours summed by repair area, person and year."""

from journal.domain.costs import HOURS_BY, HoursBy, HoursRow, HoursTable
from journal.domain.errors import JournalError
from journal.ledger.books import Books
from journal.ledger.keys import LAST, keys, labels
from journal.ledger.pieces import Account, taken_apart


def hours_table(by: HoursBy, books: Books | Account) -> HoursTable:
    """Lay the hours out by one thing; the rows add up to the total, the same one for every thing.

    Rows come in the order of the repair areas, of the years, or by person with the most time
    first; rows that stand for none of these come last.

    Raises:
        JournalError: hours can't be laid out by ``by``.
    """
    if by not in HOURS_BY:
        raise JournalError(f"Hours can't be laid out by “{by}”, only by {', '.join(HOURS_BY)}.")
    account = books if isinstance(books, Account) else taken_apart(books)
    sums: dict[str, list[int]] = {}
    found = keys(by, account)
    if found.of_area is not None:
        sums = {found.of_area(area): minutes for area, minutes in account.area_minutes.items()}
    elif found.of_work is not None:
        for done in account.done:
            sums.setdefault(found.of_work(done), [0, 0])[done.upkeep] += done.work.minutes
    names = labels(by, account)
    rows = [HoursRow(key, names.get(key, key), *columns) for key, columns in sums.items()]
    places = {str(area.id): place for place, area in enumerate(account.books.areas)}
    rows.sort(key=lambda row: _order(by, row, places))
    total = HoursRow("", "total", sum(r.restoration for r in rows), sum(r.upkeep for r in rows))
    return HoursTable(by, tuple(rows), total)


def _order(by: HoursBy, row: HoursRow, places: dict[str, int]) -> tuple[bool, int, str]:
    first = -row.minutes if by == "person" else places.get(row.key, 0)
    return row.key in LAST, first, row.key.casefold()
