"""Plates of a bar by mass, and the least that several lifters' stacks of them can cost."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cache, lru_cache
from itertools import accumulate, product

from strength_handbook.calc.plates import LoadTable
from strength_handbook.calc.turns import Counts, Weights

Cost = tuple[int, int]
"""Plate moves, and plates carried by all: compared in this order."""


@dataclass(frozen=True, slots=True)
class PlateKind:
    """Plates of one mass: room that so many take, and what lighter ones can add to them."""

    grams: int
    widths: tuple[int, ...]
    lighter: frozenset[int]


def plate_kinds(table: LoadTable) -> list[PlateKind]:
    """Plates by mass, heavy first; of one mass the thinnest go on first.

    >>> from strength_handbook.calc.plates import PlateSize, load_table
    >>> heavy, light = plate_kinds(load_table(0, (PlateSize(5_000, 2), PlateSize(10_000, 1))))
    >>> heavy.grams, sorted(heavy.lighter), len(light.widths) - 1
    (10000, [0, 5000, 10000], 2)
    """
    widths: dict[int, list[int]] = {}
    for size in table.sizes:
        widths.setdefault(size.grams, []).extend([size.width_um] * size.available(table.sides))
    found: list[PlateKind] = []
    lighter = frozenset({0})
    for grams, each in sorted((grams, each) for grams, each in widths.items() if each):
        found.append(PlateKind(grams, (0, *accumulate(sorted(each))), lighter))
        lighter = frozenset(mass + n * grams for mass in lighter for n in range(len(each) + 1))
    return found[::-1]


def choices(kind: PlateKind, rest: Counts) -> Iterator[Counts]:
    """How many plates of a size each may take, so that lighter ones can make up the rest.

    >>> list(choices(PlateKind(10_000, (0, 0, 0), frozenset({0, 5_000})), (25_000, 10_000)))
    [(2, 1)]
    """
    most = range(len(kind.widths) - 1, -1, -1)
    return product(*([n for n in most if mass - n * kind.grams in kind.lighter] for mass in rest))


class Bounds:
    """What the sizes from a place on must still cost; each two lifters looked at by themselves."""

    def __init__(self, kinds: Sequence[PlateKind]) -> None:
        self.kinds = kinds
        self.plates = cache(self._plates)
        self.apart = cache(self._apart)

    def least(self, place: int, rest: Counts, weights: Weights) -> Cost:
        """Moves and plates, neither more than any plan needs."""
        plates = [self.plates(place, mass) for mass in rest]
        moves, apart = plates[0], self.apart
        for (a, b), weight in weights.items():
            one, other = rest[a], rest[b]
            moves += weight * (
                apart(place, one, other) if one < other else apart(place, other, one)
            )
        return moves, sum(plates)

    def _plates(self, place: int, mass: int) -> int:
        """Fewest plates that make a mass up."""
        if place == len(self.kinds):
            return 0
        kind = self.kinds[place]
        return min(
            number + self.plates(place + 1, mass - number * kind.grams)
            for (number,) in choices(kind, (mass,))
        )

    def _apart(self, place: int, lighter: int, heavier: int) -> int:
        """Fewest plates that two stacks of these masses do not have in common."""
        if lighter == heavier:
            return 0
        kind = self.kinds[place]
        return min(
            abs(one - other)
            + self.apart(
                place + 1, *sorted((lighter - one * kind.grams, heavier - other * kind.grams))
            )
            for one, other in choices(kind, (lighter, heavier))
        )


@lru_cache(maxsize=16)
def bounds_of(table: LoadTable) -> Bounds:
    """The bounds of a bar, with all that earlier searches worked out of its plates.

    >>> from strength_handbook.calc.plates import PlateSize, load_table
    >>> table = load_table(20_000, (PlateSize(10_000, 1), PlateSize(5_000, 2)))
    >>> bounds_of(table) is bounds_of(table)
    True
    """
    return Bounds(plate_kinds(table))
