"""The Drawing page where one looks: nothing lies over pins and signs, nothing is cut off."""

import pytest
from PySide6.QtWidgets import QLabel, QToolButton

from journal.actions.drawings import find_panel
from journal.actions.settings import Settings
from journal.desktop.desk import Desk, MetalKind, PanelSelected
from journal.desktop.pages.drawing import DrawingPage
from journal.desktop.tasks import TaskRunner
from journal.desktop.widgets.fitting_label import FittingLabel
from journal.desktop.widgets.layers import Layer
from journal.desktop.widgets.legend import Legend
from journal.desktop.widgets.metal_quiet import QuietLine
from journal.domain.areas import DEFAULT_STAGES
from tests.welding import box_of, welded


@pytest.fixture
def session(tmp_path):
    with welded(tmp_path) as made:
        yield made


@pytest.fixture
def page(qtbot, session, qapp):
    runner = TaskRunner()
    desk = Desk(session, runner, Settings())
    made = DrawingPage(desk)
    qtbot.addWidget(made)
    desk.changed.connect(made.refresh)
    desk.selected.connect(made.show_selection)
    made.resize(842, 669)
    made.show()
    made.refresh(None)
    qtbot.waitUntil(lambda: made.is_read and made.metal.is_read)
    made.canvas.set_view(box_of(session, "Sill, left")[0])
    yield made
    runner.close()


def in_full(page):
    return {thing.kind for thing, item in page.metal.layer.items.items() if item.isVisible()}


def thin_lines(page):
    return [item for item in page.canvas.scene().items() if isinstance(item, QuietLine)]


def test_looking_shows_no_metalwork(page):
    assert page.metal.layer.items
    assert in_full(page) == set()
    assert thin_lines(page) == []
    assert set(page.legend.words()) == {*DEFAULT_STAGES, "photos"}


def test_the_panel_selected_shows_its_seams_as_thin_lines_and_the_legend_names_them(page):
    page.desk.select(PanelSelected(find_panel(page.desk.session, "Sill, left").id))
    assert in_full(page) == set()
    assert 0 < len(thin_lines(page)) <= len(page.metal.layer.items)
    assert "seams" in page.legend.words()
    page.desk.select(PanelSelected(find_panel(page.desk.session, "Roof").id))
    assert thin_lines(page) == []
    assert "seams" not in page.legend.words()


def test_near_by_seams_and_patches_are_thin_lines_and_far_off_they_are_gone(page):
    page.canvas.zoom(3)
    assert in_full(page) == set()
    kinds = [thing.kind for thing in page.metal.layer.items]
    assert len(thin_lines(page)) == kinds.count(MetalKind.SEAM) + kinds.count(MetalKind.PATCH)
    page.canvas.fit()
    assert thin_lines(page) == []


def test_the_metal_mode_shows_all_of_it_and_leaving_it_none(page):
    page.modes.enter("Metal")
    kinds = {thing.kind for thing in page.metal.layer.items}
    assert in_full(page) == kinds
    assert thin_lines(page) == []
    assert "readings" in page.legend.words()
    assert "photos" not in page.legend.words()
    page.modes.mode.side.layer_buttons[Layer.READINGS].setChecked(False)
    assert "readings" not in page.legend.words()
    page.modes.enter("Look")
    assert in_full(page) == set()
    assert "photos" in page.legend.words()


def test_what_is_selected_shows_in_full_wherever_one_looks(page):
    thing = next(t for t in page.metal.layer.items if t.kind is MetalKind.MEASURE)
    page.desk.select(thing)
    shown = [t for t, item in page.metal.layer.items.items() if item.isVisible()]
    assert shown == [thing]


def test_another_view_forgets_the_lines_of_the_one_before(page, session):
    page.canvas.zoom(3)
    assert thin_lines(page)
    other = next(v for v in page._drawing.views if v.id != page.canvas.view_id)
    page.canvas.set_view(other.id)
    assert all(page.metal.layer.items[t].isVisible() is False for t in page.metal.layer.items)


def test_a_legend_without_room_names_what_the_drawing_shows_and_unfolds(qtbot):
    legend = Legend()
    qtbot.addWidget(legend)
    legend.set_stages(DEFAULT_STAGES, {"welded", "finished"})
    legend.resize(349, 36)
    legend.show()
    assert legend.words_shown() == ("welded", "finished", "photos")
    folded = legend.heightForWidth(349)
    assert legend.more.isVisible()
    legend.more.click()
    assert legend.words_shown() == (*DEFAULT_STAGES, "photos")
    assert legend.heightForWidth(349) > folded
    legend.more.click()
    assert legend.heightForWidth(349) == folded


def test_a_legend_with_room_names_everything(qtbot):
    legend = Legend()
    qtbot.addWidget(legend)
    legend.set_stages(DEFAULT_STAGES, {"welded"})
    legend.resize(1400, 36)
    legend.show()
    assert legend.words_shown() == (*DEFAULT_STAGES, "photos")
    assert not legend.more.isVisible()


def test_the_line_of_a_label_is_the_longest_that_fits(qtbot):
    label = FittingLabel()
    qtbot.addWidget(label)
    label.show()
    label.say("As it stands today, and much more of it besides", "As it stands today", "Today")
    room = label.fontMetrics().horizontalAdvance
    for wanted in (
        "As it stands today, and much more of it besides",
        "As it stands today",
        "Today",
    ):
        label.resize(room(wanted) + 2, 30)
        assert label.text() == wanted
    assert label.toolTip().endswith("besides")


@pytest.mark.parametrize("mode", ["Look", "Metal", "Trace"])
def test_the_years_are_whole_beside_the_inspector_in_a_small_window(qtbot, page, mode):
    page.modes.enter(mode)
    page.legend.more.setChecked(True)
    strip = page.years.strip
    assert page.minimumSizeHint().width() <= page.width()
    qtbot.waitUntil(lambda: strip.mapTo(page, strip.rect().bottomLeft()).y() < page.height())
    assert strip.height() == strip.minimumHeight()
    for shown in page.years.findChildren(QLabel) + page.years.findChildren(QToolButton):
        if shown.isVisible():
            assert shown.width() >= min(40, shown.minimumSizeHint().width())
