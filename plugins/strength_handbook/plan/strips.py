"""Strip sets: loads by taking weight off, repetitions to expect, and the bar in its rack."""

from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from itertools import islice, pairwise

from strength_handbook.calc.plates import LoadTable
from strength_handbook.calc.registry import OutOfRangeError
from strength_handbook.calc.strip import strip_plan
from strength_handbook.calc.strip_reps import (
    K_BENCH_PRESS,
    K_GENERAL,
    K_LEG_PRESS,
    strip_rep_range,
    strip_stage_range,
)
from strength_handbook.model.book import Book
from strength_handbook.model.dose import StripSet as StripWork
from strength_handbook.model.exercise import Exercise
from strength_handbook.model.load import Setting
from strength_handbook.model.loading import OnBar, OnMachine
from strength_handbook.model.methods import Strip
from strength_handbook.model.room import Bar, Plate, Rack, Room
from strength_handbook.model.words import Pattern
from strength_handbook.plan import tipover
from strength_handbook.plan.scales import Scale, bar_table, unit_scale
from strength_handbook.plan.worked import WorkedSlot

WINDOW = 5
"""A strip may miss what it should leave by so many points: plates come in few sizes."""

FIRST_REPS = (8, 12)
"""Repetitions on the first load where nothing says how heavy it is. Common practice, no source."""


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


@dataclass(frozen=True, eq=False)
class Strips:
    """The strip sets of one slot.

    Attributes:
        asked: as written.
        aims: percent of the first load, with the repetitions that such strips give.
        settings: settings of a machine, where the first one is written.
        by_lifter: loads of each example lifter; None where the plates allow none.
        rack: name of the rack the bar rests in, or empty.
        first_reps: repetitions reckoned on the first load, fewest and most.
        fewest: loads needed for the total of repetitions at least,
        most: and at most; None where no total is set.
    """

    asked: Strip
    aims: StripLoads
    settings: StripLoads = ()
    by_lifter: Mapping[str, StripLoads | None] = field(default_factory=dict)
    rack: str = ""
    first_reps: tuple[int, int] = FIRST_REPS
    fewest: int | None = None
    most: int | None = None


def reps_constant(exercise: Exercise) -> float:
    """Repetitions constant of a lift: leg press and bench press have one of their own.

    Nuzzo 2024: more repetitions on the leg press than on the bench press at the same percentage.
    """
    if isinstance(exercise.load, OnMachine) and exercise.pattern is Pattern.SQUAT:
        return K_LEG_PRESS
    if isinstance(exercise.load, OnBar) and exercise.pattern is Pattern.HORIZONTAL_PUSH:
        return K_BENCH_PRESS
    return K_GENERAL


def slot_strips(book: Book, slot: WorkedSlot) -> Strips | None:
    """Loads and repetitions of a slot's strip sets; None where it has none."""
    if not isinstance(slot.dose.work, StripWork):
        return None
    asked, k, load = slot.dose.work.strip, reps_constant(slot.exercise), slot.exercise.load
    left = 100 - asked.drop
    aims = with_reps(tuple(StripLoad(100 * (left / 100) ** n) for n in range(asked.loads)), k)
    settings: StripLoads = ()
    if isinstance(load, OnMachine) and isinstance(slot.dose.load, Setting):
        exist = unit_scale(book.room, load)
        settings = with_reps(unit_strip(exist, asked, slot.dose.load.value), k)
    by_lifter: dict[str, StripLoads | None] = {}
    rack = rack_of(book.room, slot.exercise)
    for name, planned in slot.loads.items():
        if planned.step is None or slot.scale is None:
            by_lifter[name] = None
        elif isinstance(load, OnBar):
            table = bar_table(book.room, load)
            loads = strip_set(table, asked, planned.step.grams, k)
            if loads and rack:
                loads = with_tip_check(book.room.bars[load.bar], rack, book.room.plates, loads)
            by_lifter[name] = loads
        else:
            loads = scale_strip(slot.scale, asked, planned.step.grams, planned.body_g)
            by_lifter[name] = loads and with_reps(loads, k, planned.body_g)
    first = _first_reps(slot)
    fewest, most = _loads_for_total(asked, first, k)
    return Strips(
        asked, aims, settings, by_lifter, rack.name if rack else "", first, fewest, most
    )  # fmt: skip


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


def _first_reps(slot: WorkedSlot) -> tuple[int, int]:
    """Repetitions on the first load: by its percentage, else the usual ones."""
    band = slot.reps_possible
    if band is None:
        return FIRST_REPS
    return max(1, round(band.low)), max(1, round(band.high))


def _loads_for_total(
    asked: Strip, first: tuple[int, int], k: float
) -> tuple[int | None, int | None]:
    """Loads until the total is reached, for those who do many repetitions and those who do few."""
    if asked.total is None:
        return None, None
    left = 1 - asked.drop / 100
    try:
        return (
            strip_stage_range(asked.total, first[1], left, k).fewest,
            strip_stage_range(asked.total, first[0], left, k).most,
        )
    except OutOfRangeError:
        return None, None
