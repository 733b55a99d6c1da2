"""What makes a burst: seconds and looks. The figures are the project's own measurements."""

from journal.domain.bursts import Frame, bursts, suspects, with_best
from journal.domain.ids import PhotoId

_VIEW = 0x0F0F_3333_5555_FF01


def frames(*seconds):
    return [Frame(PhotoId(number), second) for number, second in enumerate(seconds, 1)]


def off(bits: int) -> int:
    """Signs that differ from the view in so many places."""
    return _VIEW ^ ((1 << bits) - 1)


def test_photos_within_ten_seconds_that_look_alike_are_one_burst():
    taken = frames(0, 2, 12, 22.5, 40)
    signs = {PhotoId(n): _VIEW for n in range(1, 6)}
    assert suspects(taken) == (1, 2, 3)
    assert bursts(taken, signs) == ((1, 2, 3),)


def test_looks_part_what_time_joins():
    taken = frames(0, 1, 2)
    assert bursts(taken, {1: _VIEW, 2: off(14), 3: _VIEW}) == ((1, 2, 3),)
    assert bursts(taken, {1: _VIEW, 2: off(15), 3: off(15)}) == ((2, 3),)
    assert bursts(taken, {1: _VIEW, 3: _VIEW}) == ()
    assert bursts(taken, {1: 0, 2: 0, 3: 0}) == (), "blank pictures show nothing to compare"


def test_without_times_they_have_to_look_more_alike():
    taken = frames(None, None, None)
    assert bursts(taken, {1: _VIEW, 2: off(10), 3: off(21)}) == ((1, 2),)
    assert bursts(frames(5, None), {1: _VIEW, 2: _VIEW}) == ()


def test_the_sharpest_stands_for_a_burst_and_the_first_where_nothing_is_known():
    runs = [(PhotoId(1), PhotoId(2), PhotoId(3)), (PhotoId(7), PhotoId(8))]
    first, second = with_best(runs, {PhotoId(1): 0.1, PhotoId(2): 0.4, PhotoId(3): 0.4})
    assert (first.best, second.best) == (2, 7)
