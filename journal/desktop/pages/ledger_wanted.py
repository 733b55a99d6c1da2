"""The list of wanted parts: what is still to buy, on order, and here but not fitted."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from journal.actions import areas as area_actions
from journal.actions import cars, drawings
from journal.actions import wanted as actions
from journal.desktop.desk import Desk, WantedSelected
from journal.desktop.dialogs.opening import open_dialog
from journal.desktop.dialogs.wanted import WantedDialog, move_today, record_arrival
from journal.desktop.pages.ledger_lists import LedgerList
from journal.desktop.tasks import Task
from journal.desktop.widgets.parts import EmptyState, button, label
from journal.desktop.widgets.rows import Column, RowsTable
from journal.domain.changes import Changes
from journal.domain.ids import AreaId, PanelId, WantedId
from journal.domain.money import format_money
from journal.domain.quantities import write_quantity
from journal.domain.wanted import Wanted, WantedState, buying_sums
from journal.domain.wanted_words import seen_in_words, sums_in_words
from journal.domain.when import spoken

if TYPE_CHECKING:
    from journal.actions.session import Session

_KINDS = frozenset({"wanted", "receipts", "areas", "drawing", "car"})


@dataclass(frozen=True, slots=True)
class WantedRead:
    """The parts with the names and the currency that a list of them needs."""

    parts: tuple[Wanted, ...]
    areas: dict[AreaId, str]
    panels: dict[PanelId, str]
    currency: str


def read_wanted(session: "Session") -> WantedRead:
    """Read all that the list shows."""
    return WantedRead(
        actions.wanted_parts(session),
        {area.id: area.name for area in area_actions.areas(session)},
        {panel.id: panel.label for panel in drawings.panels(session)},
        cars.car(session).currency,
    )


class WantedList(LedgerList):
    """All wanted parts, what is still to buy first; several can be picked at once.

    Attributes:
        wanted_id: the part picked last, None where none was.
    """

    nouns = ("part", "parts")

    def __init__(self, desk: Desk) -> None:
        self._read = WantedRead((), {}, {}, "EUR")
        self._reading: Task | None = None
        self.wanted_id: WantedId | None = None
        table = RowsTable(
            "Wanted parts",
            (
                Column("What", _what, wide=True),
                Column("For", self._for, wide=True),
                Column("State", _state, lambda part: (part.state.rank, part.text.casefold())),
                Column("Limit", self._limit, lambda part: part.price_limit or 0, number=True),
                Column("Seen", lambda part: seen_in_words(part, self._read.currency), wide=True),
            ),
        )
        table.setSelectionMode(RowsTable.SelectionMode.ExtendedSelection)
        self.came = button("It &came: record the receipt", self.record_receipt, icon="receipt")
        self.came.setToolTip("Pick several parts with Ctrl or Shift for one receipt of them all")
        self.next = button("", self.move_on)
        self.next.setToolTip("Recorded with today's date")
        acts = (
            button("New &wanted part", self.new, icon="wanted", role="primary"),
            self.next,
            self.came,
            button("E&dit", self.edit, icon="edit"),
            button("Re&move", self.remove, icon="remove"),
        )
        first = button("New &wanted part", self.new, icon="wanted", role="primary")
        first.setEnabled(not desk.read_only)
        empty = EmptyState(
            "wanted",
            "No part is wanted yet",
            "Write down what is to be bought, for which panel or repair area and for how much at "
            "most. Note where it was seen; when it came, its receipt is filled in for you.",
            first,
        )
        self.sums = label("", "subheading")
        super().__init__(desk, table, acts, empty)
        self.insert_above(self.sums)
        table.on_opened(lambda _part: self.edit())
        table.selectionModel().selectionChanged.connect(lambda _new, _old: self._on_picked())
        self._on_delete(self.remove)
        self._on_picked()

    # --- reading ---

    def refresh(self, changes: Changes | None) -> None:
        """Read the parts again, in a reader's thread."""
        if changes is not None and not changes.kinds & _KINDS:
            return
        session = self.desk.session
        if self._reading is not None:
            self._reading.cancel()
        self._reading = self.desk.read(lambda _context: read_wanted(session), self._on_read, self)

    def _on_read(self, found: WantedRead) -> None:
        self._reading, self._read = None, found
        self.sums.setText(sums_in_words(buying_sums(found.parts, found.currency), found.currency))
        self.set_rows(sorted(found.parts, key=lambda part: (part.state.rank, part.text.casefold())))
        if self.wanted_id is not None:
            self.pick(self.wanted_id)
        self._on_picked()

    def show_rows(self) -> None:
        """Show what passes, and the sums where there is anything."""
        super().show_rows()
        self.sums.setVisible(bool(self._rows))

    def pick(self, wanted_id: WantedId) -> None:
        """Pick a part, as soon as it is read, even where a filter hides it."""
        self.wanted_id = wanted_id
        found = [shown for shown in self._rows if shown.id == wanted_id]
        if found and found[0] not in self.table.rows_model.rows():
            self.filter.clear()
            self.show_all()
        if found and [part.id for part in self.picked()] != [wanted_id]:
            self.table.pick(found[0])

    def picked(self) -> tuple[Wanted, ...]:
        """The parts picked, in the order shown."""
        rows = sorted(index.row() for index in self.table.selectionModel().selectedRows())
        found = (self.table.rows_model.row_at(row) for row in rows)
        return tuple(part for part in found if part is not None)

    def words(self, shown: Wanted) -> str:
        """What it is, for what, its state, its note and where it was seen."""
        seen = " ".join(f"{one.place} {one.note}" for one in shown.sightings)
        return " ".join((shown.text, self._for(shown), shown.state.value, shown.note, seen))

    # --- acts ---

    def new(self) -> None:
        """Ask for a new part."""
        open_dialog(WantedDialog(self.desk, self.window()))

    def edit(self) -> None:
        """Ask for the picked part anew."""
        picked = self.table.picked()
        if picked is not None and not self.desk.read_only:
            open_dialog(WantedDialog(self.desk, self.window(), wanted=picked))

    def remove(self) -> None:
        """Take the picked part out; undo brings it back."""
        picked = self.table.picked()
        if picked is not None and not self.desk.read_only:
            self.desk.act(actions.remove_wanted, picked.id)

    def move_on(self) -> None:
        """Record today that the picked parts came to the state after the first one's."""
        picked = self.picked()
        following = _following(picked)
        if following is not None:
            move_today(self.desk, [part.id for part in picked], following)

    def record_receipt(self) -> None:
        """Open the receipt's form, filled from the picked parts."""
        picked = [part.id for part in self.picked()]
        if picked:
            record_arrival(self.desk, picked, self.window())

    def _on_picked(self) -> None:
        picked = self.picked()
        following = _following(picked)
        many = f" ({len(picked)})" if len(picked) > 1 else ""
        can = not self.desk.read_only
        self.next.setText(f"{following.value.capitalize()} today{many}" if following else "Fitted")
        self.next.setEnabled(can and following is not None)
        what = str(len(picked)) if len(picked) > 1 else "It"
        self.came.setText(f"{what} &came: record the receipt")
        self.came.setEnabled(can and bool(picked) and all(p.line_id is None for p in picked))
        if len(picked) == 1 and self.table.hasFocus():
            self.wanted_id = picked[0].id
            self.desk.select(WantedSelected(picked[0].id))

    # --- columns ---

    def _for(self, part: Wanted) -> str:
        area = self._read.areas.get(part.area_id, "") if part.area_id is not None else ""
        panel = self._read.panels.get(part.panel_id, "") if part.panel_id is not None else ""
        return area or panel

    def _limit(self, part: Wanted) -> str:
        limit = part.price_limit
        return "" if limit is None else format_money(limit, self._read.currency)


def _following(picked: Sequence[Wanted]) -> WantedState | None:
    return picked[0].state.following if picked else None


def _what(part: Wanted) -> str:
    many = "" if part.quantity == 1 else f"{write_quantity(part.quantity)} × "
    return many + part.text


def _state(part: Wanted) -> str:
    return f"{part.state.value}, {spoken(part.since)}" if part.since else part.state.value
