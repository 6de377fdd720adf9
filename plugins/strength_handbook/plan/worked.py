"""What a program comes to: every week's sessions with loads, minutes and volumes, as types."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from strength_handbook.calc.repetitions import RepBand
from strength_handbook.model.best import Best
from strength_handbook.model.book import Book
from strength_handbook.model.dose import Dose
from strength_handbook.model.exercise import Exercise
from strength_handbook.model.program import Base, Program, Wave
from strength_handbook.model.session import Session, Slot
from strength_handbook.model.span import ends, middle_of
from strength_handbook.plan.aims import AimStrip
from strength_handbook.plan.help import Assisted
from strength_handbook.plan.loads import (
    PlannedLoad,
)
from strength_handbook.plan.minutes import Minutes
from strength_handbook.plan.scale import Scale
from strength_handbook.plan.strip_load import StripLoads
from strength_handbook.plan.variable import OnTop, Variable
from strength_handbook.plan.volume import Volume


@dataclass(frozen=True, eq=False)
class WorkedSlot:
    """One exercise in one session of one week.

    Attributes:
        slot: as written.
        exercise_id: address of its page.
        exercise: the exercise.
        dose: the complete dose.
        base_id: what percentages refer to, or None.
        base: the same as an entry of the program, or None.
        percent: percent of the base that the load comes to, or None.
        scale: the loads that exist, or None.
        loads: load of each example lifter for whom it can be known.
        reps_possible: repetitions most people can do at that percentage and tempo, or None.
        volume: sums of the slot.
        on_top: bands or chains that hang on the bar, or None.
        variable: the load with them of each example lifter for whom it can be known.
        assisted: the band that takes weight off, and the next easier one, or None.
        strips: loads of each example lifter's strip set; None where the room allows none.
        easy: it is done in a week of less.
        best: what a pace or a share of a best refers to, or None.
        aims: the look-up strip of that pace or share, or None.
        series: sets that differ, as a slot for each that are alike, in order; empty where all sets
            are alike. Then volumes are of all of them, and loads those of the heaviest.
    """

    slot: Slot
    exercise_id: str
    exercise: Exercise
    dose: Dose
    base_id: str | None
    base: Base | None
    percent: float | None
    scale: Scale | None
    loads: Mapping[str, PlannedLoad]
    reps_possible: RepBand | None
    volume: Volume
    on_top: OnTop | None = None
    variable: Mapping[str, Variable] = field(default_factory=dict)
    assisted: Assisted | None = None
    strips: Mapping[str, StripLoads | None] = field(default_factory=dict)
    easy: bool = False
    best: Best | None = None
    aims: AimStrip | None = None
    series: tuple["WorkedSlot", ...] = ()

    @property
    def alike(self) -> "tuple[WorkedSlot, ...]":
        """Its sets, as a slot for each that are alike; of most slots the slot itself."""
        return self.series or (self,)

    @property
    def loads_differ(self) -> bool:
        """True where not all of its sets have one load."""
        return len({(one.dose.load, one.percent) for one in self.alike}) > 1

    @property
    def heaviest_percent(self) -> float | None:
        """The same where a load may be heavier or lighter, at its upper end."""
        share: float | None = getattr(self.dose.load, "percent", None)
        if self.percent is None or not share:
            return self.percent
        return self.percent * ends(share)[1] / middle_of(share)

    @property
    def order(self) -> str:
        """A, B1, B2 …"""
        return self.slot.order


@dataclass(frozen=True, eq=False)
class WorkedSession:
    """One session of one week."""

    id: str
    week: int
    session: Session
    slots: tuple[WorkedSlot, ...]
    minutes: Minutes
    volume: Volume


@dataclass(frozen=True, eq=False)
class WorkedWeek:
    """One week."""

    week: int
    wave_id: str
    wave: Wave
    sessions: tuple[WorkedSession, ...]
    volume: Volume

    @property
    def deload(self) -> bool:
        """True for a week of less."""
        return self.week in self.wave.deload


@dataclass(frozen=True, eq=False)
class WorkedProgram:
    """A whole program."""

    id: str
    program: Program
    weeks: tuple[WorkedWeek, ...]

    def week(self, number: int) -> WorkedWeek:
        """A week by its number.

        Raises:
            KeyError: where there is no such week.
        """
        for week in self.weeks:
            if week.week == number:
                return week
        raise KeyError(number)


@dataclass(frozen=True, slots=True)
class Use:
    """Where an exercise is used."""

    program: WorkedProgram
    week: WorkedWeek
    session: WorkedSession
    slot: WorkedSlot


@dataclass(frozen=True, eq=False)
class Worked:
    """Everything worked out.

    Attributes:
        book: what was written.
        programs: the programs.
        scales: loads that exist for each exercise, by its id.
        uses: where each exercise is used, by its id, in order of time.
    """

    book: Book
    programs: tuple[WorkedProgram, ...]
    scales: Mapping[str, Scale | None]
    uses: Mapping[str, tuple[Use, ...]] = field(default_factory=dict)
