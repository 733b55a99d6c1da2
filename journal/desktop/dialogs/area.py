"""Marking a repair area, or changing what is said of it."""

from collections.abc import Sequence
from dataclasses import replace

from PySide6.QtWidgets import QLineEdit, QWidget

from journal.actions import areas as actions
from journal.actions import drawings
from journal.desktop.desk import AreaSelected, Desk, PanelSelected
from journal.desktop.dialogs.form import FormDialog
from journal.desktop.widgets.checked import CheckedField
from journal.desktop.widgets.panels_edit import PanelsEdit
from journal.desktop.widgets.when_edit import WhenEdit
from journal.desktop.widgets.words_edit import WordsEdit
from journal.domain.areas import Area
from journal.domain.drawing import Panel
from journal.domain.errors import JournalError
from journal.domain.ids import AreaId, PanelId


class AreaDialog(FormDialog):
    """Name, panels, what was found and when; for an area that is there also what was done.

    A new one starts on the panel selected on the drawing, and is selected once it is recorded.
    """

    def __init__(
        self,
        desk: Desk,
        parent: QWidget | None = None,
        *,
        area: Area | None = None,
        panel_ids: Sequence[PanelId] = (),
    ) -> None:
        title = "New repair area" if area is None else f"Repair area “{area.name}”"
        super().__init__(title, "&Mark it" if area is None else "&Record", parent)
        self._desk = desk
        self._area = area
        self._proposed = ""
        self.name = CheckedField(edit=QLineEdit())
        self.panels = PanelsEdit(desk.ask(drawings.panels) or (), self._find)
        self.what_found = WordsEdit("What was wrong: “Rusted through behind the trim, 20 cm long”")
        self.what_done = WordsEdit(
            "What was done about it, with what metal, and what protects it now"
        )
        self.when = WhenEdit(optional=True)
        self._build()
        self._fill(area, panel_ids)

    def _build(self) -> None:
        self.add_row("&Panels", self.panels)
        self.add_row("&Name", self.name)
        self.add_row("What was &found", self.what_found)
        if self._area is None:
            self.add_row("Found &on", self.when)
        else:
            self.add_row("What was &done", self.what_done)
        self.setMinimumWidth(600)
        self.panels.changed.connect(self._propose_name)

    def _fill(self, area: Area | None, panel_ids: Sequence[PanelId]) -> None:
        if area is not None:
            self.name.set_text(area.name)
            self.panels.set_panels(area.panel_ids)
            self.what_found.setPlainText(area.found)
            self.what_done.setPlainText(area.done)
            (self.what_done if area.found else self.what_found).setFocus()
            return
        selected = self._desk.selection
        if not panel_ids and isinstance(selected, PanelSelected):
            panel_ids = (selected.id,)
        self.panels.set_panels(panel_ids)
        self.when.set_today()
        self._propose_name()
        if panel_ids:
            self.name.setFocus()
            self.name.edit.selectAll()

    def submit(self) -> bool:
        """Record the area; done once it is in the journal."""
        self.panels.take_typed()
        name = self.name.text()
        if not name:
            error = JournalError("A repair area needs a name, such as “Sill, left, rear end”.")
            self.name.refuse(error)
            raise error
        if self._area is None:
            self._add(name)
        else:
            self._change(self._area, name)
        return True

    def _add(self, name: str) -> None:
        when = self.when.value()
        changes = actions.add_area(
            self._desk.session, name, self.panels.panel_ids(), self.what_found.words(), when
        )
        self._desk.announce(changes)
        if changes.made is not None:
            self._desk.select(AreaSelected(AreaId(changes.made)))

    def _change(self, area: Area, name: str) -> None:
        changed = replace(
            area,
            name=name,
            panel_ids=self.panels.panel_ids(),
            found=self.what_found.words(),
            done=self.what_done.words(),
        )
        if changed != area:
            self._desk.announce(actions.change_area(self._desk.session, changed))

    def _find(self, text: str) -> Panel:
        return drawings.find_panel(self._desk.session, text)

    def _propose_name(self) -> None:
        """Name a new area after its panel until the owner writes a name."""
        if self._area is None and self.name.text() == self._proposed:
            self._proposed = self.panels.first_label()
            self.name.set_text(self._proposed)
