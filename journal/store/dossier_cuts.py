"""What the owner chose for each cut of the dossier: parts, private words, standard views."""

from dataclasses import replace

from journal.domain.cuts import Choices, Cut, from_json, to_json
from journal.domain.errors import JournalError
from journal.domain.ids import AreaId, PhotoId, PrivateWordId
from journal.domain.private_words import Private, PrivateWord
from journal.domain.standard_views import STANDARD_VIEWS, ViewPhoto
from journal.store.opened import Subject
from journal.store.rows import delete, insert, update


class DossierCuts(Subject):
    """The choices behind every dossier."""

    def choices(self, cut: Cut) -> Choices:
        """What a cut holds, as chosen or as usual."""
        row = self._db.execute(
            "SELECT choices FROM dossier_cuts WHERE cut = ?", (cut.value,)
        ).fetchone()
        return from_json(cut, row[0] if row else "")

    def choose(self, choices: Choices) -> None:
        """Record what a cut holds."""
        values = {"choices": to_json(choices)}
        row = self._db.execute(
            "SELECT id FROM dossier_cuts WHERE cut = ?", (choices.cut.value,)
        ).fetchone()
        if row is None:
            insert(self._db, "dossier_cuts", {"cut": choices.cut.value, **values})
        else:
            update(self._db, "dossier_cuts", row[0], values)

    def forget_area(self, area_id: AreaId) -> None:
        """Take an area that goes out of the choices; another may be given its number.

        Where it is the last one chosen it stays: a choice of none would tell them all.
        """
        for row, cut, text in self._db.execute(
            "SELECT id, cut, choices FROM dossier_cuts"
        ).fetchall():
            choices = from_json(Cut(cut), text)
            left = choices.areas - {area_id}
            if left and left != choices.areas:
                values = {"choices": to_json(replace(choices, areas=left))}
                update(self._db, "dossier_cuts", row, values)

    # Private words

    def private_words(self) -> tuple[PrivateWord, ...]:
        """Every word to be withheld, by sort and then as they were listed."""
        found = self._db.execute("SELECT id, words, kind FROM private_words ORDER BY id")
        rows = [PrivateWord(PrivateWordId(i), words, Private(kind)) for i, words, kind in found]
        return tuple(sorted(rows, key=lambda row: list(Private).index(row.kind)))

    def add_private_word(self, words: str, kind: Private) -> PrivateWordId:
        """List words to be withheld.

        Raises:
            JournalError: they are listed already.
        """
        known = self._db.execute("SELECT 1 FROM private_words WHERE words = ?", (words,))
        if known.fetchone():
            raise JournalError(f"“{words}” is listed already.")
        row = insert(self._db, "private_words", {"words": words, "kind": kind.value})
        return PrivateWordId(row)

    def remove_private_word(self, word_id: PrivateWordId) -> None:
        """Take words off the list."""
        delete(self._db, "private_words", word_id)

    # Standard views

    def standard_views(self) -> tuple[ViewPhoto, ...]:
        """The photo of each standard view that has one, in the usual order."""
        found = self._db.execute(
            "SELECT v.name, v.photo_id FROM standard_views v JOIN photos p ON p.id = v.photo_id "
            "WHERE NOT p.removed"
        )
        rows = {name: ViewPhoto(name, PhotoId(photo)) for name, photo in found}
        return tuple(rows[name] for name in STANDARD_VIEWS if name in rows)

    def set_standard_view(self, name: str, photo_id: PhotoId | None) -> None:
        """Choose the photo of a standard view; None for none."""
        row = self._db.execute("SELECT id FROM standard_views WHERE name = ?", (name,)).fetchone()
        if photo_id is None:
            if row is not None:
                delete(self._db, "standard_views", row[0])
        elif row is None:
            insert(self._db, "standard_views", {"name": name, "photo_id": photo_id})
        else:
            update(self._db, "standard_views", row[0], {"photo_id": photo_id})
