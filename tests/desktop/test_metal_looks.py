"""How metalwork looks and is typed: states told apart without colour, places by number."""

from itertools import combinations

import pytest
from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QImage, QPainter

from journal.actions.settings import (
    Settings,
    assumptions,
    load_settings,
    save_settings,
    with_assumptions,
)
from journal.desktop import theme
from journal.desktop.desk import Desk
from journal.desktop.dialogs.assumptions import AssumptionsDialog
from journal.desktop.tasks import TaskRunner
from journal.desktop.widgets import metal_pens
from journal.desktop.widgets.points_edit import PointsEdit
from journal.domain.consumption import Assumptions
from journal.domain.errors import JournalError
from journal.domain.seams import Joint, SeamState
from journal.domain.shapes import Point
from tests.welding import welded

THEMES = (theme.LIGHT, theme.DARK)


def painted(paint, colours):
    """What is painted, as shades of grey that keep no colour: ink or ground."""
    image = QImage(60, 24, QImage.Format.Format_RGB32)
    image.fill(colours.surface)
    painter = QPainter(image)
    paint(painter)
    painter.end()
    ground = image.pixel(0, 0)
    return tuple(image.pixel(x, y) != ground for x in range(60) for y in range(24))


def differs(one, other):
    return sum(a != b for a, b in zip(one, other, strict=True))


@pytest.mark.parametrize("colours", THEMES)
def test_states_of_a_seam_differ_in_shape_alone(qapp, colours):
    looks = {
        state: painted(
            lambda p, s=state: metal_pens.paint_state_swatch(p, QRectF(2, 2, 56, 20), s, colours),
            colours,
        )
        for state in SeamState
    }
    for one, other in combinations(looks.values(), 2):
        assert differs(one, other) > 20


@pytest.mark.parametrize("joint", [Joint.PLUGS, Joint.SPOTS])
def test_states_of_a_plug_differ_in_shape_alone(qapp, joint):
    looks = [
        painted(
            lambda p, s=state: metal_pens.paint_weld(p, QPointF(30, 12), joint, s, theme.LIGHT),
            theme.LIGHT,
        )
        for state in SeamState
    ]
    assert all(differs(one, other) >= 4 for one, other in combinations(looks, 2))


def test_joints_differ_by_their_marks(qapp):
    looks = [
        painted(
            lambda p, j=joint: metal_pens.paint_joint(
                p, QPointF(30, 12), QPointF(1, 0), j, theme.LIGHT.text
            ),
            theme.LIGHT,
        )
        for joint in (Joint.BUTT, Joint.LAP, Joint.JOGGLED)
    ]
    assert all(differs(one, other) > 5 for one, other in combinations(looks, 2))


@pytest.mark.parametrize("colours", THEMES)
def test_every_state_stands_out_from_its_ground(colours):
    for state in SeamState:
        assert theme.contrast(metal_pens.ink(colours, state), colours.surface) >= 3


@pytest.mark.parametrize(
    ("typed", "place"),
    [
        ("820, 410", Point(820, 410)),
        ("820,410", Point(820, 410)),
        ("820.5 410", Point(820.5, 410)),
        ("820,5 410,25", Point(820.5, 410.25)),
        ("820,5; 410", Point(820.5, 410)),
        ("-3, 4", Point(-3, 4)),
    ],
)
def test_a_place_is_read_as_people_write_it(qtbot, typed, place):
    field = PointsEdit(1)
    qtbot.addWidget(field)
    field.edit.setPlainText(typed)
    assert field.points() == (place,)


@pytest.mark.parametrize("typed", ["820", "a, b", "1, 2, 3", "nan, 4", "1e9, 2"])
def test_what_is_no_place_is_named(qtbot, typed):
    field = PointsEdit(1)
    qtbot.addWidget(field)
    field.edit.setPlainText(typed)
    with pytest.raises(JournalError, match="is no place"):
        field.points()
    assert typed in field.note.text()


def test_places_written_out_are_read_back(qtbot):
    field = PointsEdit(2)
    qtbot.addWidget(field)
    points = (Point(1630.67, 1295.0), Point(-4.5, 0.25), Point(10, 20))
    field.set_points(points)
    assert field.points() == points


def test_assumptions_are_kept_on_this_computer_and_change_no_record(qtbot, qapp, tmp_path):
    runner = TaskRunner()
    with welded(tmp_path) as session:
        desk = Desk(session, runner, Settings())
        told = []
        desk.changed.connect(told.append)
        asked = AssumptionsDialog(desk)
        qtbot.addWidget(asked)
        asked.boxes["wire_mm"].setValue(0.7)
        with pytest.raises(JournalError, match=r"no wire of 0\.7 mm"):
            asked.submit()
        asked.boxes["wire_mm"].setValue(0.8)
        assert asked.submit()
        assert told == []
    runner.close()
    assert assumptions(load_settings()).wire_mm == 0.8


def test_settings_beyond_reason_count_as_unset():
    save_settings(Settings(welding={"wire_mm": 55, "no_such": 1}))
    assert assumptions(load_settings()) == Assumptions()
    kept = with_assumptions(Settings(person="Ada"), Assumptions(gas_flow=12))
    save_settings(kept)
    assert load_settings().person == "Ada"
    assert assumptions(load_settings()).gas_flow == 12
