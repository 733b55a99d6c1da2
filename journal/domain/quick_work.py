"""Hours in one line: "3h weld sill left with Nils yesterday"."""

import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from journal.domain.errors import JournalError
from journal.domain.hours import parse_hours, spoken_hours
from journal.domain.ids import AreaId, WorkId
from journal.domain.near_days import WEEKDAYS, near_day
from journal.domain.receipts import Share
from journal.domain.when import When, parse, spoken
from journal.domain.work import Work

#: "3h", "2h 15", "2h15m", "3:30", "45 min", "1.5 hours".
_TIME = re.compile(
    r"(?<![\w.,:])(\d{1,2}:[0-5]\d(?:\s?h)?|\d{1,2}\s?h(?:ours?)?\s?\d{1,2}(?:\s?m(?:in)?)?(?!\w)"
    r"|\d{1,3}(?:[.,]\d{1,2})?\s?h(?:ours?|rs?)?(?!\w)|\d{1,4}\s?m(?:in(?:ute)?s?)?(?!\w))",
    re.IGNORECASE,
)
_DATE = re.compile(
    r"\b(?:on\s+)?(\d{4}-\d{2}-\d{2}|\d{1,2}\s+(?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)"
    r"[a-z]*(?:\s+\d{4})?)\b",
    re.IGNORECASE,
)
_WORD = re.compile(r"\b(?:on\s+)?(today|yesterday|" + "|".join(WEEKDAYS) + r")\b", re.IGNORECASE)
_NAME = r"([^\W\d_][\w'-]*(?:\s+[A-Z][\w'-]*)?)"
_WITH = re.compile(rf"\b[Ww]ith\s+{_NAME}")
_AND = re.compile(rf"\s*(,|&|\band\b)\s*{_NAME}")
_BY = re.compile(r"\bby\s+([^\W\d_][\w'-]*)(?:\s+([^\W\d_][\w'-]*))?", re.IGNORECASE)
#: Words that name no place.
_PLAIN = frozenset({"the", "a", "an", "of", "at", "in", "on", "and", "to", "for", "with"})


@dataclass(frozen=True, slots=True)
class WorkLine:
    """What a line of words says: hours of one or more people on one day, and for what.

    ``area_id`` is the repair area that its words mean, None where they mean none or several.
    ``note`` is what remains of the words.
    """

    minutes: int
    when: When
    people: tuple[str, ...]
    area_id: AreaId | None
    note: str

    def work(self) -> tuple[Work, ...]:
        """The hours to record, one record a person."""
        shares = () if self.area_id is None else (Share(self.area_id, 1),)
        return tuple(
            Work(WorkId(0), self.when, self.minutes, person, self.note, shares)
            for person in self.people
        )


def read_work_line(
    text: str,
    today: date,
    me: str,
    people: Sequence[str] = (),
    areas: Mapping[AreaId, str] | None = None,
) -> WorkLine:
    """Read hours from a line as people type it.

    Args:
        text: the time worked is a must; a day, "with" somebody and the rest in any order.
        today: the day it is; a weekday means the last one, today included.
        me: who worked, beside those it names; "by" and a name that is known is in their place.
        people: names known, so that "with nils" finds Nils.
        areas: repair areas with the words that mean them (their names and panels).

    Raises:
        JournalError: there is no time worked in it, or nobody who worked.
    """
    rest = text.strip()
    when, rest = _day(rest, today)
    minutes, rest = _minutes(rest)
    me, rest = _worker(rest, me, people)
    others, rest = _others(rest, people)
    note = " ".join(rest.split()).strip(" ,;.-")
    everybody = tuple(dict.fromkeys(name for name in (me.strip(), *others) if name))
    if not everybody:
        raise JournalError("Say who worked: add “with” and a name.")
    return WorkLine(minutes, when, everybody, _area(note, areas or {}), note)


def understood(line: WorkLine, areas: Mapping[AreaId, str]) -> str:
    """How a line is understood, in words; ``areas`` are the names of the repair areas."""
    said = [f"{spoken_hours(line.minutes)} by {' and '.join(line.people)}", spoken(line.when)]
    name = areas.get(line.area_id) if line.area_id is not None else None
    said.append(f"for “{name}”" if name else "no repair area")
    return ", ".join(said) + (f": {line.note}" if line.note else "")


def _minutes(text: str) -> tuple[int, str]:
    found = _TIME.search(text)
    if found is None:
        raise JournalError("There is no time worked in it; write for instance 3h, 2h 15 or 45 min.")
    return parse_hours(found[0]), text[: found.start()] + " " + text[found.end() :]


def _day(text: str, today: date) -> tuple[When, str]:
    found = _DATE.search(text)
    if found:
        when = near_day(found[1], today) or parse(found[1])
        return when, text[: found.start()] + " " + text[found.end() :]
    found = _WORD.search(text)
    if found is None:
        return When.on(today), text
    when = near_day(found[1], today) or When.on(today)
    return when, text[: found.start()] + " " + text[found.end() :]


def _worker(text: str, me: str, people: Sequence[str]) -> tuple[str, str]:
    """Who worked: somebody known after "by", else ``me``; "by hand" is nobody."""
    known = _known(people)
    for found in _BY.finditer(text):
        said = " ".join(name for name in found.groups() if name)
        for words in (said, found[1]):
            if words.casefold() in known:
                end = found.start(1) + len(words) if words != said else found.end()
                return known[words.casefold()], text[: found.start()] + " " + text[end:]
    return me, text


def _known(people: Sequence[str]) -> dict[str, str]:
    """The names that people are called by, whole and the first alone, each with the whole name."""
    known = {name.split()[0].casefold(): name for name in reversed(people) if name.strip()}
    return known | {name.casefold(): name for name in people}


def _others(text: str, people: Sequence[str]) -> tuple[tuple[str, ...], str]:
    """Who else worked, after "with"; what is neither known nor written as a name is a tool."""
    everybody: list[str] = []
    rest, at = "", 0
    known = _known(people)
    for found in _WITH.finditer(text):
        names, end = _named_from(text, found, known)
        if names:
            everybody += names
            rest += text[at : found.start()] + " "
            at = end
    return tuple(everybody), rest + text[at:]


def _named_from(text: str, found: re.Match[str], known: Mapping[str, str]) -> tuple[list[str], int]:
    """The names in a row after "with", and where they end."""
    names, start, end = [], found.start(1), found.end()
    who = _called(found[1], known)
    while who is not None:
        names.append(who[0])
        end = start + who[1]
        more = _AND.match(text, end)
        if more is None:
            break
        start = more.start(2)
        # After a comma may also come what was done.
        who = _called(more[2], known, may_be_new=more[1] != ",")
    return names, end


def _called(
    words: str, known: Mapping[str, str], *, may_be_new: bool = True
) -> tuple[str, int] | None:
    """Whom words name, and how many of their signs that is; None for nobody."""
    first = words.split()[0]
    for said in (words, first):
        if said.casefold() in known:
            return known[said.casefold()], len(said)
    is_name = not first[0].islower() and not first.isupper()
    return (words, len(words)) if is_name and may_be_new else None


def _area(note: str, areas: Mapping[AreaId, str]) -> AreaId | None:
    """The one area that most of the words mean, two of them at least."""
    said = _words(note)
    scored = sorted(
        ((len(said & _words(words)), area_id) for area_id, words in areas.items()), reverse=True
    )
    if not scored or scored[0][0] < 2:
        return None
    if len(scored) > 1 and scored[1][0] == scored[0][0]:
        return None
    return scored[0][1]


def _words(text: str) -> frozenset[str]:
    return frozenset(_stems(re.findall(r"[^\W\d_]+", text.casefold())))


def _stems(words: Iterable[str]) -> Iterable[str]:
    for word in words:
        if word not in _PLAIN:
            yield word[:-1] if len(word) > 3 and word.endswith("s") else word
