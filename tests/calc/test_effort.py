"""Repetitions in reserve, rated exertion and the loads they imply."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from strength_handbook.calc.effort import (
    ERROR_OF_RESERVE,
    helms_2016,
    percent_from_effort,
    reserve_is_reliable,
    rpe_from_rir,
    zourdos_2016,
)
from strength_handbook.calc.registry import OutOfRangeError
from strength_handbook.calc.repetitions import percent_for_reps


@pytest.mark.parametrize(("rpe", "rir"), [(10, 0), (9, 1), (8, 2), (7, 3)])
def test_scale(rpe: float, rir: float) -> None:
    # Zourdos 2016, J Strength Cond Res 30(1):267–275.
    assert zourdos_2016(rpe) == rir
    assert rpe_from_rir(rir) == rpe


@pytest.mark.parametrize(
    ("rpe", "fewest", "most"),
    # Helms 2016, Strength Cond J 38(4):42–49: value from memory.
    [
        (10, 0, 0),
        (9.5, 0, 0),
        (9, 1, 1),
        (8.5, 1, 2),
        (8, 2, 2),
        (7.5, 2, 3),
        (7, 3, 3),
        (6, 4, 6),
        (5.5, 4, 6),
        (5, 4, 6),
    ],
)
def test_half_points(rpe: float, fewest: int, most: int) -> None:
    reserve = helms_2016(rpe)
    assert (reserve.fewest, reserve.most) == (fewest, most)


@pytest.mark.parametrize("rpe", [10, 9, 8.5, 8, 7.5, 7, 6, 5.5, 5])
def test_both_scales_agree(rpe: float) -> None:
    # At 9.5 they differ by design: more load, but no further repetition.
    assert helms_2016(rpe).fewest <= zourdos_2016(rpe) <= helms_2016(rpe).most


def test_values_off_the_half_point_scale() -> None:
    for rpe in (8.2, 6.5):
        with pytest.raises(ValueError, match="not on the scale"):
            helms_2016(rpe)
    with pytest.raises(OutOfRangeError):
        zourdos_2016(4)


def test_percent_from_effort() -> None:
    # Arithmetic on the chart: 6 reps with 3 in reserve is a load for 9, 77 %.
    assert percent_from_effort(6, 3) == 77
    # RPE 10 is the chart itself.
    assert [percent_from_effort(reps, zourdos_2016(10)) for reps in range(1, 11)] == [
        percent_for_reps(reps) for reps in range(1, 11)
    ]
    with pytest.raises(OutOfRangeError):
        percent_from_effort(12, 4)


@given(reps=st.integers(1, 9), rir=st.integers(1, 5))
def test_one_more_rep_and_one_less_in_reserve_is_the_same_load(reps: int, rir: int) -> None:
    assert percent_from_effort(reps + 1, rir - 1) == percent_from_effort(reps, rir)
    assert percent_from_effort(reps, rir) < percent_from_effort(reps, rir - 1)


def test_large_reserves_are_unreliable() -> None:
    # Hackett 2017, J Strength Cond Res 31(8):2162–2168: error about 1 rep when 0 to 5 remain,
    # more than 2 when 7 to 10 remain.
    assert reserve_is_reliable(5)
    assert not reserve_is_reliable(5.5)
    assert ERROR_OF_RESERVE == ((0, 5, 1.0), (7, 10, 2.0))
