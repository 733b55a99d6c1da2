"""Files made of boxes (ISO 14496-12): films, and the HEIF family of pictures.

A box is a length, a four-letter type and content, which may be boxes again. Reading them ourselves
shows what libraries don't say: that the last one runs past the end of a file cut short.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from journal.intake.content import Content

#: No honest file has more boxes side by side.
_MOST = 10_000


@dataclass(frozen=True, slots=True)
class Box:
    """One box: its type, and where its content begins and ends, were it whole."""

    type: bytes
    start: int
    end: int


def boxes(content: Content, start: int = 0, end: int | None = None) -> Iterator[Box]:
    """The boxes between two places, in order; a broken length ends the walk."""
    stop = len(content) if end is None else min(end, len(content))
    for _ in range(_MOST):
        head = content[start : start + 16]
        if start + 8 > stop or len(head) < 8:
            return
        size, header = int.from_bytes(head[:4], "big"), 8
        if size == 1:
            size, header = int.from_bytes(head[8:16], "big"), 16
        elif size == 0:
            size = stop - start
        if size < header:
            return
        yield Box(head[4:8], start + header, start + size)
        start += size


def child(content: Content, parent: Box | None, *path: bytes) -> Box | None:
    """The first box found by following types downwards, None where one is missing."""
    found = parent
    for wanted in path:
        if found is None:
            return None
        inside = boxes(content, found.start, found.end)
        found = next((box for box in inside if box.type == wanted), None)
    return found


def top(content: Content) -> Box:
    """The whole file as if it were a box."""
    return Box(b"", 0, len(content))


def cut_short(content: Content) -> bool:
    """Whether a box at the top runs past the end of the file."""
    reached = 0
    for box in boxes(content):
        reached = box.end
    return reached > len(content)


def number(content: Content, start: int, length: int) -> int:
    """A whole number, high byte first; 0 where the file ends before it."""
    raw = content[start : start + length]
    return int.from_bytes(raw, "big") if len(raw) == length else 0
