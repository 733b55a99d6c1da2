"""Recording the day a repair area came to a stage."""

from PySide6.QtWidgets import QComboBox, QLineEdit, QWidget

from journal.actions import areas as actions
from journal.actions import cars
from journal.desktop.desk import Desk
from journal.desktop.dialogs.form import FormDialog
from journal.desktop.widgets.parts import label
from journal.desktop.widgets.when_edit import WhenEdit
from journal.domain.areas import Area, StageChange
from journal.domain.ids import StageChangeId
from journal.domain.when import When, spoken


def next_stage(stages: tuple[str, ...], stage: str) -> str:
    """The stage that comes after one, "" after the last; the first where none is recorded."""
    if stage not in stages:
        return stages[0] if stages else ""
    place = stages.index(stage) + 1
    return stages[place] if place < len(stages) else ""


class StageDialog(FormDialog):
    """Which stage, since when, and a note; and what stage the area shows afterwards."""

    def __init__(
        self,
        desk: Desk,
        area: Area,
        parent: QWidget | None = None,
        *,
        stage: str = "",
        change: StageChange | None = None,
    ) -> None:
        """``change`` is the one to be changed; None: record another."""
        super().__init__(f"Stage of “{area.name}”", "&Save" if change else "&Record", parent)
        self._desk = desk
        self._area = area
        self._change = change
        car = desk.ask(cars.car)
        stages = car.stages if car else ()
        self.stage = QComboBox()
        self.stage.addItems(list(stages))
        self.when = WhenEdit()
        self.note = QLineEdit()
        self.after = label("", "muted")
        self.after.setAccessibleName("What it shows afterwards")
        self.add_row("&Stage", self.stage)
        self.add_row("Reached &on", self.when)
        self.add_row("&Note", self.note)
        self.form.addRow("", self.after)
        if change is None:
            self.stage.setCurrentText(stage or next_stage(stages, area.stage) or area.stage)
            self.when.set_today()
        else:
            self._fill(change)
        self.stage.currentTextChanged.connect(self._show_after)
        self.when.changed.connect(self._show_after)
        self._show_after()
        self.when.edit.selectAll()
        self.when.setFocus()

    def _fill(self, change: StageChange) -> None:
        if self.stage.findText(change.stage) < 0:
            self.stage.addItem(change.stage)
        self.stage.setCurrentText(change.stage)
        self.when.set_when(change.when)
        self.note.setText(change.note)

    def _wanted(self, when: When) -> StageChange:
        number = self._change.id if self._change else StageChangeId(0)
        stage, note = self.stage.currentText(), self.note.text().strip()
        return StageChange(number, self._area.id, stage, when, note)

    def _show_after(self) -> None:
        """Say which stage shows once this is recorded: the latest by date, whatever is added."""
        when = self.when.seen()
        self.after.setText(after_words(self._area, self._wanted(when)) if when else "")

    def submit(self) -> bool:
        """Record the day."""
        wanted = self._wanted(self.when.required())
        session = self._desk.session
        if self._change is None:
            changes = actions.move_to_stage(
                session, self._area.id, wanted.stage, wanted.when, wanted.note
            )
            self._desk.announce(changes)
        elif wanted != self._change:
            self._desk.announce(actions.change_stage_change(session, wanted))
        return True


def after_words(area: Area, wanted: StageChange) -> str:
    """What stage an area shows once a change of stage is recorded."""
    last = area.with_change(wanted).changes[-1]
    if last == wanted:
        return f"Afterwards the area shows as “{last.stage}”."
    return f"Afterwards the area still shows as “{last.stage}”: its {spoken(last.when)} is later."
