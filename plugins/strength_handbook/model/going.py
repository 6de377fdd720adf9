"""Rowing, running and the like: what one does, over which distance a pace is counted, how fast."""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Annotated, Any, Literal

from pydantic import PlainValidator, WithJsonSchema
from pydantic_core import PydanticCustomError

from strength_handbook.model.length import METRES_IN
from strength_handbook.model.plain import read_whole
from strength_handbook.model.shape import refuse
from strength_handbook.model.span import Span, ends, limited, read_both, read_span

Activity = Literal["row", "ski", "ride", "run", "walk", "swim", "step"]
Talk = Literal["can", "just", "cannot"]
"""Whether one can talk on the way: the talk test."""
Per = Literal["100 m", "500 m", "1 km", "1 mile"]

_METRES: Mapping[str, float] = {
    "100 m": 100.0, "500 m": 500.0, "1 km": 1000.0, "1 mile": METRES_IN["mi"],
}  # fmt: skip
_USUAL: Mapping[str, tuple[Per, float, float]] = {
    "row": ("500 m", 120, 160),
    "ski": ("500 m", 125, 170),
    "ride": ("1 km", 120, 180),
    "run": ("1 km", 285, 405),
    "walk": ("1 km", 570, 750),
    "swim": ("100 m", 105, 165),
}
"""What a pace is counted over, and the paces in seconds between which most members go, at an effort
that they can keep for half an hour. Common practice, no source. Steps have no distance."""

_QUICKEST_M_S, _SLOWEST_M_S = 25.0, 0.2
"""Nobody is faster, on a bicycle either, or is training when slower."""


@dataclass(frozen=True, slots=True)
class Going:
    """How an exercise gets from here to there.

    Attributes:
        doing: what one does, as an order: ``row``.
        per: over what a pace is counted; empty where there is no distance.
        pace: seconds for that, between which most members go; 0 where there is no distance.
    """

    doing: Activity
    per: str = ""
    pace: float = 0.0

    @property
    def per_m(self) -> float:
        """Over how many metres a pace is counted; 0 where there is no distance."""
        return _METRES.get(self.per, 0.0)


def usual(doing: Activity, per: Per | None, pace: float | None) -> Going:
    """What an exercise's file says of how it goes, and the usual for what it leaves out.

    >>> usual("run", "1 mile", None).per_m
    1609.344
    >>> usual("step", None, None).per
    ''
    """
    if doing not in _USUAL:
        return Going(doing)
    common, fast, slow = _USUAL[doing]
    over: Per = per or common
    if pace is None:
        share = _METRES[over] / _METRES[common]
        pace = Span(*(float(round(end * share)) for end in (fast, slow)))
    return Going(doing, over, pace)


def speed_is_odd(speed_m_s: float) -> bool:
    """True for a speed at which nobody trains.

    >>> speed_is_odd(4), speed_is_odd(40), speed_is_odd(0.1)
    (False, True, True)
    """
    return not _SLOWEST_M_S <= speed_m_s <= _QUICKEST_M_S


def too_odd(pace: float, per: str) -> str:
    """What is wrong with a pace; empty where it can be one."""
    metres, (fast, slow) = _METRES[per], ends(pace)
    if fast <= 0 or metres / fast > _QUICKEST_M_S:
        return f"nobody is that fast over {per}"
    return f"nobody is that slow over {per}" if speed_is_odd(metres / slow) else ""


def _read_pace(value: Any) -> float:
    if isinstance(value, str) and re.search(r"/\s*\S", value):
        text = "write the time alone, such as '2:10' or '2:00-2:40'; 'per' says over what"
        raise refuse("pace", text)
    found = read_span(value)
    if ends(found)[1] > 3600:
        raise PydanticCustomError("range", "the most is {most}", {"most": "60 min"})
    return found


def _read_rate(value: Any) -> float:
    text = re.sub(r"\s*(?:spm|rpm)\s*$", "", value) if isinstance(value, str) else value
    found = read_both(text, read_whole)
    rate = read_whole(text) if found is None else found
    return limited(rate, 5, 250, "{:g} a minute".format)


RateText = Annotated[
    float,
    PlainValidator(_read_rate),
    WithJsonSchema(
        {
            "anyOf": [
                {"type": "integer", "minimum": 5, "maximum": 250},
                {"type": "string", "examples": ["24 spm", "22-26 spm", "90 rpm"]},
            ]
        }
    ),
]
"""Strokes, turns or steps a minute."""

PaceText = Annotated[
    float,
    PlainValidator(_read_pace),
    WithJsonSchema({"type": "string", "examples": ["2:10", "2:00-2:40"]}),
]
"""A time over what a pace is counted over, or a range of it."""
