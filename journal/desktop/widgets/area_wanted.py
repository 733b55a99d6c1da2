"""The parts still wanted for a repair area."""

from functools import partial

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QVBoxLayout, QWidget

from journal.actions import wanted as actions
from journal.desktop.desk import Desk, WantedSelected
from journal.desktop.dialogs.opening import open_dialog
from journal.desktop.dialogs.wanted import WantedDialog
from journal.desktop.tasks import Task
from journal.desktop.widgets.parts import button, clear_layout, column, label, row
from journal.domain.areas import Area
from journal.domain.wanted import Wanted
from journal.domain.when import spoken


class AreaWanted(QWidget):
    """What is to be bought, on order or to be fitted for an area; a press shows the part."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._area: Area | None = None
        self._reading: Task | None = None
        self.parts = QVBoxLayout()
        self.parts.setSpacing(0)
        new = button("&Wanted part", self._on_new, icon="wanted", hint="Plan to buy something")
        new.setEnabled(not desk.read_only)
        layout = column(spacing=6)
        layout.addLayout(row(label("Wanted parts", "subheading", wrap=False), None, new))
        layout.addLayout(self.parts)
        self.setLayout(layout)

    def show_area(self, area: Area) -> None:
        """Read the parts of an area in a reader's thread, and show them."""
        is_another = self._area is None or self._area.id != area.id
        self._area = area
        if is_another:
            clear_layout(self.parts)
        if self._reading is not None:
            self._reading.cancel()
        session = self._desk.session
        self._reading = self._desk.read(
            lambda _context: actions.wanted_for_area(session, area.id), self._show, self
        )

    def _show(self, found: tuple[Wanted, ...]) -> None:
        self._reading = None
        clear_layout(self.parts)
        for part in found:
            if part.is_open:
                words = f"{part.text}: {part.state.value}"
                if part.since is not None:
                    words += f", {spoken(part.since)}"
                shown = button(
                    words.replace("&", "&&"),
                    partial(self._go_to, part),
                    icon="wanted",
                    role="quiet",
                    hint="Show it in the ledger",
                )
                self.parts.addWidget(shown, 0, Qt.AlignmentFlag.AlignLeft)
        if not self.parts.count():
            self.parts.addWidget(label("Nothing is wanted for it now.", "muted"))

    def _go_to(self, part: Wanted) -> None:
        self._desk.show_page("Ledger")
        self._desk.select(WantedSelected(part.id))

    def _on_new(self) -> None:
        if self._area is not None:
            open_dialog(WantedDialog(self._desk, self.window(), area_id=self._area.id))
