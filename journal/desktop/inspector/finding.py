"""A finding of a survey: what was found, how bad, what it may take, and in which survey."""

from PySide6.QtWidgets import QWidget

from journal.actions import cars, surveys
from journal.actions import drawings as drawing_actions
from journal.desktop.desk import Desk, FindingSelected, Nothing, PanelSelected, Selection
from journal.desktop.inspector import Pane
from journal.desktop.widgets.bearing_box import BearingBox
from journal.desktop.widgets.parts import button, column, label, row, scrolled
from journal.domain.bearings import Bearing
from journal.domain.changes import Changes
from journal.domain.errors import JournalError
from journal.domain.findings import Finding, spoken_money, spoken_time
from journal.domain.when import spoken

_KINDS = frozenset({"surveys", "areas", "drawing", "anchors"})


class FindingPane(Pane):
    """What the inspector says of one finding."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, parent)
        self._finding: Finding | None = None
        self.title = label("", "heading")
        self.where = label("", "muted")
        self.severity = label("")
        self.warning = BearingBox()
        self.figures = label("")
        self.note = label("", "muted")
        self._show_it = button("Show in the survey", self._on_show, icon="survey")
        self._panel = button("The panel", self._on_panel, icon="panel", role="quiet")
        layout = column(self.title, self.where, self.severity, self.warning, margin=16)
        for piece in (self.figures, self.note):
            layout.addWidget(piece)
        layout.addLayout(row(self._show_it, self._panel, None))
        layout.addStretch(1)
        content = QWidget()
        content.setLayout(layout)
        self.setLayout(column(scrolled(content)))

    def show_selection(self, selection: Selection) -> None:
        """Show the finding selected."""
        if isinstance(selection, FindingSelected):
            self._show(selection)

    def refresh(self, changes: Changes | None) -> None:
        """Read the finding again where it may have changed."""
        if self._finding is not None and (changes is None or changes.kinds & _KINDS):
            self._show(FindingSelected(self._finding.id))

    def _show(self, selection: FindingSelected) -> None:
        session = self.desk.session
        try:
            found = self._finding = surveys.finding(session, selection.id)
            survey = surveys.sheet(session, found.survey_id).survey
        except JournalError:
            # It was taken out.
            self._finding = None
            self.desk.select(Nothing())
            return
        currency = cars.car(session).currency
        labels = {panel.id: panel.label for panel in drawing_actions.panels(session)}
        panel = labels.get(found.panel_id, "") if found.panel_id is not None else "on no panel"
        marks = surveys.finding_marks(surveys.anchors(session), found)
        self.title.setText(found.text)
        self.where.setText(
            f"{panel}; number {found.rank} of “{survey.name}”, {spoken(survey.when)}"
        )
        self.severity.setText(f"{found.severity.capitalize()}: {found.severity.meaning}.")
        self.warning.show_bearings([Bearing("what was found", mark) for mark in marks])
        self.figures.setText(f"{spoken_money(found.money, currency)}\n{spoken_time(found.minutes)}")
        self.note.setText(found.note)
        self.note.setVisible(bool(found.note))
        self._panel.setVisible(found.panel_id is not None)

    def _on_show(self) -> None:
        self.desk.show_page("Drawing")

    def _on_panel(self) -> None:
        if self._finding is not None and self._finding.panel_id is not None:
            self.desk.select(PanelSelected(self._finding.panel_id))
