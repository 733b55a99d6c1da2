"""Freeing the space of removed originals: the one act that takes originals out of the folder."""

from collections.abc import Callable
from pathlib import Path

from journal.domain.errors import JournalError
from journal.store.journal import Journal
from journal.store.originals import loose
from journal.store.rows import delete

#: The originals that no table shows.
UNUSED = """
SELECT o.id, o.sha256, o.suffix FROM originals o
WHERE NOT EXISTS (SELECT 1 FROM photos p WHERE p.sha256 = o.sha256 AND p.removed = 0)
  AND NOT EXISTS (SELECT 1 FROM receipt_papers r WHERE r.sha256 = o.sha256)
  AND NOT EXISTS (SELECT 1 FROM underlays u WHERE u.sha256 = o.sha256)
  AND NOT EXISTS (SELECT 1 FROM valuations v WHERE v.sha256 = o.sha256)
"""

#: Tables with a column that points at a photo, emptied of it before it goes.
ON_PHOTOS = (
    ("pins", "photo_id"), ("area_photos", "photo_id"), ("cover_boxes", "photo_id"),
    ("standard_views", "photo_id"), ("pairs", "before_id"), ("pairs", "after_id"),
)  # fmt: skip


def removed(journal: Journal) -> int:
    """How many originals nothing in the record shows any more."""
    return len(journal.db.execute(UNUSED).fetchall()) + len(loose(journal))


def clear_out(journal: Journal, trash: Callable[[Path], None]) -> int:
    """Take removed originals out of the record and hand their files to ``trash``; how many.

    The record goes first: were the trash to refuse a file, it would lie loose and unharmed.

    Raises:
        JournalError: a file could not be sent to the trash.
    """
    unused = journal.db.execute(UNUSED).fetchall()
    if unused:
        with journal.edit(f"Clear out {len(unused)} removed originals"):
            for original_id, sha256, _ in unused:
                _forget(journal, original_id, sha256)
    files = loose(journal)
    for path in files:
        try:
            trash(path)
        except OSError as error:
            raise JournalError(
                f"“{path.name}” could not be sent to the trash ({error}); it was left in place."
            ) from error
    return len(files)


def _forget(journal: Journal, original_id: int, sha256: str) -> None:
    db = journal.db
    for (photo,) in db.execute("SELECT id FROM photos WHERE sha256 = ?", (sha256,)).fetchall():
        for table, column in ON_PHOTOS:
            rows = db.execute(f"SELECT id FROM {table} WHERE {column} = ?", (photo,)).fetchall()
            for (row,) in rows:
                delete(db, table, row)
        journal.photo_spans.forget(photo)
        journal.metalwork.forget_photo(photo)
        delete(db, "photos", photo)
    delete(db, "originals", original_id)
