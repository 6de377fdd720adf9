"""Tempo in the order lower, pause, lift, pause, even when the lift starts from the floor."""

import re
from dataclasses import dataclass
from typing import Annotated, Any

from pydantic import BeforeValidator, WithJsonSchema

from strength_handbook.model.shape import refuse, shown

FAST = "X"
LONGEST_S = 30
"""Most seconds in one field."""
_EXAMPLE = "lower-pause-lift-pause, such as '3-1-X-0'"


@dataclass(frozen=True, slots=True)
class Tempo:
    """Seconds of one repetition. ``lift`` is None where the lift is as fast as possible (X).

    >>> Tempo.parse("5-1-X-0")
    Tempo(lower=5, low_pause=1, lift=None, high_pause=0)
    >>> Tempo.parse("5-1-X-0").text
    '5-1-X-0'
    """

    lower: int
    low_pause: int
    lift: int | None
    high_pause: int

    @classmethod
    def parse(cls, text: str) -> "Tempo":
        """Read four fields joined by hyphens; slashes, as some write them, are read too.

        Raises:
            ValueError: where the text is no tempo; the message says what to write.
        """
        tempo = f"tempo {shown(text)}"
        fields = [field.strip() for field in re.split(r"[-–/]", text.replace("x", FAST))]
        if re.fullmatch(r"\d\d[\dX]\d", fields[0]) and len(fields) == 1:
            raise ValueError(f"{tempo} needs hyphens: write '{'-'.join(fields[0])}'")
        if len(fields) != 4:
            raise ValueError(f"{tempo} needs four fields: {_EXAMPLE}")
        for name, field in zip(("lower", "pause", "lift", "pause"), fields, strict=True):
            if field == FAST and name != "lift":
                raise ValueError(
                    f"{tempo}: X (as fast as possible) stands only in the third field, the lift; "
                    "give the others in seconds"
                )
            if field != FAST and not re.fullmatch(r"\d{1,3}", field):
                raise ValueError(
                    f"{tempo}: {shown(field)} is not a number of whole seconds (the lift may be X)"
                )
            if field != FAST and int(field) > LONGEST_S:
                raise ValueError(f"{tempo}: {field} s is too long; the most is {LONGEST_S} s")
        lower, low_pause, lift, high_pause = fields
        return cls(int(lower), int(low_pause), None if lift == FAST else int(lift), int(high_pause))

    @property
    def text(self) -> str:
        """The tempo in the trade's notation."""
        lift = FAST if self.lift is None else str(self.lift)
        return f"{self.lower}-{self.low_pause}-{lift}-{self.high_pause}"

    @property
    def fast(self) -> bool:
        """True where the lift is meant as fast as possible."""
        return self.lift is None

    @property
    def longest_pause(self) -> int:
        """The longer of the two pauses, in seconds."""
        return max(self.low_pause, self.high_pause)


def _read(value: Any) -> Tempo:
    if isinstance(value, bool) or not isinstance(value, str | int | float):
        raise refuse("tempo", f"a tempo is expected here: {_EXAMPLE}")
    try:
        return Tempo.parse(str(value))
    except ValueError as error:
        raise refuse("tempo", str(error)) from None


TempoText = Annotated[
    Tempo,
    BeforeValidator(_read),
    WithJsonSchema(
        {"type": "string", "pattern": r"^\d{1,2}[-/]\d{1,2}[-/](\d{1,2}|[Xx])[-/]\d{1,2}$"}
        | {"examples": ["3-1-X-0", "2-0-1-0"]}
    ),
]
"""A tempo, written ``3-1-X-0``."""
