"""What the journal says of the car itself, and its own settings."""

from dataclasses import replace
from typing import Any

from PySide6.QtWidgets import QLineEdit, QPlainTextEdit, QTabWidget, QWidget

from journal.actions import cars
from journal.desktop.desk import Desk
from journal.desktop.dialogs.form import FormDialog
from journal.desktop.widgets.parts import column, label, number_box
from journal.domain.car import Car
from journal.domain.errors import JournalError

_TEXTS = (
    ("title", "&Name of the car"),
    ("maker", "&Maker"),
    ("model", "Mo&del"),
    ("year", "&Year built"),
    ("chassis_number", "Cha&ssis number"),
    ("engine_number", "&Engine number"),
    ("registration", "&Registration"),
    ("colour", "C&olour"),
    ("owner", "O&wner"),
    ("currency", "C&urrency"),
)


class CarDialog(FormDialog):
    """The car's particulars, its story, and the list of stages."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__("The car", "&Save", parent)
        self._desk = desk
        self._car: Car | None = desk.ask(cars.car)
        self._fields: dict[str, QLineEdit] = {}
        self._story = QPlainTextEdit()
        self._pause = number_box("Pause between sittings", 24 * 60, "min", "chosen from the photos")
        self._stages = QPlainTextEdit()
        self._build()
        if self._car:
            self._show(self._car)
        self.accept_button.setEnabled(not desk.read_only)

    def _build(self) -> None:
        for name, text in _TEXTS:
            field = QLineEdit()
            self._fields[name] = field
            self.add_row(text, field)
        self.add_row("&Pause between sittings", self._pause)
        particulars = QWidget()
        self.outer.removeItem(self.form)
        particulars.setLayout(self.form)
        tabs = QTabWidget()
        tabs.addTab(particulars, "&Particulars")
        tabs.addTab(self._make_story(), "S&tory")
        tabs.addTab(self._make_stages(), "Sta&ges")
        self.outer.insertWidget(0, tabs, 1)

    def _make_story(self) -> QWidget:
        made = QWidget()
        self._story.setAccessibleName("The car's story")
        self._story.setTabChangesFocus(True)
        words = label("The car's story in your own words; the dossier opens with it.", "muted")
        made.setLayout(column(words, self._story))
        return made

    def _make_stages(self) -> QWidget:
        made = QWidget()
        self._stages.setAccessibleName("Stages, one a line")
        self._stages.setTabChangesFocus(True)
        words = label(
            "The stages a repair area goes through, one a line, in order. A stage that is "
            "recorded already keeps its name.",
            "muted",
        )
        made.setLayout(column(words, self._stages))
        return made

    def _show(self, car: Car) -> None:
        for name, field in self._fields.items():
            field.setText(getattr(car, name))
        self._story.setPlainText(car.story)
        self._pause.setValue(car.pause_minutes)
        self._stages.setPlainText("\n".join(car.stages))

    def submit(self) -> bool:
        """Record the car anew where something differs."""
        if self._car is None:
            return True
        stages = tuple(
            line.strip() for line in self._stages.toPlainText().splitlines() if line.strip()
        )
        if len(stages) < 2:
            raise JournalError("A repair area needs two stages at the least.")
        if len(set(stages)) < len(stages):
            raise JournalError("Two stages have the same name; each needs its own.")
        texts: dict[str, Any] = {name: field.text().strip() for name, field in self._fields.items()}
        texts["currency"] = texts["currency"].upper()
        changed = replace(
            self._car,
            **texts,
            story=self._story.toPlainText().strip(),
            pause_minutes=self._pause.value(),
            stages=stages,
        )
        if changed != self._car:
            self._desk.announce(cars.change_car(self._desk.session, changed))
        return True
