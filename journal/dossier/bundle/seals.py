"""The list of what no tag manifest may list: tag manifests themselves, signature, time stamps.

A signature can't lie within what it signs, and RFC 8493 keeps tag manifests out of tag manifests.
So that a changed bit in them is found too, their digests stand in a list of their own.
"""

import hashlib
import re
from collections.abc import Iterator, Mapping

from journal.domain.bags import manifest_text
from journal.domain.checks import Fault
from journal.dossier.bundle.layout import SEALS

_LINE = re.compile(r"([0-9a-f]{64})  (\S.*)")


def seals_text(files: Mapping[str, bytes]) -> str:
    """The list over the files given."""
    return manifest_text({path: hashlib.sha256(data).hexdigest() for path, data in files.items()})


def read_seals(text: bytes) -> tuple[dict[str, str], list[Fault]]:
    """The digests by path, and a fault for each line that is not just as the program writes it."""
    digests: dict[str, str] = {}
    faults = []
    lines = text.decode("utf-8", "replace").split("\n")
    if lines and not lines[-1]:
        lines.pop()
    else:
        faults.append(Fault(SEALS, "It was altered: it doesn't end with a whole line."))
    for number, line in enumerate(lines, 1):
        parts = _LINE.fullmatch(line)
        if parts is None or parts[2] in digests:
            faults.append(Fault(SEALS, f"It was altered: line {number} is not as it was written."))
        else:
            digests[parts[2]] = parts[1]
    return digests, faults


def judge_seals(
    digests: Mapping[str, str], found: Mapping[str, str], uncovered: frozenset[str]
) -> Iterator[Fault]:
    """Name what is not as the seals have it; ``found`` are digests worked out, by path."""
    for path, digest in digests.items():
        if path not in found:
            yield Fault(path, f"It is missing, though {SEALS} says it is there.")
        elif found[path] != digest:
            yield Fault(path, f"It was altered, or its line in {SEALS} was.")
    for path in sorted(uncovered - digests.keys()):
        yield Fault(path, "No list has it; it was put in afterwards.")
