"""Adds a folder of photos to a journal, telling of each photo the moment it is called added.

Run by test_killed_import: python adding_in_a_process.py JOURNAL FOLDER
"""

import sys
from pathlib import Path

from journal.actions import adding
from journal.actions.add_photos import add_photos
from journal.actions.journals import open_journal

adding.BATCH = 4


def tell(*words: object) -> None:
    """Say it at once: the next moment may be the last."""
    sys.stdout.write(" ".join(map(str, words)) + "\n")
    sys.stdout.flush()


class Telling(adding.Adding):
    """Adding that prints what it would report, as soon as it would."""

    def _record(self) -> None:
        before = len(self.added)
        super()._record()
        for _, sha256, number in self.added[before:]:
            tell("added", sha256, number)


adding.Adding = Telling  # type: ignore[misc]

with open_journal(Path(sys.argv[1])) as session:
    assert not session.read_only, session.notice
    tell("ready")
    add_photos(session, [Path(sys.argv[2])])
    tell("done")
