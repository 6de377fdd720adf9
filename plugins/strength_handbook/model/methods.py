"""Ways of doing a set that are more than sets and repetitions; each is one key of a dose.

What each comes to in loads, repetitions and seconds is worked out in `plan.method_plan`.
"""

from typing import Annotated

from pydantic import AfterValidator, Field, PlainValidator, WithJsonSchema, model_validator

from strength_handbook.model.count import Count, RepsText
from strength_handbook.model.drop import DropText, drop_share
from strength_handbook.model.load import LoadText
from strength_handbook.model.plain import WHOLE, Name, within
from strength_handbook.model.quantities import (
    MassText,
    Percent,
    Seconds,
    read_duration,
    read_percent,
)
from strength_handbook.model.shape import Id, Shape, refuse
from strength_handbook.model.span import (
    EFFORT_PATTERN,
    LEFT_PATTERN,
    REST_PATTERN,
    read_effort,
    read_left,
    read_rest,
)

ShortPause = Annotated[Seconds, within(read_duration, "1 s", "60 s")]
RestTime = Annotated[
    float,
    PlainValidator(read_rest),  # nothing after it that would make a bare float of a range
    WithJsonSchema(
        {"type": "string", "pattern": REST_PATTERN, "examples": ["2:30", "90 s", "60-90 s"]}
    ),
]
RepsLeft = Annotated[
    float,
    PlainValidator(read_left),
    WithJsonSchema(
        {
            "anyOf": [
                {"type": "integer", "minimum": 0, "maximum": 9},
                {"type": "string", "pattern": LEFT_PATTERN, "examples": ["2-3"]},
            ]
        }
    ),
]
Effort = Annotated[
    float,
    PlainValidator(read_effort),
    WithJsonSchema(
        {
            "anyOf": [
                {"type": "number", "minimum": 1, "maximum": 10},
                {"type": "string", "pattern": EFFORT_PATTERN, "examples": ["7-8"]},
            ]
        }
    ),
]
Share = Annotated[Percent, within(read_percent, "1 %", "60 %")]


def _closed(count: Count) -> Count:
    if count.open:
        raise refuse("count", f"{count.text} has no end; write a number, or a range such as '6-8'")
    return count


class Cluster(Shape):
    """One set in parts with short pauses: equal parts are a cluster, falling ones rest-pause."""

    parts: list[Annotated[int, Field(ge=1, le=30), WHOLE]] = Field(min_length=2, max_length=8)
    """Repetitions of each part, such as ``[2, 2, 2]``."""
    pause: ShortPause
    """Between the parts."""

    @property
    def reps(self) -> int:
        """Repetitions of one whole set."""
        return sum(self.parts)

    @property
    def falling(self) -> bool:
        """True where the parts are not all alike: rest-pause."""
        return len(set(self.parts)) > 1


class Strip(Shape):
    """Weight comes off without rest, and on it goes: a drop or strip set."""

    loads: Annotated[int, Field(ge=2, le=6), WHOLE]
    """How many loads in all."""
    drop: DropText = drop_share(20)
    """What each strip takes off: ``20 %`` of the present load, ``10 kg`` in all, or ``1 plate``
    (from each end of a bar, else from what hangs or lies there)."""
    reps: Annotated[RepsText, AfterValidator(_closed)] | None = None
    """Repetitions with each load: ``6``, or ``6-8``."""
    total: Annotated[RepsText, AfterValidator(_closed)] | None = None
    """Repetitions in all, which end the set: ``36``, or ``30-36``."""
    within_: Annotated[Seconds, within(read_duration, "10 s", "10 min")] | None = None
    """The longest the whole set may last."""

    @model_validator(mode="after")
    def _enough(self) -> "Strip":
        if self.total is not None and self.total.low < self.loads:
            raise refuse(
                "count", f"{self.total.text} in all are fewer than one for each of the loads"
            )
        return self

    @property
    def counted(self) -> Count | None:
        """Repetitions of one set, both ways of counting; None where nothing is said."""
        if self.total is not None:
            return self.total
        return self.reps and Count(self.loads * self.reps.low, self.loads * self.reps.high)


class SeriesPart(Shape):
    """Sets of one kind among sets that differ; what it leaves out the dose says for all."""

    sets: Annotated[int, Field(ge=1, le=20), WHOLE]
    """How many of them."""
    reps: RepsText
    """Repetitions of each: ``5``, ``8-12``, or of the very last set ``1+``."""
    load: LoadText | None = None
    """How heavy they are."""
    rest: RestTime | None = None
    """Rest after each of them."""


class BandsOn(Shape):
    """Bands between bar and peg: more weight at the top than at the bottom."""

    top_share: Share | None = None
    """What the bands should add at the top, as percent of the base; the handbook picks a pair."""
    pair: list[Id] = Field(default_factory=list, max_length=2)
    """Or the two bands by their numbers: left, right."""

    @model_validator(mode="after")
    def _one_way(self) -> "BandsOn":
        if (self.top_share is None) == (not self.pair):
            raise refuse("pair", "write either 'top-share' or 'pair' (two band numbers)")
        if len(self.pair) == 1:
            raise refuse("pair", "a pair has two bands: one for each side")
        return self


class ChainsOn(Shape):
    """Chains that come off the floor as the bar rises."""

    pairs: Annotated[int, Field(ge=1, le=6), WHOLE] | None = None
    """How many pairs of chains."""
    top_share: Share | None = None
    """Or what they should be of the whole load at the top; the handbook picks the number."""

    @model_validator(mode="after")
    def _one_way(self) -> "ChainsOn":
        if (self.top_share is None) == (self.pairs is None):
            raise refuse("pair", "write either 'pairs' or 'top-share'")
        return self


class Pause(Shape):
    """A hold inside each repetition, beside what the tempo says."""

    time: ShortPause
    at: Name
    """Where: 'just off the floor', 'a hand above the box'."""


class Push(Shape):
    """Pushing or pulling against something that does not move."""

    at: Name
    """Pin hole, height or joint angle."""
    ramp: Annotated[Seconds, within(read_duration, "1 s", "5 s")] = 1.0
    """Time over which the force grows; never a jerk."""


class Density(Shape):
    """As many as possible in the time, with a pace that must be kept where it is long."""

    pace: Annotated[int, Field(ge=1, le=60), WHOLE] | None = None
    """Good repetitions a minute below which the set is over. Up to 60 s, and in a week of tests,
    it may be left out: then the clock ends the set."""
    sharing: Annotated[int, Field(ge=1, le=4), WHOLE] = 1
    """How many share the work in turns."""

    @model_validator(mode="after")
    def _shared_at_a_pace(self) -> "Density":
        if self.sharing > 1 and self.pace is None:
            raise refuse("pair", "say the pace too, such as 'pace: 8'")
        return self


class Test(Shape):
    """Finding today's best."""

    __test__ = False  # no test case, whatever its name says to a test runner

    rm: Annotated[int, Field(ge=1, le=10), WHOLE]
    """Repetitions of the best: 1, 3, 5."""
    attempts: Annotated[int, Field(ge=1, le=6), WHOLE] = 4
    """Heavy sets allowed."""


class Team(Shape):
    """One thing carried by several."""

    bearers: Annotated[int, Field(ge=2, le=12), WHOLE]
    mass: MassText
    """Everything that is carried together."""
    turn_every: Annotated[Seconds, within(read_duration, "10 s", "30 min")] | None = None
    """How often bearers change places."""


class Assist(Shape):
    """What takes weight off in a body-weight lift."""

    band: Id | None = None
    """A band of the room that has a measured help."""
    by: Name | None = None
    """Or something else: a machine's counterweight, a partner at the knees."""

    @model_validator(mode="after")
    def _one_way(self) -> "Assist":
        if (self.band is None) == (self.by is None):
            raise refuse("pair", "write either 'band' or 'by'")
        return self
