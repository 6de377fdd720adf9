"""The sleeve as a stack: every loading of a weight, and the fewest plate moves between sets.

Only the outermost plate can be taken off. Heavy plates stand inside, so a choice of plates is one
stack, and the work between two sets is the plates off and on above their common inner part.
"""

from bisect import bisect_left
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import accumulate, pairwise, takewhile
from operator import itemgetter

from strength_handbook.calc.plates import BarLoad, LoadTable
from strength_handbook.calc.registry import Evidence, formula

Stack = tuple[int, ...]
# (plate moves, grams below the targets, plates carried): compared in this order.
Cost = tuple[int, int, int]


@dataclass(frozen=True, slots=True)
class SetLoad:
    """One set and what is done to one side before it: plates off (outer first), then on."""

    load: BarLoad
    off_g: tuple[int, ...]
    on_g: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class MovePlan:
    """A series of sets with the fewest plate moves."""

    sets: tuple[SetLoad, ...]

    @property
    def moves(self) -> int:
        """Plates taken off or put on, on one side, over the whole series."""
        return sum(len(one.off_g) + len(one.on_g) for one in self.sets)


def between(before: Stack, after: Stack) -> tuple[Stack, Stack]:
    """What comes off one side, outer plate first, and what then goes on.

    >>> between((20_000, 10_000, 5_000), (20_000, 15_000))
    ((5000, 10000), (15000,))
    """
    pairs = zip(before, after, strict=False)
    kept = sum(1 for _ in takewhile(lambda two: two[0] == two[1], pairs))
    return before[kept:][::-1], after[kept:]


def stacks(
    table: LoadTable, low_g: int, high_g: int, max_plates: int | None = None
) -> Iterator[Stack]:
    """Different sleeves for a range of totals.

    Args:
        table: the bar and its plates.
        low_g: lowest total, in grams.
        high_g: highest total, in grams.
        max_plates: most plates on one side.

    Yields:
        The plates of one side in grams, heavy first; the heaviest stacks come first.

    >>> from strength_handbook.calc.plates import PlateSize, load_table
    >>> table = load_table(20_000, (PlateSize(10_000, 1), PlateSize(5_000, 2)))
    >>> list(stacks(table, 40_000, 40_000))
    [(10000,), (5000, 5000)]
    """
    high_g = high_g if table.limit_g is None else min(high_g, table.limit_g)
    low = -(-(low_g - table.empty_g) // table.sides)
    high = (high_g - table.empty_g) // table.sides
    if high < 0:
        return
    room = None if table.sleeve_mm is None else round(table.sleeve_mm * 1000)
    kinds, sums = _reach(table)

    def extend(kind: int, stack: Stack, mass: int, used: int) -> Iterator[Stack]:
        place = bisect_left(sums[kind], low - mass)
        if place == len(sums[kind]) or sums[kind][place] > high - mass:
            return
        if kind == len(kinds):
            yield stack
            return
        grams, width = kinds[kind]
        most = (
            len(width) - 1 if max_plates is None else min(len(width) - 1, max_plates - len(stack))
        )
        for plates in range(most, -1, -1):
            if room is None or used + width[plates] <= room:
                yield from extend(
                    kind + 1, stack + (grams,) * plates, mass + plates * grams, used + width[plates]
                )

    yield from extend(0, (), 0, 0)


@lru_cache(maxsize=16)
def _reach(table: LoadTable) -> tuple[list[tuple[int, list[int]]], list[list[int]]]:
    """Masses of plates with the room that so many take, and what each and all after it can add.

    The sums close every dead end at its first plate.
    """
    # Of plates of one mass the thinnest go on first: no other choice takes less room.
    widths: dict[int, list[int]] = {}
    for size in table.sizes:
        widths.setdefault(size.grams, []).extend([size.width_um] * size.available(table.sides))
    kinds = [(grams, [0, *accumulate(each)]) for grams, each in widths.items()]
    sums = [[0]]
    for grams, used in reversed(kinds):
        sums.append(sorted({s + n * grams for s in sums[-1] for n in range(len(used))}))
    return kinds, sums[::-1]


@formula(
    subject="Plates",
    title="Fewest plate moves over a series of sets",
    equation="moves between two sets = plates before + plates after − 2 × inner plates in "
    "common; their sum is the least possible",
    inputs={
        "table": "every load the bar can carry, g",
        "targets_g": "loads wanted, set by set, g",
        "tolerance_g": "how far below a wanted load is still right, g",
        "start_g": "plates already on, g",
    },
    output="loads with the plates that come off and go on before each set",
    source="layered shortest path over every loading of each set; exact",
    evidence=Evidence.ARITHMETIC,
)
def fewest_moves(
    table: LoadTable, targets_g: Sequence[int], *, tolerance_g: int = 0, start_g: Stack = ()
) -> MovePlan | None:
    """Loading of every set such that the fewest plates move over the whole series.

    Among equally few moves the plan closest to its targets wins, then the one with fewer plates on
    the bar, then heavier plates inside. Taking the bar apart at the end is not counted.

    Args:
        table: the bar and its plates.
        targets_g: totals of the sets in their order, in grams; round them to the table first.
        tolerance_g: how far a set may lie below its target.
        start_g: plates of one side already on the bar, inner to outer.

    Returns:
        The plan, or None where a set has no load between its target and the tolerance below it.

    >>> from strength_handbook.calc.plates import PlateSize, load_table
    >>> table = load_table(20_000, tuple(PlateSize(g, 2) for g in (20_000, 10_000, 5_000)))
    >>> plan = fewest_moves(table, (40_000, 50_000, 60_000))
    >>> [one.load.side_g for one in plan.sets], plan.moves
    ([(10000,), (10000, 5000), (10000, 5000, 5000)], 3)
    """
    few = 0
    for target in targets_g:
        load = table.best(target)
        if load is None or load.total_g < target - tolerance_g:
            return None
        few = max(few, len(load.side_g))
    # No stack of the best plan holds more plates than the plan has moves. A first plan that keeps
    # to few plates therefore limits the search, which still looks at every plan as good as it.
    first = _cheapest(table, targets_g, tolerance_g, start_g, few)
    return _cheapest(table, targets_g, tolerance_g, start_g, len(start_g) + first.moves)


def smallest_change(
    table: LoadTable, previous: BarLoad, target_g: int, *, tolerance_g: int = 0
) -> SetLoad | None:
    """Next load with the fewest plate moves from the bar as it stands; None where none exists.

    >>> from strength_handbook.calc.plates import PlateSize, load_table
    >>> table = load_table(20_000, tuple(PlateSize(g, 2) for g in (20_000, 10_000, 5_000)))
    >>> smallest_change(table, BarLoad(50_000, (10_000, 5_000)), 60_000)
    SetLoad(load=BarLoad(total_g=60000, side_g=(10000, 5000, 5000)), off_g=(), on_g=(5000,))
    """
    plan = fewest_moves(table, (target_g,), tolerance_g=tolerance_g, start_g=previous.side_g)
    return None if plan is None else plan.sets[0]


def _cheapest(
    table: LoadTable, targets_g: Sequence[int], tolerance_g: int, start: Stack, max_plates: int
) -> MovePlan:
    costs: dict[Stack, Cost] = {start: (0, 0, 0)}
    before: list[dict[Stack, Stack]] = []
    for target in targets_g:
        # Cheapest way to every inner part of a stack, everything outside it taken off. A kept
        # plate is one that need not be taken off and put on again: two moves less.
        inner: dict[Stack, tuple[Cost, Stack]] = {}
        for stack, (moves, below, carried) in costs.items():
            for kept in range(len(stack) + 1):
                way = ((moves + len(stack) - 2 * kept, below, carried), stack)
                known = inner.get(stack[:kept])
                if known is None or way[0] < known[0]:
                    inner[stack[:kept]] = way
        costs, came_from = {}, {}
        for stack in stacks(table, target - tolerance_g, target, max_plates):
            parts = (stack[:kept] for kept in range(len(stack) + 1))
            (moves, below, carried), came_from[stack] = min(
                (inner[part] for part in parts if part in inner), key=itemgetter(0)
            )
            short = target - table.loaded(stack).total_g
            costs[stack] = (moves + len(stack), below + short, carried + len(stack))
        before.append(came_from)
    # `min` keeps the first of equals, and stacks come heaviest plates first.
    chain = [min(costs, key=costs.__getitem__)]
    for came_from in reversed(before):
        chain.append(came_from[chain[-1]])
    chain.reverse()
    return MovePlan(tuple(_change(table, a, b) for a, b in pairwise(chain)))


def _change(table: LoadTable, before: Stack, after: Stack) -> SetLoad:
    return SetLoad(table.loaded(after), *between(before, after))
