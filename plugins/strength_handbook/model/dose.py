"""What a slot asks in one week: how many sets of what, how heavy, how fast, how long to rest.

A dose is written in parts: the week leaves out what the slot says, the slot what the exercise says.
`DosePart` is one such part, with every field optional; `over` lays one part on another.
"""

from dataclasses import dataclass
from typing import Annotated, Any

from pydantic import Field, model_validator

from strength_handbook.model.count import Count, RepsText, SetsText, TopText
from strength_handbook.model.load import Load, LoadText
from strength_handbook.model.plain import DECIMAL, WHOLE, Name, within
from strength_handbook.model.quantities import Metres, Seconds, read_duration, read_length
from strength_handbook.model.shape import Shape, refuse
from strength_handbook.model.tempo import Tempo, TempoText

SetTime = Annotated[Seconds, within(read_duration, "1 s", "60 min")]
RestTime = Annotated[Seconds, within(read_duration, "0 s", "30 min")]


class OpenSet(Shape):
    """The last set, left open: at least the floor, then on to the stop rule."""

    floor: Annotated[int, Field(ge=1, le=50), WHOLE]
    """Repetitions that must be there."""
    cap: Annotated[int, Field(ge=1, le=100), WHOLE]
    """Repetitions at which to stop however easy it is."""
    rir: Annotated[int, Field(ge=0, le=5), WHOLE]
    """Stop with this many good repetitions left."""

    @model_validator(mode="after")
    def _cap_above_floor(self) -> "OpenSet":
        if self.cap < self.floor:
            text = f"the cap, {self.cap}, is below the floor, {self.floor}; write a larger cap"
            raise refuse("range", text)
        return self


WORK_FIELDS = ("reps", "hold", "distance", "time")
"""The four ways to say what one set is; a dose has exactly one."""


class DosePart(Shape):
    """Part of a dose; what it leaves out comes from the part under it."""

    sets: SetsText | None = None
    """How many sets."""
    reps: RepsText | None = None
    """Repetitions a set: ``5``, ``8-12`` or ``5+``."""
    hold: SetTime | None = None
    """Seconds a hold lasts."""
    distance: Annotated[Metres, within(read_length, "1 m", "5000 m")] | None = None
    """How far to carry or drag."""
    time: SetTime | None = None
    """How long to work, for sets by the clock."""
    load: LoadText | None = None
    """How heavy: percent of the base, kilograms, share of body mass …"""
    top: TopText | None = None
    """Ramp up to today's best load for so many repetitions first, such as ``5RM``."""
    last_set: OpenSet | None = None
    """The last set, left open."""
    tempo: TempoText | None = None
    """Lower-pause-lift-pause in seconds, X for as fast as possible."""
    rir: Annotated[int, Field(ge=0, le=9), WHOLE] | None = None
    """Good repetitions left at the end of each set."""
    rpe: Annotated[float, Field(ge=1, le=10), DECIMAL] | None = None
    """Effort from 1 to 10 instead; 10 less the repetitions left."""
    rest: RestTime | None = None
    """Rest after a set, or after a round of paired exercises."""
    every: Annotated[Seconds, within(read_duration, "1 s", "30 min")] | None = None
    """Start a set at this interval, rest included."""
    each_side: bool | None = None
    """Done with one side, then with the other; counts twice."""
    note: Name | None = None
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
