"""One repair area in full: how far it is, what was found and done, what shows and proves it."""

from dataclasses import replace
from datetime import date
from functools import partial

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QLabel, QPushButton, QVBoxLayout, QWidget

from journal.actions import areas as actions
from journal.actions import cars, drawings
from journal.desktop.desk import Desk, PanelSelected
from journal.desktop.dialogs.area import AreaDialog
from journal.desktop.dialogs.entry import EntryDialog
from journal.desktop.dialogs.opening import open_dialog
from journal.desktop.dialogs.stage import StageDialog, next_stage
from journal.desktop.widgets.area_claims import AreaClaimsBox
from journal.desktop.widgets.area_metal import AreaMetal
from journal.desktop.widgets.area_pairs import AreaPairs
from journal.desktop.widgets.area_photos import AreaPhotos
from journal.desktop.widgets.area_spent import AreaSpent
from journal.desktop.widgets.area_wanted import AreaWanted
from journal.desktop.widgets.cautions_box import CautionsBox
from journal.desktop.widgets.checked import repolish
from journal.desktop.widgets.flow import FlowLayout
from journal.desktop.widgets.parts import button, clear_layout, column, label, row, tool
from journal.desktop.widgets.stage_bar import StageBar
from journal.desktop.widgets.stage_chip import StageChip
from journal.domain.areas import Area, Entry, StageChange
from journal.domain.cautions import suggest
from journal.domain.drawing import Panel
from journal.domain.ids import AreaId, PanelId
from journal.domain.when import When, spoken

#: So many entries are shown at a time.
_ENTRIES = 10


class AreaDetail(QWidget):
    """Shows one area; everything about it can be changed where it stands."""

    def __init__(self, desk: Desk, viewer_over: QWidget, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._area: Area | None = None
        self._stages: tuple[str, ...] = ()
        self._suggested: tuple[str, ...] = ()
        self.name = label("", "heading")
        self._panels = QWidget()
        self._panels_flow = FlowLayout(self._panels, spacing=4)
        self.stage_bar = StageBar()
        self.move_button = QPushButton()
        self.move_button.setProperty("role", "primary")
        self.other_button = button("Another &stage or date", self._on_other_stage)
        self._dates = QWidget()
        self._dates_flow = FlowLayout(self._dates, spacing=4)
        self.notes = label("", "muted")
        self.found = label("")
        self.done = label("")
        self.cautions = CautionsBox(read_only=desk.read_only)
        self.photos = AreaPhotos(desk, viewer_over)
        self.pairs = AreaPairs(desk)
        self.metal = AreaMetal(desk)
        self.claims = AreaClaimsBox(desk)
        self.spent = AreaSpent(desk)
        self.wanted = AreaWanted(desk)
        self._entries = QVBoxLayout()
        self._more_entries: tuple[Entry, ...] = ()
        self._acts: list[QWidget] = []
        self._build()
        self.move_button.clicked.connect(self._on_move)
        self.cautions.kept_changed.connect(self._on_cautions)
        self.metal.was_read.connect(self._on_metal_read)

    # --- layout ---

    def _build(self) -> None:
        edit = button("E&dit", self.edit, icon="edit", hint="Change its name, panels and words")
        away = tool("remove", "Remove this repair area", self._on_remove)
        write = button("Entr&y", self._on_entry, icon="entry", hint="Write a dated note about it")
        self._acts = [edit, away, write, self.move_button, self.other_button]
        self._entries.setSpacing(6)
        words = QGridLayout()
        words.setHorizontalSpacing(24)
        words.addWidget(label("What was found", "subheading"), 0, 0)
        words.addWidget(label("What was done", "subheading"), 0, 1)
        for place, text in enumerate((self.found, self.done)):
            text.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
            words.addWidget(text, 1, place, Qt.AlignmentFlag.AlignTop)
            words.setColumnStretch(place, 1)
        layout = column(spacing=12, margin=16)
        head = row(self.name, edit, away)
        head.setStretch(0, 1)
        layout.addLayout(head)
        layout.addWidget(self._panels)
        layout.addWidget(self.stage_bar)
        layout.addLayout(row(self.move_button, self.other_button, None))
        layout.addWidget(self._dates)
        layout.addWidget(self.notes)
        layout.addLayout(words)
        layout.addWidget(self.cautions)
        layout.addWidget(self.photos)
        layout.addWidget(self.pairs)
        layout.addWidget(self.metal)
        layout.addWidget(self.claims)
        layout.addWidget(self.spent)
        layout.addWidget(self.wanted)
        layout.addLayout(row(label("Entries", "subheading", wrap=False), None, write))
        layout.addLayout(self._entries)
        layout.addStretch(1)
        self.setLayout(layout)

    # --- showing ---

    @property
    def area_id(self) -> AreaId | None:
        """The number of the area shown."""
        return self._area.id if self._area else None

    def show_area(self, area: Area, figures: str, expected: str = "") -> None:
        """Show an area as it is now.

        ``figures`` is its money and hours, ``expected`` what a survey expected of it, in words.
        """
        car = self._desk.ask(cars.car)
        self._stages = car.stages if car else ()
        is_another = self._area is None or self._area.id != area.id
        self._area = area
        panels = self._desk.ask(drawings.area_panels, area) or ()
        self.name.setText(area.name)
        self._show_panels(panels)
        self._show_stage(area)
        _say(self.found, area.found, "Not said yet. Press Edit to say what was wrong.")
        _say(self.done, area.done, "Not said yet. Press Edit to say what was done about it.")
        words = "\n".join((area.name, area.found, area.done, *(c.note for c in area.changes)))
        # Where work lies ahead the texts are open; on finished work their titles are enough.
        ahead = bool(next_stage(self._stages, area.stage))
        self._suggested = suggest(words, panels)
        self.cautions.show_cautions(
            area.cautions, self._suggested, in_full=ahead if is_another else None
        )
        self.metal.show_area(area)
        self.photos.show_area(area)
        self.pairs.show_area(area)
        self.claims.show_area(area)
        self.spent.show_area(area, figures, expected)
        self.wanted.show_area(area)
        self._show_entries(area)
        for act in self._acts:
            act.setEnabled(not self._desk.read_only)

    def _on_metal_read(self) -> None:
        """Add the cautions that what lies near mountings gives reason for."""
        if self._area is not None:
            suggested = (*self._suggested, *self.metal.caution_keys())
            self.cautions.show_cautions(self._area.cautions, suggested, in_full=None)

    def _show_panels(self, panels: tuple[Panel, ...]) -> None:
        self._panels_flow.clear()
        for panel in panels:
            made = button(
                panel.label.replace("&", "&&"),
                partial(self._go_to_panel, panel.id),
                icon="panel",
                role="quiet",
                hint="Show it on the drawing",
            )
            self._panels_flow.addWidget(made)
        self._panels.setVisible(bool(panels))
        self._panels.updateGeometry()

    def _show_stage(self, area: Area) -> None:
        self.stage_bar.show_stage(self._stages, area.stage)
        following = next_stage(self._stages, area.stage)
        self.move_button.setVisible(bool(following))
        self.move_button.setText(f"&Move to {following}")
        self.move_button.setToolTip("Recorded with today's date")
        self._dates_flow.clear()
        for change in area.changes:
            self._dates_flow.addWidget(self._date_chip(change))
        self._dates.setVisible(bool(area.changes))
        self._dates.updateGeometry()
        notes = [f"{c.stage.capitalize()}: {c.note}" for c in area.changes if c.note]
        self.notes.setText("\n".join(notes))
        self.notes.setVisible(bool(notes))

    def _date_chip(self, change: StageChange) -> StageChip:
        made = StageChip(change)
        made.setEnabled(not self._desk.read_only)
        made.change_wanted.connect(partial(self._on_change_stage, change))
        made.removal_wanted.connect(lambda: self._desk.act(actions.remove_stage_change, change.id))
        return made

    def _show_entries(self, area: Area) -> None:
        """Show the latest entries first, the rest when asked for: an area may have hundreds."""
        clear_layout(self._entries)
        self._more_entries = tuple(reversed(self._desk.ask(actions.area_entries, area.id) or ()))
        self._add_entries()
        if not self._entries.count():
            self._entries.addWidget(label("No entry about it yet.", "muted"))

    def _add_entries(self) -> None:
        shown, self._more_entries = self._more_entries[:_ENTRIES], self._more_entries[_ENTRIES:]
        for entry in shown:
            self._entries.addLayout(self._entry_row(entry))
        if left := len(self._more_entries):
            words = f"{left:,} earlier {'entry' if left == 1 else 'entries'}"
            self.more = button(words, self._on_more, icon="expand", role="quiet")
            self._entries.addWidget(self.more)

    def _on_more(self) -> None:
        self.more.hide()
        self.more.deleteLater()
        self._add_entries()

    def _entry_row(self, entry: Entry) -> QVBoxLayout:
        edit = tool("edit", "Change this entry", lambda: self._edit_entry(entry))
        away = tool(
            "remove", "Remove this entry", lambda: self._desk.act(actions.remove_entry, entry.id)
        )
        for act in (edit, away):
            act.setProperty("role", "quiet")
            act.setEnabled(not self._desk.read_only)
        made = QVBoxLayout()
        made.setSpacing(0)
        made.addLayout(row(label(spoken(entry.when), "muted", wrap=False), None, edit, away))
        made.addWidget(label(entry.text))
        return made

    # --- acts ---

    def edit(self) -> None:
        """Ask for the area's name, panels and words anew."""
        if self._area is not None:
            open_dialog(AreaDialog(self._desk, self.window(), area=self._area))

    def _on_move(self) -> None:
        if self._area is not None:
            stage = next_stage(self._stages, self._area.stage)
            self._desk.act(actions.move_to_stage, self._area.id, stage, When.on(date.today()))

    def _on_other_stage(self) -> None:
        if self._area is not None:
            open_dialog(StageDialog(self._desk, self._area, self.window()))

    def _on_change_stage(self, change: StageChange) -> None:
        if self._area is not None:
            open_dialog(StageDialog(self._desk, self._area, self.window(), change=change))

    def _on_remove(self) -> None:
        if self._area is not None:
            self._desk.act(actions.remove_area, self._area.id)

    def _on_cautions(self, kept: tuple[str, ...]) -> None:
        if self._area is not None:
            self._desk.act(actions.change_area, replace(self._area, cautions=kept))

    def _on_entry(self) -> None:
        if self._area is not None:
            open_dialog(EntryDialog(self._desk, self.window(), area_id=self._area.id))

    def _edit_entry(self, entry: Entry) -> None:
        open_dialog(EntryDialog(self._desk, self.window(), entry=entry))

    def _go_to_panel(self, panel_id: PanelId) -> None:
        self._desk.select(PanelSelected(panel_id))
        self._desk.show_page("Drawing")


def _say(shown: QLabel, text: str, otherwise: str) -> None:
    shown.setText(text or otherwise)
    shown.setProperty("role", "" if text else "muted")
    repolish(shown)
