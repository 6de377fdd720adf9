"""One unknown angle, found where a measure is nought."""

from collections.abc import Callable

STEPS = 16
"""Places where the sign is looked at first."""


def root(measure: Callable[[float], float], least: float, most: float) -> float | None:
    """The first angle between two limits at which a measure changes its sign, or None.

    >>> root(lambda x: x * x - 2, 0, 5)
    1.41421...
    >>> root(lambda x: x + 1, 0, 5)
    """
    width = (most - least) / STEPS
    low, before = least, measure(least)
    for step in range(1, STEPS + 1):
        high = least + step * width
        now = measure(high)
        if before == 0:
            return low
        if before * now <= 0:
            return _halved(measure, low, high, before)
        low, before = high, now
    return None


def _halved(measure: Callable[[float], float], low: float, high: float, before: float) -> float:
    for _ in range(24):
        middle = (low + high) / 2
        value = measure(middle)
        if before * value <= 0:
            high = middle
        else:
            low, before = middle, value
    return (low + high) / 2
