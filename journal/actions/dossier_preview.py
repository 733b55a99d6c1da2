"""The dossier's pages as pictures, before it is made."""

from typing import TYPE_CHECKING

from journal.actions import privacy
from journal.actions.dossiers import composed
from journal.actions.session import Session
from journal.domain.cuts import Choices, check_choices
from journal.domain.pictures import Picture
from journal.domain.progress import Context, Silent

if TYPE_CHECKING:
    from journal.dossier.preview import Proof as Proof


def preview_pages(session: Session, choices: Choices, context: Context | None = None) -> "Proof":
    """Set the pages with photos from their thumbnails: what ``page_picture`` shows of them.

    Raises:
        JournalError: the choices can't be, or no font has the record's characters.
        Cancelled: the person asked to stop.
    """
    # The typesetter is large and wanted for this act alone.
    from journal.dossier.preview import proof

    context = context or Silent()
    check_choices(choices)
    dossier, given = composed(session, choices)
    context.checkpoint()
    return proof(dossier, privacy.thumbnails(session, given.record), context)


def page_picture(pages: "Proof", number: int, width: int) -> Picture:
    """Page ``number``, from 0, as a picture of ``width`` pixels; no page is read twice at once."""
    from journal.dossier.preview import page_picture as drawn

    return drawn(pages, number, width)
