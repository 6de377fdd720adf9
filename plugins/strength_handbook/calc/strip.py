"""Drop sets from the bar: every lighter load is made by taking plates off, none is put on.

Only the grouping of the plates matters: those of the last load stand inside, then, outwards, those
of every strip, the first strip outermost. A light group may therefore stand inside a heavy one.
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from functools import cache
from itertools import pairwise

from strength_handbook.calc.plates import BarLoad, LoadTable
from strength_handbook.calc.registry import Evidence, formula
from strength_handbook.calc.stacks import Stack, stacks

# Of a strip (its number from 0, the load before it): the lowest and the highest load it may leave.
Window = Callable[[int, int], tuple[int, int]]
# Of a strip (its number, the load before it, the load it leaves): distance from the wanted one.
Miss = Callable[[int, int, int], int]


@dataclass(frozen=True, slots=True)
class StripStage:
    """One load of the set and the plates taken off each side for it, outer first."""

    load: BarLoad
    off_g: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class StripPlan:
    """The loads of a drop set, heaviest first; the first stage has nothing taken off."""

    stages: tuple[StripStage, ...]

    @property
    def groups_g(self) -> tuple[tuple[int, ...], ...]:
        """Plates of one side as they go on, inner to outer: the last load, then every strip.

        >>> bar = BarLoad(60_000, (15_000, 5_000)), BarLoad(50_000, (15_000,))
        >>> StripPlan((StripStage(bar[0], ()), StripStage(bar[1], (5_000,)))).groups_g
        ((15000,), (5000,))
        """
        strips = (stage.off_g[::-1] for stage in self.stages[:0:-1])
        return (self.stages[-1].load.side_g, *strips)

    @property
    def handled(self) -> int:
        """Plates taken off one side over all strips."""
        return sum(len(stage.off_g) for stage in self.stages)


@formula(
    subject="Plates",
    title="Strip set by taking plates off only",
    equation="75 % ≤ load ÷ load before ≤ 85 %, fewest plates taken off, then nearest to 80 %",
    inputs={
        "table": "load = every one the bar can carry, g",
        "first_g": "load of the first stage, g",
        "stages": "loads in all",
        "below_g": "how far below it the first may be, g",
        "low_percent": "least share left at a strip, %",
        "high_percent": "largest share left at a strip, %",
        "aim_percent": "share aimed at, %",
    },
    output="loads, and the plates that come off each side",
    source="recursion over every group of plates; exact",
    evidence=Evidence.ARITHMETIC,
)
def strip_plan(
    table: LoadTable,
    first_g: int,
    stages: int,
    *,
    below_g: int = 2_500,
    low_percent: int = 75,
    high_percent: int = 85,
    aim_percent: int = 80,
) -> StripPlan | None:
    """Drop set in which every strip leaves about four fifths of the load before it.

    Fewest plates taken off wins, then the smallest sum of |load − 80 % of the load before|, then
    the first load nearest its target, then fewer plates on the bar.

    Args:
        table: the bar and its plates.
        first_g: wanted first load, in grams.
        stages: loads in the set, the first one included.
        below_g: how far the first load may lie below the wanted one, in grams.
        low_percent: least that a strip leaves, in percent of the load before it.
        high_percent: most that a strip leaves; below 100.
        aim_percent: what a strip should leave.

    Returns:
        The plan, or None where these plates allow none.

    Raises:
        ValueError: where the percentages do not ascend below 100 or there is no stage.

    >>> from strength_handbook.calc.plates import PlateSize, load_table
    >>> table = load_table(20_000, tuple(PlateSize(g, 3) for g in (10_000, 5_000, 2_500)))
    >>> plan = strip_plan(table, 61_000, 3)
    >>> [stage.load.total_g for stage in plan.stages], plan.groups_g
    ([60000, 50000, 40000], ((10000,), (5000,), (5000,)))
    """
    if stages < 1 or not 0 < low_percent <= aim_percent <= high_percent < 100:
        raise ValueError(f"no drop set: {stages} stages, {low_percent} to {high_percent} %")

    def window(_strip: int, before: int) -> tuple[int, int]:
        return -(-low_percent * before // 100), high_percent * before // 100

    def miss(_strip: int, before: int, left: int) -> int:
        return abs(100 * left - aim_percent * before)

    return _best(table, (first_g - below_g, first_g), stages - 1, window, miss)


@formula(
    subject="Plates",
    title="Strip set to given loads",
    equation="target − tolerance ≤ load ≤ target at every stage, fewest plates taken off",
    inputs={
        "table": "load = every one the bar can carry, g",
        "targets_g": "target = wanted load of each stage, g",
        "tolerance_g": "tolerance = how far below it is still right, g",
    },
    output="loads, and the plates that come off each side",
    source="recursion over every group of plates; exact",
    evidence=Evidence.ARITHMETIC,
)
def strip_plan_to(
    table: LoadTable, targets_g: Sequence[int], *, tolerance_g: int = 0
) -> StripPlan | None:
    """Drop set to given descending loads, each met or missed downwards by the tolerance at most.

    Fewest plates taken off wins, then the smallest sum of grams below the targets, then fewer
    plates on the bar.

    Args:
        table: the bar and its plates.
        targets_g: wanted loads in grams, heaviest first.
        tolerance_g: how far a load may lie below its target, in grams.

    Returns:
        The plan, or None where these plates allow none.

    Raises:
        ValueError: where the targets do not descend.

    >>> from strength_handbook.calc.plates import PlateSize, load_table
    >>> table = load_table(20_000, tuple(PlateSize(g, 3) for g in (20_000, 10_000, 5_000)))
    >>> strip_plan_to(table, (120_000, 100_000, 80_000, 60_000)).groups_g
    ((20000,), (10000,), (10000,), (10000,))
    """
    targets = tuple(targets_g)
    if not targets or any(later >= before for before, later in pairwise(targets)):
        raise ValueError(f"targets of a drop set descend: {targets}")

    def window(strip: int, _before: int) -> tuple[int, int]:
        return targets[strip + 1] - tolerance_g, targets[strip + 1]

    def miss(strip: int, before: int, left: int) -> int:
        first = targets[0] - before if strip == 0 else 0
        return first + targets[strip + 1] - left

    return _best(table, (targets[0] - tolerance_g, targets[0]), len(targets) - 1, window, miss)


def _best(
    table: LoadTable, first: tuple[int, int], strips: int, window: Window, miss: Miss
) -> StripPlan | None:
    @cache
    def onwards(stack: Stack, strip: int, spare: int) -> tuple[int, tuple[Stack, ...]] | None:
        """Least miss of the strips still to come, with `spare` plates more than one for each."""
        if strip == strips:
            return 0, ()
        before = table.loaded(stack).total_g
        lowest, highest = window(strip, before)
        lightest = -((highest - before) // table.sides)
        heaviest = (before - lowest) // table.sides
        best = None
        for group, rest in _groups(stack, lightest, heaviest, 1 + spare):
            later = onwards(rest, strip + 1, spare + 1 - len(group))
            if later is not None:
                off = miss(strip, before, table.loaded(rest).total_g) + later[0]
                if best is None or off < best[0]:
                    best = off, (group, *later[1])
        return best

    firsts = list(stacks(table, *first))
    # One plate for each strip, then one plate more in all, and so on: the first that works is the
    # one with the fewest plates taken off.
    for spare in range(max((len(stack) - strips for stack in firsts), default=-1) + 1):
        best: tuple[tuple[int, int, int], StripPlan] | None = None
        for stack in firsts:
            found = onwards(stack, 0, spare)
            if found is not None:
                short = first[1] - table.loaded(stack).total_g
                key = (found[0], short, len(stack))
                if best is None or key < best[0]:
                    best = key, _plan(table, stack, found[1])
        if best is not None:
            return best[1]
    return None


def _groups(stack: Stack, lightest: int, heaviest: int, most: int) -> Iterator[tuple[Stack, Stack]]:
    """Every different group of plates within a range of mass, and the plates it leaves."""

    def extend(start: int, group: Stack, passed: Stack, mass: int) -> Iterator[tuple[Stack, Stack]]:
        if group and mass >= lightest:
            yield group, passed + stack[start:]
        if len(group) == most:
            return
        for place in range(start, len(stack)):
            plate = stack[place]
            # Of equal plates only the first not yet passed is tried: the others give the same.
            if mass + plate <= heaviest and (place == start or plate != stack[place - 1]):
                left = passed + stack[start:place]
                yield from extend(place + 1, (*group, plate), left, mass + plate)

    yield from extend(0, (), (), 0)


def _plan(table: LoadTable, stack: Stack, groups: tuple[Stack, ...]) -> StripPlan:
    base = list(stack)
    for plate in (plate for group in groups for plate in group):
        base.remove(plate)
    sides = [tuple(base)]
    for group in reversed(groups):
        sides.append(sides[-1] + group)
    taken = ((), *(group[::-1] for group in groups))
    return StripPlan(
        tuple(
            StripStage(table.loaded(side), off)
            for side, off in zip(reversed(sides), taken, strict=True)
        )
    )
