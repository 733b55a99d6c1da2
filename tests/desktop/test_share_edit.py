"""Sharing over repair areas: by weight, to the last unit."""

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QToolButton

from journal.desktop.widgets.share_edit import ShareEdit, shares_in_words
from journal.domain.areas import Area
from journal.domain.ids import AreaId
from journal.domain.money import format_money
from journal.domain.receipts import Share

NAMES = ("Sill, left", "Boot lid", "Front wing")


def area(number, name):
    return Area(AreaId(number), name, (), "", "", ())


@pytest.fixture
def edit(qtbot):
    made = ShareEdit([area(n, name) for n, name in enumerate(NAMES, start=1)])
    qtbot.addWidget(made)
    made.show()
    return made


def euros(minor):
    return format_money(minor, "EUR")


def type_area(qtbot, edit, text):
    qtbot.keyClicks(edit.pick, text)
    qtbot.keyClick(edit.pick, Qt.Key.Key_Return)


def test_an_area_taken_from_the_list_leaves_the_line_empty(qtbot, edit):
    qtbot.keyClicks(edit.pick, "l")
    popup = edit.pick.completer().popup()
    qtbot.waitUntil(popup.isVisible)
    qtbot.keyClick(popup, Qt.Key.Key_Down)
    qtbot.keyClick(popup, Qt.Key.Key_Return)
    assert len(edit.shares()) == 1
    qtbot.waitUntil(lambda: edit.pick.text() == "")


def test_the_list_is_put_away_once_it_says_no_more_than_what_is_typed(qtbot, edit):
    popup = edit.pick.completer().popup()
    qtbot.keyClicks(edit.pick, "Boot li")
    qtbot.waitUntil(popup.isVisible)
    qtbot.keyClicks(edit.pick, "d")
    qtbot.waitUntil(lambda: not popup.isVisible())


def test_areas_are_added_by_a_part_of_their_name(qtbot, edit):
    type_area(qtbot, edit, "boot")
    type_area(qtbot, edit, "sill")
    assert edit.shares() == (Share(AreaId(2), 1), Share(AreaId(1), 1))
    assert edit.pick.text() == ""
    assert "Boot lid" not in edit.pick.choices


def test_words_that_mean_no_area_add_none(qtbot, edit):
    type_area(qtbot, edit, "gearbox")
    assert edit.shares() == ()


def test_amounts_are_shown_to_the_last_cent(qtbot, edit):
    edit.set_total(1000, euros)
    for text in ("sill", "boot", "wing"):
        type_area(qtbot, edit, text)
    assert edit.amounts() == (334, 333, 333)
    qtbot.keyClick(edit.weights[0], Qt.Key.Key_Up)
    assert edit.shares()[0].weight == 2
    assert edit.amounts() == (500, 250, 250)


def test_several_amounts_are_each_shared_by_themselves(edit):
    edit.set_shares((Share(AreaId(1), 1), Share(AreaId(2), 1)))
    edit.set_total((1, 1, 1), euros)
    assert edit.amounts() == (3, 0)


def test_a_share_is_taken_out_and_its_area_offered_again(qtbot, edit):
    edit.set_shares((Share(AreaId(1), 1), Share(AreaId(2), 3)))
    away = next(
        b for b in edit.findChildren(QToolButton) if b.toolTip() == "Don't share with Boot lid"
    )
    with qtbot.waitSignal(edit.changed):
        qtbot.mouseClick(away, Qt.MouseButton.LeftButton)
    assert edit.shares() == (Share(AreaId(1), 1),)
    assert "Boot lid" in edit.pick.choices


def test_areas_of_one_name_are_told_apart(qtbot):
    edit = ShareEdit([area(4, "Sill"), area(9, "Sill")])
    qtbot.addWidget(edit)
    assert set(edit.pick.choices) == {"Sill (no. 4)", "Sill (no. 9)"}


@settings(deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(
    st.lists(st.integers(-(10**7), 10**7), min_size=1, max_size=5),
    st.lists(st.integers(0, 9999), min_size=1, max_size=3),
)
def test_what_is_shown_adds_up_to_what_is_shared(edit, totals, weights):
    edit.set_shares([Share(AreaId(n), weight) for n, weight in enumerate(weights, start=1)])
    edit.set_total(totals, euros)
    assert sum(edit.amounts()) == sum(totals)


def test_shares_in_words():
    names = {AreaId(n): name for n, name in enumerate(NAMES, start=1)}
    assert shares_in_words((), names) == ""
    assert shares_in_words((Share(AreaId(1), 5),), names) == "Sill, left"
    both = (Share(AreaId(1), 2), Share(AreaId(2), 1))
    assert shares_in_words(both, names) == "Sill, left 2 of 3; Boot lid 1 of 3"
