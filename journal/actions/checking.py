"""Checking a journal."""

from pathlib import Path

from journal.actions.session import Session
from journal.domain.checks import CheckReport
from journal.domain.progress import Context, Silent
from journal.store import checking
from journal.store.folder import open_folder


def check(journal: Session | Path, context: Context | None = None) -> CheckReport:
    """Look at all of a journal, open or not, and name each fault; nothing is changed.

    Raises:
        JournalError: it is no journal, or is too damaged to be opened.
        Cancelled: the person asked to stop.
    """
    if isinstance(journal, Session):
        return checking.check(journal.journal, context or Silent())
    with open_folder(journal, read_only=True) as opened:
        return checking.check(opened, context or Silent())
