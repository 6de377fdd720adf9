"""Counts of sets and repetitions, and the top set of the day."""

import re
from collections.abc import Callable
from dataclasses import dataclass
from typing import Annotated, Any

from pydantic import BeforeValidator, WithJsonSchema

from strength_handbook.model.marks import NotProse
from strength_handbook.model.shape import refuse, shown

MOST_SETS = 50
MOST_REPS = 200
MOST_TOP_REPS = 20


@dataclass(frozen=True, slots=True)
class Count:
    """Sets or repetitions: one number, a range, or a floor that may be passed (``5+``)."""

    low: int
    high: int
    open: bool = False

    @property
    def text(self) -> str:
        """As written in the trade."""
        if self.open:
            return f"{self.low}+"
        return str(self.low) if self.low == self.high else f"{self.low}–{self.high}"

    @property
    def middle(self) -> float:
        """The number to reckon with."""
        return (self.low + self.high) / 2


def parse_count(text: str, most: int = MOST_REPS) -> Count:
    """Read ``5``, ``8-12`` or ``5+``.

    >>> parse_count("8-12")
    Count(low=8, high=12, open=False)

    Raises:
        ValueError: where the text is no count; the message says what to write.
    """
    found = re.fullmatch(r"(\d{1,6})(?:\s*[-–]\s*(\d{1,6})|(\+))?", text.strip())
    if not found:
        raise ValueError(f"{shown(text)} is not a count; write a whole number, '8-12' or '5+'")
    low = int(found[1])
    high = int(found[2] or low)
    if low < 1:
        raise ValueError(f"{shown(text)} is too small; a count is 1 or more")
    if high < low:
        raise ValueError(f"{shown(text)} runs backwards; write '{high}-{low}'")
    if high > most:
        raise ValueError(f"{shown(text)} is too large; the most is {most}")
    return Count(low, high, bool(found[3]))


def _reader(most: int) -> Callable[[Any], Count]:
    def read(value: Any) -> Count:
        if isinstance(value, bool) or not isinstance(value, str | int | float):
            text = f"{shown(value)} is not a count; write a whole number, '8-12' or '5+'"
            raise refuse("count", text)
        try:
            return parse_count(str(value), most)
        except ValueError as error:
            raise refuse("count", str(error)) from None

    return read


_SCHEMA = WithJsonSchema(
    {
        "anyOf": [
            {"type": "integer", "minimum": 1},
            {"type": "string", "pattern": r"^\d{1,3}(\s*[-–]\s*\d{1,3}|\+)?$"},
        ]
    }
)

SetsText = Annotated[Count, BeforeValidator(_reader(MOST_SETS)), _SCHEMA]
"""How many sets: ``3`` or ``3-4``."""

RepsText = Annotated[Count, BeforeValidator(_reader(MOST_REPS)), _SCHEMA]
"""How many repetitions: ``5``, ``8-12`` or ``5+``."""


def _read_top(value: Any) -> str:
    text = value.strip() if isinstance(value, str) else ""
    if text.lower() == "none":
        return "none"
    found = re.fullmatch(r"(\d{1,2})\s*RM", text, re.IGNORECASE)
    if not found:
        raise refuse("top", f"{shown(value)} is not a top set; write it like '5RM', or 'none'")
    if not 1 <= int(found[1]) <= MOST_TOP_REPS:
        raise refuse("top", f"{shown(value)}: a top set has 1 to {MOST_TOP_REPS} repetitions")
    return f"{int(found[1])}RM"


TopText = Annotated[
    str,
    NotProse("repetitions of a best, such as 5RM"),
    BeforeValidator(_read_top),
    WithJsonSchema({"type": "string", "pattern": r"^(\d{1,2}RM|none)$", "examples": ["5RM"]}),
]
"""The top set of the day, ``5RM``; ``none`` takes back what the slot says."""
