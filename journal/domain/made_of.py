"""What a figure of the ledger is made of: lines of receipts and days of work, piece by piece."""

from dataclasses import dataclass
from typing import Literal

from journal.domain.ids import AreaId, LineId, ReceiptId, WorkId
from journal.domain.when import When

#: The figures that can be opened, besides the rows of the tables.
FigureName = Literal[
    "money", "restoration", "upkeep", "proven", "unproven", "not shared", "difference",
    "saved", "saved on", "hours", "restoration hours", "upkeep hours", "not shared hours",
]  # fmt: skip
FIGURES: tuple[FigureName, ...] = (
    "money", "restoration", "upkeep", "proven", "unproven", "not shared", "difference",
    "saved", "saved on", "hours", "restoration hours", "upkeep hours", "not shared hours",
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class MoneyPiece:
    """A part of a figure that one line of a receipt accounts for.

    ``line_id`` is None for the piece by which a printed total differs from its lines. ``money`` is
    in minor units of the journal's currency: the part of the line that lies in the figure, or for
    the figure "saved" what was saved on it. ``area_id`` is where that part went, None for nowhere.
    """

    receipt_id: ReceiptId
    line_id: LineId | None
    when: When
    supplier: str
    text: str
    money: int
    area_id: AreaId | None
    upkeep: bool
    unproven: bool


@dataclass(frozen=True, slots=True)
class TimePiece:
    """A part of a figure that one day's work accounts for, in whole minutes."""

    work_id: WorkId
    when: When
    person: str
    note: str
    minutes: int
    area_id: AreaId | None
    upkeep: bool


@dataclass(frozen=True, slots=True)
class MadeOf:
    """What a figure is made of, in order of date; the pieces add up to the figure exactly."""

    money: tuple[MoneyPiece, ...]
    time: tuple[TimePiece, ...]

    @property
    def total(self) -> int:
        """What the pieces of money come to."""
        return sum(piece.money for piece in self.money)

    @property
    def minutes(self) -> int:
        """What the pieces of time come to."""
        return sum(piece.minutes for piece in self.time)
