"""A tested best of rowing, running and the like: a time over a distance, or watts over a time."""

import re
from dataclasses import dataclass
from math import floor
from typing import Annotated, Any

from pydantic import BeforeValidator, WithJsonSchema, model_validator

from strength_handbook.model.going import speed_is_odd
from strength_handbook.model.length import length_text
from strength_handbook.model.marks import Label
from strength_handbook.model.plain import Name
from strength_handbook.model.printed import clock
from strength_handbook.model.quantities import NUMBER, read_duration, read_length
from strength_handbook.model.shape import Id, Shape, refuse, shown
from strength_handbook.model.weeks import DateText

MOST_ROWS = 60
"""Rows of a look-up strip of paces."""
MOST_WATTS = 2500.0


@dataclass(frozen=True, slots=True)
class Over:
    """What a best is of: a distance that is covered, or a time that is worked.

    Attributes:
        metres: of a distance; 0 of a time.
        seconds: of a time; 0 of a distance.
        text: as it is printed.
    """

    metres: float
    seconds: float
    text: str


@dataclass(frozen=True, slots=True)
class Result:
    """What a test gave: a time or watts.

    Attributes:
        amount: seconds or watts.
        watts: it is watts.
    """

    amount: float
    watts: bool

    @property
    def label(self) -> str:
        """As it is printed: ``7:40`` or ``210 W``."""
        return f"{self.amount:g} W" if self.watts else clock(self.amount)


def _read_over(value: Any) -> Over:
    text = str(value).strip()
    if re.search(r"(?:m|mi|miles?|yd)$", text) and not text.endswith("min"):
        metres = read_length(value)
        if not 100 <= metres <= 100_000:
            raise refuse("range", f"{shown(text)}: a best is over 100 m to 100 km")
        return Over(metres, 0.0, length_text(metres))
    if re.search(r"\d\s*(?:s|sec|min|h)$", text):
        seconds = read_duration(value)
        if not 10 <= seconds <= 4 * 3600:
            raise refuse("range", f"{shown(text)}: a best is over 10 s to 4 h")
        return Over(0.0, seconds, f"{seconds / 60:g} min" if seconds >= 60 else f"{seconds:g} s")
    raise refuse("unit", f"{shown(text)} is no distance and no time; write '2 km' or '20 min'")


def _read_result(value: Any) -> Result:
    text = str(value).strip()
    if found := re.fullmatch(rf"{NUMBER}\s*(?:W|watts?)", text):
        watts = float(found[1].replace(",", "."))
        if not 0 < watts <= MOST_WATTS:
            raise refuse("range", f"{shown(text)}: the most is {MOST_WATTS:g} W")
        return Result(watts, watts=True)
    if re.fullmatch(NUMBER, text):
        raise refuse("unit", f"{shown(text)} has no unit; write '7:40' or '{text[:6]} W'")
    return Result(read_duration(value), watts=False)


OverText = Annotated[
    Over,
    BeforeValidator(_read_over),
    WithJsonSchema({"type": "string", "examples": ["2 km", "5 km", "1 mile", "20 min"]}),
]
ResultText = Annotated[
    Result,
    BeforeValidator(_read_result),
    WithJsonSchema({"type": "string", "examples": ["7:40", "10 s", "210 W"]}),
]


class Best(Shape):
    """A tested best that paces and powers refer to."""

    name: Annotated[Name, Label("the name of a tested best")]
    """How members know it: '2 km on the rowing machine'."""
    exercise: Id
    """What is tested."""
    over: OverText
    """A distance, `2 km`: then the best is a time. Or a time, `20 min`: then it is watts."""
    from_: ResultText
    """First value of the look-up strip, `6:20` or `120 W`,"""
    to: ResultText
    """its last,"""
    by: ResultText
    """and its step, `10 s` or `10 W`."""
    tested: DateText | None = None
    """The day of the test."""

    @model_validator(mode="after")
    def _one_kind(self) -> "Best":
        watts = not self.over.metres
        for key, one in (("from", self.from_), ("to", self.to), ("by", self.by)):
            if one.watts != watts:
                write = "watts, such as '210 W'" if watts else "a time, such as '7:40'"
                raise refuse("unit", f"over {self.over.text} a best is {write}; see '{key}'")
        if self.by.amount <= 0 or self.to.amount < self.from_.amount:
            raise refuse("range", "the strip must go up: 'from' is the smallest, 'by' its step")
        if (self.to.amount - self.from_.amount) / self.by.amount >= MOST_ROWS:
            raise refuse("range", f"this strip has more than {MOST_ROWS} rows; take a larger step")
        ends = () if watts else (self.from_, self.to)
        if any(not one.amount or speed_is_odd(self.over.metres / one.amount) for one in ends):
            raise refuse("range", f"nobody takes so long or so short over {self.over.text}")
        return self

    @property
    def rows(self) -> tuple[Result, ...]:
        """The values of its look-up strip."""
        many = floor((self.to.amount - self.from_.amount) / self.by.amount + 1e-9) + 1
        first, step = self.from_.amount, self.by.amount
        return tuple(Result(round(first + n * step, 3), self.from_.watts) for n in range(many))
