"""Rows of a sheet beside what the journal holds: brought in before, there already, standing in."""

import re
from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from contextlib import suppress
from dataclasses import replace
from datetime import timedelta

from journal.domain.errors import JournalError
from journal.domain.ids import ReceiptId
from journal.domain.money import to_currency
from journal.domain.receipts import Paper, Receipt
from journal.domain.sheet_items import UNKNOWN, Fate, Item, folded
from journal.domain.sheet_rows import BroughtBefore
from journal.domain.work import Work

#: A bank books within so many days of what was bought: common practice, no source.
DAYS_APART = 7
_WORD = re.compile(r"\w+")


def without_known(items: Sequence[Item], before: Mapping[str, BroughtBefore]) -> tuple[Item, ...]:
    """The items with those left out that were brought in before, whole or in part."""
    return tuple(_known(item, before) for item in items)


def _known(item: Item, before: Mapping[str, BroughtBefore]) -> Item:
    found = [before[mark] for mark in item.fingerprints if mark in before]
    if not found:
        return item
    receipt_id = next((one.receipt_id for one in found if one.receipt_id is not None), None)
    is_gone = receipt_id is None and all(one.work_id is None for one in found)
    why = "brought in before, and taken out since" if is_gone else "brought in before"
    if len(found) == len(item.fingerprints) or item.receipt is None:
        return replace(
            item, fate=Fate.LEAVE, why=why, match=receipt_id, was_known=True, is_gone=is_gone
        )
    return _rest(item, item.receipt, before, receipt_id)


def _rest(
    item: Item, receipt: Receipt, before: Mapping[str, BroughtBefore], match: ReceiptId | None
) -> Item:
    """What is new of a receipt whose other rows were brought in before."""
    new = [place for place, mark in enumerate(item.fingerprints) if mark not in before]
    lines = tuple(receipt.lines[place] for place in new)
    return replace(
        item,
        rows=tuple(item.rows[place] for place in new),
        fingerprints=tuple(item.fingerprints[place] for place in new),
        receipt=replace(receipt, lines=lines, printed_total=None),
        why="its other rows were brought in before",
        match=match,
    )


def already_there(items: Sequence[Item], receipts: Iterable[Receipt]) -> tuple[Item, ...]:
    """The items with those left out that the journal has: same supplier, day and total.

    Each receipt of the journal answers for one item; those of rows brought in before for theirs.
    """
    taken = {item.match for item in items if item.match is not None}
    there: defaultdict[object, list[ReceiptId]] = defaultdict(list)
    for receipt in receipts:
        if receipt.id not in taken:
            there[_likeness(receipt)].append(receipt.id)
    made = []
    for item in items:
        like = there.get(_likeness(item.receipt)) if item.receipt else None
        if item.fate is Fate.NEW and like:
            item = replace(item, fate=Fate.LEAVE, why="already there", match=like.pop(0))
        made.append(item)
    return tuple(made)


def _likeness(receipt: Receipt) -> object:
    total = receipt.lines_total if receipt.printed_total is None else receipt.printed_total
    return folded(receipt.supplier), receipt.when.edtf, receipt.currency, total


def hours_already_there(items: Sequence[Item], work: Iterable[Work]) -> tuple[Item, ...]:
    """The items of hours with those left out that the journal has: same person, day and time."""
    there: defaultdict[object, int] = defaultdict(int)
    for one in work:
        there[folded(one.person), one.when.edtf, one.minutes] += 1
    made = []
    for item in items:
        if item.work is not None and not item.is_gone:
            key = folded(item.work.person), item.work.when.edtf, item.work.minutes
            if there[key]:
                there[key] -= 1
                if item.fate is Fate.NEW:
                    item = replace(item, fate=Fate.LEAVE, why="already there")
        made.append(item)
    return tuple(made)


def standing_in(
    items: Sequence[Item], receipts: Iterable[Receipt], currency: str
) -> tuple[Item, ...]:
    """Bank lines beside the receipts: each stands in for one without paper, comes in, or neither.

    A line comes in as a new receipt by itself only where the journal knows the supplier. Sums are
    compared in the line's own currency, or in the journal's, ``currency``.
    """
    known = tuple(receipts)
    names = {_plain(receipt.supplier) for receipt in known} - {_plain(UNKNOWN), _plain("")}
    found: dict[int, Receipt] = {}
    free = {receipt.id: receipt for receipt in known}
    for item in items:
        if item.fate is Fate.LEAVE and item.match is not None:
            free.pop(item.match, None)
    pairs = _pairs(items, free.values(), currency)
    for _, place, receipt in pairs:
        if place not in found and receipt.id in free:
            found[place] = free.pop(receipt.id)
    return tuple(_fate(item, found.get(place), names) for place, item in enumerate(items))


def _pairs(
    items: Sequence[Item], receipts: Iterable[Receipt], currency: str
) -> list[tuple[tuple[int, float], int, Receipt]]:
    """Lines and receipts that may be one purchase, the likeliest first."""
    by_sum: defaultdict[tuple[int, str], list[Receipt]] = defaultdict(list)
    for receipt in receipts:
        for key in _sums(receipt, currency):
            by_sum[key].append(receipt)
    made = []
    for place, item in enumerate(items):
        line = item.receipt
        if line is None or item.fate is Fate.LEAVE or item.is_money_in:
            continue
        for receipt in by_sum.get((line.lines_total, line.currency), ()):
            apart = _days_apart(receipt, line)
            if apart <= DAYS_APART:
                strange = not _words(receipt.supplier) & _words(_said(line))
                made.append(((int(strange), apart), place, receipt))
    return sorted(made, key=lambda one: (one[0], one[1]))


def _sums(receipt: Receipt, currency: str) -> set[tuple[int, str]]:
    total = receipt.lines_total if receipt.printed_total is None else receipt.printed_total
    found = {(total, receipt.currency)}
    if receipt.currency != currency and receipt.rate != 1:
        with suppress(JournalError):
            found.add((to_currency(total, receipt.currency, receipt.rate, currency), currency))
    return found


def _days_apart(receipt: Receipt, line: Receipt) -> float:
    """Whole days between a bank line and the nearest day that a receipt may be of."""
    day = line.when.earliest
    nearest = min(max(day, receipt.when.earliest), receipt.when.latest)
    return abs((day - nearest) / timedelta(days=1))


def _said(line: Receipt) -> str:
    """What a bank's line says itself, without where it stands."""
    return " ".join((line.supplier, *(one.text for one in line.lines)))


def _plain(text: str) -> str:
    """The words of a text alone, a space on both sides of each."""
    return f" {' '.join(_WORD.findall(folded(text)))} "


def _words(text: str) -> set[str]:
    return {word for word in folded(text).split() if len(word) > 3}


def _fate(item: Item, receipt: Receipt | None, names: set[str]) -> Item:
    if item.fate is Fate.LEAVE:
        return item
    if item.is_money_in:
        return replace(item, fate=Fate.LEAVE, why="money that came in")
    if receipt is None:
        said = "" if item.receipt is None else _plain(_said(item.receipt))
        is_known = any(name in said for name in names)
        if is_known:
            return replace(item, fate=Fate.NEW, why="a supplier of the journal")
        return replace(item, fate=Fate.LEAVE, why="no receipt of this sum near this day")
    if receipt.paper is Paper.HELD or receipt.papers:
        return replace(item, fate=Fate.LEAVE, why="its receipt has its paper", match=receipt.id)
    if receipt.stands_in:
        why = "something stands in already"
        return replace(item, fate=Fate.LEAVE, why=why, match=receipt.id, can_stand_in=True)
    return replace(item, fate=Fate.STANDS_IN, match=receipt.id, can_stand_in=True)
