"""Recording what was found at a spot of the car, or saying something else of it."""

from dataclasses import replace

from PySide6.QtWidgets import QComboBox, QDoubleSpinBox, QLineEdit, QWidget

from journal.actions import areas as area_actions
from journal.actions import cars, drawings, surveys
from journal.desktop.desk import Desk, FindingSelected
from journal.desktop.dialogs.form import FormDialog
from journal.desktop.widgets.bearing_box import BearingBox
from journal.desktop.widgets.checked import CheckedField
from journal.desktop.widgets.parts import let_type, row
from journal.desktop.widgets.pick_edit import PickEdit
from journal.desktop.widgets.three_edit import ThreeEdit
from journal.desktop.widgets.words_edit import WordsEdit
from journal.domain.bearings import Bearing
from journal.domain.errors import JournalError
from journal.domain.findings import Cause, Finding, Severity, SurveySheet, Three
from journal.domain.ids import AreaId, CauseId, FindingId, PanelId, ViewId
from journal.domain.shapes import Point

_NO_AREA, _NEW_AREA = "No repair area", "A new one, of this finding"
_NO_CAUSE = "Nothing in common with others"
_STRENGTH = 0.5


class FindingDialog(FormDialog):
    """What, how bad, where, three figures each for money and hours, and what goes with it."""

    def __init__(
        self,
        desk: Desk,
        sheet: SurveySheet,
        parent: QWidget | None = None,
        *,
        finding: Finding | None = None,
        panel_id: PanelId | None = None,
        view_id: ViewId | None = None,
        at: Point | None = None,
    ) -> None:
        title = "What was found" if finding is None else f"Finding {finding.rank}"
        super().__init__(title, "&Mark it" if finding is None else "&Record", parent)
        self.setMinimumWidth(600)
        self._desk, self._sheet = desk, sheet
        self._finding = finding or Finding(
            FindingId(0), sheet.survey.id, "", Severity.SURFACE, Three(0, 0, 0), Three(0, 0, 0),
            panel_id, view_id if at else None, at.x if at else None, at.y if at else None,
        )  # fmt: skip
        car = desk.ask(cars.car)
        self._panels = {panel.label: panel.id for panel in desk.ask(drawings.panels) or ()}
        self.what = QLineEdit(self._finding.text)
        self.what.setPlaceholderText("Holes along the flange, 20 cm")
        self.severity = QComboBox()
        for severity in Severity:
            self.severity.addItem(f"{severity.capitalize()}: {severity.meaning}", severity)
        self.warning = BearingBox()
        self.panel = CheckedField(edit=PickEdit(list(self._panels)))
        self.money = ThreeEdit("Money", car.currency if car else "EUR")
        self.hours = ThreeEdit("Hours")
        self.area = QComboBox()
        self.cause = QComboBox()
        self.strength = QDoubleSpinBox()
        self.note = WordsEdit("Anything else", lines=2)
        self._build()
        self._fill()

    def _build(self) -> None:
        self.add_row("&What", self.what)
        self.add_row("&How bad", self.severity)
        self.form.addRow("", self.warning)
        self.add_row("&Panel", self.panel)
        self.add_row("&Money", self.money)
        self.add_row("H&ours", self.hours, "If you know one figure only, give it as likely.")
        self.add_row("&Repair area", self.area)
        both = QWidget()
        let_type(self.cause)
        self.cause.setAccessibleName("Shared cause")
        self.strength.setRange(0, 1)
        self.strength.setSingleStep(0.1)
        self.strength.setDecimals(2)
        self.strength.lineEdit().setTextMargins(8, 0, 0, 0)
        self.strength.setPrefix("strength ")
        self.strength.setAccessibleName("Strength of the shared cause, 0 to 1")
        both.setLayout(row(self.cause, self.strength))
        both.layout().setStretch(0, 1)  # type: ignore[union-attr]
        both.setFocusProxy(self.cause)
        hint = "What makes several worse together, such as “It's worse inside”: 0 nothing, 1 all."
        self.add_row("Shared &cause", both, hint)
        self.add_row("&Note", self.note)

    def _fill(self) -> None:
        found = self._finding
        self.severity.setCurrentIndex(list(Severity).index(found.severity))
        labels = {number: name for name, number in self._panels.items()}
        self.panel.set_text(labels.get(found.panel_id, "") if found.panel_id else "")
        if found.id:
            self.money.set_three(found.money)
            self.hours.set_three(found.minutes)
        self.area.addItem(_NO_AREA, None)
        self.area.addItem(_NEW_AREA, 0)
        for area in self._desk.ask(area_actions.areas) or ():
            self.area.addItem(area.name, area.id)
        self.area.setCurrentIndex(max(0, self.area.findData(found.area_id)))
        self.cause.addItem(_NO_CAUSE, None)
        for cause in self._sheet.causes:
            self.cause.addItem(cause.name, cause.id)
        self.cause.setCurrentIndex(max(0, self.cause.findData(found.cause_id)))
        self.cause.editTextChanged.connect(self._on_cause)
        self.note.setPlainText(found.note)
        self._on_cause()
        marks = surveys.finding_marks(self._desk.ask(surveys.anchors) or (), found)
        self.warning.show_bearings([Bearing("what was found", mark) for mark in marks[:1]])

    def submit(self) -> bool:
        """Record the finding."""
        area = self.area.currentData()
        panel_id = self._panel_id()
        found = replace(
            self._finding,
            text=self.what.text().strip(),
            severity=list(Severity)[max(0, self.severity.currentIndex())],
            money=self.money.three(),
            minutes=self.hours.three(),
            panel_id=panel_id,
            area_id=AreaId(area) if area else None,
            cause_id=None,
            note=self.note.words(),
        )
        new_area = self._area_name(panel_id) if area == 0 else ""
        is_new = not self._finding.id
        act = surveys.add_finding if is_new else surveys.change_finding
        changes = act(self._desk.session, found, self._cause(), new_area)
        self._desk.announce(changes)
        if is_new and changes.made:
            self._desk.select(FindingSelected(FindingId(changes.made)))
        return True

    def _area_name(self, panel_id: PanelId | None) -> str:
        labels = {number: name for name, number in self._panels.items()}
        return labels.get(panel_id, "") if panel_id else self.what.text().strip()

    def _panel_id(self) -> PanelId | None:
        text = self.panel.text()
        edit = self.panel.edit
        if not text or not isinstance(edit, PickEdit):
            return None
        name = edit.best()
        if name not in self._panels:
            error = JournalError(f"“{text}” means no one panel; pick one.")
            self.panel.refuse(error)
            raise error
        return self._panels[name]

    def _known_cause(self) -> Cause | None:
        name = self.cause.currentText().strip().casefold()
        return next((c for c in self._sheet.causes if c.name.casefold() == name), None)

    def _cause(self) -> Cause | None:
        name, known = self.cause.currentText().strip(), self._known_cause()
        if not name or name == _NO_CAUSE:
            return None
        strength = round(self.strength.value(), 2)
        if known is not None:
            return replace(known, strength=strength)
        return Cause(CauseId(0), self._sheet.survey.id, name, strength)

    def _on_cause(self) -> None:
        name, known = self.cause.currentText().strip(), self._known_cause()
        self.strength.setEnabled(bool(name) and name != _NO_CAUSE)
        self.strength.setValue(known.strength if known else _STRENGTH)
