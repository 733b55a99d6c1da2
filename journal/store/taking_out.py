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

    ``use`` is "photo", "paper", "picture under a view" or "valuation"; ``number`` is that of the
    photo, receipt, view or valuation.
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
    """How many edits there are, and the digest of the newest."""
    (count,) = journal.db.execute("SELECT count(*) FROM edits").fetchone()
    row = journal.db.execute("SELECT digest FROM edits ORDER BY id DESC LIMIT 1").fetchone()
    return int(count), str(row[0] or "") if row else ""


def rows(journal: Journal) -> Iterator[tuple[str, Iterator[str]]]:
    """Every table's name with its rows as JSON objects, just as the chain has them."""
    for table in RECORDED:
        found = journal.db.execute(f"SELECT {as_json(table, table)} FROM {table} ORDER BY id")
        yield table, (str(row) for (row,) in found)


def kept_originals(journal: Journal) -> tuple[Kept, ...]:
    """The originals that the record shows: photos, papers, pictures under views, valuations."""
    found = journal.db.execute(
        """SELECT o.sha256, o.suffix, o.size, o.added, p.id, p.name, r.receipt_id,
             u.view_id, v.id FROM originals o
           LEFT JOIN photos p ON p.sha256 = o.sha256 AND p.removed = 0
           LEFT JOIN receipt_papers r ON r.sha256 = o.sha256
           LEFT JOIN underlays u ON u.sha256 = o.sha256
           LEFT JOIN valuations v ON v.sha256 = o.sha256
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
    valuation: int | None,
) -> Kept:
    if photo is not None:
        return Kept(sha256, suffix, size, name or "", "photo", photo, added)
    if receipt is not None:
        return Kept(sha256, suffix, size, "", "paper", receipt, added)
    if view is not None:
        return Kept(sha256, suffix, size, "", "picture under a view", view, added)
    return Kept(sha256, suffix, size, "", "valuation", valuation or 0, added)
