"""Does the load of a lift rise in steps that a week can build?"""

import math
from collections.abc import Iterator
from dataclasses import replace

from strength_handbook.calc.volume import percent_change
from strength_handbook.model.dose import Reps
from strength_handbook.model.load import (
    FixedLoad,
    Load,
    PercentOfBase,
    PercentOfSystem,
    PercentOfTrainingMax,
)
from strength_handbook.plan.loads import PlannedLoad
from strength_handbook.plan.scale import Scale
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.desk import Desk, SlotAt
from strength_handbook.review.finding import Finding, Mending
from strength_handbook.review.patterns import LOWER, UPPER
from strength_handbook.review.slips import slips
from strength_handbook.review.weeks import (
    EPSILON,
    is_derived,
    is_training,
    recent_numbers,
)
from strength_handbook.review.words import number, weight


@check(
    "load-step",
    Family.VOLUME,
    Severity.WARN,
    what="Load of a lift against the larger of its loads in the last two training weeks, at the "
    "same repetitions, in percent and in loads that exist; one load more is always allowed.",
    why="Steps beyond ten percent outrun what a week can build.",
    rules=("load-step-lower", "load-step-upper"),
    source="position stand 2009: steps of 2 to 10 % of the load",
)
def load_step(this: Check, desk: Desk) -> Iterator[Finding]:
    """Lifts that get heavier in too large a step."""
    earlier = recent_numbers(desk)
    last: dict[tuple[str, str, str, object], list[SlotAt]] = {}
    wrong = slips(desk)
    for at in desk.slots:
        dose, pattern = at.slot.dose, at.slot.exercise.pattern
        plain = isinstance(dose.work, Reps) and dose.load is not None and not dose.said.test
        if not plain or pattern not in (*LOWER, *UPPER) or not is_training(at):
            continue
        key = (at.program.id, at.session.id, at.slot.exercise_id, dose.work)
        weeks = earlier.get((at.program.id, at.number), [])
        recent = [one for one in last.get(key, []) if one.number in weeks]
        if at not in wrong:
            last[key] = [at, *last.get(key, [])[:1]]
        if not recent or recent[0].number != weeks[0]:
            continue
        most = desk.rule("load-step-lower" if pattern in LOWER else "load-step-upper")
        steps = [(_largest_step(one, at, most, desk.book.room.units), one) for one in recent]
        if all(step for step, _ in steps):
            step, before = steps[0]
            text = f"{step}; at most {most:g} % more at the same repetitions"
            yield this.finds(at, text, spot=at.spot_of("load"), change=_lighter(before, at, most))


def _largest_step(before: SlotAt, at: SlotAt, most: float, units: str) -> str:
    """Both loads in words where the step is too large for somebody; else nothing."""
    known = before.slot.loads.keys() & at.slot.loads.keys()
    for name in sorted(known):
        one, other = before.slot.loads[name], at.slot.loads[name]
        planned = percent_change(_planned(one), _planned(other))
        actual = percent_change(_actual(one), _actual(other))
        if planned is None or actual is None or min(planned, actual) <= most + EPSILON:
            continue
        if _loads_between(at.slot.scale, one, other) > 1:
            rise = number(round(actual, 1))
            return (
                f"{weight(_actual(other), units)} for {name} in week {at.number} after "
                f"{weight(_actual(one), units)} in week {before.number}: {rise} % more"
            )
    if not known and at.slot.percent and before.slot.percent:
        percent = percent_change(before.slot.percent, at.slot.percent) or 0.0
        if percent > most + EPSILON:
            return (
                f"{at.slot.percent:g} % in week {at.number} after {before.slot.percent:g} % in "
                f"week {before.number}: {number(round(percent, 1))} % more"
            )
    return ""


def _planned(load: PlannedLoad) -> float:
    return max(0.0, load.planned_g + load.body_g)


def _actual(load: PlannedLoad) -> float:
    return 0.0 if load.actual_g is None else max(0.0, load.actual_g + load.body_g)


def _loads_between(scale: Scale | None, one: PlannedLoad, other: PlannedLoad) -> int:
    """How many loads that exist lie in the step; many where nobody counts them."""
    if scale is None or one.step is None or other.step is None:
        return 2
    return sum(one.step.grams < step.grams <= other.step.grams for step in scale.steps)


def _lighter(before: SlotAt, at: SlotAt, most: float) -> Mending | None:
    """The heaviest load of the same kind that is within the step."""
    had, now = before.slot.dose.load, at.slot.dose.load
    if had is None or now is None or type(had) is not type(now) or is_derived(at):
        return None
    load = _raised(had, 1 + most / 100)
    if load is None:
        return None
    text = load.text.replace(",", ".")
    return Mending(f"write '{text}'", at.rewritten(load=text))


def _raised(load: Load, factor: float) -> Load | None:
    """A load made heavier, rounded down to half a percent or half a unit of mass."""
    if isinstance(load, PercentOfBase | PercentOfSystem | PercentOfTrainingMax):
        return replace(load, percent=_halves(load.percent * factor))
    if isinstance(load, FixedLoad) and load.mass.unit == "kg":
        grams = round(1000 * _halves(load.mass.grams * factor / 1000))
        return FixedLoad(replace(load.mass, grams=grams))
    return None


def _halves(value: float) -> float:
    return math.floor(2 * value + EPSILON) / 2
