"""Loads, minutes and paces worked out by hand: short sums that share no code with the product.

Masses are whole grams, times exact fractions of a second. What is common practice here (a
repetition of 3 s, 60 s to change the station) stands in the pages' own account of the minutes.
"""

from collections.abc import Iterable, Sequence
from fractions import Fraction
from itertools import product

POUND_G = Fraction(45_359_237, 100_000)
"""The international pound in grams, exact by its definition of 1959."""
REP_S, CHANGE_S = 3, 60


def loads(bar: Fraction | int, pairs: Sequence[tuple[Fraction | int, int]]) -> list[Fraction]:
    """Every load that a bar and pairs of plates make, in the unit of both, lightest first."""
    counts = product(*(range(many + 1) for _, many in pairs))
    sums = {
        Fraction(bar)
        + sum(2 * n * Fraction(plate) for n, (plate, _) in zip(one, pairs, strict=True))
        for one in counts
    }
    return sorted(sums)


def below(exist: Iterable[Fraction], wanted: Fraction) -> Fraction | None:
    """The heaviest load that is not above what is wanted; None where all are."""
    return max((one for one in exist if one <= wanted), default=None)


def lifting_s(*slots: tuple[Sequence[int], int]) -> int:
    """Seconds of some slots: repetitions of each set, rests between them, and the changes."""
    work = sum(REP_S * sum(reps) + rest * (len(reps) - 1) for reps, rest in slots)
    return work + CHANGE_S * (len(slots) - 1)


def clock(seconds: Fraction) -> str:
    """Minutes, seconds and a tenth where there is one; half a tenth goes up."""
    tenths = int(seconds * 10 + Fraction(1, 2))
    whole, tenth = divmod(tenths, 10)
    return f"{whole // 60}:{whole % 60:02d}" + (f".{tenth}" if tenth else "")
