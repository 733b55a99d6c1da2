"""The milestones: when the car was acquired, stripped, painted, back on the road."""

from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6.QtWidgets import (
    QComboBox,
    QDialog,
    QDialogButtonBox,
    QLineEdit,
    QTreeWidgetItem,
    QWidget,
)

from journal.actions import cars
from journal.desktop.desk import Desk
from journal.desktop.dialogs.form import FormDialog
from journal.desktop.widgets.parts import EmptyState, PlainTree, button, column, label, row
from journal.desktop.widgets.when_edit import WhenEdit
from journal.domain.car import Milestone, MilestoneKind
from journal.domain.when import spoken

if TYPE_CHECKING:
    from journal.domain.when import When


class MilestonesDialog(QDialog):
    """Lists the milestones; each can be added, changed and removed."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self.setWindowTitle("Milestones")
        self.resize(640, 440)
        self._milestones: tuple[Milestone, ...] = ()
        self._list = PlainTree("Milestones, in order of date", ["When", "What", "Note"])
        self._add = button("&Add a milestone", self._on_add, icon="plus", role="primary")
        self._change = button("C&hange", self._on_change, icon="edit")
        self._remove = button("&Remove", self._on_remove, icon="remove")
        close = QDialogButtonBox(QDialogButtonBox.StandardButton.Close)
        close.rejected.connect(self.reject)
        words = label(
            "Turning points of the restoration. Everything dated after “on the road” counts as "
            "upkeep.",
            "muted",
        )
        self._nothing = EmptyState(
            "milestone",
            "No milestone yet",
            "Add the day the car was acquired, stripped, painted, or back on the road; the year is "
            "enough. The dossier tells the restoration by them.",
        )
        layout = column(words, self._list, self._nothing, margin=16)
        layout.addLayout(row(self._add, self._change, self._remove, None, close))
        self.setLayout(layout)
        self._list.itemSelectionChanged.connect(self._show_what_can_be_done)
        self._list.itemActivated.connect(self._on_change)
        desk.changed.connect(self._refresh)
        self._refresh()

    def _refresh(self) -> None:
        self._milestones = self._desk.ask(cars.milestones) or ()
        self._list.clear()
        for one in self._milestones:
            item = QTreeWidgetItem([spoken(one.when), one.kind.value, one.note])
            self._list.addTopLevelItem(item)
        self._list.setVisible(bool(self._milestones))
        self._nothing.setVisible(not self._milestones)
        for column_number in range(2):
            self._list.resizeColumnToContents(column_number)
        self._show_what_can_be_done()

    def _show_what_can_be_done(self) -> None:
        writable = not self._desk.read_only
        self._add.setEnabled(writable)
        for act in (self._change, self._remove):
            act.setEnabled(writable and self._chosen() is not None)

    def _chosen(self) -> Milestone | None:
        items = self._list.selectedItems()
        return self._milestones[self._list.indexOfTopLevelItem(items[0])] if items else None

    def _on_add(self) -> None:
        def save(kind: MilestoneKind, when: "When", note: str) -> None:
            self._desk.announce(cars.add_milestone(self._desk.session, kind, when, note))

        MilestoneDialog(save, None, self).exec()

    def _on_change(self) -> None:
        chosen = self._chosen()
        if chosen is None or self._desk.read_only:
            return

        def save(kind: MilestoneKind, when: "When", note: str) -> None:
            changed = Milestone(chosen.id, kind, when, note)
            self._desk.announce(cars.change_milestone(self._desk.session, changed))

        MilestoneDialog(save, chosen, self).exec()

    def _on_remove(self) -> None:
        if (chosen := self._chosen()) is not None:
            self._desk.act(cars.remove_milestone, chosen.id)


class MilestoneDialog(FormDialog):
    """Asks for one milestone and gives it to ``save``."""

    def __init__(
        self,
        save: "Callable[[MilestoneKind, When, str], None]",
        milestone: Milestone | None,
        parent: QWidget | None = None,
    ) -> None:
        title = "Change the milestone" if milestone else "Add a milestone"
        super().__init__(title, "&Save", parent)
        self._save = save
        self._kind = QComboBox()
        for kind in MilestoneKind:
            self._kind.addItem(kind.value, kind)
        self._when = WhenEdit()
        self._note = QLineEdit(milestone.note if milestone else "")
        if milestone:
            self._when.set_when(milestone.when)
            self._kind.setCurrentIndex(list(MilestoneKind).index(milestone.kind))
        self.add_row("W&hat", self._kind)
        self.add_row("&When", self._when)
        self.add_row("&Note", self._note)

    def submit(self) -> bool:
        """Save the milestone."""
        kind = MilestoneKind(self._kind.currentData())
        self._save(kind, self._when.required(), self._note.text().strip())
        return True
