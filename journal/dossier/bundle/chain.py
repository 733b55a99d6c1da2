"""The chain of changes as text, walked without the journal it came from."""

import hashlib
import json
import re
from collections.abc import Iterable, Iterator
from typing import Any, TextIO

from journal.domain.checks import ChainFound, Fault

#: How many differing rows are named; beyond them it is the whole that is wrong.
_MOST_NAMED = 20
_DIGEST = re.compile(r"[0-9a-f]{64}")

#: No line of a history is longer, in characters; what is longer is broken.
LONGEST_LINE = 64 * 1024 * 1024

Rows = dict[tuple[str, int], Any]


def lines_of(stream: TextIO) -> Iterator[str]:
    """The lines of a text, each in pieces where it is longer than any line should be."""
    while line := stream.readline(LONGEST_LINE):
        yield line


def walk(lines: Iterable[str]) -> tuple[ChainFound, Rows]:
    """Work out every edit's digest again; what was found, and each row as the last edit left it."""
    rows: Rows = {}
    previous = first = last = good = broken = ""
    count = 0
    for edit in _edits(lines):
        count += 1
        total = hashlib.sha256(previous.encode())
        for text in edit.texts:
            total.update(text.encode("utf-8", "surrogateescape"))
        words, made = _named(edit.texts[:1])
        first, last = first or made, made
        holds = edit.sound and total.hexdigest() == edit.digest
        if holds and not broken:
            good = words
        elif not holds and not broken:
            broken = words or f"edit number {count} of the file"
        _apply(edit.texts[1:], rows)
        previous = edit.digest
    if not count:
        broken = "the file holds no edit"
    return ChainFound(count, first, last, previous, broken, good if broken else ""), rows


class _EditText:
    """The lines of one edit: what stands after their first words."""

    def __init__(self) -> None:
        self.texts: list[str] = []
        self.digest = ""
        self.sound = True


def _edits(lines: Iterable[str]) -> Iterator[_EditText]:
    edit = _EditText()
    for line in lines:
        word, space, text = line.removesuffix("\n").partition(" ")
        if not space or not line.endswith("\n"):
            edit.sound = False
        if word == "digest":
            edit.digest = text
            edit.sound = edit.sound and _DIGEST.fullmatch(text) is not None and bool(edit.texts)
            yield edit
            edit = _EditText()
            continue
        if word != ("change" if edit.texts else "edit"):
            edit.sound = False
        edit.texts.append(text)
    if edit.texts or not edit.sound:
        edit.sound = False
        yield edit


def _named(head: list[str]) -> tuple[str, str]:
    """What an edit is called in a sentence, and when it was made."""
    values = loaded(head[0]) if head else None
    if not isinstance(values, list) or len(values) < 4:
        return "", ""
    number, _, label, made = values[:4]
    return f"edit {number} (“{label}”) of {str(made)[:10]}", str(made)


def loaded(text: Any) -> Any:
    """What a JSON text holds, None where it is none; nobody knows who wrote it."""
    try:
        return json.loads(text)
    except (ValueError, TypeError, RecursionError):
        return None


def _apply(texts: list[str], rows: Rows) -> None:
    for text in texts:
        values = loaded(text)
        # What is odd about a line is told by the digest already.
        if isinstance(values, list) and len(values) == 5 and isinstance(values[1], int):
            rows[str(values[0]), values[1]] = values[4]


def originals(rows: Rows) -> frozenset[str]:
    """The SHA-256 of every original that the history leaves on record."""
    found = (loaded(after) for (table, _), after in rows.items() if table == "originals")
    return frozenset(str(row.get("sha256")) for row in found if isinstance(row, dict))


def differences(where: str, record: Any, rows: Rows) -> Iterator[Fault]:
    """Name rows of the record that are not as the chain leaves them, up to a few."""
    try:
        stored = {(table, row["id"]): row for table, list_ in record.items() for row in list_}
    except (AttributeError, KeyError, TypeError):
        yield Fault(where, "It is not the record that the history is of.")
        return
    chained = {key: loaded(after) for key, after in rows.items() if after is not None}
    wrong = [key for key in stored.keys() | chained.keys() if stored.get(key) != chained.get(key)]
    for table, row in sorted(wrong, key=str)[:_MOST_NAMED]:
        yield Fault(where, f"Row {row} of {table} is not as the history of changes leaves it.")
    if len(wrong) > _MOST_NAMED:
        yield Fault(where, f"So are {len(wrong) - _MOST_NAMED:,} rows more.")
