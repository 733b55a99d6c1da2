"""A wanted part: what is wanted, how far it has come, where it was seen, and its receipt."""

from functools import partial

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QPushButton, QVBoxLayout, QWidget

from journal.actions import areas as area_actions
from journal.actions import cars, drawings
from journal.actions import wanted as actions
from journal.desktop.desk import (
    AreaSelected,
    Desk,
    Nothing,
    PanelSelected,
    ReceiptSelected,
    Selection,
    WantedSelected,
)
from journal.desktop.dialogs.opening import open_dialog
from journal.desktop.dialogs.sighting import SightingDialog
from journal.desktop.dialogs.wanted import (
    WantedDialog,
    WantedStateDialog,
    move_today,
    record_arrival,
)
from journal.desktop.dialogs.wanted_line import WantedLineDialog
from journal.desktop.inspector import Pane
from journal.desktop.widgets.parts import button, clear_layout, column, label, row, scrolled, tool
from journal.domain.changes import Changes
from journal.domain.errors import JournalError
from journal.domain.money import format_money
from journal.domain.quantities import write_quantity
from journal.domain.wanted import Sighting, Wanted, WantedState, best_sighting
from journal.domain.wanted_words import sighting_in_words
from journal.domain.when import spoken

_KINDS = frozenset({"wanted", "receipts", "areas", "drawing", "car"})


class WantedPane(Pane):
    """What the inspector says of one wanted part; each state is one press."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, parent)
        self._wanted: Wanted | None = None
        self._currency = "EUR"
        self.text = label("", "heading")
        self.facts = label("", "muted")
        self.note = label("")
        self._places = QVBoxLayout()
        self._states = QGridLayout()
        self._states.setHorizontalSpacing(8)
        self._states.setVerticalSpacing(4)
        self._states.setColumnStretch(1, 1)
        self.state_buttons: dict[WantedState, QPushButton] = {}
        self.receipt_said = label("", "muted")
        self.came = button("", self._on_receipt, icon="receipt")
        self.recorded = button("It's already recorded\N{HORIZONTAL ELLIPSIS}", self._on_recorded)
        self.recorded.setToolTip("Pick the line of a receipt that is in the journal")
        self._sightings = QVBoxLayout()
        self._sightings.setSpacing(6)
        self.seen = button("&Seen at ...", self._on_seen, icon="look")
        self.seen.setToolTip("Where it was seen, and for how much")
        edit = button("Edit", self._on_edit, icon="edit")
        away = button("Remove", self._on_remove, icon="remove", role="quiet")
        self._acts = (self.seen, edit, away)
        layout = column(self.text, self.facts, self.note, spacing=8, margin=16)
        layout.addLayout(self._places)
        layout.addLayout(self._states)
        layout.addWidget(self.receipt_said)
        layout.addWidget(self.came)
        layout.addWidget(self.recorded)
        layout.addLayout(row(label("Where it was seen", "subheading", wrap=False), None, self.seen))
        layout.addLayout(self._sightings)
        layout.addLayout(row(edit, away, None))
        layout.addStretch(1)
        content = QWidget()
        content.setLayout(layout)
        self.setLayout(column(scrolled(content)))

    def show_selection(self, selection: Selection) -> None:
        """Show the part selected."""
        if isinstance(selection, WantedSelected):
            self._show(selection)

    def refresh(self, changes: Changes | None) -> None:
        """Read the part again where it may have changed."""
        if self._wanted is not None and (changes is None or changes.kinds & _KINDS):
            self._show(WantedSelected(self._wanted.id))

    # --- showing ---

    def _show(self, selection: WantedSelected) -> None:
        try:
            wanted = self._wanted = actions.wanted_part(self.desk.session, selection.id)
        except JournalError:
            # It was taken out.
            self._wanted = None
            if self.desk.selection == selection:
                self.desk.select(Nothing())
            return
        car = self.desk.ask(cars.car)
        self._currency = car.currency if car else "EUR"
        self.text.setText(wanted.text)
        self.facts.setText(facts_in_words(wanted, self._currency))
        self.note.setText(wanted.note)
        self.note.setVisible(bool(wanted.note))
        self._show_places(wanted)
        self._show_states(wanted)
        self._show_receipt(wanted)
        self._show_sightings(wanted)
        for act in self._acts:
            act.setEnabled(not self.desk.read_only)

    def _show_places(self, wanted: Wanted) -> None:
        """Ways to the repair area and the panel it is for."""
        clear_layout(self._places)
        areas = self.desk.ask(area_actions.areas) if wanted.area_id is not None else ()
        for area in areas or ():
            if area.id == wanted.area_id:
                self._add_place(area.name, "area", AreaSelected(area.id))
        panels = self.desk.ask(drawings.panels) if wanted.panel_id is not None else ()
        for panel in panels or ():
            if panel.id == wanted.panel_id:
                self._add_place(panel.label, "panel", PanelSelected(panel.id))

    def _add_place(self, name: str, icon: str, selection: Selection) -> None:
        shown = button(
            name.replace("&", "&&"),
            partial(self.desk.select, selection),
            icon=icon,
            role="quiet",
            hint="Show it here",
        )
        self._places.addWidget(shown, 0, Qt.AlignmentFlag.AlignLeft)

    def _show_states(self, wanted: Wanted) -> None:
        while (item := self._states.takeAt(0)) is not None:
            if (widget := item.widget()) is not None:
                widget.hide()
                widget.deleteLater()
        self.state_buttons = {}
        following = wanted.state.following if wanted.changes else WantedState.WANTED
        for place, state in enumerate(WantedState):
            change = wanted.change_to(state)
            mark = "\N{CHECK MARK}" if change else "\N{WHITE CIRCLE}"
            self._states.addWidget(label(mark, "muted", wrap=False), place, 0)
            if change is None:
                self._add_press(place, state, is_next=state is following)
            else:
                words = f"{state.value}, {spoken(change.when)}"
                if change.note:
                    words += f": {change.note}"
                self._states.addWidget(label(words), place, 1)
                self._add_tools(place, state)

    def _add_press(self, place: int, state: WantedState, *, is_next: bool) -> None:
        words = f"{state.value.capitalize()} today"
        press = button(words, partial(self._on_state, state), role="primary" if is_next else "")
        press.setEnabled(not self.desk.read_only)
        self.state_buttons[state] = press
        self._states.addWidget(press, place, 1)
        other = tool("timeline", f"Another day for “{state.value}”", partial(self._on_day, state))
        other.setEnabled(not self.desk.read_only)
        self._states.addWidget(other, place, 2)

    def _add_tools(self, place: int, state: WantedState) -> None:
        edit = tool("edit", f"Change the day of “{state.value}”", partial(self._on_day, state))
        away = tool("close", f"Take “{state.value}” back", partial(self._on_back, state))
        for act, at in ((edit, 2), (away, 3)):
            act.setProperty("role", "quiet")
            act.setEnabled(not self.desk.read_only)
            self._states.addWidget(act, place, at)

    def _show_receipt(self, wanted: Wanted) -> None:
        has_line = wanted.line_id is not None
        self.came.setText("Its &receipt" if has_line else "It &came: record the receipt")
        self.came.setEnabled(has_line or not self.desk.read_only)
        self.recorded.setVisible(not has_line)
        self.recorded.setEnabled(not self.desk.read_only)
        is_here = wanted.state.rank >= WantedState.ARRIVED.rank
        self.receipt_said.setText("It is here, and no receipt of it is recorded.")
        self.receipt_said.setVisible(is_here and not has_line)

    def _show_sightings(self, wanted: Wanted) -> None:
        clear_layout(self._sightings)
        best = best_sighting(wanted, self._currency)
        for sighting in wanted.sightings:
            self._sightings.addLayout(
                self._sighting_row(wanted, sighting, is_best=sighting is best)
            )
        if not wanted.sightings:
            self._sightings.addWidget(label("Nowhere yet.", "muted"))

    def _sighting_row(self, wanted: Wanted, sighting: Sighting, *, is_best: bool) -> QVBoxLayout:
        mark = "\N{CHECK MARK} Best: " if is_best else ""
        words = f"{mark}{sighting.place}, {sighting_in_words(wanted, sighting, self._currency)}"
        about = spoken(sighting.when) + (f": {sighting.note}" if sighting.note else "")
        edit = tool("edit", f"Change {sighting.place}", partial(self._on_sighting, sighting))
        away = tool("remove", f"Remove {sighting.place}", partial(self._on_unseen, sighting))
        for act in (edit, away):
            act.setProperty("role", "quiet")
            act.setEnabled(not self.desk.read_only)
        said = label(words, "subheading" if is_best else "")
        line = row(said, edit, away)
        line.setStretch(0, 1)
        made = QVBoxLayout()
        made.setSpacing(0)
        made.addLayout(line)
        made.addWidget(label(about, "muted"))
        return made

    # --- acts ---

    def _on_state(self, state: WantedState) -> None:
        if self._wanted is not None:
            move_today(self.desk, [self._wanted.id], state)

    def _on_day(self, state: WantedState) -> None:
        if self._wanted is not None:
            open_dialog(WantedStateDialog(self.desk, self._wanted, state, self.window()))

    def _on_back(self, state: WantedState) -> None:
        if self._wanted is not None:
            self.desk.act(actions.remove_wanted_state, self._wanted.id, state)

    def _on_receipt(self) -> None:
        if self._wanted is None:
            return
        if self._wanted.receipt_id is not None:
            self.desk.select(ReceiptSelected(self._wanted.receipt_id))
        else:
            record_arrival(self.desk, [self._wanted.id], self.window())

    def _on_recorded(self) -> None:
        if self._wanted is not None:
            open_dialog(WantedLineDialog(self.desk, self._wanted, self.window()))

    def _on_seen(self) -> None:
        if self._wanted is not None:
            open_dialog(SightingDialog(self.desk, self._wanted, self._currency, self.window()))

    def _on_sighting(self, sighting: Sighting) -> None:
        if self._wanted is not None:
            dialog = SightingDialog(
                self.desk, self._wanted, self._currency, self.window(), sighting=sighting
            )
            open_dialog(dialog)

    def _on_unseen(self, sighting: Sighting) -> None:
        self.desk.act(actions.remove_sighting, sighting.wanted_id, sighting.id)

    def _on_edit(self) -> None:
        if self._wanted is not None:
            open_dialog(WantedDialog(self.desk, self.window(), wanted=self._wanted))

    def _on_remove(self) -> None:
        if self._wanted is not None:
            self.desk.act(actions.remove_wanted, self._wanted.id)


def facts_in_words(wanted: Wanted, currency: str) -> str:
    """Quantity, category, condition, limit and price new in a line."""
    said = [] if wanted.quantity == 1 else [f"{write_quantity(wanted.quantity)} of it"]
    said.append(wanted.category.value)
    said.append(wanted.condition.value if wanted.condition else "any condition")
    if wanted.price_limit is not None:
        said.append(f"at most {format_money(wanted.price_limit, currency)}")
    if wanted.new_price is not None:
        said.append(f"{format_money(wanted.new_price, currency)} new")
    return " \N{MIDDLE DOT} ".join(said)
