"""Numbers that may be less or more: planned at their middle, shown and checked at both ends."""

import re
from collections.abc import Callable
from typing import Any, Self

from pydantic_core import PydanticCustomError

from strength_handbook.model.plain import read_decimal, read_whole
from strength_handbook.model.quantities import read_duration, read_length
from strength_handbook.model.shape import refuse, shown

LONGEST_S = 30 * 60.0
"""Most seconds of a rest."""
LONGEST_WORK_S = 40 * 60.0
"""Most seconds of one hold, or of one set by the clock of what is lifted or carried."""
LONGEST_GOING_S = 4 * 3600.0
"""Most seconds of rowing, running and the like in one go."""
WIDEST = 4
"""The longer end of a range of seconds is at most so many times the shorter: what is wider is
hardly meant as one, `4x8-90 s`. Common practice, no source."""
WIDEST_SHARE = 1.5
"""The same of a range of percent: more is no one load."""
WIDEST_LEFT = 3.0
"""The ends of a range of repetitions left, or of effort, are at most so far apart: what is wider is
no one effort. Common practice, no source."""
_TIME = r"(\d{1,2}:[0-5]\d|\d+([.,]\d+)?\s*(s|sec|min|h))"
REST_PATTERN = rf"^((\d+([.,]\d+)?|{_TIME})\s*[-–]\s*)?{_TIME}$"
"""How a rest may be written."""
LEFT_PATTERN = r"^\d\s*[-–]\s*\d$"
"""How a range of repetitions left may be written."""
EFFORT_PATTERN = r"^\d+(\.\d+)?\s*[-–]\s*\d+(\.\d+)?$"
"""How a range of effort may be written."""
_BOTH = re.compile(r"(.*?\S)\s*[-–]\s*(\S.*)")


class Span(float):
    """A range of numbers, to be counted with as its middle.

    Sums and differences are plain numbers again; `moved` keeps both ends. Printed, it is both.

    >>> Span(60, 90) + 0, Span(60, 90).low, Span(60, 90).high
    (75.0, 60, 90)
    >>> Span(60, 90) == 75, Span(60, 90) == Span(60, 90)
    (False, True)
    >>> f"{Span(7, 8.5):g}"
    '7–8.5'
    """

    __slots__ = ("high", "low")
    low: float
    high: float

    def __new__(cls, low: float, high: float) -> Self:
        """The least and the most."""
        one = super().__new__(cls, (low + high) / 2)
        one.low, one.high = low, high
        return one

    def __getnewargs__(self) -> tuple[float, float]:  # type: ignore[override]  # both ends
        """For copies."""
        return self.low, self.high

    @property
    def unit(self) -> str:
        """Of a range of lengths, as its longer end was written."""
        return getattr(self.high, "unit", "m")

    def __eq__(self, other: object) -> bool:
        """A range is no single number."""
        return isinstance(other, Span) and (self.low, self.high) == (other.low, other.high)

    def __hash__(self) -> int:
        """Of both ends."""
        return hash((self.low, self.high))

    def __format__(self, form: str) -> str:
        """Both ends."""
        return f"{format(self.low, form)}–{format(self.high, form)}"


def middle_of(value: float) -> float:
    """A number to plan with; of a range its middle. A whole number stays whole.

    >>> middle_of(Span(60, 90)), middle_of(75)
    (75.0, 75)
    """
    return value + 0


def ends(value: float) -> tuple[float, float]:
    """The least and the most of a number.

    >>> ends(Span(60, 90)), ends(75)
    ((60, 90), (75, 75))
    """
    return (value.low, value.high) if isinstance(value, Span) else (value, value)


def between(low: float, high: float) -> float:
    """A range, or the one number where both are the same."""
    return Span(low, high) if low < high else low


def moved(value: float, by: float, least: float = 0) -> float:
    """A number with so much added to both ends, but nothing below the least.

    >>> ends(moved(Span(1, 3), -2)), moved(2, -1)
    ((0, 1), 1)
    """
    low, high = (max(least, end + by) for end in ends(value))
    return between(low, high)


def out_of_ten(value: float) -> float:
    """Effort from repetitions left, or repetitions left from effort, with both ends.

    >>> ends(out_of_ten(Span(2, 3))), out_of_ten(8.5)
    ((7, 8), 1.5)
    """
    low, high = ends(value)
    return between(10 - high, 10 - low)


def read_both(value: Any, read: Callable[[str], float], unit: str = "") -> float | None:
    """A range; None where it is none.

    Args:
        value: as it was written.
        read: what makes a number of one end.
        unit: what to put behind the lower end, where it has no unit of its own.

    Raises:
        PydanticCustomError: where it runs backwards, or one end can't be read.
    """
    found = _BOTH.fullmatch(value.strip()) if isinstance(value, str) else None
    if found is None:
        return None
    low, high = read(f"{found[1]}{unit}"), read(found[2])
    if low >= high:
        raise refuse("range", f"{shown(value)} runs backwards; write the smaller number first")
    return Span(low, high)


def read_span(value: Any) -> float:
    """A time, or a range of one: ``90 s``, ``60-90 s``, ``2:00-2:30``.

    >>> ends(read_span("2-3 min"))
    (120.0, 180.0)

    Raises:
        PydanticCustomError: where it is no time, or the range runs backwards.
    """
    text = value if isinstance(value, str) else ""
    bare = re.fullmatch(r"\s*[\d.,]+\s*[-–].*?([a-z]+)\s*", text)
    found = read_both(value, read_duration, f" {bare[1]}" if bare else "")
    return read_duration(value) if found is None else found


def limited(value: float, least: float, most: float, unit: Callable[[float], str]) -> float:
    """The number, whose ends have limits.

    Raises:
        PydanticCustomError: where one of them is beyond.
    """
    low, high = ends(value)
    if low < least:
        raise PydanticCustomError("range", "the least is {least}", {"least": unit(least)})
    if high > most:
        raise PydanticCustomError("range", "the most is {most}", {"most": unit(most)})
    return value


def read_rest(value: Any) -> float:
    """A rest of at most half an hour; several may be its ends.

    Raises:
        PydanticCustomError: as `read_span`, and for a longer one.
    """
    return limited(read_span(value), 0, LONGEST_S, lambda most: f"{most / 60:g} min")


def read_work(value: Any, most: float = LONGEST_WORK_S) -> float:
    """How long a hold or a set by the clock lasts, from 1 s on: ``30 s``, ``20-30 s``.

    Args:
        value: as it was written.
        most: seconds of the longest.

    Raises:
        PydanticCustomError: as `read_span`, beyond the limits, and for a range that is too wide.
    """
    time = limited(read_span(value), 1, most, lambda end: f"{end / 60:g} min" if end > 1 else "1 s")
    low, high = ends(time)
    if high > WIDEST * low:
        raise refuse(
            "range",
            f"{shown(value)} is too wide to plan with: the longer is at most {WIDEST} times the "
            "shorter; a rest is written 'rest 90 s'",
        )
    return time


FARTHEST_M = 100_000.0
"""Most metres of rowing, running and the like in one go."""


def read_far(value: Any) -> float:
    """How far, from 1 m on: ``40 m`` or ``20-30 m``.

    >>> ends(read_far("20-30 m"))
    (20.0, 30.0)

    Raises:
        PydanticCustomError: where it is no length, beyond the limits, and where a range runs
            backwards or is too wide.
    """
    text = value if isinstance(value, str) else ""
    bare = re.fullmatch(r"\s*[\d.,]+\s*[-–].*?([a-z]+)\s*", text)
    found = read_both(value, read_length, f" {bare[1]}" if bare else "")
    far = limited(
        read_length(value) if found is None else found,
        1,
        FARTHEST_M,
        lambda end: f"{end / 1000:g} km" if end > 1 else "1 m",
    )
    low, high = ends(far)
    if high > WIDEST * low:
        raise refuse(
            "range",
            f"{shown(value)} is too wide to plan with: the longer is at most {WIDEST} times the "
            "shorter",
        )
    return far


def read_share(text: str) -> float:
    """A percentage without its sign, or a range of one: ``70`` or ``70-75``.

    >>> read_share("72,5"), ends(read_share("70 %-75"))
    (72.5, (70.0, 75.0))

    Raises:
        ValueError: where it runs backwards, or is too wide to plan with its middle.
    """
    several = [float(one.strip(" %").replace(",", ".")) for one in re.split("[-–]", text)]
    low, high = several[0], several[-1]
    if len(several) > 1 and low >= high:
        raise ValueError(f"{shown(text)} runs backwards; write the smaller number first")
    if high > WIDEST_SHARE * low:
        raise ValueError(f"{shown(text)} is too wide to plan with; write one of them")
    return between(low, high)


def _narrow(value: float, shown_value: Any, example: str) -> float:
    """The number, whose ends are not too far apart.

    Raises:
        PydanticCustomError: where they are.
    """
    low, high = ends(value)
    if high - low > WIDEST_LEFT:
        raise refuse(
            "range",
            f"{shown(shown_value)} is too wide to plan with: its ends are at most "
            f"{WIDEST_LEFT:g} apart, such as '{example}'",
        )
    return value


def read_left(value: Any) -> float:
    """Good repetitions left, 0 to 9: ``2`` or ``2-3``.

    Raises:
        PydanticCustomError: where it is no whole number, or the range runs backwards or is too
            wide.
    """
    found = read_both(value, read_whole)
    left = limited(read_whole(value) if found is None else found, 0, 9, "{:g}".format)
    return _narrow(left, value, "2-3")


def read_effort(value: Any) -> float:
    """Effort from 1 to 10: ``8``, ``7.5`` or ``7-8``.

    Raises:
        PydanticCustomError: where it is no number, or the range runs backwards or is too wide.
    """
    found = read_both(value, read_decimal)
    effort = limited(read_decimal(value) if found is None else found, 1, 10, "{:g}".format)
    return _narrow(effort, value, "7-8")
