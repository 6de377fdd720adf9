"""Session load, monotony and strain against the published diary."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from strength_handbook.calc.session_load import (
    Spread,
    daily_totals,
    foster_1998_monotony,
    foster_1998_strain,
    foster_2001,
    mean_over_deviation,
)

# Foster 2001, J Strength Cond Res 15(1):109–115, table 5: day, RPE, minutes, printed load.
DIARY = [
    (0, 5, 180, 940),
    (1, 2, 25, 50),
    (2, 7, 120, 840),
    (2, 7, 40, 280),
    (3, 3, 60, 180),
    (4, 8, 75, 390),
    (5, 2, 25, 50),
    (6, 8, 75, 390),
    (6, 7, 40, 280),
]
PRINTED = [load for *_, load in DIARY]
DAYS = daily_totals([(day, load) for day, _, _, load in DIARY])


def test_session_loads() -> None:
    # Three of the nine printed loads are not RPE × minutes: the paper's own slips.
    computed = [foster_2001(rpe, minutes) for _, rpe, minutes, _ in DIARY]
    assert computed == [900, 50, 840, 280, 180, 600, 50, 600, 280]
    assert sum(computed) == 3780
    assert sum(a != b for a, b in zip(computed, PRINTED, strict=True)) == 3


def test_printed_week() -> None:
    assert sum(PRINTED) == 3400
    assert DAYS == (940, 50, 1120, 180, 390, 50, 670)
    # Printed strain 4 284 is the printed load times the printed monotony.
    assert sum(PRINTED) * 1.26 == pytest.approx(4284)


@pytest.mark.parametrize(
    ("loads", "spread", "expected"),
    [
        (PRINTED, Spread.POPULATION, 1.2646),  # what the paper prints as 1.26: nine sessions
        (PRINTED, Spread.SAMPLE, 1.19),
        (DAYS, Spread.POPULATION, 1.21),
        (DAYS, Spread.SAMPLE, 1.12),
    ],
)
def test_monotony_by_definition(loads: list[float], spread: Spread, expected: float) -> None:
    tolerance = 0.00005 if expected == 1.2646 else 0.005
    assert mean_over_deviation(loads, spread=spread) == pytest.approx(expected, abs=tolerance)


def test_seven_days_are_the_definition() -> None:
    monotony = foster_1998_monotony(DAYS, spread=Spread.SAMPLE)
    assert monotony == pytest.approx(1.12, abs=0.005)
    assert foster_1998_strain(DAYS, spread=Spread.SAMPLE) == pytest.approx(3400 * 1.12, rel=0.005)
    with pytest.raises(ValueError, match="7 daily totals"):
        foster_1998_monotony(PRINTED, spread=Spread.SAMPLE)


def test_two_loads_by_hand() -> None:
    # Mean 200; squares of ±100 over 2 and over 1.
    assert mean_over_deviation([100, 300], spread=Spread.POPULATION) == pytest.approx(2)
    assert mean_over_deviation([100, 300], spread=Spread.SAMPLE) == pytest.approx(2**0.5)


def test_load_per_minute_rises_with_duration() -> None:
    # Same paper: 130, 270 and 432 for 30, 60 and 90 min at equal power, 4.3, 4.5 and 4.8 a minute:
    # the rating a member would have given, put back in, returns the load.
    for load, minutes in ((130, 30), (270, 60), (432, 90)):
        assert foster_2001(load / minutes, minutes) == pytest.approx(load)


@pytest.mark.parametrize("spread", Spread)
def test_equal_days_have_no_monotony(spread: Spread) -> None:
    assert foster_1998_monotony([100.1] * 7, spread=spread) is None
    assert foster_1998_strain([100.1] * 7, spread=spread) is None
    assert foster_1998_monotony([0.0] * 7, spread=spread) is None


def test_wrong_weeks_are_refused() -> None:
    for day in (-1, 7):
        with pytest.raises(ValueError, match=f"day {day} is not in a week of 0 to 6"):
            daily_totals([(day, 100)])
    for spread in Spread:
        with pytest.raises(ValueError, match="a spread needs at least two loads"):
            mean_over_deviation([100], spread=spread)


week = st.lists(st.floats(1, 2000), min_size=7, max_size=7)


@given(week, st.floats(0.1, 10))
def test_monotony_has_no_unit(loads: list[float], factor: float) -> None:
    one = foster_1998_monotony(loads, spread=Spread.POPULATION)
    if one is not None and one < 1e6:
        other = foster_1998_monotony([load * factor for load in loads], spread=Spread.POPULATION)
        assert other == pytest.approx(one, rel=1e-6)


@given(week)
def test_sample_is_always_the_lower_one(loads: list[float]) -> None:
    population = foster_1998_monotony(loads, spread=Spread.POPULATION)
    sample = foster_1998_monotony(loads, spread=Spread.SAMPLE)
    if population is not None and sample is not None:
        assert sample == pytest.approx(population * (6 / 7) ** 0.5)
