"""restoration-journal private: what is withheld from a dossier, in words and on photos."""

from pathlib import Path

import click

from journal.actions import covers, privacy
from journal.actions.journals import open_journal
from journal.actions.session import Session
from journal.actions.timeline import find_photo
from journal.cli.options import journal_argument, json_option
from journal.cli.output import answer, put, tell
from journal.domain.errors import JournalError
from journal.domain.private_words import LISTED, Private

_KINDS = click.Choice([kind.value for kind in LISTED])


@click.command("private")
@journal_argument
@click.argument("words", required=False)
@click.option("--as", "kind", type=_KINDS, help="What the words are, or what a cover hides.")
@click.option("--remove", is_flag=True, help="Take the words off the list.")
@click.option("--cover", "photo", help="Cover a place on this photo (number, name or SHA-256).")
@click.option("--at", help="X,Y,WIDTH,HEIGHT of the place, 0 to 1 of the picture as it is shown.")
@click.option("--uncover", type=int, help="Take a cover off, by its number.")
@json_option
def command(
    journal: Path,
    words: str | None,
    kind: str | None,
    remove: bool,
    photo: str | None,
    at: str | None,
    uncover: int | None,
    as_json: bool,
) -> None:
    """Read what can be withheld from what leaves the house, or list WORDS to be found.

    Names of people and suppliers and the car's numbers are found without being listed. A cover is
    burnt into the copies and never into the original.

    With --json: an object with words (id, words, kind), found (kind to words that follow from the
    record) and covers (id, photo, x, y, width, height, hides).
    """
    changing = words is not None or photo is not None or uncover is not None
    with open_journal(journal, read_only=not changing) as session:
        if words is not None:
            _words(session, words, kind, remove=remove)
        if photo is not None:
            _cover(session, photo, at, kind)
        if uncover is not None:
            box = next((b for b in covers.all_covers(session) if b.id == uncover), None)
            if box is None:
                raise JournalError(f"There is no cover number {uncover}.")
            covers.remove_cover(session, box.id)
        if as_json or not changing:
            _show(session, as_json=as_json)


def _words(session: Session, words: str, kind: str | None, *, remove: bool) -> None:
    if not remove:
        if kind is None:
            raise JournalError(f"Say what “{words}” is with --as.")
        tell(privacy.add_private_word(session, words, Private(kind)).label + ".")
        return
    found = [row for row in privacy.private_words(session) if row.words == words]
    if not found:
        raise JournalError(f"“{words}” isn't listed.")
    privacy.remove_private_word(session, found[0].id)
    tell(f"“{words}” is off the list.")


def _cover(session: Session, text: str, at: str | None, kind: str | None) -> None:
    try:
        x, y, width, height = (float(part) for part in (at or "").split(","))
    except ValueError as error:
        raise JournalError("A cover needs --at X,Y,WIDTH,HEIGHT, each from 0 to 1.") from error
    hides = Private(kind) if kind else Private.OTHER
    shown = find_photo(session, text)
    tell(covers.add_cover(session, shown, (x, y, width, height), hides).label + ".")


def _show(session: Session, *, as_json: bool) -> None:
    listed = privacy.private_words(session)
    found = privacy.known_private_words(session)
    boxes = covers.all_covers(session)
    if as_json:
        answer(
            {
                "words": [{"id": w.id, "words": w.words, "kind": w.kind.value} for w in listed],
                "found": {kind.value: list(words) for kind, words in found.items()},
                "covers": [
                    {
                        "id": box.id,
                        "photo": box.photo_id,
                        "x": box.x,
                        "y": box.y,
                        "width": box.width,
                        "height": box.height,
                        "hides": box.hides.value,
                    }
                    for box in boxes
                ],
            }
        )
        return
    for kind in LISTED:
        own = [word.words for word in listed if word.kind is kind]
        words = [*found.get(kind, ()), *own]
        put(f"{kind.value[0].upper()}{kind.value[1:]}: {'; '.join(words) or 'nothing'}")
    photos = len({box.photo_id for box in boxes})
    put(f"Covers: {len(boxes)} on {photos} {'photo' if photos == 1 else 'photos'}")
