"""Mark a repair area: a name, its panels, and what was found."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLineEdit, QListWidget, QListWidgetItem, QPlainTextEdit, QWidget

from journal.actions import areas as area_actions
from journal.actions import drawings
from journal.desktop.desk import AreaSelected, Desk, PanelSelected
from journal.desktop.dialogs.form import FormDialog
from journal.desktop.widgets.parts import column
from journal.desktop.widgets.when_field import WhenField
from journal.domain.errors import JournalError
from journal.domain.ids import AreaId, PanelId


class NewAreaDialog(FormDialog):
    """Asks for a repair area on one or more panels, and selects it once it is made."""

    def __init__(
        self, desk: Desk, parent: QWidget | None = None, *, panel_id: PanelId | None = None
    ) -> None:
        super().__init__("New repair area", "&Mark it", parent)
        self._desk = desk
        if panel_id is None and isinstance(desk.selection, PanelSelected):
            panel_id = desk.selection.id
        self._name = QLineEdit()
        self._name.setPlaceholderText("For instance: Sill rotten at the jacking point")
        self._when = WhenField("When found")
        self._when.set_today()
        self._found = QPlainTextEdit()
        self._found.setTabChangesFocus(True)
        self._found.setMaximumHeight(110)
        self._filter = QLineEdit()
        self._filter.setPlaceholderText("Type part of a panel's name")
        self._filter.setAccessibleName("Filter the panels")
        self._filter.setClearButtonEnabled(True)
        self._panels = QListWidget()
        self._panels.setAccessibleName("Panels, tick one or more")
        self._panels.setMinimumHeight(180)
        self._fill_panels(panel_id)
        self._build()

    def _build(self) -> None:
        panels = QWidget()
        panels.setLayout(column(self._filter, self._panels))
        panels.setFocusProxy(self._filter)
        self.add_row("&Name", self._name)
        self.add_row("&When found", self._when)
        self.add_row("What was &found", self._found)
        self.add_row("On which &panels", panels)
        self._filter.textChanged.connect(self._on_filter)
        self._panels.itemActivated.connect(_toggle)

    def _fill_panels(self, ticked: PanelId | None) -> None:
        panels = list(self._desk.ask(drawings.panels) or ())
        panels.sort(key=lambda panel: (panel.id != ticked, panel.label.casefold()))
        for panel in panels:
            item = QListWidgetItem(panel.label)
            item.setData(Qt.ItemDataRole.UserRole, int(panel.id))
            item.setFlags(item.flags() | Qt.ItemFlag.ItemIsUserCheckable)
            is_it = panel.id == ticked
            item.setCheckState(Qt.CheckState.Checked if is_it else Qt.CheckState.Unchecked)
            self._panels.addItem(item)
        self._panels.setCurrentRow(0)

    def _on_filter(self, text: str) -> None:
        wanted = text.casefold().split()
        for number in range(self._panels.count()):
            item = self._panels.item(number)
            name = item.text().casefold()
            ticked = item.checkState() is Qt.CheckState.Checked
            item.setHidden(not ticked and not all(word in name for word in wanted))

    def panel_ids(self) -> tuple[PanelId, ...]:
        """The panels ticked."""
        items = [self._panels.item(number) for number in range(self._panels.count())]
        return tuple(
            PanelId(item.data(Qt.ItemDataRole.UserRole))
            for item in items
            if item.checkState() is Qt.CheckState.Checked
        )

    def submit(self) -> bool:
        """Record the repair area."""
        name = self._name.text().strip()
        if not name:
            self._name.setFocus()
            raise JournalError("Give the repair area a name; a few words will do.")
        if not self.panel_ids():
            self._filter.setFocus()
            raise JournalError("Tick the panel it is on; it may be more than one.")
        found = self._found.toPlainText().strip()
        changes = area_actions.add_area(
            self._desk.session, name, self.panel_ids(), found, self._when.when()
        )
        self._desk.announce(changes)
        if changes.made is not None:
            self._desk.select(AreaSelected(AreaId(changes.made)))
        return True


def _toggle(item: QListWidgetItem) -> None:
    checked = item.checkState() is Qt.CheckState.Checked
    item.setCheckState(Qt.CheckState.Unchecked if checked else Qt.CheckState.Checked)
