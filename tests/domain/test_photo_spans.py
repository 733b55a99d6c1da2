"""Hours from photos: never more than the photos show, and only what a camera dated."""

from datetime import date, datetime, timedelta

from hypothesis import given
from hypothesis import strategies as st

from journal.domain.ids import AreaId, CameraId, PhotoId, WorkId
from journal.domain.photo_spans import SHORTEST, Shot, photo_days, without_hours
from journal.domain.when import When, parse
from journal.domain.work import Work

DAY = datetime(2016, 3, 5)


def shots_at(*times: str, camera: int = 1, first: int = 1) -> list[Shot]:
    return [
        Shot(PhotoId(number), datetime.fromisoformat(f"2016-03-{time}"), CameraId(camera))
        for number, time in enumerate(times, first)
    ]


def test_a_visit_lasts_from_the_first_shot_to_the_last_whatever_the_camera() -> None:
    taken = sorted(
        [
            *shots_at("05 14:05:00", "05 15:30:00"),
            *shots_at("05 14:40:00", "05 17:50:00", camera=2, first=10),
        ],
        key=lambda shot: shot.taken,
    )
    (day,) = photo_days(taken, 180)
    assert (day.minutes, day.cameras) == (3 * 60 + 45, 2)
    assert (day.first.photo_id, day.last.photo_id) == (1, 11)


def test_a_long_pause_is_counted_to_nobody() -> None:
    taken = shots_at("05 09:00:00", "05 10:30:59", "05 15:00:00", "05 16:00:30", "05 21:00:00")
    (day,) = photo_days(taken, 120)
    assert len(day.visits) == 2
    # 90 min 59 s and 60 min 30 s are 151 whole minutes: seconds are never rounded up.
    assert day.minutes == 151
    assert day.last.taken.hour == 16


def test_areas_are_offered_by_how_many_photos_were_chosen_for_them() -> None:
    chosen = {PhotoId(1): [AreaId(7)], PhotoId(2): [AreaId(7), AreaId(3)], PhotoId(9): [AreaId(1)]}
    (day,) = photo_days(shots_at("05 09:00:00", "05 10:00:00"), 120, chosen)
    assert day.area_ids == (7, 3)


def test_days_with_anybodys_hours_are_left_out_also_by_the_month() -> None:
    taken = shots_at("05 09:00:00", "05 10:00:00", "12 09:00:00", "12 10:00:00")
    days = photo_days(taken, 120)

    def left(when: str) -> list[int]:
        work = Work(WorkId(1), parse(when), 30, "Ada")
        return [day.day.day for day in without_hours(days, [work])]

    assert left("2016-03-05") == [12]
    assert left("2016-03") == []
    assert left("2016") == [5, 12]
    assert left("2016-03-06") == [5, 12]


@given(
    st.lists(st.integers(0, 5 * 24 * 3600), max_size=40),
    st.integers(20, 720),
)
def test_a_lower_bound_never_exceeds_what_lies_between_the_shots(
    seconds: list[int], pause: int
) -> None:
    taken = [Shot(PhotoId(n), DAY + timedelta(seconds=s)) for n, s in enumerate(sorted(seconds), 1)]
    for day in photo_days(taken, pause):
        assert SHORTEST <= day.minutes < 24 * 60
        assert all(visit.first.taken.date() == day.day for visit in day.visits)
        assert all(visit.last.taken.date() == day.day for visit in day.visits)
        assert day.minutes * 60 <= (day.last.taken - day.first.taken).total_seconds()
        gone = without_hours([day], [Work(WorkId(1), When.on(day.day), 1, "Ada")])
        assert gone == ()
    assert [day.day for day in photo_days(taken, pause)] == sorted(
        {day.day for day in photo_days(taken, pause)}
    )


def test_shots_of_one_moment_are_no_visit() -> None:
    assert photo_days(shots_at("05 09:00:00", "05 09:00:00"), 120) == ()
    assert photo_days([], 120) == ()
    assert without_hours([], [Work(WorkId(1), When.on(date(2016, 3, 5)), 1, "Ada")]) == ()
