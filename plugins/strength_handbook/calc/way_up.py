"""The cheapest way up to a loaded bar: steps with inner parts of its stack, and one exchange.

The plates of the working load are given, inner to outer. On the way there the bar carries some of
the innermost of them, and outside these, until they are exchanged once, a few plates that come off
again. So a load that is one heavy plate still has light steps before it.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import combinations_with_replacement
from typing import NamedTuple

from strength_handbook.calc.plates import LoadTable
from strength_handbook.calc.stacks import Stack

SPARE_PLATES = 3
"""Most plates on a side that come off again: more of them are not worth carrying."""
PLATE_PERCENT = 1
"""A plate must bring the steps this much closer, in percent of the top load, to be moved."""

# (how much the jumps are too large, everything else): in hundredths of grams, compared in order.
Cost = tuple[int, int]


@dataclass(frozen=True, slots=True)
class Limits:
    """What a way up should keep to, in percent of the top load.

    Attributes:
        first: heaviest first step that has plates on; above it the empty bar comes first.
        jump: largest jump from one step to the next.
        last: largest jump to the top load.
    """

    first: int
    jump: int
    last: int


class Rung(NamedTuple):
    """The bar on its way: `kept` inner plates of the final stack, then plates that come off again.

    `changed` is true once they have: from then on plates only go on.
    """

    kept: int
    spare: Stack
    changed: bool


@dataclass(frozen=True, slots=True)
class _Way:
    """The cheapest way to a place: its cost, and the steps with the target of each."""

    cost: Cost
    load_g: int
    steps: tuple[tuple[int, Rung], ...]


def cheapest_way(
    table: LoadTable, final: Stack, wanted_g: Sequence[int], limits: Limits
) -> tuple[tuple[int, Stack], ...]:
    """Steps to a loaded bar, each with the place of its wanted load and the plates of one side.

    The least excess of the jumps over their limits wins; then the least sum of what the steps miss
    their wanted loads by and of the plates that are moved. A wanted load that no step comes within
    half the largest last jump of is left out, and counts as that far off. The empty bar may always
    be the first step.

    Args:
        table: the bar and its plates.
        final: plates of one side, inner to outer.
        wanted_g: loads of the steps as wanted, rising, in grams.
        limits: largest first step and largest jumps.

    >>> from strength_handbook.calc.plates import PlateSize, load_table
    >>> table = load_table(20_000, tuple(PlateSize(g, 2) for g in (25_000, 10_000, 5_000)))
    >>> cheapest_way(table, (25_000,), (28_000, 49_000, 63_000), Limits(60, 20, 15))
    ((0, ()), (1, (10000, 5000)), (2, (10000, 5000, 5000)))
    """
    search = _Search(table, final, limits)
    ways: dict[Rung, _Way] = {}
    for target, wanted in enumerate(wanted_g):
        found = [
            (place, way)
            for place, load in search.places()
            if (miss := search.miss(load, wanted, first=target == 0)) is not None
            and (way := search.way(ways, place, load, target, miss)) is not None
        ]
        for place, way in found:
            if place not in ways or way.cost < ways[place].cost:
                ways[place] = way
    best = search.to_top(ways)
    return tuple((target, search.side(place)) for target, place in (best.steps if best else ()))


class _Search:
    """One bar, one final stack; the costs of its places and of the moves between them."""

    def __init__(self, table: LoadTable, final: Stack, limits: Limits) -> None:
        self.table, self.final, self.limits = table, final, limits
        self.top_g = table.loaded(final).total_g
        self.reach_g = self.top_g * limits.last // 200
        self._places = tuple(self._all_places())

    def places(self) -> tuple[tuple[Rung, int], ...]:
        """Every place below the top, with its load."""
        return self._places

    def side(self, place: Rung) -> Stack:
        return self.final[: place.kept] + place.spare

    def miss(self, load_g: int, wanted_g: int, *, first: bool) -> int | None:
        """Grams off the wanted load; None where that is too far."""
        off = abs(load_g - wanted_g)
        if first and load_g == self.table.empty_g:
            return min(off, self.reach_g)
        return off if off <= self.reach_g else None

    def way(
        self, ways: dict[Rung, _Way], place: Rung, load_g: int, target: int, miss_g: int
    ) -> _Way | None:
        """The cheapest way to a place as the step for a target."""
        # A step taken saves the wanted load that would have been left out.
        own = 100 * (miss_g - self.reach_g)
        steps: tuple[tuple[int, Rung], ...] = ()
        best: Cost | None = None
        light = 100 * load_g <= self.limits.first * self.top_g
        if not place.changed and (light or load_g == self.table.empty_g):
            best = 0, self._plates(place.kept + len(place.spare)) + own
        plate, free_g = PLATE_PERCENT * self.top_g, self.limits.jump * self.top_g
        for before, moved in self._before(ways, place):
            way = ways[before]
            if way.load_g < load_g:
                excess = max(0, 100 * (load_g - way.load_g) - free_g)
                cost = way.cost[0] + excess, way.cost[1] + plate * moved + own
                if best is None or cost < best:
                    best, steps = cost, way.steps
        return None if best is None else _Way(best, load_g, (*steps, (target, place)))

    def to_top(self, ways: dict[Rung, _Way]) -> _Way | None:
        """The way whose last step is followed by the top load."""

        def cost(item: tuple[Rung, _Way]) -> Cost:
            place, way = item
            moved = len(place.spare) + len(self.final) - place.kept
            excess = self._excess(self.top_g - way.load_g, self.limits.last)
            return way.cost[0] + excess, way.cost[1] + self._plates(moved)

        return min(ways.items(), key=cost)[1] if ways else None

    def _plates(self, moved: int) -> int:
        return PLATE_PERCENT * self.top_g * moved

    def _excess(self, jump_g: int, percent: int) -> int:
        return max(0, 100 * jump_g - percent * self.top_g)

    def _before(self, ways: dict[Rung, _Way], place: Rung) -> Iterator[tuple[Rung, int]]:
        """Places from which a place is reached, and the plates moved on one side."""
        kept, spare = place.kept, place.spare
        if place.changed:
            for one in ways:
                if one.kept < kept and (one.spare or one.changed):
                    yield one, len(one.spare) + kept - one.kept
            return
        for inner in range(kept + 1 if spare else kept):
            one = Rung(inner, (), changed=False)
            if one in ways:
                yield one, kept - inner + len(spare)
        for count in range(1, len(spare)):
            one = Rung(kept, spare[:count], changed=False)
            if one in ways:
                yield one, len(spare) - count

    def _all_places(self) -> Iterator[tuple[Rung, int]]:
        table, final = self.table, self.final
        for kept in range(len(final)):
            inner = table.loaded(final[:kept]).total_g
            yield Rung(kept, (), changed=False), inner
            if kept:
                yield Rung(kept, (), changed=True), inner
            for spare, mass in _spares(table, final[:kept]):
                load = inner + table.sides * mass
                # Beginning with the plate that comes next is another place with more kept.
                if load < self.top_g and spare[0] != final[kept]:
                    yield Rung(kept, spare, changed=False), load


@lru_cache(maxsize=4096)
def _spares(table: LoadTable, inner: Stack) -> tuple[tuple[Stack, int], ...]:
    """Groups of plates that the station and the sleeve still have outside others, and their mass.

    Heavy plates stand inside.
    """
    widths = _widths(table)
    room_um = None if table.sleeve_mm is None else round(table.sleeve_mm * 1000)
    groups = (
        group
        for count in range(1, SPARE_PLATES + 1)
        for group in combinations_with_replacement(sorted(widths, reverse=True), count)
    )
    return tuple(
        (group, sum(group)) for group in groups if _fits(widths, room_um, (*inner, *group))
    )


def _fits(widths: Mapping[int, tuple[int, ...]], room_um: int | None, side: Stack) -> bool:
    """The station has the plates, and the sleeve takes them."""
    used = 0
    for grams in set(side):
        count = side.count(grams)
        if count > len(widths[grams]):
            return False
        used += sum(widths[grams][:count])
    return room_um is None or used <= room_um


def _widths(table: LoadTable) -> dict[int, tuple[int, ...]]:
    """Of each mass the plates for one side, by their width in micrometres, thinnest first."""
    found: dict[int, list[int]] = {}
    for size in table.sizes:
        found.setdefault(size.grams, []).extend([size.width_um] * size.available(table.sides))
    return {grams: tuple(sorted(widths)) for grams, widths in found.items()}
