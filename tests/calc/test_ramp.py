import random
from itertools import combinations, pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inventories import GYM, IWF, every_choice, pairs, random_room
from strength_handbook.calc.plates import LoadTable, PlateSize, load_table
from strength_handbook.calc.ramp import WARM_UP, Ramp, RampTarget, ramp_plan, ramp_targets

TABLE = load_table(20_000, GYM)


def kilograms(ramp: Ramp | None) -> list[float]:
    assert ramp is not None
    return [step.load.total_g / 1000 for step in ramp.steps]


def test_five_steps_to_a_heavy_top_load() -> None:
    # 40, 55, 70, 80, 90 % for 5, 4, 3, 2, 1: common practice, no source.
    steps = ramp_targets(200_000, 20_000)
    assert [(step.load_g, step.reps) for step in steps] == [
        (80_000, 5),
        (110_000, 4),
        (140_000, 3),
        (160_000, 2),
        (180_000, 1),
    ]


@pytest.mark.parametrize(
    ("top", "expected"),
    [
        (15, []),  # lighter than the bar: nothing to warm up with
        (20, []),
        (22.5, [20]),  # the bar is 89 % of the top load
        (25, [20, 22.5]),  # the bar alone would leave a last jump of 20 %
        (30, [20, 27]),
        (35, [20, 31.5]),  # 28 kg would stand too close to the last step
        (40, [20, 28, 36]),
        (50, [20, 27.5, 35, 40, 45]),  # jumps of just 5 kg
        (60, [24, 33, 42, 48, 54]),
    ],
)
def test_fewer_steps_to_a_light_top_load(top: float, expected: list[float]) -> None:
    steps = ramp_targets(round(top * 1000), 20_000)
    assert [step.load_g / 1000 for step in steps] == expected


def test_a_bar_of_85_percent_is_near_enough_to_the_top() -> None:
    # The last jump of 15 % is allowed, so 18 kg, a kilogram from the bar, is left out.
    assert [step.load_g for step in ramp_targets(20_000, 17_000)] == [17_000]


def test_a_bar_a_little_below_85_percent_is_not() -> None:
    assert [step.load_g for step in ramp_targets(20_000, 16_980)] == [16_980, 18_000]


def test_a_step_close_to_the_one_before_is_left_out() -> None:
    steps = ramp_targets(60_000, 20_000, steps=((40, 5), (50, 4), (55, 3), (90, 1)))
    assert [step.load_g for step in steps] == [24_000, 30_000, 54_000]


def test_a_jump_a_gram_below_5_kg_is_not_worth_a_step() -> None:
    # 70, 80 and 90 % of 49.99 kg lie 4.999 kg apart.
    loads = [step.load_g for step in ramp_targets(49_990, 20_000)]
    assert 39_992 not in loads
    assert loads[-2:] == [34_993, 44_991]


def test_a_last_step_of_99_percent_is_a_ramp() -> None:
    assert ramp_targets(100_000, 20_000, steps=((99, 1),))[0].load_g == 99_000


@pytest.mark.parametrize(("heavy", "plates"), [(72_005, 3), (71_995, 2)])
def test_one_plate_more_is_worth_one_percent(heavy: int, plates: int) -> None:
    # 90 kg wanted. Three plates make 91 kg, two make 1.005 or 0.995 kg worse of it: more or less
    # than 1 % of the top load.
    grams = (heavy, 80_000 - heavy, 50_000, 21_000, 9_000)
    table = load_table(20_000, tuple(PlateSize(each, 1) for each in grams), sides=1)
    ramp = ramp_plan(table, 100_000, steps=((90, 1),))
    assert ramp is not None
    assert len(ramp.top.side_g) == plates


def test_a_last_step_just_worth_while_is_kept() -> None:
    steps = ramp_targets(50_000, 20_000, last_jump_percent=40)
    assert [step.load_g for step in steps][-2:] == [40_000, 45_000]


def test_steps_may_end_as_far_below_the_top_as_the_last_jump() -> None:
    steps = ramp_targets(100_000, 20_000, steps=((50, 5), (85, 2)))
    assert [step.load_g for step in steps] == [50_000, 85_000]


@pytest.mark.parametrize(("inner", "loads"), [(37_400, [57.4, 90]), (37_502, [90])])
def test_a_step_further_off_than_half_the_last_jump_is_left_out(
    inner: int, loads: list[float]
) -> None:
    # 50 and 90 kg wanted: 57.4 kg is less than 7.5 % of the top load off, 57.502 kg is more.
    plates = tuple(PlateSize(grams, 1) for grams in (inner, 70_000 - inner, 10_000))
    table = load_table(20_000, plates, sides=1)
    assert kilograms(ramp_plan(table, 100_000, steps=((50, 5), (90, 1)))) == loads


def test_a_last_step_just_within_reach_is_taken() -> None:
    # 97.5 kg, 7.5 % of the top load above the wanted 90 kg, is the only load near the top.
    table = load_table(20_000, pairs((77.5, 1), (2.5, 1)), sides=1)
    assert kilograms(ramp_plan(table, 100_000, steps=((50, 5), (90, 1)))) == [97.5]


def test_the_bar_is_one_step_however_small_the_jumps() -> None:
    steps = ramp_targets(30_000, 20_000, smallest_jump_g=0)
    assert [step.load_g for step in steps] == [20_000, 21_000, 24_000, 27_000]


@given(st.integers(1_000, 400_000), st.integers(0, 30_000), st.integers(0, 15_000))
def test_targets_climb_from_the_bar_and_end_close_to_the_top(top: int, bar: int, jump: int) -> None:
    steps = ramp_targets(top, bar, smallest_jump_g=jump)
    loads = [step.load_g for step in steps]
    assert loads == sorted(set(loads))
    assert all(bar <= load < top for load in loads)
    assert set(steps) <= {
        RampTarget(max(bar, round(top * percent / 100)), percent, reps) for percent, reps in WARM_UP
    }
    assert not loads or loads[-1] >= 0.85 * top
    # Only the last step may stand closer, where the last jump asks for it.
    assert all(heavier - lighter >= jump for lighter, heavier in pairwise(loads[:-1]))
    if top > bar > 0.4 * top:
        assert loads[0] == bar


@pytest.mark.parametrize(
    "steps", [((60, 3), (50, 2), (90, 1)), ((50, 5), (84, 3)), ((90, 1), (100, 1))]
)
def test_steps_that_are_no_ramp_are_refused(steps: tuple[tuple[int, int], ...]) -> None:
    with pytest.raises(ValueError, match="not a ramp"):
        ramp_targets(100_000, 20_000, steps=steps)


@pytest.mark.parametrize(
    ("top", "expected", "side"),
    [
        (20, [], []),
        (40, [20, 30, 35], [5, 2.5, 2.5]),
        (60, [20, 40, 50, 55], [10, 5, 2.5, 2.5]),
        (100, [50, 70, 80, 90], [15, 10, 5, 5, 2.5, 2.5]),
        (200, [70, 110, 140, 160, 180], [25, 20, 15, 10, 10, 5, 5]),
    ],
)
def test_ramps_with_the_plates_of_a_gym(
    top: float, expected: list[float], side: list[float]
) -> None:
    ramp = ramp_plan(TABLE, round(top * 1000))
    assert ramp is not None
    assert kilograms(ramp) == expected
    assert [grams / 1000 for grams in ramp.top.side_g] == side


@pytest.mark.parametrize("table", [TABLE, load_table(15_000, IWF, collar_g=2_500)])
def test_plates_only_go_on(table: LoadTable) -> None:
    ramps = 0
    for top in range(23_000, 180_000, 1_000):
        ramp = ramp_plan(table, top)
        if ramp is None:
            continue
        ramps += 1
        assert ramp.top.total_g == getattr(table.best(top), "total_g", None)
        sleeve: tuple[int, ...] = ()
        for step in ramp.steps:
            sleeve += step.on_g
            assert table.loaded(sleeve) == step.load
        assert sleeve + ramp.top_on_g == ramp.top.side_g
        assert list(ramp.top.side_g) == sorted(ramp.top.side_g, reverse=True)
        loads = [step.load.total_g for step in ramp.steps]
        assert loads == sorted(set(loads))
        assert loads[-1] < ramp.top.total_g
        assert loads[-1] >= 0.85 * ramp.top.total_g
        reps = [step.reps for step in ramp.steps]
        assert reps == sorted(set(reps), reverse=True)
    assert ramps > 140


def test_no_ramp_where_the_plates_are_too_coarse_or_the_bar_too_heavy() -> None:
    # 60 and 100 kg: the last jump would be 40 % of the top load.
    assert ramp_plan(load_table(20_000, pairs((20, 2))), 100_000) is None
    assert ramp_plan(load_table(20_000, pairs((20, 2))), 100_000, last_jump_percent=40) is not None
    assert ramp_plan(TABLE, 19_000) is None


@pytest.mark.parametrize(("inner", "allowed"), [(65_000, True), (64_900, False)])
def test_last_jump_of_just_15_percent(inner: int, *, allowed: bool) -> None:
    # 85 and 84.9 kg below a top load of 100 kg.
    plates = (PlateSize(inner, 1), PlateSize(80_000 - inner, 1))
    ramp = ramp_plan(load_table(20_000, plates, sides=1), 100_000)
    assert (ramp is not None) == allowed


def best_by_enumeration(table: LoadTable, top: int) -> float | None:
    """Least of (miss of the steps + 1 % of the top load a plate), over every choice there is."""
    wanted = [step.load_g for step in ramp_targets(top, table.empty_g)]
    reach = top * 15 // 200
    costs = []
    for plates in every_choice(table.sizes, table.sides):
        side = sorted((plate.grams for plate in plates), reverse=True)
        if table.empty_g + table.sides * sum(side) != top:
            continue
        inner = [table.empty_g + table.sides * sum(side[:on]) for on in range(len(side))]
        for steps in range(len(wanted) + 1):
            for aims in combinations(wanted, steps):
                for loads in combinations(inner, steps):
                    misses = [abs(load - aim) for load, aim in zip(loads, aims, strict=True)]
                    if any(miss > reach for miss in misses):
                        continue
                    if wanted and (not loads or 100 * (top - loads[-1]) > 15 * top):
                        continue
                    left_out = (len(wanted) - steps) * reach
                    costs.append(sum(misses) + left_out + top / 100 * len(side))
    return min(costs, default=None)


def test_ramp_is_the_best_of_all() -> None:
    rng = random.Random(29)
    found = 0
    for _ in range(120):
        table = load_table(20_000, random_room(rng, most_sizes=5, most_pairs=2))
        top = rng.choice(table.loads).total_g
        ramp = ramp_plan(table, top)
        expected = best_by_enumeration(table, top)
        assert (ramp is None) == (expected is None)
        if ramp is None:
            continue
        found += 1
        wanted = ramp_targets(top, table.empty_g)
        aims = {step.reps: step.load_g for step in wanted}
        cost = sum(abs(step.load.total_g - aims[step.reps]) for step in ramp.steps)
        cost += (len(wanted) - len(ramp.steps)) * (top * 15 // 200)
        assert cost + top / 100 * len(ramp.top.side_g) == pytest.approx(expected)
    assert found > 40
