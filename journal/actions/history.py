"""Undo, redo and the list of every edit."""

from journal.actions.session import Session
from journal.domain.changes import Changes
from journal.store import edits as log
from journal.store.edits import EditRow


def undo(session: Session) -> Changes:
    """Take back the latest act that still stands.

    Raises:
        JournalError: there is none.
        UndoRefusedError: a row it touched has changed since.
    """
    return session.journal.undo().changes()


def redo(session: Session) -> Changes:
    """Do again what was undone last.

    Raises:
        JournalError: there is nothing, or something else was done since.
    """
    return session.journal.redo().changes()


def undo_label(session: Session) -> str | None:
    """What undo would take back, None where there is nothing."""
    return session.journal.undo_label()


def redo_label(session: Session) -> str | None:
    """What redo would do again, None where there is nothing."""
    return session.journal.redo_label()


def edits(session: Session, limit: int = 200) -> tuple[EditRow, ...]:
    """The newest edits, the newest first."""
    return log.rows(session.journal.db, limit)
