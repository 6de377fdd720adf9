"""What a slot asks in one week: how many sets of what, how heavy, how fast, how long to rest.

A dose is written in parts: the week leaves out what the slot says, the slot what the exercise says.
`DosePart` is one such part, with every field optional; `over` lays one part on another.
"""

import re
from dataclasses import dataclass
from typing import Annotated, Any

from pydantic import BeforeValidator, Field, WithJsonSchema, model_validator

from strength_handbook.model.load import Load, LoadText
from strength_handbook.model.quantities import Metres, Seconds
from strength_handbook.model.shape import Shape, refuse
from strength_handbook.model.tempo import Tempo, TempoText


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


def parse_count(text: str) -> Count:
    """Read ``5``, ``8-12`` or ``5+``.

    >>> parse_count("8-12")
    Count(low=8, high=12, open=False)

    Raises:
        ValueError: where the text is no count; the message says what to write.
    """
    found = re.fullmatch(r"(\d{1,3})(?:\s*[-–]\s*(\d{1,3})|(\+))?", text.strip())
    if not found:
        raise ValueError(f"'{text}' is not a count; write a whole number, '8-12' or '5+'")
    low = int(found[1])
    high = int(found[2] or low)
    if low < 1:
        raise ValueError(f"'{text}': a count is 1 or more")
    if high < low:
        raise ValueError(f"'{text}': the range runs backwards; write '{high}-{low}'")
    return Count(low, high, bool(found[3]))


def _read_count(value: Any) -> Count:
    if isinstance(value, bool) or not isinstance(value, str | int | float):
        raise refuse("count", "a whole number is expected here, or a range such as '8-12'")
    try:
        return parse_count(str(value))
    except ValueError as error:
        raise refuse("count", str(error)) from None


CountText = Annotated[
    Count,
    BeforeValidator(_read_count),
    WithJsonSchema(
        {
            "anyOf": [
                {"type": "integer", "minimum": 1},
                {"type": "string", "pattern": r"^\d{1,3}(\s*[-–]\s*\d{1,3}|\+)?$"},
            ]
        }
    ),
]
"""A count: ``5``, ``8-12`` or ``5+``."""


class OpenSet(Shape):
    """The last set, left open: at least the floor, then on to the stop rule."""

    floor: int = Field(ge=1, le=50)
    """Repetitions that must be there."""
    cap: int = Field(ge=1, le=100)
    """Repetitions at which to stop however easy it is."""
    rir: int = Field(ge=0, le=5)
    """Stop with this many good repetitions left."""


WORK_FIELDS = ("reps", "hold", "distance", "time")
"""The four ways to say what one set is; a dose has exactly one."""


class DosePart(Shape):
    """Part of a dose; what it leaves out comes from the part under it."""

    sets: CountText | None = None
    """How many sets."""
    reps: CountText | None = None
    """Repetitions a set: ``5``, ``8-12`` or ``5+``."""
    hold: Seconds | None = None
    """Seconds a hold lasts."""
    distance: Metres | None = None
    """How far to carry or drag."""
    time: Seconds | None = None
    """How long to work, for sets by the clock."""
    load: LoadText | None = None
    """How heavy: percent of the base, kilograms, share of body mass …"""
    top: Annotated[str, Field(pattern=r"^(\d{1,2}RM|none)$")] | None = None
    """Ramp up to today's best load for so many repetitions first, such as ``5RM``."""
    last_set: OpenSet | None = None
    """The last set, left open."""
    tempo: TempoText | None = None
    """Lower-pause-lift-pause in seconds, X for as fast as possible."""
    rir: int | None = Field(default=None, ge=0, le=9)
    """Good repetitions left at the end of each set."""
    rpe: float | None = Field(default=None, ge=1, le=10)
    """Effort from 1 to 10 instead; 10 less the repetitions left."""
    rest: Seconds | None = None
    """Rest after a set, or after a round of paired exercises."""
    every: Seconds | None = None
    """Start a set at this interval, rest included."""
    each_side: bool | None = None
    """Done with one side, then with the other; counts twice."""
    note: str | None = None
    """One short sentence for this week."""

    @model_validator(mode="after")
    def _one_kind_of_work(self) -> "DosePart":
        given = [name for name in WORK_FIELDS if getattr(self, name) is not None]
        if len(given) > 1:
            raise refuse(
                "two-kinds",
                f"a set has one of reps, hold, distance or time; here are {' and '.join(given)}",
            )
        for one, other in (("rir", "rpe"), ("rest", "every")):
            if getattr(self, one) is not None and getattr(self, other) is not None:
                raise refuse("two-kinds", f"write either {one} or {other}, not both")
        return self


@dataclass(frozen=True, slots=True)
class Reps:
    """A set is so many repetitions."""

    count: Count


@dataclass(frozen=True, slots=True)
class Hold:
    """A set is one hold."""

    seconds: float


@dataclass(frozen=True, slots=True)
class Distance:
    """A set is one walk."""

    metres: float


@dataclass(frozen=True, slots=True)
class Clock:
    """A set lasts so long."""

    seconds: float


Work = Reps | Hold | Distance | Clock


@dataclass(frozen=True, slots=True)
class Dose:
    """A complete dose: what one slot asks in one week.

    Attributes:
        sets: how many sets, on each side where `each_side` is set.
        work: what one set is.
        load: how heavy, or None where effort alone decides.
        top: repetitions of the RM to ramp up to first, or None.
        last_set: how the last set is left open, or None.
        tempo: seconds of one repetition, or None.
        reserve: good repetitions left at the end of a set, or None.
        rest: seconds of rest after a set (or a round), or None.
        every: seconds from the start of one set to the start of the next, or None.
        each_side: done with one side, then with the other.
        note: one sentence for this week, or None.
    """

    sets: Count
    work: Work
    load: Load | None = None
    top: int | None = None
    last_set: OpenSet | None = None
    tempo: Tempo | None = None
    reserve: float | None = None
    rest: float | None = None
    every: float | None = None
    each_side: bool = False
    note: str | None = None

    @property
    def reps(self) -> Count | None:
        """Repetitions a set, where a set is counted in repetitions."""
        return self.work.count if isinstance(self.work, Reps) else None


class IncompleteDoseError(ValueError):
    """A dose that leaves something out that nobody has said anywhere.

    Attributes:
        missing: the keys that are missing, in a coach's words.
    """

    def __init__(self, missing: list[str]) -> None:
        self.missing = missing
        super().__init__(f"the dose lacks {' and '.join(missing)}")


_EXCLUSIVE = (frozenset(WORK_FIELDS), frozenset({"rest", "every"}), frozenset({"rir", "rpe"}))
"""Keys that replace each other: a week that asks for a hold replaces the slot's repetitions."""


def complete(*parts: DosePart, each_side: bool = False) -> Dose:
    """One dose from its parts, the most particular first: week, slot, exercise.

    Raises:
        IncompleteDoseError: where no part says how many sets, or of what.
    """
    values: dict[str, Any] = {}
    for part in reversed(parts):
        own = {
            name: value
            for name in DosePart.model_fields
            if (value := getattr(part, name)) is not None
        }
        for group in _EXCLUSIVE:
            if group & own.keys():
                values = {name: value for name, value in values.items() if name not in group}
        values |= own
    work = _work(values)
    missing = [] if "sets" in values else ["sets"]
    if work is None:
        missing.append("reps (or hold, distance or time)")
    if work is None or missing:
        raise IncompleteDoseError(missing)
    top = values.get("top")
    rpe = values.get("rpe")
    return Dose(
        sets=values["sets"],
        work=work,
        load=values.get("load"),
        top=int(top.removesuffix("RM")) if top and top != "none" else None,
        last_set=values.get("last_set"),
        tempo=values.get("tempo"),
        reserve=values.get("rir") if rpe is None else 10 - rpe,
        rest=values.get("rest"),
        every=values.get("every"),
        each_side=values.get("each_side", each_side),
        note=values.get("note"),
    )


def _work(values: dict[str, Any]) -> Work | None:
    kinds: tuple[tuple[str, type[Reps | Hold | Distance | Clock]], ...] = (
        ("reps", Reps), ("hold", Hold), ("distance", Distance), ("time", Clock)
    )  # fmt: skip
    for name, kind in kinds:
        if name in values:
            return kind(values[name])
    return None
