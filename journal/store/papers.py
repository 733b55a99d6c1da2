"""Papers of receipts on their way among the originals."""

from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from mimetypes import types_map
from pathlib import Path

from journal.domain.errors import JournalError, ReadOnlyError
from journal.domain.ids import Sha256
from journal.files.copying import SourceError, Staged, copy_and_hash
from journal.files.names import safe_suffix, shown_name
from journal.store.journal import Journal
from journal.store.originals import settle


class ArrivedPapers:
    """Files that lie in place as originals and wait to be recorded inside an edit."""

    def __init__(self, journal: Journal, arrived: Sequence[tuple[Staged, str]]) -> None:
        self._journal = journal
        self._arrived = arrived

    def record(self) -> tuple[Sha256, ...]:
        """Put the originals on record; their names, in the order given."""
        for staged, suffix in self._arrived:
            mime = types_map.get(suffix, "application/octet-stream")
            self._journal.receipts.add_paper(Sha256(staged.sha256), suffix, staged.size, mime)
        return tuple(dict.fromkeys(Sha256(staged.sha256) for staged, _ in self._arrived))


@contextmanager
def arriving(journal: Journal, files: Sequence[Path]) -> Iterator[ArrivedPapers]:
    """Copy files among the originals; where they can't be recorded none of them is left there.

    Raises:
        JournalError: a file can't be read, or the journal can't be written to.
    """
    if files and journal.read_only:
        raise ReadOnlyError(f"The papers can't be kept. {journal.notice}")
    staged: list[tuple[Staged, str]] = []
    placed: list[Path] = []
    try:
        for path in files:
            copy = _copied(path, journal.staging)
            staged.append((copy, journal.kept_suffix(copy.sha256, safe_suffix(path.name))))
        placed = settle(journal.folder, [(copy.path, copy.sha256, end) for copy, end in staged])
        yield ArrivedPapers(journal, staged)
    except BaseException:
        journal.withdraw(placed)
        raise
    finally:
        for paper, _ in staged:
            paper.path.unlink(missing_ok=True)


def _copied(path: Path, staging: Path) -> Staged:
    try:
        staged = copy_and_hash(path, staging)
    except SourceError as error:
        raise JournalError(f"“{shown_name(path.name)}” can't be read: {error}.") from error
    except OSError as error:
        raise JournalError(f"The papers can't be kept: {error.strerror or error}.") from error
    if not staged.size:
        staged.path.unlink(missing_ok=True)
        raise JournalError(f"“{shown_name(path.name)}” is empty, 0 bytes; it proves nothing.")
    return staged
