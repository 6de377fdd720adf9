"""Volumes of published prescriptions."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from strength_handbook.calc.repetitions import percent_for_reps
from strength_handbook.calc.volume import (
    SetGroup,
    fast_repetitions,
    isometric_dose,
    lifting_work,
    mean_load,
    pelland_2025,
    percent_change,
    relative_volume,
    repetition_volume,
    volume_load,
    volume_ratio,
)

# Sheppard and Triplett, Essentials of Strength Training and Conditioning, 4th ed. 2016, ch. 17:
# sets, reps, load in lb. The sums are arithmetic on the printed prescription.
MONDAY = [
    SetGroup(4, 5, 95),
    SetGroup(4, 5, 90),
    SetGroup(3, 6, 155),
    SetGroup(3, 6, 85),
    SetGroup(2, 10, 90),
    SetGroup(2, 10, 20),
    SetGroup(2, 10, 40),
]
CIRCUIT = [
    SetGroup(3, 12, 45),
    SetGroup(3, 12, 70),
    SetGroup(2, 15, 65),
    SetGroup(2, 15, 25),
    SetGroup(2, 15, 20),
    SetGroup(2, 15, 10),
    SetGroup(2, 15, 50),
]


@pytest.mark.parametrize(
    ("day", "total", "reps", "mean"),
    [(MONDAY, 11020, 136, 81.03), (CIRCUIT, 9240, 222, 41.62)],
    ids=["Monday", "circuit"],
)
def test_worked_programme(day: list[SetGroup], total: float, reps: int, mean: float) -> None:
    assert volume_load(day) == total
    assert repetition_volume(day) == reps
    assert mean_load(day) == pytest.approx(mean, abs=0.005)


def test_textbook_definitions() -> None:
    # Same chapter: 2 × 10 × 50 lb = 1 000 lb (454 kg); 100 moved 2 units 15 times is work 3 000
    # and volume-load 1 500, however the 15 reps are split into sets.
    pounds = volume_load([SetGroup(2, 10, 50)])
    assert pounds == 1000
    assert pounds * 0.45359237 == pytest.approx(454, abs=0.5)
    assert lifting_work(100, 2, 15) == 3000
    assert volume_load([SetGroup(1, 15, 100)]) == 1500
    assert volume_load([SetGroup(3, 5, 100)]) == 1500
    assert volume_load([SetGroup(1, 8, 100), SetGroup(1, 7, 100)]) == 1500


def test_equated_schemes() -> None:
    # McBride 2009, J Strength Cond Res 23(1):106–110: 4 × 10 at 75 % and 11 × 3 at 90 %.
    assert relative_volume(4, 10, 75) == pytest.approx(30.0)
    assert relative_volume(11, 3, 90) == pytest.approx(29.7)
    # The same study's unloaded jump squats, 8 × 6, count nothing.
    assert relative_volume(8, 6, 0) == 0
    # Schoenfeld 2014, J Strength Cond Res 28(10):2909–2918, with the chart: 22.5 and 19.5.
    assert relative_volume(3, 10, percent_for_reps(10)) == pytest.approx(22.5)
    assert relative_volume(7, 3, percent_for_reps(3)) == pytest.approx(19.5, abs=0.05)


@pytest.mark.parametrize(("weight", "count"), [(1, 6), (0.5, 5), (0, 4)])
def test_counting_of_indirect_sets(weight: float, count: float) -> None:
    # Pelland 2025, Sports Med: 4 direct and 2 indirect sets are 6 total, 5 fractional, 4 direct.
    assert pelland_2025(4, 2, weight) == count


def test_default_count_is_fractional() -> None:
    assert pelland_2025(4, 2) == 5


def test_both_sides_count() -> None:
    # Common practice, no source: single-limb work counts each side.
    assert repetition_volume([SetGroup(3, 6, 20, sides=2)]) == 36
    assert volume_load([SetGroup(3, 6, 20, sides=2)]) == 720
    assert relative_volume(3, 6, 50, sides=2) == 18
    assert isometric_dose(3, 30, sides=2) == 2 * isometric_dose(3, 30) == 180


def test_only_fast_repetitions_are_fast() -> None:
    groups = [SetGroup(8, 2, 70, fast=True), SetGroup(4, 5, 100), SetGroup(4, 4, 8, 2, fast=True)]
    assert fast_repetitions(groups) == 16 + 32


def test_balance_of_push_and_pull() -> None:
    assert volume_ratio(9, 12) == 0.75


def test_nothing_to_divide_by() -> None:
    assert mean_load([]) is None
    assert mean_load([SetGroup(0, 10, 50)]) is None
    assert percent_change(0, 5) is None
    assert volume_ratio(5, 0) is None
    assert percent_change(200, 0) == -100


groups_strategy = st.lists(
    st.builds(SetGroup, st.integers(0, 12), st.integers(0, 30), st.floats(0, 400)), max_size=8
)


@given(groups_strategy)
def test_mean_load_lies_between_the_lightest_and_the_heaviest(groups: list[SetGroup]) -> None:
    mean = mean_load(groups)
    loads = [group.load_kg for group in groups if group.total_reps]
    if mean is None:
        assert not loads
    else:
        assert min(loads) - 1e-9 <= mean <= max(loads) + 1e-9


@given(groups_strategy, groups_strategy)
def test_volumes_add_up(one: list[SetGroup], other: list[SetGroup]) -> None:
    assert volume_load(one + other) == pytest.approx(volume_load(one) + volume_load(other))
    assert repetition_volume(one + other) == repetition_volume(one) + repetition_volume(other)


@given(st.integers(1, 10), st.integers(1, 20), st.floats(1, 120), st.floats(20, 300))
def test_relative_volume_is_volume_load_in_maxima(
    sets: int, reps: int, percent: float, one_rm: float
) -> None:
    load = one_rm * percent / 100
    assert volume_load([SetGroup(sets, reps, load)]) / one_rm == pytest.approx(
        relative_volume(sets, reps, percent)
    )


@given(st.floats(1, 1e4), st.floats(0, 1e4))
def test_change_leads_from_one_week_to_the_next(previous: float, current: float) -> None:
    change = percent_change(previous, current)
    assert change is not None
    assert previous * (1 + change / 100) == pytest.approx(current, abs=1e-6)


def test_generators_are_read_once() -> None:
    assert mean_load(group for group in MONDAY) == pytest.approx(81.03, abs=0.005)
