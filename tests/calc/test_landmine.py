from itertools import product
from math import cos, radians

import pytest
from hypothesis import given
from hypothesis import strategies as st

from mujoco_bar import Weight, grip_force, stacked
from strength_handbook.calc.barbell import BarShape, PlateShape
from strength_handbook.calc.landmine import (
    landmine_angle,
    landmine_shares,
    landmine_square,
    landmine_vertical,
)
from strength_handbook.calc.registry import OutOfRangeError

STACKS: list[list[tuple[float, float]]] = [
    [],
    [(10, 0.030)],
    [(20, 0.054), (20, 0.054)],
    [(25, 0.060), (10, 0.030), (1.25, 0.012)],
]


def test_agrees_with_a_rigid_body_engine() -> None:
    # MuJoCo: hinge at the pivot, frictionless rod under the grip; 5 × 4 × 4 × 2 = 160 cases.
    cases = list(product((0, 15, 30, 45, 60), (1.60, 1.74, 2.00, 2.15), STACKS, (0.0, 0.05)))
    for angle, grip, stack, offset in cases:
        places = [Weight(w.mass, w.place + 1.10) for w in stacked(stack)]
        expected = grip_force(20, 2.20, places, grip, angle, offset)
        plates = [PlateShape(mass, thickness) for mass, thickness in stack]
        got = landmine_square(BarShape(), plates, grip, angle, offset)
        assert got == pytest.approx(expected, rel=1e-3), (angle, grip, stack, offset)


# Statics of a uniform lever, worked by hand: 20 kg bar of 2.20 m, hands at 2.10 m.
def test_hand_worked_example() -> None:
    assert landmine_vertical(BarShape(), [], 2.10) == pytest.approx(22 / 2.10)
    # A 20 kg disc at 2.00 m: (22 + 40) / 2.10 = 29.5 kg. A 430 mm "plate" is centred there.
    plate = PlateShape(20, 2 * (2.00 - 1.10 - 0.685))
    assert landmine_vertical(BarShape(), [plate], 2.10) == pytest.approx(29.5, abs=0.05)


@pytest.mark.parametrize(
    ("grip", "a", "b"),
    # (m_bar L/2 + M d₁) / l with L = 2.20 m, d₁ = 2.20 − 0.415 + 0.027 m, worked by hand.
    [(2.15, 0.512, 0.843), (2.00, 0.550, 0.906), (1.74, 0.632, 1.041), (1.60, 0.688, 1.1325)],
)
def test_shares_of_bar_and_plate(grip: float, a: float, b: float) -> None:
    assert landmine_shares(BarShape(), 0.054, grip) == pytest.approx((a, b), abs=5.1e-4)


@pytest.mark.parametrize(
    ("grip", "plates", "expected"),
    # kgf at 0, 20, 30 and 45 degrees, one plate position for all masses; worked by hand.
    [
        (2.15, 0, (10.2, 9.6, 8.9, 7.2)),
        (2.15, 10, (18.7, 17.5, 16.2, 13.2)),
        (2.15, 20, (27.1, 25.5, 23.5, 19.2)),
        (2.15, 40, (43.9, 41.3, 38.1, 31.1)),
        (1.74, 0, (12.6, 11.9, 10.9, 8.9)),
        (1.74, 10, (23.1, 21.7, 20.0, 16.3)),
        (1.74, 20, (33.5, 31.5, 29.0, 23.7)),
        (1.74, 40, (54.3, 51.0, 47.0, 38.4)),
    ],
)
def test_table_of_hand_loads(grip: float, plates: float, expected: tuple[float, ...]) -> None:
    stack = [PlateShape(plates, 0.054)] if plates else []
    got = [landmine_square(BarShape(), stack, grip, angle) for angle in (0, 20, 30, 45)]
    assert got == pytest.approx(expected, abs=0.06)


def test_square_push_vanishes_upright_and_equals_the_vertical_one_level() -> None:
    plates = [PlateShape(20, 0.054)]
    assert landmine_square(BarShape(), plates, 2.0, 90) == pytest.approx(0, abs=1e-12)
    assert landmine_square(BarShape(), plates, 2.0, 0) == landmine_vertical(BarShape(), plates, 2.0)


def test_hands_at_the_plate_of_a_weightless_bar_carry_the_plate() -> None:
    bar = BarShape(mass=1e-9)
    assert landmine_vertical(bar, [PlateShape(20, 0.054)], 1.785 + 0.027) == pytest.approx(20)


@given(st.floats(0, 40), st.floats(0, 40), st.floats(0.5, 2.2), st.floats(0, 90), st.floats(0, 0.1))
def test_linear_in_the_plates_and_falling_with_the_angle(
    one: float, two: float, grip: float, angle: float, offset: float
) -> None:
    def load(mass: float) -> float:
        plates = [PlateShape(mass, 0.03)] if mass else []
        return landmine_vertical(BarShape(), plates, grip, offset)

    assert load(one) + load(two) == pytest.approx(load(0) + load(one + two))
    square = landmine_square(BarShape(), [], grip, angle, offset)
    assert square == pytest.approx(load(0) * cos(radians(angle)))


@given(st.floats(0.5, 2.0), st.floats(0.01, 0.2))
def test_hands_nearer_to_the_pivot_carry_more(grip: float, nearer: float) -> None:
    plates = [PlateShape(10, 0.03)]
    assert landmine_vertical(BarShape(), plates, grip - nearer) > landmine_vertical(
        BarShape(), plates, grip
    )


def test_grip_and_pivot_errors_are_as_stated() -> None:
    # The stated error: 5 cm of grip about 2.3 %, 5 cm of pivot about 1.1 %.
    plates = [PlateShape(20, 0.054)]
    base = landmine_vertical(BarShape(), plates, 2.15)
    assert landmine_vertical(BarShape(), plates, 2.10) / base - 1 == pytest.approx(0.023, abs=0.002)
    assert landmine_vertical(BarShape(), plates, 2.15, 0.05) / base - 1 == pytest.approx(
        0.011, abs=0.002
    )


def test_angle_from_heights() -> None:
    assert landmine_angle(0.05, 0.05, 2.0) == 0
    assert landmine_angle(2.05, 0.05, 2.0) == pytest.approx(90)
    assert landmine_angle(2.0, 0.0, 2.0) == pytest.approx(90)
    # The pivot beyond the bar's end lengthens the lever.
    assert landmine_angle(1.05, 0.0, 2.0, 0.1) == pytest.approx(30)
    assert landmine_angle(0.05 + 2**0.5, 0.05, 2.0) == pytest.approx(45)
    with pytest.raises(ValueError, match="lever"):
        landmine_angle(2.2, 0.05, 2.0)
    with pytest.raises(ValueError, match="lever"):
        landmine_angle(0.0, 0.05, 2.0)


def test_hands_at_the_very_end_carry_half_of_an_empty_bar() -> None:
    assert landmine_vertical(BarShape(), [], 2.20) == pytest.approx(10)


def test_impossible_grips_are_refused() -> None:
    with pytest.raises(ValueError, match="beyond the end"):
        landmine_vertical(BarShape(), [], 2.3)
    with pytest.raises(OutOfRangeError):
        landmine_vertical(BarShape(), [], 0.0)
    with pytest.raises(OutOfRangeError):
        landmine_square(BarShape(), [], 2.0, 95)
