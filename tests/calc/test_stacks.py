import heapq
import random
from itertools import count, pairwise
from typing import Literal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inventories import GYM, every_choice, pairs, random_room, rooms
from strength_handbook.calc.plates import BarLoad, LoadTable, PlateSize, load_table
from strength_handbook.calc.stacks import MovePlan, fewest_moves, smallest_change, stacks

RAMP = tuple(round(kg * 1000) for kg in (20, 40, 60, 80, 95, 105, 112.5))


def cheapest_by_single_moves(
    table: LoadTable, targets: tuple[int, ...], tolerance: int, start: tuple[int, ...]
) -> tuple[int, int, int] | None:
    """Dijkstra's search over single moves: (moves, grams below the targets, plates carried).

    A node is (sets done, sleeve). From it one plate comes off the outside, or one goes on that is
    no heavier than the outermost, or, where the load is right, the set is done.
    """
    available = {size.grams: 0 for size in table.sizes}
    for size in table.sizes:
        available[size.grams] += size.available(table.sides)
    order = count()
    queue = [((0, 0, 0), next(order), 0, start)]
    known: set[tuple[int, tuple[int, ...]]] = set()
    while queue:
        (moves, below, carried), _, done, sleeve = heapq.heappop(queue)
        if done == len(targets):
            return moves, below, carried
        if (done, sleeve) in known:
            continue
        known.add((done, sleeve))
        short = targets[done] - table.empty_g - table.sides * sum(sleeve)
        if 0 <= short <= tolerance and all(sleeve.count(g) <= n for g, n in available.items()):
            cost = (moves, below + short, carried + len(sleeve))
            heapq.heappush(queue, (cost, next(order), done + 1, sleeve))
        after = [sleeve[:-1]] if sleeve else []
        after += [
            (*sleeve, grams)
            for grams, n in available.items()
            if sleeve.count(grams) < n and (not sleeve or grams <= sleeve[-1])
        ]
        for changed in after:
            heapq.heappush(queue, ((moves + 1, below, carried), next(order), done, changed))
    return None


def cost_of(plan: MovePlan, targets: tuple[int, ...]) -> tuple[int, int, int]:
    below = sum(target - one.load.total_g for one, target in zip(plan.sets, targets, strict=True))
    return plan.moves, below, sum(len(one.load.side_g) for one in plan.sets)


def assert_can_be_done(plan: MovePlan, start: tuple[int, ...]) -> None:
    """Carry the moves out on a list, plate by plate."""
    sleeve = list(start)
    for one in plan.sets:
        for grams in one.off_g:
            assert sleeve.pop() == grams
        sleeve.extend(one.on_g)
        assert tuple(sleeve) == one.load.side_g == tuple(sorted(sleeve, reverse=True))


def test_plans_are_those_of_a_search_move_by_move() -> None:
    rng = random.Random(7)
    compared = 0
    for _ in range(250):
        sizes = random_room(rng, most_sizes=6, most_pairs=2)
        table = load_table(20_000, sizes)
        tolerance = rng.choice((0, 0, 2_500, 5_000))
        # Loads that exist, some of them a little more than that where a tolerance allows it.
        targets = tuple(
            rng.choice(table.loads).total_g + rng.choice((0, tolerance // 2))
            for _ in range(rng.randint(1, 7))
        )
        start = rng.choice(table.loads).side_g if rng.random() < 0.3 else ()
        plan = fewest_moves(table, targets, tolerance_g=tolerance, start_g=start)
        expected = cheapest_by_single_moves(table, targets, tolerance, start)
        assert plan is not None
        assert_can_be_done(plan, start)
        assert cost_of(plan, targets) == expected, (sizes, targets, tolerance, start)
        compared += 1
    assert compared == 250


def test_ramp_of_seven_sets_takes_eleven_moves() -> None:
    plan = fewest_moves(load_table(20_000, GYM), RAMP)
    assert plan is not None
    assert plan.moves == 11
    assert [[grams / 1000 for grams in one.load.side_g] for one in plan.sets] == [
        [],
        [10],
        [20],
        [20, 10],
        [20, 10, 5, 2.5],
        [20, 10, 5, 5, 2.5],
        [20, 10, 5, 5, 2.5, 2.5, 1.25],
    ]
    assert plan.sets[5].off_g == (2_500,)
    assert plan.sets[5].on_g == (5_000, 2_500)


@pytest.mark.parametrize(("tolerance", "moves"), [(0, 11), (2_500, 10), (5_000, 8)])
def test_tolerance_saves_moves(tolerance: int, moves: int) -> None:
    plan = fewest_moves(load_table(20_000, GYM), RAMP, tolerance_g=tolerance)
    assert plan is not None
    assert plan.moves == moves


def test_fewest_plates_in_each_set_is_not_fewest_moves() -> None:
    table = load_table(20_000, GYM)
    plain = [load.side_g for load in map(table.best, RAMP) if load is not None]
    moves = 0
    for before, after in pairwise([(), *plain]):
        common = 0
        while before[common : common + 1] == after[common : common + 1] != ():
            common += 1
        moves += len(before) + len(after) - 2 * common
    plan = fewest_moves(table, RAMP)
    assert plan is not None
    assert moves > plan.moves


def test_no_plan_without_a_load() -> None:
    table = load_table(20_000, pairs((10, 1)))
    assert fewest_moves(table, (40_000, 30_000)) is None
    assert fewest_moves(table, (40_000, 19_000)) is None
    assert fewest_moves(table, (40_001,)) is None
    assert fewest_moves(table, (30_000,), tolerance_g=10_000) is not None
    assert fewest_moves(table, ()) == MovePlan(())
    assert smallest_change(table, BarLoad(20_000, ()), 30_000) is None
    assert smallest_change(table, BarLoad(20_000, ()), 40_001) is None


def test_smallest_change_leaves_a_foreign_sleeve_on_as_far_as_it_can() -> None:
    # The bar was left with 10 kg inside; 20 + 5 kg would be two plates but three moves.
    table = load_table(20_000, pairs((20, 1), (10, 2), (5, 1)))
    change = smallest_change(table, BarLoad(40_000, (10_000,)), 70_000)
    assert change is not None
    assert (change.off_g, change.on_g) == ((), (10_000, 5_000))


def test_among_equal_plans_the_one_that_carries_fewer_plates() -> None:
    # 25, 20 and 20 kg or 22.5, 22.5 and 20 kg: two moves and 5 kg below the targets either way.
    table = load_table(20_000, pairs((2.5, 1), (1.25, 1)))
    plan = fewest_moves(table, (27_500, 22_500, 20_000), tolerance_g=5_000)
    assert plan is not None
    assert [one.load.side_g for one in plan.sets] == [(2_500,), (), ()]


def test_stacks_of_at_most_two_plates() -> None:
    table = load_table(20_000, pairs((10, 2), (5, 2)))
    few = [(10_000, 10_000), (10_000, 5_000), (10_000,), (5_000, 5_000), (5_000,), ()]
    assert list(stacks(table, 0, 300_000, 2)) == few


def test_stacks_keep_to_the_sleeve_to_the_last_micrometre() -> None:
    table = load_table(20_000, (PlateSize(10_000, 11, 41.5),), sleeve_mm=415)
    assert max(stacks(table, 0, 300_000), key=len) == (10_000,) * 10
    table = load_table(20_000, (PlateSize(10_000, 11, 41.5),), sleeve_mm=414.999)
    assert max(stacks(table, 0, 300_000), key=len) == (10_000,) * 9
    # A size that stays off takes no room and gives none.
    sizes = (PlateSize(20_000, 1, 60.0), PlateSize(10_000, 1, 41.5))
    assert list(stacks(load_table(20_000, sizes, sleeve_mm=41.499), 40_000, 40_000)) == []
    assert list(stacks(load_table(20_000, sizes, sleeve_mm=41.5), 40_000, 40_000)) == [(10_000,)]
    # Plates of all sizes share the room.
    alike = tuple(PlateSize(grams, 2, 30.0) for grams in (10_000, 5_000, 2_500))
    fit = list(stacks(load_table(20_000, alike, sleeve_mm=60), 0, 300_000))
    assert max(map(len, fit)) == 2
    # Of two makes the thinner goes on first.
    makes = (PlateSize(10_000, 1, 60), PlateSize(10_000, 1, 20), PlateSize(5_000, 1, 20))
    table = load_table(20_000, makes, sleeve_mm=40)
    assert list(stacks(table, 50_000, 60_000)) == [(10_000, 5_000)]


@given(
    rooms(),
    st.sampled_from((1, 2)),
    st.sampled_from((None, 60.0, 100.0)),
    st.integers(0, 80_000),
    st.integers(0, 200_000),
    st.none() | st.integers(0, 6),
    st.none() | st.integers(0, 120_000),
)
def test_stacks_are_those_of_enumeration(
    room: tuple[PlateSize, ...],
    sides: Literal[1, 2],
    sleeve: float | None,
    low: int,
    span: int,
    most: int | None,
    limit: int | None,
) -> None:
    table = load_table(20_000, room, sides=sides, sleeve_mm=sleeve, limit_g=limit)
    high = low + span if limit is None else min(low + span, limit)
    expected = {
        tuple(sorted((plate.grams for plate in plates), reverse=True))
        for plates in every_choice(room, sides)
        if low <= 20_000 + sides * sum(plate.grams for plate in plates) <= high
        and (most is None or len(plates) <= most)
        and (sleeve is None or round(sum(p.thickness_mm for p in plates), 6) <= sleeve)
    }
    found = list(stacks(table, low, low + span, most))
    assert set(found) == expected
    assert len(found) == len(expected)
