"""Loads that follow from effort: open sets, repetitions in reserve, and the training max."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from strength_handbook.calc.effort import reserve_is_reliable
from strength_handbook.calc.one_rep_max import MOST_REPS, estimate_one_rep_max
from strength_handbook.calc.outwards import outwards
from strength_handbook.model.book import Book
from strength_handbook.model.dose import Reps
from strength_handbook.model.load import PercentOfEffort, PercentOfTrainingMax
from strength_handbook.model.span import ends, middle_of
from strength_handbook.plan.reference import (
    LoadRules,
    effort_factor,
    is_estimate,
    reference_percent,
)
from strength_handbook.plan.worked import WorkedSlot

REPS_SHOWN = 6
"""Rows of an open set that has no cap."""


@dataclass(frozen=True, slots=True)
class OpenRow:
    """One result of an open set.

    Attributes:
        reps: repetitions done.
        low: best single as a multiple of the load, lowest estimate,
        high: and highest; None beyond what the equations bear.
        caution: too many repetitions for a good estimate.
    """

    reps: int
    low: float | None
    high: float | None
    caution: bool = False

    @property
    def factors(self) -> tuple[float, float] | None:
        """Both in hundredths, rounded outwards."""
        return None if self.low is None or self.high is None else outwards(self.low, self.high, 2)


@dataclass(frozen=True, eq=False)
class OpenSetPlan:
    """What the results of an open set mean.

    Attributes:
        floor: repetitions that must be there.
        reserve: good repetitions left at the end.
        rows: one for each result, from the floor to the cap.
        by_lifter: load of the set in grams, body share included where it moves.
    """

    floor: int
    reserve: float
    rows: tuple[OpenRow, ...]
    by_lifter: Mapping[str, float] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class EffortLoad:
    """A load for repetitions and a reserve, without a percentage.

    Attributes:
        reps: repetitions.
        reserve: good repetitions left.
        percent: percent of the best single that this comes to, or None where nobody can say.
        slow: the tempo makes the repetitions count for more.
        share: percent of that load that an easy week or a variant takes; 100 elsewhere.
        reliable: people judge such a reserve to about one repetition.
    """

    reps: int
    reserve: float
    percent: float | None
    slow: bool
    share: float
    reliable: bool


@dataclass(frozen=True, eq=False)
class TrainingMax:
    """Percent of a training max, and what that is of the tested value.

    Attributes:
        percent: percent of the training max.
        share: the training max as percent of the tested value.
        of_best: percent of the tested value.
        by_lifter: training max of each example lifter in grams.
    """

    percent: float
    share: float
    of_best: float
    by_lifter: Mapping[str, float]


def open_set(slot: WorkedSlot) -> OpenSetPlan | None:
    """What the results of an open set mean; None for other sets."""
    slot = slot.alike[-1]  # of sets that differ the last one may be open
    dose = slot.dose
    if dose.last_set is not None:
        floor, cap, reserve = dose.last_set.floor, dose.last_set.cap, float(dose.last_set.rir)
    elif isinstance(dose.work, Reps) and dose.work.count.open:
        floor, reserve = dose.work.count.low, dose.reserve or 0.0
        cap = dose.said.cap or floor + REPS_SHOWN - 1
    else:
        return None
    rows = tuple(_row(reps, reserve) for reps in range(floor, max(floor, cap) + 1))
    by_lifter = {
        name: load.actual_g + load.body_g
        for name, load in slot.loads.items()
        if load.actual_g is not None and load.actual_g + load.body_g > 0
    }
    return OpenSetPlan(floor, reserve, rows, by_lifter)


def _row(reps: int, reserve: float) -> OpenRow:
    fewest, most = (reps + round(end) for end in ends(reserve))
    if most > MOST_REPS:
        return OpenRow(reps, None, None)
    low, high = estimate_one_rep_max(100, fewest), estimate_one_rep_max(100, most)
    return OpenRow(reps, low.low / 100, high.high / 100, low.caution or high.caution)


def effort_load(slot: WorkedSlot, rules: LoadRules) -> EffortLoad | None:
    """The percentage behind repetitions and a reserve; None where a load is written."""
    dose = slot.dose
    if slot.loads_differ:
        return None
    if not is_estimate(dose) or not isinstance(dose.work, Reps) or dose.reserve is None:
        return None
    return EffortLoad(
        dose.work.count.high,
        dose.reserve,
        reference_percent(dose, rules),
        effort_factor(dose, rules) != 1,
        dose.load.percent if isinstance(dose.load, PercentOfEffort) else 100.0,
        reserve_is_reliable(dose.reserve),
    )


def training_max(book: Book, slot: WorkedSlot) -> TrainingMax | None:
    """Both percentages of a load that refers to a training max; None for other loads."""
    load = slot.dose.load
    if not isinstance(load, PercentOfTrainingMax) or slot.loads_differ:
        return None
    share = slot.dose.said.training_max or book.rule("training-max")
    by_lifter = {
        name: one.reference_g * share / 100 for name, one in slot.loads.items() if one.reference_g
    }
    return TrainingMax(middle_of(load.percent), share, load.percent * share / 100, by_lifter)
