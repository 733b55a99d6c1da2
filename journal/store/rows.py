"""Small writes and conversions that every subject of the store shares."""

import re
import sqlite3
from collections.abc import Iterable, Mapping
from datetime import datetime
from typing import Any, TypeVar

from journal.domain.errors import JournalError
from journal.domain.when import When

Value = TypeVar("Value")

_UNREADABLE = re.compile("[\ud800-\udfff]")

#: Undated things sort after everything that has a date.
UNDATED = "9999-12-31T23:59:59"


def when_columns(when: When | None) -> dict[str, Any]:
    """The three columns that hold a date."""
    if when is None:
        return {"edtf": "", "earliest": UNDATED, "latest": UNDATED}
    return {
        "edtf": when.edtf,
        "earliest": when.earliest.isoformat(),
        "latest": when.latest.isoformat(),
    }


def when_from(edtf: str, earliest: str, latest: str) -> When | None:
    """The date that three columns hold, None for an undated row."""
    if not edtf:
        return None
    return When(datetime.fromisoformat(earliest), datetime.fromisoformat(latest), edtf)


def dated(edtf: str, earliest: str, latest: str) -> When:
    """The date of a row that must have one."""
    return When(datetime.fromisoformat(earliest), datetime.fromisoformat(latest), edtf)


def kept_text(text: str) -> str:
    """A text as a database can keep it: without NUL, unreadable signs marked as such."""
    return _UNREADABLE.sub("\ufffd", text.replace("\0", ""))


def _kept(values: Mapping[str, Any]) -> dict[str, Any]:
    return {k: kept_text(v) if isinstance(v, str) else v for k, v in values.items()}


def insert(db: sqlite3.Connection, table: str, values: Mapping[str, Any]) -> int:
    """Add a row and return its number."""
    names = ", ".join(values)
    marks = ", ".join("?" * len(values))
    kept = tuple(_kept(values).values())
    cursor = db.execute(f"INSERT INTO {table} ({names}) VALUES ({marks})", kept)
    return int(cursor.lastrowid or 0)


def update(db: sqlite3.Connection, table: str, row_id: int, values: Mapping[str, Any]) -> None:
    """Change a row, leaving no trace in the log where nothing differs.

    Raises:
        JournalError: there is no such row.
    """
    names = ", ".join(values)
    now = db.execute(f"SELECT {names} FROM {table} WHERE id = ?", (row_id,)).fetchone()
    if now is None:
        raise JournalError(f"There is no number {row_id} in {table.replace('_', ' ')}.")
    kept = _kept(values)
    changed = {k: v for (k, v), old in zip(kept.items(), now, strict=True) if v != old}
    if changed:
        marks = ", ".join(f"{name} = ?" for name in changed)
        db.execute(f"UPDATE {table} SET {marks} WHERE id = ?", (*changed.values(), row_id))


def delete(db: sqlite3.Connection, table: str, row_id: int) -> None:
    """Remove a row.

    Raises:
        JournalError: there is no such row.
    """
    if not db.execute(f"DELETE FROM {table} WHERE id = ?", (row_id,)).rowcount:
        raise JournalError(f"There is no number {row_id} in {table.replace('_', ' ')}.")


def replace_children(
    db: sqlite3.Connection,
    table: str,
    parent: tuple[str, int],
    key: str,
    rows: Iterable[Mapping[str, Any]],
) -> None:
    """Make the rows below a parent exactly ``rows``, matched by the column ``key``."""
    column, parent_id = parent
    found = db.execute(f"SELECT {key}, id FROM {table} WHERE {column} = ?", (parent_id,)).fetchall()
    old = dict(found)
    for row in rows:
        known = old.pop(row[key], None)
        if known is None:
            insert(db, table, {column: parent_id, **row})
        else:
            update(db, table, known, row)
    for gone in old.values():
        delete(db, table, gone)


def chunks(ids: Iterable[Value], size: int = 900) -> Iterable[tuple[Value, ...]]:
    """Split many values into portions that one SQL statement can name."""
    batch: list[Value] = []
    for row_id in ids:
        batch.append(row_id)
        if len(batch) == size:
            yield tuple(batch)
            batch = []
    if batch:
        yield tuple(batch)


def marks(ids: tuple[Any, ...]) -> str:
    """Question marks for so many values."""
    return ", ".join("?" * len(ids))
