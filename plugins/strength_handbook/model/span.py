"""Seconds that may be fewer or more: planned at their middle, shown and checked at both ends."""

import re
from typing import Any, Self

from pydantic_core import PydanticCustomError

from strength_handbook.model.quantities import read_duration
from strength_handbook.model.shape import refuse, shown

LONGEST_S = 30 * 60.0
"""Most seconds of a rest."""
_TIME = r"(\d{1,2}:[0-5]\d|\d+([.,]\d+)?\s*(s|sec|min|h))"
REST_PATTERN = rf"^((\d+([.,]\d+)?|{_TIME})\s*[-–]\s*)?{_TIME}$"
"""How a rest may be written."""
_BOTH = re.compile(r"(.*?\S)\s*[-–]\s*(\S.*)")


class Span(float):
    """A range of seconds, to be counted with as its middle.

    Sums and differences are plain seconds again.

    >>> Span(60, 90) + 0, Span(60, 90).low, Span(60, 90).high
    (75.0, 60, 90)
    >>> Span(60, 90) == 75, Span(60, 90) == Span(60, 90)
    (False, True)
    """

    __slots__ = ("high", "low")
    low: float
    high: float

    def __new__(cls, low: float, high: float) -> Self:
        """The shortest and the longest."""
        one = super().__new__(cls, (low + high) / 2)
        one.low, one.high = low, high
        return one

    def __getnewargs__(self) -> tuple[float, float]:  # type: ignore[override]  # both ends
        """For copies."""
        return self.low, self.high

    def __eq__(self, other: object) -> bool:
        """A range is no single time."""
        return isinstance(other, Span) and (self.low, self.high) == (other.low, other.high)

    def __hash__(self) -> int:
        """Of both ends."""
        return hash((self.low, self.high))


def ends(seconds: float) -> tuple[float, float]:
    """The shortest and the longest of a time.

    >>> ends(Span(60, 90)), ends(75)
    ((60, 90), (75, 75))
    """
    return (seconds.low, seconds.high) if isinstance(seconds, Span) else (seconds, seconds)


def read_span(value: Any) -> float:
    """A time, or a range of one: ``90 s``, ``60-90 s``, ``2:00-2:30``.

    >>> ends(read_span("2-3 min"))
    (120.0, 180.0)

    Raises:
        PydanticCustomError: where it is no time, or the range runs backwards.
    """
    found = _BOTH.fullmatch(value.strip()) if isinstance(value, str) else None
    if found is None:
        return read_duration(value)
    unit = re.search(r"[a-z]+$", found[2])
    bare = re.fullmatch(r"[\d.,]+", found[1])
    low = read_duration(f"{found[1]} {unit[0]}" if bare and unit else found[1])
    high = read_duration(found[2])
    if low >= high:
        raise refuse("range", f"{shown(value)} runs backwards; write the shorter time first")
    return Span(low, high)


def read_rest(value: Any) -> float:
    """A rest of at most half an hour; several may be its ends.

    Raises:
        PydanticCustomError: as `read_span`, and for a longer one.
    """
    rest = read_span(value)
    if max(ends(rest)) > LONGEST_S:
        raise PydanticCustomError("range", "the most is {most}", {"most": "30 min"})
    return rest
