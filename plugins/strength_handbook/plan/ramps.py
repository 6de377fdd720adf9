"""Warm-up steps to today's load, adding plates only."""

from dataclasses import dataclass

from strength_handbook.calc.plates import LoadTable
from strength_handbook.calc.ramp import ramp_plan, ramp_targets
from strength_handbook.calc.stacks import fewest_moves


@dataclass(frozen=True, slots=True)
class RampStep:
    """One step on the way up.

    Attributes:
        grams: the load.
        parts: plates on one side, inner to outer.
        added: plates that go on for this step, on each side.
        off: plates that have to come off first; empty wherever the room allows it.
        reps: repetitions; 0 for the working load itself.
    """

    grams: int
    parts: tuple[int, ...]
    added: tuple[int, ...]
    off: tuple[int, ...]
    reps: int


def ramp_to(table: LoadTable, top_g: int) -> tuple[RampStep, ...]:
    """Steps to a load, the load itself last; empty where it cannot be built.

    Where no loading grows by adding alone, the steps with the fewest plate moves are taken.
    """
    ramp = ramp_plan(table, top_g)
    if ramp is not None:
        steps = [
            RampStep(step.load.total_g, step.load.side_g, step.on_g, (), step.reps)
            for step in ramp.steps
        ]
        last = RampStep(ramp.top.total_g, ramp.top.side_g, ramp.top_on_g, (), 0)
        return (*steps, last)
    wanted = ramp_targets(top_g, table.empty_g)
    reachable = [
        (load.total_g, target.reps)
        for target in wanted
        if (load := table.best(target.load_g)) is not None
    ]
    top = table.best(top_g)
    if top is None:
        return ()
    rising = [pair for pair in reachable if pair[0] < top.total_g]
    plan = fewest_moves(table, [grams for grams, _ in rising] + [top.total_g])
    if plan is None:
        return ()
    reps = [count for _, count in rising] + [0]
    return tuple(
        RampStep(one.load.total_g, one.load.side_g, one.on_g, one.off_g, count)
        for one, count in zip(plan.sets, reps, strict=True)
    )
