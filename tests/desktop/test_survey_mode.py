"""The survey by mouse and keys: begun, findings marked, changed, closed, gone on from, reckoned."""

import pytest
from PySide6.QtCore import QPointF, Qt
from PySide6.QtWidgets import QApplication

from journal.actions import areas, history, metalwork, surveys
from journal.actions.drawings import find_panel
from journal.actions.settings import Settings
from journal.desktop.desk import Desk, FindingSelected, PanelSelected
from journal.desktop.dialogs.finding import FindingDialog
from journal.desktop.dialogs.survey import SurveyDialog
from journal.desktop.inspector.finding import FindingPane
from journal.desktop.pages.drawing import DrawingPage
from journal.desktop.pages.ledger_estimate import EstimateTab
from journal.desktop.tasks import TaskRunner
from journal.desktop.tools.finding import FindingTool
from journal.desktop.widgets.three_edit import ThreeEdit
from journal.domain.anchors import AnchorKind, AnchorPoint
from journal.domain.errors import JournalError
from journal.domain.findings import Cause, Finding, Severity, Survey, Three
from journal.domain.ids import AnchorId, CauseId, FindingId, SurveyId
from journal.domain.when import parse
from tests.desktop.workshop import empty, furnished

LEFT = Qt.MouseButton.LeftButton


@pytest.fixture
def session(tmp_path):
    with furnished(tmp_path) as made:
        yield made


@pytest.fixture
def runner(qapp):
    made = TaskRunner()
    yield made
    made.close()


@pytest.fixture
def page(qtbot, runner, session):
    desk = Desk(session, runner, Settings())
    made = DrawingPage(desk)
    qtbot.addWidget(made)
    desk.changed.connect(made.refresh)
    desk.selected.connect(made.show_selection)
    made.resize(1300, 800)
    made.show()
    made.refresh(None)
    qtbot.waitUntil(lambda: made.is_read)
    made.modes.enter("Survey")
    read(qtbot, made)
    return made


def read(qtbot, page):
    qtbot.waitUntil(lambda: page.modes.mode.is_read)


def dialog(kind):
    return next(w for w in QApplication.topLevelWidgets() if isinstance(w, kind) and w.isVisible())


def begun(session, *texts):
    survey = Survey(SurveyId(0), "Before buying", parse("2014-03-01"), 900_000, 18_000, 7)
    survey_id = SurveyId(surveys.start_survey(session, survey).made)
    panel = find_panel(session, "Sill, left").id
    for text in texts:
        finding = Finding(
            FindingId(0), survey_id, text, Severity.PERFORATED, Three(100, 200, 900),
            Three(60, 120, 600), panel,
        )  # fmt: skip
        surveys.add_finding(session, finding, Cause(CauseId(0), survey_id, "Inside", 0.6))
    return survey_id


def spot(page, panel):
    return page.canvas.mapFromScene(page.canvas.spot_on(find_panel(page.desk.session, panel).id))


def test_a_click_on_a_car_without_a_survey_begins_one_then_asks_what_was_found(qtbot, page):
    session = page.desk.session
    qtbot.mouseClick(page.canvas.viewport(), LEFT, pos=spot(page, "Front wing, left"))
    start = dialog(SurveyDialog)
    start.name.setText("Before buying")
    start.when.set_when(parse("2014-03-01"))
    start.ceiling.setText("9000")
    start.hours.setText("300")
    start.accept_button.click()
    asked = dialog(FindingDialog)
    asked.what.setText("Bubbles along the edge")
    asked.severity.setCurrentIndex(list(Severity).index(Severity.SCABBY))
    for edit, text in zip(asked.money.edits, ("40", "90", "320"), strict=True):
        edit.setText(text)
    asked.hours.edits[1].setText("12.5")
    asked.cause.setEditText("It's worse inside")
    asked.strength.setValue(0.7)
    asked.area.setCurrentIndex(1)
    asked.accept_button.click()
    (survey,) = surveys.surveys(session)
    assert (survey.ceiling, survey.ceiling_minutes) == (900_000, 18_000)
    sheet = surveys.sheet(session, survey.id)
    (made,) = sheet.findings
    assert made.money == Three(4_000, 9_000, 32_000)
    assert made.minutes == Three(750, 750, 750)
    assert made.panel_id == find_panel(session, "Front wing, left").id
    assert made.view_id == page.canvas.view_id
    assert (sheet.causes[0].name, sheet.causes[0].strength) == ("It's worse inside", 0.7)
    assert areas.area(session, made.area_id).name == "Front wing, left"
    read(qtbot, page)
    qtbot.waitUntil(lambda: page.modes.mode.side.list.count() == 1)
    assert page.modes.mode.tool.chosen == made.id
    assert "1 finding" in page.modes.mode.side.sum.text()


def test_the_keyboard_finds_changes_and_takes_out(qtbot, page):
    session = page.desk.session
    begun(session)
    page.refresh(None)
    read(qtbot, page)
    page.desk.select(PanelSelected(find_panel(session, "Sill, left").id))
    page.canvas.setFocus()
    qtbot.keyClick(page.canvas, Qt.Key.Key_Return)
    asked = dialog(FindingDialog)
    asked.what.setText("Holes")
    # Coming by Tab selects what stands there: Enter is the accepting button all the same.
    asked.cause.setFocus(Qt.FocusReason.TabFocusReason)
    asked.cause.lineEdit().selectAll()
    qtbot.keyClick(asked.cause, Qt.Key.Key_Return)
    read(qtbot, page)
    mode = page.modes.mode
    qtbot.waitUntil(lambda: mode.tool.chosen is not None)
    qtbot.keyClick(page.canvas, Qt.Key.Key_Return)
    again = dialog(FindingDialog)
    again.what.setText("Holes along the flange")
    again.accept_button.click()
    assert surveys.finding(session, mode.tool.chosen).text == "Holes along the flange"
    read(qtbot, page)
    qtbot.keyClick(page.canvas, Qt.Key.Key_Delete)
    assert surveys.sheet(session, mode.shown).findings == ()
    page.desk.act(history.undo)
    read(qtbot, page)
    assert mode.side.list.count() == 1


def test_a_wrong_order_is_said_in_the_form_and_nothing_is_lost(qtbot, page):
    begun(page.desk.session)
    page.refresh(None)
    read(qtbot, page)
    page.modes.mode.side.acts["add"].click()
    asked = dialog(FindingDialog)
    asked.what.setText("Holes")
    asked.hours.edits[0].setText("20")
    asked.hours.edits[1].setText("10")
    asked.accept_button.click()
    assert asked.isVisible()
    assert "must grow from best over likely to worst" in asked.problem.text()
    asked.hours.edits[0].setText("a lot")
    asked.accept_button.click()
    assert "is no time" in asked.problem.text()
    asked.reject()


def test_marks_are_picked_by_hand_and_from_the_list(qtbot, page):
    session = page.desk.session
    begun(session, "one", "two")
    page.refresh(None)
    read(qtbot, page)
    mode = page.modes.mode
    spots = mode.tool.spots()
    assert len(set(spots.values())) == 2
    second = list(spots)[1]
    at = page.canvas.mapFromScene(QPointF(*spots[second]))
    qtbot.mouseClick(page.canvas.viewport(), LEFT, pos=at)
    assert page.desk.selection == FindingSelected(second)
    assert mode.side.finding_id() == second
    assert "strength 0.6" in mode.side.detail.text()
    mode.side.list.setCurrentRow(0)
    assert mode.tool.chosen == next(iter(spots))
    qtbot.keyClick(page.canvas, Qt.Key.Key_Escape)
    assert mode.tool.chosen is None
    assert page.modes.title == "Survey"


def test_a_closed_survey_is_read_and_gone_on_from(qtbot, page):
    session = page.desk.session
    first = begun(session, "one")
    page.refresh(None)
    read(qtbot, page)
    mode = page.modes.mode
    mode.side.acts["close"].click()
    read(qtbot, page)
    assert surveys.sheet(session, first).survey.closed
    assert not mode.tool.writable
    assert mode.side.acts["add"].isHidden()
    qtbot.mouseClick(page.canvas.viewport(), LEFT, pos=spot(page, "Front wing, left"))
    assert not any(isinstance(w, FindingDialog) for w in QApplication.topLevelWidgets())
    page.desk.select(FindingSelected(surveys.sheet(session, first).findings[0].id))
    mode.side.acts["go on"].click()
    asked = dialog(SurveyDialog)
    asked.name.setText("After the strip")
    asked.accept_button.click()
    read(qtbot, page)
    qtbot.waitUntil(lambda: mode.sheet.survey.name == "After the strip" and mode.tool.writable)
    assert mode.side.surveys.currentText() == "After the strip"


def test_a_finding_selected_elsewhere_opens_its_survey(qtbot, page):
    session = page.desk.session
    first = begun(session, "one")
    begun(session, "two")
    page.modes.enter("Look")
    finding = surveys.sheet(session, first).findings[0].id
    page.desk.select(FindingSelected(finding))
    qtbot.waitUntil(lambda: page.modes.title == "Survey")
    qtbot.waitUntil(lambda: page.modes.mode.shown == first and page.modes.mode.is_read)
    assert page.modes.mode.side.finding_id() == finding


def test_a_finding_near_a_mounting_is_warned_of_everywhere(qtbot, page):
    session = page.desk.session
    survey_id = begun(session)
    view = page.canvas.view_id
    at = page.canvas.spot_on(find_panel(session, "Sill, left").id)
    anchor = AnchorPoint(AnchorId(0), view, at.x(), at.y(), AnchorKind.JACKING, "Jack", 300)
    metalwork.add_anchor(session, anchor)
    made = Finding(
        FindingId(0), survey_id, "Holes", Severity.STRUCTURAL, Three(0, 0, 0), Three(0, 0, 0),
        None, view, at.x(), at.y(),
    )  # fmt: skip
    number = FindingId(surveys.add_finding(session, made).made)
    page.refresh(None)
    read(qtbot, page)
    mode = page.modes.mode
    assert number in mode.tool.load_bearing
    assert "Load-bearing: have it inspected" in mode.side.list.item(0).text()
    pane = FindingPane(page.desk)
    qtbot.addWidget(pane)
    pane.show_selection(FindingSelected(number))
    assert "Have the work here inspected" in pane.warning.texts[0]


@pytest.mark.parametrize(
    ("typed", "three"),
    [
        (("", "", ""), Three(0, 0, 0)),
        (("", "7:30", ""), Three(450, 450, 450)),
        (("2", "", "8"), Three(120, 120, 480)),
        (("45 min", "1,5", "400"), Three(45, 90, 24_000)),
    ],
)
def test_hours_are_read_as_people_write_them(qtbot, typed, three):
    edit = ThreeEdit("Hours")
    qtbot.addWidget(edit)
    for one, text in zip(edit.edits, typed, strict=True):
        one.setText(text)
    assert edit.three() == three
    edit.set_three(three)
    assert edit.three() == three


def test_words_in_place_of_hours_are_refused(qtbot):
    edit = ThreeEdit("Hours")
    qtbot.addWidget(edit)
    edit.edits[2].setText("ages")
    with pytest.raises(JournalError, match="is no time"):
        edit.three()


def test_the_estimate_is_shown_with_its_ceiling_and_compared(qtbot, page, tmp_path):
    session = page.desk.session
    first = begun(session, "one", "two")
    surveys.close_survey(session, first)
    surveys.go_on_from(session, first, "Again", parse("2014-06"))
    tab = EstimateTab(page.desk)
    qtbot.addWidget(tab)
    tab.resize(1150, 560)
    tab.show()
    tab.refresh(None)
    qtbot.waitUntil(lambda: tab.is_read and tab.chart.image is not None, timeout=30_000)
    assert tab.choice.currentText() == "Again"
    assert "Chance of staying under both ceilings: over 99 %" in tab.sum.text()
    assert tab.cells[0, 0].text() == "€6"
    assert tab.cells[0, 2].text() == "6 h"
    assert len(tab.weights.rows_model.rows()) == 2
    assert tab.tables.isTabVisible(3)
    assert len(tab.compared.rows_model.rows()) == 1
    tab.of.setCurrentIndex(1)
    assert tab.weights.rows_model.rows()[0].at_worst > 100
    told = []
    page.desk.message.connect(lambda words, _kind: told.append(words))
    out = tmp_path / "hours.svg"
    tab.choose = lambda _proposed: out
    tab.save.click()
    qtbot.waitUntil(lambda: bool(told), timeout=30_000)
    assert told == [f"The chart is in {out}."]
    assert "What time it may take".lower() in out.read_text()
    opened = []
    page.desk.page_wanted.connect(opened.append)
    tab.weights.selectRow(0)
    qtbot.keyClick(tab.weights, Qt.Key.Key_Return)
    assert opened == ["Drawing"]
    assert isinstance(page.desk.selection, FindingSelected)


def test_without_a_survey_the_tab_leads_to_the_drawing(qtbot, runner, tmp_path):
    with empty(tmp_path / "bare") as session:
        desk = Desk(session, runner, Settings())
        tab = EstimateTab(desk)
        qtbot.addWidget(tab)
        tab.refresh(None)
        qtbot.waitUntil(lambda: tab.is_read)
        assert tab._stack.currentWidget() is tab.empty
        wanted = []
        desk.mode_wanted.connect(wanted.append)
        tab._on_drawing()
        assert wanted == ["Survey"]


def test_the_tool_is_quiet_where_nothing_can_be_written(qtbot, page):
    tool = FindingTool(page.desk)
    tool.show_findings((), (), writable=False)
    assert tool.hint == "Click a mark to read the finding."
