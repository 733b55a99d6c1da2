"""Metal on the Drawing page by mouse and keys: drawn, selected, moved on, read, summed, undone."""

from decimal import Decimal

import pytest
from PySide6.QtCore import QPointF, Qt
from PySide6.QtWidgets import QWidget

from journal.actions import areas, history, metalwork, readings
from journal.actions.drawings import find_panel
from journal.actions.settings import Settings
from journal.desktop.desk import AreaSelected, Desk, MetalKind, MetalSelected, PanelSelected
from journal.desktop.dialogs.anchor import AnchorDialog
from journal.desktop.dialogs.measure import MeasureDialog
from journal.desktop.dialogs.patch import PatchDialog
from journal.desktop.dialogs.reading import ReadingDialog
from journal.desktop.dialogs.seam import SeamDialog
from journal.desktop.dialogs.seam_state import SeamStateDialog
from journal.desktop.inspector.metal import MetalPane
from journal.desktop.pages.drawing import DrawingPage
from journal.desktop.tasks import TaskRunner
from journal.desktop.widgets.layers import Layer
from journal.domain.anchors import AnchorKind
from journal.domain.ids import AreaId
from journal.domain.seams import Joint, SeamState, length, stretches
from journal.domain.shapes import Point
from journal.domain.strokes import point_at
from journal.domain.when import parse
from tests.welding import box_of, welded

LEFT = Qt.MouseButton.LeftButton
NO_KEY = Qt.KeyboardModifier.NoModifier
ALT = Qt.KeyboardModifier.AltModifier


@pytest.fixture
def session(tmp_path):
    with welded(tmp_path) as made:
        yield made


@pytest.fixture
def runner(qapp, session):
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
    qtbot.waitUntil(lambda: made.is_read and made.metal.is_read)
    return made


@pytest.fixture
def metal(qtbot, page):
    view, _ = box_of(page.desk.session, "Sill, left")
    page.canvas.set_view(view)
    page.modes.enter("Metal")
    page.canvas.setFocus()
    return page


def settled(qtbot, page):
    qtbot.waitUntil(lambda: page.metal.is_read)


def take_up(page, name):
    page.canvas.set_tool(next(t for t in page.modes.mode.tools if t.name == name))


def pixel(page, point):
    return page.canvas.mapFromScene(QPointF(*point))


def click(qtbot, page, point):
    qtbot.mouseClick(page.canvas.viewport(), LEFT, ALT, pixel(page, point))


def drag(qtbot, page, start, end):
    view = page.canvas.viewport()
    qtbot.mousePress(view, LEFT, ALT, pixel(page, start))
    middle = Point((start.x + end.x) / 2, (start.y + end.y) / 2)
    for goal in (middle, end):
        qtbot.mouseMove(view, pixel(page, goal))
        _move(page, goal)
    qtbot.mouseRelease(view, LEFT, ALT, pixel(page, end))


def _move(page, goal):
    """Let the canvas see a move with the button held, which the offscreen platform leaves out."""
    from PySide6.QtCore import QEvent
    from PySide6.QtGui import QMouseEvent

    at = QPointF(pixel(page, goal))
    far = page.canvas.viewport().mapToGlobal(at)
    page.canvas.mouseMoveEvent(
        QMouseEvent(QEvent.Type.MouseMove, at, far, Qt.MouseButton.NoButton, LEFT, ALT)
    )


def key(qtbot, page, which, held=NO_KEY):
    qtbot.keyClick(page.canvas, which, held)


def dialog(kind):
    from PySide6.QtWidgets import QApplication

    found = [w for w in QApplication.topLevelWidgets() if isinstance(w, kind) and w.isVisible()]
    assert len(found) == 1
    return found[0]


def seams(page):
    return metalwork.metal(page.desk.session).seams


def test_a_seam_is_drawn_by_clicks_and_undone_by_its_name(qtbot, metal):
    _, box = box_of(metal.desk.session, "Sill, left")
    low = (box.top + box.bottom) / 2 + 12
    take_up(metal, "Seam")
    before = len(seams(metal))
    for x in (box.left + 100, box.left + 300, box.left + 500):
        click(qtbot, metal, Point(x, low))
    key(qtbot, metal, Qt.Key.Key_Return)
    made = seams(metal)[-1]
    assert len(seams(metal)) == before + 1
    assert made.joint is Joint.BUTT
    assert length(made) == pytest.approx(400, abs=6)
    assert areas.area(metal.desk.session, made.area_id).name == "Sill, left, rear end"
    assert metal.desk.selection == MetalSelected(MetalKind.SEAM, made.id)
    assert history.undo_label(metal.desk.session) == "Draw a seam for “Sill, left, rear end”"


def test_a_plug_row_is_drawn_by_keys_alone(qtbot, metal):
    take_up(metal, "Seam")
    metal.modes.mode.fields.joint.setCurrentText("plug row")
    metal.modes.mode.fields.area.setCurrentIndex(1)
    key(qtbot, metal, Qt.Key.Key_Right)
    key(qtbot, metal, Qt.Key.Key_Space)
    for _ in range(12):
        key(qtbot, metal, Qt.Key.Key_Right, Qt.KeyboardModifier.ShiftModifier)
    key(qtbot, metal, Qt.Key.Key_Space)
    key(qtbot, metal, Qt.Key.Key_Return)
    made = seams(metal)[-1]
    assert made.joint is Joint.PLUGS
    assert made.spacing_mm == 40
    assert length(made) == pytest.approx(120)


def test_one_point_is_no_seam_and_stays_to_be_mended(qtbot, metal):
    told = []
    metal.desk.message.connect(lambda text, level: told.append((text, level)))
    take_up(metal, "Seam")
    metal.modes.mode.fields.area.setCurrentIndex(1)
    before = len(seams(metal))
    key(qtbot, metal, Qt.Key.Key_Right)
    key(qtbot, metal, Qt.Key.Key_Space)
    key(qtbot, metal, Qt.Key.Key_Return)
    assert told == [("A seam needs two points or more, not one.", "error")]
    assert len(seams(metal)) == before
    assert len(metal.canvas.tool.points) == 1


def test_a_patch_closes_on_its_first_corner(qtbot, metal):
    _, box = box_of(metal.desk.session, "Front door, left")
    take_up(metal, "Patch")
    metal.modes.mode.fields.thickness.setValue(0.9)
    left, top = box.left + 100, box.bottom - 260
    for x, y in ((0, 0), (200, 0), (200, 100), (0, 100), (0, 0)):
        click(qtbot, metal, Point(left + x, top + y))
    made = metalwork.metal(metal.desk.session).patches[-1]
    assert made.thickness_mm == 0.9
    assert len(made.shape.contours[0].edges) == 3
    assert metal.desk.selection == MetalSelected(MetalKind.PATCH, made.id)


def test_an_anchor_point_is_clicked_and_named(qtbot, metal):
    _, box = box_of(metal.desk.session, "Sill, left")
    take_up(metal, "Anchor point")
    click(qtbot, metal, Point(box.left + 200, box.top - 40))
    asked = dialog(AnchorDialog)
    assert asked.radius.value() == 300
    asked.kind.setCurrentText("jacking point")
    qtbot.keyClicks(asked.name, "Jack, left front")
    qtbot.keyClick(asked.name, Qt.Key.Key_Return)
    made = metalwork.metal(metal.desk.session).anchors[-1]
    assert (made.name, made.kind, made.radius_mm) == ("Jack, left front", AnchorKind.JACKING, 300)
    assert made.x == pytest.approx(box.left + 200, abs=4)


def test_two_clicks_make_a_diagonal_and_numbers_are_read_at_it(qtbot, metal):
    _, box = box_of(metal.desk.session, "Sill, left")
    take_up(metal, "Measure")
    click(qtbot, metal, Point(box.left + 200, box.top - 60))
    click(qtbot, metal, Point(box.left + 500, box.top - 360))
    key(qtbot, metal, Qt.Key.Key_Return)
    asked = dialog(MeasureDialog)
    assert asked.kind.currentText() == "diagonal"
    qtbot.keyClicks(asked.name, "Brace")
    qtbot.keyClicks(asked.target.edit, "424")
    qtbot.keyClicks(asked.tolerance.edit, "2")
    qtbot.keyClick(asked.name, Qt.Key.Key_Return)
    made = readings.measures(metal.desk.session)[-1]
    assert (made.name, made.target, made.tolerance) == ("Brace", Decimal(424), Decimal(2))
    assert made.is_distance


def test_dragging_along_a_seam_moves_that_part_on(qtbot, metal):
    take_up(metal, "Move on")
    seam = seams(metal)[0]
    whole = length(seam)
    start, end = (point_at(seam.stroke, whole * share) for share in (0.7, 1.0))
    drag(qtbot, metal, start, end)
    asked = dialog(SeamStateDialog)
    assert asked.start.value() == pytest.approx(whole * 0.7, abs=6)
    assert asked.end.value() == pytest.approx(whole, abs=0.1)
    asked.state.setCurrentText("welded")
    asked.when.set_text("2016-05-20")
    qtbot.keyClick(asked.note, Qt.Key.Key_Return)
    changes = metalwork.metal(metal.desk.session).changes
    found = stretches(seam, changes)
    assert found[-1].state is SeamState.WELDED
    assert found[-1].length_mm == pytest.approx(whole * 0.3, abs=6)
    assert found[-2].state is SeamState.TACKED


def test_enter_moves_the_seam_selected_by_numbers(qtbot, metal):
    take_up(metal, "Move on")
    key(qtbot, metal, Qt.Key.Key_Tab)
    seam = next(s for s in seams(metal) if s.id == metal.desk.selection.id)
    key(qtbot, metal, Qt.Key.Key_Return)
    asked = dialog(SeamStateDialog)
    asked.state.setCurrentText("dressed")
    asked.start.setValue(10)
    asked.end.setValue(60)
    qtbot.keyClick(asked.note, Qt.Key.Key_Return)
    found = stretches(seam, metalwork.metal(metal.desk.session).changes)
    assert any(s.state is SeamState.DRESSED and s.start_mm <= 10 and s.end_mm >= 60 for s in found)


def test_a_point_is_dragged_and_a_thing_removed_by_key(qtbot, metal):
    seam = seams(metal)[2]
    metal.desk.select(MetalSelected(MetalKind.SEAM, seam.id))
    end = seam.stroke.end
    drag(qtbot, metal, end, Point(end.x - 80, end.y - 60))
    settled(qtbot, metal)
    assert seams(metal)[2].stroke.end.x == pytest.approx(end.x - 80, abs=4)
    key(qtbot, metal, Qt.Key.Key_Delete)
    assert seam.id not in {s.id for s in seams(metal)}
    history.undo(metal.desk.session)
    assert seam.id in {s.id for s in seams(metal)}


def test_a_point_is_moved_by_arrows_and_by_numbers(qtbot, metal):
    seam = seams(metal)[2]
    metal.desk.select(MetalSelected(MetalKind.SEAM, seam.id))
    key(qtbot, metal, Qt.Key.Key_N)
    key(qtbot, metal, Qt.Key.Key_Right, Qt.KeyboardModifier.ShiftModifier)
    settled(qtbot, metal)
    assert seams(metal)[2].stroke.start.x == pytest.approx(seam.stroke.start.x + 10)
    fields = metal.modes.mode.point
    fields.y_box.setValue(fields.y_box.value() - 25)
    fields.go.click()
    settled(qtbot, metal)
    assert seams(metal)[2].stroke.start.y == pytest.approx(seam.stroke.start.y - 25)


def test_looking_a_click_on_a_seam_of_the_panel_selected_selects_it(qtbot, page):
    view, _ = box_of(page.desk.session, "Sill, left")
    page.canvas.set_view(view)
    page.desk.select(PanelSelected(find_panel(page.desk.session, "Sill, left").id))
    seam = seams(page)[0]
    spot = point_at(seam.stroke, length(seam) * 0.8)
    qtbot.mouseClick(page.canvas.viewport(), LEFT, NO_KEY, pixel(page, spot))
    assert page.desk.selection == MetalSelected(MetalKind.SEAM, seam.id)


def test_the_years_take_welds_back(qtbot, metal):
    side = metal.modes.mode.side
    now = side._totals[SeamState.WELDED].text()
    metal.metal.look_at(parse("2016-04-03"))
    kinds = {thing.kind for thing in metal.metal.layer.items}
    assert MetalKind.PATCH in kinds
    assert side._totals[SeamState.WELDED].text() == "0.00 m" != now
    assert side._totals[SeamState.TACKED].text() != "0.00 m"
    metal.metal.look_at(parse("2016-03-01"))
    drawn = metal.metal.layer.items
    assert not [thing for thing in drawn if thing.kind is MetalKind.PATCH]
    planned_later = seams(metal)[2]
    assert MetalSelected(MetalKind.SEAM, planned_later.id) not in drawn


def test_layers_are_left_out_and_shown_again(qtbot, metal):
    layers = metal.modes.mode.side.layer_buttons
    qtbot.mouseClick(layers[Layer.SEAMS], LEFT)
    assert not [t for t in metal.metal.layer.items if t.kind is MetalKind.SEAM]
    assert [t for t in metal.metal.layer.items if t.kind is MetalKind.MEASURE]
    qtbot.mouseClick(layers[Layer.SEAMS], LEFT)
    assert [t for t in metal.metal.layer.items if t.kind is MetalKind.SEAM]


def test_sums_stand_by_area_panel_and_view(qtbot, metal):
    side = metal.modes.mode.side
    texts = [side.list.item(n).text() for n in range(side.list.count())]
    assert len(texts) == 2
    assert any(text.startswith("Sill, left, rear end\n") for text in texts)
    side.by.setCurrentIndex(1)
    labels = {side.list.item(n).text().split("\n")[0] for n in range(side.list.count())}
    assert "Sill, left" in labels
    side.by.setCurrentIndex(0)
    side.list.itemActivated.emit(side.list.item(0))
    assert isinstance(metal.desk.selection, AreaSelected)
    assert "1 patch" in side.patches.text()
    assert "rule of thumb" in side.consumption.text()


def test_what_lies_near_a_mounting_says_how_far_and_who_looks(qtbot, metal):
    desk = metal.desk
    pane = MetalPane(desk)
    qtbot.addWidget(pane)
    seam = seams(metal)[0]
    pane.show_selection(MetalSelected(MetalKind.SEAM, seam.id))
    (text,) = pane.bearing.texts
    assert "mm from the seat belt anchor point “Belt, left, lower”" in text
    assert "inspected by a person competent" in text
    assert not {"pass", "fail", "safe"} & set(text.casefold().split())
    anchor = metalwork.metal(desk.session).anchors[0]
    metalwork.remove_anchor(desk.session, anchor.id)
    pane.refresh(None)
    assert pane.bearing.texts == ()


def test_the_pane_reads_diagonals_side_by_side_and_says_outside(qtbot, metal):
    pane = MetalPane(metal.desk)
    qtbot.addWidget(pane)
    first = readings.measures(metal.desk.session)[0]
    pane.show_selection(MetalSelected(MetalKind.MEASURE, first.id))
    assert "before cutting: 1284 and 1283.5 mm, +0.5 mm apart" in pane.pair.text()
    assert "after welding: 1286.5 and 1283 mm, +3.5 mm apart" in pane.pair.text()
    assert "changed by +3 mm" in pane.pair.text()
    row = pane.table.rows_model.rows()[0]
    assert row.note == "outside what you set"
    assert not pane.plot.isHidden()


def test_a_row_is_read_at_once_and_a_wrong_number_is_told_in_its_field(qtbot, metal):
    desk = metal.desk
    films = readings.measures(desk.session)[-1]
    asked = ReadingDialog(desk, films, known=readings.readings(desk.session))
    qtbot.addWidget(asked)
    asked.show()
    assert len(asked.numbers) == 4
    for field, text in zip(asked.numbers, ("101", "13x", "", "260,5"), strict=True):
        qtbot.keyClicks(field.edit, text)
    asked.when.set_text("2016-06-01")
    asked.accept_button.click()
    assert asked.isVisible()
    assert asked.numbers[1].note.text() == "“13x” is no number."
    asked.numbers[1].set_number(Decimal(130))
    asked.accept_button.click()
    new = [r for r in readings.readings(desk.session) if r.when.edtf == "2016-06-01"]
    assert [(r.point, r.value) for r in new] == [
        (0, Decimal(101)),
        (1, Decimal(130)),
        (3, Decimal("260.5")),
    ]
    assert {r.moment.value for r in new} == {"after"}


@pytest.mark.parametrize("kind", [SeamDialog, PatchDialog])
def test_what_is_drawn_by_hand_is_drawn_by_numbers_too(qtbot, metal, kind):
    over = QWidget()
    qtbot.addWidget(over)
    asked = kind(metal.desk, over, area_id=AreaId(1), view_id=metal.canvas.view_id)
    asked.points.edit.setPlainText("100, 100\n400, 100\n400, 250")
    asked.accept_button.click()
    drawn = metalwork.metal(metal.desk.session)
    if kind is SeamDialog:
        assert length(drawn.seams[-1]) == pytest.approx(450)
    else:
        assert len(drawn.patches) == 2
