"""The search behind drop sets: which plates come off at each strip, outermost first.

Only the grouping of the plates matters: those of the last load stand inside, then, outwards, those
of every strip, the first strip outermost. A light group may therefore stand inside a heavy one.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import cache

from strength_handbook.calc.plates import BarLoad, LoadTable
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


def best_strips(
    table: LoadTable,
    first: tuple[int, int],
    strips: int,
    window: Window,
    miss: Miss,
    max_plates: int | None = None,
    prefer: Stack | None = None,
) -> StripPlan | None:
    """The plan with the fewest plates taken off, then the least miss; None where there is none.

    Args:
        table: the bar and its plates.
        first: lowest and highest first load, in grams.
        strips: how often plates come off.
        window: which loads each strip may leave.
        miss: how far a strip is from the wanted one.
        max_plates: most plates on one side; None for as many as fit.
        prefer: plates of one side that are taken, in whatever order, if they allow a plan.

    >>> from strength_handbook.calc.plates import PlateSize, load_table
    >>> table = load_table(20_000, (PlateSize(10_000, 1), PlateSize(5_000, 2)))
    >>> plan = best_strips(table, (50_000, 50_000), 1, lambda *_: (0, 40_000), lambda *_: 0)
    >>> plan.groups_g
    ((5000,), (10000,))
    """

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

    for firsts in _firsts(table, first, max_plates, prefer):
        # One plate for each strip, then one plate more in all, and so on: the first that works is
        # the one with the fewest plates taken off.
        for spare in range(max((len(stack) - strips for stack in firsts), default=-1) + 1):
            best: tuple[tuple[int, int, int], StripPlan] | None = None
            for stack in firsts:
                found = onwards(stack, 0, spare)
                if found is not None:
                    short = first[1] - table.loaded(stack).total_g
                    key = (found[0], short, len(stack))
                    if best is None or key < best[0]:
                        best = key, strips_of(table, stack, found[1])
            if best is not None:
                return best[1]
    return None


def _firsts(
    table: LoadTable, first: tuple[int, int], max_plates: int | None, prefer: Stack | None
) -> Iterator[list[Stack]]:
    """The preferred stack, then all: they are many, and mostly nobody asks for them."""
    if prefer is not None:
        yield [tuple(sorted(prefer, reverse=True))]
    yield list(stacks(table, *first, max_plates))


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


def strips_of(table: LoadTable, stack: Stack, groups: tuple[Stack, ...]) -> StripPlan:
    """The plan of a stack whose groups of plates come off one after the other.

    >>> from strength_handbook.calc.plates import PlateSize, load_table
    >>> table = load_table(20_000, (PlateSize(10_000, 1), PlateSize(5_000, 1)))
    >>> [one.load.total_g for one in strips_of(table, (10_000, 5_000), ((5_000,),)).stages]
    [50000, 40000]
    """
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
