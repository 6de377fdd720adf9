"""Strip sets: loads by taking plates off, how many repetitions to expect."""

from dataclasses import dataclass

from strength_handbook.calc.plates import LoadTable
from strength_handbook.calc.registry import OutOfRangeError
from strength_handbook.calc.strip import strip_plan
from strength_handbook.calc.strip_reps import K_GENERAL, strip_rep_range, strip_stage_range
from strength_handbook.model.methods import Strip


@dataclass(frozen=True, slots=True)
class StripLoad:
    """One load of a strip set.

    Attributes:
        grams: the load.
        off: plates taken off on each side to get there, outermost first; empty for the first load.
        reps_low: repetitions to expect at least,
        reps_high: and at most; both 0 for the first load, which the dose names.
    """

    grams: int
    off: tuple[int, ...]
    reps_low: float
    reps_high: float


@dataclass(frozen=True, slots=True)
class StripSet:
    """A whole strip set.

    Attributes:
        loads: in order.
        fewest: loads needed for the total of repetitions at least,
        most: and at most; None where no total is set.
    """

    loads: tuple[StripLoad, ...]
    fewest: int | None
    most: int | None


def strip_set(
    table: LoadTable, asked: Strip, first_g: int, first_reps: float, k: float = K_GENERAL
) -> StripSet | None:
    """Loads of a strip set from plates that only come off; None where the plates allow none.

    Args:
        table: loads of the bar.
        asked: the strip as written.
        first_g: wanted first load.
        first_reps: repetitions expected on it.
        k: repetitions constant of the lift.
    """
    aim = round(100 - asked.drop)
    plan = strip_plan(
        table, first_g, asked.loads, low_percent=aim - 5, high_percent=aim + 5, aim_percent=aim
    )
    if plan is None:
        return None
    loads: list[StripLoad] = []
    before = 0
    for stage in plan.stages:
        grams = stage.load.total_g
        low = high = 0.0
        if before:
            try:
                expected = strip_rep_range(grams / before, k)
                low, high = expected.low, expected.high
            except OutOfRangeError:
                pass
        loads.append(StripLoad(grams, tuple(reversed(stage.off_g)), low, high))
        before = grams
    fewest = most = None
    if asked.total is not None and first_reps > 0:
        try:
            stages = strip_stage_range(asked.total, first_reps, 1 - asked.drop / 100, k)
            fewest, most = stages.fewest, stages.most
        except OutOfRangeError:
            pass
    return StripSet(tuple(loads), fewest, most)
