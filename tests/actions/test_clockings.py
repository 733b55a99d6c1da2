"""Clocking on and off, hours from photos, and the people whose hours they are."""

from collections.abc import Iterator
from dataclasses import replace
from datetime import datetime, timedelta
from pathlib import Path

import pytest

from journal.actions import areas, clockings, history, hours, people, photo_hours, photos
from journal.actions.add_photos import add_photos
from journal.actions.session import Session
from journal.domain.errors import JournalError
from journal.domain.ids import AreaId, ClockingId, PersonId, PhotoId
from journal.domain.people import Person, PersonKind
from journal.domain.photos import Role
from journal.domain.receipts import Share
from journal.domain.when import When
from journal.domain.work import Work, WorkBasis
from tests.desktop import workshop
from tests.intake.made import jpeg

PAID = Person(PersonId(0), "  Bo   Lind ", PersonKind.PAID, note="welds for hire")


@pytest.fixture
def session(tmp_path: Path) -> Iterator[Session]:
    with workshop.furnished(tmp_path) as made:
        yield made


def ago(**time: float) -> datetime:
    return clockings.now() - timedelta(**time)


def noon_yesterday() -> datetime:
    yesterday = datetime.now().replace(hour=12, minute=0, second=0) - timedelta(days=1)
    return clockings.local(yesterday)


def latest(session: Session) -> Work:
    return max(hours.work(session), key=lambda work: work.id)


def test_a_clock_is_stopped_as_one_edit_and_undo_has_it_run_again(session: Session) -> None:
    area = areas.areas(session)[0]
    start = noon_yesterday()
    clockings.clock_on(session, " Iris ", (Share(area.id, 1),), "Sill", start)
    (clock,) = clockings.running(session)
    assert (clock.person, clock.started, clock.note) == ("Iris", start, "Sill")
    before = hours.work(session)
    changes = clockings.clock_off(session, clock, start + timedelta(hours=3, minutes=47))
    assert changes.label == "Clock Iris off: 3 h 45 min"
    assert changes.kinds == {"work"}
    made = latest(session)
    assert (made.minutes, made.person, made.note) == (225, "Iris", "Sill")
    assert made.when == When.on(start.date())
    assert made.shares == (Share(area.id, 1),)
    assert made.basis is WorkBasis.CLOCKED
    assert hours.basis_in_words(session, made) == "Clocked, 12:00 to 15:47."
    history.undo(session)
    assert hours.work(session) == before
    assert clockings.running(session) == (clock,)
    history.undo(session)
    assert clockings.running(session) == ()
    history.redo(session)
    history.redo(session)
    assert latest(session) == made


def test_over_midnight_each_day_gets_its_part(session: Session) -> None:
    start = noon_yesterday().replace(hour=22, minute=10) - timedelta(days=1)
    clockings.clock_on(session, "Iris", started=start)
    (clock,) = clockings.running(session)
    clockings.clock_off(session, clock, start + timedelta(hours=3, minutes=30), 180)
    made = [work for work in hours.work(session) if work.basis is WorkBasis.CLOCKED]
    # Thirty minutes of pause are taken off both days by the time that passed on them.
    assert [work.minutes for work in made] == [94, 86]
    assert [work.when.earliest.day for work in made] == [
        start.day,
        (start + timedelta(days=1)).day,
    ]
    history.undo(session)
    assert clockings.running(session) == (clock,)


def test_two_people_may_be_clocked_on_and_nobody_twice(session: Session) -> None:
    clockings.clock_on(session, "Iris")
    clockings.clock_on(session, "Tom", started=ago(minutes=30))
    assert [clock.person for clock in clockings.running(session)] == ["Tom", "Iris"]
    with pytest.raises(JournalError, match="The clock of Tom runs already, since"):
        clockings.clock_on(session, "  TOM ")


def test_what_a_clock_cannot_do_is_refused_and_nothing_is_written(session: Session) -> None:
    with pytest.raises(JournalError, match="Whose clock"):
        clockings.clock_on(session, " ")
    with pytest.raises(JournalError, match="has not been yet"):
        clockings.clock_on(session, "Iris", started=ago(hours=-1))
    clockings.clock_on(session, "Iris", started=ago(days=3))
    (clock,) = clockings.running(session)
    for stopped, minutes, said in (
        (None, None, "Say when it should have stopped"),
        (ago(days=4), None, "can't stop before it started"),
        (ago(hours=-1), None, "has not been yet"),
        (clock.started + timedelta(hours=2), 126, "of that, 2 h 6 min can't be recorded"),
    ):
        with pytest.raises(JournalError, match=said):
            clockings.clock_off(session, clock, stopped, minutes)
    assert clockings.running(session) == (clock,)
    clockings.throw_away(session, clock.id)
    assert clockings.running(session) == ()
    history.undo(session)
    clockings.clock_off(session, clock, clock.started + timedelta(hours=2))
    with pytest.raises(JournalError, match="stopped already"):
        clockings.clock_off(session, clock)
    with pytest.raises(JournalError, match="remove its hours instead"):
        clockings.throw_away(session, clock.id)
    with pytest.raises(JournalError, match="no clock number 99"):
        clockings.throw_away(session, ClockingId(99))


def test_clocked_hours_are_the_owners_word_once_their_time_differs(session: Session) -> None:
    clockings.clock_on(session, "Iris", started=noon_yesterday())
    clockings.clock_off(
        session, clockings.running(session)[0], noon_yesterday() + timedelta(hours=2)
    )
    made = latest(session)
    hours.change_work(session, replace(made, note="Brackets"))
    assert latest(session).basis is WorkBasis.CLOCKED
    hours.change_work(session, replace(latest(session), minutes=90))
    assert latest(session).basis is WorkBasis.STATED
    assert hours.basis_in_words(session, latest(session)) == ""
    history.undo(session)
    assert latest(session).basis is WorkBasis.CLOCKED
    hours.remove_work(session, made.id)
    history.undo(session)
    assert latest(session).basis is WorkBasis.CLOCKED


def test_an_area_gone_since_gets_no_share(session: Session) -> None:
    changes = areas.add_area(session, "Tail pipe", [], "")
    assert changes.made is not None
    area = next(a for a in areas.areas(session) if a.id == changes.made)
    clockings.clock_on(session, "Iris", (Share(area.id, 1),), started=noon_yesterday())
    areas.remove_area(session, area.id)
    (clock,) = clockings.running(session)
    clockings.clock_off(session, clock, noon_yesterday() + timedelta(hours=1))
    assert latest(session).shares == ()


def test_an_area_made_after_one_that_went_gets_none_of_its_time(session: Session) -> None:
    gone = areas.add_area(session, "Tail pipe", [], "").made
    clockings.clock_on(session, "Iris", (Share(AreaId(gone or 0), 1),), started=noon_yesterday())
    areas.remove_area(session, AreaId(gone or 0))
    # The database gives the number of the last row to the next one.
    assert areas.add_area(session, "Other", [], "").made == gone
    (clock,) = clockings.running(session)
    assert clock.shares == ()
    history.undo(session)
    history.undo(session)
    assert clockings.running(session)[0].shares == (Share(AreaId(gone or 0), 1),)


def test_a_moment_before_any_clock_is_refused_in_words() -> None:
    assert clockings.local(datetime(1900, 1, 1, 10)).tzinfo is not None
    with pytest.raises(JournalError, match="too long ago"):
        clockings.local(datetime(1, 1, 1, 10))


# --- from photos


@pytest.fixture
def pictured(session: Session, tmp_path: Path) -> tuple[PhotoId, ...]:
    """Two days of camera photos, the second with hours, and one whose file alone has a date."""
    folder = tmp_path / "card"
    folder.mkdir()
    times = ("05 14:05:00", "05 16:00:00", "05 17:50:00", "12 09:00:00", "12 10:00:00")
    for number, time in enumerate(times):
        made = jpeg(f"2016:03:{time}", size=(400 + number, 300))
        (folder / f"IMG_{number}.jpg").write_bytes(made)
    (folder / "20160305_235900.jpg").write_bytes(workshop.picture(3))
    report = add_photos(session, [folder])
    assert not report.refused
    hours.record_work(session, workshop.work("2016-03-12", 60, "Iris"))
    found = {photo.name: photo.id for photo in photos.all_photos(session)}
    return tuple(found[f"IMG_{number}.jpg"] for number in range(len(times)))


def test_a_day_with_photos_and_no_hours_is_offered_as_a_lower_bound(
    session: Session, pictured: tuple[PhotoId, ...]
) -> None:
    area = areas.areas(session)[1]
    areas.choose_photos(session, area.id, pictured[:2], Role.DURING)
    (day,) = photo_hours.days_without_hours(session)
    assert (day.day.isoformat(), day.minutes, len(day.photo_ids)) == ("2016-03-05", 225, 3)
    assert day.area_ids == (area.id,)
    wanted = photo_hours.PhotoHours(day, "Iris", "", (Share(area.id, 1),))
    changes = photo_hours.record_photo_hours(session, (wanted,))
    assert changes.label == "Record at least 3 h 45 min from 3 photos"
    made = latest(session)
    assert (made.minutes, made.basis) == (225, WorkBasis.PHOTOS)
    said = hours.basis_in_words(session, made)
    assert said == "At least: first to last shot, 14:05 to 17:50."
    assert photo_hours.days_without_hours(session) == ()
    history.undo(session)
    assert photo_hours.days_without_hours(session) == (day,)


def test_hours_stay_a_lower_bound_while_one_of_their_photos_is_left(
    session: Session, pictured: tuple[PhotoId, ...], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("journal.actions.photos.to_trash", lambda path: path.unlink())
    (day,) = photo_hours.days_without_hours(session)
    photo_hours.record_photo_hours(session, (photo_hours.PhotoHours(day, "Iris"),))
    photos.remove_photos(session, [pictured[0]])
    photos.clear_out_removed(session)
    assert latest(session).basis is WorkBasis.PHOTOS
    photos.remove_photos(session, [pictured[2]])
    photos.clear_out_removed(session)
    assert latest(session).basis is WorkBasis.STATED
    assert latest(session).note == "(at least; from photos that were cleared out)"


# --- people


def test_people_are_listed_with_who_only_worked(session: Session) -> None:
    people.save_person(session, PAID)
    assert [(one.name, one.kind, bool(one.id)) for one in people.all_people(session)] == [
        ("Bo Lind", PersonKind.PAID, True),
        ("Iris", PersonKind.OWN, False),
        ("Tom", PersonKind.OWN, False),
    ]
    assert hours.people(session) == ("Iris", "Tom", "Bo Lind")
    with pytest.raises(JournalError, match="on the list of people already"):
        people.save_person(session, replace(PAID, name="bo lind"))
    with pytest.raises(JournalError, match="needs a name"):
        people.save_person(session, replace(PAID, name=" "))
    with pytest.raises(JournalError, match="no rate here"):
        people.save_person(session, replace(PAID, name="Cyd", rate=1))


def test_a_name_spelt_anew_is_written_in_all_the_hours_as_one_edit(session: Session) -> None:
    people.save_person(session, Person(PersonId(0), "iris", rate=2500))
    clockings.clock_on(session, "Iris")
    listed = people.listed_people(session)[0]
    people.save_person(session, replace(listed, name="Iris Holm"))
    assert {work.person for work in hours.work(session)} == {"Iris Holm", "Tom"}
    assert clockings.running(session)[0].person == "Iris Holm"
    table = hours.hour_sums(session, "person")
    # 8 h 30 min at 25.00.
    assert [(row.label, row.value) for row in table.rows] == [("Iris Holm", 21_250), ("Tom", None)]
    history.undo(session)
    assert {work.person for work in hours.work(session)} == {"Iris", "Tom"}
