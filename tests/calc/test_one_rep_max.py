"""Equations for one repetition maximum against printed coefficients, identities and open data."""

from inspect import unwrap
from math import isclose
from statistics import correlation, fmean

import pytest
from hypothesis import given
from hypothesis import strategies as st

from oracle import oracle
from strength_handbook.calc.one_rep_max import (
    brzycki_1993,
    epley_1985,
    estimate_one_rep_max,
    lander_1984,
    lombardi_1989,
    mayhew_1992,
    oconner_1989,
    wathan_1994,
)
from strength_handbook.calc.registry import OutOfRangeError

KG_PER_LB = 0.45359237  # exact by definition

EQUATIONS = {
    "epley": epley_1985,
    "brzycki": brzycki_1993,
    "lombardi": lombardi_1989,
    "oconner": oconner_1989,
    "wathan": wathan_1994,
    "mayhew": mayhew_1992,
    "lander": lander_1984,
}

# 1RM in % of the load lifted, worked out from the coefficients printed by Epley 1985, Brzycki
# 1993, Lombardi 1989, O'Conner 1989, Wathan 1994, Mayhew 1992 and Lander 1984.
PERCENT_OF_LOAD = {
    1: (103.33, 100.00, 100.00, 102.50, 101.30, 108.86, 101.39),
    2: (106.67, 102.86, 107.18, 105.00, 105.15, 111.44, 104.21),
    3: (110.00, 105.88, 111.61, 107.50, 108.98, 113.99, 107.20),
    5: (116.67, 112.50, 117.46, 112.50, 116.58, 119.01, 113.71),
    8: (126.67, 124.14, 123.11, 120.00, 127.67, 126.29, 125.11),
    10: (133.33, 133.33, 125.89, 125.00, 134.75, 130.93, 134.07),
    12: (140.00, 144.00, 128.21, 130.00, 141.50, 135.40, 144.41),
    15: (150.00, 163.64, 131.10, 137.50, 150.91, 141.72, 163.31),
}


@pytest.mark.parametrize("reps", PERCENT_OF_LOAD)
@pytest.mark.parametrize(("position", "name"), list(enumerate(EQUATIONS)))
def test_table_of_percent_of_load(reps: int, position: int, name: str) -> None:
    # unwrap: the arithmetic is checked also where the published range ends earlier.
    estimate = unwrap(EQUATIONS[name])(100.0, reps)
    assert estimate == pytest.approx(PERCENT_OF_LOAD[reps][position], abs=0.005)


def test_identities() -> None:
    # Algebra: 1 + 10/30 = 36/27 = 4/3; 36/32 = 1 + 0.025 × 5 = 1.125.
    assert epley_1985(100, 10) == pytest.approx(400 / 3, rel=1e-12)
    assert brzycki_1993(100, 10) == pytest.approx(400 / 3, rel=1e-12)
    assert brzycki_1993(100, 5) == oconner_1989(100, 5) == pytest.approx(112.5, rel=1e-12)
    assert brzycki_1993(87.5, 1) == lombardi_1989(87.5, 1) == 87.5


@pytest.mark.parametrize("reps", range(1, 11))
def test_second_printed_forms_agree(reps: int) -> None:
    # Epley with 0.0333 instead of 1/30: within 0.05 %. Brzycki as w/(1.0278 − 0.0278 r): 0.03 %.
    assert epley_1985(100, reps) == pytest.approx(100 * (1 + 0.0333 * reps), rel=5e-4)
    assert brzycki_1993(100, reps) == pytest.approx(100 / (1.0278 - 0.0278 * reps), rel=4e-4)


def test_misprinted_exponents_are_not_used() -> None:
    # A textbook prints −0.75 r and −0.55 r; with those 10 reps would about double the load.
    assert wathan_1994(100, 10) < 140
    assert mayhew_1992(100, 10) < 140


@pytest.mark.parametrize("name", EQUATIONS)
@given(load=st.floats(1, 400), reps=st.floats(3, 14), more=st.floats(0.01, 1))
def test_more_repetitions_never_mean_a_smaller_maximum(
    name: str, load: float, reps: float, more: float
) -> None:
    assert EQUATIONS[name](load, reps + more) > EQUATIONS[name](load, reps)


@pytest.mark.parametrize("name", EQUATIONS)
@given(pounds=st.floats(1, 900), reps=st.integers(3, 15))
def test_pounds_before_or_after(name: str, pounds: float, reps: int) -> None:
    equation = EQUATIONS[name]
    assert isclose(
        equation(pounds, reps) * KG_PER_LB, equation(pounds * KG_PER_LB, reps), rel_tol=1e-12
    )


def test_a_measured_single_is_its_own_maximum() -> None:
    measured = estimate_one_rep_max(142.5, 1)
    assert (measured.low, measured.middle, measured.high) == (142.5, 142.5, 142.5)
    assert measured.methods == ()
    assert not measured.caution


def test_estimate_spans_the_general_equations() -> None:
    # Row 5 of the table.
    estimate = estimate_one_rep_max(100, 5)
    assert estimate.low == pytest.approx(112.50, abs=0.005)
    assert estimate.high == pytest.approx(119.01, abs=0.005)
    assert estimate.middle == pytest.approx(fmean(PERCENT_OF_LOAD[5]), abs=0.005)
    # Named as in the list of formulas, where a page looks them up.
    assert sorted(estimate.methods) == sorted(equation.__name__ for equation in EQUATIONS.values())


def test_straight_lines_end_at_ten() -> None:
    # Reynolds 2006: linear equations only up to 10 repetitions.
    assert not estimate_one_rep_max(100, 10).caution
    assert estimate_one_rep_max(100, 11).caution
    long_set = estimate_one_rep_max(100, 12)
    assert long_set.caution
    assert set(long_set.methods) == {"lombardi_1989", "mayhew_1992", "wathan_1994"}
    assert long_set.high == pytest.approx(141.50, abs=0.005)


@pytest.mark.parametrize("reps", [0, 16, 36, 37])
def test_refuses_where_nothing_is_known(reps: int) -> None:
    with pytest.raises(OutOfRangeError):
        estimate_one_rep_max(60, reps)
    with pytest.raises(OutOfRangeError):
        brzycki_1993(60, reps)


@given(load=st.floats(1, 400), reps=st.integers(1, 14))
def test_estimate_is_ordered_and_rises(load: float, reps: int) -> None:
    fewer, more = estimate_one_rep_max(load, reps), estimate_one_rep_max(load, reps + 1)
    assert load <= fewer.low <= fewer.middle <= fewer.high
    assert more.middle > fewer.middle
    assert more.low > fewer.low


@given(load=st.floats(1, 200), factor=st.floats(0.1, 4), reps=st.integers(1, 15))
def test_estimate_is_linear_in_load(load: float, factor: float, reps: int) -> None:
    one, other = estimate_one_rep_max(load, reps), estimate_one_rep_max(load * factor, reps)
    assert isclose(other.middle, one.middle * factor, rel_tol=1e-9)


def test_mean_of_trained_men() -> None:
    # Hutchins and Gearhart 2010, J Exerc Physiol online 13(3):32–39: 27 men, bench press 1RM
    # 95.5 kg measured, 94.2 and 94.9 estimated from sets at 85 %. A chart gives 6 reps at 85 %.
    assert estimate_one_rep_max(0.85 * 95.5, 6).middle == pytest.approx(95.5, rel=0.05)


@pytest.mark.slow
def test_middle_aged_men_at_the_chin_up_bar() -> None:
    # scikit-learn load_linnerud: 20 men, chins and body weight in lb. Means 9.45 and 178.6 lb
    # (81.01 kg), r = −0.390. Strength per kg of body mass must fall with body mass as chins do.
    data = oracle("sklearn.datasets").load_linnerud()
    chins = [float(row[0]) for row in data["data"]]
    pounds = [float(row[0]) for row in data["target"]]
    assert fmean(chins) == pytest.approx(9.45)
    assert fmean(pounds) * KG_PER_LB == pytest.approx(81.01, abs=0.005)
    assert correlation(chins, pounds) == pytest.approx(-0.390, abs=0.0005)

    men = [(lb, int(reps)) for lb, reps in zip(pounds, chins, strict=True) if reps <= 15]
    assert len(men) == 18
    kilos = [estimate_one_rep_max(lb * KG_PER_LB, reps).middle for lb, reps in men]
    for (lb, reps), kg in zip(men, kilos, strict=True):
        assert estimate_one_rep_max(lb, reps).middle * KG_PER_LB == pytest.approx(kg, rel=1e-12)
    relative = [kg / (lb * KG_PER_LB) for kg, (lb, _) in zip(kilos, men, strict=True)]
    assert correlation(relative, [lb for lb, _ in men]) < -0.2
