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


_TOP = re.compile(r"(\d{1,2})\s*(?:RM|@\s*(?:(RPE|RIR)\s*)(\d{1,2}(?:[.,]5)?))", re.IGNORECASE)
MOST_TOP_LEFT = 5.0
"""What a top set leaves at most: more left is judged too badly to build on. Hackett 2017."""


def top_text(reps: int, left: float = 0.0) -> str:
    """A top set as written in the trade.

    >>> top_text(5), top_text(5, 2), top_text(1, 1.5)
    ('5RM', '5 @ RPE 8', '1 @ RPE 8.5')
    """
    return f"{reps} @ RPE {10 - left:g}" if left else f"{reps}RM"


def parse_top(text: str) -> tuple[int, float]:
    """Repetitions of a top set, and those that it leaves: ``5RM``, ``5 @ RPE 8``, ``5 @ RIR 2``.

    >>> parse_top("5RM"), parse_top("3 @ RPE 8.5"), parse_top("5 @ RIR 2")
    ((5, 0.0), (3, 1.5), (5, 2.0))

    Raises:
        ValueError: where the text is no top set; the message says what to write.
    """
    found = _TOP.fullmatch(text.strip())
    if not found:
        raise ValueError(
            f"{shown(text)} is not a top set; write it like '5RM', '5 @ RPE 8', or 'none'"
        )
    reps, number = int(found[1]), float((found[3] or "0").replace(",", "."))
    if not 1 <= reps <= MOST_TOP_REPS:
        raise ValueError(f"{shown(text)}: a top set has 1 to {MOST_TOP_REPS} repetitions")
    left = 10 - number if (found[2] or "").upper() == "RPE" else number
    if not 0 <= left <= MOST_TOP_LEFT:
        raise ValueError(
            f"{shown(text)}: a top set leaves at most {MOST_TOP_LEFT:g}, so it is 'RPE 5' to "
            "'RPE 10'; write such as '5 @ RPE 8'"
        )
    return reps, left


def _read_top(value: Any) -> str:
    text = value.strip() if isinstance(value, str) else ""
    if text.lower() == "none":
        return "none"
    try:
        return top_text(*parse_top(text or shown(value).strip("'")))
    except ValueError as error:
        raise refuse("top", str(error)) from None


TopText = Annotated[
    str,
    NotProse("repetitions of a best, such as 5RM"),
    BeforeValidator(_read_top),
    WithJsonSchema(
        {
            "type": "string",
            "pattern": r"^(\d{1,2}\s*RM|\d{1,2}\s*@\s*(RPE|RIR)\s*\d+([.,]5)?|none)$",
            "examples": ["5RM", "5 @ RPE 8"],
        }
    ),
]
"""The top set of the day, ``5RM``, or one that leaves some, ``5 @ RPE 8``; ``none`` takes back what
the slot says."""
