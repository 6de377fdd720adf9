"""Sets in parts with short pauses, sets by the clock, and sets as many as fit into a time."""

from dataclasses import dataclass

from strength_handbook.dose.one_set import rep_seconds
from strength_handbook.dose.share import Pace, open_reps
from strength_handbook.model.book import Book
from strength_handbook.model.dose import Clock, ClusterSet, Dose
from strength_handbook.model.span import middle_of
from strength_handbook.plan.minutes import work_seconds


@dataclass(frozen=True, slots=True)
class BrokenSet:
    """A cluster or a rest-pause set.

    Attributes:
        falling: the parts get shorter: rest-pause.
        reps: repetitions of one set, one side.
        total: repetitions of all sets, both sides.
        seconds: of one set, pauses and both sides included.
    """

    falling: bool
    reps: int
    total: int
    seconds: float


@dataclass(frozen=True, slots=True)
class SetInterval:
    """Sets that start at fixed times.

    Attributes:
        every_s: from the start of one set to the start of the next.
        starts_s: when each set starts; the first at 0.
        work_s: seconds of one set.
        total_s: until the last set is done.
    """

    every_s: float
    starts_s: tuple[float, ...]
    work_s: float
    total_s: float

    @property
    def fits(self) -> bool:
        """True where a set is done before the next one starts."""
        return self.work_s < self.every_s


@dataclass(frozen=True, slots=True)
class TimedSets:
    """Sets that last so long.

    Attributes:
        work_s: seconds of work, one side.
        rest_s: seconds until the next one starts.
        ratio: rest as a multiple of work.
        total_s: until the last set is done.
    """

    work_s: float
    rest_s: float
    ratio: float
    total_s: float


@dataclass(frozen=True, slots=True)
class DensityPlan:
    """As many as possible in the time.

    Attributes:
        total: repetitions that the pace gives, all together; a span where none is given.
        each: what one person does of them.
        sharing: people who take turns.
    """

    total: float
    each: float
    sharing: int


def broken_set(book: Book, dose: Dose) -> BrokenSet | None:
    """Repetitions and seconds of a set in parts; None for other sets."""
    if not isinstance(dose.work, ClusterSet):
        return None
    cluster = dose.work.cluster
    total = dose.sets.high * cluster.reps * (2 if dose.each_side else 1)
    return BrokenSet(cluster.falling, cluster.reps, total, work_seconds(book, dose))


def interval(book: Book, dose: Dose) -> SetInterval | None:
    """When each set starts; None where sets are not started by the clock."""
    if dose.every is None:
        return None
    starts = tuple(number * dose.every for number in range(dose.sets.high))
    work = work_seconds(book, dose)
    return SetInterval(dose.every, starts, work, starts[-1] + work)


def timed_sets(dose: Dose) -> TimedSets | None:
    """Work and rest of sets by the clock; None where the rest is not said."""
    if not isinstance(dose.work, Clock) or dose.said.density is not None:
        return None
    work = middle_of(dose.work.seconds)
    rest = dose.rest if dose.every is None else dose.every - work
    sets = dose.sets.high * (2 if dose.each_side else 1)
    if rest is None or rest <= 0 or sets < 2:  # after the only set nothing is left to compare
        return None
    return TimedSets(work, rest, rest / work, sets * (work + rest) - rest)


def density(book: Book, dose: Dose) -> DensityPlan | None:
    """Repetitions that the pace gives, or a usual one; None for other sets."""
    asked = dose.said.density
    if asked is None or not isinstance(dose.work, Clock):
        return None
    if asked.pace is None:
        pace = Pace(dose, rep_seconds(book.rule, dose), book.rule)
        usual = open_reps(middle_of(dose.work.seconds), pace)
        return DensityPlan(usual, usual, 1)
    total = int(asked.pace * dose.work.seconds / 60 + 1e-9)
    return DensityPlan(total, total // asked.sharing, asked.sharing)
