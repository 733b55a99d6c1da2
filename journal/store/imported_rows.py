"""The rows of spreadsheets that were brought in, so that none comes in twice."""

import sqlite3
from collections.abc import Iterable

from journal.domain.ids import ReceiptId, WorkId
from journal.domain.sheet_rows import BroughtBefore
from journal.store.opened import Subject
from journal.store.rows import chunks, insert, marks, update


def forget(db: sqlite3.Connection, column: str, number: int) -> None:
    """Keep in mind that rows were brought in whose receipt or hours are now taken out."""
    found = db.execute(f"SELECT id FROM imported_rows WHERE {column} = ?", (number,)).fetchall()
    for (row,) in found:
        update(db, "imported_rows", row, {column: None})


class ImportedRows(Subject):
    """Each row by its fingerprint, with what it became."""

    def known(self, fingerprints: Iterable[str]) -> dict[str, BroughtBefore]:
        """Those of some fingerprints that were brought in before."""
        found: dict[str, BroughtBefore] = {}
        for some in chunks(fingerprints):
            rows = self._db.execute(
                "SELECT fingerprint, receipt_id, work_id FROM imported_rows "
                f"WHERE fingerprint IN ({marks(some)})",
                some,
            )
            for mark, receipt_id, work_id in rows:
                found[mark] = BroughtBefore(
                    None if receipt_id is None else ReceiptId(receipt_id),
                    None if work_id is None else WorkId(work_id),
                )
        return found

    def add(
        self,
        fingerprint: str,
        source: tuple[str, str, int],
        receipt_id: ReceiptId | None = None,
        work_id: WorkId | None = None,
    ) -> None:
        """Record that a row came in; ``source`` is its file's name, its sheet's and its number."""
        file, sheet, row = source
        values = {
            "fingerprint": fingerprint,
            "source": file,
            "sheet": sheet,
            "row": row,
            "receipt_id": receipt_id,
            "work_id": work_id,
        }
        found = self._db.execute(
            "SELECT id FROM imported_rows WHERE fingerprint = ?", (fingerprint,)
        ).fetchone()
        if found:
            update(self._db, "imported_rows", found[0], values)
        else:
            insert(self._db, "imported_rows", values)
