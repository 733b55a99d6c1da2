"""Sharing a whole number out so that the parts add up to it exactly."""

from collections.abc import Sequence
from fractions import Fraction
from typing import TypeVar

from journal.domain.errors import JournalError

Number = TypeVar("Number", int, Fraction)


def share(total: int, weights: Sequence[int]) -> tuple[int, ...]:
    """Share ``total`` out by ``weights``, to the last unit.

    The method is that of the largest remainder (Hamilton, Vinton): each part first gets the whole
    units of its quota, then the units left over go one each to the largest fractions. Of equal
    fractions the one that stands first wins. A negative total is shared as its opposite is, with
    the sign turned. Weights that are all zero share equally.

    Raises:
        JournalError: a weight is negative, or there is nothing to share ``total`` among.
    """
    if not weights:
        if total:
            raise JournalError("There is nothing to share the sum among.")
        return ()
    if min(weights) < 0:
        raise JournalError("A share can't be less than nothing.")
    if not any(weights):
        weights = [1] * len(weights)
    size, whole = abs(total), sum(weights)
    parts = _dealt([divmod(size * weight, whole) for weight in weights], size)
    return tuple(parts) if total >= 0 else tuple(-part for part in parts)


def scaled(values: Sequence[int], factor: Fraction, total: int) -> tuple[int, ...]:
    """Every value times ``factor``, as whole numbers that add up to ``total``.

    By the largest remainder, so that none is a unit away from its own product. ``total`` is the
    product of their sum, rounded up or down. Products below zero are rounded down as well, to the
    number further from zero, before the units left over go out.
    """
    over, under = factor.numerator, factor.denominator
    return tuple(_dealt([divmod(value * over, under) for value in values], total))


def rounded(exact: Sequence[Fraction]) -> tuple[int, ...]:
    """Whole numbers for exact ones, adding up to their sum, half a unit rounded away from zero.

    By the largest remainder, so that none is a unit away from its own number.
    """
    total = nearest(sum(exact, Fraction()))
    return tuple(_dealt([divmod(value, 1) for value in exact], total))


def nearest(exact: Fraction) -> int:
    """The nearest whole number, half a unit rounded away from zero."""
    size, under = abs(exact.numerator), exact.denominator
    units = (2 * size + under) // (2 * under)
    return -units if exact < 0 else units


def _dealt(quotas: Sequence[tuple[int, Number]], total: int) -> list[int]:
    """The whole units of each quota, and what ``total`` has beyond them to the largest fractions.

    Of equal fractions the one that stands first wins.
    """
    parts = [units for units, _ in quotas]
    left_over = total - sum(parts)
    if left_over == 1:
        fractions = [fraction for _, fraction in quotas]
        parts[fractions.index(max(fractions))] += 1
    elif left_over:
        by_fraction = sorted(range(len(quotas)), key=lambda place: -quotas[place][1])
        for place in by_fraction[:left_over]:
            parts[place] += 1
    return parts
