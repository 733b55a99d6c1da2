"""The years under the drawing: dragged, played, tinted, taken out."""

import time
from datetime import date, timedelta

import pytest
from PIL import Image
from PySide6.QtCore import QPoint, Qt

from journal.actions import areas, hours, metalwork, pins
from journal.actions.settings import Settings
from journal.desktop.desk import Desk
from journal.desktop.dialogs.bring_in import BringInDialog, BroughtInDialog
from journal.desktop.dialogs.take_out import TakeOutDialog
from journal.desktop.pages.drawing import DrawingPage
from journal.desktop.tasks import TaskRunner
from journal.domain.areas import DEFAULT_STAGES
from journal.domain.errors import JournalError
from journal.domain.ids import AreaId, PatchId, PhotoId, SeamId, WorkId
from journal.domain.patches import Patch
from journal.domain.receipts import Share
from journal.domain.seams import Joint, Seam, SeamState
from journal.domain.shapes import Line, Point, Stroke
from journal.domain.tints import TintBy
from journal.domain.when import parse
from journal.domain.work import Work
from tests.desktop.desks import opened_dialog
from tests.desktop.drawing_fakes import box
from tests.desktop.garage import garage, panel_id

LEFT = Qt.MouseButton.LeftButton
NONE = Qt.KeyboardModifier.NoModifier


@pytest.fixture
def runner(qapp, session):
    made = TaskRunner()
    yield made
    made.close()


@pytest.fixture
def session(tmp_path):
    with garage(tmp_path, 3, 2) as made:
        sill, roof = panel_id(made, "Sill, left"), panel_id(made, "Roof")
        area = areas.add_area(made, "Sill", [sill], "Rust", parse("2015-03-02")).made
        areas.move_to_stage(made, area, "cut back", parse("2015-05-10"))
        areas.move_to_stage(made, area, "welded", parse("2016-07-09"))
        hours.record_work(
            made, Work(WorkId(0), parse("2015-05-10"), 180, "Ines", "", (Share(AreaId(area), 1),))
        )
        pins.pin(made, [PhotoId(1), PhotoId(2), PhotoId(3), PhotoId(4), PhotoId(5)], roof)
        yield made


@pytest.fixture
def page(qtbot, runner, session):
    desk = Desk(session, runner, Settings())
    made = DrawingPage(desk)
    qtbot.addWidget(made)
    desk.changed.connect(made.refresh)
    made.resize(1100, 800)
    made.show()
    made.refresh(None)
    qtbot.waitUntil(lambda: made.is_read)
    return made


def stage(page):
    return page.drawn.stages.get(panel_id(page.desk.session, "Sill, left"))


def x_of(page, day):
    strip = page.years.strip
    return QPoint(round(strip._scale.day_x(day)), 40)


def test_dragging_the_handle_shows_each_panel_as_it_stood_that_day(qtbot, page):
    strip = page.years.strip
    assert stage(page) == "welded"
    qtbot.mousePress(strip, LEFT, NONE, x_of(page, date(2015, 4, 1)))
    assert stage(page) == "found"
    assert strip.day.year == 2015
    qtbot.mouseMove(strip, x_of(page, date(2016, 1, 1)))
    qtbot.mouseRelease(strip, LEFT, NONE, x_of(page, date(2016, 1, 1)))
    page.years.look_at(date(2015, 5, 9))
    assert stage(page) == "found"
    page.years.look_at(date(2015, 5, 10))
    assert stage(page) == "cut back"
    page.years.look_at(date(2015, 3, 1))
    assert stage(page) is None
    page.years.back_to_today()
    assert stage(page) == "welded"
    assert page.years.when is None


def test_keys_go_from_change_to_change_and_day_by_day(qtbot, page):
    strip = page.years.strip
    seen = []
    for key in (Qt.Key.Key_Home, Qt.Key.Key_Right, Qt.Key.Key_Right, Qt.Key.Key_Right):
        qtbot.keyClick(strip, key)
        seen.append((strip.day.isoformat(), stage(page)))
    assert seen == [
        ("2015-03-02", "found"),
        ("2015-05-10", "cut back"),
        ("2016-07-09", "welded"),
        ("2016-07-09", "welded"),
    ]
    qtbot.keyClick(strip, Qt.Key.Key_Left, Qt.KeyboardModifier.ShiftModifier)
    assert (strip.day, stage(page)) == (date(2016, 7, 8), "cut back")
    qtbot.keyClick(strip, Qt.Key.Key_PageUp)
    assert strip.day == date(2015, 7, 8)
    assert strip.accessibleDescription() == "8 July 2015"


def test_pins_show_only_up_to_the_day(page):
    roof = panel_id(page.desk.session, "Roof")
    assert page.canvas.photo_counts[roof] == 5
    page.years.look_at(date(2016, 3, 6))
    assert page.canvas.photo_counts[roof] == 3
    page.years.look_at(date(2015, 6, 1))
    assert page.canvas.photo_counts[roof] == 0
    page.years.back_to_today()
    assert page.canvas.photo_counts[roof] == 5


def test_playing_goes_through_every_change_and_stops_at_the_last(qtbot, page):
    seen = []
    page.years.moved.connect(lambda when: seen.append(when and when.edtf))
    page.years._steps.setInterval(1)
    page.years.strip.setFocus()
    qtbot.keyClick(page.years.strip, Qt.Key.Key_Space)
    assert page.years.is_playing
    assert page.years.play_button.accessibleName().startswith("Pause")
    qtbot.waitUntil(lambda: not page.years.is_playing)
    assert seen == ["2015-03-02", "2015-05-10", "2016-07-09"]
    page.years.play_button.click()
    assert page.years.is_playing
    page.years.play_button.click()
    assert not page.years.is_playing


def test_the_years_stop_where_seams_moved_and_patches_went_in(qtbot, page, session):
    area, view = areas.areas(session)[0].id, page.canvas.view_id
    seam = Seam(
        SeamId(0), area, view, Stroke(Point(100, 500), (Line(Point(400, 500)),)), Joint.BUTT
    )
    made = page.desk.act(metalwork.add_seam, seam).made
    days = list(page.years.strip.days)
    page.desk.act(metalwork.move_seam, SeamId(made), SeamState.WELDED, parse("2018-04-05"))
    assert page.years.strip.days == [*days, date(2018, 4, 5)]
    patch = Patch(PatchId(0), area, view, box(100, 600, 200, 700), 1.0, when=parse("2019-06"))
    page.desk.act(metalwork.add_patch, patch)
    assert page.years.strip.days == [*days, date(2018, 4, 5), date(2019, 6, 1)]


def test_taking_hold_of_the_handle_stops_the_playing(qtbot, page):
    page.years.toggle()
    qtbot.mouseClick(page.years.strip, LEFT, NONE, x_of(page, date(2015, 4, 1)))
    assert not page.years.is_playing


@pytest.mark.parametrize("by", list(TintBy))
def test_every_tint_has_a_legend_with_its_bounds(qtbot, page, by):
    page.drawn.chooser.setCurrentIndex(page.drawn.chooser.findData(by.value))
    qtbot.waitUntil(lambda: page.drawn.is_read)
    assert page.canvas._tinted.by is by
    assert any("up to" in words for words in page.legend.words())
    page.drawn.chooser.setCurrentIndex(0)
    assert page.canvas._tinted is None
    assert page.legend.words() == (*DEFAULT_STAGES, "photos")
    assert "round dots: photos" in page.legend.accessibleDescription()


def test_hours_follow_the_handle_and_what_is_recorded(qtbot, page):
    sill = panel_id(page.desk.session, "Sill, left")
    page.drawn.chooser.setFocus()
    qtbot.keyClick(page.drawn.chooser, Qt.Key.Key_Down)
    qtbot.waitUntil(lambda: page.drawn.is_read)
    assert page.drawn.by is TintBy.HOURS
    assert "3 h" in page.canvas.words_of(sill)
    page.years.look_at(date(2015, 5, 9))
    qtbot.waitUntil(lambda: page.drawn.is_read)
    assert "3 h" not in page.canvas.words_of(sill)
    page.years.back_to_today()
    area = areas.areas(page.desk.session)[0].id
    work = Work(WorkId(0), parse("2017-01-01"), 60, "Tom", "", (Share(area, 1),))
    page.desk.act(hours.record_work, work)
    qtbot.waitUntil(lambda: page.drawn.is_read)
    assert "4 h" in page.canvas.words_of(sill)


def test_two_thousand_stage_changes_follow_the_handle_at_once(qtbot, page, session):
    panels = [panel.id for panel in page.canvas.panels_shown()]
    start = date(2010, 1, 1)
    with session.journal.edit("Many"):
        for number in range(250):
            made = session.journal.areas.add(f"A{number}", [panels[number % len(panels)]], "")
            for step in range(8):
                day = start + timedelta(days=number + 11 * step)
                when = parse(day.isoformat())
                name = DEFAULT_STAGES[step % len(DEFAULT_STAGES)]
                session.journal.areas.add_stage_change(made, name, when, "")
    page.drawn.read()
    times = []
    for number in range(0, 320, 13):
        begun = time.perf_counter()
        page.years.look_at(start + timedelta(days=number))
        times.append(time.perf_counter() - begun)
    assert sorted(times)[len(times) // 2] < 0.05


def chosen(dialog, kind):
    dialog.kind.setCurrentIndex(dialog.kind.findText(kind, Qt.MatchFlag.MatchContains))


def test_the_years_are_taken_out_through_the_task_runner(qtbot, page, tmp_path):
    page.years.export_wanted.emit()
    dialog = opened_dialog(TakeOutDialog)
    assert "moving picture" in dialog.kind.currentText()
    dialog.view.setCurrentIndex(1)
    dialog.choose = lambda _proposed: tmp_path / "years"
    with qtbot.waitSignal(page.desk.message) as told:
        dialog.accept_button.click()
    assert "years.gif" in told.args[0]
    with Image.open(tmp_path / "years.gif") as image:
        assert image.n_frames == 3


def test_the_drawing_is_taken_out_as_it_stands_on_the_day_looked_at(qtbot, page, tmp_path):
    dialog = TakeOutDialog(page.desk, parse("2015-04"), TintBy.HOURS)
    qtbot.addWidget(dialog)
    dialog.show()
    dialog.choose = lambda proposed: tmp_path / proposed.name
    assert dialog.when.isVisible()
    with qtbot.waitSignal(page.desk.message):
        assert dialog.submit()
    svg = (tmp_path / "Halden Rook drawing.svg").read_text("utf-8")
    assert "Hours. As it stood at the end of April 2015" in svg
    dialog.look.setCurrentIndex(1)
    assert not dialog.when.isVisible()


def test_a_date_that_is_none_is_said_in_the_dialog_and_nothing_is_written(qtbot, page, tmp_path):
    dialog = TakeOutDialog(page.desk)
    qtbot.addWidget(dialog)
    dialog.choose = lambda _proposed: pytest.fail("it asked for a file")
    dialog.when.set_text("whenever")
    with pytest.raises(JournalError):
        dialog.submit()
    assert list(tmp_path.glob("*.svg")) == []


def test_an_svg_file_comes_in_with_word_of_what_was_not_used(qtbot, page, tmp_path):
    file = tmp_path / "strap.svg"
    file.write_text(
        '<svg xmlns="http://www.w3.org/2000/svg" width="90mm" height="90mm">'
        '<rect id="Strap" width="40" height="30"/><text>x</text></svg>'
    )
    dialog = BringInDialog(page.desk, page)
    qtbot.addWidget(dialog)
    dialog.file.setText(str(file))
    assert dialog.submit()
    told = opened_dialog(BroughtInDialog)
    assert told.list.item(0).text().startswith("text: ")
    told.reject()
    qtbot.waitUntil(lambda: page.is_read)
    assert [v.name for v in page._drawing.views][-1] == "strap"


@pytest.mark.parametrize(
    ("name", "scale", "says"),
    [("", "", "Choose"), ("nowhere.svg", "", "can't be read"), ("bad.svg", "", "bad.svg"),
     ("good.svg", "wide", "no number"), ("good.svg", "0", "scale")],
)  # fmt: skip
def test_a_refused_file_is_named_in_the_dialog(qtbot, page, tmp_path, name, scale, says):
    (tmp_path / "bad.svg").write_text("<svg")
    (tmp_path / "good.svg").write_text(
        '<svg xmlns="http://www.w3.org/2000/svg"><rect width="50" height="50"/></svg>'
    )
    dialog = BringInDialog(page.desk, page)
    qtbot.addWidget(dialog)
    dialog.show()
    dialog.file.setText(str(tmp_path / name) if name else "")
    dialog.scale.setText(scale)
    dialog.accept_button.click()
    assert dialog.isVisible()
    assert says in dialog.problem.text()
