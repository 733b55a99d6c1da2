"""Adding photos: files and folders in, originals and records out.

First every file is copied, hashed and looked at, on as many threads as there are cores, and put on
record fifty at a time, each fifty durably. Then the thumbnails are made, the newest first. Whatever
interrupts it, what was called added is there and whole.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from journal.actions.session import Session
from journal.domain.changes import Changes
from journal.domain.errors import ReadOnlyError
from journal.domain.ids import PhotoId
from journal.domain.progress import Context, Silent
from journal.intake.walking import walk


@dataclass(frozen=True, slots=True)
class Added:
    """A file whose photo is in the journal."""

    path: Path
    sha256: str
    photo_id: PhotoId


@dataclass(frozen=True, slots=True)
class NotAdded:
    """A file that is not in the journal, with the reason in half a sentence."""

    path: Path
    reason: str


@dataclass(frozen=True, slots=True)
class AddReport:
    """What became of every file.

    ``added`` are new, ``already`` were there before or came twice, ``skipped`` are no photos and
    nobody would have thought so, ``refused`` could not be added. ``cancelled`` tells that the
    person stopped it.
    """

    added: tuple[Added, ...]
    already: tuple[Added, ...]
    skipped: tuple[NotAdded, ...]
    refused: tuple[NotAdded, ...]
    cancelled: bool
    changes: Changes


def add_photos(
    session: Session, paths: Sequence[Path], context: Context | None = None
) -> AddReport:
    """Add photos, and folders of them, to the journal; one bad file never stops the others.

    ``Cancelled`` is not passed on: what is finished stays, and the report says it was stopped.

    Raises:
        ReadOnlyError: the journal is open for reading only.
    """
    if session.read_only:
        raise ReadOnlyError(f"No photos can be added. {session.notice}")
    # Decoders are large, and the window loads this module before it needs them.
    from journal.actions.adding import Adding

    found = walk(paths)
    adding = Adding(session.journal, context or Silent(), datetime.now())
    adding.take_in(found)
    adding.date_by_neighbours()
    adding.make_thumbnails()
    return AddReport(
        added=tuple(Added(*row) for row in adding.added),
        already=tuple(Added(*row) for row in adding.already),
        skipped=tuple(NotAdded(left.path, left.reason) for left in found.skipped)
        + tuple(NotAdded(*row) for row in adding.skipped),
        refused=tuple(NotAdded(left.path, left.reason) for left in found.refused)
        + tuple(NotAdded(*row) for row in adding.refused),
        cancelled=adding.cancelled,
        changes=Changes("Add photos", adding.kinds, adding.act),
    )
