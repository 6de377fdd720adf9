"""A session of a program: its slots with the dose of each week, and the same session made less."""

import re
from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, Field, WithJsonSchema, model_validator

from strength_handbook.model.doors import Text
from strength_handbook.model.dose import DosePart
from strength_handbook.model.dose_part import Kept
from strength_handbook.model.marks import Compared, Label, NotProse
from strength_handbook.model.plain import WHOLE, Name, within
from strength_handbook.model.progress import ProgressText
from strength_handbook.model.quantities import Seconds, read_duration
from strength_handbook.model.shape import Id, Shape, refuse
from strength_handbook.model.tempo import TempoText
from strength_handbook.model.weeks import Weekday, WeekNumber

Lines = Annotated[list[Text], Field(max_length=20)]
Order = Annotated[str, Field(pattern=r"^[A-Z][1-9]?$"), NotProse("a letter and a number")]
Letter = Annotated[str, Field(pattern=r"^[A-Z]$"), NotProse("one letter")]


class Slot(DosePart):
    """One exercise in a session. Dose fields written here hold for every week."""

    order: Annotated[Order, Compared("order")]
    """A, B1, B2 …: the same letter is done in turn; another slot may have it in other weeks."""
    exercise: Annotated[Id, Compared("exercise")]
    """Name of its file in `exercises/`, without `.yml`."""
    purpose: Text | None = None
    """Why it is here, in a few words."""
    base: Annotated[Id | None, Compared("base")] = None
    """The tested value that percentages refer to."""
    progress: ProgressText | None = None
    """How it goes on: `linear +2.5 kg`, `double +2 kg`, `hold +5 s to 60 s` …"""
    doors: Annotated[
        dict[Literal["easier", "harder", "hurts", "taken", "no-partner"], Text],
        Compared("own_doors"),
    ] = Field(default_factory=dict)
    """Doors that differ in this slot."""
    weeks: Annotated[dict[WeekNumber, DosePart | None], Compared("weeks")] = Field(min_length=1)
    """The dose of each week; a week that is left out skips the exercise."""

    @property
    def letter(self) -> str:
        """The letter that pairs it with its neighbours."""
        return self.order[0]


def _read_reserve(value: Any) -> Any:
    if isinstance(value, str):
        found = re.fullmatch(r"at least (\d)", " ".join(value.split()))
        return int(found[1]) if found else value
    return value


AtLeast = Annotated[
    int,
    Field(ge=1, le=6),
    WHOLE,
    BeforeValidator(_read_reserve),
    WithJsonSchema({"type": ["integer", "string"], "examples": ["at least 3"]}),
]
"""Repetitions in reserve, written ``at least 3`` or ``3``."""


class Variant(Shape):
    """A session made less, for when something happened."""

    when: Text
    """What happened: 'Called out in the last 24 hours'. Pages and session mode say just that."""
    time: Annotated[Seconds, within(read_duration, "10 min", "4 h")] | None = None
    """The time it is made for, as in ``time: 45 min``. In weeks in which the whole session takes no
    longer it is not offered; where it comes to much less or to more, a check says so."""
    rir: AtLeast | None = None
    """The least that is left in every set: `at least 3`. Effort is then at most 7 of 10."""
    max_efforts: Literal["leave-out", "keep"] = "leave-out"
    """Ramps to today's best, tests and pushes against what does not move: left out unless `keep`.
    A load that followed from the ramp is then chosen by effort."""
    keep_sets: Kept = 100.0
    """How much of the sets stays."""
    keep_load: Kept = 100.0
    """How much of the load stays."""
    leave_out: list[Order] = Field(default_factory=list, max_length=20)
    """Slots that are left out, by their order."""
    tempo: TempoText | None = None
    """Its lowering takes the place of every slower one; pauses and lift stay as they are."""


class Session(Shape):
    """One visit."""

    title: Annotated[Name, Label("the name of a session"), Compared("title")]
    """Its name."""
    purpose: Annotated[Text, Compared("words")]
    """What it is for, in one line."""
    day: Annotated[Weekday | None, Compared("day")] = None
    optional: Annotated[bool, Compared("optional")] = False
    supervised: bool = True
    """The coach is in the room."""
    warm_up: Annotated[Lines, Compared("words")] = Field(default_factory=list)
    """What to do first, one line each."""
    variants: Annotated[list[Variant], Compared("variants")] = Field(
        default_factory=list, max_length=6
    )
    """The same session for another day: called out last night, only 45 minutes."""
    cut_first: Annotated[Text | None, Compared("words")] = None
    """What to leave out when late."""
    rotate: list[Letter] = Field(default_factory=list, max_length=8)
    """Letters that are done in turn, each pair beginning with another one: `[C, D, E]`."""
    slots: Annotated[list[Slot], Compared("slots")] = Field(min_length=1, max_length=30)
    """Its exercises in order."""

    def place_of(self, order: str, week: int) -> int:
        """Which of its slots has an order in a week, from 0; weeks of one order may lie apart.

        Raises:
            StopIteration: where none has.
        """
        slots = enumerate(self.slots)
        return next(n for n, slot in slots if slot.order == order and week in slot.weeks)

    @model_validator(mode="after")
    def _rotation(self) -> "Session":
        letters = {slot.letter for slot in self.slots}
        for letter in self.rotate:
            if letter not in letters:
                raise refuse("form", f"'rotate' names {letter}; no slot here has that letter")
        if len(self.rotate) == 1 or len(set(self.rotate)) < len(self.rotate):
            raise refuse("form", "'rotate' takes two or more different letters, such as [C, D, E]")
        return self
