"""From a tested set to the best single."""

import pytest

from strength_handbook.calc.registry import OutOfRangeError
from strength_handbook.plan.new_best import ROUND_G, factors, new_best

# Percent of the best single for 2, 3, 5, 8 and 10 repetitions: Sheppard and Triplett 2016, ch. 17.
CHART = {2: 95, 3: 93, 5: 87, 8: 80, 10: 75}


@pytest.mark.parametrize("best_kg", range(40, 241, 5))
@pytest.mark.parametrize("reps", CHART)
def test_doing_just_what_is_expected_changes_nothing(best_kg: int, reps: int) -> None:
    expected = round(best_kg * 1000 * CHART[reps] / 100)
    assert new_best(expected, reps).best_g == best_kg * 1000


def test_a_single_is_kept_as_it_stands() -> None:
    found = new_best(101_250, 1)
    assert (found.best_g, found.low_g, found.high_g) == (101_250, 101_250, 101_250)


def test_three_repetitions_by_hand() -> None:
    """130 kg three times, each equation by hand.

    Epley 130 × 1.1 = 143.0; Brzycki 130 × 36/34 = 137.6; Lombardi 130 × 3^0.1 = 145.1; Mayhew
    130/0.8773 = 148.2 (52.2 + 41.9 e^-0.165 = 87.73). The chart: 130/0.93 = 139.8.
    """
    found = new_best(130_000, 3)
    assert found.best_g == 140_000
    assert found.low_g == pytest.approx(137_650, abs=10)
    assert found.high_g == pytest.approx(148_190, abs=30)
    assert not found.caution


def test_more_than_ten_repetitions_ask_for_care() -> None:
    # Reynolds, Gordon and Robergs 2006: no straight line above ten.
    assert [new_best(100_000, reps).caution for reps in (10, 11, 15)] == [False, True, True]
    with pytest.raises(OutOfRangeError):
        new_best(100_000, 16)


def test_the_range_holds_the_best_that_is_kept() -> None:
    for reps in range(1, 16):
        for grams in range(20_000, 240_000, 1_250):
            found = new_best(grams, reps)
            assert found.low_g - 250 <= found.best_g <= found.high_g + 250


def test_pounds_stay_whole() -> None:
    # 225 lb three times: 225/0.93 = 241.9, so 242 lb. One pound is 453.59237 g (1959).
    found = new_best(round(225 * 453.59237), 3, "lb")
    assert found.best_g / ROUND_G["lb"] == pytest.approx(242, abs=0.001)


def test_factors_are_the_same_numbers() -> None:
    rows = factors()
    assert len(rows) == 15
    assert rows[0] == (100_000_000, 1_000_000, 1_000_000, 0)
    for reps, (percent, low, high, care) in enumerate(rows, 1):
        found = new_best(1_000_000, reps)
        assert 1e8 * 1_000_000 / percent == pytest.approx(found.best_g, abs=250)
        assert low == pytest.approx(found.low_g, abs=1)
        assert high == pytest.approx(found.high_g, abs=1)
        assert low <= 1e14 / percent <= high + 1
        assert care == found.caution
