"""One bar for several: against every arrangement of every choice of plates, and linear programs."""

import random
from itertools import combinations, pairwise, permutations, product

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import demo
from oracle import oracle
from strength_handbook.calc.plates import LoadTable, PlateSize, load_table
from strength_handbook.calc.shared_bar import MOST_AT_A_BAR, share_bar
from strength_handbook.calc.turns import plate_moves
from strength_handbook.model.book import Book
from strength_handbook.model.loading import OnBar
from strength_handbook.plan.scales import bar_table
from strength_handbook.reading.book import read_book

Stack = tuple[int, ...]


def handled(lifts: list[Stack]) -> int:
    """Plates handled on one side from the empty bar, plate by plate, as somebody would do it."""
    bar: list[int] = []
    touched = 0
    for wanted in lifts:
        while bar != list(wanted[: len(bar)]):
            bar.pop()
            touched += 1
        for plate in wanted[len(bar) :]:
            bar.append(plate)
            touched += 1
    return touched


def arrangements(table: LoadTable, total: int) -> set[Stack]:
    """Every stack of this total that the plates of one side allow, in every order."""
    side = (total - table.empty_g) // 2
    plates = [(size.grams, size.thickness_mm) for size in table.sizes for _ in range(size.pairs)]
    found: set[Stack] = set()
    for count in range(len(plates) + 1):
        for some in combinations(plates, count):
            fits = table.sleeve_mm is None or sum(mm for _, mm in some) <= table.sleeve_mm + 1e-9
            if fits and sum(grams for grams, _ in some) == side:
                found |= set(permutations(grams for grams, _ in some))
    return found


def fewest_by_trying(table: LoadTable, totals: tuple[int, ...], sets: int) -> int:
    """The least over every order and every arrangement."""
    each = [arrangements(table, total) for total in totals]
    return min(
        handled([stacks[place] for place in order] * sets)
        for stacks in product(*each)
        for order in permutations(range(len(totals)))
    )


def check(table: LoadTable, totals: tuple[int, ...], sets: int) -> int:
    """A plan can be done as it says; its moves."""
    plan = share_bar(table, totals, sets)
    assert plan is not None
    assert sorted(plan.order) == list(range(len(totals)))
    for stack, total in zip(plan.stacks, totals, strict=True):
        assert stack in arrangements(table, total)
    turns = [plan.stacks[place] for place in plan.order]
    assert handled(turns * sets) == plan.moves == plate_moves(turns, sets) <= plan.alone
    return plan.moves


def test_a_common_inner_stack() -> None:
    """25 · 15 and 20 · 2.5 have nothing in common; 20 · 20 and 20 · 2.5 have the large plate."""
    masses = (25_000, 20_000, 15_000, 10_000, 5_000, 2_500, 1_250)
    table = load_table(25_000, tuple(PlateSize(g, 1 if g == 15_000 else 2) for g in masses))
    plan = share_bar(table, (105_000, 70_000), 3)
    assert plan is not None
    # By hand: 25 · 15 on, then five times two off and two on.
    assert plan.alone == 2 + 5 * 4
    # By hand: 20 · 20 on, then five times one off and one on.
    assert plan.moves == 2 + 5 * 2
    assert plan.stacks == ((20_000, 20_000), (20_000, 2_500))


sizes = st.lists(
    st.builds(
        PlateSize,
        st.sampled_from(
            [20_412, 15_876, 11_340, 4_536, 2_268, 20_000, 15_000, 10_000, 5_000, 2_500]
        ),
        st.integers(1, 2),
        st.sampled_from([20.0, 30.0, 50.0]),
    ),
    min_size=1,
    max_size=3,
    unique_by=lambda size: size.grams,
)


@settings(max_examples=120, deadline=None)
@given(sizes, st.sampled_from([None, 60.0, 100.0]), st.integers(1, 3), st.integers(1, 4), st.data())
def test_no_arrangement_moves_fewer_plates(
    found: list[PlateSize], sleeve: float | None, people: int, sets: int, data: st.DataObject
) -> None:
    table = load_table(20_000, tuple(found), sleeve_mm=sleeve)
    picked = st.sampled_from([load.total_g for load in table.loads])
    totals = tuple(data.draw(picked) for _ in range(people))
    assert check(table, totals, sets) == fewest_by_trying(table, totals, sets)


def test_every_pair_and_three_of_a_small_rack() -> None:
    """All loads of one rack, two at a time; all threes of every third load."""
    masses = (20_000, 10_000, 5_000, 2_500)
    table = load_table(20_000, tuple(PlateSize(g, 1 + (g == 5_000)) for g in masses))
    totals = [load.total_g for load in table.loads]
    assert len(totals) >= 15
    for two in product(totals, repeat=2):
        assert check(table, two, 3) == fewest_by_trying(table, two, 3)
    for three in product(totals[::4], repeat=3):
        assert check(table, three, 2) == fewest_by_trying(table, three, 2)


def test_four_in_turn() -> None:
    table = load_table(20_000, tuple(PlateSize(g, 1) for g in (20_000, 10_000, 5_000)))
    totals = [load.total_g for load in table.loads]
    for four in [(40_000, 50_000, 60_000, 70_000), (90_000, 30_000, 70_000, 50_000)]:
        assert set(four) <= set(totals)
        assert check(table, four, 2) == fewest_by_trying(table, four, 2)


def by_linear_program(table: LoadTable, totals: tuple[int, int], sets: int) -> int:
    """Two lifters: whole numbers of plates, and by how many of each size the two differ."""
    milp = oracle("scipy.optimize")
    masses = [size.grams for size in table.sizes]
    pairs = [size.pairs for size in table.sizes]
    kinds = len(masses)
    least: list[int] = []
    for first in (0, 1):
        # Unknowns: plates of the one, plates of the other, their difference; by size.
        one, other, apart = (np.eye(3 * kinds)[i * kinds : (i + 1) * kinds] for i in range(3))
        weights = (one, other)[first].sum(axis=0) + (2 * sets - 1) * apart.sum(axis=0)
        sides = [(total - table.empty_g) // 2 for total in totals]
        limits = [
            milp.LinearConstraint(np.array(masses) @ one, sides[0], sides[0]),
            milp.LinearConstraint(np.array(masses) @ other, sides[1], sides[1]),
            milp.LinearConstraint(one, 0, pairs),
            milp.LinearConstraint(other, 0, pairs),
            milp.LinearConstraint(apart - one + other, 0, np.inf),
            milp.LinearConstraint(apart + one - other, 0, np.inf),
        ]
        if table.sleeve_mm is not None:
            widths = np.array([size.thickness_mm for size in table.sizes])
            limits += [
                milp.LinearConstraint(widths @ them, 0, table.sleeve_mm) for them in (one, other)
            ]
        found = milp.milp(weights, constraints=limits, integrality=np.ones(3 * kinds))
        assert found.success
        least.append(round(float(found.fun)))
    return min(least)


def racks() -> list[LoadTable]:
    """The demo's bars, and one of a gym in pounds: 45, 35, 25, 10, 5 and 2.5 lb in usual counts."""
    result = read_book(demo.PROGRAMS)
    assert isinstance(result.book, Book)
    loads = [one.load for one in result.book.exercises.values() if isinstance(one.load, OnBar)]
    tables = {bar_table(result.book.room, load): None for load in loads if load.hands is None}
    pounds = ((20_412, 4, 45.0), (15_876, 1, 40.0), (11_340, 2, 35.0), (4_536, 2, 25.0),
              (2_268, 2, 18.0), (1_134, 2, 15.0))  # fmt: skip
    return [*tables, load_table(20_412, tuple(PlateSize(*one) for one in pounds), sleeve_mm=380)]


@pytest.mark.parametrize("table", racks())
def test_two_lifters_as_a_linear_program_says(table: LoadTable) -> None:
    rng = random.Random(table.empty_g)
    totals = [load.total_g for load in table.loads if load.total_g <= 220_000]
    fewer = 0
    for _ in range(25):
        two, sets = (rng.choice(totals), rng.choice(totals)), rng.randint(1, 6)
        plan = share_bar(table, two, sets)
        assert plan is not None
        assert plan.moves == by_linear_program(table, two, sets)
        fewer += plan.moves < plan.alone
    assert fewer >= 5


def test_no_plan_for_what_cannot_be_put_on() -> None:
    table = load_table(20_000, (PlateSize(10_000, 1),))
    assert share_bar(table, (40_000, 45_000), 3) is None
    assert share_bar(table, (10_000,), 3) is None
    with pytest.raises(ValueError, match="5 lifters"):
        share_bar(table, (20_000,) * (MOST_AT_A_BAR + 1), 3)
    with pytest.raises(ValueError, match="0 sets"):
        share_bar(table, (20_000,), 0)


def test_lighter_and_heavier_in_steps_only_add() -> None:
    """60, 100 and 140 kg from pairs of 20 kg: each turn keeps what the one before has."""
    table = load_table(20_000, (PlateSize(20_000, 3),))
    plan = share_bar(table, (140_000, 60_000, 100_000), 1)
    assert plan is not None
    assert plan.moves == 3
    turns = [plan.stacks[place] for place in plan.order]
    assert all(len(one) < len(other) for one, other in pairwise(turns))
