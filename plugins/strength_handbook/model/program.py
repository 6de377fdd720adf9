"""A program: waves of weeks, who trains, and the tested values that percentages refer to."""

import re
from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, Field, model_validator

from strength_handbook.model.best import Best
from strength_handbook.model.doors import Text
from strength_handbook.model.goal import Goal
from strength_handbook.model.marks import Compared, Label, NamesThings, NotCompared
from strength_handbook.model.masses import Weight
from strength_handbook.model.plain import WHOLE, Name, within
from strength_handbook.model.quantities import Seconds, read_duration
from strength_handbook.model.reason import Reason
from strength_handbook.model.session import Lines, Session
from strength_handbook.model.shape import Id, Shape, refuse
from strength_handbook.model.weeks import DateText, MondayText, Weekday, WeekList, WeeksText


def _read_version(value: Any) -> Any:
    if isinstance(value, float):
        raise refuse("text", "put quotes around a version with a point in it, such as '2026.10'")
    return value


Version = Annotated[Name, BeforeValidator(_read_version), Label("a number or a month")]
"""A version; ``2026.10`` without quotes would be a number, and the same as ``2026.1``."""
NeedText = Annotated[Text, NamesThings("where and with what members work is named here")]


class Wave(Shape):
    """One file `<n>-<wave>.yml`: some weeks with one emphasis."""

    wave: Annotated[Name, Label("the name of a wave"), Compared("wave_name")]
    """Its name."""
    emphasis: Literal["eccentric", "isometric", "speed", "strength", "size", "endurance", "general"]
    """What it is mainly for."""
    promise: Annotated[Text, Compared("promise")]
    """What members will feel, in one sentence."""
    weeks: Annotated[WeeksText, Compared("weeks")]
    """Its weeks, counted through the whole program, such as `1-4`."""
    deload: Annotated[WeekList, Compared("deload")] = ()
    """Weeks of less: `4`, or `[4, 8]`."""
    tests: WeekList = ()
    """Weeks with tests."""
    sessions: Annotated[dict[Id, Session], Compared("sessions")] = Field(
        min_length=1, max_length=14
    )
    """The visits of one week."""


def _single(kind: object) -> object:
    """Percentages are of one repetition, whatever was tested."""
    if isinstance(kind, str) and re.fullmatch(r"(?:[2-9]|1\d)\s?RM", kind.strip(), re.IGNORECASE):
        text = (
            "percentages are of a best single: write 'kind: 1RM', and name it so. Whoever has "
            f"tested {kind.split('R')[0].split('r')[0].strip()} repetitions gets the single from "
            "'My numbers'"
        )
        raise refuse("form", text)
    return kind


class Base(Shape):
    """A tested value."""

    name: Annotated[Name, Label("the name of a tested value")]
    """How members know it: 'Trap-bar deadlift, best single'."""
    exercise: Id
    """What is tested."""
    kind: Annotated[Literal["1RM", "system"], BeforeValidator(_single)] = "1RM"
    """`system`: body share plus what was added, for body-weight lifts."""
    from_: Weight
    """Lowest value of the look-up strip,"""
    to: Weight
    """its highest,"""
    by: Weight
    """and its step."""
    tested: DateText | None = None
    """The day of the test; what was tested long ago is reported."""


UpToAnHour = Annotated[Seconds, within(read_duration, "0 s", "60 min")]


Age = Literal["under-18", "adult", "over-65"]


class Group(Shape):
    """Who trains at once."""

    sharing: Annotated[int, Field(ge=1, le=4), WHOLE, Compared("group")] = 1
    """How many share a station."""
    members: Annotated[int, Field(ge=1, le=200), WHOLE, Compared("group")] = 1
    """How many in one start group."""
    starts: Annotated[int, Field(ge=1, le=8), WHOLE, Compared("group")] = 1
    """How many start groups there are in one evening."""
    apart: Annotated[Seconds, within(read_duration, "0 s", "240 min"), Compared("group")] = 0.0
    """Time from the start of one group to the start of the next."""
    ages: Annotated[list[Age], Compared("group")] = Field(default_factory=list, max_length=3)
    """Ages in the group, for those that ask for more care: `[under-18, adult, over-65]`."""

    @property
    def company(self) -> str:
        """Who are at one station together: ``member``, ``pair``, ``group of three``."""
        return ("member", "pair", "group of three", "group of four")[self.sharing - 1]


class Accepted(Shape):
    """A warning that the coach has looked at and lets stand."""

    finding: Id
    """Its short word, such as `rest-short`."""
    at: Annotated[str, Field(min_length=2, max_length=200)]
    """What it is about, word for word as `strength-handbook check` prints it."""
    reason: Reason
    """Why it may stand, for whoever takes over."""
    until: DateText | None = None
    """The day on which it must be looked at again; the end of its wave if left out."""


class Event(Shape):
    """Something that needs fresh legs: a race, a hut trip, a match."""

    name: Annotated[Name, Label("the name of a race, a trip, a match")]
    """What it is: 'Hill race'."""
    date: DateText | None = None
    """Its day,"""
    week: Annotated[int, Field(ge=1, le=60), WHOLE] | None = None
    """or its week of the program,"""
    day: Weekday | None = None
    """with its weekday where that is known."""

    @model_validator(mode="after")
    def _one_way(self) -> "Event":
        if (self.date is None) == (self.week is None):
            raise refuse("pair", "write either 'date' or 'week' (and 'day' if it is known)")
        if self.date is not None and self.day is not None:
            raise refuse("pair", "the date says the weekday; leave 'day' out")
        return self


class Program(Shape):
    """`program.yml`: what all waves have in common."""

    program: Annotated[Name, Label("the name of a program"), Compared("title")]
    """Its title."""
    need: Annotated[list[NeedText], Field(min_length=1, max_length=20)]
    """What members do outside the gym, and what that asks for."""
    not_for: Annotated[Lines, Compared("notices")] = Field(default_factory=list)
    """Who talks to the coach or a clinician before starting."""
    start: Annotated[MondayText | None, Compared("start")] = None
    """Monday of week 1."""
    weeks_off: Annotated[int, Field(ge=0, le=52), WHOLE] = 0
    """Weeks without training before week 1."""
    time_cap: Annotated[Seconds | None, Compared("group")] = None
    """Door to door."""
    warm_up: UpToAnHour = 600.0
    """Minutes before the first exercise."""
    close: UpToAnHour = 300.0
    """Minutes to put away and cool down."""
    group: Annotated[Group, Compared("group")] = Field(default_factory=Group)
    goals: Annotated[list[Goal], Compared("goals")] = Field(min_length=1, max_length=20)
    """What it is for, each with a test."""
    bases: dict[Id, Base] = Field(default_factory=dict, max_length=40)
    """The tested values that percentages refer to."""
    bests: dict[Id, Best] = Field(default_factory=dict, max_length=20)
    """The tested bests that paces and powers of rowing, running and the like refer to."""
    rules: Annotated[Lines, Compared("notices")] = Field(default_factory=list)
    """Special conditions: on call, holidays."""
    events: list[Event] = Field(default_factory=list, max_length=40)
    """Known events that need fresh legs."""
    version: Annotated[Version, Compared("version")]
    """Printed on every page; raise it when something changes."""
    valid_until: Annotated[DateText | None, Compared("valid_until")] = None
    accepted: Annotated[list[Accepted], NotCompared("only the coach reads it")] = Field(
        default_factory=list, max_length=60
    )
    """Warnings that may stand, each with its reason."""

    @model_validator(mode="after")
    def _one_name_each(self) -> "Program":
        for key in self.bests:
            if key in self.bases:
                raise refuse("twice", f"'{key}' stands under 'bases' and 'bests'; rename one")
        return self

    @property
    def references(self) -> tuple[str, ...]:
        """Names of all tested values and bests that a slot can refer to."""
        return (*self.bases, *self.bests)
