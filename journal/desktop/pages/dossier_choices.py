"""What one dossier holds: its parts, its repair areas, its paper, and what is withheld."""

from collections.abc import Sequence
from dataclasses import replace

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QButtonGroup,
    QCheckBox,
    QGridLayout,
    QHBoxLayout,
    QListWidgetItem,
    QRadioButton,
    QWidget,
)

from journal.desktop.pages.dossier_withheld import WithheldPanel
from journal.desktop.widgets.parts import PlainList, column, label, number_box, row
from journal.domain.areas import Area
from journal.domain.cuts import Choices, Part
from journal.domain.ids import AreaId

_WHAT = {
    Part.IDENTITY: "Maker, numbers, colours, owner",
    Part.STORY: "The work told from year to year",
    Part.VIEWS: "One photo each of front, rear, sides, interior, engine bay, underside",
    Part.CONDITION: "How each part of the car stands",
    Part.DRAWING: "The car as it was and as it is",
    Part.METAL: "A map of the new metal",
    Part.CLAIMS: "What the record supports, each with its evidence and grades",
    Part.REMAINING: "What is not finished",
    Part.ESTIMATE: "What the survey expected, against what came of it",
    Part.VALUES: "Valuations, and comparable cars that you entered",
    Part.NOTES: "Your dated entries",
    Part.GAPS: "What the record lacks, stated openly",
}
_COLUMNS = 3


class ChoicesPanel(QWidget):
    """Ticks and choices for one cut.

    Attributes:
        parts: the tick of each part.
        withheld: the ticks of what is withheld.
    """

    #: Something was chosen: Choices.
    changed = Signal(object)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._choices: Choices | None = None
        self._areas: tuple[Area, ...] = ()
        self.parts: dict[Part, QCheckBox] = {}
        self.withheld = WithheldPanel()
        self.all_areas = QRadioButton("A&ll of them")
        self.some_areas = QRadioButton("O&nly those ticked")
        self.areas = PlainList("Repair areas in it")
        self.areas_note = label("Tick one at least; until then all are in it.", "muted")
        self.photos = number_box("Photos of one repair area", 99, "at most", "all of them")
        self.a4, self.letter = QRadioButton("A&4"), QRadioButton("Le&tter")
        self.for_print, self.for_screen = (
            QRadioButton("For &print"),
            QRadioButton("For the &screen"),
        )
        self._groups: list[QButtonGroup] = []
        self.part_acts, self.withheld_acts = row(), row()
        self._build()
        self._connect()

    def _build(self) -> None:
        self.photos.setFixedWidth(150)
        self.for_screen.setToolTip("A smaller file")
        layout = column(spacing=8, margin=0)
        layout.addWidget(label("Parts", "subheading"))
        words = "Cover, contents, method and the index of evidence are always in it."
        layout.addWidget(label(words, "muted"))
        layout.addLayout(self._part_ticks())
        layout.addLayout(self.part_acts)
        layout.addSpacing(6)
        layout.addWidget(label("What is withheld", "subheading"))
        layout.addWidget(self.withheld)
        layout.addLayout(self.withheld_acts)
        layout.addSpacing(6)
        layout.addWidget(label("Repair areas", "subheading"))
        layout.addLayout(self._group("Which", self.all_areas, self.some_areas))
        layout.addWidget(self.areas)
        layout.addWidget(self.areas_note)
        layout.addLayout(row(_named("Photos of each"), self.photos, None))
        layout.addSpacing(6)
        layout.addWidget(label("Paper and pictures", "subheading"))
        layout.addLayout(self._group("Paper", self.a4, self.letter))
        layout.addLayout(self._group("Pictures", self.for_print, self.for_screen))
        self.setLayout(layout)

    def _part_ticks(self) -> QGridLayout:
        grid = QGridLayout()
        grid.setHorizontalSpacing(8)
        grid.setVerticalSpacing(0)
        high = -(-len(Part) // _COLUMNS)
        for place, part in enumerate(Part):
            made = QCheckBox(part.value.capitalize())
            made.setToolTip(_WHAT.get(part, ""))
            made.setAccessibleDescription(_WHAT.get(part, ""))
            self.parts[part] = made
            grid.addWidget(made, place % high, place // high)
        for place in range(_COLUMNS):
            grid.setColumnStretch(place, 1)
        return grid

    def _group(self, name: str, *buttons: QRadioButton) -> QHBoxLayout:
        group = QButtonGroup(self)
        for one in buttons:
            group.addButton(one)
            one.setAccessibleDescription(name)
        self._groups.append(group)
        return row(_named(name), *buttons, None, spacing=12)

    def _connect(self) -> None:
        for one in (
            *self.parts.values(), self.all_areas, self.some_areas,
            self.a4, self.letter, self.for_print, self.for_screen,
        ):  # fmt: skip
            one.clicked.connect(self._on_chosen)
        self.photos.editingFinished.connect(self._on_chosen)
        self.photos.valueChanged.connect(self._on_stepped)
        self.areas.itemChanged.connect(lambda _item: self._on_chosen())
        self.withheld.changed.connect(lambda _kinds: self._on_chosen())

    def add_acts(self, of_parts: Sequence[QWidget], of_withheld: Sequence[QWidget]) -> None:
        """Put acts below the parts and below what is withheld; Tab comes to them there."""
        before: QWidget = list(self.parts.values())[-1]
        for acts, line in ((of_parts, self.part_acts), (of_withheld, self.withheld_acts)):
            for act in acts:
                line.addWidget(act)
                QWidget.setTabOrder(before, act)
                before = act
            line.addStretch(1)
            before = list(self.withheld.ticks.values())[-1]

    # --- showing ---

    def show_choices(self, choices: Choices, areas: Sequence[Area]) -> None:
        """Show what was chosen."""
        self._choices = choices
        self.blockSignals(True)
        for part, tick in self.parts.items():
            tick.setChecked(choices.has(part))
        self.withheld.show_withheld(choices.withheld)
        self._show_areas(choices, tuple(areas))
        self.photos.blockSignals(True)
        self.photos.setValue(choices.photos)
        self.photos.blockSignals(False)
        (self.letter if choices.paper == "letter" else self.a4).setChecked(True)
        (self.for_screen if choices.pictures == "screen" else self.for_print).setChecked(True)
        self.blockSignals(False)

    def _show_areas(self, choices: Choices, areas: tuple[Area, ...]) -> None:
        if choices.areas:
            self.some_areas.setChecked(True)
        elif self._areas != areas or not self.some_areas.isChecked():
            self.all_areas.setChecked(True)
        self._areas = areas
        self.areas.blockSignals(True)
        self.areas.clear()
        for area in areas:
            item = QListWidgetItem(area.name)
            ticked = area.id in choices.areas
            item.setCheckState(Qt.CheckState.Checked if ticked else Qt.CheckState.Unchecked)
            item.setData(Qt.ItemDataRole.UserRole, int(area.id))
            self.areas.addItem(item)
        self.areas.blockSignals(False)
        self.areas.setFixedHeight(min(220, 12 + 32 * len(areas)))
        self.some_areas.setEnabled(bool(areas))
        self._show_which()

    def _show_which(self) -> None:
        some = self.some_areas.isChecked() and self.areas.count() > 0
        self.areas.setVisible(some)
        self.areas_note.setVisible(some and not self._ticked())

    # --- choosing ---

    def _ticked(self) -> frozenset[AreaId]:
        items = (self.areas.item(place) for place in range(self.areas.count()))
        return frozenset(
            AreaId(item.data(Qt.ItemDataRole.UserRole))
            for item in items
            if item.checkState() is Qt.CheckState.Checked
        )

    def _on_stepped(self) -> None:
        if not self.photos.lineEdit().hasFocus():
            self._on_chosen()

    def _on_chosen(self) -> None:
        if self._choices is None:
            return
        self._show_which()
        chosen = replace(
            self._choices,
            parts=frozenset(part for part, tick in self.parts.items() if tick.isChecked()),
            withheld=self.withheld.withheld(),
            areas=self._ticked() if self.some_areas.isChecked() else frozenset(),
            photos=self.photos.value(),
            paper="letter" if self.letter.isChecked() else "a4",
            pictures="screen" if self.for_screen.isChecked() else "print",
        )
        if chosen != self._choices:
            self._choices = chosen
            self.changed.emit(chosen)


def _named(text: str) -> QWidget:
    made = label(text, wrap=False)
    made.setMinimumWidth(96)
    return made
