"""When a photo was taken: what its metadata, its name and its file say, and what to believe.

What Exif dates look like, and how "unknown" is written in them, follows CIPA DC-008. The patterns
of file names and the signs of a clock that was never set are common practice, no source.
"""

import re
from collections.abc import Iterable
from dataclasses import replace
from datetime import date, datetime, timedelta

from journal.domain.clock import best
from journal.domain.photos import Basis, DateCandidate
from journal.domain.when import When

#: Before this day no camera wrote dates into its files; an earlier one comes from a wrong clock.
FIRST_DIGITAL = datetime(1990, 1, 1)

#: How far a camera may be ahead of this computer and still be right: the widest time zones apart.
AHEAD = timedelta(hours=26)

#: The Exif tags that hold a date, the most trusted first.
EXIF_BASES = {
    "DateTimeOriginal": Basis.CAMERA,
    "DateTimeDigitized": Basis.DIGITISED,
    "DateTime": Basis.DIGITISED,
}

_EXIF = re.compile(
    r"([0-9]{4})[:./-]([0-9]{1,2})[:./-]([0-9]{1,2})"
    r"(?:[ T]+([0-9]{1,2})[:.]([0-9]{2})(?:[:.]([0-9]{2}))?.*)?",
    re.DOTALL,
)
_OFFSET = re.compile(r"[+-](?:0[0-9]|1[0-4]):[0-5][0-9]")

_DAY = r"(?<![0-9])(?P<y>(?:19|20)[0-9]{2})(?P<p>[-_.]?)(?P<m>[01][0-9])(?P=p)(?P<d>[0-3][0-9])"
_TIME = r"(?P<hh>[0-2][0-9])(?P<q>[-_.]?)(?P<mm>[0-5][0-9])(?P=q)(?P<ss>[0-5][0-9])"
_NAMED_MOMENT = re.compile(rf"{_DAY}(?:[-_ T]| at ){_TIME}(?:[0-9]{{3}})?(?![0-9])")
_NAMED_DAY = re.compile(rf"{_DAY}(?![0-9])")
#: Names of this family hold UTC on some phones and local time on others: only the day is taken.
_ZONE_UNSURE = re.compile(r"PXL_", re.IGNORECASE)
#: Messengers put the day of sending into the name, seldom long after the photo was taken.
_SENT = re.compile(r"-WA[0-9]{4}", re.IGNORECASE)


def exif_when(text: str, subsec: str = "") -> When | None:
    """The date in an Exif string, None where it holds none or no real one.

    ``subsec`` are digits of a second's fraction as the SubSec tags hold them: "5" is five tenths.
    Separators other than colons, and ISO 8601, are read too; a zone behind the time is passed over.
    """
    found = _EXIF.fullmatch(text.replace("\0", " ").strip())
    if not found:
        return None
    year, month, day, *clock = found.groups()
    try:
        if clock[0] is None:
            return When.on(date(int(year), int(month), int(day)))
        hour, minute, second = (int(part or 0) for part in clock)
        moment = datetime(int(year), int(month), int(day), hour, minute, second)
    except ValueError:
        return None
    return When.at(moment.replace(microsecond=_microseconds(subsec)))


def exif_offset(text: str) -> str | None:
    """An Exif offset from UTC, "+01:00", None where it is blank or malformed."""
    plain = text.replace("\0", " ").strip()
    return plain if _OFFSET.fullmatch(plain) else None


def exif_candidate(source: str, text: str, subsec: str, offset: str) -> DateCandidate:
    """What one Exif tag says; ``source`` is a key of ``EXIF_BASES``."""
    when, zone = exif_when(text, subsec), exif_offset(offset)
    if when and zone and "T" in when.edtf:
        when = When.at(when.earliest, zone)
    never_set = not re.search(r"[1-9]", text)
    doubt = "" if when else "the clock was never set" if never_set else "it is no real date"
    shown = "".join(sign if sign.isprintable() else " " for sign in text).strip()
    return DateCandidate(EXIF_BASES[source], source, shown, when, zone, doubt)


def name_candidate(name: str) -> DateCandidate | None:
    """The date in a file's name, None where there is none."""
    stem = name.rpartition(".")[0] or name
    when = _named_moment(stem) or _named_day(stem)
    return DateCandidate(Basis.FILE_NAME, "file name", name, when) if when else None


def file_time_candidate(moment: datetime) -> DateCandidate:
    """What a file's own time of change says, ``moment`` being in this computer's local time."""
    when = When.at(moment.replace(microsecond=0))
    return DateCandidate(Basis.FILE_TIME, "file time", when.edtf, when)


def weigh(candidates: Iterable[DateCandidate], now: datetime) -> tuple[DateCandidate, ...]:
    """The candidates with what speaks against each, ``now`` being local time."""
    return tuple(c if c.doubt else replace(c, doubt=_doubt(c, now)) for c in candidates)


def choose(candidates: Iterable[DateCandidate], now: datetime) -> DateCandidate | None:
    """The most trusted date that is plausible, None where there is none."""
    return best(weigh(candidates, now))


def _doubt(candidate: DateCandidate, now: datetime) -> str:
    when, basis = candidate.when, candidate.basis
    if when is None:
        return "it is no real date"
    if basis in (Basis.OWNER, Basis.NEIGHBOURS):
        return ""
    if when.earliest > now + AHEAD:
        return "it lies in the future"
    if basis is Basis.FILE_NAME:
        return ""
    if when.earliest < FIRST_DIGITAL:
        return "it is older than digital cameras"
    if basis is not Basis.FILE_TIME and _factory_setting(when):
        return "it is what a camera shows whose clock was never set"
    return ""


def _factory_setting(when: When) -> bool:
    """Midnight or noon of New Year's Day, to the minute: where clocks start that lost their time.

    From memory; such clocks then run on, so a photo taken later that day passes.
    """
    first = when.earliest
    return (
        (first.month, first.day, first.minute) == (1, 1, 0)
        and first.hour in (0, 12)
        and (first.hour == 0 or first.second == 0)
    )


def _microseconds(subsec: str) -> int:
    digits = subsec.replace("\0", " ").strip()
    return int(digits[:6].ljust(6, "0")) if digits.isascii() and digits.isdigit() else 0


def _named_moment(stem: str) -> When | None:
    found = _NAMED_MOMENT.search(stem)
    if not found or not (day := _day_of(found)):
        return None
    if _ZONE_UNSURE.match(stem):
        return When.on(day)
    hour, minute, second = int(found["hh"]), int(found["mm"]), int(found["ss"])
    try:
        return When.at(datetime(day.year, day.month, day.day, hour, minute, second))
    except ValueError:
        return When.on(day)


def _named_day(stem: str) -> When | None:
    found = _NAMED_DAY.search(stem)
    day = found and _day_of(found)
    if not found or not day:
        return None
    whole = When.on(day)
    if _SENT.match(stem, found.end()):
        return replace(whole, edtf=whole.edtf + "~")
    return whole


def _day_of(found: re.Match[str]) -> date | None:
    try:
        day = date(int(found["y"]), int(found["m"]), int(found["d"]))
    except ValueError:
        return None
    # Eight figures in a row are often a mere number; with marks between them a person wrote a date.
    return None if not found["p"] and day < FIRST_DIGITAL.date() else day
