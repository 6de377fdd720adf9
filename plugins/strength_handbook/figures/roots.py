"""One unknown angle, found where a measure is nought."""

from collections.abc import Callable

STEPS = 16
"""Places where the sign is looked at first."""
_CLOSE = 1e-9
"""What is as good as nought: statures or degrees."""


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
            return _narrowed(measure, low, high, before, now)
        low, before = high, now
    return None


def _narrowed(
    measure: Callable[[float], float], low: float, high: float, below: float, above: float
) -> float:
    """The root between two places of different sign: by false position with halved ends."""
    kept = 0
    for _ in range(40):
        middle = (low * above - high * below) / (above - below)
        value = measure(middle)
        if abs(value) < _CLOSE or abs(high - low) < _CLOSE:
            return middle
        if below * value <= 0:
            high, above = middle, value
            below, kept = (below / 2, -1) if kept == -1 else (below, -1)
        else:
            low, below = middle, value
            above, kept = (above / 2, 1) if kept == 1 else (above, 1)
    return middle
