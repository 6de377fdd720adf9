"""A program: waves of weeks, sessions of slots, and the tested values that percentages refer to."""

import re
from datetime import date
from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, Field, WithJsonSchema

from strength_handbook.model.dose import DosePart
from strength_handbook.model.exercise import Text
from strength_handbook.model.quantities import MassText, Seconds
from strength_handbook.model.room import Id
from strength_handbook.model.shape import Shape, refuse


def _read_date(value: Any) -> date:
    try:
        return date.fromisoformat(str(value))
    except ValueError:
        raise refuse("date", f"'{value}' is not a date; write it like 2027-01-04") from None


DateText = Annotated[
    date, BeforeValidator(_read_date), WithJsonSchema({"type": "string", "format": "date"})
]
"""A date, year-month-day."""


def _read_weeks(value: Any) -> tuple[int, ...]:
    text = str(value).strip()
    found = re.fullmatch(r"(\d{1,2})(?:\s*[-–]\s*(\d{1,2}))?", text)
    if not found:
        raise refuse("weeks", f"'{text}' is not a run of weeks; write it like '1-4'")
    first, last = int(found[1]), int(found[2] or found[1])
    if first < 1 or last < first:
        raise refuse("weeks", f"'{text}': weeks count from 1 and run forwards, such as '1-4'")
    return tuple(range(first, last + 1))


WeeksText = Annotated[
    tuple[int, ...],
    BeforeValidator(_read_weeks),
    WithJsonSchema({"type": "string", "pattern": r"^\d{1,2}(\s*[-–]\s*\d{1,2})?$"}),
]
"""A run of weeks, such as ``1-4``."""


def _read_week_list(value: Any) -> tuple[int, ...]:
    entries = value if isinstance(value, list) else str(value).split(",")
    weeks = tuple(str(entry).strip() for entry in entries)
    if not all(re.fullmatch(r"\d{1,2}", week) for week in weeks):
        raise refuse("weeks", f"'{value}' is not a week; write it like '4', or '[4, 8]'")
    return tuple(int(week) for week in weeks)


WeekList = Annotated[
    tuple[int, ...],
    BeforeValidator(_read_week_list),
    WithJsonSchema(
        {"anyOf": [{"type": "integer"}, {"type": "array", "items": {"type": "integer"}}]}
    ),
]
"""Single weeks: ``4`` or ``[4, 8]``."""

WeekNumber = Annotated[int, Field(ge=1, le=60)]
Order = Annotated[str, Field(pattern=r"^[A-Z][1-9]?$")]


class Slot(DosePart):
    """One exercise in a session. Dose fields written here hold for every week."""

    order: Order
    """A, B1, B2 …: the same letter is done in turn."""
    exercise: Id
    purpose: Text | None = None
    """Why it is here, in a few words."""
    base: Id | None = None
    """The tested value that percentages refer to."""
    doors: dict[Literal["easier", "harder", "hurts", "taken", "no-partner"], Text] = Field(
        default_factory=dict
    )
    """Doors that differ in this slot."""
    weeks: dict[WeekNumber, DosePart | None]
    """The dose of each week; a week that is left out skips the exercise."""

    @property
    def letter(self) -> str:
        """The letter that pairs it with its neighbours."""
        return self.order[0]


class Session(Shape):
    """One visit."""

    title: str
    purpose: Text
    """What it is for, in one line."""
    day: (
        Literal["monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"] | None
    ) = None
    optional: bool = False
    warm_up: list[Text] = Field(default_factory=list)
    """What to do first, one line each."""
    cut_first: Text | None = None
    """What to leave out when late."""
    slots: list[Slot] = Field(min_length=1)


class Wave(Shape):
    """One file `<n>-<wave>.yml`: some weeks with one emphasis."""

    wave: str
    """Its name."""
    emphasis: Literal["eccentric", "isometric", "speed", "strength", "size", "endurance", "general"]
    promise: Text
    """What members will feel, in one sentence."""
    weeks: WeeksText
    deload: WeekList = ()
    """Weeks of less: `4`, or `[4, 8]`."""
    tests: WeekList = ()
    """Weeks with tests."""
    sessions: dict[Id, Session] = Field(min_length=1)


class Base(Shape):
    """A tested value."""

    name: str
    """How members know it: 'Trap-bar deadlift, best single'."""
    exercise: Id
    kind: Literal["1RM", "system"] = "1RM"
    """`system`: body share plus what was added, for body-weight lifts."""
    from_: MassText
    """Lowest value of the look-up strip,"""
    to: MassText
    """its highest,"""
    by: MassText
    """and its step."""


class Goal(Shape):
    """What the program is for, and how we will know."""

    goal: Text
    test: Text
    """What is measured."""
    base: Id | None = None
    """The tested value, where it is one."""
    exercise: Id | None = None


class Group(Shape):
    """Who trains at once."""

    sharing: int = Field(default=1, ge=1, le=4)
    """How many share a station."""
    members: int = Field(default=1, ge=1, le=200)
    """How many in one start group."""


class Program(Shape):
    """`program.yml`: what all waves have in common."""

    program: str
    """Its title."""
    need: list[Text] = Field(min_length=1)
    """What members do outside the gym, and what that asks for."""
    not_for: list[Text] = Field(default_factory=list)
    """Who talks to the coach or a clinician before starting."""
    start: DateText | None = None
    """Monday of week 1."""
    time_cap: Seconds | None = None
    """Door to door."""
    warm_up: Seconds = Field(default=600.0, le=3600)
    """Minutes before the first exercise."""
    close: Seconds = Field(default=300.0, le=3600)
    """Minutes to put away and cool down."""
    group: Group = Field(default_factory=Group)
    goals: list[Goal] = Field(min_length=1)
    bases: dict[Id, Base] = Field(default_factory=dict)
    rules: list[Text] = Field(default_factory=list)
    """Special conditions: on call, holidays."""
    version: str
    """Printed on every page; raise it when something changes."""
    valid_until: DateText | None = None


class Lifter(Shape):
    """Numbers only, never a name."""

    bodyweight: MassText
    bases: dict[Id, MassText] = Field(default_factory=dict)


class Lifters(Shape):
    """`lifters.yml`: number-only profiles that the pages use as examples."""

    lifters: dict[Annotated[str, Field(pattern=r"^P[1-9][0-9]?$")], Lifter] = Field(
        default_factory=dict
    )
