"""Warm-up ramps: the climb to today's top load by putting plates on, none off."""

from collections.abc import Sequence
from dataclasses import dataclass

from strength_handbook.calc.plates import BarLoad, LoadTable
from strength_handbook.calc.registry import Evidence, formula
from strength_handbook.calc.stacks import Stack, stacks

# Percent of the top load and repetitions, fewer as it gets heavier: common practice, no source.
WARM_UP: tuple[tuple[int, int], ...] = ((40, 5), (55, 4), (70, 3), (80, 2), (90, 1))
LAST_JUMP_PERCENT = 15
SMALLEST_JUMP_G = 5_000
# A plate must bring the steps this much closer, in percent of the top load, to be worth carrying.
PLATE_PERCENT = 1


@dataclass(frozen=True, slots=True)
class RampTarget:
    """A warm-up step as wanted: load in grams, percent of today's top load, repetitions."""

    load_g: int
    percent: int
    reps: int


@dataclass(frozen=True, slots=True)
class RampStep:
    """A warm-up step as built: the load, the plates added for it on one side, repetitions."""

    load: BarLoad
    on_g: tuple[int, ...]
    reps: int


@dataclass(frozen=True, slots=True)
class Ramp:
    """Warm-up steps to today's top load, and the plates added for the top set itself."""

    steps: tuple[RampStep, ...]
    top: BarLoad
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
    title="Warm-up ramp that only adds plates",
    equation="least sum of |load − wanted load| + 1 % of the top load for each plate that goes "
    "on a side",
    inputs={
        "table": "load = every one the bar can carry, g",
        "top_g": "top load = today's, g",
        "steps": "wanted load = percent of the top load and repetitions, step by step",
        "smallest_jump_g": "smallest jump worth a step, g",
        "last_jump_percent": "largest last jump, % of the top load",
    },
    output="loads, and the plates that go on one side before each step",
    source="search over every loading of the top set; exact",
    evidence=Evidence.ARITHMETIC,
)
def ramp_plan(
    table: LoadTable,
    top_g: int,
    *,
    steps: Sequence[tuple[int, int]] = WARM_UP,
    smallest_jump_g: int = SMALLEST_JUMP_G,
    last_jump_percent: int = LAST_JUMP_PERCENT,
) -> Ramp | None:
    """Warm-up steps to the top load, such that plates are only ever added.

    Every step is an inner part of the top set's own loading, which is chosen for it: closest to the
    wanted loads, a plate on one side counting like 1 % of the top load. A step is left out where no
    inner part lies within half the largest last jump of it, and counts as that far off.

    Args:
        table: the bar and its plates.
        top_g: today's top load in grams, rounded down to the table.
        steps: as for `ramp_targets`.
        smallest_jump_g: as for `ramp_targets`.
        last_jump_percent: as for `ramp_targets`; the built loads keep to it.

    Returns:
        The ramp, or None where the bar is too heavy or the plates too coarse for the last jump.

    >>> from strength_handbook.calc.plates import PlateSize, load_table
    >>> pairs = ((10_000, 1), (5_000, 1), (2_500, 2))
    >>> ramp = ramp_plan(load_table(20_000, tuple(PlateSize(*pair) for pair in pairs)), 61_000)
    >>> [step.load.total_g for step in ramp.steps], ramp.top.total_g
    ([20000, 40000, 50000, 55000], 60000)
    """
    top = table.best(top_g)
    if top is None:
        return None
    wanted = ramp_targets(
        top.total_g,
        table.empty_g,
        steps=steps,
        smallest_jump_g=smallest_jump_g,
        last_jump_percent=last_jump_percent,
    )
    reach = top.total_g * last_jump_percent // 200
    lowest_last = top.total_g - top.total_g * last_jump_percent // 100 if wanted else 0
    best, ramp = None, None
    for stack in stacks(table, top.total_g, top.total_g):
        # The place of a load among the inner parts is the number of plates on.
        loads = [table.loaded(stack[:plates]).total_g for plates in range(len(stack))]
        found = _climb(loads, wanted, reach, lowest_last)
        if found is None:
            continue
        effort = 100 * found[0] + PLATE_PERCENT * top.total_g * len(stack)
        if best is None or (effort, len(stack)) < best:
            best, ramp = (effort, len(stack)), _ramp(table, stack, wanted, found[1])
    return ramp


def _climb(
    loads: list[int], wanted: Sequence[RampTarget], reach: int, lowest_last: int
) -> tuple[int, tuple[int, ...]] | None:
    """Grams off the wanted loads, and for each of them its place in the loads (-1: left out)."""
    # Per place of the last load taken: the cheapest choice so far.
    ways: dict[int, tuple[int, tuple[int, ...]]] = {-1: (0, ())}
    for step in wanted:
        misses = [(place, abs(load - step.load_g)) for place, load in enumerate(loads)]
        near = [(place, miss) for place, miss in misses if miss <= reach]
        longer: dict[int, tuple[int, tuple[int, ...]]] = {}
        for last, (off, chosen) in ways.items():
            options = [(last, (off + reach, (*chosen, -1)))]
            options += [(at, (off + miss, (*chosen, at))) for at, miss in near if at > last]
            for place, way in options:
                longer[place] = min(longer.get(place, way), way)
        ways = longer
    return min(
        (way for last, way in ways.items() if (loads[last] if last >= 0 else 0) >= lowest_last),
        default=None,
    )


def _ramp(
    table: LoadTable, stack: Stack, wanted: Sequence[RampTarget], chosen: tuple[int, ...]
) -> Ramp:
    steps, on = [], 0
    for step, plates in zip(wanted, chosen, strict=True):
        if plates >= 0:
            steps.append(RampStep(table.loaded(stack[:plates]), stack[on:plates], step.reps))
            on = plates
    return Ramp(tuple(steps), table.loaded(stack), stack[on:])
