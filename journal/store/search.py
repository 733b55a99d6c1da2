"""Finding words anywhere in the journal."""

import re

from journal.domain.found import Hit
from journal.store.opened import Subject
from journal.store.rows import when_from

_TITLES = {
    "photo": "SELECT CASE caption WHEN '' THEN name ELSE caption END, edtf, earliest, latest "
    "FROM photos WHERE id = ?",
    "area": "SELECT name, '', '', '' FROM areas WHERE id = ?",
    "panel": "SELECT CASE side WHEN '' THEN name ELSE name || ', ' || side END, '', '', '' "
    "FROM panels WHERE id = ?",
    "entry": "SELECT 'Entry', edtf, earliest, latest FROM entries WHERE id = ?",
    "receipt": "SELECT supplier, edtf, earliest, latest FROM receipts WHERE id = ?",
    "wanted": "SELECT 'Wanted: ' || text, '', '', '' FROM wanted WHERE id = ?",
    "finding": "SELECT text, s.edtf, s.earliest, s.latest FROM findings "
    "JOIN surveys s ON s.id = survey_id WHERE findings.id = ?",
    "work": "SELECT 'Work by ' || person, edtf, earliest, latest FROM work WHERE id = ?",
}
#: Ranking thousands of hits of one letter costs more than it tells.
_RANKED_LENGTH = 2


class Search(Subject):
    """The word index over captions, entries, areas, panels, receipts and work."""

    def find(self, words: str, limit: int) -> tuple[Hit, ...]:
        """What holds all the words, each taken as a beginning; the best first."""
        terms = re.findall(r"\w+", words)
        if not terms:
            return ()
        query = " ".join(f'"{term}"*' for term in terms)
        order = "rank" if max(map(len, terms)) >= _RANKED_LENGTH else "rowid"
        rows = self._db.execute(
            "SELECT kind, ref, snippet(search, 0, '‹', '›', '…', 12) FROM search "
            f"WHERE search MATCH ? ORDER BY {order} LIMIT ?",
            (query, limit * 2),
        ).fetchall()
        seen: dict[tuple[str, int], Hit] = {}
        for kind, ref, snippet in rows:
            if (kind, ref) not in seen and len(seen) < limit:
                title, *when = self._db.execute(_TITLES[kind], (ref,)).fetchone()
                seen[kind, ref] = Hit(kind, ref, title, snippet, when_from(*when))
        return tuple(seen.values())
