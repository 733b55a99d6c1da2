"""The owner's own words for a claim; its evidence and grades are not theirs to change."""

from dataclasses import dataclass

from journal.domain.errors import JournalError
from journal.domain.ids import AreaId

#: The longest sentence an owner may put in a claim's place, in characters.
LONGEST = 2000


@dataclass(frozen=True, slots=True)
class ClaimWords:
    """What the owner says in a claim's place ("" for the program's words), or that it is left out.

    ``claim`` is the claim's key.
    """

    area_id: AreaId
    claim: str
    words: str
    left_out: bool = False


def check_words(words: str) -> None:
    """Refuse a sentence that is no sentence any more.

    Raises:
        JournalError: it is too long.
    """
    if len(words) > LONGEST:
        raise JournalError(
            f"The words have {len(words):,} characters; a claim has room for {LONGEST:,}."
        )
