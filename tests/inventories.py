"""Plate inventories for tests: random rooms, the competition sets, a gym with one of everything."""

import random
from itertools import product

from hypothesis import strategies as st

from strength_handbook.calc.plates import PlateSize

KG = (25_000, 20_000, 15_000, 10_000, 5_000, 2_500, 2_000, 1_500, 1_250, 1_000, 500)
# Avoirdupois pound = 0.453 592 37 kg exactly (international yard and pound agreement, 1959).
LB = tuple(round(pounds * 453.59237) for pounds in (45, 35, 25, 10, 5, 2.5))


def pairs(*counts: tuple[float, int]) -> tuple[PlateSize, ...]:
    """Plates from (kilograms, pairs)."""
    return tuple(PlateSize(round(kilograms * 1000), count) for kilograms, count in counts)


GYM = pairs((25, 2), (20, 2), (15, 1), (10, 2), (5, 2), (2.5, 2), (1.25, 2))
# Weightlifting: IWF Technical and Competition Rules, disc set. Powerlifting: IPF Technical Rules.
IWF = pairs(*((kg, 1) for kg in (25, 20, 15, 10, 5, 2.5, 2, 1.5, 1, 0.5)))
IPF = pairs((25, 4), *((kg, 1) for kg in (20, 15, 10, 5, 2.5, 1.25)))


def random_room(
    rng: random.Random, *, most_sizes: int, most_pairs: int, measured: bool = False
) -> tuple[PlateSize, ...]:
    """Plates in kilograms, pounds or both; measured ones are 5 to 90 mm thick."""
    masses = rng.choice((KG, LB, KG + LB))
    chosen = rng.sample(masses, rng.randint(1, min(most_sizes, len(masses))))
    return tuple(
        PlateSize(mass, rng.randint(1, most_pairs), rng.randint(5, 90) if measured else 0.0)
        for mass in chosen
    )


def rooms(most_sizes: int = 4, most_pairs: int = 2) -> st.SearchStrategy[tuple[PlateSize, ...]]:
    """Small rooms, also with two makes of one mass and sizes of which no pair is left."""
    size = st.builds(
        PlateSize,
        st.sampled_from(KG + LB),
        st.integers(0, most_pairs),
        st.sampled_from((0.0, 12.5, 20.0, 33.3, 60.0)),
    )
    return st.lists(size, max_size=most_sizes).map(tuple)


def every_choice(sizes: tuple[PlateSize, ...], sides: int) -> list[tuple[PlateSize, ...]]:
    """Every choice of plates for one side, by plain enumeration."""
    counts = (range(size.pairs * 2 // sides + 1) for size in sizes)
    return [
        tuple(size for size, n in zip(sizes, each, strict=True) for _ in range(n))
        for each in product(*counts)
    ]
