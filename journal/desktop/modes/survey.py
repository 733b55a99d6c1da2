"""The mode in which a person walks round the car and marks what is found."""

from collections.abc import Callable
from dataclasses import dataclass

from PySide6.QtCore import QObject, Slot
from PySide6.QtWidgets import QWidget

from journal.actions import cars, drawings, surveys
from journal.actions.session import Session
from journal.desktop.desk import Desk, FindingSelected, Nothing, PanelSelected, Selection
from journal.desktop.dialogs.finding import FindingDialog
from journal.desktop.dialogs.opening import open_dialog
from journal.desktop.dialogs.survey import SurveyDialog
from journal.desktop.modes import Mode
from journal.desktop.modes.survey_pane import SurveyPane
from journal.desktop.tasks import Task
from journal.desktop.tools.finding import FindingTool
from journal.desktop.widgets.finding_rows import FindingRow, finding_rows
from journal.desktop.widgets.layers import Layer
from journal.desktop.widgets.metal_board import board_on
from journal.desktop.widgets.tool_canvas import ToolCanvas
from journal.domain.changes import Changes
from journal.domain.estimates import Estimate
from journal.domain.findings import Finding, Survey, SurveySheet
from journal.domain.ids import FindingId, PanelId, SurveyId
from journal.domain.shapes import Point

_KINDS = frozenset({"surveys", "drawing", "anchors", "car", "areas"})


@dataclass(frozen=True, slots=True)
class _Found:
    """What was read of the surveys; ``sheet`` is the one shown, None where there is none."""

    surveys: tuple[Survey, ...]
    sheet: SurveySheet | None
    rows: tuple[FindingRow, ...]
    currency: str
    load_bearing: frozenset[FindingId]
    estimate: Estimate | None


class SurveyMode(Mode):
    """One survey on the drawing, with its findings as marks and as a list."""

    is_dated = False
    has_inspector = False

    def __init__(self, desk: Desk, canvas: ToolCanvas, parent: QObject | None = None) -> None:
        super().__init__(desk, canvas, parent)
        self.tool = FindingTool(desk, self)
        self.tools = (self.tool,)
        self.side = SurveyPane()
        self.shown: SurveyId | None = None
        self._found: _Found | None = None
        self._reading: Task | None = None
        self._layers = frozenset(Layer)
        self.side.survey_wanted.connect(self._on_survey)
        self.side.picked.connect(self._on_listed)
        self.side.act_wanted.connect(self._on_act)
        self.tool.spotted.connect(self.find_at)
        self.tool.picked.connect(self._on_marked)
        self.tool.change_wanted.connect(lambda: self._on_act("edit"))
        self.tool.remove_wanted.connect(lambda: self._on_act("take out"))

    @property
    def is_read(self) -> bool:
        """Whether what is shown is what is recorded."""
        return self._found is not None and self._reading is None

    @property
    def sheet(self) -> SurveySheet | None:
        """The survey shown."""
        return self._found.sheet if self._found else None

    def pane(self) -> QWidget:
        """The surveys and the list of findings."""
        return self.side

    def enter(self) -> None:
        """Leave of the metalwork only the mountings, which findings are looked at against."""
        layer = board_on(self.desk, self.canvas).layer
        self._layers = layer.layers
        layer.show_layers([Layer.ANCHORS])

    def leave(self) -> None:
        """Show the metalwork as before."""
        board_on(self.desk, self.canvas).layer.show_layers(self._layers)

    def refresh(self, changes: Changes | None) -> None:
        """Read the survey again, in a reader's thread: it is played through many times."""
        if changes is not None and not changes.kinds & _KINDS:
            return
        session, wanted = self.desk.session, self.shown
        if self._reading is not None:
            self._reading.cancel()
        self._reading = self.desk.read(lambda _context: _read(session, wanted), self._show, self)

    def show_selection(self, selection: Selection) -> None:
        """Show the survey of a finding that is selected, with its mark."""
        if not isinstance(selection, FindingSelected) or self._mark(selection):
            return
        found = self.desk.ask(surveys.finding, selection.id)
        if found is not None and found.survey_id != self.shown:
            self.shown = found.survey_id
            self.refresh(None)

    def _mark(self, selection: Selection) -> bool:
        """Mark a finding that is selected; whether it is of the survey shown."""
        numbers = {one.id for one in self.sheet.findings} if self.sheet else set()
        if not isinstance(selection, FindingSelected) or selection.id not in numbers:
            return False
        self.side.pick(selection.id)
        self.tool.choose(selection.id)
        self._bring_into_view(selection.id)
        return True

    # Showing

    def _show(self, found: _Found) -> None:
        self._reading, self._found = None, found
        sheet = found.sheet
        self.shown = sheet.survey.id if sheet else None
        findings = sheet.findings if sheet else ()
        read_only = self.desk.read_only
        self.side.show_surveys(found.surveys, sheet, read_only=read_only)
        self.side.show_findings(found.rows)
        self.side.show_sum(found.estimate, found.currency)
        closed = sheet is not None and sheet.survey.closed is not None
        writable = not (read_only or closed)
        self.tool.show_findings(findings, found.load_bearing, writable=writable)
        self._mark(self.desk.selection)

    def _bring_into_view(self, finding_id: FindingId) -> None:
        sheet = self.sheet
        one = next((f for f in sheet.findings if f.id == finding_id), None) if sheet else None
        if one is None:
            return
        if one.view_id is not None:
            self.canvas.set_view(one.view_id)
        elif one.panel_id is not None and self.canvas.outline_of(one.panel_id) is None:
            views = [s.view_id for s in self.canvas.drawing.shapes if s.panel_id == one.panel_id]
            if views:
                self.canvas.set_view(views[0])

    # Reacting

    @Slot(object)
    def _on_survey(self, survey_id: SurveyId) -> None:
        self.shown = survey_id
        if isinstance(self.desk.selection, FindingSelected):
            self.desk.select(Nothing())
        self.refresh(None)

    @Slot(object)
    def _on_listed(self, finding_id: FindingId | None) -> None:
        if finding_id is not None:
            self.desk.select(FindingSelected(finding_id))

    @Slot(object)
    def _on_marked(self, finding_id: FindingId | None) -> None:
        self.side.pick(finding_id)
        self.desk.select(Nothing() if finding_id is None else FindingSelected(finding_id))

    @Slot(object, object)
    def find_at(self, point: Point | None, panel_id: PanelId | None) -> None:
        """Ask what was found at a spot; without a survey, begin one first."""
        sheet = self.sheet
        if sheet is None:
            self._start(then=(point, panel_id))
            return
        open_dialog(
            FindingDialog(
                self.desk,
                sheet,
                self.canvas.window(),
                panel_id=panel_id,
                view_id=self.canvas.view_id,
                at=point,
            )
        )

    @Slot(str)
    def _on_act(self, name: str) -> None:
        acts: dict[str, Callable[[], object]] = {
            "start": self._start,
            "go on": lambda: self._ask(go_on=True),
            "change": lambda: self._ask(go_on=False),
            "close": lambda: self._do(surveys.close_survey),
            "remove": lambda: self._do(surveys.remove_survey),
            "add": self._add,
            "edit": self._edit,
            "take out": self._take_out,
            "estimate": lambda: self.desk.show_tab("Estimate"),
        }
        acts[name]()

    def _start(self, then: tuple[Point | None, PanelId | None] | None = None) -> None:
        if self.desk.read_only:
            return
        dialog = open_dialog(SurveyDialog(self.desk, self.canvas.window()))

        def begun() -> None:
            self.shown = dialog.made
            self.refresh(None)
            if then is not None and dialog.made is not None:
                found = self.desk.ask(surveys.sheet, dialog.made)
                self._found = None if found is None else _plain(found)
                self.find_at(*then)

        dialog.accepted.connect(begun)

    def _ask(self, *, go_on: bool) -> None:
        if self.sheet is None:
            return
        survey, over = self.sheet.survey, self.canvas.window()
        dialog = open_dialog(SurveyDialog(self.desk, over, survey=survey, go_on=go_on))

        def done() -> None:
            self.shown = dialog.made or self.shown
            self.refresh(None)

        dialog.accepted.connect(done)

    def _do(self, act: Callable[[Session, SurveyId], Changes]) -> None:
        if self.shown is not None:
            self.desk.act(act, self.shown)

    def _add(self) -> None:
        panel = self.canvas.selected_panel
        if panel is None and isinstance(self.desk.selection, PanelSelected):
            panel = self.desk.selection.id
        if panel is None or self.canvas.outline_of(panel) is None:
            self.find_at(None, panel)
            return
        at = self.canvas.spot_on(panel)
        self.find_at(Point(at.x(), at.y()), panel)

    def _picked(self) -> Finding | None:
        sheet, number = self.sheet, self.side.finding_id() or self.tool.chosen
        return next((one for one in sheet.findings if one.id == number), None) if sheet else None

    def _edit(self) -> None:
        sheet, one = self.sheet, self._picked()
        if sheet is None or one is None or not self.tool.writable:
            return
        open_dialog(FindingDialog(self.desk, sheet, self.canvas.window(), finding=one))

    def _take_out(self) -> None:
        one = self._picked()
        if one is not None and self.tool.writable:
            self.desk.select(Nothing())
            self.desk.act(surveys.remove_finding, one.id)


def _plain(sheet: SurveySheet) -> _Found:
    return _Found((sheet.survey,), sheet, (), "EUR", frozenset(), None)


def _read(session: Session, wanted: SurveyId | None) -> _Found:
    """The surveys, and the one wanted; the latest where it is gone or none is asked for."""
    known = surveys.surveys(session)
    numbers = [survey.id for survey in known]
    shown = wanted if wanted in numbers else (numbers[-1] if numbers else None)
    sheet = None if shown is None else surveys.sheet(session, shown)
    anchors, currency = surveys.anchors(session), cars.car(session).currency
    if sheet is None:
        return _Found(known, None, (), currency, frozenset(), None)
    near = (one.id for one in sheet.findings if surveys.finding_marks(anchors, one))
    load_bearing = frozenset(near)
    labels = {panel.id: panel.label for panel in drawings.panels(session)}
    rows = finding_rows(sheet, labels, currency, load_bearing)
    return _Found(known, sheet, rows, currency, load_bearing, surveys.estimate_of(sheet))
