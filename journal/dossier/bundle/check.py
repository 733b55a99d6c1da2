"""Checking a bundle without its journal: the bag, its seals, signature and stamps, its history."""

import io
import json
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from journal.domain.bags import BagRefusedError, algorithm_words
from journal.domain.checks import BundleCheck, ChainFound, Fault, SignatureFound, StampFound
from journal.domain.errors import JournalError
from journal.domain.progress import Context
from journal.dossier.bag_check import Bag, check_bag, tag_file
from journal.dossier.bag_sources import READING_ERRORS, Source, opened
from journal.dossier.bundle import chain, layout, signature, stamps
from journal.dossier.bundle.agreeing import disagreements
from journal.dossier.bundle.seals import judge_seals, read_seals

if TYPE_CHECKING:
    from cryptography.x509 import Certificate

#: Seals are hashed with all else; a bag has no more of them than this.
_MOST_SEALS = 1000
#: No history of a car is larger, in bytes: what it leads to is held in memory.
_MOST_OF_HISTORY = 2 * 1024**3


def check_bundle(
    path: Path,
    context: Context,
    *,
    own_key: str = "",
    authorities: "tuple[Certificate, ...]" = (),
    replies: Sequence[Path] = (),
) -> BundleCheck:
    """Check all of a bundle, or of any bag, where it lies.

    ``own_key`` is the fingerprint of the key on this computer, ``authorities`` are certificates of
    time stamp authorities that the person trusts, ``replies`` are time stamps that lie beside it.

    Raises:
        JournalError: it can't be read, or is no package.
        Cancelled: the person asked to stop.
    """
    form = ""
    try:
        with opened(path) as source:
            form = source.form
            sealing = [name for name in source.files if _is_sealing(name)][:_MOST_SEALS]
            bag = check_bag(source, context, sealing)
            return _judged(path, source, bag, _Trust(own_key, authorities, tuple(replies)))
    except BagRefusedError as error:
        return BundleCheck(_name_of(path), form or _form_of(path), refused=str(error))


class _Trust:
    """What the person brings along to a check."""

    def __init__(
        self, own_key: str, authorities: "tuple[Certificate, ...]", replies: tuple[Path, ...]
    ) -> None:
        self.own_key = own_key
        self.authorities = authorities
        self.replies = replies


def _name_of(path: Path) -> str:
    return path.name or path.resolve().name


def _form_of(path: Path) -> str:
    return "folder" if path.is_dir() else path.suffix.lstrip(".").lower() or "file"


def _is_sealing(name: str) -> bool:
    return name.startswith(("tagmanifest-", "signature/", layout.STAMPS))


def _judged(path: Path, source: Source, bag: Bag, trust: _Trust) -> BundleCheck:
    faults, warnings, notes = list(bag.faults), list(bag.warnings), []
    ours = bag.told(layout.AGENT).startswith(layout.PROGRAM) or layout.SEALS in source.files
    if ours:
        faults += _seals(source, bag)
    elif bag.uncovered:
        few = ", ".join(bag.uncovered[:5])
        notes.append(f"No list has these, so nothing is known of them: {few}.")
    found = _signature(source, trust.own_key, faults)
    stamped = tuple(_stamps(source, trust, faults))
    history = _history(source, bag, faults)
    if ours:
        faults += disagreements(source, bag, found, history)
        if layout.MISSING in source.files:
            notes.append(f"Originals were missing when it was made; {layout.MISSING} names them.")
    if found is None and ours:
        notes.append("It is not signed: whoever could change it could also write its lists anew.")
    return BundleCheck(
        where=_name_of(path),
        form=source.form,
        title=bag.told("Car"),
        made=bag.told("Bagging-Date"),
        by=bag.told(layout.AGENT),
        files=len(source.files),
        size=sum(source.files.values()),
        algorithms=tuple(algorithm_words(one.algorithm) for one in bag.manifests),
        faults=tuple(dict.fromkeys(faults)),
        warnings=tuple(dict.fromkeys(warnings)),
        notes=tuple(notes),
        chain=history,
        signature=found,
        stamps=stamped,
    )


def _seals(source: Source, bag: Bag) -> list[Fault]:
    """What is wrong with the lists themselves, which no list of the bag's own covers."""
    if layout.SEALS not in source.files:
        return [Fault(layout.SEALS, "It is missing.")]
    digests, faults = read_seals(tag_file(source, layout.SEALS))
    found = {
        path: sums["sha256"]
        for path, sums in bag.digests.items()
        if "sha256" in sums and _is_sealing(path)
    }
    uncovered = frozenset(bag.uncovered) | {one.name for one in bag.tag_manifests}
    return faults + list(judge_seals(digests, found, uncovered - {layout.SEALS}))


def _signature(source: Source, own_key: str, faults: list[Fault]) -> SignatureFound | None:
    names = (layout.SIGNATURE, layout.PUBLIC_KEY, layout.SEALED)
    if layout.SIGNATURE not in source.files and layout.PUBLIC_KEY not in source.files:
        return None
    try:
        signed, public, data = (tag_file(source, name) for name in names)
    except BagRefusedError as error:
        faults.append(Fault(layout.SIGNATURE, f"It can't be verified: {error}"))
        return SignatureFound("", good=False)
    try:
        whose = signature.fingerprint(public)
        good = signature.holds(public, signed, data)
    except JournalError as error:
        faults.append(Fault(layout.PUBLIC_KEY, f"The signature can't be verified: {error}"))
        return SignatureFound("", good=False)
    if not good:
        what = (
            f"The signature does not hold: it, {layout.SEALED} or {layout.PUBLIC_KEY} was altered."
        )
        faults.append(Fault(layout.SIGNATURE, what))
    return SignatureFound(whose, good, ours=bool(own_key) and whose == own_key)


def _stamps(source: Source, trust: _Trust, faults: list[Fault]) -> list[StampFound]:
    found: list[StampFound] = []
    if layout.SEALED not in source.files:
        return found
    data = tag_file(source, layout.SEALED)
    inside = [
        name
        for name in sorted(source.files)
        if name.startswith(layout.STAMPS) and name.endswith(".tsr")
    ]
    for name in inside:
        asked = name.removesuffix(".tsr") + ".tsq"
        request = tag_file(source, asked) if asked in source.files else None
        found.append(_verified(name, tag_file(source, name), data, request, trust))
    for path in trust.replies:
        try:
            with path.open("rb") as stream:
                reply = stream.read(stamps.MOST + 1)
        except OSError as error:
            faults.append(Fault(path.name, f"It can't be read ({error.strerror or error})."))
            continue
        found.append(_verified(path.name, reply, data, None, trust))
    faults += [Fault(one.name, " ".join(one.said)) for one in found if not one.good]
    return found


def _verified(
    name: str, reply: bytes, data: bytes, request: bytes | None, trust: _Trust
) -> StampFound:
    try:
        return stamps.verify(name, reply, data, request, trust.authorities)
    except JournalError as error:
        return StampFound(name, None, "", good=False, trusted=False, said=(str(error),))


def _history(source: Source, bag: Bag, faults: list[Fault]) -> ChainFound | None:
    if layout.HISTORY not in source.files:
        return None
    if source.files[layout.HISTORY] > _MOST_OF_HISTORY:
        faults.append(Fault(layout.HISTORY, "It is too large to be a car's history."))
        return None
    try:
        with (
            source.open(layout.HISTORY) as stream,
            io.TextIOWrapper(stream, "utf-8", "surrogateescape", "\n") as lines,
        ):
            found, rows = chain.walk(chain.lines_of(lines))
    except READING_ERRORS as error:
        faults.append(Fault(layout.HISTORY, f"It can't be read to its end ({error})."))
        return None
    if found.broken:
        until = f" The last that holds is {found.good_until}." if found.good_until else ""
        faults.append(Fault(layout.HISTORY, f"It does not hold from {found.broken} on.{until}"))
    faults += _strangers(bag, rows)
    if layout.ROWS in source.files:
        faults += _differences(source, rows)
    return found


def _strangers(bag: Bag, rows: chain.Rows) -> Iterator[Fault]:
    """Originals that the history doesn't know: put in place of others, with the lists made anew."""
    known = chain.originals(rows)
    for path, sums in bag.digests.items():
        if path.startswith("data/originals/") and sums.get("sha256", "") not in known | {""}:
            yield Fault(path, "It is none of the originals that the history names.")


def _differences(source: Source, rows: chain.Rows) -> list[Fault]:
    try:
        record = json.loads(tag_file(source, layout.ROWS))
    except (ValueError, RecursionError, JournalError):
        return [Fault(layout.ROWS, "It is no JSON any more.")]
    return list(chain.differences(layout.ROWS, record, rows))
