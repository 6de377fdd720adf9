"""Time under tension from four written numbers."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from strength_handbook.calc.tempo import rep_tension, total_tension

seconds = st.floats(0, 20)


@pytest.mark.parametrize(
    ("written", "eccentric", "isometric", "concentric"),
    [
        # lower–pause–lift–pause; X as 1 s: common practice, no source.
        ((5, 1, None, 0), 5, 1, 1),
        ((3, 1, None, 0), 3, 1, 1),
        ((2, 0, None, 0), 2, 0, 1),
        ((2, 4, 2, 1), 2, 5, 2),
        # 2/0/X, 4/0/X and 6/0/X, the tempos of J Sports Sci Med 2020;19(2), PMC7196738.
        ((6, 0, None, 0), 6, 0, 1),
    ],
)
def test_split_of_one_repetition(
    written: tuple[float, float, float | None, float],
    eccentric: float,
    isometric: float,
    concentric: float,
) -> None:
    rep = rep_tension(*written)
    assert (rep.eccentric_s, rep.isometric_s, rep.concentric_s) == (
        eccentric,
        isometric,
        concentric,
    )


def test_week_of_slow_lowering() -> None:
    # By hand: 4 sets of 5 at 5-1-X-0 are 100 s lowering, 20 s paused, 140 s in all.
    week = total_tension(rep_tension(5, 1, None, 0), reps=4 * 5)
    assert (week.eccentric_s, week.isometric_s, week.total_s) == (100, 20, 140)
    both = total_tension(rep_tension(3, 0, 1, 0), reps=3 * 6, sides=2)
    assert both.eccentric_s == 108


@given(seconds, seconds, seconds, seconds, st.integers(0, 50), st.integers(1, 2))
def test_total_is_reps_times_the_sum_of_the_digits(
    lower: float, pause: float, lift: float, top: float, reps: int, sides: int
) -> None:
    total = total_tension(rep_tension(lower, pause, lift, top), reps, sides)
    assert total.total_s == pytest.approx(reps * sides * (lower + pause + lift + top), abs=1e-9)
    assert total.total_s == pytest.approx(
        total.eccentric_s + total.isometric_s + total.concentric_s, abs=1e-9
    )
