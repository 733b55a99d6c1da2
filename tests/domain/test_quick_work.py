"""Hours as people type them in one line."""

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journal.domain.errors import JournalError
from journal.domain.ids import AreaId
from journal.domain.quick_work import read_work_line

TODAY = date(2018, 11, 21)  # a Wednesday
PEOPLE = ("Runa Mellgard", "Edo Tarsk")
AREAS = {
    AreaId(1): "Sill, left: the outer sill Sill, left",
    AreaId(2): "Sill, right: the outer sill Sill, right",
    AreaId(3): "Floor pan, front left: the footwell Floor pan, front, left",
    AreaId(4): "Battery tray Bulkhead",
}


def read(text: str) -> tuple[int, str, tuple[str, ...], int | None, str]:
    line = read_work_line(text, TODAY, "Runa Mellgard", PEOPLE, AREAS)
    return line.minutes, line.when.edtf, line.people, line.area_id, line.note


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        (
            "3h weld sill left with Edo yesterday",
            (180, "2018-11-20", ("Runa Mellgard", "Edo Tarsk"), 1, "weld sill left"),
        ),
        ("45 min battery tray", (45, "2018-11-21", ("Runa Mellgard",), 4, "battery tray")),
        (
            "dressed the right sill on Monday, 2h 15",
            (135, "2018-11-19", ("Runa Mellgard",), 2, "dressed the right sill"),
        ),
        (
            "3:30 floor pan front 18 Nov",
            (210, "2018-11-18", ("Runa Mellgard",), 3, "floor pan front"),
        ),
        ("1.5h cleaning 2018-11-03", (90, "2018-11-03", ("Runa Mellgard",), None, "cleaning")),
        ("2 hours with Ingolf", (120, "2018-11-21", ("Runa Mellgard", "Ingolf"), None, "")),
        ("3h 24 December", (180, "2017-12-24", ("Runa Mellgard",), None, "")),
        ("2h wednesday", (120, "2018-11-21", ("Runa Mellgard",), None, "")),
        ("2h thursday", (120, "2018-11-15", ("Runa Mellgard",), None, "")),
        ("4h sills", (240, "2018-11-21", ("Runa Mellgard",), None, "sills")),
    ],
)
def test_a_line_says_how_long_when_who_and_where(text: str, expected: tuple[object, ...]) -> None:
    assert read(text) == expected


@pytest.mark.parametrize("text", ["", "weld sill left", "with Edo yesterday", "0h", "90h sill"])
def test_a_line_without_a_sensible_time_is_refused(text: str) -> None:
    with pytest.raises(JournalError):
        read(text)


def test_somebody_must_have_worked() -> None:
    with pytest.raises(JournalError, match="who worked"):
        read_work_line("3h sill", TODAY, " ")


def test_each_person_gets_a_record_of_their_own() -> None:
    line = read_work_line("3h sill left outer with Edo", TODAY, "Runa Mellgard", PEOPLE, AREAS)
    first, second = line.work()
    assert (first.person, second.person) == ("Runa Mellgard", "Edo Tarsk")
    assert first.minutes == second.minutes == 180
    assert [share.area_id for share in first.shares] == [1]


@given(st.integers(0, 6))
def test_a_weekday_is_never_in_the_future_nor_a_week_ago(days: int) -> None:
    word = (TODAY - timedelta(days=days)).strftime("%A")
    when = read_work_line(f"1h {word}", TODAY, "Ada").when
    assert when.earliest.date() == TODAY - timedelta(days=days)


@pytest.mark.parametrize(
    ("text", "people", "note"),
    [
        ("2h by edo sanding", ("Edo Tarsk",), "sanding"),
        ("2h sanding by Edo Tarsk with Nils", ("Edo Tarsk", "Nils"), "sanding"),
        ("2h sanding by Edo yesterday", ("Edo Tarsk",), "sanding"),
        ("2h sanding by hand", ("Runa",), "sanding by hand"),
    ],
)
def test_by_somebody_known_is_in_place_of_who_types(
    text: str, people: tuple[str, ...], note: str
) -> None:
    line = read_work_line(text, TODAY, "Runa", ("Runa", "Edo Tarsk", "Nils"))
    assert (line.people, line.note) == (people, note)


@pytest.mark.parametrize(
    ("text", "people", "note"),
    [
        ("3h cleaned with the grinder", ("Runa",), "cleaned with the grinder"),
        ("3h filled with tin", ("Runa",), "filled with tin"),
        ("2h weld sill with MIG", ("Runa",), "weld sill with MIG"),
        ("2h sanding with Nils and Edo", ("Runa", "Nils", "Edo Tarsk"), "sanding"),
        ("2h sanding with nils, edo & Ingolf", ("Runa", "Nils", "Edo Tarsk", "Ingolf"), "sanding"),
        ("2h sanding with 健", ("Runa", "健"), "sanding"),
        ("2h with Edo, Sill left welded", ("Runa", "Edo Tarsk"), "Sill left welded"),
        ("2h with Edo Sill left", ("Runa", "Edo Tarsk"), "Sill left"),
        ("2h sanded with water with Ingolf Brandt", ("Runa", "Ingolf Brandt"), "sanded with water"),
    ],
)
def test_with_names_people_and_no_tools(text: str, people: tuple[str, ...], note: str) -> None:
    line = read_work_line(text, TODAY, "Runa", ("Runa", "Edo Tarsk", "Nils"))
    assert (line.people, line.note) == (people, note)
