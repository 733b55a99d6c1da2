"""Checking a bag by RFC 8493: complete, every digest right, and whatever is wrong named."""

import hashlib
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from journal.domain.bags import (
    ALGORITHMS,
    BagRefusedError,
    Declaration,
    Manifest,
    algorithm_words,
    decoded,
    read_declaration,
    read_fetch,
    read_info,
    read_manifest,
    shown_path,
)
from journal.domain.checks import Fault
from journal.domain.progress import Context
from journal.dossier.bag_sources import READING_ERRORS, Source
from journal.files.ahead import in_order
from journal.files.names import leads_out, one_on_any_disk

#: No list or description in a bag may be larger, in bytes: it is read whole.
MOST_OF_A_TAG_FILE = 256 * 1024 * 1024
_CHUNK = 256 * 1024
_MANIFEST = re.compile(r"(tag)?manifest-([A-Za-z0-9]+)\.txt")
_DATA = "data/"
#: Files that a system leaves about; a bag that lists one and lacks it lacks nothing of its own.
_SYSTEM_FILES = {".ds_store", "thumbs.db", "desktop.ini"}


@dataclass(slots=True)
class Bag:
    """A bag that was read: what it says of itself, and what was found of it.

    ``digests`` are those worked out, by path and algorithm; a file that can't be read has none.
    ``uncovered`` are tag files that no tag manifest lists, ``excused`` how many files a system left
    about that are listed and not there.
    """

    declaration: Declaration
    info: tuple[tuple[str, str], ...] = ()
    manifests: list[Manifest] = field(default_factory=list)
    tag_manifests: list[Manifest] = field(default_factory=list)
    digests: dict[str, dict[str, str]] = field(default_factory=dict)
    uncovered: tuple[str, ...] = ()
    excused: int = 0
    faults: list[Fault] = field(default_factory=list)
    warnings: list[Fault] = field(default_factory=list)

    def told(self, label: str) -> str:
        """What bag-info.txt says under a label, "" where it says nothing."""
        return next((v for name, v in self.info if name.lower() == label.lower()), "")


def check_bag(source: Source, context: Context, also: Sequence[str] = ()) -> Bag:
    """Check all of a bag; ``also`` are files to be hashed though no manifest lists them.

    Raises:
        BagRefusedError: it is no bag, or names files outside itself.
        Cancelled: the person asked to stop.
    """
    bag = Bag(read_declaration(tag_file(source, "bagit.txt")))
    _read_manifests(source, bag)
    _read_fetch(source, bag)
    for path in source.beside:
        bag.faults.append(Fault(path, "It lies beside the bag and belongs to nothing."))
    for one in (*bag.manifests, *bag.tag_manifests):
        bag.faults += one.faults
        bag.warnings += one.warnings
        _judge_twice(bag, one)
    _hash_all(source, bag, also, context)
    _compare(source, bag, bag.manifests)
    _compare(source, bag, bag.tag_manifests)
    _look_for_unlisted(source, bag)
    _read_info(source, bag)
    return bag


def tag_file(source: Source, path: str) -> bytes:
    """The content of a tag file.

    Raises:
        BagRefusedError: it is missing, too large, or can't be read.
    """
    if path not in source.files:
        raise BagRefusedError(f"{shown_path(path)} is missing.")
    if source.files[path] > MOST_OF_A_TAG_FILE:
        raise BagRefusedError(f"{shown_path(path)} is too large to be what its name says.")
    try:
        with source.open(path) as stream:
            return stream.read(MOST_OF_A_TAG_FILE)
    except READING_ERRORS as error:
        raise BagRefusedError(f"{shown_path(path)} can't be read ({_words(error)}).") from error


def _words(error: BaseException) -> str:
    return getattr(error, "strerror", None) or str(error) or type(error).__name__


# What the bag says


def _read_manifests(source: Source, bag: Bag) -> None:
    version, encoding = bag.declaration.version, bag.declaration.encoding
    for path in sorted(source.files):
        named = _MANIFEST.fullmatch(path)
        if named is None:
            continue
        algorithm = named[2].lower()
        if algorithm not in ALGORITHMS:
            bag.warnings.append(Fault(path, "Its algorithm is not known here; it was passed over."))
            continue
        text = decoded(tag_file(source, path), encoding, path)
        manifest = read_manifest(path, algorithm, text, version)
        for listed in list(manifest.digests):
            _refuse_leading_out(path, listed)
            if listed.startswith(_DATA) == bool(named[1]):
                place = "inside" if named[1] else "outside"
                what = f"It lists {shown_path(listed)}, which is {place} data."
                manifest.faults.append(Fault(path, what))
                del manifest.digests[listed]
        (bag.tag_manifests if named[1] else bag.manifests).append(manifest)
    if not bag.manifests:
        raise BagRefusedError("It has no manifest that can be checked.")


def _refuse_leading_out(where: str, path: str) -> None:
    reason = leads_out(path)
    if reason:
        raise BagRefusedError(f"{where} lists {shown_path(path)}: {reason}.")


def _read_fetch(source: Source, bag: Bag) -> None:
    """Nothing is ever fetched: a bag that wants it is refused unless all is there already."""
    if "fetch.txt" not in source.files:
        return
    text = decoded(tag_file(source, "fetch.txt"), bag.declaration.encoding, "fetch.txt")
    paths, odd = read_fetch(text)
    for path in paths:
        _refuse_leading_out("fetch.txt", path)
    wanting = [path for path in paths if path not in source.files]
    if wanting or odd:
        what = shown_path(wanting[0]) if wanting else "something"
        raise BagRefusedError(
            f"It is not whole: fetch.txt wants {what} fetched from a network, which is not done."
        )
    what = "It names places to fetch files from; they are all here, and nothing was fetched."
    bag.warnings.append(Fault("fetch.txt", what))


def _judge_twice(bag: Bag, manifest: Manifest) -> None:
    for path, same in manifest.twice.items():
        said = "the same digest" if same else "two different digests"
        fault = Fault(manifest.name, f"It lists {shown_path(path)} twice, with {said}.")
        # The earlier versions leave it open; version 1.0 says "exactly once".
        allowed = same and bag.declaration.version < (1, 0)
        (bag.warnings if allowed else bag.faults).append(fault)


# What is there


def _hash_all(source: Source, bag: Bag, also: Sequence[str], context: Context) -> None:
    wanted: dict[str, list[str]] = {}
    for manifest in (*bag.manifests, *bag.tag_manifests):
        for path in manifest.digests:
            if path in source.files:
                wanted.setdefault(path, []).append(manifest.algorithm)
    for path in also:
        if path in source.files:
            wanted.setdefault(path, []).append("sha256")
    jobs = list(wanted.items())

    def work(job: tuple[str, list[str]]) -> dict[str, str] | str:
        return hashed(source, *job)

    for done, ((path, _), result) in enumerate(in_order(work, jobs)):
        context.checkpoint()
        context.report(done, len(jobs), "Checking files")
        if isinstance(result, str):
            bag.faults.append(Fault(path, f"It can't be read to its end ({result})."))
        else:
            bag.digests[path] = result


def hashed(source: Source, path: str, algorithms: Sequence[str]) -> dict[str, str] | str:
    """The digests of a file by algorithm, or why it can't be read."""
    totals: dict[str, Any] = {name: hashlib.new(name) for name in dict.fromkeys(algorithms)}
    try:
        with source.open(path) as stream:
            while part := stream.read(_CHUNK):
                for total in totals.values():
                    total.update(part)
    except READING_ERRORS as error:
        return _words(error)
    return {name: total.hexdigest() for name, total in totals.items()}


def _compare(source: Source, bag: Bag, manifests: Sequence[Manifest]) -> None:
    """Name each file that is not as listed, or the list itself where another list stands by it."""
    twins = _twins(source)
    for path in dict.fromkeys(path for one in manifests for path in one.digests):
        listing = [one for one in manifests if path in one.digests]
        if path not in source.files:
            _tell_missing(bag, path, listing, twins)
        elif path in bag.digests:
            _tell_altered(bag, path, listing)


def _twins(source: Source) -> Mapping[str, str]:
    return {one_on_any_disk(path): path for path in source.files}


def _tell_missing(
    bag: Bag, path: str, listing: Sequence[Manifest], twins: Mapping[str, str]
) -> None:
    names = " and ".join(one.name for one in listing)
    names += " say" if len(listing) > 1 else " says"
    twin = twins.get(one_on_any_disk(path))
    if twin is not None and all(
        one.digests.get(twin, "").lower() == one.digests[path].lower() for one in listing
    ):
        what = f"It is listed beside {shown_path(twin)}, which is the same name on some disks."
        bag.warnings.append(Fault(path, what))
    elif path.rpartition("/")[2].lower() in _SYSTEM_FILES:
        bag.excused += path.startswith(_DATA)
        what = f"A file that a system left about: {names} it is there, and it is not."
        bag.warnings.append(Fault(path, what))
    else:
        bag.faults.append(Fault(path, f"It is missing, though {names} it is there."))


def _tell_altered(bag: Bag, path: str, listing: Sequence[Manifest]) -> None:
    found = bag.digests[path]
    wrong = [one for one in listing if one.digests[path].lower() != found[one.algorithm]]
    if not wrong:
        return
    right = [algorithm_words(one.algorithm) for one in listing if one not in wrong]
    if not right:
        names = " and ".join(algorithm_words(one.algorithm) for one in wrong)
        are = "is not the one" if len(wrong) == 1 else "are not those"
        bag.faults.append(Fault(path, f"It was altered: its {names} {are} listed."))
        return
    for one in wrong:
        what = f"Its line for {shown_path(path)} was altered; by {right[0]} the file is whole."
        bag.faults.append(Fault(one.name, what))


def _look_for_unlisted(source: Source, bag: Bag) -> None:
    payload = [path for path in source.files if path.startswith(_DATA)]
    newest = bag.declaration.version >= (1, 0)
    for path in payload:
        lacking = [one.name for one in bag.manifests if path not in one.digests]
        if len(lacking) == len(bag.manifests):
            bag.faults.append(Fault(path, "No manifest lists it; it was put in afterwards."))
        elif lacking and newest:
            bag.faults.append(Fault(path, f"{' and '.join(lacking)} doesn't list it."))
    for tags in bag.tag_manifests:
        # Until version 1.0 a tag manifest might leave a manifest out.
        for path in (one.name for one in bag.manifests if one.name not in tags.digests):
            fault = Fault(tags.name, f"It doesn't list {path}.")
            (bag.faults if newest else bag.warnings).append(fault)
    listed = {path for one in bag.tag_manifests for path in one.digests}
    bag.uncovered = tuple(
        sorted(
            path
            for path in source.files
            if not path.startswith(_DATA) and path not in listed and not _is_tag_manifest(path)
        )
    )


def _is_tag_manifest(path: str) -> bool:
    named = _MANIFEST.fullmatch(path)
    return named is not None and bool(named[1])


def _read_info(source: Source, bag: Bag) -> None:
    if "bag-info.txt" not in source.files:
        return
    try:
        text = decoded(tag_file(source, "bag-info.txt"), bag.declaration.encoding, "bag-info.txt")
    except BagRefusedError as error:
        bag.faults.append(Fault("bag-info.txt", str(error)))
        return
    bag.info, odd = read_info(text)
    if odd:
        bag.warnings.append(Fault("bag-info.txt", f"{odd} of its lines are not label and value."))
    sums = [value for label, value in bag.info if label.lower() == "payload-oxum"]
    if len(sums) > 1:
        bag.warnings.append(Fault("bag-info.txt", "It has Payload-Oxum more than once."))
    sizes = [size for path, size in source.files.items() if path.startswith(_DATA)]
    found = f"{sum(sizes)}.{len(sizes)}"
    if len(sums) == 1 and sums[0] != found:
        what = f"It says {sums[0]} (bytes.files) of data; there are {found}."
        fault = Fault("bag-info.txt", what)
        counted = sums[0].endswith(f".{len(sizes) + bag.excused}")
        (bag.warnings if bag.excused and counted else bag.faults).append(fault)
