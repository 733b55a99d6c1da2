"""The course of one act of adding photos."""

from dataclasses import dataclass, field
from datetime import datetime
from pathlib import Path
from typing import NoReturn

from journal.actions import labels
from journal.actions.workers import Workers
from journal.domain.arrivals import NewPhoto
from journal.domain.clock import best
from journal.domain.errors import Cancelled, JournalError
from journal.domain.ids import EditId, PhotoId, Sha256
from journal.domain.neighbours import Numbered, counter, from_neighbours
from journal.domain.photos import Kind
from journal.domain.progress import Context
from journal.files.durable import discard
from journal.intake.arriving import Held, NotOne, Ready, Stopped, prepare
from journal.intake.thumbnails import made_thumbnail
from journal.intake.walking import Walk
from journal.store.edits import Edit
from journal.store.journal import Journal
from journal.store.originals import path_of

#: How many photos are put on record at a time: the price of making them durable is shared.
BATCH = 50

#: So many files are made ready ahead of their turn that no worker idles while a batch is flushed.
_AHEAD = 3 * BATCH

#: How many thumbnails are kept at a time.
_THUMBNAIL_BATCH = 24

_Known = tuple[Path, str, PhotoId]


class _CannotGoOn(Exception):  # noqa: N818 - it ends the act in order, it is no fault
    """The journal can't take anything more; the message says why."""


@dataclass(frozen=True, slots=True)
class _Waiting:
    """An added photo without its thumbnail; ``whole`` is a picture with no damage known of."""

    earliest: datetime
    photo_id: PhotoId
    sha256: Sha256
    suffix: str
    whole: bool


@dataclass
class Adding:
    """One act of adding photos, while it goes on.

    Attributes:
        added, already: (path, SHA-256, photo number) of each file.
        skipped, refused: (path, reason) of each file.
        cancelled: whether the person stopped it.
        act, kinds: the act in the change log, None before anything changed, and what it touched.
    """

    journal: Journal
    context: Context
    now: datetime
    act: EditId | None = None
    kinds: frozenset[str] = frozenset()
    added: list[_Known] = field(default_factory=list)
    already: list[_Known] = field(default_factory=list)
    skipped: list[tuple[Path, str]] = field(default_factory=list)
    refused: list[tuple[Path, str]] = field(default_factory=list)
    cancelled: bool = False
    _ended: bool = False
    _batch: list[Ready] = field(default_factory=list)
    _numbered: list[Numbered] = field(default_factory=list)
    _waiting: list[_Waiting] = field(default_factory=list)
    _held: Held = field(default_factory=Held)

    def take_in(self, found: Walk) -> None:
        """Copy, look at and record every file.

        Where the journal's disk takes no more, the rest is refused with that reason.
        """
        sizes, staging = self.journal.sizes(), self.journal.staging

        def work(path: Path) -> Ready | NotOne | Stopped:
            return prepare(
                path,
                staging,
                self.now,
                may_be_known=sizes.__contains__,
                is_known=self._is_known,
                held=self._held,
                named=path in found.named,
            )

        seen = 0
        with Workers(work, found.files, ahead=_AHEAD) as results:
            try:
                for path, result in results:
                    seen += 1
                    self._sort_in(path, result)
                    self.context.report(seen, len(found.files), "Copying")
                    self.context.checkpoint()
                self._record()
            except Cancelled:
                self._stop_orderly()
            except _CannotGoOn as stop:
                self._ended = True
                self.refused += [(path, str(stop)) for path in found.files[seen:]]
            finally:
                for result in results.rest():
                    _drop(result)
                for result in self._batch:
                    _drop(result)

    def _is_known(self, sha256: str) -> bool:
        # Where the original went missing since, the file at hand is wanted to put it back.
        shown = not all(removed for _, removed in self._on_record([sha256]).values())
        return shown and self.journal.has_original(sha256)

    def _on_record(self, sha256s: list[str]) -> dict[str, tuple[PhotoId, bool]]:
        return self.journal.photos.by_sha256(sha256s)

    def _stop_orderly(self) -> None:
        """Keep what is whole already when the person asks to stop."""
        self.cancelled = True
        try:
            self._record()
        except _CannotGoOn:
            self._ended = True

    def _sort_in(self, path: Path, result: Ready | NotOne | Stopped) -> None:
        if isinstance(result, Ready):
            self._batch.append(result)
            if len(self._batch) >= BATCH:
                self._record()
        elif isinstance(result, NotOne):
            (self.refused if result.expected else self.skipped).append((path, result.reason))
        else:
            self.refused.append((path, result.reason))
            self._record()
            raise _CannotGoOn(result.reason)

    def _record(self) -> None:
        """Put what is ready durably on record; only then is it added."""
        batch, self._batch = self._batch, []
        known = self._on_record([one.sha256 for one in batch])
        new: dict[str, Ready] = {}
        again: list[Ready] = []
        for one in batch:
            if one.sha256 in known or one.sha256 in new:
                again.append(one)
            else:
                new[one.sha256] = one
        try:
            self._put_back(again, known)
        except JournalError as error:
            self._give_up(batch, error)
        back = [number for number, removed in known.values() if removed]
        numbers = {sha256: number for sha256, (number, _) in known.items()}
        if new or back:
            numbers |= self._write(list(new.values()), again, back)
        self.added += [(one.path, one.sha256, numbers[one.sha256]) for one in new.values()]
        self.already += [(one.path, one.sha256, numbers[one.sha256]) for one in again]

    def _put_back(self, again: list[Ready], known: dict[str, tuple[PhotoId, bool]]) -> None:
        """Use copies of what is on record where its original is missing; drop all copies."""
        for one in again:
            if one.staged and one.sha256 in known:
                self.journal.put_back(one.staged, one.sha256)
            _drop(one)

    def _write(
        self, new: list[Ready], again: list[Ready], back: list[PhotoId]
    ) -> dict[str, PhotoId]:
        """Settle and record new photos, and bring removed ones back; their numbers by SHA-256."""
        photos = [one.arrival.photo for one in new if one.arrival]
        label = f"Add {labels.photos(photos)}" if photos else f"Bring back {labels.photos(back)}"
        placed: list[Path] = []
        try:
            files = zip((one.staged for one in new), photos, strict=True)
            placed = self.journal.settle([(staged, photo) for staged, photo in files if staged])
            with self.journal.edit(label, self.act) as edit:
                ids = self.journal.photos.add(photos)
                for photo_id in back:
                    self.journal.photos.set_removed(photo_id, removed=False)
        except JournalError as error:
            self.journal.withdraw(placed)
            self._give_up([*new, *again], error)
        self._note(edit)
        self._remember(new, photos, ids)
        return {photo.sha256: number for photo, number in zip(photos, ids, strict=True)}

    def _give_up(self, batch: list[Ready], error: JournalError) -> NoReturn:
        """Refuse a batch that could not be put on record, and end the act."""
        for one in batch:
            _drop(one)
        reason = str(error).rstrip(".")
        self.refused += [(one.path, reason) for one in batch]
        raise _CannotGoOn(reason) from error

    def _note(self, edit: Edit) -> None:
        self.act = self.act or edit.act
        self.kinds |= edit.kinds

    def _remember(self, new: list[Ready], photos: list[NewPhoto], ids: list[PhotoId]) -> None:
        """What the later steps need of the photos just recorded, and their rough thumbnails."""
        rough = []
        for one, photo, number in zip(new, photos, ids, strict=True):
            earliest = photo.when.earliest if photo.when else datetime.min
            whole = photo.kind is Kind.PICTURE and not photo.damage
            self._waiting.append(_Waiting(earliest, number, photo.sha256, photo.suffix, whole))
            if one.arrival and one.arrival.rough_thumbnail:
                rough.append((photo.sha256, one.arrival.rough_thumbnail, True))
            if counted := counter(photo.name):
                self._numbered.append(_numbered(one.path, photo, number, *counted))
        self.journal.previews.put_many(rough)

    def date_by_neighbours(self) -> None:
        """Date undated photos by the numbers of their neighbours, as part of the same act."""
        found = {} if self._ended else from_neighbours(self._numbered)
        if not found:
            return
        store = self.journal.photos
        label = f"Date {labels.photos(list(found))} by neighbours"
        with self.journal.edit(label, self.act) as edit:
            for number, candidate in found.items():
                candidates = (*store.candidates(number), candidate)
                chosen = best(candidates) or candidate
                store.set_candidates(number, candidates)
                store.set_when(number, chosen.when, chosen.basis, chosen.offset)
        self._note(edit)

    def make_thumbnails(self) -> None:
        """Make the thumbnails of what was added, the newest first; stopping loses nothing."""
        if self._ended or self.cancelled:
            return
        order = sorted(self._waiting, key=lambda one: one.earliest, reverse=True)
        damaged: dict[PhotoId, str] = {}
        ready: list[tuple[str, bytes, bool]] = []
        with Workers(self._thumbnail, order, ahead=8) as results:
            try:
                for done, (one, (jpeg, reason)) in enumerate(results, 1):
                    if jpeg:
                        ready.append((one.sha256, jpeg, False))
                    elif one.whole and reason:
                        damaged[one.photo_id] = reason
                    if len(ready) >= _THUMBNAIL_BATCH:
                        self.journal.previews.put_many(ready)
                        ready.clear()
                    self.context.report(done, len(order), "Making thumbnails")
                    self.context.checkpoint()
            except Cancelled:
                self.cancelled = True
        self.journal.previews.put_many(ready)
        self._note_damage(damaged)

    def _thumbnail(self, one: _Waiting) -> tuple[bytes | None, str]:
        original = path_of(self.journal.folder, one.sha256, one.suffix)
        return made_thumbnail(self._held.take(one.sha256) or original)

    def _note_damage(self, damaged: dict[PhotoId, str]) -> None:
        """Record what only decoding could show."""
        if not damaged:
            return
        label = f"Note damage in {labels.photos(list(damaged))}"
        with self.journal.edit(label, self.act) as edit:
            for number, reason in damaged.items():
                self.journal.photos.set_damage(number, reason)
        self._note(edit)


def _numbered(path: Path, photo: NewPhoto, number: PhotoId, prefix: str, count: int) -> Numbered:
    camera = "|".join((photo.make, photo.model, photo.serial)).strip("|")
    group = f"{path.parent}/{prefix}"
    return Numbered(number, photo.name, group, count, camera, photo.when, photo.basis)


def _drop(result: Ready | NotOne | Stopped) -> None:
    """Remove the copy of a file that won't be put on record."""
    if isinstance(result, Ready) and result.staged:
        discard(result.staged)
