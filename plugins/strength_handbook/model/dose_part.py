"""Part of a dose, as written: every key may be left out.

The week leaves out what the slot says, the slot what the exercise says; `dose` puts them together.
"""

from typing import Annotated, Literal

from pydantic import Field, PlainValidator, WithJsonSchema, model_validator

from strength_handbook.model.count import RepsText, SetsText, TopText
from strength_handbook.model.load import LoadText
from strength_handbook.model.marks import Compared
from strength_handbook.model.methods import (
    Assist,
    BandsOn,
    ChainsOn,
    Cluster,
    Density,
    Pause,
    Push,
    Strip,
    Team,
    Test,
)
from strength_handbook.model.plain import DECIMAL, WHOLE, Name, within
from strength_handbook.model.quantities import (
    Metres,
    Percent,
    Seconds,
    read_duration,
    read_length,
    read_percent,
)
from strength_handbook.model.shape import Shape, refuse
from strength_handbook.model.span import REST_PATTERN, read_rest
from strength_handbook.model.tempo import TempoText

SetTime = Annotated[Seconds, within(read_duration, "1 s", "40 min")]
RestTime = Annotated[
    float,
    PlainValidator(read_rest),  # nothing after it that would make a bare float of a range
    WithJsonSchema(
        {"type": "string", "pattern": REST_PATTERN, "examples": ["2:30", "90 s", "60-90 s"]}
    ),
]


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


Kept = Annotated[Percent, within(read_percent, "10 %", "150 %")]

WORK_FIELDS = ("reps", "hold", "distance", "time", "cluster", "strip")
"""The ways to say what one set is; a dose has exactly one."""


class DosePart(Shape):
    """Part of a dose; what it leaves out comes from the part under it."""

    sets: Annotated[SetsText | None, Compared("sets")] = None
    """How many sets."""
    reps: Annotated[RepsText | None, Compared("reps")] = None
    """Repetitions a set: ``5``, ``8-12`` or ``5+``."""
    hold: Annotated[SetTime | None, Compared("hold_s")] = None
    """Seconds a hold lasts."""
    distance: Annotated[
        Annotated[Metres, within(read_length, "1 m", "1000 m")] | None, Compared("distance_m")
    ] = None
    """How far to carry or drag."""
    time: Annotated[SetTime | None, Compared("time_s")] = None
    """How long to work, for sets by the clock."""
    cluster: Cluster | None = None
    """A set in parts with short pauses."""
    strip: Strip | None = None
    """A set with weight coming off on the way."""
    load: Annotated[LoadText | None, Compared("load")] = None
    """How heavy: percent of the base, kilograms, share of body mass …"""
    top: TopText | None = None
    """Ramp up to today's best load for so many repetitions first, such as ``5RM``."""
    last_set: OpenSet | None = None
    """The last set, left open."""
    tempo: Annotated[TempoText | None, Compared("tempo")] = None
    """Lower-pause-lift-pause in seconds, X for as fast as possible."""
    rir: Annotated[Annotated[int, Field(ge=0, le=9), WHOLE] | None, Compared("rir")] = None
    """Good repetitions left at the end of each set."""
    rpe: Annotated[Annotated[float, Field(ge=1, le=10), DECIMAL] | None, Compared("rir")] = None
    """Effort from 1 to 10 instead; 10 less the repetitions left."""
    rest: Annotated[RestTime | None, Compared("rest_s")] = None
    """Rest after a set, or after a round of paired exercises."""
    every: Annotated[
        Annotated[Seconds, within(read_duration, "1 s", "30 min")] | None, Compared("every_s")
    ] = None
    """Start a set at this interval, rest included."""
    each_side: Annotated[bool | None, Compared("each_side")] = None
    """Done with one side, then with the other; counts twice."""
    cap: Annotated[int, Field(ge=1, le=200), WHOLE] | None = None
    """For an open set: repetitions at which to stop however easy it is."""
    position: Name | None = None
    """For holds: the position, by an angle or a landmark."""
    pause: Pause | None = None
    """A hold inside each repetition."""
    push: Push | None = None
    """For holds against something that does not move."""
    return_by: Name | None = None
    """For lowering only: how the weight gets back up."""
    bands: BandsOn | None = None
    chains: ChainsOn | None = None
    assist: Assist | None = None
    """What takes weight off a body-weight lift."""
    density: Density | None = None
    """As many as possible in the time."""
    team: Team | None = None
    """One thing carried by several."""
    test: Test | None = None
    """Finding today's best."""
    height: Annotated[Metres, within(read_length, "5 cm", "1.5 m")] | None = None
    """Of a box or hurdle."""
    settings: dict[Name, Name] = Field(default_factory=dict, max_length=8)
    """Of a machine: seat, pin, back."""
    training_max: Annotated[Percent, within(read_percent, "70 %", "100 %")] | None = None
    """What share of the tested value a training max is."""
    breathe: Name | None = None
    """When to breathe, in a few words."""
    range_: Name | None = None
    """How far to go: 'to a 40 cm box'."""
    intent: Literal["fast", "controlled", "slow"] | None = None
    """What the lift should feel like."""
    remark: Name | None = None
    """Effort or manner in the coach's words, such as 'heavy'; nothing is counted of it."""
    deload_of: Annotated[Annotated[int, Field(ge=1, le=60), WHOLE] | None, Compared("sets")] = None
    """Take the dose of that week, and less of it:"""
    keep_sets: Annotated[Kept | None, Compared("sets")] = None
    """so much of its sets,"""
    keep_load: Annotated[Kept | None, Compared("load")] = None
    """of its load,"""
    keep_hold: Annotated[Kept | None, Compared("hold_s")] = None
    """and of its seconds."""
    note: Name | None = None
    """One short sentence for this week."""

    @model_validator(mode="after")
    def _one_kind_of_work(self) -> "DosePart":
        given = [name for name in WORK_FIELDS if getattr(self, name) is not None]
        if len(given) > 1:
            raise refuse(
                "two-kinds",
                f"a set has one of {', '.join(WORK_FIELDS[:-1])} or {WORK_FIELDS[-1]}; here are "
                f"{' and '.join(given)}",
            )
        for one, other in (("rir", "rpe"), ("rest", "every")):
            if getattr(self, one) is not None and getattr(self, other) is not None:
                raise refuse("two-kinds", f"write either {one} or {other}, not both")
        return self
