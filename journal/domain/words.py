"""Dates in the owner's words, made into EDTF, and EDTF made into words for a screen.

"3 March 2016", "summer 2009", "about 2012", "2015 to 2017", "before 2006" (English).
"""

import re
from datetime import date, timedelta

from journal.domain.edtf_text import bounds

MONTHS = (
    "January", "February", "March", "April", "May", "June",
    "July", "August", "September", "October", "November", "December",
)  # fmt: skip

_SEASONS = {"spring": "21", "summer": "22", "autumn": "23", "fall": "23", "winter": "24"}
_SEASON_NAMES = {"21": "spring", "22": "summer", "23": "autumn", "24": "winter"}
_MONTH_NUMBERS = {m.lower(): f"{i:02}" for i, m in enumerate(MONTHS, 1)} | {
    m.lower()[:3]: f"{i:02}" for i, m in enumerate(MONTHS, 1)
}
_MONTH_NUMBERS["sept"] = "09"
_MONTH = "(?P<month>" + "|".join(sorted(_MONTH_NUMBERS, key=len, reverse=True)) + r")\.?"
_SEASON = "(?P<season>spring|summer|autumn|fall|winter)"
_YEAR = r"(?P<year>[0-9]{4})"
_DAY = r"(?P<day>[0-9]{1,2})(?:st|nd|rd|th)?"
_TIME = r"(?:,? (?:at )?(?P<hour>[0-9]{1,2}):(?P<minute>[0-9]{2})(?::(?P<second>[0-9]{2}))?)?"

_QUALIFIERS = (
    (r"(?:perhaps|possibly|maybe|probably) (?:about|around|circa|ca\.?|c\.?|roughly) ?", "%"),
    (r"(?:about|around|approximately|roughly|circa|ca\.?|c\.) ?", "~"),
    (r"(?:perhaps|possibly|maybe|probably) ", "?"),
)

_POINTS = tuple(
    re.compile(pattern)
    for pattern in (
        rf"{_DAY}\.? (?:of )?{_MONTH},? {_YEAR}{_TIME}",
        rf"{_MONTH} {_DAY},? {_YEAR}{_TIME}",
        rf"{_YEAR}-(?P<month>[0-9]{{2}})-(?P<day>[0-9]{{2}}){_TIME}",
        rf"{_MONTH},? {_YEAR}",
        rf"(?:in )?(?:the )?{_SEASON} (?:of )?{_YEAR}(?:[/–-](?P<next>[0-9]{{4}}|[0-9]{{2}}))?",
        r"(?:in )?(?:the )?(?P<decade>[0-9]{3})0'?s",
        rf"(?:in )?{_YEAR}",
    )
)


def as_edtf(words: str) -> str:
    """The EDTF for a date in words; ValueError with the reason where they name none."""
    text = " ".join(words.split()).lower()
    if not text:
        raise ValueError("nothing is written there")
    return _edtf_of_range(text) or _edtf_of_point(text)


def _edtf_of_range(text: str) -> str | None:
    if found := re.fullmatch(r"before (?P<end>.+)", text):
        return "../" + _neighbour(_edtf_of_point(found["end"]), -1)
    if found := re.fullmatch(r"after (?P<start>.+)", text):
        return _neighbour(_edtf_of_point(found["start"]), 1) + "/.."
    if found := re.fullmatch(r"(?:until|up to|by|to) (?P<end>.+)", text):
        return "../" + _without_time(_edtf_of_point(found["end"]))
    if found := re.fullmatch(r"(?:since|from) (?P<start>.+?)(?: on| onwards)?", text):
        both = _two_ends(found["start"])
        return both or _without_time(_edtf_of_point(found["start"])) + "/.."
    return _two_ends(text)


def _two_ends(text: str) -> str | None:
    found = (
        re.fullmatch(r"(?:between )(?P<start>.+) and (?P<end>.+)", text)
        or re.fullmatch(r"(?P<start>.+?) (?:to|till|until|–|-) (?P<end>.+)", text)
        or re.fullmatch(r"(?P<start>[0-9]{4})[–-](?P<end>[0-9]{4})", text)
    )
    if not found:
        return None
    end = _edtf_of_point(found["end"])
    start = _edtf_of_start(found["start"], found["end"].split())
    return _without_time(start) + "/" + _without_time(end)


def _edtf_of_start(text: str, end_words: list[str]) -> str:
    """The start of a range, which may leave out the year, or month and year, of its end."""
    for left_out in ([], *(end_words[i:] for i in range(1, len(end_words)))):
        try:
            return _edtf_of_point(" ".join([text, *left_out]))
        except ValueError:
            continue
    raise ValueError(f"the start, {text}, is unclear")


def _edtf_of_point(text: str) -> str:
    for pattern, sign in _QUALIFIERS:
        if found := re.match(pattern, text):
            return _edtf_of_point(text[found.end() :]) + sign
    for form in _POINTS:
        if found := form.fullmatch(text):
            return _compose({k: v for k, v in found.groupdict().items() if v is not None})
    if re.fullmatch(r"[0-9]{1,2}[./-][0-9]{1,2}[./-][0-9]{2,4}", text):
        raise ValueError("day and month can't be told apart; write the month as a word")
    bounds(text)
    return text


def _compose(parts: dict[str, str]) -> str:
    if decade := parts.get("decade"):
        return decade + "X"
    year = parts["year"]
    if season := parts.get("season"):
        return _season(year, season, parts.get("next"))
    if "month" not in parts:
        return year
    month = _MONTH_NUMBERS.get(parts["month"], parts["month"])
    if "day" not in parts:
        return f"{year}-{month}"
    day = f"{year}-{month}-{int(parts['day']):02}"
    if "hour" not in parts:
        return day
    return f"{day}T{int(parts['hour']):02}:{parts['minute']}:{parts.get('second', '00')}"


def _season(year: str, season: str, following: str | None) -> str:
    if following and (season != "winter" or f"{int(year) + 1}"[-len(following) :] != following):
        raise ValueError("only a winter spans two years, one after the other")
    return f"{year}-{_SEASONS[season]}"


def _neighbour(edtf: str, step: int) -> str:
    """The year, month or day just before (-1) or after (1) a date."""
    plain = _without_time(edtf)
    first, last = bounds(plain)
    if first.year <= 1 or last.year >= 9999:
        raise ValueError("that is further off than dates go")
    edge = ((first if step < 0 else last) + timedelta(days=step)).date()
    if re.fullmatch(r"[0-9]{4}", plain):
        return edge.isoformat()[:4]
    if re.fullmatch(r"[0-9]{4}-[01][0-9]", plain):
        return edge.isoformat()[:7]
    return edge.isoformat()


def _without_time(edtf: str) -> str:
    return edtf.partition("T")[0]


def spoken(edtf: str) -> str:
    """An EDTF text as a screen shows it: "5 March 2016, 14:22", "about 2012", "summer 2009"."""
    if "/" in edtf:
        return _spoken_interval(*edtf.split("/"))
    for sign, word in (("%", "perhaps about "), ("~", "about "), ("?", "perhaps ")):
        if edtf.endswith(sign) and not re.search(r"[?~%]", edtf[:-1]):
            return word + spoken(edtf[:-1])
    return _spoken_point(edtf) or edtf


def _spoken_interval(start: str, end: str) -> str:
    if start in ("", ".."):
        return "until " + spoken(end)
    if end in ("", ".."):
        return "since " + spoken(start)
    return f"{spoken(start)} to {spoken(end)}"


def _spoken_point(edtf: str) -> str | None:
    if re.fullmatch(r"[0-9]{3}X", edtf):
        return edtf[:3] + "0s"
    if re.fullmatch(r"[0-9]{2}XX", edtf):
        return f"{edtf[:2]}00 to {edtf[:2]}99"
    found = re.fullmatch(
        r"(-?[0-9]{4})(?:-([0-9X]{2}))?(?:-([0-9X]{2}))?(?:T([0-9]{2}:[0-9]{2}).*)?", edtf
    )
    return _spoken_date(*found.groups()) if found else None


def _spoken_date(year: str, month: str | None, day: str | None, time: str | None) -> str | None:
    if month is None:
        return year
    if month in _SEASON_NAMES:
        following = f"/{(int(year) + 1) % 100:02}" if month == "24" else ""
        return f"{_SEASON_NAMES[month]} {year}{following}"
    if month == "XX":
        return f"{year}, {'month' if day is None else 'day'} unknown"
    if not (month.isdigit() and 1 <= int(month) <= 12):
        return None
    name = f"{MONTHS[int(month) - 1]} {year}"
    if day is None:
        return name
    if not day.isdigit():
        return f"{name}, day unknown" if day == "XX" else None
    return f"{int(day)} {name}" + (f", {time}" if time else "")


def day_in_words(day: date) -> str:
    """A day as a screen shows it: "5 March 2016"."""
    return f"{day.day} {MONTHS[day.month - 1]} {day.year}"
