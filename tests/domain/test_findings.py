"""Times that findings may take, as fields show them and people type them."""

from hypothesis import given
from hypothesis import strategies as st

from journal.domain.findings import MOST_MINUTES, parse_time, written_time


@given(st.integers(0, MOST_MINUTES))
def test_a_time_is_read_as_the_field_shows_it(minutes: int) -> None:
    assert parse_time(written_time(minutes)) == minutes
