"""The dossier: the document for a buyer, a valuer or the owner."""

from datetime import date
from pathlib import Path

from journal import __version__
from journal.actions.pictures import printable
from journal.actions.session import Session
from journal.domain.costs import PRINTED_BY
from journal.domain.photos import Photo
from journal.domain.progress import Context, Silent
from journal.domain.record import Record
from journal.dossier.compose import compose
from journal.dossier.document import Dossier, DossierReport
from journal.dossier.gaps import gaps
from journal.ledger.books import Books
from journal.ledger.costs import cost_summary, cost_table
from journal.store.folder import refuse_own_place
from journal.store.record import record


def preview_dossier(session: Session) -> Dossier:
    """What the dossier would say today, without setting a page."""
    whole = record(session.journal)
    books = _books(whole)
    tables = tuple(cost_table(by, books) for by in PRINTED_BY)
    return compose(whole, cost_summary(books), tables, gaps(whole), date.today(), __version__)


def make_dossier(session: Session, out: Path, context: Context | None = None) -> DossierReport:
    """Typeset the dossier as a PDF at ``out``, which appears whole or not at all.

    Raises:
        JournalError: ``out`` can't be written, or is a place of the journal's own files.
        Cancelled: the person asked to stop; what was at ``out`` stays.
    """
    # The typesetter is large and wanted for this act alone.
    from journal.dossier.typeset import write_pdf

    refuse_own_place(session.folder, out)

    def pictures(photo: Photo, longest: int) -> bytes | None:
        return printable(session, photo, longest)

    return write_pdf(preview_dossier(session), pictures, out, context or Silent())


def _books(whole: Record) -> Books:
    return Books(
        currency=whole.car.currency,
        receipts=whole.receipts,
        work=whole.work,
        areas=whole.areas,
        milestones=whole.milestones,
    )
