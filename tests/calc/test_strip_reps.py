import pytest
from hypothesis import given
from hypothesis import strategies as st

from strength_handbook.calc.registry import OutOfRangeError
from strength_handbook.calc.strip_reps import (
    K_BENCH_PRESS,
    K_GENERAL,
    K_LEG_PRESS,
    personal_kappa,
    strip_rep_range,
    strip_reps,
    strip_stage_range,
    strip_stages,
)

left = st.floats(0.5, 0.95)
kappas = st.floats(0.4, 1.5)


@pytest.mark.parametrize(
    ("load_left", "low", "high"),
    # κ k (1/r − 1) with k = 30, κ 0.6 and 1.2, worked by hand.
    [
        (0.90, 2, 4),
        (0.85, 3.18, 6.35),
        (0.80, 4.5, 9),
        (0.75, 6, 12),
        (0.70, 7.71, 15.43),
        (0.60, 12, 24),
    ],
)
def test_range_per_strip(load_left: float, low: float, high: float) -> None:
    got = strip_rep_range(load_left)
    assert (got.low, got.high) == pytest.approx((low, high), abs=0.006)


@pytest.mark.parametrize(
    ("k", "reps"),
    # Nuzzo 2024, Sports Med 54:303–321, mean repetitions at 80 % (as quoted by a second source).
    [(K_BENCH_PRESS, 8.8), (K_LEG_PRESS, 13.1)],
)
def test_constants_give_the_published_repetitions(k: float, reps: float) -> None:
    assert strip_reps(0.80, 1.0, k) == pytest.approx(reps, abs=0.15)


def test_general_constant_is_epley() -> None:
    # Epley 1985: best single = load (1 + reps / 30).
    reps = strip_reps(0.80, 1.0, K_GENERAL)
    assert 0.80 * (1 + reps / 30) == pytest.approx(1.0)


@pytest.mark.parametrize(
    ("load_left", "stages"),
    # 30 repetitions, 10 on the first load, κ 0.6, 0.8, 1.0, 1.2; worked by hand.
    [(0.80, (6, 5, 4, 4)), (0.75, (5, 4, 3, 3))],
)
def test_loads_for_a_total(load_left: float, stages: tuple[int, ...]) -> None:
    got = tuple(strip_stages(30, 10, load_left, kappa) for kappa in (0.6, 0.8, 1.0, 1.2))
    assert got == stages
    spread = strip_stage_range(30, 10, load_left)
    assert (spread.most, *spread.usual[::-1], spread.fewest) == stages


def test_a_total_met_on_the_first_load_needs_no_strip() -> None:
    assert strip_stages(20, 20, 0.80) == 1
    assert strip_stages(10, 40, 0.80) == 1


@given(st.floats(1, 60), st.floats(1, 20), left, kappas)
def test_stages_are_just_enough(total: float, first: float, load_left: float, kappa: float) -> None:
    stages = strip_stages(total, first, load_left, kappa)
    per_strip = strip_reps(load_left, kappa)
    assert first + (stages - 1) * per_strip >= total - 1e-6
    if stages > 1:
        assert first + (stages - 2) * per_strip < total


@given(left, left, kappas)
def test_bigger_strips_give_more_repetitions(one: float, other: float, kappa: float) -> None:
    low, high = sorted((one, other))
    assert strip_reps(low, kappa) >= strip_reps(high, kappa)


@given(st.lists(left, min_size=1, max_size=5), kappas)
def test_a_lifter_who_follows_the_model_gets_the_same_kappa(
    load_left: list[float], kappa: float
) -> None:
    done = [strip_reps(r, kappa) for r in load_left]
    assert personal_kappa(done, load_left) == pytest.approx(kappa)


def test_kappa_is_the_mean_over_strips_and_clamped() -> None:
    assert personal_kappa([6, 9], [0.80, 0.80]) == pytest.approx(1.0)
    assert personal_kappa([1], [0.80]) == 0.4
    assert personal_kappa([30], [0.80]) == 1.5


def test_impossible_inputs_are_refused() -> None:
    for load_left in (0.45, 0.99):
        with pytest.raises(OutOfRangeError):
            strip_rep_range(load_left)
    for total, first in ((30, 0), (0, 10)):
        with pytest.raises(ValueError, match="repetitions in total"):
            strip_stages(total, first, 0.8)
    with pytest.raises(ValueError, match="strips"):
        personal_kappa([6], [0.8, 0.8])
    with pytest.raises(ValueError, match="strips"):
        personal_kappa([], [])
