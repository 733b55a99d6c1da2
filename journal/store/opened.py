"""What the subjects of a store need of the journal they belong to."""

import sqlite3
from pathlib import Path
from typing import Protocol


class Opened(Protocol):
    """An open journal, as its subjects see it."""

    folder: Path

    @property
    def db(self) -> sqlite3.Connection:
        """The calling thread's connection."""


class Subject:
    """One kind of record in a journal. Its writes happen inside the journal's ``edit``."""

    def __init__(self, journal: Opened) -> None:
        self._journal = journal

    @property
    def _db(self) -> sqlite3.Connection:
        return self._journal.db
