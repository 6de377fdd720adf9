"""Warm-up ramps: the climb to the plates of today's top load, with one exchange at most."""

from collections.abc import Sequence
from dataclasses import dataclass

from strength_handbook.calc.plates import BarLoad, LoadTable
from strength_handbook.calc.registry import Evidence, formula
from strength_handbook.calc.stacks import Stack, between
from strength_handbook.calc.way_up import Limits, cheapest_way

# Percent of the top load and repetitions, fewer as it gets heavier: common practice, no source.
WARM_UP: tuple[tuple[int, int], ...] = ((40, 5), (55, 4), (70, 3), (80, 2), (90, 1))
LAST_JUMP_PERCENT = 15
SMALLEST_JUMP_G = 5_000
# Today's load is at most the best, so in points of the best no jump is larger: common practice.
LIMITS = Limits(first=60, jump=20, last=LAST_JUMP_PERCENT)


@dataclass(frozen=True, slots=True)
class RampTarget:
    """A warm-up step as wanted: load in grams, percent of today's top load, repetitions."""

    load_g: int
    percent: int
    reps: int


@dataclass(frozen=True, slots=True)
class WarmUpSet:
    """A warm-up step as built: the load, plates off (outer first) and on one side, repetitions."""

    load: BarLoad
    off_g: tuple[int, ...]
    on_g: tuple[int, ...]
    reps: int


@dataclass(frozen=True, slots=True)
class Ramp:
    """Warm-up steps to today's top load, and the plates off and on for the top set itself."""

    steps: tuple[WarmUpSet, ...]
    top: BarLoad
    top_off_g: tuple[int, ...]
    top_on_g: tuple[int, ...]


@formula(
    subject="Plates",
    title="Warm-up steps to today's top load",
    equation="load = 40, 55, 70, 80, 90 % of the top load, never less than the bar",
    inputs={
        "top_g": "top load = today's, g",
        "bar_g": "bar = its mass, g",
        "steps": "percent of the top load and repetitions, step by step",
        "smallest_jump_g": "smallest jump worth a step, g",
        "last_jump_percent": "largest last jump, % of the top load",
    },
    output="wanted load of each step, g, and its repetitions",
    source="common practice, no source",
    evidence=Evidence.HOUSE_RULE,
)
def ramp_targets(
    top_g: int,
    bar_g: int,
    *,
    steps: Sequence[tuple[int, int]] = WARM_UP,
    smallest_jump_g: int = SMALLEST_JUMP_G,
    last_jump_percent: int = LAST_JUMP_PERCENT,
) -> tuple[RampTarget, ...]:
    """Warm-up loads as wanted, light to heavy; fewer where the top load is light.

    A step that would be lighter than the bar is done with the bar. A step closer than the smallest
    jump to its neighbours is left out, unless the last jump would then be too large.

    Args:
        top_g: today's top load, in grams.
        bar_g: the empty bar with its collars, in grams.
        steps: percent of the top load and repetitions, ascending.
        smallest_jump_g: jump below which a step of its own is not worth while, in grams.
        last_jump_percent: largest jump to the top load, in percent points of it.

    Raises:
        ValueError: where the steps do not ascend or end too far below the top load.

    >>> [(step.load_g, step.reps) for step in ramp_targets(40_000, 20_000)]
    [(20000, 5), (28000, 3), (36000, 1)]
    """
    percents = [percent for percent, _ in steps]
    if percents != sorted(set(percents)) or not 100 - last_jump_percent <= percents[-1] < 100:
        raise ValueError(f"not a ramp with a last jump of {last_jump_percent} %: {percents}")
    wanted = [
        RampTarget(max(bar_g, round(top_g * percent / 100)), percent, reps)
        for percent, reps in steps
    ]
    wanted = [step for step in wanted if step.load_g < top_g]
    if not wanted:
        return ()
    # Several steps may have become the bar: at most one of them stays.
    smallest_jump_g = max(1, smallest_jump_g)
    kept, last = [wanted[0]], wanted[-1]
    for step in wanted[1:-1]:
        jumps = (step.load_g - kept[-1].load_g, last.load_g - step.load_g)
        if min(jumps) >= smallest_jump_g:
            kept.append(step)
    too_far = 100 * (top_g - kept[-1].load_g) > last_jump_percent * top_g
    if too_far or last.load_g - kept[-1].load_g >= smallest_jump_g:
        kept.append(last)
    return tuple(kept)


@formula(
    subject="Plates",
    title="Way up to today's plates",
    equation="least excess of a jump over 20 % of the top load (the last: 15 %), then least sum of "
    "|load − wanted load| + 1 % of the top load for each plate moved on a side",
    inputs={
        "table": "load = every one the bar can carry, g",
        "top_g": "top load = today's, g",
        "steps": "wanted load = percent of the top load and repetitions, step by step",
        "smallest_jump_g": "smallest jump worth a step, g",
        "limits": "largest first step with plates on and largest jumps, % of the top load",
    },
    output="loads, and the plates that come off and go on one side before each step",
    source="search over inner parts of the top load's plates and one exchange; exact",
    evidence=Evidence.ARITHMETIC,
)
def ramp_plan(
    table: LoadTable,
    top_g: int,
    *,
    steps: Sequence[tuple[int, int]] = WARM_UP,
    smallest_jump_g: int = SMALLEST_JUMP_G,
    limits: Limits = LIMITS,
) -> Ramp | None:
    """Warm-up steps to the top load, towards the plates that the table lists for it.

    Every step is an inner part of the top load's plates, or has a few others outside it that are
    exchanged once on the way. See `way_up.cheapest_way` for what makes one way better.

    Args:
        table: the bar and its plates.
        top_g: today's top load in grams, rounded down to the table.
        steps: as for `ramp_targets`.
        smallest_jump_g: as for `ramp_targets`.
        limits: largest first step and largest jumps; the last one as for `ramp_targets`.

    Returns:
        The ramp, or None where the bar is too heavy.

    >>> from strength_handbook.calc.plates import PlateSize, load_table
    >>> pairs = ((10_000, 1), (5_000, 1), (2_500, 2))
    >>> ramp = ramp_plan(load_table(20_000, tuple(PlateSize(*pair) for pair in pairs)), 61_000)
    >>> [step.load.side_g for step in ramp.steps]
    [(2500,), (2500, 2500), (10000,), (10000, 5000), (10000, 5000, 2500)]
    >>> ramp.top.side_g, ramp.steps[2].off_g
    ((10000, 5000, 2500, 2500), (2500, 2500))
    """
    top = table.best(top_g)
    if top is None:
        return None
    wanted = ramp_targets(
        top.total_g,
        table.empty_g,
        steps=steps,
        smallest_jump_g=smallest_jump_g,
        last_jump_percent=limits.last,
    )
    way = cheapest_way(table, top.side_g, [step.load_g for step in wanted], limits)
    on_way: list[WarmUpSet] = []
    side: Stack = ()
    for target, plates in way:
        off, on = between(side, plates)
        on_way.append(WarmUpSet(table.loaded(plates), off, on, wanted[target].reps))
        side = plates
    off, on = between(side, top.side_g)
    return Ramp(tuple(on_way), top, off, on)
