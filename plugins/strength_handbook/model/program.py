"""A program: waves of weeks, sessions of slots, and the tested values that percentages refer to."""

from typing import Annotated, Any, Literal, get_args

from pydantic import BeforeValidator, Field, model_validator

from strength_handbook.model.dose import DosePart
from strength_handbook.model.dose_part import Kept
from strength_handbook.model.exercise import Text
from strength_handbook.model.masses import Weight
from strength_handbook.model.plain import WHOLE, Name, within
from strength_handbook.model.progress import ProgressText
from strength_handbook.model.quantities import BodyMass, Seconds, read_duration
from strength_handbook.model.reason import Reason
from strength_handbook.model.shape import Id, Shape, refuse
from strength_handbook.model.tempo import TempoText
from strength_handbook.model.weeks import DateText, MondayText, WeekList, WeekNumber, WeeksText


def _read_version(value: Any) -> Any:
    if isinstance(value, float):
        raise refuse("text", "put quotes around a version with a point in it, such as '2026.10'")
    return value


Version = Annotated[Name, BeforeValidator(_read_version)]
"""A version; ``2026.10`` without quotes would be a number, and the same as ``2026.1``."""
Lines = Annotated[list[Text], Field(max_length=20)]
Order = Annotated[str, Field(pattern=r"^[A-Z][1-9]?$")]
Letter = Annotated[str, Field(pattern=r"^[A-Z]$")]
Weekday = Literal["monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"]

WEEKDAYS: tuple[str, ...] = get_args(Weekday)
"""The days in order, as a coach writes them."""


class Slot(DosePart):
    """One exercise in a session. Dose fields written here hold for every week."""

    order: Order
    """A, B1, B2 …: the same letter is done in turn."""
    exercise: Id
    """Name of its file in `exercises/`, without `.yml`."""
    purpose: Text | None = None
    """Why it is here, in a few words."""
    base: Id | None = None
    """The tested value that percentages refer to."""
    progress: ProgressText | None = None
    """How it goes on: `linear +2.5 kg`, `double +2 kg`, `hold +5 s to 60 s` …"""
    doors: dict[Literal["easier", "harder", "hurts", "taken", "no-partner"], Text] = Field(
        default_factory=dict
    )
    """Doors that differ in this slot."""
    weeks: dict[WeekNumber, DosePart | None] = Field(min_length=1)
    """The dose of each week; a week that is left out skips the exercise."""

    @property
    def letter(self) -> str:
        """The letter that pairs it with its neighbours."""
        return self.order[0]


class Variant(Shape):
    """A session made less, for when something happened."""

    when: Text
    """What happened: 'Called out in the last 24 hours'."""
    keep_sets: Kept = 100.0
    """How much of the sets stays."""
    keep_load: Kept = 100.0
    """How much of the load stays."""
    leave_out: list[Order] = Field(default_factory=list, max_length=20)
    """Slots that are left out, by their order."""
    tempo: TempoText | None = None
    """Takes the place of every slower tempo."""


class Session(Shape):
    """One visit."""

    title: Name
    """Its name."""
    purpose: Text
    """What it is for, in one line."""
    day: Weekday | None = None
    optional: bool = False
    supervised: bool = True
    """The coach is in the room."""
    warm_up: Lines = Field(default_factory=list)
    """What to do first, one line each."""
    variants: list[Variant] = Field(default_factory=list, max_length=6)
    """The same session for another day: called out last night, only 45 minutes."""
    cut_first: Text | None = None
    """What to leave out when late."""
    rotate: list[Letter] = Field(default_factory=list, max_length=8)
    """Letters that are done in turn, each pair beginning with another one: `[C, D, E]`."""
    slots: list[Slot] = Field(min_length=1, max_length=30)
    """Its exercises in order."""

    @model_validator(mode="after")
    def _rotation(self) -> "Session":
        letters = {slot.letter for slot in self.slots}
        for letter in self.rotate:
            if letter not in letters:
                raise refuse("form", f"'rotate' names {letter}; no slot here has that letter")
        if len(self.rotate) == 1 or len(set(self.rotate)) < len(self.rotate):
            raise refuse("form", "'rotate' takes two or more different letters, such as [C, D, E]")
        return self


class Wave(Shape):
    """One file `<n>-<wave>.yml`: some weeks with one emphasis."""

    wave: Name
    """Its name."""
    emphasis: Literal["eccentric", "isometric", "speed", "strength", "size", "endurance", "general"]
    """What it is mainly for."""
    promise: Text
    """What members will feel, in one sentence."""
    weeks: WeeksText
    """Its weeks, counted through the whole program, such as `1-4`."""
    deload: WeekList = ()
    """Weeks of less: `4`, or `[4, 8]`."""
    tests: WeekList = ()
    """Weeks with tests."""
    sessions: dict[Id, Session] = Field(min_length=1, max_length=14)
    """The visits of one week."""


class Base(Shape):
    """A tested value."""

    name: Name
    """How members know it: 'Trap-bar deadlift, best single'."""
    exercise: Id
    """What is tested."""
    kind: Literal["1RM", "system"] = "1RM"
    """`system`: body share plus what was added, for body-weight lifts."""
    from_: Weight
    """Lowest value of the look-up strip,"""
    to: Weight
    """its highest,"""
    by: Weight
    """and its step."""
    tested: DateText | None = None
    """The day of the test; what was tested long ago is reported."""


class Goal(Shape):
    """What the program is for, and how we will know."""

    goal: Text
    """What members will be able to do."""
    test: Text
    """What is measured."""
    base: Id | None = None
    """The tested value, where it is one."""
    exercise: Id | None = None


UpToAnHour = Annotated[Seconds, within(read_duration, "0 s", "60 min")]


Age = Literal["under-18", "adult", "over-65"]


class Group(Shape):
    """Who trains at once."""

    sharing: Annotated[int, Field(ge=1, le=4), WHOLE] = 1
    """How many share a station."""
    members: Annotated[int, Field(ge=1, le=200), WHOLE] = 1
    """How many in one start group."""
    starts: Annotated[int, Field(ge=1, le=8), WHOLE] = 1
    """How many start groups there are in one evening."""
    apart: Annotated[Seconds, within(read_duration, "0 s", "240 min")] = 0.0
    """Time from the start of one group to the start of the next."""
    ages: list[Age] = Field(default_factory=list, max_length=3)
    """Ages in the group, for those that ask for more care: `[under-18, adult, over-65]`."""


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

    name: Name
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

    program: Name
    """Its title."""
    need: list[Text] = Field(min_length=1, max_length=20)
    """What members do outside the gym, and what that asks for."""
    not_for: Lines = Field(default_factory=list)
    """Who talks to the coach or a clinician before starting."""
    start: MondayText | None = None
    """Monday of week 1."""
    weeks_off: Annotated[int, Field(ge=0, le=52), WHOLE] = 0
    """Weeks without training before week 1."""
    time_cap: Seconds | None = None
    """Door to door."""
    warm_up: UpToAnHour = 600.0
    """Minutes before the first exercise."""
    close: UpToAnHour = 300.0
    """Minutes to put away and cool down."""
    group: Group = Field(default_factory=Group)
    goals: list[Goal] = Field(min_length=1, max_length=20)
    """What it is for, each with a test."""
    bases: dict[Id, Base] = Field(default_factory=dict, max_length=40)
    """The tested values that percentages refer to."""
    rules: Lines = Field(default_factory=list)
    """Special conditions: on call, holidays."""
    events: list[Event] = Field(default_factory=list, max_length=40)
    """Known events that need fresh legs."""
    version: Version
    """Printed on every page; raise it when something changes."""
    valid_until: DateText | None = None
    accepted: list[Accepted] = Field(default_factory=list, max_length=60)
    """Warnings that may stand, each with its reason."""


class Lifter(Shape):
    """Numbers only, never a name."""

    bodyweight: BodyMass
    """Body mass, with its unit."""
    bases: dict[Id, Weight] = Field(default_factory=dict, max_length=40)
    """Tested values, by the name of the base."""


class Lifters(Shape):
    """`lifters.yml`: number-only profiles that the pages use as examples."""

    lifters: dict[Annotated[str, Field(pattern=r"^P[1-9][0-9]?$")], Lifter] = Field(
        default_factory=dict, max_length=12
    )
