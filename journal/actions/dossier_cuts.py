"""What each cut of the dossier holds, and the standard views: chosen here, made elsewhere."""

from journal.actions.session import Session
from journal.domain.changes import Changes
from journal.domain.cuts import Choices, Cut, check_choices, usual
from journal.domain.ids import PhotoId
from journal.domain.standard_views import ViewPhoto, check_view

# --- what a cut holds ---


def choices_of(session: Session, cut: Cut) -> Choices:
    """What a cut holds, as the owner chose it or as it usually is."""
    return session.journal.cuts.choices(cut)


def choose(session: Session, choices: Choices) -> Changes:
    """Keep what a cut holds.

    Raises:
        JournalError: the choices can't be.
    """
    check_choices(choices)
    with session.journal.edit(f"Choose the parts of the dossier for {_for(choices.cut)}") as edit:
        session.journal.cuts.choose(choices)
    return edit.changes()


def choose_as_usual(session: Session, cut: Cut) -> Changes:
    """Give a cut the parts it usually has."""
    return choose(session, usual(cut))


def _for(cut: Cut) -> str:
    return {"buyer": "a buyer", "valuer": "a valuer", "own": "the own shelf"}[cut]


# --- standard views ---


def standard_views(session: Session) -> tuple[ViewPhoto, ...]:
    """The photo of each standard view that has one."""
    return session.journal.cuts.standard_views()


def set_standard_view(session: Session, name: str, photo_id: PhotoId | None) -> Changes:
    """Choose the photo that shows a standard view; None for none.

    Raises:
        JournalError: there is no such view.
    """
    check_view(name)
    what = "Choose the photo of the standard view" if photo_id else "Clear the standard view"
    with session.journal.edit(f"{what} “{name}”") as edit:
        session.journal.cuts.set_standard_view(name, photo_id)
    return edit.changes()
