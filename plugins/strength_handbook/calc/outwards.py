"""Ranges rounded outwards: what is printed never promises more than what was worked out."""

import math

HAIR = 1e-9
"""What a sum of floats may lie beside a whole number that it means."""


def outwards(low: float, high: float, digits: int = 0) -> tuple[float, float]:
    """The low end of a range rounded down and its high end rounded up.

    Args:
        low: the low end.
        high: the high end.
        digits: decimal places that are kept.

    >>> outwards(7.8, 15.6), outwards(1.175, 1.2147, 2), outwards(6.0, 12.0)
    ((7.0, 16.0), (1.17, 1.22), (6.0, 12.0))
    """
    unit = 10**digits
    return math.floor(low * unit + HAIR) / unit, math.ceil(high * unit - HAIR) / unit
