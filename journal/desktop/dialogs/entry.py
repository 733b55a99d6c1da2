"""Write an entry: a dated note in the owner's own words, hung on an area or a panel."""

from PySide6.QtWidgets import QComboBox, QPlainTextEdit, QWidget

from journal.actions import areas as area_actions
from journal.actions import drawings
from journal.desktop.desk import AreaSelected, Desk, PanelSelected
from journal.desktop.dialogs.form import FormDialog
from journal.desktop.widgets.when_field import WhenField
from journal.domain.areas import Entry
from journal.domain.errors import JournalError
from journal.domain.ids import AreaId, PanelId


class EntryDialog(FormDialog):
    """Asks for an entry, or changes one; a new one hangs on what is selected."""

    def __init__(
        self,
        desk: Desk,
        parent: QWidget | None = None,
        *,
        entry: Entry | None = None,
        area_id: AreaId | None = None,
        panel_id: PanelId | None = None,
    ) -> None:
        super().__init__("Change the entry" if entry else "New entry", "&Save", parent)
        self._desk = desk
        self._entry = entry
        self._when = WhenField("When", when=entry.when if entry else None)
        self._text = QPlainTextEdit(entry.text if entry else "")
        self._text.setTabChangesFocus(True)
        self._text.setMinimumHeight(140)
        self._place = QComboBox()
        self._fill_places()
        self.add_row("&When", self._when)
        self.add_row("&Words", self._text)
        self.add_row("Hangs &on", self._place)
        if entry:
            self._choose(entry.area_id, entry.panel_id)
        else:
            self._when.set_today()
            if area_id is None and panel_id is None:
                area_id, panel_id = self._from_selection()
            self._choose(area_id, panel_id)
        self._text.setFocus()

    def _fill_places(self) -> None:
        self._place.addItem("the car as a whole", (None, None))
        for area in self._desk.ask(area_actions.areas) or ():
            self._place.addItem(f"Area: {area.name}", (int(area.id), None))
        for panel in self._desk.ask(drawings.panels) or ():
            self._place.addItem(f"Panel: {panel.label}", (None, int(panel.id)))

    def _from_selection(self) -> tuple[AreaId | None, PanelId | None]:
        match self._desk.selection:
            case AreaSelected(id=area_id):
                return area_id, None
            case PanelSelected(id=panel_id):
                return None, panel_id
            case _:
                return None, None

    def _choose(self, area_id: AreaId | None, panel_id: PanelId | None) -> None:
        wanted = (area_id, None) if area_id is not None else (None, panel_id)
        for number in range(self._place.count()):
            if tuple(self._place.itemData(number)) == wanted:
                self._place.setCurrentIndex(number)

    def submit(self) -> bool:
        """Record the entry."""
        when = self._when.needed_when("An entry")
        text = self._text.toPlainText().strip()
        if not text:
            self._text.setFocus()
            raise JournalError("Write something; the entry has no words yet.")
        area_id, panel_id = self._place.currentData()
        session = self._desk.session
        if self._entry is None:
            changes = area_actions.add_entry(session, when, text, area_id, panel_id)
        else:
            entry = Entry(self._entry.id, when, text, area_id, panel_id)
            changes = area_actions.change_entry(session, entry)
        self._desk.announce(changes)
        return True
