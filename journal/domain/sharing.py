"""Sharing a whole number out so that the parts add up to it exactly."""

from collections.abc import Sequence
from fractions import Fraction

from journal.domain.errors import JournalError


def share(total: int, weights: Sequence[int]) -> tuple[int, ...]:
    """Share ``total`` out by ``weights``, to the last unit.

    The method is that of the largest remainder (Hamilton, Vinton): each part first gets the whole
    units of its quota, then the units left over go one each to the largest fractions. Of equal
    fractions the one that stands first wins. A negative total is shared as its opposite is, with
    the sign turned. Weights that are all zero share equally.

    Raises:
        JournalError: a weight is negative, or there is nothing to share ``total`` among.
    """
    if any(weight < 0 for weight in weights):
        raise JournalError("A share can't be less than nothing.")
    if not weights:
        if total:
            raise JournalError("There is nothing to share the sum among.")
        return ()
    if not any(weights):
        weights = [1] * len(weights)
    sign = -1 if total < 0 else 1
    whole = sum(weights)
    quotas = [divmod(abs(total) * weight, whole) for weight in weights]
    parts = [units for units, _ in quotas]
    left_over = abs(total) - sum(parts)
    by_fraction = sorted(range(len(quotas)), key=lambda place: -quotas[place][1])
    for place in by_fraction[:left_over]:
        parts[place] += 1
    return tuple(sign * part for part in parts)


def rounded(exact: Sequence[Fraction], total: int | None = None) -> tuple[int, ...]:
    """Whole numbers for exact ones, which add up to ``total``: by the largest remainder.

    Every number is rounded down, then the units left over go one each to the largest fractions, of
    equal ones to the first. ``total`` is their exact sum rounded up or down; None rounds it to the
    nearest, half a unit away from zero.
    """
    floors = [value.numerator // value.denominator for value in exact]
    if total is None:
        whole = sum(exact, Fraction())
        total = int(abs(whole) + Fraction(1, 2)) * (-1 if whole < 0 else 1)
    left_over = total - sum(floors)
    if left_over:
        by_fraction = sorted(range(len(exact)), key=lambda place: floors[place] - exact[place])
        for place in by_fraction[:left_over]:
            floors[place] += 1
    return tuple(floors)
