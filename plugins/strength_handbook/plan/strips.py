"""Strip sets: loads by taking weight off, repetitions to expect, and the bar in its rack."""

from collections import Counter
from dataclasses import dataclass, replace
from itertools import islice, pairwise

from strength_handbook.calc.plates import LoadTable
from strength_handbook.calc.registry import OutOfRangeError
from strength_handbook.calc.strip import strip_plan
from strength_handbook.calc.strip_reps import (
    K_BENCH_PRESS,
    K_GENERAL,
    K_LEG_PRESS,
    strip_rep_range,
)
from strength_handbook.model.exercise import Exercise
from strength_handbook.model.loading import OnBar, OnMachine
from strength_handbook.model.methods import Strip
from strength_handbook.model.room import Bar, Plate, Rack, Room
from strength_handbook.model.words import Pattern
from strength_handbook.plan import tipover
from strength_handbook.plan.scales import Scale

WINDOW = 5
"""A strip may miss what it should leave by so many points: plates come in few sizes."""


@dataclass(frozen=True, slots=True)
class StripLoad:
    """One load of a strip set.

    Attributes:
        amount: grams, or units of a machine.
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


def strip_set(
    table: LoadTable, asked: Strip, first_g: int, k: float = K_GENERAL
) -> StripLoads | None:
    """Loads of a strip set from plates that only come off; None where the plates allow none.

    Args:
        table: loads of the bar.
        asked: the strip as written.
        first_g: wanted first load.
        k: repetitions constant of the lift.
    """
    aim = round(100 - asked.drop)
    plan = strip_plan(
        table, first_g, asked.loads,
        low_percent=aim - WINDOW, high_percent=min(aim + WINDOW, 99), aim_percent=aim,
    )  # fmt: skip
    if plan is None:
        return None
    loads = tuple(StripLoad(one.load.total_g, one.load.side_g, one.off_g) for one in plan.stages)
    return with_reps(loads, k)


def scale_strip(scale: Scale, asked: Strip, first_g: int, body_g: float = 0.0) -> StripLoads | None:
    """Loads of a strip set from things with fixed masses; None where the next one is too far.

    What hangs on a belt only comes off. Where the body moves along, the share is of both together.
    """
    step = scale.best(first_g)
    loads = [] if step is None else [StripLoad(step.grams, step.parts)]
    while step is not None and len(loads) < asked.loads:
        before = step.grams + body_g
        low, aim, high = (
            round(before * (100 - asked.drop + off) / 100 - body_g, 3)
            for off in (-WINDOW, 0, WINDOW)
        )
        lighter = [
            one
            for one in scale.steps
            if low <= one.grams <= high
            and (scale.kind != "hung" or not Counter(one.parts) - Counter(step.parts))
        ]
        if not lighter:
            return None
        taken = min(lighter, key=lambda one: abs(one.grams - aim))
        off = Counter(step.parts) - Counter(taken.parts) if scale.kind == "hung" else Counter()
        loads.append(StripLoad(taken.grams, taken.parts, tuple(sorted(off.elements()))))
        step = taken
    return tuple(loads) or None


def unit_strip(exist: tuple[float, ...], asked: Strip, first: float) -> StripLoads:
    """Settings of a machine, each the nearest to the share of the one before; always lighter."""
    loads, before = [StripLoad(first)], first
    while len(loads) < asked.loads:
        aim = before * (100 - asked.drop) / 100
        lighter = [value for value in exist if value < before]
        if not lighter:
            break
        before = min(lighter, key=lambda value: abs(value - aim))
        loads.append(StripLoad(before))
    return tuple(loads)


def with_reps(loads: StripLoads, k: float, body_g: float = 0.0) -> StripLoads:
    """The loads with the repetitions each strip is likely to give."""
    found = list(loads[:1])
    for before, one in pairwise(loads):
        try:
            reps = strip_rep_range((one.amount + body_g) / (before.amount + body_g), k)
            found.append(replace(one, reps_low=reps.low, reps_high=reps.high))
        except (OutOfRangeError, ZeroDivisionError):
            found.append(one)
    return tuple(found)


def rack_of(room: Room, exercise: Exercise) -> Rack | None:
    """The rack a bar rests in: the one that is written, or the one among its stations."""
    if not isinstance(exercise.load, OnBar):
        return None
    places = (exercise.load.rack, *exercise.stations)
    return next((room.racks[place] for place in places if place in room.racks), None)


def with_tip_check(bar: Bar, rack: Rack, plates: list[Plate], loads: StripLoads) -> StripLoads:
    """The loads, each marked where taking off one side first leaves too little against tipping.

    A bar that was not measured, or does not fit the rack, is held at every strip.
    """
    if not tipover.fits(bar, rack):
        return tuple(replace(one, hold=bool(one.off)) for one in loads)
    order = tipover.unloading(bar, rack, plates, loads[0].parts)
    pairs = iter(tipover.pairs_off(order))
    return tuple(
        replace(one, hold=any(pair.hold for pair in tuple(islice(pairs, len(one.off)))))
        for one in loads
    )
