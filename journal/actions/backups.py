"""Backup and restore."""

from datetime import datetime
from pathlib import Path

from journal.actions.session import Session
from journal.domain.progress import Context, Silent
from journal.store import backup as store


def backup(session: Session, destination: Path, context: Context | None = None) -> Path:
    """Copy the journal into a dated folder below ``destination`` and return that folder.

    Raises:
        JournalError: an original is missing or altered, or the destination can't be written to.
        Cancelled: the person asked to stop.
    """
    return store.backup(session.journal, destination, context or Silent(), datetime.now())


def restore(source: Path, folder: Path, context: Context | None = None) -> None:
    """Make a journal folder out of a backup.

    Raises:
        JournalError: the source is no journal, or the folder holds something already.
        Cancelled: the person asked to stop.
    """
    store.restore(source, folder, context or Silent())
