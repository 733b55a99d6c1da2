"""Time stamps on bundles: the request the owner takes to an authority, and the reply brought back.

The program goes nowhere itself. A reply goes into a bundle that is a folder, and beside one that
is packed; the journal keeps both request and reply.
"""

import hashlib
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

from journal.actions.session import Session
from journal.domain.changes import Changes
from journal.domain.checks import StampFound
from journal.domain.errors import JournalError, ReadOnlyError
from journal.dossier.bag_check import tag_file
from journal.dossier.bag_sources import opened
from journal.dossier.bundle import layout, stamps
from journal.dossier.bundle.seals import read_seals, seals_text
from journal.files.durable import make_folder, sync_folder, write_atomically
from journal.store.folder import refuse_own_place
from journal.store.stamps import Stamp


@dataclass(frozen=True, slots=True)
class Asked:
    """A request that was written: where, and what was recorded."""

    path: Path
    sha256: str
    changes: Changes


@dataclass(frozen=True, slots=True)
class Stamped:
    """A reply that was verified and kept: what was found, where it lies, what was recorded."""

    found: StampFound
    path: Path
    changes: Changes


def ask_for_stamp(session: Session, bundle: Path, out: Path) -> Asked:
    """Write a request for a time stamp over all of a bundle to ``out``.

    Raises:
        JournalError: it is no bundle of ours, or ``out`` is taken or can't be written.
    """
    _refuse_read_only(session)
    data = sealed_list(bundle)
    refuse_own_place(session.folder, out)
    if out.exists():
        raise JournalError(f"“{out}” exists already; choose another name.")
    request = stamps.new_request(data)
    try:
        write_atomically(out, request)
    except OSError as error:
        raise JournalError(f"The request can't be written to “{out}”: {_why(error)}.") from error
    sha256 = hashlib.sha256(data).hexdigest()
    with session.journal.edit(f"Ask for a time stamp on “{bundle.name}”") as edit:
        made = session.journal.stamps.ask(sha256, bundle.name, datetime.now(UTC), request)
    return Asked(out, sha256, edit.changes(made))


def bring_stamp(
    session: Session, bundle: Path, reply: Path, authorities: Sequence[Path] = ()
) -> Stamped:
    """Verify an authority's reply and keep it, in the bundle or beside it, and in the journal.

    Raises:
        JournalError: the reply is not for this bundle or its request, or does not hold; or it
            can't be kept.
    """
    _refuse_read_only(session)
    data = sealed_list(bundle)
    answer = _read(reply)
    trusted = tuple(one for path in authorities for one in stamps.read_certificates(_read(path)))
    asked = session.journal.stamps.of(hashlib.sha256(data).hexdigest())
    if not asked:
        raise JournalError(f"No time stamp was asked for “{bundle.name}” from this journal.")
    tried = [(stamp, _verify(stamp, reply.name, answer, data, trusted)) for stamp in asked]
    stamp, found = next((pair for pair in tried if pair[1].good), tried[-1])
    if not found.good or found.made is None:
        raise JournalError(f"“{reply.name}” is refused. {' '.join(found.said)}")
    try:
        kept = _keep(bundle, stamp, answer)
    except OSError as error:
        raise JournalError(f"The time stamp can't be kept: {_why(error)}.") from error
    with session.journal.edit(f"Keep the time stamp on “{bundle.name}”") as edit:
        session.journal.stamps.answer(stamp.id, answer, found.made)
    return Stamped(found, kept, edit.changes(stamp.id))


def sealed_list(bundle: Path) -> bytes:
    """What is stamped and signed in a bundle: its list of lists.

    Raises:
        JournalError: it is no bundle, or has none.
    """
    with opened(bundle) as source:
        return tag_file(source, layout.SEALED)


def replies_beside(bundle: Path) -> tuple[Path, ...]:
    """The replies that lie beside a packed bundle, under its name."""
    if bundle.is_dir():
        return ()
    found = bundle.parent.glob("*.tsr")
    return tuple(
        sorted(path for path in found if path.name.startswith(bundle.name + ".") and path.is_file())
    )


def _verify(
    stamp: Stamp, name: str, answer: bytes, data: bytes, trusted: tuple[object, ...]
) -> StampFound:
    return stamps.verify(name, answer, data, stamp.request, trusted)  # type: ignore[arg-type]


def _keep(bundle: Path, stamp: Stamp, answer: bytes) -> Path:
    if not bundle.is_dir():
        number = 1
        while (path := bundle.with_name(f"{bundle.name}.{number}.tsr")).exists():
            number += 1
        write_atomically(path, answer)
        return path
    number = 1
    while (bundle / layout.stamp_path(number, ".tsr")).exists():
        number += 1
    parts = {
        layout.stamp_path(number, ".tsq"): stamp.request,
        layout.stamp_path(number, ".tsr"): answer,
    }
    make_folder(bundle / layout.STAMPS)
    for inside, data in parts.items():
        write_atomically(bundle / inside, data)
    sync_folder(bundle)
    _seal(bundle, parts)
    return bundle / layout.stamp_path(number, ".tsr")


def _seal(bundle: Path, parts: dict[str, bytes]) -> None:
    """Put what came in on the list of seals; what stood on it stays as it was."""
    digests, _ = read_seals((bundle / layout.SEALS).read_bytes())
    added = seals_text(parts)
    kept = "".join(f"{digest}  {path}\n" for path, digest in digests.items() if path not in parts)
    write_atomically(bundle / layout.SEALS, (kept + added).encode())


def _refuse_read_only(session: Session) -> None:
    if session.read_only:
        raise ReadOnlyError(f"A time stamp can't be kept. {session.notice}")


def _read(path: Path) -> bytes:
    try:
        with path.open("rb") as stream:
            return stream.read(stamps.MOST + 1)
    except OSError as error:
        raise JournalError(f"“{path}” can't be read: {_why(error)}.") from error


def _why(error: OSError) -> str:
    return error.strerror or str(error)
