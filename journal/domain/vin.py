"""Chassis numbers of 17 signs: a hint from the check digit, and never more than a hint.

49 CFR 565 (United States): letters count as in a table, each place has a weight, and the sum over
11 leaves the ninth sign, X for ten. Many makers outside the United States don't use it, and a
match by chance comes once in eleven: nothing is refused here.
"""

from dataclasses import dataclass

#: What each sign counts; I, O and Q are in none of these numbers.
VALUES = {str(digit): digit for digit in range(10)} | {
    **dict(zip("ABCDEFGH", range(1, 9), strict=True)),
    **dict(zip("JKLMN", range(1, 6), strict=True)),
    "P": 7,
    "R": 9,
    **dict(zip("STUVWXYZ", range(2, 10), strict=True)),
}

#: The weight of each place; the ninth is the check digit itself.
WEIGHTS = (8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2)

_PLACE = 8


@dataclass(frozen=True, slots=True)
class VinHint:
    """What the form of a chassis number says: whether its check digit fits, and a sentence."""

    fits: bool
    words: str


def hint(text: str) -> VinHint | None:
    """What can be said of a chassis number by its form; None where it isn't of 17 signs."""
    signs = "".join(sign for sign in text.upper() if sign.isascii() and sign.isalnum())
    if len(signs) != len(WEIGHTS):
        return None
    strange = sorted(set(signs) - set(VALUES))
    if strange:
        named = " and ".join(strange)
        return VinHint(False, f"It has 17 signs, but {named} isn’t used in numbers of that form.")
    expected = check_digit(signs)
    if signs[_PLACE] == expected:
        return VinHint(True, "Its check digit fits (49 CFR 565), as one in eleven would by chance.")
    return VinHint(
        False,
        f"Its check digit is {signs[_PLACE]} and 49 CFR 565 would have {expected}; many makers "
        "outside the United States don’t use it.",
    )


def check_digit(signs: str) -> str:
    """The check digit of 17 signs, whatever stands in its place: "0" to "9" or "X"."""
    rest = weighted_sum(signs) % 11
    return "X" if rest == 10 else str(rest)


def weighted_sum(signs: str) -> int:
    """The sum of values times weights."""
    values = (VALUES.get(sign, 0) for sign in signs.upper())
    return sum(value * weight for value, weight in zip(values, WEIGHTS, strict=True))
