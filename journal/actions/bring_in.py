"""Bringing in a spreadsheet: looked at, understood, shown, and only then recorded as one edit."""

from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from datetime import date
from pathlib import Path

from journal.actions.hours import refuse_impossible
from journal.actions.session import Session
from journal.actions.settings import load_settings
from journal.domain.changes import Changes
from journal.domain.errors import JournalError
from journal.domain.ids import AreaId, ReceiptId
from journal.domain.money import minor_units
from journal.domain.progress import Context, Silent
from journal.domain.receipts import Receipt, refuse_unreasonable
from journal.domain.sheet_items import (
    Fate,
    Item,
    Source,
    folded,
    receipt_items,
    unknown_areas,
    work_items,
)
from journal.domain.sheet_matches import (
    already_there,
    hours_already_there,
    standing_in,
    without_known,
)
from journal.domain.sheet_rows import Choices, Grid, Known, Proposal, Role, Told, shown

#: Endings of files that are taken for spreadsheets.
SHEET_SUFFIXES = (".csv", ".tsv", ".xlsx", ".xlsm", ".ods")
#: Of a workbook with more sheets, only these are looked through for the one that is meant.
_LOOKED_THROUGH = 12


@dataclass(frozen=True, slots=True)
class OpenSheet:
    """A sheet of a file: its cells and how it is probably to be read.

    ``names`` are all the sheets of the file, ``grid.name`` the one that this is.
    """

    path: Path
    names: tuple[str, ...]
    grid: Grid
    proposal: Proposal


@dataclass(frozen=True, slots=True)
class Plan:
    """What would come in from a sheet, before anything does.

    Attributes:
        source: the file, the sheet, and whether it is a bank's.
        items: receipts, hours and bank lines, each with what is proposed to become of it.
        refused: rows that can't be read, and why.
        left_out: rows that are no record: totals, headings, words alone.
        remarks: sentences on what holds for many rows.
    """

    source: Source
    items: tuple[Item, ...]
    refused: tuple[Told, ...]
    left_out: tuple[Told, ...]
    remarks: tuple[str, ...] = ()

    def coming_in(self, fates: Mapping[int, Fate] | None = None) -> "Incoming":
        """What comes in, with ``fates`` by an item's place where the person says otherwise."""
        found = Incoming()
        for place, item in enumerate(self.items):
            found.count(item, (fates or {}).get(place, item.fate))
        return found


@dataclass(slots=True)
class Incoming:
    """How much comes in; ``money`` is in minor units by currency."""

    receipts: int = 0
    hours: int = 0
    minutes: int = 0
    stand_ins: int = 0
    money: Counter[str] = field(default_factory=Counter)

    @property
    def is_nothing(self) -> bool:
        """Whether nothing comes in."""
        return not (self.receipts or self.hours or self.stand_ins)

    def count(self, item: Item, fate: Fate) -> None:
        """Add an item to what it comes to."""
        if fate is Fate.STANDS_IN:
            self.stand_ins += 1
        elif fate is Fate.NEW and item.receipt is not None:
            self.receipts += 1
            self.money[item.receipt.currency] += item.receipt.lines_total
        elif fate is Fate.NEW and item.work is not None:
            self.hours += 1
            self.minutes += item.work.minutes

    def words(self) -> str:
        """What comes in: "12 receipts and 3 days of work"."""
        said = [
            _counted(self.receipts, "receipt"),
            _counted(self.hours, "record of hours", "records of hours"),
            _counted(self.stand_ins, "bank line", "bank lines") if self.stand_ins else "",
        ]
        return " and ".join(one for one in said if one) or "nothing"


@dataclass(frozen=True, slots=True)
class BroughtIn:
    """What came in, and the edit that brought it."""

    changes: Changes
    incoming: Incoming


def is_sheet(path: Path) -> bool:
    """Whether a file's name is that of a spreadsheet."""
    return path.suffix.lower() in SHEET_SUFFIXES


def open_sheet(
    session: Session, path: Path, name: str = "", heading: int | None = None
) -> OpenSheet:
    """Look at a sheet of a file; where none is named, the one that looks most like a list.

    ``heading`` is the row of the headings, where the person says so.

    Raises:
        JournalError: the file is no spreadsheet, is locked, damaged, empty or beyond all reason.
    """
    from journal.intake.sheets.book import Book
    from journal.intake.sheets.columns import propose

    book = Book(path)
    known = _known(session)
    if name or len(book.sheets) == 1:
        grid = book.grid(name)
        return OpenSheet(path, book.sheets, grid, propose(grid, known, heading))
    found, obstacle = [], None
    for one in book.sheets[:_LOOKED_THROUGH]:
        try:
            grid = book.grid(one)
        except JournalError as error:
            obstacle = obstacle or error
            continue
        found.append(OpenSheet(path, book.sheets, grid, propose(grid, known, heading)))
    if not found and obstacle:
        raise obstacle
    return max(found, key=lambda sheet: _likeness(sheet.proposal))


def look_again(session: Session, sheet: OpenSheet, heading: int) -> OpenSheet:
    """The same sheet with its headings in another row, 0 for none."""
    from journal.intake.sheets.columns import propose

    return replace(sheet, proposal=propose(sheet.grid, _known(session), heading))


def ask_again(sheet: OpenSheet, choices: Choices) -> Proposal:
    """What has to be asked once columns are called something else; answers given are kept."""
    from journal.intake.sheets.columns import asked

    return asked(sheet.grid, choices)


def _known(session: Session) -> Known:
    journal = session.journal
    return Known(
        journal.car.get().currency,
        frozenset(map(folded, journal.receipts.suppliers())),
        frozenset(folded(area.name) for area in journal.areas.all()),
        frozenset(map(folded, journal.work.people())),
        load_settings().person,
    )


def _likeness(proposal: Proposal) -> int:
    """How many columns are told, none where a list of costs or hours lacks its date."""
    roles = [role for role in proposal.choices.roles if role is not Role.LEAVE_OUT]
    return len(roles) if Role.DATE in roles else 0


def plan(
    session: Session, sheet: OpenSheet, choices: Choices, context: Context | None = None
) -> Plan:
    """What would come in from a sheet that is read in this way; nothing is recorded.

    Raises:
        JournalError: no column is the date, or none the amount or the hours; the currency is none.
        Cancelled: as the person asked.
    """
    from journal.intake.sheets.understand import understand

    context = context or Silent()
    minor_units(choices.currency)
    context.report(0, 0, f"Reading {sheet.path.name}")
    read = understand(sheet.grid, choices, date.today(), context)
    context.checkpoint()
    journal = session.journal
    source = Source(sheet.path.name, sheet.grid.name, choices.is_bank)
    areas = {folded(area.name): AreaId(area.id) for area in journal.areas.all()}
    items, refused = _reasonable(
        (*receipt_items(read.rows, source, areas), *work_items(read.rows, areas))
    )
    context.checkpoint()
    before = journal.imported_rows.known(mark for item in items for mark in item.fingerprints)
    items = without_known(items, before)
    receipts = journal.receipts.all()
    if choices.is_bank:
        items = standing_in(items, receipts, journal.car.get().currency)
    else:
        items = hours_already_there(already_there(items, receipts), journal.work.all())
    items = tuple(sorted(items, key=lambda item: item.rows[0]))
    unknown = unknown_areas(read.rows, areas)
    remarks = (*read.remarks, *_area_remarks(unknown), *_rate_remarks(session, items))
    every = sorted((*read.refused, *refused), key=lambda told: told.row)
    return Plan(
        source, items, _with_text(sheet.grid, every), _with_text(sheet.grid, read.left_out), remarks
    )


def _with_text(grid: Grid, rows: Iterable[Told]) -> tuple[Told, ...]:
    """The same with what stands in each row."""
    return tuple(
        replace(
            told,
            text=" · ".join(
                " ".join(shown(cell).split()) for cell in grid.rows[told.row - 1] if cell
            ),
        )
        for told in rows
    )


def _reasonable(items: Iterable[Item]) -> tuple[tuple[Item, ...], list[Told]]:
    """The items that can be recorded, and the rows of those that can't."""
    kept, refused = [], []
    for item in items:
        try:
            if item.receipt is not None:
                refuse_unreasonable(item.receipt)
            if item.work is not None:
                refuse_impossible(item.work)
        except JournalError as error:
            refused += [Told(row, str(error).rstrip(".")) for row in item.rows]
        else:
            kept.append(item)
    return tuple(kept), refused


def _area_remarks(unknown: Mapping[str, int]) -> list[str]:
    said = [
        f"“{name[:40]}” is no repair area here: {_counted(count, 'row')} without one."
        for name, count in list(unknown.items())[:8]
    ]
    if len(unknown) > len(said):
        said.append(f"{len(unknown) - len(said)} more names are no repair areas here.")
    return said


def _rate_remarks(session: Session, items: Iterable[Item]) -> list[str]:
    """Which money will stand in no sum for want of a rate."""
    own = session.journal.car.get().currency
    foreign = Counter(
        item.receipt.currency
        for item in items
        if item.fate is Fate.NEW
        and item.receipt
        and item.receipt.currency != own
        and item.receipt.rate == 1
    )
    return [
        f"{_counted(count, 'receipt')} in {code} without a rate: in no sum until one is given."
        for code, count in foreign.items()
    ]


def bring_in(
    session: Session,
    found: Plan,
    fates: Mapping[int, Fate] | None = None,
    context: Context | None = None,
) -> BroughtIn:
    """Record what comes in, all of it as one edit.

    Args:
        session: the open journal.
        found: what ``plan`` said.
        fates: by an item's place, where the person wants something else to become of it.
        context: to report to and be stopped by; stopped, nothing comes in.

    Raises:
        JournalError: nothing is to come in, a receipt that a line stands in for is gone, or rows
            came in since.
        Cancelled: as the person asked.
    """
    context = context or Silent()
    incoming = found.coming_in(fates)
    if incoming.is_nothing:
        raise JournalError(f"Nothing of “{found.source.file}” is to come in.")
    label = f"Bring in “{found.source.file}”: {incoming.words()}"
    wanted = [
        (item, fate)
        for place, item in enumerate(found.items)
        if (fate := (fates or {}).get(place, item.fate)) is not Fate.LEAVE
    ]
    _refuse_stale(session, found.source.file, [item for item, _ in wanted])
    with session.journal.edit(label) as edit:
        for number, (item, fate) in enumerate(wanted):
            if number % 50 == 0:
                context.checkpoint()
                context.report(number, len(wanted), f"Bringing in {found.source.file}")
            _record(session, found.source, item, fate)
    context.report(len(wanted), len(wanted), "")
    return BroughtIn(edit.changes(), incoming)


def _refuse_stale(session: Session, name: str, items: Iterable[Item]) -> None:
    """Refuse to record what came in between looking and recording."""
    unseen = [mark for item in items if not item.was_known for mark in item.fingerprints]
    if session.journal.imported_rows.known(unseen):
        raise JournalError(f"“{name}” came in since you looked at it; look once more.")


def _record(session: Session, source: Source, item: Item, fate: Fate) -> None:
    journal = session.journal
    receipt_id = work_id = None
    if fate is Fate.STANDS_IN:
        receipt_id = _stand_in(session, item)
    elif item.receipt is not None:
        receipt_id = journal.receipts.add(item.receipt)
    elif item.work is not None:
        work_id = journal.work.add(item.work)
    for row, mark in zip(item.rows, item.fingerprints, strict=True):
        where = (source.file, source.sheet, row)
        journal.imported_rows.add(mark, where, receipt_id, work_id)


def _stand_in(session: Session, item: Item) -> ReceiptId:
    """Have a bank line stand in for the paper of a receipt."""
    if item.match is None or item.receipt is None:
        raise JournalError(f"Row {item.rows[0]} stands in for no receipt.")
    held: Receipt = session.journal.receipts.get(item.match)
    said = "; ".join(part for part in (held.stands_in, item.receipt.stands_in) if part)
    session.journal.receipts.change(replace(held, stands_in=said))
    return item.match


def _counted(count: int, one: str, many: str = "") -> str:
    if not count:
        return ""
    return f"1 {one}" if count == 1 else f"{count:,} {many or one + 's'}"
