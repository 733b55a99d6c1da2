"""One open journal folder."""

import sqlite3
import threading
from collections.abc import Iterable, Iterator, Sequence
from contextlib import contextmanager, suppress
from datetime import UTC, datetime
from functools import cached_property
from pathlib import Path
from types import TracebackType
from typing import TYPE_CHECKING, Self

from journal.domain.errors import JournalError, ReadOnlyError, UndoRefusedError
from journal.domain.ids import EditId
from journal.store import edits, originals
from journal.store.areas import Areas
from journal.store.car import CarStore
from journal.store.connection import DATABASE_NAME, PerThread, connect, plain_errors
from journal.store.drawing import DrawingStore
from journal.store.edits import Edit
from journal.store.lock import Lock
from journal.store.previews import Previews

if TYPE_CHECKING:
    from journal.domain.arrivals import NewPhoto
    from journal.store.claims import Claims
    from journal.store.clockings import Clockings
    from journal.store.covers import Covers
    from journal.store.dossier_cuts import DossierCuts
    from journal.store.imported_rows import ImportedRows
    from journal.store.metalwork import Metalwork
    from journal.store.pairs import Pairs
    from journal.store.people import People
    from journal.store.photo_spans import PhotoSpans
    from journal.store.photos import Photos
    from journal.store.pins import Pins
    from journal.store.price_indices import PriceIndices
    from journal.store.readings import Readings
    from journal.store.receipts import Receipts
    from journal.store.search import Search
    from journal.store.stamps import Stamps
    from journal.store.surveys import Surveys
    from journal.store.underlays import Underlays
    from journal.store.valuations import Valuations
    from journal.store.wanted import WantedStore
    from journal.store.work import WorkStore


class Journal:
    """One journal folder, open.

    Every thread that touches it gets a database connection of its own. Reading needs nothing
    more; writing happens inside ``edit``, one at a time.

    Attributes:
        folder: the journal's folder.
        read_only: whether it is open for reading alone.
        notice: why it is read-only, in words for the person; "" otherwise.
        photos, pins, drawing, underlays, metalwork, readings, areas, receipts, work, car, search,
            previews: the subjects.
    """

    def __init__(self, folder: Path, lock: Lock | None, notice: str) -> None:
        self.folder = folder
        self.notice = notice
        self.read_only = lock is None
        self._lock = lock
        self._connections = PerThread(
            lambda: connect(folder / DATABASE_NAME, read_only=self.read_only)
        )
        self._writing = threading.Lock()
        self.car = CarStore(self)
        self.drawing = DrawingStore(self)
        self.areas = Areas(self)
        self.previews = Previews(folder, read_only=self.read_only)

    # What follows is loaded on first use: a journal opens sooner without it.

    @cached_property
    def photos(self) -> "Photos":
        """The photos and cameras."""
        from journal.store.photos import Photos

        return Photos(self)

    @cached_property
    def metalwork(self) -> "Metalwork":
        """Seams, patches and anchor points."""
        from journal.store.metalwork import Metalwork

        return Metalwork(self)

    @cached_property
    def readings(self) -> "Readings":
        """Measures and the readings taken at them."""
        from journal.store.readings import Readings

        return Readings(self)

    @cached_property
    def underlays(self) -> "Underlays":
        """Pictures laid under the views."""
        from journal.store.underlays import Underlays

        return Underlays(self)

    @cached_property
    def pins(self) -> "Pins":
        """The photos' places on the drawing."""
        from journal.store.pins import Pins

        return Pins(self)

    @cached_property
    def receipts(self) -> "Receipts":
        """The receipts with their lines and papers."""
        from journal.store.receipts import Receipts

        return Receipts(self)

    @cached_property
    def work(self) -> "WorkStore":
        """The hours."""
        from journal.store.work import WorkStore

        return WorkStore(self)

    @cached_property
    def wanted(self) -> "WantedStore":
        """The parts still wanted, where they were seen and how far they have come."""
        from journal.store.wanted import WantedStore

        return WantedStore(self)

    @cached_property
    def people(self) -> "People":
        """Who works on the car."""
        from journal.store.people import People

        return People(self)

    @cached_property
    def clockings(self) -> "Clockings":
        """The clock's runs."""
        from journal.store.clockings import Clockings

        return Clockings(self)

    @cached_property
    def photo_spans(self) -> "PhotoSpans":
        """Hours taken from photos."""
        from journal.store.photo_spans import PhotoSpans

        return PhotoSpans(self)

    @cached_property
    def surveys(self) -> "Surveys":
        """The surveys with their findings."""
        from journal.store.surveys import Surveys

        return Surveys(self)

    @cached_property
    def claims(self) -> "Claims":
        """The owner's own words for claims."""
        from journal.store.claims import Claims

        return Claims(self)

    @cached_property
    def covers(self) -> "Covers":
        """The boxes that cover something on photos."""
        from journal.store.covers import Covers

        return Covers(self)

    @cached_property
    def pairs(self) -> "Pairs":
        """The photos laid over each other."""
        from journal.store.pairs import Pairs

        return Pairs(self)

    @cached_property
    def cuts(self) -> "DossierCuts":
        """The choices for each cut of the dossier."""
        from journal.store.dossier_cuts import DossierCuts

        return DossierCuts(self)

    @cached_property
    def imported_rows(self) -> "ImportedRows":
        """The rows of spreadsheets that were brought in."""
        from journal.store.imported_rows import ImportedRows

        return ImportedRows(self)

    @cached_property
    def stamps(self) -> "Stamps":
        """The time stamps asked for and brought back."""
        from journal.store.stamps import Stamps

        return Stamps(self)

    @cached_property
    def search(self) -> "Search":
        """The word index."""
        from journal.store.search import Search

        return Search(self)

    @cached_property
    def price_indices(self) -> "PriceIndices":
        """The price indices."""
        from journal.store.price_indices import PriceIndices

        return PriceIndices(self)

    @cached_property
    def valuations(self) -> "Valuations":
        """Valuations and comparable cars."""
        from journal.store.valuations import Valuations

        return Valuations(self)

    @property
    def db(self) -> sqlite3.Connection:
        """The calling thread's connection."""
        return self._connections.get()

    @property
    def staging(self) -> Path:
        """Where arriving files lie under temporary names, on the journal's own file system."""
        return originals.staging(self.folder)

    @contextmanager
    def edit(self, label: str, act: EditId | None = None) -> Iterator[Edit]:
        """Open a labelled edit; all its changes are kept, or none.

        Args:
            label: what the person did, as the undo menu names it.
            act: the number of an earlier edit of the same act, to be undone together.

        Raises:
            ReadOnlyError: the journal is open for reading only.
            JournalError: the database could not be written.
        """
        with self._transaction(label, act, "do", None) as edit:
            yield edit

    @contextmanager
    def _transaction(
        self, label: str, act: EditId | None, kind: str, target: int | None
    ) -> Iterator[Edit]:
        label = edits.as_label(label)
        if self.read_only:
            raise ReadOnlyError(f"{label}: the journal is open for reading only. {self.notice}")
        with self._writing, plain_errors(label):
            db = self.db
            db.execute("BEGIN IMMEDIATE")
            try:
                edit = edits.begin(db, label, datetime.now(UTC), act, kind, target)
                yield edit
                edits.finish(db, edit)
                db.execute("ROLLBACK" if edit.empty else "COMMIT")
            except BaseException:
                with suppress(sqlite3.Error):
                    db.rollback()
                raise

    def undo(self) -> Edit:
        """Take back the latest act that still stands.

        Raises:
            JournalError: there is none.
            UndoRefusedError: a row it touched has changed since.
        """
        target = edits.undo_target(self.db)
        if target is None:
            raise JournalError("There is nothing to undo.")
        act, label = target
        found = self.db.execute(
            "SELECT id FROM edits WHERE act = ? AND kind = 'do'", (act,)
        ).fetchall()
        return self._revert(f"Undo: {label}", "undo", act, [i for (i,) in found])

    def redo(self) -> Edit:
        """Do again what was undone last.

        Raises:
            JournalError: there is nothing, or something else was done since.
        """
        target = edits.redo_target(self.db)
        if target is None:
            raise JournalError("There is nothing to redo.")
        act, undoing, label = target
        return self._revert(f"Redo: {label}", "redo", act, [undoing])

    def _revert(self, label: str, kind: str, act: EditId, ids: Sequence[int]) -> Edit:
        try:
            with self._transaction(label, None, kind, act) as edit:
                edits.revert(self.db, ids)
                missing = originals.missing_of(self, edit.id)
                if missing:
                    raise UndoRefusedError(
                        f"{label}: the original “{missing.name}” is not in its place; "
                        "take it back from the trash first."
                    )
        except JournalError as error:
            if isinstance(error.__cause__, sqlite3.IntegrityError):
                raise UndoRefusedError(
                    f"{label}: something recorded since depends on it."
                ) from error
            raise
        return edit

    def undo_label(self) -> str | None:
        """What undo would take back."""
        target = None if self.read_only else edits.undo_target(self.db)
        return target[1] if target else None

    def redo_label(self) -> str | None:
        """What redo would do again."""
        target = None if self.read_only else edits.redo_target(self.db)
        return target[2] if target else None

    def last_edit(self) -> int:
        """The number of the latest edit: what was read under it holds until there is another."""
        return edits.last(self.db)

    def kinds_since(self, edit_id: int) -> frozenset[str]:
        """The kinds of record that were touched after an edit."""
        return edits.kinds_since(self.db, edit_id)

    def known(self, sha256s: Iterable[str]) -> set[str]:
        """Those of some originals that the journal holds already."""
        return originals.known(self.db, sha256s)

    def settle(self, staged: "Sequence[tuple[Path, NewPhoto]]") -> list[Path]:
        """Put staged files durably in their places, before they are recorded; those put anew.

        Raises:
            JournalError: the disk is full or the folder can't be written to.
        """
        files = [(p, new.sha256, self.kept_suffix(new.sha256, new.suffix)) for p, new in staged]
        return originals.settle(self.folder, files)

    def put_back(self, staged: Path, sha256: str) -> None:
        """Put a recorded original in its place again where it is missing or not whole.

        Raises:
            JournalError: the disk is full or the folder can't be written to.
        """
        originals.settle(self.folder, [(staged, sha256, self.kept_suffix(sha256, ""))])

    def kept_suffix(self, sha256: str, otherwise: str) -> str:
        """The extension that an original is kept with, or will be where it isn't on record yet."""
        found = originals.suffix_of(self.db, sha256)
        return otherwise if found is None else found

    def has_original(self, sha256: str) -> bool:
        """Whether an original is on record and in its place."""
        return originals.in_place(self, sha256)

    def withdraw(self, placed: Iterable[Path]) -> None:
        """Take what ``settle`` put in place out again, where it could not be recorded after all."""
        originals.withdraw(self.db, placed)

    def sizes(self) -> set[int]:
        """The sizes of the originals, so that a file of another size is known to be new."""
        return originals.sizes(self.db)

    def close(self) -> None:
        """Wait for an edit in hand, close, and give back the lock; harmless a second time."""
        with self._writing:
            self._connections.close()
        self.previews.close()
        if self._lock:
            self._lock.release()
            self._lock = None

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self.close()
