"""Paces and watts against values worked by hand and against exact fractions."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from strength_handbook.calc.pace import (
    pace_at_percent,
    pace_of_time,
    pace_seconds,
    rowing_watts,
    watts_at_percent,
)
from strength_handbook.calc.registry import OutOfRangeError


@pytest.mark.parametrize(
    ("pace_s", "watts"),
    [
        # The published relation 2.80 ÷ (s for 1 m)³, worked by hand.
        (120, 202.546),  # 0.24³ = 0.013824
        (150, 103.704),  # 0.3³ = 0.027
        (100, 350.0),  # 0.2³ = 0.008
        (125, 179.2),  # 0.25³ = 0.015625
    ],
)
def test_watts_of_a_rowing_machine(pace_s: float, watts: float) -> None:
    assert rowing_watts(pace_s) == pytest.approx(watts, abs=0.001)


@given(st.integers(50, 300))
def test_half_the_time_takes_eight_times_the_watts(pace_s: int) -> None:
    # Drag grows with the square of speed, and power with its cube: any textbook of mechanics.
    assert rowing_watts(pace_s) == pytest.approx(8 * rowing_watts(2 * pace_s))


@given(st.integers(60, 7200), st.integers(200, 42_195), st.sampled_from([100, 500, 1000]))
def test_a_pace_over_its_distance_is_the_time_again(time_s: int, metres: int, per_m: int) -> None:
    pace = pace_of_time(time_s, metres, per_m)
    assert pace == pytest.approx(float(Fraction(time_s * per_m, metres)))
    assert pace_seconds(metres, pace, per_m) == pytest.approx(time_s)


@given(st.integers(60, 900), st.integers(20, 120))
def test_a_share_of_the_speed_covers_that_share_of_the_way(pace_s: int, percent: int) -> None:
    # In the time for one kilometre at the best speed, 80 % of it covers 800 m.
    slower = pace_at_percent(pace_s, percent)
    assert 1000 / slower * pace_s == pytest.approx(10 * percent)


def test_examples_of_a_coach() -> None:
    # 2 km in 7:40 are 1:55 for 500 m; 5 km in 25:00 are 5:00 for 1 km and 8:02.8 for a mile.
    assert pace_of_time(460, 2000, 500) == 115
    assert pace_of_time(1500, 5000, 1000) == 300
    assert pace_of_time(1500, 5000, 1609.344) == pytest.approx(482.8032)
    assert watts_at_percent(240, 75) == 180


@pytest.mark.parametrize(
    "call",
    [
        lambda: rowing_watts(10),
        lambda: pace_at_percent(120, 5),
        lambda: watts_at_percent(3000, 80),
        lambda: pace_of_time(480, 50, 500),
    ],
)
def test_what_nobody_goes_is_refused(call: object) -> None:
    with pytest.raises(OutOfRangeError):
        call()  # type: ignore[operator]
