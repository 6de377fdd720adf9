"""Seconds of a set."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from strength_handbook.calc.set_duration import broken_set_seconds, carry_seconds, set_seconds
from strength_handbook.calc.tempo import rep_tension


def test_sets_by_hand() -> None:
    # Common practice, no source: 3 s per repetition where no tempo is written.
    assert set_seconds(10) == 30
    # 5 reps at 5-1-X-0, 7 s each.
    assert set_seconds(5, rep_tension(5, 1, None, 0).total_s) == 35
    # A hold of 20 s on each side with 5 s to turn round.
    assert set_seconds(0, hold_s=20, sides=2, side_change_s=5) == 45


def test_each_side_is_worked_after_the_other() -> None:
    assert set_seconds(6, 4, sides=2) == 2 * set_seconds(6, 4)


def test_cluster_rest_pause_and_strip_by_hand() -> None:
    # (2 + 2 + 2) with 20 s between: 6 reps and 2 pauses.
    assert broken_set_seconds((2, 2, 2), 3, 20) == 18 + 40
    # 8 + 4 + 3 with 20 s between.
    assert broken_set_seconds((8, 4, 3), 2, 20) == 30 + 40
    assert broken_set_seconds((), 3, 20) == 0


def test_carry_at_walking_pace() -> None:
    # Common practice, no source: 1 m/s.
    assert carry_seconds(40) == 40
    assert carry_seconds(30, 1.5, sides=2) == 40


@given(st.integers(0, 30), st.floats(0, 10))
def test_an_unbroken_set_is_a_plain_set(reps: int, seconds_per_rep: float) -> None:
    assert broken_set_seconds((reps,), seconds_per_rep, 20) == pytest.approx(
        set_seconds(reps, seconds_per_rep)
    )
