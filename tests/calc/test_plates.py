import random
from typing import Literal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inventories import GYM, IPF, IWF, LB, every_choice, pairs, rooms
from strength_handbook.calc.plates import (
    BarLoad,
    PlateSize,
    Rounding,
    load_table,
    nearest_fixed,
)

SIDES = st.sampled_from((1, 2))
BARS = st.sampled_from((0, 7_500, 15_000, 20_000, 20_412))
TARGETS = st.integers(0, 220_000)


def test_weightlifting_bar_without_collars_carries_101_kg_as_25_15_half() -> None:
    # IWF disc set: 101 − 20 = 81 kg, 40.5 kg on each side.
    load = load_table(20_000, IWF).best(101_000)
    assert load == BarLoad(101_000, (25_000, 15_000, 500))


@pytest.mark.parametrize(("bar", "empty"), [(20_000, 25_000), (15_000, 20_000)])
def test_weightlifting_bars_with_collars_take_every_whole_kilogram(bar: int, empty: int) -> None:
    # IWF: men's bar 20 kg, women's 15 kg, collars 2.5 kg each; attempts are whole kilograms.
    table = load_table(bar, IWF, collar_g=2_500)
    assert table.smallest_step_g() == 1_000
    assert [load.total_g for load in table.loads] == list(range(empty, empty + 165_001, 1_000))


def test_powerlifting_bar_with_collars_takes_every_multiple_of_two_and_a_half() -> None:
    # IPF: bar and collars 25 kg, smallest disc 1.25 kg; attempts are multiples of 2.5 kg.
    table = load_table(20_000, IPF, collar_g=2_500)
    assert table.smallest_step_g() == 2_500
    totals = [load.total_g for load in table.loads]
    assert totals == list(range(25_000, totals[-1] + 1, 2_500))
    assert totals[-1] == 25_000 + 2 * (4 * 25_000 + 53_750)


def test_pound_plates_keep_their_own_mass() -> None:
    # 45 lb = 20.412 kg: a 45 lb bar with a pair of 45 lb plates is 135 lb = 61.235 kg, not 60 kg.
    table = load_table(LB[0], (PlateSize(LB[0], 1),))
    assert LB[0] == 20_412
    assert table.loads[-1].total_g == 61_236


def test_greedy_loading_is_not_exact() -> None:
    room = pairs((25, 1), (20, 2))
    side = 40_000
    greedy: list[int] = []
    for size in room:
        for _ in range(size.pairs):
            if sum(greedy) + size.grams <= side:
                greedy.append(size.grams)
    assert greedy == [25_000]
    assert load_table(20_000, room).best(100_000) == BarLoad(100_000, (20_000, 20_000))


@given(rooms(), BARS, SIDES, st.sampled_from((None, 60.0, 100.0)), st.none() | TARGETS)
def test_table_is_what_enumeration_finds(
    room: tuple[PlateSize, ...],
    bar: int,
    sides: Literal[1, 2],
    sleeve: float | None,
    limit: int | None,
) -> None:
    best: dict[int, tuple[int, float, list[int]]] = {}
    for plates in every_choice(room, sides):
        total = bar + sides * sum(plate.grams for plate in plates)
        width = round(sum(plate.thickness_mm for plate in plates), 6)
        if (sleeve is not None and width > sleeve) or (limit is not None and total > limit):
            continue
        # Order of preference: fewest plates, thinnest, heavier plates inside.
        key = (len(plates), width, sorted(-plate.grams for plate in plates))
        best[total] = min(best.get(total, key), key)
    table = load_table(bar, room, sleeve_mm=sleeve, limit_g=limit, sides=sides)
    assert {load.total_g: [-grams for grams in load.side_g] for load in table.loads} == {
        total: masses for total, (_, _, masses) in best.items()
    }
    assert [load.total_g for load in table.loads] == sorted(best)


@given(rooms(), BARS, TARGETS)
def test_rounding_keeps_to_its_side_and_nothing_is_nearer(
    room: tuple[PlateSize, ...], bar: int, target: int
) -> None:
    table = load_table(bar, room)
    totals = [load.total_g for load in table.loads]
    down, near, up = (
        table.best(target, rounding) for rounding in (Rounding.DOWN, Rounding.NEAREST, Rounding.UP)
    )
    assert (down.total_g if down else None) == max(
        (total for total in totals if total <= target), default=None
    )
    assert (up.total_g if up else None) == min(
        (total for total in totals if total >= target), default=None
    )
    # Halfway, the lighter load.
    assert near is not None
    assert near.total_g == min(totals, key=lambda total: (abs(total - target), total))


@given(rooms(), rooms(2), BARS, TARGETS)
def test_more_plates_never_make_a_load_worse(
    room: tuple[PlateSize, ...], more: tuple[PlateSize, ...], bar: int, target: int
) -> None:
    before = load_table(bar, room, sleeve_mm=150).best(target)
    after = load_table(bar, room + more, sleeve_mm=150).best(target)
    if before is not None:
        assert after is not None
        assert (-after.total_g, len(after.side_g)) <= (-before.total_g, len(before.side_g))


@pytest.mark.parametrize(("sleeve", "plates"), [(415.0, 10), (414.999, 9)])
def test_sleeve_is_filled_to_the_last_micrometre(sleeve: float, plates: int) -> None:
    table = load_table(20_000, (PlateSize(10_000, 11, 41.5),), sleeve_mm=sleeve)
    assert len(table.loads[-1].side_g) == plates


def test_a_plate_that_was_not_measured_takes_no_room() -> None:
    assert load_table(20_000, (PlateSize(5_000, 1),), sleeve_mm=0).loads[-1].total_g == 30_000


def test_more_but_thinner_plates_where_the_sleeve_is_short() -> None:
    # 60 kg need one plate a side; for 70 kg it stands in the way of the small ones.
    room = (PlateSize(20_000, 1, 60.0), PlateSize(10_000, 2, 20.0), PlateSize(5_000, 1, 20.0))
    table = load_table(20_000, room, sleeve_mm=60)
    assert table.best(60_000) == BarLoad(60_000, (20_000,))
    assert table.best(70_000) == BarLoad(70_000, (10_000, 10_000, 5_000))


@given(rooms(), st.randoms(use_true_random=False), BARS)
def test_order_of_the_inventory_does_not_matter(
    room: tuple[PlateSize, ...], rng: random.Random, bar: int
) -> None:
    shuffled = list(room)
    rng.shuffle(shuffled)
    assert load_table(bar, tuple(shuffled), sleeve_mm=100) == load_table(bar, room, sleeve_mm=100)


def test_a_pair_and_another_pair_of_the_same_plates_are_two_pairs() -> None:
    apart = (PlateSize(5_000, 1, 20.0), PlateSize(5_000, 1, 20.0))
    assert load_table(20_000, apart) == load_table(20_000, (PlateSize(5_000, 2, 20.0),))


def test_table_is_built_once() -> None:
    assert load_table(20_000, GYM) is load_table(20_000, tuple(reversed(GYM)))


def test_single_plates_on_a_belt() -> None:
    # A pair gives two single plates, and nothing is doubled.
    table = load_table(0, pairs((10, 1), (2.5, 1)), sides=1)
    totals = [load.total_g / 1000 for load in table.loads]
    assert totals == [0, 2.5, 5, 10, 12.5, 15, 20, 22.5, 25]
    assert table.best(17_000) == BarLoad(15_000, (10_000, 2_500, 2_500))


def test_single_sleeve_carries_one_collar() -> None:
    assert load_table(20_000, (), collar_g=200, sides=1).empty_g == 20_200
    assert load_table(20_000, (), collar_g=200).empty_g == 20_400


def test_halfway_between_two_loads_the_lighter_one_is_taken() -> None:
    table = load_table(20_000, pairs((10, 1), (2.5, 1)))
    assert table.best(42_500, Rounding.NEAREST) == BarLoad(40_000, (10_000,))
    assert table.best(42_501, Rounding.NEAREST) == BarLoad(45_000, (10_000, 2_500))
    assert nearest_fixed(18_000, (16_000, 20_000), Rounding.NEAREST) == 16_000


def test_nothing_satisfies() -> None:
    table = load_table(20_000, pairs((10, 1)))
    assert table.best(19_999) is None
    assert table.best(40_001, Rounding.UP) is None
    assert table.best(1, Rounding.NEAREST) == BarLoad(20_000, ())
    assert table.best(99_000, Rounding.NEAREST) == BarLoad(40_000, (10_000,))
    assert load_table(20_000, ()).smallest_step_g() is None
    forbidden = load_table(20_000, GYM, limit_g=19_999)
    assert forbidden.loads == ()
    assert load_table(20_000, (), limit_g=19_999).loads == ()
    assert forbidden.best(50_000, Rounding.NEAREST) is None


def test_limit_counts_bar_and_collars() -> None:
    table = load_table(15_000, pairs((10, 3)), collar_g=1_000, limit_g=57_000)
    assert [load.total_g for load in table.loads] == [17_000, 37_000, 57_000]


@pytest.mark.parametrize("wrong", [(0, 1, 0.0), (-5_000, 1, 0.0), (5_000, -1, 0.0), (5_000, 1, -1)])
def test_impossible_plates_are_refused(wrong: tuple[int, int, float]) -> None:
    with pytest.raises(ValueError, match="not a plate size"):
        PlateSize(*wrong)


@pytest.mark.parametrize(
    ("bar", "collar", "sleeve", "limit"),
    [(-1, 0, None, None), (0, -1, None, None), (0, 0, -1.0, None), (0, 0, None, -1)],
)
def test_impossible_bars_are_refused(
    bar: int, collar: int, sleeve: float | None, limit: int | None
) -> None:
    with pytest.raises(ValueError, match="cannot be negative"):
        load_table(bar, GYM, collar_g=collar, sleeve_mm=sleeve, limit_g=limit)


@given(st.lists(st.integers(1, 60_000), max_size=12), st.integers(0, 70_000))
def test_fixed_masses_round_like_bars(masses: list[int], target: int) -> None:
    down = max((mass for mass in masses if mass <= target), default=None)
    up = min((mass for mass in masses if mass >= target), default=None)
    near = min(masses, key=lambda mass: (abs(mass - target), mass), default=None)
    assert nearest_fixed(target, masses) == down
    assert nearest_fixed(target, masses, Rounding.UP) == up
    assert nearest_fixed(target, masses, Rounding.NEAREST) == near
