"""The loads of a strip set, the repetitions to expect on each, and strips without plates."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from strength_handbook.calc.outwards import outwards
from strength_handbook.calc.registry import OutOfRangeError
from strength_handbook.calc.strip_reps import (
    K_BENCH_PRESS,
    K_GENERAL,
    K_LEG_PRESS,
    strip_rep_range,
)
from strength_handbook.model.drop import Drop
from strength_handbook.model.exercise import Exercise
from strength_handbook.model.loading import OnBar, OnMachine
from strength_handbook.model.methods import Strip
from strength_handbook.model.words import Pattern
from strength_handbook.plan.scale import Scale

WINDOW = 5
"""A strip may miss what it should leave by so many points: plates come in few sizes."""

MASS_WINDOW = 0.25
"""A strip by a mass may take off so much more or less of it. Common practice, no source."""


@dataclass(frozen=True, slots=True)
class StripLoad:
    """One load of a strip set.

    Attributes:
        amount: grams, units of a machine, or percent of the first load.
        parts: plates on one side, inner to outer; in the order in which they come off again.
        off: plates taken off on each side to get there, outermost first; empty for the first load.
        reps_low: repetitions to expect at least,
        reps_high: and at most; both 0 for the first load and where nothing is known.
        hold: one side at a time could tip the bar in its rack.
    """

    amount: float
    parts: tuple[int, ...] = ()
    off: tuple[int, ...] = ()
    reps_low: float = 0.0
    reps_high: float = 0.0
    hold: bool = False

    @property
    def expected(self) -> tuple[int, int]:
        """Whole repetitions to expect, at least one at least; both 0 where nothing is known."""
        low, high = outwards(self.reps_low, self.reps_high)
        return (max(1, int(low)), int(high)) if high else (0, 0)


StripLoads = tuple[StripLoad, ...]


def reps_constant(exercise: Exercise) -> float:
    """Repetitions constant of a lift: leg press and bench press have one of their own.

    Nuzzo 2024: more repetitions on the leg press than on the bench press at the same percentage.
    """
    if isinstance(exercise.load, OnMachine) and exercise.pattern is Pattern.SQUAT:
        return K_LEG_PRESS
    if isinstance(exercise.load, OnBar) and exercise.pattern is Pattern.HORIZONTAL_PUSH:
        return K_BENCH_PRESS
    return K_GENERAL


def aim_percent(drop: Drop) -> int:
    """What each strip should leave of the load before it, in whole percent."""
    return round(100 - drop.amount)


def fixed_strip(scale: Scale, asked: Strip, first_g: int) -> StripLoads | None:
    """Loads of a strip set from things with fixed masses; None where the next one is too far."""
    if asked.drop.kind == "plates":
        return None
    step = next((one for one in scale.steps if one.grams == first_g), None)
    loads = [] if step is None else [StripLoad(step.grams, step.parts)]
    while step is not None and len(loads) < asked.loads:
        low, aim, high = _left(step.grams, asked.drop)
        lighter = [one for one in scale.steps if low <= one.grams <= high]
        if not lighter:
            return None
        step = min(lighter, key=lambda one: abs(one.grams - aim))
        loads.append(StripLoad(step.grams, step.parts))
    return tuple(loads) or None


def _left(before: float, drop: Drop) -> tuple[float, float, float]:
    """What a strip may leave at least, should leave, and may leave at most."""
    if drop.kind == "mass":
        return tuple(  # type: ignore[return-value]  # three of them
            round(before - drop.amount * share, 3)
            for share in (1 + MASS_WINDOW, 1, 1 - MASS_WINDOW)
        )
    aim = aim_percent(drop)
    return before * (aim - WINDOW) / 100, before * aim / 100, before * min(aim + WINDOW, 99) / 100


def unit_strip(exist: tuple[float, ...], asked: Strip, first: float) -> StripLoads:
    """Settings of a machine, each the nearest to the share of the one before; always lighter.

    Units are not kilograms and no plates: a strip by those has no settings.
    """
    if asked.drop.kind != "share":
        return ()
    loads, before = [StripLoad(first)], first
    while len(loads) < asked.loads:
        aim = before * (100 - asked.drop.amount) / 100
        lighter = [value for value in exist if value < before]
        if not lighter:
            break
        before = min(lighter, key=lambda value: abs(value - aim))
        loads.append(StripLoad(before))
    return tuple(loads)


def with_reps(loads: StripLoads, k: float, felt: Sequence[float] | None = None) -> StripLoads:
    """The loads with the repetitions each strip is likely to give.

    Args:
        loads: heaviest first.
        k: repetitions constant of the lift.
        felt: what a repetition moves with each; the loads themselves where None.
    """
    moved = felt if felt is not None else [one.amount for one in loads]
    found = list(loads[:1])
    for one, (before, now) in zip(loads[1:], pairwise(moved), strict=True):
        try:
            reps = strip_rep_range(now / before, k)
            found.append(replace(one, reps_low=reps.low, reps_high=reps.high))
        except (OutOfRangeError, ZeroDivisionError):
            found.append(one)
    return tuple(found)
