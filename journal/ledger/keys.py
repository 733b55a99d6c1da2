"""Which row of a table each piece of money and time belongs to."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from operator import attrgetter

from journal.domain.costs import (
    DIFFERENCE,
    HOURS,
    MONEY,
    NO_DATE,
    NO_PANEL,
    NO_PERSON,
    NO_SUPPLIER,
    NOT_SHARED,
    CostRow,
    CostsBy,
)
from journal.domain.ids import AreaId
from journal.domain.people import same_name
from journal.domain.price_index import period_of
from journal.domain.receipts import Category, Condition, Line
from journal.domain.when import When
from journal.ledger.books import year_of
from journal.ledger.pieces import Account, Done, Paid

_LABELS = {
    DIFFERENCE: "printed totals less their lines",
    HOURS: "hours worked",
    MONEY: "money spent: receipts name no person",
    NOT_SHARED: "not shared over repair areas",
    NO_PANEL: "repair areas on no panel",
    NO_DATE: "no date",
    NO_SUPPLIER: "no supplier named",
    NO_PERSON: "nobody named",
}
#: Keys of rows that stand for no row of their own, in the order they come in at the end.
LAST = (NO_DATE, NO_SUPPLIER, NO_PERSON, NO_PANEL, NOT_SHARED, HOURS, MONEY, DIFFERENCE)


@dataclass(frozen=True, slots=True)
class Keys:
    """The rows of one table.

    Exactly one of the first three says where money belongs: by the receipt, by the line or by the
    repair area; a table by panel has none of them, its areas being shared over their panels.
    ``of_work`` is None where hours belong to no row, and where they go by area too. A category or a
    condition is a text, so that it is its own key.
    """

    of_receipt: Callable[[Paid], str] | None = None
    of_line: Callable[[Line], str] | None = None
    of_area: Callable[[AreaId | None], str] | None = None
    of_work: Callable[[Done], str] | None = None


class Names:
    """Keys for names as people write them: other capitals and spaces are the same name."""

    def __init__(self, nameless: str) -> None:
        self._nameless = nameless
        self._met: dict[str, str] = {}
        self._keys: dict[str, str] = {}

    def key(self, name: str) -> str:
        """The spelling met first, or the key of what has no name."""
        found = self._keys.get(name)
        if found is None:
            plain = " ".join(name.split())
            found = self._met.setdefault(same_name(plain), plain) or self._nameless
            self._keys[name] = found
        return found


def keys(by: CostsBy, account: Account) -> Keys:
    """Where each piece belongs in the table by ``by``."""
    if by == "phase":
        return Keys(
            of_receipt=lambda paid: _phase(account, paid.counts),
            of_work=lambda done: _phase(account, done.work.when),
        )
    if by in ("year", "month"):
        of = year_of if by == "year" else month_of
        return Keys(
            of_receipt=lambda paid: of(paid.receipt.when), of_work=lambda done: of(done.work.when)
        )
    if by == "supplier":
        suppliers = Names(NO_SUPPLIER)
        return Keys(of_receipt=lambda paid: suppliers.key(paid.receipt.supplier))
    if by == "person":
        people = Names(NO_PERSON)
        return Keys(
            of_receipt=lambda _paid: MONEY, of_work=lambda done: people.key(done.work.person)
        )
    if by == "category":
        return Keys(of_line=attrgetter("category"))
    if by == "condition":
        return Keys(of_line=attrgetter("condition"))
    return Keys(of_area=_area) if by == "area" else Keys()


def month_of(when: When) -> str:
    """The month that a date counts in, its year where no month is told, or ``NO_DATE``."""
    return period_of(when) or NO_DATE


def _area(area_id: AreaId | None) -> str:
    return NOT_SHARED if area_id is None else str(area_id)


def _phase(account: Account, when: When) -> str:
    place = account.phases.at(when)
    return NO_DATE if place is None else str(place)


def labels(by: CostsBy, account: Account) -> Mapping[str, str]:
    """What people read for the keys of a table; a key that isn't there is its own label."""
    names: dict[str, str] = {}
    if by == "area":
        names = {str(area.id): area.name for area in account.books.areas}
    elif by == "panel":
        names = {str(panel.id): panel.label for panel in account.books.panels}
    elif by == "phase":
        names = {str(place): name for place, name in enumerate(account.phases.names)}
    return {**names, **_LABELS}


def label_of(by: CostsBy, key: str, names: Mapping[str, str]) -> str:
    """What people read for one key."""
    if by == "month" and len(key) == 4:
        return f"{key}, month not known"
    return names.get(key, key)


def order(by: CostsBy, account: Account) -> Callable[[CostRow], tuple[int, int, str]]:
    """The sort key of the rows of a table; what stands for no row of its own comes last."""
    listed = {
        "category": [category.value for category in Category],
        "condition": [condition.value for condition in Condition],
        "area": [str(area.id) for area in account.books.areas],
        "panel": [str(panel.id) for panel in account.books.panels],
        "phase": [str(place) for place in range(len(account.phases.names))],
    }.get(by, [])
    places = {key: place for place, key in enumerate(listed)}

    def sort_key(row: CostRow) -> tuple[int, int, str]:
        if row.key in LAST:
            return 1, LAST.index(row.key), row.key
        most = {"supplier": -row.money, "person": -row.minutes}.get(by, 0)
        return 0, places.get(row.key, most), row.key.casefold()

    return sort_key
