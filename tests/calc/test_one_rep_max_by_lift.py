"""Regressions for single lifts against the printed equations."""

from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from strength_handbook.calc.one_rep_max_by_lift import (
    Accessory,
    kravitz_2003_bench,
    kravitz_2003_deadlift,
    kravitz_2003_squat,
    reynolds_2006_chest_press,
    reynolds_2006_leg_press,
    wong_2013,
)
from strength_handbook.calc.registry import OutOfRangeError

KG_PER_LB = 0.45359237


@pytest.mark.parametrize(
    ("equation", "load_kg", "reps", "expected"),
    [
        # Kravitz 2003, J Strength Cond Res 17(1):167–172: worked out from the printed equations.
        (kravitz_2003_squat, 126, 12, 177.0),
        (kravitz_2003_bench, 75, 14, 105.6),
        (kravitz_2003_deadlift, 160, 8, 184.7),
    ],
)
def test_kravitz(
    equation: Callable[[float, float], float], load_kg: float, reps: int, expected: float
) -> None:
    assert equation(load_kg, reps) == pytest.approx(expected, abs=0.05)


@pytest.mark.parametrize(
    ("equation", "lightest_kg"),
    [(kravitz_2003_squat, 113), (kravitz_2003_bench, 63), (kravitz_2003_deadlift, 124)],
)
def test_kravitz_refuses_loads_where_more_reps_mean_less_strength(
    equation: Callable[[float, float], float], lightest_kg: float
) -> None:
    assert equation(lightest_kg, 12) > equation(lightest_kg, 8)
    with pytest.raises(OutOfRangeError):
        equation(lightest_kg - 1, 8)


@given(load=st.floats(124, 290), reps=st.floats(5, 19))
def test_kravitz_rises_in_load_and_repetitions(load: float, reps: float) -> None:
    for equation in (kravitz_2003_squat, kravitz_2003_bench, kravitz_2003_deadlift):
        assert equation(load + 10, reps) > equation(load, reps)
        assert equation(load, reps + 1) > equation(load, reps)


def test_reynolds() -> None:
    # Reynolds 2006, J Strength Cond Res 20(3):584–592: 1.1307 × 60 + 0.6999 = 68.54.
    assert reynolds_2006_chest_press(60) == pytest.approx(68.54, abs=0.005)
    # 1.0970 × 5RM + 14.2546: by hand 1.0970 × 200 = 219.4.
    assert reynolds_2006_leg_press(200) == pytest.approx(233.6546, abs=1e-9)


def test_regressions_with_an_intercept_are_wrong_in_pounds() -> None:
    in_pounds = reynolds_2006_leg_press(300) * KG_PER_LB
    assert in_pounds != pytest.approx(reynolds_2006_leg_press(300 * KG_PER_LB), rel=0.01)


@pytest.mark.parametrize(
    ("accessory", "expected"),
    [
        # Wong 2013, J Sports Sci Med 12(1):38–43: printed slopes and intercepts at a 6RM of 50 kg.
        (Accessory.HAMMER_CURL, 20.30),
        (Accessory.BARBELL_CURL, 22.70),
        (Accessory.OVERHEAD_TRICEPS_EXTENSION, 15.90),
        (Accessory.DUMBBELL_SHOULDER_PRESS, 26.84),
    ],
)
def test_wong(accessory: Accessory, expected: float) -> None:
    assert wong_2013(50, accessory) == pytest.approx(expected, rel=1e-9)
