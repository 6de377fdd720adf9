"""Loads of a published worked programme, from tested maxima to the printed pounds."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from strength_handbook.calc.percent_load import (
    load_at_percent,
    one_rep_max_from_chart,
    percent_of_base,
    round_to_step,
)

# Sheppard and Triplett, Essentials of Strength Training and Conditioning, 4th ed. 2016, ch. 17:
# a week's loads in lb, "rounded to the nearest 5 lb".


@pytest.mark.parametrize(
    ("three_rm", "estimated", "raw", "printed"),
    [(115, 124, 93.0, 95), (110, 118, 88.5, 90)],
    ids=["hang clean", "push jerk"],
)
def test_loads_from_a_3rm(three_rm: float, estimated: int, raw: float, printed: int) -> None:
    one_rm = one_rep_max_from_chart(three_rm, 3)
    assert one_rm == pytest.approx(three_rm / 0.93, rel=1e-12)
    assert round_to_step(one_rm, 1) == estimated
    assert load_at_percent(estimated, 75) == raw
    assert round_to_step(load_at_percent(one_rm, 75), 5) == printed


@pytest.mark.parametrize(
    ("one_rm", "raw", "printed"),
    [(185, 157.25, 155), (100, 85.0, 85)],
    ids=["front squat", "incline bench press"],
)
def test_loads_from_a_1rm(one_rm: float, raw: float, printed: int) -> None:
    assert load_at_percent(one_rm, 85) == pytest.approx(raw, rel=1e-12)
    assert round_to_step(load_at_percent(one_rm, 85), 5) == printed


@pytest.mark.parametrize(
    ("heavy", "light", "medium"),
    [(95, 75, 85), (90, 70, 80), (155, 125, 140), (85, 70, 75)],
)
def test_light_and_medium_days(heavy: float, light: int, medium: int) -> None:
    assert round_to_step(load_at_percent(heavy, 80), 5) == light
    assert round_to_step(load_at_percent(heavy, 90), 5) == medium


@pytest.mark.parametrize(("pounds", "printed_kg"), [(490, 223), (505, 230)])
def test_kilograms_in_parentheses(pounds: float, printed_kg: int) -> None:
    # The chapter divides by 2.2; the exact factor may differ by 1 kg.
    assert round_to_step(pounds / 2.2, 1) == printed_kg
    assert pounds * 0.45359237 == pytest.approx(printed_kg, abs=1)


def test_ties_go_up() -> None:
    # The language's own round() would give 80 and 2.
    assert round_to_step(82.5, 5) == 85
    assert round_to_step(2.5, 1) == 3
    assert round_to_step(2.495, 1) == 2
    assert round_to_step(1.1 * 2.5, 5.5) == 5.5  # 2.7500000000000004 or a hair less


@given(value=st.floats(0, 1000), step=st.sampled_from([0.5, 1.0, 1.25, 2.5, 5.0]))
def test_rounding_is_near_idempotent_and_on_the_grid(value: float, step: float) -> None:
    rounded = round_to_step(value, step)
    assert abs(rounded - value) <= step / 2 + 1e-6
    assert rounded % step == 0
    assert round_to_step(rounded, step) == rounded


@given(value=st.floats(0, 1000), more=st.floats(0, 100))
def test_rounding_keeps_the_order(value: float, more: float) -> None:
    assert round_to_step(value, 2.5) <= round_to_step(value + more, 2.5)


@given(base=st.floats(1, 400), percent=st.floats(0, 150))
def test_percent_and_load_are_inverse(base: float, percent: float) -> None:
    load = load_at_percent(base, percent)
    assert percent_of_base(load, base) == pytest.approx(percent, abs=1e-9)
