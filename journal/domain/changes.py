"""What a change changed, so that whoever shows it knows what to read again."""

from dataclasses import dataclass

from journal.domain.ids import EditId


@dataclass(frozen=True, slots=True)
class Changes:
    """The outcome of one edit.

    ``kinds`` are the kinds of record touched ("photos", "pins", "areas", "receipts", "work",
    "entries", "milestones", "car", "drawing", "cameras"). ``made`` is the number of the record
    that the edit made, where it made one. ``edit_id`` is None where nothing needed changing.
    """

    label: str
    kinds: frozenset[str]
    edit_id: EditId | None = None
    made: int | None = None
