"""What lies before a check: the worked programs, the files they stand in, and the day.

Checks go through `slots`, `sessions` and `weeks`; each of them knows what it is called (`at`) and
where it is written (`spot`).
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import date, timedelta
from functools import cached_property
from itertools import islice

from strength_handbook.model.book import Book
from strength_handbook.model.weeks import WEEKDAYS
from strength_handbook.plan.worked import (
    Worked,
    WorkedProgram,
    WorkedSession,
    WorkedSlot,
    WorkedWeek,
)
from strength_handbook.reading.source import Path, Plain, Source
from strength_handbook.reading.written import Written
from strength_handbook.review.finding import At, Edit, Spot


@dataclass(frozen=True, eq=False)
class WeekAt:
    """One week of a program and the file of its wave.

    Attributes:
        program: the program.
        week: the week.
        wave: the file.
    """

    program: WorkedProgram
    week: WorkedWeek
    wave: Source

    @property
    def number(self) -> int:
        """Number of the week."""
        return self.week.week

    @property
    def at(self) -> At:
        """What it is called."""
        return At(weeks=(self.number,))

    @property
    def spot(self) -> Spot:
        """The line that says which weeks there are."""
        return Spot(self.wave, ("weeks",))

    @property
    def wave_at(self) -> At:
        """What its wave is called."""
        return At(f"wave {self.week.wave_id}")


@dataclass(frozen=True, eq=False)
class SessionAt(WeekAt):
    """One session of one week and where it is written.

    Attributes:
        session: the session.
    """

    session: WorkedSession

    @property
    def path(self) -> Path:
        """Where the session is in the file of its wave."""
        return ("sessions", self.session.id)

    @property
    def at(self) -> At:
        """What it is called."""
        return At(self.session.id, (self.number,))

    @property
    def spot(self) -> Spot:
        """The session's name in the file."""
        return Spot(self.wave, self.path, key=True)

    @property
    def day(self) -> date | None:
        """Its date, where the program has a start and the session a weekday."""
        start, weekday = self.program.program.start, self.session.session.day
        if start is None or weekday is None:
            return None
        return start + timedelta(weeks=self.number - 1, days=WEEKDAYS.index(weekday))

    @property
    def hours(self) -> int | None:
        """Hours from the Monday of week 1 to this session, by its weekday; None without one."""
        weekday = self.session.session.day
        if weekday is None:
            return None
        return 24 * (7 * (self.number - 1) + WEEKDAYS.index(weekday))


@dataclass(frozen=True, eq=False)
class SlotAt(SessionAt):
    """One slot of one session in one week and where it is written.

    Attributes:
        slot: the slot, worked out.
        index: its place in the session's list of slots.
        exercise: the file of its exercise.
        place: among sets that differ, where only those that are alike are looked at.
    """

    slot: WorkedSlot
    index: int
    exercise: Source
    place: int | None = None

    @property
    def path(self) -> Path:
        """Where the slot is in the file of its wave."""
        return ("sessions", self.session.id, "slots", self.index)

    @property
    def dose_path(self) -> Path:
        """Where this week's dose is."""
        return (*self.path, "weeks", str(self.number))

    @property
    def at(self) -> At:
        """What it is called."""
        what = f"{self.session.id} {self.slot.order} {self.slot.exercise_id}"
        return At(what, (self.number,))

    @property
    def spot(self) -> Spot:
        """The week's dose."""
        return Spot(self.wave, self.dose_path, key=True)

    def spot_of(self, *keys: str) -> Spot:
        """Where the first of some keys of the dose is written: in the week, else in the slot.

        The week's dose as a whole, where neither says it: what an exercise says for all programs
        is not to be changed for one.
        """
        own = [] if self.place is None else [("series", self.place)]
        for start in (self.dose_path, self.path):
            for inner in (*own, ()):
                for key in keys:
                    if (*start, *inner, key) in self.wave.marks:
                        return Spot(self.wave, (*start, *inner, key))
        return self.spot

    def says(self, key: str) -> bool:
        """True where week, slot or exercise has this key of the dose."""
        return any((*start, key) in source.marks for start, source in self._levels())

    def rewritten(self, *drop: str, **write: Plain) -> tuple[Edit, ...]:
        """Edits of this week's dose: keys to write (with ``_`` for ``-``), keys to take out.

        A key that slot or exercise say can only be written over, not taken out. Which of sets that
        differ is to be another is the coach's to say: then there are none.
        """
        if (self.slot.series or self.place is not None) and _OF_SETS & write.keys():
            return ()
        edits: list[Edit] = [
            Edit(self.wave.file, (*self.dose_path, key), remove=True)
            for key in drop
            if (*self.dose_path, key) in self.wave.marks
        ]
        for key, value in write.items():
            name = key.rstrip("_").replace("_", "-")
            edits.append(Edit(self.wave.file, (*self.dose_path, name), value))
        return tuple(edits)

    def _levels(self) -> Iterator[tuple[Path, Source]]:
        yield self.dose_path, self.wave
        yield self.path, self.wave
        yield ("dose",), self.exercise


_OF_SETS = frozenset({"sets", "reps", "load", "last_set"})
"""What sets that differ each have of their own."""


@dataclass(frozen=True, eq=False)
class Desk:
    """Everything a check may look at.

    Attributes:
        worked: the programs worked out.
        written: the files they were read from.
        today: the day of the check.
    """

    worked: Worked
    written: Written
    today: date

    @property
    def book(self) -> Book:
        """What was written."""
        return self.worked.book

    def rule(self, slug: str) -> float:
        """The value of a house rule.

        Raises:
            KeyError: where there is no such rule.
        """
        return self.book.rule(slug)

    @cached_property
    def slots(self) -> tuple[SlotAt, ...]:
        """Every slot of every week, in order of time."""
        return tuple(slot for session in self.sessions for slot in self._slots(session))

    @cached_property
    def alike(self) -> tuple[SlotAt, ...]:
        """The same, and of sets that differ those that are alike, one after the other."""
        return tuple(one for at in self.slots for one in self.alike_of(at))

    def alike_of(self, at: SlotAt) -> tuple[SlotAt, ...]:
        """A slot, or of sets that differ those that are alike, one after the other."""
        if not at.slot.series:
            return (at,)
        return tuple(replace(at, slot=one, place=place) for place, one in enumerate(at.slot.series))

    @cached_property
    def sessions(self) -> tuple[SessionAt, ...]:
        """Every session of every week, in order of time."""
        return tuple(
            SessionAt(one.program, one.week, one.wave, session)
            for one in self.weeks
            for session in one.week.sessions
        )

    @cached_property
    def weeks(self) -> tuple[WeekAt, ...]:
        """Every week of every program, in order."""
        found: list[WeekAt] = []
        for program in self.worked.programs:
            files = {file.id: file.source for file in self.written.waves_of(program.id)}
            found += (WeekAt(program, week, files[week.wave_id]) for week in program.weeks)
        return tuple(found)

    def slots_by_session(self) -> Iterator[tuple[SessionAt, tuple[SlotAt, ...]]]:
        """Each session with its slots in order."""
        slots = iter(self.slots)
        for session in self.sessions:
            yield session, tuple(islice(slots, len(session.session.slots)))

    def exercise_spot(self, exercise: str, *path: str | int) -> Spot:
        """A place in an exercise's file."""
        return Spot(self.written.exercises[exercise].source, path)

    def room_spot(self, *path: str | int, key: bool = False) -> Spot:
        """A place in room.yml."""
        assert self.written.room is not None  # noqa: S101  # no book without a room
        return Spot(self.written.room.source, path, key=key)

    def program_spot(self, program: str, *path: str | int, key: bool = False) -> Spot:
        """A place in a program.yml."""
        return Spot(self.written.programs[program].source, path, key=key)

    def last_use(self, program: WorkedProgram) -> date | None:
        """The last day of a program: by its start and weeks, else its `valid-until`."""
        start = program.program.start
        if start is not None and program.weeks:
            return start + timedelta(weeks=program.weeks[-1].week, days=-1)
        return program.program.valid_until

    def _slots(self, at: SessionAt) -> Iterator[SlotAt]:
        for slot in at.session.slots:
            place = at.session.session.place_of(slot.order, at.session.week)
            yield SlotAt(
                at.program, at.week, at.wave, at.session, slot, place,
                self.written.exercises[slot.exercise_id].source,
            )  # fmt: skip
