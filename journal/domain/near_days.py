"""Days as people say them while they are near: "yesterday", "monday", "3 nov"."""

import re
from datetime import date, timedelta

from journal.domain.errors import JournalError
from journal.domain.when import When, parse

WEEKDAYS = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")
_BACK = {"today": 0, "now": 0, "yesterday": 1}
_HAS_YEAR = re.compile(r"[0-9]{4}")


def near_day(text: str, today: date) -> When | None:
    """The day that is meant, none of it after ``today``; None where the words name no such day.

    A weekday is the last one, today included; a day and month without a year are the last such.
    """
    words = " ".join(text.split()).lower()
    if words in _BACK:
        return When.on(today - timedelta(days=_BACK[words]))
    if words in WEEKDAYS:
        return When.on(today - timedelta(days=(today.weekday() - WEEKDAYS.index(words)) % 7))
    if not words or _HAS_YEAR.search(words):
        return None
    for year in (today.year, today.year - 1):
        try:
            when = parse(f"{words} {year}")
        except JournalError:
            continue
        day = When.on(when.earliest.date())
        if when == day and day.latest.date() <= today:
            return day
    return None
