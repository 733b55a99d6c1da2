"""The open journal, as the window and the command line hold it."""

from pathlib import Path
from types import TracebackType
from typing import Self

from journal.actions.kept import Kept
from journal.store.journal import Journal


class Session:
    """One open journal.

    Attributes:
        journal: the store; for the actions alone.
        kept: what actions worked out of it, kept until it changes.
    """

    def __init__(self, journal: Journal) -> None:
        self.journal = journal
        self.kept = Kept(journal)

    @property
    def folder(self) -> Path:
        """The journal's folder."""
        return self.journal.folder

    @property
    def read_only(self) -> bool:
        """Whether it is open for reading alone."""
        return self.journal.read_only

    @property
    def notice(self) -> str:
        """Why it is read-only, in words; "" otherwise."""
        return self.journal.notice

    def close(self) -> None:
        """Close the journal; harmless a second time."""
        self.journal.close()

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self.close()
