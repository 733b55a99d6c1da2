"""What a check of a journal found."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Fault:
    """One thing that isn't as it should be: where, and what."""

    where: str
    what: str


@dataclass(frozen=True, slots=True)
class CheckReport:
    """The outcome of a check: every fault, and how much was looked at.

    ``loose`` are files that the record doesn't mention (what was undone or removed): no fault.
    """

    faults: tuple[Fault, ...]
    originals: int
    edits: int
    loose: int
