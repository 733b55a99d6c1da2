"""Writing an entry: a dated note in the owner's own words."""

from dataclasses import replace

from PySide6.QtWidgets import QWidget

from journal.actions import areas as actions
from journal.actions import drawings
from journal.desktop.desk import AreaSelected, Desk, PanelSelected
from journal.desktop.dialogs.form import FormDialog
from journal.desktop.widgets.checked import CheckedField
from journal.desktop.widgets.pick_edit import PickEdit
from journal.desktop.widgets.when_edit import WhenEdit
from journal.desktop.widgets.words_edit import WordsEdit
from journal.domain.areas import Entry
from journal.domain.errors import JournalError
from journal.domain.ids import AreaId, PanelId

_Place = tuple[AreaId | None, PanelId | None]


class EntryDialog(FormDialog):
    """Date, words, and the repair area or panel they are about.

    A new entry starts out about what is selected.
    """

    def __init__(
        self,
        desk: Desk,
        parent: QWidget | None = None,
        *,
        entry: Entry | None = None,
        area_id: AreaId | None = None,
        panel_id: PanelId | None = None,
    ) -> None:
        super().__init__("New entry" if entry is None else "Entry", "&Record", parent)
        self._desk = desk
        self._entry = entry
        self._places = self._all_places()
        self.when = WhenEdit()
        self.words = WordsEdit("What happened, in your own words", lines=6)
        self._pick = PickEdit(list(self._places))
        self._pick.setPlaceholderText("The whole car; or type a repair area or a panel")
        self.about = CheckedField(edit=self._pick)
        self.add_row("&Date", self.when)
        self.add_row("&Words", self.words)
        self.add_row("&About", self.about)
        if entry is not None:
            self.when.set_when(entry.when)
            self.words.setPlainText(entry.text)
            self._show_place((entry.area_id, entry.panel_id))
        else:
            self.when.set_today()
            self._show_place((area_id, panel_id) if area_id or panel_id else self._selected())
        self.words.setFocus()

    def submit(self) -> bool:
        """Record the entry."""
        when = self.when.required()
        area_id, panel_id = self._place()
        text = self.words.words()
        if not text:
            self.words.setFocus()
            raise JournalError("An entry needs some words.")
        session = self._desk.session
        if self._entry is None:
            self._desk.announce(actions.add_entry(session, when, text, area_id, panel_id))
            return True
        changed = replace(self._entry, when=when, text=text, area_id=area_id, panel_id=panel_id)
        if changed != self._entry:
            self._desk.announce(actions.change_entry(session, changed))
        return True

    def _all_places(self) -> dict[str, _Place]:
        places: dict[str, _Place] = {
            f"Repair area: {area.name}": (area.id, None)
            for area in self._desk.ask(actions.areas) or ()
        }
        for panel in self._desk.ask(drawings.panels) or ():
            places[f"Panel: {panel.label}"] = (None, panel.id)
        return places

    def _selected(self) -> _Place:
        selected = self._desk.selection
        if isinstance(selected, AreaSelected):
            return selected.id, None
        if isinstance(selected, PanelSelected):
            return None, selected.id
        return None, None

    def _show_place(self, place: _Place) -> None:
        names = [name for name, known in self._places.items() if known == place]
        self.about.set_text(names[0] if names else "")

    def _place(self) -> _Place:
        text = self.about.text()
        if not text:
            return None, None
        name = self._pick.best()
        if name not in self._places:
            error = JournalError(f"“{text}” means no one repair area or panel; pick one.")
            self.about.refuse(error)
            raise error
        return self._places[name]
