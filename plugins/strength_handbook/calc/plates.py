"""Which loads a bar can carry with the plates of one station, and with which plates.

All masses are integer grams, so a sum is exact and 45 lb (20 412 g) mixes with kilograms. Both
sides carry the same plates; one side is listed from the inside outwards, heavy plates first.
"""

from bisect import bisect_left, bisect_right
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from enum import StrEnum
from functools import lru_cache
from itertools import pairwise
from operator import attrgetter
from typing import Literal, TypeVar

from strength_handbook.calc.registry import Evidence, formula

T = TypeVar("T")
# One side: (plates, width, masses). The masses are negative, so that the plain order of tuples
# prefers fewer plates, then less width, then heavier plates inside.
Loading = tuple[int, int, tuple[int, ...]]


class Rounding(StrEnum):
    """Where the load may lie when the wanted one cannot be built."""

    DOWN = "down"
    NEAREST = "nearest"
    UP = "up"


@dataclass(frozen=True, slots=True)
class PlateSize:
    """One size of plate at a station; a pair is one plate for each side.

    A thickness of 0 mm means that it was not measured: such a plate takes no room on the sleeve.
    """

    grams: int
    pairs: int
    thickness_mm: float = 0.0

    def __post_init__(self) -> None:
        if self.grams <= 0 or self.pairs < 0 or self.thickness_mm < 0:
            raise ValueError(f"not a plate size: {self}")

    @property
    def width_um(self) -> int:
        """Thickness in whole micrometres, so that widths add up exactly."""
        return round(self.thickness_mm * 1000)

    def available(self, sides: Literal[1, 2]) -> int:
        """Plates for one side: one of each pair, or both where there is only one side.

        >>> PlateSize(20_000, 2).available(2), PlateSize(20_000, 2).available(1)
        (2, 4)
        """
        return self.pairs * 2 // sides


@dataclass(frozen=True, slots=True)
class BarLoad:
    """A loaded bar: everything on it together, and the plates of one side, inner to outer."""

    total_g: int
    side_g: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class LoadTable:
    """Every load one bar can carry, with the equipment it was built from.

    Attributes:
        empty_g: the bar with its collars.
        sizes: the plates, heavy first.
        sides: 2 for a bar, 1 for a belt, a handle or a pivoted bar.
        sleeve_mm: length for plates on one side, or None where it does not matter.
        limit_g: highest total allowed, or None.
        loads: every reachable total once, ascending, each with its fewest plates.
    """

    empty_g: int
    sizes: tuple[PlateSize, ...]
    sides: Literal[1, 2]
    sleeve_mm: float | None
    limit_g: int | None
    loads: tuple[BarLoad, ...] = field(hash=False)  # many, and they follow from the rest

    def best(self, target_g: int, rounding: Rounding = Rounding.DOWN) -> BarLoad | None:
        """Load for a target in grams; None where no load lies on the allowed side of it.

        >>> table = load_table(20_000, (PlateSize(10_000, 1), PlateSize(2_500, 1)))
        >>> table.best(44_000), table.best(19_000)
        (BarLoad(total_g=40000, side_g=(10000,)), None)
        >>> table.best(44_000, Rounding.UP)
        BarLoad(total_g=45000, side_g=(10000, 2500))
        """
        return _pick(self.loads, attrgetter("total_g"), target_g, rounding)

    def loaded(self, side_g: tuple[int, ...]) -> BarLoad:
        """The bar with these plates on each side, whether or not the station has them.

        >>> load_table(20_000, ()).loaded((10_000,))
        BarLoad(total_g=40000, side_g=(10000,))
        """
        return BarLoad(self.empty_g + self.sides * sum(side_g), side_g)

    def smallest_step_g(self) -> int | None:
        """Smallest difference between two loads in grams; None where there is only one.

        >>> load_table(20_000, (PlateSize(20_000, 1), PlateSize(1_250, 2))).smallest_step_g()
        2500
        """
        totals = (load.total_g for load in self.loads)
        return min((heavier - lighter for lighter, heavier in pairwise(totals)), default=None)


@formula(
    subject="Plates",
    title="Every load a bar can carry",
    equation="total = bar + 2 × (collar + plates of one side)",
    inputs={
        "bar_g": "bar = its mass, g",
        "sizes": "plates of one side = sizes that exist, with pairs, g, and thickness, mm",
        "sleeve_mm": "room for plates on one side, mm",
        "collar_g": "collar = mass of one collar, g",
        "limit_g": "most the bar may carry, g",
        "sides": "2 for a bar, 1 for a belt or a pin",
    },
    output="every total that can be built, g, each with the fewest plates",
    source="search over every set of plates; exact",
    evidence=Evidence.ARITHMETIC,
)
def load_table(
    bar_g: int,
    sizes: tuple[PlateSize, ...],
    *,
    sleeve_mm: float | None = None,
    collar_g: int = 0,
    limit_g: int | None = None,
    sides: Literal[1, 2] = 2,
) -> LoadTable:
    """Every load of a bar, each with the fewest plates; worked out once per set of equipment.

    Among equally few plates the thinner sleeve wins, then the one with the heavier plates inside.

    Args:
        bar_g: the bar alone, in grams; 0 for a belt.
        sizes: the plates of the station, in any order.
        sleeve_mm: length for plates on one side, the collar's own width taken off.
        collar_g: ONE collar, in grams; every side carries one.
        limit_g: highest total allowed on the bar, itself included.
        sides: 2 for a bar; 1 where plates hang on a belt, are held, or stand on a single sleeve:
            a pair is then two single plates.

    Raises:
        ValueError: for a negative mass or length.

    >>> pair = tuple(PlateSize(grams, 1) for grams in (25_000, 15_000, 10_000, 5_000, 500))
    >>> load_table(20_000, pair).best(101_000)
    BarLoad(total_g=101000, side_g=(25000, 15000, 500))
    >>> load_table(0, (PlateSize(5_000, 1),), sides=1).best(12_000)
    BarLoad(total_g=10000, side_g=(5000, 5000))
    """
    if bar_g < 0 or collar_g < 0 or (sleeve_mm or 0) < 0 or (limit_g or 0) < 0:
        raise ValueError("bar, collar, sleeve and limit cannot be negative")
    pairs: dict[tuple[int, float], int] = {}
    for size in sizes:
        kind = (-size.grams, size.thickness_mm)
        pairs[kind] = pairs.get(kind, 0) + size.pairs
    # One order for every station, so that the order of the inventory cannot change an answer.
    ordered = tuple(PlateSize(-g, n, mm) for (g, mm), n in sorted(pairs.items()) if n)
    return _build(bar_g + sides * collar_g, ordered, sides, sleeve_mm, limit_g)


@formula(
    subject="Plates",
    title="The load to take among those that exist",
    equation="down: the largest load ≤ target; up: the smallest ≥ target; nearest: the closer "
    "of the two",
    inputs={
        "target_g": "target = load planned, g",
        "masses_g": "load = those that exist, g",
        "rounding": "down, up or nearest",
    },
    output="one of the loads, g",
    source="definition",
    evidence=Evidence.ARITHMETIC,
)
def nearest_fixed(
    target_g: int, masses_g: Sequence[int], rounding: Rounding = Rounding.DOWN
) -> int | None:
    """Dumbbell, kettlebell or handle for a target in grams; None where none may be taken.

    >>> nearest_fixed(18_000, (16_000, 20_000, 24_000), Rounding.NEAREST)
    16000
    >>> nearest_fixed(15_000, (16_000, 20_000)) is None
    True
    """
    return _pick(sorted(masses_g), int, target_g, rounding)


def _pick(
    ascending: Sequence[T], mass: Callable[[T], int], target: int, rounding: Rounding
) -> T | None:
    at_most = bisect_right(ascending, target, key=mass)
    at_least = bisect_left(ascending, target, key=mass)
    below = ascending[at_most - 1] if at_most else None
    above = ascending[at_least] if at_least < len(ascending) else None
    if rounding is Rounding.DOWN:
        return below
    if rounding is Rounding.UP:
        return above
    if below is None or above is None:
        return above if below is None else below
    # Halfway between two loads the lighter one is taken.
    return below if target - mass(below) <= mass(above) - target else above


@lru_cache(maxsize=256)
def _build(
    empty_g: int,
    sizes: tuple[PlateSize, ...],
    sides: Literal[1, 2],
    sleeve_mm: float | None,
    limit_g: int | None,
) -> LoadTable:
    room = None if sleeve_mm is None else round(sleeve_mm * 1000)
    heaviest = sum(size.grams * size.available(sides) for size in sizes)
    if limit_g is not None:
        heaviest = min(heaviest, (limit_g - empty_g) // sides)
    fronts: dict[int, list[Loading]] = {}
    if heaviest >= 0:
        fronts[0] = [(0, 0, ())]
    for size in sizes:
        width = size.width_um
        found: dict[int, list[Loading]] = {}
        for mass, front in fronts.items():
            most = min(size.available(sides), (heaviest - mass) // size.grams)
            for plates in range(most + 1):
                group = (-size.grams,) * plates
                found.setdefault(mass + plates * size.grams, []).extend(
                    (count + plates, used + plates * width, masses + group)
                    for count, used, masses in front
                    if room is None or used + plates * width <= room
                )
        # Without a sleeve length the first is enough; with one, a thinner sleeve of more plates
        # may be the only one that still takes the smaller plates to come.
        fronts = {
            mass: [min(several)] if room is None else _pareto(several)
            for mass, several in found.items()
            if several
        }
    loads = tuple(
        BarLoad(empty_g + sides * mass, tuple(-grams for grams in min(fronts[mass])[2]))
        for mass in sorted(fronts)
    )
    return LoadTable(empty_g, sizes, sides, sleeve_mm, limit_g, loads)


def _pareto(several: list[Loading]) -> list[Loading]:
    front: list[Loading] = []
    for one in sorted(several):
        if not front or one[1] < front[-1][1]:
            front.append(one)
    return front
