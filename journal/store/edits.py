"""Edits: labelled groups of row changes, kept in an append-only log with a running SHA-256.

Undo and redo are edits themselves: they apply the inverse of what the log holds. Edits made by one
act of the person (adding a thousand photos in twenty transactions) share its number and are taken
back together.
"""

import json
import re
import sqlite3
from collections.abc import Iterable
from dataclasses import dataclass, field
from datetime import datetime

from journal.domain.changes import Changes
from journal.domain.errors import UndoRefusedError
from journal.domain.ids import EditId
from journal.store.rows import kept_text
from journal.store.schema import as_json, columns
from journal.store.tables import KINDS, RECORDED

#: A menu shows no more of what was done, in characters.
_LONGEST_LABEL = 120


@dataclass(slots=True)
class Edit:
    """An edit while it is open, and what it came to once it is closed."""

    id: EditId
    act: EditId
    label: str
    kinds: frozenset[str] = field(default=frozenset())
    empty: bool = False

    def changes(self, made: int | None = None) -> Changes:
        """What the edit changed, to be told to whoever shows it."""
        return Changes(self.label, self.kinds, None if self.empty else self.id, made)


@dataclass(frozen=True, slots=True)
class EditRow:
    """One edit of the log, for reading. ``made`` is UTC; ``kind`` is do, undo or redo."""

    id: EditId
    act: EditId
    label: str
    made: datetime
    kind: str
    digest: str
    rows: int


def as_label(text: str) -> str:
    """What an edit did, in one line that a menu can hold."""
    line = " ".join(kept_text(text).split())
    return line if len(line) <= _LONGEST_LABEL else line[: _LONGEST_LABEL - 1] + "…"


def begin(
    db: sqlite3.Connection,
    label: str,
    made: datetime,
    act: EditId | None,
    kind: str,
    target: int | None,
) -> Edit:
    """Open an edit inside the running transaction."""
    cursor = db.execute(
        "INSERT INTO edits (act, label, made, kind, target) VALUES (?, ?, ?, ?, ?)",
        (act or 0, label, made.isoformat(), kind, target),
    )
    edit_id = EditId(int(cursor.lastrowid or 0))
    if act is None:
        db.execute("UPDATE edits SET act = id WHERE id = ?", (edit_id,))
    db.execute("UPDATE open_edit SET edit_id = ?", (edit_id,))
    return Edit(edit_id, act or edit_id, label)


def finish(db: sqlite3.Connection, edit: Edit) -> None:
    """Close an edit: seal it with the running digest, or mark it empty."""
    tables = db.execute("SELECT DISTINCT tbl FROM changes WHERE edit_id = ?", (edit.id,)).fetchall()
    edit.kinds = frozenset(KINDS.get(t, t) for (t,) in tables)
    edit.empty = not tables
    if not edit.empty:
        digest = _digest(db, edit.id, _previous(db, edit.id))
        db.execute("UPDATE edits SET digest = ? WHERE id = ?", (digest, edit.id))
    db.execute("UPDATE open_edit SET edit_id = NULL")


def last(db: sqlite3.Connection) -> int:
    """The number of the latest edit, 0 where there is none."""
    return int(db.execute("SELECT coalesce(max(id), 0) FROM edits").fetchone()[0])


def kinds_since(db: sqlite3.Connection, edit_id: int) -> frozenset[str]:
    """The kinds of record that were touched after an edit."""
    tables = db.execute("SELECT DISTINCT tbl FROM changes WHERE edit_id > ?", (edit_id,))
    return frozenset(KINDS.get(table, table) for (table,) in tables)


def _previous(db: sqlite3.Connection, edit_id: int) -> str:
    row = db.execute(
        "SELECT digest FROM edits WHERE id < ? ORDER BY id DESC LIMIT 1", (edit_id,)
    ).fetchone()
    return str(row[0]) if row else ""


def _digest(db: sqlite3.Connection, edit_id: int, previous: str) -> str:
    import hashlib

    head = db.execute(
        "SELECT id, act, label, made, kind, target FROM edits WHERE id = ?", (edit_id,)
    ).fetchone()
    total = hashlib.sha256(previous.encode())
    total.update(json.dumps(head, ensure_ascii=False).encode())
    for row in db.execute(
        "SELECT tbl, row, op, before, after FROM changes WHERE edit_id = ? ORDER BY id", (edit_id,)
    ):
        total.update(json.dumps(row, ensure_ascii=False).encode())
    return total.hexdigest()


def walk_chain(db: sqlite3.Connection) -> Iterable[str]:
    """Recompute the running digest of the whole log; give a sentence for each link that fails."""
    previous = ""
    for edit_id, label, digest in db.execute("SELECT id, label, digest FROM edits ORDER BY id"):
        if digest is None:
            yield f"Edit {edit_id} (“{label}”) was never sealed."
        elif digest != _digest(db, edit_id, previous):
            yield f"Edit {edit_id} (“{label}”) or one before it was altered outside the program."
        previous = digest or ""


def good_until(db: sqlite3.Connection) -> str:
    """The last edit before the first that does not follow; "" where the whole log holds."""
    previous, good = "", "nothing of it"
    for edit_id, label, made, digest in db.execute(
        "SELECT id, label, made, digest FROM edits ORDER BY id"
    ):
        if digest is None or digest != _digest(db, edit_id, previous):
            return good
        previous, good = digest, f"edit {edit_id} (“{label}”) of {made[:10]}"
    return ""


def undo_target(db: sqlite3.Connection) -> tuple[EditId, str] | None:
    """The act that undo would take back, with its label: of those that stand the last begun.

    What is done while a long act goes on (a photo pinned while others arrive) rests on that act, so
    it goes first.
    """
    row = db.execute(
        """SELECT act, label FROM edits e WHERE kind = 'do' AND NOT EXISTS (
             SELECT 1 FROM edits u WHERE u.target = e.act AND u.kind = 'undo' AND NOT EXISTS (
               SELECT 1 FROM edits r WHERE r.target = e.act AND r.kind = 'redo' AND r.id > u.id))
           AND act > (SELECT min(id) FROM edits) ORDER BY act DESC LIMIT 1"""
    ).fetchone()
    return (EditId(row[0]), _act_label(db, row[0])) if row else None


def redo_target(db: sqlite3.Connection) -> tuple[EditId, EditId, str] | None:
    """The undone act that redo would do again, its undoing edit, and its label."""
    row = db.execute(
        """SELECT target, id FROM edits u WHERE kind = 'undo' AND NOT EXISTS (
             SELECT 1 FROM edits r WHERE r.target = u.target AND r.kind = 'redo' AND r.id > u.id)
           AND NOT EXISTS (SELECT 1 FROM edits d WHERE d.kind = 'do' AND d.id > u.id)
           ORDER BY id DESC LIMIT 1"""
    ).fetchone()
    return (EditId(row[0]), EditId(row[1]), _act_label(db, row[0])) if row else None


_COUNTED = re.compile(r"(?P<verb>\D+?) (?P<count>[\d,]+) (?P<noun>[a-z]+?)s?")


def _act_label(db: sqlite3.Connection, act: int) -> str:
    """What an act did: its one label, or what its edits did together ("Add 1,200 photos")."""
    labels = [r[0] for r in db.execute("SELECT label FROM edits WHERE act = ? ORDER BY id", (act,))]
    first = _COUNTED.fullmatch(labels[0])
    if first is None or len(labels) == 1:
        return str(labels[0])
    alike = [found for label in labels if (found := _COUNTED.fullmatch(label))]
    same = [f for f in alike if (f["verb"], f["noun"]) == (first["verb"], first["noun"])]
    total = sum(int(found["count"].replace(",", "")) for found in same)
    return f"{first['verb']} {total:,} {first['noun']}s"


def revert(db: sqlite3.Connection, edit_ids: Iterable[int]) -> None:
    """Write the inverse of every change of some edits, the latest first.

    Raises:
        UndoRefusedError: a row has changed since, or something newer depends on it.
    """
    db.execute("PRAGMA defer_foreign_keys = ON")
    for edit_id in sorted(edit_ids, reverse=True):
        rows = db.execute(
            "SELECT tbl, row, op, before, after FROM changes WHERE edit_id = ? ORDER BY id DESC",
            (edit_id,),
        ).fetchall()
        for table, row, op, before, after in rows:
            _revert_row(db, table, row, op, before, after)


def _revert_row(
    db: sqlite3.Connection, table: str, row: int, op: str, before: str | None, after: str | None
) -> None:
    found = db.execute(
        f"SELECT {as_json(table, table)} FROM {table} WHERE id = ?", (row,)
    ).fetchone()
    if (found[0] if found else None) != after:
        raise UndoRefusedError(
            f"This can't be taken back: {KINDS.get(table, table)} number {row} has changed since."
        )
    if op == "insert":
        db.execute(f"DELETE FROM {table} WHERE id = ?", (row,))
        return
    names = columns(table)
    listed, unpacked = ", ".join(names), ", ".join(f"json_extract(:j, '$.{n}')" for n in names)
    if op == "delete":
        db.execute(f"INSERT INTO {table} ({listed}) SELECT {unpacked}", {"j": before})
    else:
        db.execute(
            f"UPDATE {table} SET ({listed}) = (SELECT {unpacked}) WHERE id = :id",
            {"j": before, "id": row},
        )


def rows(db: sqlite3.Connection, limit: int) -> tuple[EditRow, ...]:
    """The newest edits of the log, the newest first."""
    found = db.execute(
        """SELECT id, act, label, made, kind, digest,
             (SELECT count(*) FROM changes c WHERE c.edit_id = e.id)
           FROM edits e ORDER BY id DESC LIMIT ?""",
        (limit,),
    )
    return tuple(
        EditRow(EditId(i), EditId(a), label, datetime.fromisoformat(made), kind, digest or "", n)
        for i, a, label, made, kind, digest, n in found
    )


def differences(db: sqlite3.Connection) -> Iterable[str]:
    """Compare every recorded row with what the log says of it last; a sentence per mismatch."""
    for table in RECORDED:
        last = f"""SELECT c.row, c.after FROM changes c JOIN
              (SELECT max(id) AS id FROM changes WHERE tbl = '{table}' GROUP BY row) m
            ON m.id = c.id WHERE c.after IS NOT NULL"""
        now = f"SELECT id AS row, {as_json(table, table)} AS after FROM {table}"
        query = f"""
            SELECT a.row FROM ({last}) a LEFT JOIN ({now}) b ON b.row = a.row
            WHERE a.after IS NOT b.after
            UNION SELECT b.row FROM ({now}) b LEFT JOIN ({last}) a ON a.row = b.row
            WHERE a.row IS NULL"""
        for (row,) in db.execute(query):
            yield f"Row {row} of {table} was altered outside the program."
