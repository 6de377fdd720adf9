"""Part of a dose, as written: every key may be left out.

The week leaves out what the slot says, the slot what the exercise says; `dose` puts them together.
"""

from collections.abc import Iterator
from typing import Annotated, Any, Literal

from pydantic import Field, PlainValidator, WithJsonSchema, model_validator

from strength_handbook.model.count import RepsText, SetsText, TopText
from strength_handbook.model.going import RateText, Talk
from strength_handbook.model.load import Load, LoadText, PercentOfTop
from strength_handbook.model.marks import Compared
from strength_handbook.model.methods import (
    Assist,
    BandsOn,
    ChainsOn,
    Cluster,
    Density,
    Effort,
    Pause,
    Push,
    RepsLeft,
    RestTime,
    SeriesPart,
    Strip,
    Team,
    Test,
)
from strength_handbook.model.plain import WHOLE, Name, within
from strength_handbook.model.quantities import (
    Metres,
    Percent,
    Seconds,
    read_duration,
    read_length,
    read_percent,
)
from strength_handbook.model.shape import Shape, refuse
from strength_handbook.model.span import LONGEST_GOING_S, REST_PATTERN, read_far, read_work
from strength_handbook.model.tempo import TempoText

_TIMES = WithJsonSchema(
    {"type": "string", "pattern": REST_PATTERN, "examples": ["30 s", "20-30 s", "20 min"]}
)
# Nothing after the validator that would make a bare float of a range.
HoldTime = Annotated[float, PlainValidator(read_work), _TIMES]
SetTime = Annotated[float, PlainValidator(lambda value: read_work(value, LONGEST_GOING_S)), _TIMES]

_FAR = r"\d+([.,]\d+)?\s*(km|miles?|mi|m|cm|mm|ft|in|yd)"
HowFar = Annotated[
    float,
    PlainValidator(read_far),
    WithJsonSchema(
        {
            "type": "string",
            "pattern": rf"^(\d+([.,]\d+)?\s*(km|mi|m|ft|yd)?\s*[-–]\s*)?{_FAR}$",
            "examples": ["40 m", "20-30 m", "5 km"],
        }
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

MOST_PARTS = 20
"""Parts of sets that differ."""

WORK_FIELDS = ("reps", "hold", "distance", "time", "cluster", "strip", "series")
"""The ways to say what one set is; a dose has exactly one."""

BESIDE_NO_SERIES = (
    "sets", "load", "last_set", "top", "test", "density", "bands", "chains", "team", "push",
)  # fmt: skip
"""What sets that differ can't have beside them; a load only where none of them has its own."""


def refused_beside(key: str) -> str:
    """Why sets that differ don't go with another key, and what to write."""
    advice = _INSTEAD.get(key, "give each its own slot, with an order of its own")
    return f"sets that differ don't go with '{key.replace('_', '-')}'; {advice}"


_INSTEAD = {
    "sets": "each part says how many it has, such as '1x5 @ 85 %, 3x5 @ 75 %'",
    "load": "each part has its own load already: write these sets anew, or leave this out",
    "last_set": "write the last one open, such as '5 @ 65 %, 3 @ 75 %, 1+ @ 85 %'",
    "rest": "each part has its own rest already; leave one of them out",
}


class DosePart(Shape):
    """Part of a dose; what it leaves out comes from the part under it."""

    sets: Annotated[SetsText | None, Compared("sets")] = None
    """How many sets."""
    reps: Annotated[RepsText | None, Compared("reps")] = None
    """Repetitions a set: ``5``, ``8-12`` or ``5+``."""
    hold: Annotated[HoldTime | None, Compared("hold_s")] = None
    """Seconds a hold lasts: ``30 s`` or ``20-30 s``."""
    distance: Annotated[HowFar | None, Compared("distance_m")] = None
    """How far to carry, drag, row, run …: ``40 m``, ``20-30 m``, ``5 km``, ``3 miles``."""
    time: Annotated[SetTime | None, Compared("time_s")] = None
    """How long to work, for sets by the clock: ``40 s`` or ``30-40 s``."""
    cluster: Cluster | None = None
    """A set in parts with short pauses."""
    strip: Strip | None = None
    """A set with weight coming off on the way."""
    series: Annotated[
        Annotated[list[SeriesPart], Field(min_length=2, max_length=MOST_PARTS)] | None,
        Compared("series"),
    ] = None
    """Sets that differ, in the order in which they are done."""
    load: Annotated[LoadText | None, Compared("load")] = None
    """How heavy: percent of the base, kilograms, share of body mass …"""
    top: TopText | None = None
    """Ramp up to today's best load for so many repetitions first, such as ``5RM``, or to one that
    leaves some, ``5 @ RPE 8``."""
    last_set: OpenSet | None = None
    """The last set, left open."""
    tempo: Annotated[TempoText | None, Compared("tempo")] = None
    """Lower-pause-lift-pause in seconds, X for as fast as possible."""
    rir: Annotated[RepsLeft | None, Compared("rir")] = None
    """Good repetitions left at the end of each set: ``2`` or ``2-3``."""
    rpe: Annotated[Effort | None, Compared("rir")] = None
    """Effort from 1 to 10 instead, ``8`` or ``7-8``; 10 less the repetitions left."""
    rate: Annotated[RateText | None, Compared("rate")] = None
    """Strokes, turns or steps a minute: ``24 spm``, ``22-26 spm`` or ``90 rpm``."""
    talk: Annotated[Talk | None, Compared("talk")] = None
    """Whether one can talk on the way: ``can``, ``just`` or ``cannot``."""
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

    @model_validator(mode="after")
    def _sets_that_differ(self) -> "DosePart":
        series = self.series or []
        loads = [one.load for one in series if one.load is not None]
        for key in BESIDE_NO_SERIES if series else ():
            value = getattr(self, key)
            if value not in (None, "none") and (key != "load" or loads):
                raise refuse("series", refused_beside(key))
        for what, advice in _unfit(series, loads, every=self.every is not None):
            raise refuse("series", f"{what}; {advice}")
        return self


def _unfit(
    series: list[SeriesPart], loads: list[Load], *, every: bool
) -> Iterator[tuple[str, str]]:
    """What sets that differ can't say, and what to write."""
    if loads and len(loads) < len(series):
        yield "some of these sets have a load, and some have none", "write one for each or for none"
    if len({type(one) for one in loads}) > 1:
        yield (
            "these sets have loads of several kinds",
            "write all in percent or all as masses, such as '5 @ 65 %, 3 @ 75 %'",
        )
    if any(isinstance(one, PercentOfTop) for one in loads):
        yield (
            "shares of today's top set can't differ in one slot",
            "give each its own slot, with an order of its own",
        )
    if any(one.reps.open for one in series[:-1]) or (series and _many_open(series[-1])):
        yield (
            "only the very last of sets that differ can be open",
            "write a number for the others, such as '5 @ 65 %, 3 @ 75 %, 1+ @ 85 %'",
        )
    if every and any(one.rest is not None for one in series):
        yield "write either rest or every, not both", "one interval holds for all of these sets"


def _many_open(part: SeriesPart) -> bool:
    return part.reps.open and part.sets > 1


_EXCLUSIVE = (
    frozenset(WORK_FIELDS),
    frozenset({"rest", "every"}),
    frozenset({"rir", "rpe", "talk"}),
)
"""Keys that replace each other: a week that asks for a hold replaces the slot's repetitions."""

_OF_SETS = frozenset({"sets", "last_set", "cap"})
"""What a dose says of its sets, which others that differ replace."""


def merged(parts: tuple[DosePart, ...]) -> dict[str, Any]:
    """The values of several parts together, the most particular first, by field."""
    values: dict[str, Any] = {}
    for part in reversed(parts):
        own = {
            name: value
            for name in DosePart.model_fields
            if (value := getattr(part, name)) is not None and value != {}
        }
        for group in _EXCLUSIVE:
            if group & own.keys():
                values = {name: value for name, value in values.items() if name not in group}
        if "series" in own:  # they say how many there are of which load
            loads = {"load"} if any(one.load is not None for one in own["series"]) else set()
            values = {name: value for name, value in values.items() if name not in _OF_SETS | loads}
        values |= own
    return values
