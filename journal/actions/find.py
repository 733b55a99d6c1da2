"""Finding words anywhere in the journal."""

from journal.actions.session import Session
from journal.domain.found import Hit


def find(session: Session, words: str, limit: int = 50) -> tuple[Hit, ...]:
    """Photos, areas, panels, entries, receipts and work that hold all the words, the best first."""
    return session.journal.search.find(words, limit)
