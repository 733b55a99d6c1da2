"""The field for dates: what it understands, and how it says so."""

from datetime import date, timedelta

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from PySide6.QtCore import Qt

from journal.desktop.widgets.when_edit import WhenEdit
from journal.domain.errors import JournalError
from journal.domain.when import When, parse


@pytest.fixture
def edit(qtbot):
    made = WhenEdit()
    qtbot.addWidget(made)
    made.show()
    return made


@pytest.mark.parametrize(
    ("typed", "edtf", "said"),
    [
        ("5 March 2016", "2016-03-05", "Saturday"),
        ("2016-07", "2016-07", "July 2016: some day from 1 July 2016 to 31 July 2016"),
        ("summer 2009", "2009-22", "some day from"),
    ],
)
def test_says_at_once_how_a_date_is_understood(qtbot, edit, typed, edtf, said):
    qtbot.keyClicks(edit.edit, typed)
    value = edit.value()
    assert value is not None
    assert value.edtf.startswith(edtf[:4])
    assert value == parse(typed)
    assert said in edit.note.text()
    assert not edit.is_wrong


def test_what_is_no_date_yet_is_said_without_alarm_and_refused_when_asked(qtbot, edit):
    qtbot.keyClicks(edit.edit, "someti")
    assert edit.note.text() == "not a date yet"
    assert not edit.is_wrong
    with pytest.raises(JournalError):
        edit.required()
    assert edit.is_wrong
    assert "someti" in edit.note.text()
    edit.set_text("2016")
    assert not edit.is_wrong


def test_an_empty_field_is_refused_unless_it_may_be_empty(qtbot, edit):
    with pytest.raises(JournalError):
        edit.required()
    optional = WhenEdit(optional=True)
    qtbot.addWidget(optional)
    assert optional.value() is None


def test_today_and_yesterday_and_a_press_of_the_button(qtbot, edit):
    qtbot.keyClicks(edit.edit, "Yesterday")
    assert edit.required() == When.on(date.today() - timedelta(days=1))
    qtbot.mouseClick(edit.today_button, Qt.MouseButton.LeftButton)
    assert edit.required() == When.on(date.today())


def test_up_and_down_move_a_whole_day_but_leave_a_vague_date_alone(qtbot, edit):
    edit.set_text("29 February 2016")
    qtbot.keyClick(edit.edit, Qt.Key.Key_Up)
    assert edit.required() == When.on(date(2016, 3, 1))
    qtbot.keyClick(edit.edit, Qt.Key.Key_Down)
    assert edit.required() == When.on(date(2016, 2, 29))
    edit.set_text("summer 2009")
    qtbot.keyClick(edit.edit, Qt.Key.Key_Up)
    assert edit.text() == "summer 2009"


@settings(
    max_examples=60, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(
    st.one_of(
        st.dates().map(lambda d: d.isoformat()),
        st.tuples(st.integers(1900, 2100), st.sampled_from(["", "~", "?", "-07", "-22"])).map(
            lambda parts: f"{parts[0]}{parts[1]}"
        ),
        st.sampled_from(["2015/2017", "2009-05/2010", "../2014", "2014/..", "201X"]),
    )
)
def test_a_date_put_in_comes_out_as_the_same_date(edit, edtf):
    when = parse(edtf)
    edit.set_when(when)
    assert edit.required() == when


@pytest.mark.parametrize(
    ("edtf", "text"),
    [
        ("2026-01-07T15:20:14+01:00", "7 January 2026, 15:20:14"),
        ("2026-01-07T15:20:00Z", "7 January 2026, 15:20"),
        ("2016~", "about 2016"),
    ],
)
def test_a_time_of_day_is_put_in_as_people_write_it(edit, edtf, text):
    edit.set_when(parse(edtf))
    assert edit.text() == text
    assert edit.required().earliest == parse(edtf).earliest
