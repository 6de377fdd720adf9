from math import floor, inf
from random import Random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from mujoco_bar import Weight, stacked, tips
from strength_handbook.calc.barbell import BarShape, PlateShape
from strength_handbook.calc.tipping import (
    BandPull,
    Side,
    lone_load,
    off_centre_margin,
    tip_margin,
    tipping_load,
)

MEN = BarShape()
WOMEN = BarShape(mass=15.0, length=2.010)
SPACINGS = (0.6, 0.8, 1.0, 1.1, 1.2)

sizes = st.sampled_from([(25, 0.060), (20, 0.050), (15, 0.040), (10, 0.030), (2.5, 0.018)])
sides = st.builds(
    lambda plates, pulls: Side(
        tuple(PlateShape(*p) for p in plates), tuple(BandPull(*p) for p in pulls)
    ),
    st.lists(sizes, max_size=4),
    st.lists(st.tuples(st.floats(0, 60), st.floats(0.5, 1.05)), max_size=2),
)


def test_threshold_agrees_with_a_rigid_body_engine() -> None:
    # MuJoCo, bisection on the mass of one lump at 0.70 m: 5 spacings × 2 bars × 2 shifts.
    for bar in (MEN, WOMEN):
        for spacing in SPACINGS:
            for shift in (0.0, 0.05):
                expected = tipping_load(bar.mass, spacing, 0.70, shift)
                low, high = 0.95 * expected, 1.05 * expected
                while high / low > 1.002:
                    middle = (low * high) ** 0.5
                    if tips(bar.mass, bar.length, [Weight(middle, 0.70)], spacing, shift):
                        high = middle
                    else:
                        low = middle
                assert (low * high) ** 0.5 == pytest.approx(expected, rel=0.003)


def test_random_decisions_agree_with_a_rigid_body_engine() -> None:
    # MuJoCo, both sleeves loaded at random, with and without bands; nothing within 1 % of the
    # threshold, where the engine's soft contacts decide.
    random = Random(20)
    kinds = [(25, 0.060), (20, 0.050), (15, 0.040), (10, 0.030), (5, 0.025), (2.5, 0.018)]
    outcomes = {True: 0, False: 0}
    while sum(outcomes.values()) < 250:
        bar = random.choice((MEN, WOMEN))
        spacing, shift = random.uniform(0.6, 1.2), random.uniform(-0.06, 0.06)
        heavy = [random.choice(kinds) for _ in range(random.randint(0, 4))]
        light = [random.choice(kinds) for _ in range(random.choice((0, 0, 0, 1, 2)))]
        stacks = [heavy, light]
        pulls = [
            [(random.uniform(5, 40), random.uniform(0.70, 1.0))] * random.choice((0, 0, 1))
            for _ in stacks
        ]
        if random.random() < 0.5:
            stacks.reverse()
        left, right = (
            Side(tuple(PlateShape(*p) for p in stack), tuple(BandPull(*p) for p in pull))
            for stack, pull in zip(stacks, pulls, strict=True)
        )
        margin = tip_margin(bar, left, right, spacing, shift)
        if abs(margin - 1) < 0.01:
            continue
        seen = tips(
            bar.mass,
            bar.length,
            stacked(stacks[0], sign=-1) + stacked(stacks[1]),
            spacing,
            shift,
            [Weight(f, -d) for f, d in pulls[0]] + [Weight(f, d) for f, d in pulls[1]],
        )
        assert (margin < 1) == seen, (bar, left, right, spacing, shift, margin)
        outcomes[seen] += 1
    assert min(outcomes.values()) >= 80, "both outcomes must be well represented"


# X = m (a − δ) / (d + δ − a), plate of 30 mm, so d = 0.70 m; worked by hand.
@pytest.mark.parametrize(
    ("bar", "off_centre", "expected"),
    [
        (MEN, 0.00, (15.0, 26.7, 50.0, 73.3, 120.0)),
        (MEN, 0.05, (11.1, 20.0, 36.0, 50.0, 73.3)),
        (WOMEN, 0.00, (11.25, 20.0, 37.5, 55.0, 90.0)),
        (WOMEN, 0.05, (8.3, 15.0, 27.0, 37.5, 55.0)),
    ],
)
def test_table_of_tipping_loads(
    bar: BarShape, off_centre: float, expected: tuple[float, ...]
) -> None:
    got = [tipping_load(bar.mass, s, 0.70, off_centre) for s in SPACINGS]
    assert got == pytest.approx(expected, abs=0.051)


# Band pull in kgf that tips an empty 20 kg bar on hooks 1.10 m apart; worked by hand.
@pytest.mark.parametrize(
    ("distance", "centred", "off_centre"),
    [(0.7, 73, 50), (0.8, 44, 33), (0.9, 31, 25), (1, 24, 20)],
)
def test_table_of_tipping_bands(distance: float, centred: float, off_centre: float) -> None:
    assert tipping_load(20, 1.10, distance) == pytest.approx(centred, abs=0.5)
    assert tipping_load(20, 1.10, distance, 0.05) == pytest.approx(off_centre, abs=0.5)


def test_band_on_a_bar_with_40_kg_on_each_side() -> None:
    side = (PlateShape(20, 0.030), PlateShape(20, 0.030))
    for shift, limit in ((0.0, 122.2), (0.05, 100.0)):  # worked by hand, independent of the places
        for pull, tips_over in ((limit - 0.5, False), (limit + 0.5, True)):
            right = Side(side, (BandPull(pull, 1.0),))
            assert (tip_margin(MEN, Side(side), right, 1.10, shift) < 1) == tips_over


# Half the tipping load, 50 mm plate, bar 5 cm off-centre, whole kilos; worked by hand.
@pytest.mark.parametrize(
    ("bar", "expected"), [(MEN, [5, 7, 9, 12, 17, 23, 34]), (WOMEN, [4, 5, 7, 9, 12, 17, 25])]
)
def test_table_of_safe_lone_loads(bar: BarShape, expected: list[int]) -> None:
    got = [floor(lone_load(bar, s)) for s in (0.6, 0.7, 0.8, 0.9, 1.0, 1.1, 1.2)]
    assert got == expected


def test_whole_plates_tip_sooner_than_one_lump() -> None:
    # 1.10 m, 20 kg bar, centred: two 25 kg plates of 60 mm hold, a third tips; three 20 kg plates
    # of 30 mm hold. Worked by hand.
    def right(count: int, mass: float, thickness: float) -> float:
        return tip_margin(MEN, Side(), Side((PlateShape(mass, thickness),) * count), 1.10)

    assert right(2, 25, 0.060) > 1 > right(3, 25, 0.060)
    assert right(3, 20, 0.030) > 1


def test_a_plate_left_on_the_light_side_is_worth_its_lever() -> None:
    # (d + a) / (d − a) with d = 0.70 m, a = 0.55 m: 8.33 kg on the heavy side for each kilogram.
    def margin(heavy: float) -> float:
        return tip_margin(
            MEN, Side((PlateShape(10, 0.030),)), Side((PlateShape(heavy, 0.030),)), 1.10
        )

    assert margin(73.3 + 83.2) > 1 > margin(73.4 + 83.4)


@pytest.mark.parametrize(("spacing", "passes"), [(1.0, False), (1.1, False), (1.2, True)])
def test_a_lone_25_kg_plate_of_60_mm(spacing: float, *, passes: bool) -> None:
    assert (off_centre_margin(MEN, Side(), Side((PlateShape(25, 0.060),)), spacing) >= 2) == passes


def test_a_lone_25_kg_plate_on_narrow_hooks() -> None:
    right = Side((PlateShape(25, 0.060),))
    assert off_centre_margin(MEN, Side(), right, 0.80) < 1 < tip_margin(MEN, Side(), right, 0.80)
    assert tip_margin(MEN, Side(), right, 0.70) < 1


@given(sides, sides, st.floats(0.5, 1.25), st.floats(-0.08, 0.08))
def test_mirror_image_has_the_same_margin(
    left: Side, right: Side, spacing: float, shift: float
) -> None:
    here = tip_margin(MEN, left, right, spacing, shift)
    assert tip_margin(MEN, right, left, spacing, -shift) == pytest.approx(here)


@given(sides, sides, st.floats(0.5, 1.2), st.floats(0.01, 0.1))
def test_wider_hooks_are_never_worse(left: Side, right: Side, spacing: float, wider: float) -> None:
    narrow = tip_margin(MEN, left, right, spacing)
    assert tip_margin(MEN, left, right, spacing + wider) >= narrow - 1e-9


@given(sides, st.floats(0.5, 1.25), st.floats(0, 0.08))
def test_a_heavier_bar_is_never_worse(right: Side, spacing: float, shift: float) -> None:
    light = tip_margin(BarShape(mass=15), Side(), right, spacing, shift)
    assert tip_margin(MEN, Side(), right, spacing, shift) >= light - 1e-9


@given(sizes, st.floats(0.6, 1.2), st.floats(0, 0.08))
def test_margin_of_one_plate_is_tipping_load_over_its_mass(
    size: tuple[float, float], spacing: float, shift: float
) -> None:
    mass, thickness = size
    limit = tipping_load(20, spacing, 0.685 + thickness / 2, shift)
    margin = tip_margin(MEN, Side(), Side((PlateShape(mass, thickness),)), spacing, shift)
    assert margin == pytest.approx(limit / mass)
    assert lone_load(MEN, spacing, thickness, shift) == pytest.approx(limit / 2)


def test_nothing_outside_the_hooks_cannot_tip() -> None:
    assert tip_margin(MEN, Side(), Side(), 1.10) == inf
    assert tip_margin(MEN, Side(), Side((), (BandPull(100, 0.4),)), 1.10) == inf
    assert tipping_load(20, 1.10, 0.40) == inf
    # Right above a hook there is no lever; the widest hooks touch the collars.
    assert tipping_load(20, 1.00, 0.50) == inf
    assert tip_margin(MEN, Side(), Side(), 1.31) == inf


def test_off_centre_is_the_worse_of_both_ways() -> None:
    heavy = Side((PlateShape(25, 0.060),))
    one_way, other_way = (tip_margin(MEN, heavy, Side(), 1.10, shift) for shift in (-0.05, 0.05))
    assert off_centre_margin(MEN, heavy, Side(), 1.10) == one_way < other_way
    assert off_centre_margin(MEN, Side(), heavy, 1.10) == pytest.approx(one_way)


def test_a_bar_lying_outside_a_hook_tips_by_itself() -> None:
    assert tip_margin(MEN, Side(), Side(), 0.60, 0.31) < 1
    assert tipping_load(20, 0.60, 0.70, 0.31) == 0


@pytest.mark.parametrize("spacing", [0.0, -1.0, 1.32])
def test_hooks_outside_the_collars_are_refused(spacing: float) -> None:
    with pytest.raises(ValueError, match="hooks"):
        tip_margin(MEN, Side(), Side(), spacing)


def test_bands_pull_down_beside_the_middle() -> None:
    with pytest.raises(ValueError, match="pulls down"):
        BandPull(-1, 0.8)
    with pytest.raises(ValueError, match="pulls down"):
        BandPull(10, 0)
