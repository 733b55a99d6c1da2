"""The years: where each month lies, and going there by mouse and key."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from PySide6.QtCore import QPoint, Qt

from journal.desktop.widgets.year_scale import Month, YearScale
from journal.desktop.widgets.year_strip import YearStrip

LEFT = Qt.MouseButton.LeftButton
NONE = Qt.KeyboardModifier.NoModifier
months = st.builds(Month, st.integers(1960, 2030), st.integers(1, 12))


@given(st.sets(months, min_size=1, max_size=60), st.data())
def test_a_month_is_found_at_its_own_middle(full, data):
    scale = YearScale(full, 10, 2000)
    month = data.draw(st.sampled_from(sorted(full)))
    start, wide = scale.month_span(month)
    assert scale.month_at(start + wide / 2) == month


@given(st.sets(months, min_size=2, max_size=60))
def test_later_months_lie_further_right_and_all_on_the_strip(full):
    scale = YearScale(full, 10, 2000)
    starts = [scale.month_span(month)[0] for month in sorted(full)]
    assert starts == sorted(starts)
    assert starts[0] >= 10
    assert starts[-1] <= 2010


def test_an_empty_year_takes_little_room():
    scale = YearScale([Month(1967, 6), Month(2014, 1)], 0, 1000)
    assert scale.year_span(1990)[1] < scale.year_span(2014)[1] / 10


@pytest.fixture
def strip(qtbot):
    made = YearStrip()
    qtbot.addWidget(made)
    made.resize(1000, made.height())
    made.set_counts({Month(2014, 3): 5, Month(2014, 11): 40, Month(2016, 7): 1})
    made.show()
    return made


def test_a_press_goes_to_the_month_and_a_pull_goes_on(qtbot, strip):
    with qtbot.waitSignal(strip.moved) as told:
        qtbot.mouseClick(strip, LEFT, NONE, QPoint(strip.x_of(Month(2014, 11)), 40))
    assert told.args == [Month(2014, 11)]
    qtbot.mousePress(strip, LEFT, NONE, QPoint(strip.x_of(Month(2014, 3)), 40))
    qtbot.mouseMove(strip, QPoint(strip.x_of(Month(2016, 7)), 40))
    qtbot.mouseRelease(strip, LEFT, NONE, QPoint(strip.x_of(Month(2016, 7)), 40))
    assert strip.place in {Month(2014, 3), Month(2016, 7)}


def test_keys_go_to_months_that_hold_something(qtbot, strip):
    qtbot.keyClick(strip, Qt.Key.Key_Home)
    assert strip.place == Month(2014, 3)
    qtbot.keyClick(strip, Qt.Key.Key_Right)
    assert strip.place == Month(2014, 11)
    qtbot.keyClick(strip, Qt.Key.Key_PageDown)
    assert strip.place == Month(2015, 11)
    qtbot.keyClick(strip, Qt.Key.Key_Right)
    assert strip.place == Month(2016, 7)
    qtbot.keyClick(strip, Qt.Key.Key_Right)
    assert strip.place == Month(2016, 7)
    qtbot.keyClick(strip, Qt.Key.Key_Left)
    assert strip.place == Month(2014, 11)


def test_the_place_is_said_in_words(strip):
    strip.set_place(Month(2016, 7))
    assert strip.accessibleDescription() == "July 2016 · 1 photo"
    strip.set_place(Month(2014, 11))
    assert strip.words() == "November 2014 · 40 photos"


def test_setting_the_place_tells_nobody(qtbot, strip):
    with qtbot.assertNotEmitted(strip.moved):
        strip.set_place(Month(2014, 11))


def test_an_empty_strip_takes_keys_and_presses_in_peace(qtbot):
    strip = YearStrip()
    qtbot.addWidget(strip)
    strip.show()
    qtbot.mouseClick(strip, LEFT)
    qtbot.keyClick(strip, Qt.Key.Key_End)
    assert strip.place is None
