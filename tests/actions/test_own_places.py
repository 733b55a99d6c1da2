"""No document of ours is ever written over what the journal consists of."""

from pathlib import Path

import pytest

from journal.actions.dossiers import make_dossier
from journal.actions.export_drawing import export_drawing
from journal.actions.session import Session
from journal.domain.errors import JournalError


@pytest.mark.parametrize(
    "name", ["journal.db", "previews.db", "Journal.DB", "READ ME.txt", "journal.lock"]
)
def test_a_dossier_never_takes_the_place_of_the_journals_own_files(
    session: Session, name: str
) -> None:
    before = (session.folder / "journal.db").read_bytes()
    with pytest.raises(JournalError, match="is a file of the journal itself"):
        make_dossier(session, session.folder / name)
    assert (session.folder / "journal.db").read_bytes() == before


@pytest.mark.parametrize("way", ["originals", "Originals/ab", "link", "originals/../originals"])
def test_a_dossier_never_lies_among_the_originals(
    session: Session, tmp_path: Path, way: str
) -> None:
    (session.folder / "link").symlink_to(session.folder / "originals")
    with pytest.raises(JournalError, match="lies among the originals"):
        make_dossier(session, session.folder / way / "dossier.pdf")
    outside = tmp_path / "outside"
    outside.symlink_to(session.folder / "originals")
    with pytest.raises(JournalError, match="lies among the originals"):
        make_dossier(session, outside / "dossier.pdf")
    with pytest.raises(JournalError, match="lies among the originals"):
        export_drawing(session, outside / "drawing.svg")
