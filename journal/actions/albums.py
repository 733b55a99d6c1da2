"""The web album: a folder of pages for a forum, a club or the family."""

from datetime import datetime
from pathlib import Path

from journal.actions import privacy
from journal.actions.dossiers import composed
from journal.actions.session import Session
from journal.domain.albums import AlbumReport
from journal.domain.cuts import Choices, Cut, check_choices, usual
from journal.domain.progress import Context, Silent
from journal.files.names import safe_name
from journal.store.folder import refuse_inside


def make_album(
    session: Session,
    out: Path,
    context: Context | None = None,
    choices: Choices | None = None,
) -> AlbumReport:
    """Make the web album as a folder at ``out``, which appears whole or not at all.

    It says what the dossier of the same ``choices`` says, and withholds the same; without them it
    is a buyer's, with nothing private in it. An album made before at ``out`` is replaced.

    Raises:
        JournalError: ``out`` holds something else, lies inside the journal, or can't be written.
        Cancelled: the person asked to stop; what was at ``out`` stays.
    """
    # Templates are wanted for this act alone.
    from journal.dossier.album.writing import write_album

    chosen = choices or usual(Cut.BUYER)
    check_choices(chosen)
    refuse_inside(session.folder, out)
    dossier, given = composed(session, chosen)
    copies = privacy.copies(session, given.record)
    return write_album(dossier, given.record, copies, out, context or Silent(), given.finder)


def album_place(folder: Path, title: str) -> Path:
    """A place in ``folder`` for an album of a car, that isn't taken."""
    name = f"{safe_name(' '.join(title.split()) or 'Car', longest=120)} album"
    place, number = folder / name, 2
    while place.exists():
        place, number = folder / f"{name} {datetime.now():%Y-%m-%d} ({number})", number + 1
    return place
