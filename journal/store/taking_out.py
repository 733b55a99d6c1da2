"""The record taken out whole, as it is stored: every row, and the chain of every change."""

import json
import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from dataclasses import dataclass

from journal.store.journal import Journal
from journal.store.schema import as_json
from journal.store.tables import RECORDED


@dataclass(frozen=True, slots=True)
class Kept:
    """An original on record: what it is called, where it lies, what for.

    ``use`` is "photo", "paper" or "picture under a view"; ``number`` is the photo's or receipt's.
    """

    sha256: str
    suffix: str
    size: int
    name: str
    use: str
    number: int
    added: str


@contextmanager
def at_one_moment(journal: Journal) -> Iterator[None]:
    """What is read inside is the record of one moment, whatever is written meanwhile."""
    db = journal.db
    db.execute("BEGIN")
    try:
        yield
    finally:
        with suppress(sqlite3.Error):
            db.rollback()


def chain(journal: Journal) -> Iterator[str]:
    """Every edit as lines of text that its digest can be worked out from, the oldest first.

    A line "edit …", a line "change …" for each row it touched, a line "digest …". The digest is the
    SHA-256 of the digest before and of what follows the first word of each line, run together.
    """
    db = journal.db
    changes = db.execute(
        "SELECT edit_id, tbl, row, op, before, after FROM changes ORDER BY edit_id, id"
    )
    waiting = changes.fetchone()
    for *head, digest in db.execute(
        "SELECT id, act, label, made, kind, target, digest FROM edits ORDER BY id"
    ):
        lines = [f"edit {json.dumps(head, ensure_ascii=False)}\n"]
        while waiting is not None and waiting[0] <= head[0]:
            lines.append(f"change {json.dumps(waiting[1:], ensure_ascii=False)}\n")
            waiting = changes.fetchone()
        lines.append(f"digest {digest or ''}\n")
        yield "".join(lines)


def last_edit(journal: Journal) -> tuple[int, str]:
    """The number and digest of the newest edit."""
    row = journal.db.execute("SELECT id, digest FROM edits ORDER BY id DESC LIMIT 1").fetchone()
    return (int(row[0]), str(row[1] or "")) if row else (0, "")


def rows(journal: Journal) -> Iterator[tuple[str, Iterator[str]]]:
    """Every table's name with its rows as JSON objects, just as the chain has them."""
    for table in RECORDED:
        found = journal.db.execute(f"SELECT {as_json(table, table)} FROM {table} ORDER BY id")
        yield table, (str(row) for (row,) in found)


def kept_originals(journal: Journal) -> tuple[Kept, ...]:
    """The originals that the record shows: photos, papers, and pictures under views."""
    found = journal.db.execute(
        """SELECT o.sha256, o.suffix, o.size, o.added, p.id, p.name, r.receipt_id,
             u.view_id FROM originals o
           LEFT JOIN photos p ON p.sha256 = o.sha256 AND p.removed = 0
           LEFT JOIN receipt_papers r ON r.sha256 = o.sha256
           LEFT JOIN underlays u ON u.sha256 = o.sha256
           GROUP BY o.id ORDER BY o.id"""
    )
    return tuple(_kept(*row) for row in found if any(part is not None for part in row[4:]))


def _kept(
    sha256: str,
    suffix: str,
    size: int,
    added: str,
    photo: int | None,
    name: str | None,
    receipt: int | None,
    view: int | None,
) -> Kept:
    if photo is not None:
        return Kept(sha256, suffix, size, name or "", "photo", photo, added)
    if receipt is not None:
        return Kept(sha256, suffix, size, "", "paper", receipt, added)
    return Kept(sha256, suffix, size, "", "picture under a view", view or 0, added)
