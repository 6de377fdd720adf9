"""Strip sets: loads by taking weight off, from today's load exactly as it is printed and put on.

Plates only come off: from a bar, a pivot, a belt, a sled or a back. Dumbbells, pins and machines
are changed for the next lighter one.
"""

from collections.abc import Mapping
from dataclasses import replace
from itertools import islice

from strength_handbook.calc.cable import cable_pull
from strength_handbook.calc.push_up import ebben_2011_push_up, push_up_load
from strength_handbook.calc.strip import strip_plan, strip_plan_by_plates, strip_plan_off
from strength_handbook.calc.strip_search import StripPlan
from strength_handbook.model.drop import Drop
from strength_handbook.model.exercise import Exercise
from strength_handbook.model.loading import Loading, OnBar, OnPivot, OnStack, PushUp
from strength_handbook.model.methods import Strip
from strength_handbook.model.room import Bar, Plate, Rack, Room
from strength_handbook.plan import tipover
from strength_handbook.plan.loads import body_share_g, moved_g
from strength_handbook.plan.pivot import at_the_hands
from strength_handbook.plan.remembered import remembered
from strength_handbook.plan.scale import Scale
from strength_handbook.plan.strip_load import (
    MASS_WINDOW,
    WINDOW,
    StripLoad,
    StripLoads,
    aim_percent,
    fixed_strip,
    reps_constant,
    with_reps,
)


def strip_loads(
    room: Room, exercise: Exercise, scale: Scale | None, asked: Strip, first_g: int,
    body_g: float = 0.0, height: float | None = None,
) -> StripLoads | None:  # fmt: skip
    """Loads of a strip set from one that is on, with repetitions; None where the room allows none.

    Args:
        room: plates, racks and pivots.
        exercise: what is done.
        scale: the loads that exist.
        asked: the strip as written.
        first_g: the first load, in grams.
        body_g: body mass, for lifts that move the body.
        height: of the hands in a push-up, in m; the floor if None.
    """
    if scale is None:
        return None
    loads: StripLoads | None
    if scale.table is None:
        loads = fixed_strip(scale, asked, first_g)
    else:
        also = along_g(room, exercise.load, body_g, height)
        plan = _plan_of(scale, asked.loads, asked.drop, also, first_g)
        stages = plan.stages if plan is not None else ()
        loads = tuple(StripLoad(one.load.total_g, one.load.side_g, one.off_g) for one in stages)
    if not loads:
        return None
    felt = [felt_g(room, exercise.load, one, body_g, height) for one in loads]
    return _held(room, exercise, with_reps(loads, reps_constant(exercise), felt))


def along_g(room: Room, loading: Loading, body_g: float, height: float | None = None) -> int:
    """What moves along with the plates, in grams that count as theirs; 0 where they are all.

    The share of the body; of a bar on a pivot, what its own weight is to the hands. A plate on a
    back counts less than its mass there, so the body counts for more beside it.
    """
    match loading:
        case OnPivot():
            bare, one = (
                at_the_hands(
                    room.bars[loading.bar], room.pivots[loading.pivot], loading.reach,
                    room.plates, on,
                ).vertical_kg
                for on in ((), (1000,))
            )  # fmt: skip
            return round(1000 * bare / (one - bare))
        case _:
            share = body_share_g(loading, body_g, height)
            # A phone reckons in millionths of a percent, and so does this.
            return round(share * round(counts_beside(loading, height), 6) / 100)


def counts_beside(loading: Loading, height: float | None = None) -> float:
    """What the body that moves counts beside plates, in percent: a plate on a back counts less."""
    if not isinstance(loading, PushUp):
        return 100.0
    percent = ebben_2011_push_up(height or 0.0)
    return 100 / (push_up_load(1, percent, 1) - push_up_load(1, percent))


def felt_g(
    room: Room, loading: Loading, one: StripLoad, body_g: float, height: float | None = None
) -> float:
    """What a repetition moves, in grams: the load at the hands, bar and body included."""
    if isinstance(loading, OnStack):
        return cable_pull(one.amount, room.stacks[loading.stack].ratio)
    if isinstance(loading, OnPivot):
        bar, pivot = room.bars[loading.bar], room.pivots[loading.pivot]
        return 1000 * at_the_hands(bar, pivot, loading.reach, room.plates, one.parts).vertical_kg
    return moved_g(loading, body_g, round(one.amount), height)


@remembered(4096)  # lifters, tables and phones ask for the same first loads
def _plan_of(scale: Scale, stages: int, drop: Drop, also_g: int, first_g: int) -> StripPlan | None:
    """Loads of a strip set from plates that only come off; None where they allow none."""
    table, most = scale.table, scale.most
    listed = next((one.parts for one in scale.steps if one.grams == first_g), None)
    assert table is not None  # noqa: S101  # asked for plates only
    match drop.kind:
        case "share":
            aim = aim_percent(drop)
            return strip_plan(
                table, first_g, stages, below_g=0, low_percent=aim - WINDOW,
                high_percent=min(aim + WINDOW, 99), aim_percent=aim, also_g=also_g,
                max_plates=most, prefer=listed,
            )  # fmt: skip
        case "mass":
            off = round(drop.amount)
            slack = max(scale.slack_g, round(MASS_WINDOW * off))
            return strip_plan_off(
                table, first_g, stages, off, slack_g=slack, max_plates=most, prefer=listed
            )
        case "plates":
            return strip_plan_by_plates(
                table, first_g, stages, round(drop.amount), max_plates=most, prefer=listed
            )


def stacks_for(scale: Scale, asked: Strip, also_g: int = 0) -> Mapping[int, tuple[int, ...]]:
    """The plates of every first load as its strips need them, by grams; without those that can't.

    Args:
        scale: the loads of a thing with plates.
        asked: the strip as written.
        also_g: what moves along, as `along_g` has it.
    """
    plans = (
        (step.grams, _plan_of(scale, asked.loads, asked.drop, also_g, step.grams))
        for step in scale.steps
    )
    return {grams: plan.stages[0].load.side_g for grams, plan in plans if plan is not None}


@remembered(64)  # one for each lift and way to strip it, so that tables are shared
def strip_scale(scale: Scale, asked: Strip, also_g: int = 0) -> Scale:
    """The same loads, each put together so that its strips come off: who loads it loads once."""
    stacks = stacks_for(scale, asked, also_g)
    steps = (replace(step, parts=stacks.get(step.grams, step.parts)) for step in scale.steps)
    return replace(scale, steps=tuple(steps))


def _held(room: Room, exercise: Exercise, loads: StripLoads) -> StripLoads:
    rack = rack_of(room, exercise)
    if rack is None or not isinstance(exercise.load, OnBar):
        return loads
    return with_tip_check(room.bars[exercise.load.bar], rack, room.plates, loads)


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
