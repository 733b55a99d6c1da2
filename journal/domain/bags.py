"""Bags (BagIt, RFC 8493) as plain text: what their tag files say, written and read back."""

import codecs
import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from journal.domain.checks import Fault
from journal.domain.errors import JournalError

#: The algorithms a manifest may name that we can work out, strongest first.
ALGORITHMS = ("sha512", "sha384", "sha256", "sha224", "sha1", "md5")
_DIGITS = {"sha512": 128, "sha384": 96, "sha256": 64, "sha224": 56, "sha1": 40, "md5": 32}

_DECLARED = re.compile(r"BagIt-Version: (\d{1,4})\.(\d{1,4})([ \t]*)")
_ENCODED = re.compile(r"Tag-File-Character-Encoding: ([\w.:-]{1,40})([ \t]*)")
_LINE = re.compile(r"([0-9A-Fa-f]+)[ \t]+(\*?)(\S.*)")
_BREAKS = re.compile(r"\r\n|\n|\r")
_UNSHOWN = re.compile(r"[\x00-\x1f\x7f-\x9f\u2028\u2029\u202a-\u202e\u2066-\u2069\ud800-\udfff]")
_LONGEST_SHOWN = 120


class BagRefusedError(JournalError):
    """A bag isn't looked into any further; the message is the reason, one plain sentence."""


@dataclass(frozen=True, slots=True)
class Declaration:
    """What bagit.txt says: the version of BagIt, and how the other tag files are encoded."""

    version: tuple[int, int]
    encoding: str


@dataclass(slots=True)
class Manifest:
    """A list of digests by path, and what is odd about how it is written.

    ``twice`` are paths listed more than once, each with whether the digests agree.
    """

    name: str
    algorithm: str
    digests: dict[str, str] = field(default_factory=dict)
    twice: dict[str, bool] = field(default_factory=dict)
    faults: list[Fault] = field(default_factory=list)
    warnings: list[Fault] = field(default_factory=list)


def shown_path(path: str) -> str:
    """A path from elsewhere as it can be shown: signs that would mislead a reader are marked."""
    text = _UNSHOWN.sub("\ufffd", path)
    return f"“{text[:_LONGEST_SHOWN]}…”" if len(text) > _LONGEST_SHOWN else f"“{text}”"


def algorithm_words(algorithm: str) -> str:
    """An algorithm as people write it: SHA-256, MD5."""
    return algorithm.upper().replace("SHA", "SHA-")


# Written


def declaration_text() -> str:
    """The text of bagit.txt."""
    return "BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n"


def manifest_text(digests: Mapping[str, str]) -> str:
    """A manifest's text: digest, two spaces, path, as ``sha256sum`` writes and reads it."""
    return "".join(f"{digest}  {_encoded(path)}\n" for path, digest in sorted(digests.items()))


def _encoded(path: str) -> str:
    # RFC 8493, section 2.1.3: these and nothing else.
    return path.replace("%", "%25").replace("\n", "%0A").replace("\r", "%0D")


def info_text(pairs: Iterable[tuple[str, str]]) -> str:
    """The text of bag-info.txt, a line a pair, in their order."""
    return "".join(f"{label}: {' '.join(value.split())}\n" for label, value in pairs)


# Read


def read_declaration(data: bytes) -> Declaration:
    """Read bagit.txt.

    Raises:
        BagRefusedError: it isn't as RFC 8493 has it, so nothing else can be relied on.
    """
    if data.startswith(codecs.BOM_UTF8):
        raise BagRefusedError("bagit.txt begins with a byte order mark, which is not allowed.")
    lines = _BREAKS.split(data.decode("utf-8", "replace"))
    if lines and not lines[-1]:
        lines.pop()
    version = _DECLARED.fullmatch(lines[0]) if lines else None
    encoding = _ENCODED.fullmatch(lines[1]) if len(lines) == 2 else None
    if version is None or encoding is None:
        raise BagRefusedError(
            "bagit.txt is not the two lines it must be, “BagIt-Version: 1.0” and "
            "“Tag-File-Character-Encoding: UTF-8”."
        )
    found = (int(version[1]), int(version[2]))
    if found > (1, 0):
        raise BagRefusedError(
            f"bagit.txt says BagIt {found[0]}.{found[1]}, which is not known here."
        )
    try:
        # Bytes that are no text at all decode in codecs that are no encodings.
        b" ".decode(encoding[1])
    except UnicodeError:
        # A space alone is no text in encodings of two bytes a sign.
        pass
    except LookupError as error:
        raise BagRefusedError(
            f"bagit.txt names the encoding “{encoding[1]}”, which is not known here."
        ) from error
    return Declaration(found, encoding[1])


def decoded(data: bytes, encoding: str, name: str) -> str:
    """A tag file's text.

    Raises:
        BagRefusedError: it isn't in the encoding that bagit.txt says.
    """
    try:
        return data.decode(encoding)
    except ValueError as error:
        raise BagRefusedError(f"{name} is not in {encoding}, as bagit.txt says it is.") from error


def read_manifest(name: str, algorithm: str, text: str, version: tuple[int, int]) -> Manifest:
    """Read a manifest or tag manifest; what is wrong with a line is told in the result."""
    manifest = Manifest(name, algorithm)
    if text.startswith("\ufeff"):
        manifest.faults.append(Fault(name, "It begins with a byte order mark."))
        text = text[1:]
    for number, line in enumerate(_BREAKS.split(text), 1):
        if line:
            _read_line(manifest, number, line, version)
    letters = {c for digest in manifest.digests.values() for c in digest if c.isalpha()}
    if any(c.islower() for c in letters) and any(c.isupper() for c in letters):
        manifest.warnings.append(
            Fault(name, "Its digests are in large and small letters; no program writes them so.")
        )
    return manifest


def _read_line(manifest: Manifest, number: int, line: str, version: tuple[int, int]) -> None:
    parts = _LINE.fullmatch(line)
    if parts is None or len(parts[1]) != _DIGITS[manifest.algorithm]:
        what = f"Line {number} is not a digest and a path: {shown_path(line)}."
        manifest.faults.append(Fault(manifest.name, what))
        return
    digest, star, path = parts.groups()
    if star:
        what = f"Line {number} has a “*” before its path, as md5sum writes it."
        manifest.warnings.append(Fault(manifest.name, what))
    if path.startswith("./"):
        path = path[2:]
        what = f"Line {number} begins with “./”, which says nothing."
        manifest.warnings.append(Fault(manifest.name, what))
    path = _plain(path, version)
    if path in manifest.digests:
        same = manifest.digests[path].lower() == digest.lower()
        manifest.twice[path] = manifest.twice.get(path, True) and same
        return
    manifest.digests[path] = digest


def _plain(path: str, version: tuple[int, int]) -> str:
    path = re.sub("%0[Aa]", "\n", path)
    path = re.sub("%0[Dd]", "\r", path)
    return path.replace("%25", "%") if version >= (1, 0) else path


def read_info(text: str) -> tuple[tuple[tuple[str, str], ...], int]:
    """The pairs of bag-info.txt in their order, and how many of its lines are none."""
    pairs: list[tuple[str, str]] = []
    odd = 0
    for line in _BREAKS.split(text.removeprefix("\ufeff")):
        label, colon, value = line.partition(":")
        if line[:1] in (" ", "\t") and pairs:
            pairs[-1] = (pairs[-1][0], f"{pairs[-1][1]} {line.strip()}")
        elif colon and label.strip():
            pairs.append((label.strip(), value.strip()))
        elif line.strip():
            odd += 1
    return tuple(pairs), odd


def read_fetch(text: str) -> tuple[tuple[str, ...], int]:
    """The paths that fetch.txt wants to have fetched, and how many of its lines name none."""
    paths = []
    odd = 0
    for line in _BREAKS.split(text.removeprefix("\ufeff")):
        parts = re.fullmatch(r"(\S+)[ \t]+(\d+|-)[ \t]+(\S.*)", line)
        if parts:
            paths.append(_plain(parts[3], (1, 0)).removeprefix("./"))
        elif line.strip():
            odd += 1
    return tuple(paths), odd
