"""Choosing panels by typing a part of their names; those chosen stand above the line."""

from collections.abc import Callable, Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QToolButton, QWidget

from journal.desktop import icons
from journal.desktop.widgets.flow import FlowLayout
from journal.desktop.widgets.parts import column, label, row, tool
from journal.desktop.widgets.pick_edit import PickEdit
from journal.domain.drawing import Panel
from journal.domain.errors import JournalError
from journal.domain.ids import PanelId

#: Finds the panel that words mean ("left sill"), or raises JournalError naming near ones.
FindPanel = Callable[[str], Panel]


class PanelsEdit(QWidget):
    """Panels of the drawing, several at once."""

    #: Panels were added or taken out.
    changed = Signal()

    def __init__(
        self, panels: Sequence[Panel], find: FindPanel, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._panels = {panel.id: panel for panel in panels}
        self._find = find
        self._chosen: list[PanelId] = []
        self._chips = QWidget()
        self._flow = FlowLayout(self._chips)
        self.pick = PickEdit([panel.label for panel in panels])
        self.pick.setPlaceholderText("Type a part of the name: “left sill”")
        self.pick.setAccessibleName("Add a panel")
        self.pick.on_picked(self._on_typed)
        self.pick.not_found.connect(self._on_typed)
        self.pick.textEdited.connect(self._on_edited)
        self.problem = label("", "error")
        self.problem.hide()
        self._chips.hide()
        layout = column(self._chips, spacing=4)
        layout.addLayout(row(self.pick, tool("expand", "Show all panels", self.pick.show_all)))
        layout.addWidget(self.problem)
        self.setLayout(layout)
        self.setFocusProxy(self.pick)

    def panel_ids(self) -> tuple[PanelId, ...]:
        """The panels chosen, in the order they were."""
        return tuple(self._chosen)

    def set_panels(self, panel_ids: Sequence[PanelId]) -> None:
        """Show these as chosen; panels the drawing lacks are left out."""
        self._chosen = [panel_id for panel_id in panel_ids if panel_id in self._panels]
        self._rebuild()

    def first_label(self) -> str:
        """The name of the first panel chosen, "" for none."""
        return self._panels[self._chosen[0]].label if self._chosen else ""

    def take_typed(self) -> None:
        """Take what is typed but not yet added.

        Raises:
            JournalError: it means no panel, or several; the field says so too.
        """
        text = self.pick.text().strip()
        if not text:
            return
        try:
            self._add(self._find(self.pick.best() or text))
        except JournalError as error:
            self._complain(str(error))
            self.pick.setFocus()
            raise

    def _on_typed(self, text: str) -> None:
        try:
            self._add(self._find(text))
        except JournalError as error:
            self._complain(str(error))

    def _on_edited(self) -> None:
        self._complain("")

    def _add(self, panel: Panel) -> None:
        self.pick.clear()
        self._complain("")
        if panel.id not in self._chosen:
            self._chosen.append(panel.id)
            self._rebuild()
            self.changed.emit()
        self.pick.setFocus()

    def _remove(self, panel_id: PanelId) -> None:
        self._chosen.remove(panel_id)
        self._rebuild()
        self.pick.setFocus()
        self.changed.emit()

    def _rebuild(self) -> None:
        self._flow.clear()
        for panel_id in self._chosen:
            chip = self._chip(self._panels[panel_id])
            self._flow.addWidget(chip)
            chip.ensurePolished()
        self._chips.setVisible(bool(self._chosen))
        self._chips.updateGeometry()

    def _chip(self, panel: Panel) -> QToolButton:
        made = QToolButton()
        made.setText(panel.label.replace("&", "&&"))
        made.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextBesideIcon)
        made.setLayoutDirection(Qt.LayoutDirection.RightToLeft)
        icons.put(made, "close")
        made.setToolTip(f"Take out {panel.label}")
        made.setAccessibleName(f"Take out {panel.label}")
        made.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        made.clicked.connect(lambda: self._remove(panel.id))
        return made

    def _complain(self, sentence: str) -> None:
        self.problem.setText(sentence)
        self.problem.setVisible(bool(sentence))
