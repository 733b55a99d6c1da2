"""What the record still lacks."""

from datetime import date

from journal.actions.session import Session
from journal.domain.gaps import Gap, Reader
from journal.dossier import gaps as rules
from journal.store.record import record


def gaps(session: Session, reader: Reader | None = None) -> tuple[Gap, ...]:
    """Every gap of the record, what matters most to a reader first: any, a buyer or a valuer."""
    return rules.gaps(record(session.journal), reader, date.today())
