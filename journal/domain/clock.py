"""Putting a camera's clock right: one shift for every photo that trusts that clock."""

from collections.abc import Iterable
from datetime import datetime, timedelta

from journal.domain.photos import Basis, DateCandidate
from journal.domain.when import When


def with_shift(when: When | None, basis: Basis, seconds: int) -> When | None:
    """A date as it is once the camera's clock is put right; dates of another basis stay.

    A moment outside the calendar (year 1 to 9999) stays as the camera had it.
    """
    if when is None or basis is not Basis.CAMERA or not seconds:
        return when
    shift = timedelta(seconds=seconds)
    try:
        moved = when.earliest + shift, when.latest + shift
    except OverflowError:
        return when
    return When(moved[0], moved[1], moved[0].replace(microsecond=0).isoformat() + _zone(when.edtf))


def _zone(edtf: str) -> str:
    return edtf[19:] if len(edtf) > 19 and edtf[10] == "T" else ""


def shift_for(shown: datetime, true: datetime, present_shift: int) -> int:
    """The camera's whole shift, in seconds, that makes a photo shown at one time show the true one.

    ``present_shift`` is what is already in ``shown``.
    """
    return present_shift + round((true - shown).total_seconds())


def best(candidates: Iterable[DateCandidate]) -> DateCandidate | None:
    """The most trusted date among those that nothing speaks against, None where there is none."""
    sound = [c for c in candidates if c.when is not None and not c.doubt]
    return min(sound, key=lambda c: c.basis.trust, default=None)
