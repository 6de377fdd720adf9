"""Plate search against an integer program: `scipy.optimize.milp` (HiGHS), in two stages.

Stage 1 finds the best total, stage 2 the fewest plates that make it.
"""

import random

import numpy as np
import pytest
from numpy.typing import ArrayLike

from inventories import random_room
from oracle import oracle
from strength_handbook.calc.plates import PlateSize, Rounding, load_table
from thorough import tries


class Room:
    """The plates of one side as an integer program; `None` is an infeasible one."""

    def __init__(self, sizes: tuple[PlateSize, ...], sleeve_mm: float | None) -> None:
        self.grams = np.array([size.grams for size in sizes])
        self.pairs = np.array([size.pairs for size in sizes])
        self.widths = np.array([size.thickness_mm for size in sizes])
        self.sleeve_mm = sleeve_mm

    def solve(self, cost: ArrayLike, low: float, high: float) -> np.ndarray | None:
        scipy = oracle("scipy.optimize")
        limits = [scipy.LinearConstraint(self.grams[None, :], low, high)]
        if self.sleeve_mm is not None:
            limits.append(scipy.LinearConstraint(self.widths[None, :], 0, self.sleeve_mm))
        result = scipy.milp(
            cost,
            constraints=limits,
            integrality=np.ones(len(self.grams)),
            bounds=scipy.Bounds(0, self.pairs),
            options={"mip_rel_gap": 0},
        )
        assert result.status in (0, 2), result.message
        return None if result.status == 2 else np.round(result.x).astype(int)

    def heaviest_below(self, side: float) -> int | None:
        plates = self.solve(-self.grams, 0, side)
        return None if plates is None else int(plates @ self.grams)

    def lightest_above(self, side: float) -> int | None:
        plates = self.solve(self.grams, max(side, 0), np.inf)
        return None if plates is None else int(plates @ self.grams)

    def fewest(self, side: int) -> int:
        plates = self.solve(np.ones(len(self.grams)), side, side)
        assert plates is not None
        assert plates @ self.grams == side
        return int(plates.sum())


def best(room: Room, side: float, rounding: Rounding) -> tuple[int, int] | None:
    """Mass of one side and its fewest plates."""
    below = room.heaviest_below(side) if rounding is not Rounding.UP and side >= 0 else None
    above = room.lightest_above(side) if rounding is not Rounding.DOWN else None
    found = [mass for mass in (below, above) if mass is not None]
    if not found:
        return None
    nearest = min(found, key=lambda mass: (abs(mass - side), mass))
    return nearest, room.fewest(nearest)


@pytest.mark.slow
@pytest.mark.parametrize(
    ("measured", "cases"), [(False, tries(120, 1000)), (True, tries(120, 500))]
)
def test_best_load_is_the_integer_program_s(*, measured: bool, cases: int) -> None:
    rng = random.Random(20 + measured)
    binding = 0
    for case in range(cases):
        sizes = random_room(rng, most_sizes=6, most_pairs=3, measured=measured)
        bar = rng.choice((7_500, 15_000, 20_000, 20_412))
        sleeve = rng.choice((120.0, 200.0, 320.0, 415.0)) if measured else None
        target = rng.randint(bar - 5_000, 220_000)
        rounding = tuple(Rounding)[case % 3]
        load = load_table(bar, sizes, sleeve_mm=sleeve).best(target, rounding)
        mine = None if load is None else (sum(load.side_g), len(load.side_g))
        assert mine == best(Room(sizes, sleeve), (target - bar) / 2, rounding), (sizes, target)
        binding += load != load_table(bar, sizes).best(target, rounding)
    # The sleeve must have mattered, or its part was not checked.
    assert not measured or binding > cases // 5


def test_thinner_sleeve_of_more_plates_is_kept_for_the_small_plates_to_come() -> None:
    # 20 kg of rubber takes 90 mm, twice 10 kg of iron 40 mm: with 5 kg more only iron fits.
    sizes = (PlateSize(20_000, 1, 90), PlateSize(10_000, 2, 20), PlateSize(5_000, 1, 20))
    table = load_table(20_000, sizes, sleeve_mm=100)
    sides = {load.total_g: load.side_g for load in table.loads}
    assert sides[60_000] == (20_000,)
    assert sides[70_000] == (10_000, 10_000, 5_000)
    assert load_table(20_000, sizes).best(70_000) != table.best(70_000)


def test_competition_sleeve_takes_six_discs_of_60_mm() -> None:
    # IWF: sleeve 415 mm. IPF: discs of 20 kg and more at most 60 mm thick. 6 × 60 = 360 mm.
    table = load_table(20_000, (PlateSize(25_000, 10, 60),), sleeve_mm=415)
    assert table.loads[-1].total_g == 20_000 + 2 * 6 * 25_000
    # A length that adds up exactly still fits.
    exact = load_table(20_000, (PlateSize(25_000, 10, 41.5),), sleeve_mm=415)
    assert len(exact.loads[-1].side_g) == 10
