"""A dose made less: for an easy week, or for half a day."""

import math
from collections.abc import Callable
from dataclasses import replace

from strength_handbook.model.count import Count
from strength_handbook.model.dose import (
    Clock,
    ClusterSet,
    Distance,
    Dose,
    Hold,
    Reps,
    StripSet,
    in_series,
)
from strength_handbook.model.load import Load, PercentOfEffort, scaled
from strength_handbook.model.span import between, ends, out_of_ten


def lighter(dose: Dose, keep_sets: float, keep_load: float, keep_hold: float) -> Dose:
    """A dose with less of everything, for a deload; open sets and strips become plain ones.

    Of sets that differ the first ones stay, in their order.

    Args:
        dose: the dose of a working week.
        keep_sets: percent of its sets, rounded down, never below one.
        keep_load: percent of its load.
        keep_hold: percent of its seconds, rounded to five.
    """
    low = max(1, math.floor(dose.sets.low * keep_sets / 100 + 1e-9))
    high = max(low, math.floor(dose.sets.high * keep_sets / 100 + 1e-9))
    if dose.series:
        return each_alike(first_sets(dose, low), lambda one: lighter(one, 100, keep_load, 100))
    work = dose.work
    match work:
        case Hold() | Clock() if keep_hold == 100:
            pass
        case Hold(seconds):
            work = Hold(_shorter(seconds, keep_hold))
        case Clock(seconds):
            work = Clock(_shorter(seconds, keep_hold))
        case Reps(count):
            work = Reps(Count(count.low, count.high))
        case StripSet() | ClusterSet() | Distance():
            pass
    return replace(
        dose,
        sets=Count(low, high),
        work=work,
        load=_less(dose, keep_load),
        last_set=None,
    )


def _shorter(seconds: float, keep: float) -> float:
    """A percentage of a time, rounded to five seconds, or of both ends of a range."""
    return between(*(max(5.0, 5 * round(end * keep / 500)) for end in ends(seconds)))


def first_sets(dose: Dose, number: int) -> Dose:
    """So many of a dose's sets; of sets that differ the first ones, in their order."""
    if not dose.series:
        return replace(dose, sets=Count(min(number, dose.sets.low), number))
    left, parts = number, []
    for one in dose.series:
        sets = min(left, one.sets.low)
        if sets:
            parts.append(replace(one, sets=Count(sets, sets)))
        left -= sets
    return in_series(parts, dose.said)


def each_alike(dose: Dose, change: Callable[[Dose], Dose]) -> Dose:
    """The dose with a change of what is alike: of itself, or of each part of sets that differ."""
    if not dose.series:
        return change(dose)
    parts = [change(one) for one in dose.series]
    # What a change says of effort and tempo it says of all sets.
    shared = {name: getattr(parts[0].said, name) for name in ("rir", "rpe")}
    return in_series(parts, dose.said.model_copy(update=shared))


def with_reserve(dose: Dose, reserve: float) -> Dose:
    """The dose with so many good repetitions left, said as it was: in repetitions or in effort."""
    in_effort = dose.said.rpe is not None
    effort = {"rir": None, "rpe": out_of_ten(reserve)}
    said = effort if in_effort else {"rir": between(*map(int, ends(reserve))), "rpe": None}

    def one(part: Dose) -> Dose:
        update = part.said.model_copy(update=said)
        return replace(part, reserve=between(*map(float, ends(reserve))), said=update)

    return each_alike(dose, one)


def _less(dose: Dose, keep_load: float) -> Load | None:
    """Its load made less; the share of a load that the effort decides is a load of its own."""
    if keep_load == 100:
        return dose.load
    if dose.load is not None:
        return scaled(dose.load, keep_load / 100)
    if dose.top is not None or dose.reserve is None or not isinstance(dose.work, Reps):
        return None
    return PercentOfEffort(keep_load, dose.reserve)
