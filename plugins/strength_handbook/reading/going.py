"""What is rowed or run is done by time or distance; and nothing else is done for so long."""

from collections.abc import Iterator, Mapping
from typing import NamedTuple

from strength_handbook.model.best import Best
from strength_handbook.model.count import Count
from strength_handbook.model.doors import Door
from strength_handbook.model.dose import (
    Clock,
    Distance,
    Dose,
    DosePart,
    IncompleteDoseError,
    InconsistentDoseError,
    complete,
)
from strength_handbook.model.exercise import Exercise
from strength_handbook.model.going import Going
from strength_handbook.model.load import Load, PercentOfBase
from strength_handbook.model.pace import PaceOfBest
from strength_handbook.model.progress import Progress
from strength_handbook.model.shape import quoted
from strength_handbook.model.span import LONGEST_WORK_S, ends
from strength_handbook.reading.doing import going_example
from strength_handbook.reading.suggest import one_of

MOST_CARRY_M = 1000.0
"""Nobody carries or drags something farther in one go."""

LONGEST_TO_THE_END_S = 60.0
"""As many as possible until the time is up, without a pace that ends it, outside of a week of
tests. Common practice, no source."""

_KIND = "write 'load: {kind: endurance, of: run}' in its file where it is run, rowed or ridden"
_ING = {
    "row": "rowing", "ski": "skiing", "ride": "riding", "run": "running", "walk": "walking",
    "swim": "swimming", "step": "stepping",
}  # fmt: skip


class Misfit(NamedTuple):
    """Something that a dose can't ask of its exercise: the key that says it, and what to write."""

    key: str
    text: str


def going_problems(dose: Dose, *, test_week: bool) -> Iterator[Misfit]:
    """What a dose can't ask of its exercise, or of its week."""
    yield from _without_a_pace(dose, test_week=test_week)
    if dose.going is None:
        yield from _too_far(dose)
    else:
        yield from _not_by_pace(dose, dose.going)


def _without_a_pace(dose: Dose, *, test_week: bool) -> Iterator[Misfit]:
    density, work = dose.said.density, dose.work
    if density is None or density.pace is not None or test_week or not isinstance(work, Clock):
        return
    if ends(work.seconds)[1] > LONGEST_TO_THE_END_S:
        yield Misfit(
            "time",
            "say the pace below which the set is over, such as '6 min AMRAP, pace 8/min'; up to "
            f"{LONGEST_TO_THE_END_S:g} s, and in a week of 'tests', the clock may end it",
        )


def _too_far(dose: Dose) -> Iterator[Misfit]:
    work = dose.work
    if isinstance(work, Distance) and ends(work.metres)[1] > MOST_CARRY_M:
        yield Misfit(
            "distance", f"the most is {MOST_CARRY_M:g} m for what is carried or dragged; {_KIND}"
        )
    if isinstance(work, Clock) and ends(work.seconds)[1] > LONGEST_WORK_S:
        yield Misfit("time", f"the most is {LONGEST_WORK_S / 60:g} min for one set; {_KIND}")
    if isinstance(dose.load, PaceOfBest):
        yield Misfit("load", f"a pace belongs to what is rowed, run or ridden; {_KIND}")
    if dose.said.rate is not None and not isinstance(work, Clock | Distance):
        yield Misfit("rate", f"a number a minute belongs to a time or a distance; {_KIND}")


def _not_by_pace(dose: Dose, going: Going) -> Iterator[Misfit]:
    what, example = _ING[going.doing], going_example(going.doing)
    if not isinstance(dose.work, Clock | Distance):
        key = next((key for key in _OTHERS if getattr(dose.said, key) is not None), "")
        yield Misfit(key, f"{what} is done by time or distance; write it like {example}")
    elif isinstance(dose.work, Distance) and not going.per:
        yield Misfit("distance", f"{what} has no distance; write a time, like {example}")
    elif isinstance(dose.work, Clock) and dose.said.density is not None:
        yield Misfit("density", f"{what} has no repetitions to count; write it like {example}")
    if not isinstance(dose.load, PercentOfBase | PaceOfBest | None):
        yield Misfit("load", f"{what} has no load; write how hard it is, like {example}")


def door_problems(door: Door, exercise: Exercise, target: Exercise) -> Iterator[Misfit]:
    """What a door can't ask of the exercise that is done: kilometres of a lift, sets of a row.

    Args:
        door: as it is written.
        exercise: whose door it is.
        target: what is done instead; the same one where the door leads nowhere else.
    """
    going = exercise.going or target.going
    if door.load is not None and going is not None:
        example = "such as 'dose: {rpe: 4}'"
        text = f"{_ING[going.doing]} has no load to take a share of; write what changes in 'dose', "
        yield Misfit("load", text + example)
    if door.dose is None:
        return
    once = DosePart().model_copy(update={"sets": Count(1, 1)})
    try:
        dose = complete(door.dose, target.dose, once, going=target.going)
    except (IncompleteDoseError, InconsistentDoseError):
        return  # told with the week that it leaves open
    for key, text in going_problems(dose, test_week=True):
        if getattr(door.dose, key, None) is not None:
            yield Misfit(key, text)


_OTHERS = ("reps", "hold", "cluster", "strip", "series", "test", "top")
"""Keys that say what a set is, and are no way to row."""


def rule_problem(rule: Progress | None, going: Going | None) -> str:
    """What a rule for going on asks that its exercise has not; empty where it goes together."""
    if rule is None or rule.rule in ("listed", "effort", "time", "sets", "speed"):
        return ""
    if going is None:
        return f"a pace belongs to what is rowed, run or ridden; {_KIND}" * (rule.rule == "pace")
    what = _ING[going.doing]
    if rule.rule in ("pace", "distance"):
        return "" if going.per else f"{what} has no distance; write 'time +1 min' or 'sets +1'"
    far = ", 'distance +500 m' or 'pace -1 s'" if going.per else " or 'listed'"
    instead = f"'time +2 min to 40 min', 'sets +1 to 8'{far}"
    asks = "repetitions" if rule.rule == "reps" else "hold" if rule.rule == "hold" else "load"
    return f"{what} has no {asks}; write {instead}"


def best_problems(bests: Mapping[str, Best], base: str | None, load: Load | None) -> str:
    """What a pace or a share of a best lacks, and what to write; empty where nothing.

    Args:
        bests: the tested bests of the program.
        base: which of them is meant, or None.
        load: what the dose asks.
    """
    if not isinstance(load, PercentOfBase | PaceOfBest):
        return ""
    several = one_of(tuple(bests))
    name = f"name one as the slot's 'base', such as {several}" if bests else _WRITE_BEST
    if base is None or base not in bests:
        return f"{load.text} of which best? {name}"
    if isinstance(load, PaceOfBest) and bests[base].from_.watts:
        return f"{quoted(base)} is in watts and has no pace; write a share, such as '@ 75 %'"
    return ""


_WRITE_BEST = (
    "write one under 'bests' in program.yml, such as 'row-2k: {name: 2 km row, exercise: "
    "rowing-machine, over: 2 km, from: 6:20, to: 9:20, by: 10 s}', and name it as the slot's 'base'"
)
