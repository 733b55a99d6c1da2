"""The drawing tinted by something else than stages: hours, money, photos, days, what is missing."""

from collections import Counter, defaultdict
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from datetime import date, datetime
from typing import TYPE_CHECKING

from journal.actions.session import Session
from journal.domain.ids import AreaId, PanelId
from journal.domain.photos import Photo
from journal.domain.record import Record
from journal.domain.states import days_since
from journal.domain.tints import LegendRow, TintBy, legend, scale_for, tint
from journal.domain.when import When

if TYPE_CHECKING:
    from journal.domain.costs import CostRow
    from journal.ledger.books import Books


@dataclass(frozen=True, slots=True)
class Tinted:
    """A drawing's tint.

    Attributes:
        by: what it is tinted by.
        levels: the level of each panel that has a value, 0 to 5.
        words: the value of each of them, as people read it.
        rows: the legend.
    """

    by: TintBy
    levels: dict[PanelId, int]
    words: dict[PanelId, str]
    rows: tuple[LegendRow, ...]


def tinted(session: Session, by: TintBy, on: When | None = None) -> Tinted:
    """How the drawing is tinted by something, by now or by the end of ``on``.

    What is missing is told of the record as it is now, whatever the date.
    """
    from journal.store.record import record

    whole = record(session.journal)
    if on is not None and by is not TintBy.MISSING:
        whole = _as_of(whole, on)
    today = date.today() if on is None else on.latest.date()
    values, unit, write = _measured(whole, by, today)
    scale = scale_for(values, by, unit)
    words = {panel_id: write(value) for panel_id, value in values.items()}
    return Tinted(by, tint(values, by, scale), words, legend(scale, write))


_Write = Callable[[float], str]


def _measured(whole: Record, by: TintBy, today: date) -> tuple[dict[PanelId, float], float, _Write]:
    """The value of each panel, how many of it are one in the legend, and how one is written."""
    if by is TintBy.HOURS:
        return _floats(_minutes(whole)), 60.0, _hours
    if by is TintBy.MONEY:
        return _money(whole)
    if by is TintBy.PHOTOS:
        shown = {photo.id for photo in whole.photos}
        counts = Counter(pin.panel_id for pin in whole.pins if pin.photo_id in shown)
        return _floats(dict(counts)), 1.0, _count("photo")
    if by is TintBy.UNTOUCHED:
        return _floats(days_since(_touched(whole), today)), 1.0, _count("day")
    return _floats(_missing(whole)), 1.0, _count("gap")


def _minutes(whole: Record) -> dict[PanelId, int]:
    return _by_panel(whole, lambda row: row.minutes)


def _money(whole: Record) -> tuple[dict[PanelId, float], float, _Write]:
    from journal.domain.money import format_money, minor_units

    currency = whole.car.currency

    def write(value: float) -> str:
        return format_money(round(value), currency)

    sums = _by_panel(whole, lambda row: row.money)
    return _floats(sums), 10.0 ** minor_units(currency), write


def _by_panel(whole: Record, amount: "Callable[[CostRow], int]") -> dict[PanelId, int]:
    """What the table by panel says of each panel with a repair area, 0 where it says nothing."""
    from journal.ledger.costs import cost_table

    rows = {row.key: amount(row) for row in cost_table("panel", _books(whole)).rows}
    touched = (panel_id for area in whole.areas for panel_id in area.panel_ids)
    return {panel_id: rows.get(str(panel_id), 0) for panel_id in touched}


def _touched(whole: Record) -> dict[PanelId, list[When]]:
    """Every date on which something is recorded of a panel."""
    found: defaultdict[PanelId, list[When]] = defaultdict(list)
    of_area = {area.id: area.panel_ids for area in whole.areas}
    taken = {photo.id: photo.when for photo in whole.photos}
    for pin in whole.pins:
        if (when := taken.get(pin.photo_id)) is not None:
            found[pin.panel_id].append(when)
    for entry in whole.entries:
        if entry.panel_id is not None:
            found[entry.panel_id].append(entry.when)
    for area_id, when in _on_areas(whole):
        for panel_id in of_area.get(area_id, ()):
            found[panel_id].append(when)
    return found


def _on_areas(whole: Record) -> Iterator[tuple[AreaId, When]]:
    for area in whole.areas:
        yield from ((area.id, change.when) for change in area.changes)
    for entry in whole.entries:
        if entry.area_id is not None:
            yield entry.area_id, entry.when
    for work in whole.work:
        yield from ((share.area_id, work.when) for share in work.shares)
    for receipt in whole.receipts:
        for line in receipt.lines:
            yield from ((share.area_id, receipt.when) for share in line.shares)


def _missing(whole: Record) -> dict[PanelId, int]:
    """How many gaps each panel with a repair area has; a panel in no photo is one too."""
    from journal.dossier.gaps import gaps

    of_area = {area.id: area.panel_ids for area in whole.areas}
    pinned = {pin.panel_id for pin in whole.pins}
    found = {panel: int(panel not in pinned) for panels in of_area.values() for panel in panels}
    for gap in gaps(whole):
        if gap.target_kind == "area" and gap.target_id is not None:
            for panel_id in of_area.get(AreaId(gap.target_id), ()):
                found[panel_id] += 1
    return found


def _as_of(whole: Record, on: When) -> Record:
    """The record without what is dated after the end of a date, and without undated photos."""

    def began(when: When | None) -> bool:
        return when is not None and when.earliest <= on.latest

    photos = tuple(photo for photo in whole.photos if began(_dated(photo)))
    shown = {photo.id for photo in photos}
    areas = tuple(
        replace(area, changes=tuple(c for c in area.changes if began(c.when)))
        for area in whole.areas
    )
    return replace(
        whole,
        photos=photos,
        pins=tuple(pin for pin in whole.pins if pin.photo_id in shown),
        areas=areas,
        entries=tuple(e for e in whole.entries if began(e.when)),
        receipts=tuple(r for r in whole.receipts if began(r.when)),
        work=tuple(w for w in whole.work if began(w.when)),
    )


def _dated(photo: Photo) -> When | None:
    """When a photo was taken, unless its date has an open beginning."""
    when = photo.when
    return None if when is None or when.earliest == datetime.min else when


def _books(whole: Record) -> "Books":
    from journal.ledger.books import Books

    return Books(
        currency=whole.car.currency,
        receipts=whole.receipts,
        work=whole.work,
        areas=whole.areas,
        milestones=whole.milestones,
    )


def _floats(values: dict[PanelId, int]) -> dict[PanelId, float]:
    return {panel_id: float(value) for panel_id, value in values.items()}


def _hours(minutes: float) -> str:
    from journal.domain.hours import spoken_hours

    return spoken_hours(round(minutes))


def _count(noun: str) -> _Write:
    return lambda value: f"{value:,.0f} {noun}" + ("" if round(value) == 1 else "s")
