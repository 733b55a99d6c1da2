"""What leaves the house: private words, and the record without what is withheld."""

from collections.abc import Callable, Iterable

from journal.actions.session import Session
from journal.domain import privacy as rules
from journal.domain.changes import Changes
from journal.domain.covers import boxes_on, turned
from journal.domain.errors import JournalError
from journal.domain.ids import PrivateWordId
from journal.domain.photos import Photo
from journal.domain.privacy import Redacted
from journal.domain.private_words import Private, PrivateWord, check_private_word
from journal.domain.record import Record
from journal.store.record import record

#: Gives a photo's picture as a JPEG without metadata, covered, whose longer side is so many pixels.
Pictures = Callable[[Photo, int], bytes | None]


# --- private words ---


def private_words(session: Session) -> tuple[PrivateWord, ...]:
    """The words that the owner listed, by sort."""
    return session.journal.cuts.private_words()


def known_private_words(session: Session) -> dict[Private, tuple[str, ...]]:
    """What is looked for without being listed: it follows from the record."""
    whole = record(session.journal)
    car = whole.car
    found = {
        Private.PEOPLE: rules.people(whole),
        Private.SUPPLIERS: rules.suppliers(whole),
        Private.PLATE: (car.registration,),
        Private.CHASSIS: (car.chassis_number, car.engine_number),
    }
    return {kind: tuple(word for word in words if word.strip()) for kind, words in found.items()}


def add_private_word(session: Session, words: str, kind: Private) -> Changes:
    """List words to be found and withheld wherever they stand.

    Raises:
        JournalError: they are too short, or listed already.
    """
    words = " ".join(words.split())
    check_private_word(words, kind)
    with session.journal.edit(f"List “{words}” as private") as edit:
        made = session.journal.cuts.add_private_word(words, kind)
    return edit.changes(made)


def remove_private_word(session: Session, word_id: PrivateWordId) -> Changes:
    """Take words off the list."""
    with session.journal.edit("Take a private word off the list") as edit:
        session.journal.cuts.remove_private_word(word_id)
    return edit.changes()


def title_for_others(session: Session, withheld: Iterable[Private]) -> str:
    """The car's title without what is withheld, as a file that leaves the house may be called."""
    journal = session.journal
    words = journal.cuts.private_words()
    return rules.title_for_others(journal.car.get(), journal.people.all(), withheld, words)


# --- the record that leaves the house ---


def redacted(
    session: Session, withheld: Iterable[Private], whole: Record | None = None
) -> Redacted:
    """The whole record without what is withheld; ``whole`` where it was read already."""
    return rules.redact(
        whole or record(session.journal), withheld, session.journal.cuts.private_words()
    )


def copies(session: Session, given: Record) -> Pictures:
    """Pictures for a redacted record: boxes burnt in, nothing said beside the picture.

    The callable gives None where an original is missing or can't be read, raises JournalError
    where it isn't the one that came in, and may be called from several threads at once.
    """
    from journal.actions.pictures import printable

    def picture(photo: Photo, longest: int) -> bytes | None:
        _refuse_changed(session, photo)
        boxes = tuple(turned(box, photo.turn) for box in boxes_on(given.boxes, photo.id))
        return printable(session, photo, longest, boxes)

    return picture


def _refuse_changed(session: Session, photo: Photo) -> None:
    """Refuse an original whose bytes aren't those the index names: it would prove nothing.

    Raises:
        JournalError: it was changed.
    """
    from journal.actions.pictures import original_path
    from journal.files.copying import hash_file

    path = original_path(session, photo)
    try:
        if path.is_file() and hash_file(path) != photo.sha256:
            raise JournalError("the original isn’t the one that came in: its bytes were changed")
    except OSError:
        return


def thumbnails(session: Session, given: Record) -> Pictures:
    """The same from the small pictures kept: quick, for looking at on a screen."""
    from journal.actions.pictures import covered_jpeg, thumbnail

    def picture(photo: Photo, _longest: int) -> bytes | None:
        jpeg = thumbnail(session, photo)
        boxes = tuple(turned(box, photo.turn) for box in boxes_on(given.boxes, photo.id))
        return covered_jpeg(jpeg, boxes) if jpeg and boxes else jpeg

    return picture
