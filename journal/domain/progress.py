"""How long work tells where it is and asks whether to go on, without knowing a window."""

from dataclasses import dataclass
from typing import Protocol


@dataclass(frozen=True, slots=True)
class Progress:
    """How far a job is: ``done`` of ``total`` units (0 when unknown), and what is being done."""

    done: int
    total: int
    label: str


class Context(Protocol):
    """What a job is given: where to report to, and whether to stop."""

    def report(self, done: int, total: int, label: str) -> None:
        """Say how far the job is; cheap enough to call for every item."""

    def checkpoint(self) -> None:
        """Raise ``Cancelled`` when the person has asked to stop; called between whole items."""


class Silent:
    """A context for callers who want neither progress nor a way to stop."""

    def report(self, done: int, total: int, label: str) -> None:
        """Take the report and do nothing with it."""

    def checkpoint(self) -> None:
        """Never ask to stop."""
