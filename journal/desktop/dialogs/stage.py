"""Recording the day a repair area came to a stage."""

from PySide6.QtWidgets import QComboBox, QLineEdit, QWidget

from journal.actions import areas as actions
from journal.actions import cars
from journal.desktop.desk import Desk
from journal.desktop.dialogs.form import FormDialog
from journal.desktop.widgets.when_edit import WhenEdit
from journal.domain.areas import Area


def next_stage(stages: tuple[str, ...], stage: str) -> str:
    """The stage that comes after one, "" after the last; the first where none is recorded."""
    if stage not in stages:
        return stages[0] if stages else ""
    place = stages.index(stage) + 1
    return stages[place] if place < len(stages) else ""


class StageDialog(FormDialog):
    """Which stage, since when, and a note."""

    def __init__(
        self, desk: Desk, area: Area, parent: QWidget | None = None, *, stage: str = ""
    ) -> None:
        super().__init__(f"Stage of “{area.name}”", "&Record", parent)
        self._desk = desk
        self._area = area
        car = desk.ask(cars.car)
        stages = car.stages if car else ()
        self.stage = QComboBox()
        self.stage.addItems(list(stages))
        self.stage.setCurrentText(stage or next_stage(stages, area.stage) or area.stage)
        self.when = WhenEdit()
        self.when.set_today()
        self.note = QLineEdit()
        self.add_row("&Stage", self.stage)
        self.add_row("Reached &on", self.when)
        self.add_row("&Note", self.note)
        self.when.edit.selectAll()
        self.when.setFocus()

    def submit(self) -> bool:
        """Record the day."""
        when = self.when.required()
        changes = actions.move_to_stage(
            self._desk.session,
            self._area.id,
            self.stage.currentText(),
            when,
            self.note.text().strip(),
        )
        self._desk.announce(changes)
        return True
