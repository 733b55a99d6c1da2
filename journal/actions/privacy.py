"""What leaves the house: private words, covers on photos, and the record without either."""

from collections.abc import Callable, Iterable

from journal.actions.session import Session
from journal.domain import privacy as rules
from journal.domain.changes import Changes
from journal.domain.covers import CoverBox, boxes_on, check_box, turned
from journal.domain.errors import JournalError
from journal.domain.ids import CoverBoxId, PhotoId, PrivateWordId
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


# --- covers on photos ---


def covers_on(session: Session, photo: Photo) -> tuple[CoverBox, ...]:
    """The boxes on a photo as it is shown, its own turn and all."""
    return tuple(turned(box, photo.turn) for box in session.journal.covers.on(photo.id))


def all_covers(session: Session) -> tuple[CoverBox, ...]:
    """Every box, as it is kept: before its photo's own turn."""
    return session.journal.covers.all()


def covered_photos(session: Session) -> tuple[PhotoId, ...]:
    """The photos that have a box, each once."""
    return tuple(dict.fromkeys(box.photo_id for box in session.journal.covers.all()))


def add_cover(
    session: Session, photo: Photo, place: tuple[float, float, float, float], hides: Private
) -> Changes:
    """Cover a place on a photo: x, y, width and height as shares of the picture as it is shown.

    Raises:
        JournalError: nothing of it lies on the picture.
    """
    box = _as_kept(photo, CoverBox(CoverBoxId(0), photo.id, *place, hides))
    with session.journal.edit(f"Cover a place on “{photo.name}”") as edit:
        made = session.journal.covers.add(box)
    return edit.changes(made)


def change_cover(session: Session, photo: Photo, box: CoverBox) -> Changes:
    """Record a box anew, as it is shown on its photo.

    Raises:
        JournalError: nothing of it lies on the picture, or there is no such box.
    """
    with session.journal.edit(f"Change a cover on “{photo.name}”") as edit:
        session.journal.covers.change(_as_kept(photo, box))
    return edit.changes()


def remove_cover(session: Session, box_id: CoverBoxId) -> Changes:
    """Take a box off its photo."""
    with session.journal.edit("Uncover a place on a photo") as edit:
        session.journal.covers.remove(box_id)
    return edit.changes()


def _as_kept(photo: Photo, box: CoverBox) -> CoverBox:
    if box.photo_id != photo.id:
        raise JournalError("The box belongs to another photo.")
    return turned(check_box(box), -photo.turn)


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
