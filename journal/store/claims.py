"""The owner's own words for claims."""

from journal.domain.claim_words import ClaimWords
from journal.domain.ids import AreaId
from journal.store.opened import Subject
from journal.store.rows import delete, insert, update


class Claims(Subject):
    """What the owner says in the place of what the program says."""

    def all(self) -> tuple[ClaimWords, ...]:
        """Every claim that has words of its own or is left out, in order of number."""
        found = self._db.execute(
            "SELECT area_id, claim, words, left_out FROM claim_words ORDER BY id"
        )
        return tuple(
            ClaimWords(AreaId(area), claim, words, bool(left_out))
            for area, claim, words, left_out in found
        )

    def set(self, words: ClaimWords) -> None:
        """Record a claim's words anew; without any, and not left out, it is the program's again."""
        row = self._db.execute(
            "SELECT id FROM claim_words WHERE area_id = ? AND claim = ?",
            (words.area_id, words.claim),
        ).fetchone()
        if not words.words and not words.left_out:
            if row is not None:
                delete(self._db, "claim_words", row[0])
            return
        values = {"words": words.words, "left_out": int(words.left_out)}
        if row is None:
            key = {"area_id": words.area_id, "claim": words.claim}
            insert(self._db, "claim_words", key | values)
        else:
            update(self._db, "claim_words", row[0], values)

    def forget(self, area_id: AreaId) -> None:
        """Take out the words for all claims on a repair area."""
        for (row,) in self._db.execute(
            "SELECT id FROM claim_words WHERE area_id = ?", (area_id,)
        ).fetchall():
            delete(self._db, "claim_words", row)
