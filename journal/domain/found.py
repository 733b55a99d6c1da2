"""What a search found."""

from dataclasses import dataclass

from journal.domain.when import When


@dataclass(frozen=True, slots=True)
class Hit:
    """One thing that holds the words.

    ``kind`` is photo, area, panel, entry, receipt, work, finding or wanted. ``snippet``
    is the text round the words, which stand between ‹ and ›.
    """

    kind: str
    id: int
    title: str
    snippet: str
    when: When | None
