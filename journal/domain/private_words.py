"""What an owner may withhold, and the words and numbers by which it is found in texts."""

from dataclasses import dataclass
from enum import StrEnum

from journal.domain.errors import JournalError
from journal.domain.ids import PrivateWordId

#: The longest words that are looked for, in characters.
LONGEST = 200


class Private(StrEnum):
    """One sort of thing that can be kept out of what leaves the house."""

    PRICES = "prices"
    SUPPLIERS = "suppliers"
    PEOPLE = "people"
    ADDRESSES = "addresses"
    PLATE = "number plate"
    CHASSIS = "chassis and engine number"
    OTHER = "other words"


#: Sorts that the owner lists words of; prices are found by themselves.
LISTED = tuple(sort for sort in Private if sort is not Private.PRICES)


@dataclass(frozen=True, slots=True)
class PrivateWord:
    """Words that are of one sort of private thing, as the owner typed them."""

    id: PrivateWordId
    words: str
    kind: Private


def check_private_word(words: str, kind: Private) -> None:
    """Refuse words that would blot out whole texts, or that can't be looked for.

    Raises:
        JournalError: naming what is wrong.
    """
    if kind is Private.PRICES:
        raise JournalError("Prices are found by themselves; there are no words to list for them.")
    signs = sum(sign.isalnum() for sign in words)
    if signs < 2:
        raise JournalError("Words to withhold need two letters or digits at least.")
    if len(words) > LONGEST:
        raise JournalError(f"Words to withhold have room for {LONGEST} characters.")
