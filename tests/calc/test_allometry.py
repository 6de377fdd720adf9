"""Scaling of strength with body size."""

from math import log

import pytest
from hypothesis import given
from hypothesis import strategies as st

from strength_handbook.calc.allometry import (
    StrengthTask,
    scale_strength,
)

masses = st.floats(40, 160)


@pytest.mark.parametrize(
    ("task", "mass"),
    # Marković and Jarić 2004, Eur J Appl Physiol 92:139–149.
    [
        (StrengthTask.EXTERNAL_FORCE, 0.67),
        (StrengthTask.RAPID_MOVEMENT, 0),
        (StrengthTask.SUPPORTING_BODY_WEIGHT, 0.33),
    ],
)
def test_exponents(task: StrengthTask, mass: float) -> None:
    assert task.mass_exponent == mass


def test_the_number_is_an_exponent_not_a_factor() -> None:
    # 2^0.67 = 1.591; multiplying body mass by 0.67 would give 1.34.
    assert scale_strength(1, 60, 120) == pytest.approx(1.591, abs=0.0005)


def test_speed_does_not_depend_on_size() -> None:
    assert scale_strength(3.2, 60, 120, StrengthTask.RAPID_MOVEMENT.mass_exponent) == 3.2


def test_against_other_measurements() -> None:
    # Folland 2008, Eur J Appl Physiol 102(6):739–745: knee extension force of lean men, 0.66.
    folland = scale_strength(100, 60, 100) / (100 * (100 / 60) ** 0.66)
    assert folland == pytest.approx(1, abs=0.01)

    # Batterham and George 1997, J Appl Physiol 83(6):2158–2166: world medallists' totals in kg,
    # men T = 21.48 + 6.119 M − 0.022 M². The heavy classes carry fat, so only up to 83 kg.
    def total(mass: float) -> float:
        return 21.48 + 6.119 * mass - 0.022 * mass**2

    assert total(83) == pytest.approx(377.8, abs=0.05)
    assert scale_strength(total(59), 59, 83) == pytest.approx(total(83), rel=0.05)
    implied = log(total(83) / total(54)) / log(83 / 54)
    assert implied == pytest.approx(StrengthTask.EXTERNAL_FORCE.mass_exponent, abs=0.1)


@given(st.floats(1, 400), masses, masses, st.sampled_from(StrengthTask))
def test_scaled_people_are_equally_strong(
    performance: float, mass: float, other: float, task: StrengthTask
) -> None:
    scaled = scale_strength(performance, mass, other, task.mass_exponent)
    normalised = scaled / other**task.mass_exponent
    assert normalised == pytest.approx(performance / mass**task.mass_exponent)
    assert scale_strength(scaled, other, mass, task.mass_exponent) == pytest.approx(performance)


@given(st.floats(1, 400), masses, st.floats(0.1, 40))
def test_heavier_people_lift_more_but_less_per_kilogram(
    performance: float, mass: float, more: float
) -> None:
    scaled = scale_strength(performance, mass, mass + more)
    assert scaled > performance
    assert scaled / (mass + more) < performance / mass
