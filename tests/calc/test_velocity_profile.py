import pytest
from hypothesis import given
from hypothesis import strategies as st

from strength_handbook.calc.velocity_profile import (
    base_after_velocity,
    garcia_ramos_2018_two_point,
)


@given(
    st.floats(40, 250),
    st.floats(0.15, 0.55),
    st.floats(0.5, 3),
    st.floats(0.3, 0.5),
    st.floats(0.8, 1.0),
)
def test_a_straight_lifter_is_recovered(
    best: float, best_speed: float, fall: float, light: float, heavy: float
) -> None:
    # A lifter whose speed falls by `fall` m/s per whole best single, exactly on a line.
    def speed(share: float) -> float:
        return best_speed + fall * (1 - share)

    if speed(light) <= speed(heavy) + 0.2001:
        return
    estimate = garcia_ramos_2018_two_point(
        light * best, speed(light), heavy * best, speed(heavy), best_speed
    )
    assert estimate.one_rm == pytest.approx(best)
    assert (estimate.low, estimate.high) == pytest.approx((0.95 * best, 1.05 * best))


@pytest.mark.parametrize(
    ("light", "heavy", "far"),
    [(45, 85, True), (39, 81, True), (39, 79, False), (45, 79, False), (50, 85, False)],
)
def test_near_loads_are_marked(light: float, heavy: float, *, far: bool) -> None:
    # House rule: 40 % of the best single apart, the heavy load 80 % or more.
    estimate = garcia_ramos_2018_two_point(
        light, 0.2 + 0.01 * (100 - light), heavy, 0.2 + 0.01 * (100 - heavy), 0.2
    )
    assert estimate.one_rm == pytest.approx(100)
    assert estimate.loads_far_apart == far


def test_loads_just_far_enough_apart_are_not_marked() -> None:
    # 40 and 80 % of 100 kg; the speeds are binary fractions, so every step is exact.
    estimate = garcia_ramos_2018_two_point(40, 1.0, 80, 0.5, 0.25)
    assert estimate.one_rm == 100
    assert estimate.loads_far_apart


def test_a_stick_is_a_light_load() -> None:
    assert garcia_ramos_2018_two_point(0.5, 1.2, 40.5, 0.4, 0.2).one_rm == pytest.approx(50.5)


@pytest.mark.parametrize(
    ("readings", "words"),
    [
        ((85, 1.0, 45, 0.4, 0.16), "not above"),
        ((45, 1.0, 45, 0.4, 0.16), "not above"),
        ((0, 1.0, 45, 0.4, 0.16), "not above"),
        ((45, 0.50, 85, 0.30, 0.16), "too close"),
        ((45, 0.60, 85, 0.40, 0.16), "too close"),
        ((45, 1.00, 85, 0.15, 0.16), "best single"),
        ((45, 1.00, 85, 0.40, 0.0), "best single"),
    ],
)
def test_unusable_pairs_are_refused(
    readings: tuple[float, float, float, float, float], words: str
) -> None:
    with pytest.raises(ValueError, match=words):
        garcia_ramos_2018_two_point(*readings)


@given(st.floats(20, 200), st.floats(20, 200), st.floats(0.5, 5))
def test_base_rises_by_one_plate_step_at_most(old: float, estimate: float, step: float) -> None:
    new = base_after_velocity(old, estimate, step)
    assert new <= estimate
    assert new <= old + step
    assert new in (estimate, old + step)
