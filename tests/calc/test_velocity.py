from collections.abc import Callable

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from strength_handbook.calc import velocity
from strength_handbook.calc.registry import OutOfRangeError

Curve = Callable[[float], float]

BENCH = (velocity.gonzalez_badillo_2010_bench, velocity.gonzalez_badillo_2010_bench_velocity)
SQUAT = (velocity.sanchez_medina_2017_squat, velocity.sanchez_medina_2017_squat_velocity)
PULL = (velocity.sanchez_medina_2014_bench_pull, velocity.sanchez_medina_2014_bench_pull_velocity)
LIFTS = [BENCH, SQUAT, PULL]
# Coefficients as printed; value from memory, cross-checked by the tests below.
PRINTED = [(8.4326, -73.501, 112.33), (-5.961, -50.71, 117.0), (18.5797, -104.182, 147.94)]


@pytest.mark.parametrize(
    ("lift", "expected"),
    # The three parabolas inverted by hand at 40 to 100 %.
    [
        (BENCH, (1.131, 0.952, 0.782, 0.620, 0.465, 0.315, 0.243, 0.171)),
        (SQUAT, (1.315, 1.162, 1.005, 0.843, 0.676, 0.503, 0.414, 0.323)),
        (PULL, (1.372, 1.195, 1.035, 0.889, 0.753, 0.626, 0.565, 0.506)),
    ],
)
def test_velocity_table(lift: tuple[Curve, Curve], expected: tuple[float, ...]) -> None:
    got = [lift[1](percent) for percent in (40, 50, 60, 70, 80, 90, 95, 100)]
    assert got == pytest.approx(expected, abs=5.1e-4)


@pytest.mark.parametrize(("lift", "printed"), list(zip(LIFTS, PRINTED, strict=True)))
@pytest.mark.parametrize("percent", [30, 47.5, 66, 83, 100])
def test_inverse_is_the_root_on_the_falling_branch(
    lift: tuple[Curve, Curve], printed: tuple[float, float, float], percent: float
) -> None:
    # numpy.roots as the independent solver; the falling branch is the one with negative slope.
    a, b, c = printed
    roots = np.roots([a, b, c - percent])
    falling = [float(v) for v in roots if 2 * a * float(v) + b < 0]
    assert [lift[1](percent)] == pytest.approx(falling)


@pytest.mark.parametrize(
    ("quoted", "percent"),
    # Widely quoted bench press speeds at 40 to 90 % (González-Badillo & Sánchez-Medina 2010).
    [(1.13, 40), (0.96, 50), (0.79, 60), (0.62, 70), (0.47, 80), (0.32, 90)],
)
def test_quoted_bench_press_speeds(quoted: float, percent: float) -> None:
    assert velocity.gonzalez_badillo_2010_bench(quoted) == pytest.approx(percent, abs=0.55)


@pytest.mark.parametrize(
    ("lift", "speed", "band"),
    [
        (BENCH, 0.17, 0.01),  # Isokinet Exerc Sci 2021, doi 10.3233/IES-202247: 0.17 m/s
        (SQUAT, 0.32, 0.03),  # Sánchez-Medina 2017: 0.32 ± 0.03 m/s
        (PULL, 0.51, 0.02),  # 0.50–0.52 m/s, value from memory
    ],
)
def test_speed_of_the_best_single(lift: tuple[Curve, Curve], speed: float, band: float) -> None:
    assert lift[1](100) == pytest.approx(speed, abs=band)


@pytest.mark.parametrize("lift", LIFTS)
@given(st.floats(30, 100), st.floats(30, 100))
def test_heavier_is_slower_and_the_inverse_inverts(
    lift: tuple[Curve, Curve], one: float, other: float
) -> None:
    load, speed = lift
    assert load(speed(one)) == pytest.approx(one)
    light, heavy = sorted((one, other))
    assert speed(light) >= speed(heavy)


@pytest.mark.parametrize("lift", LIFTS)
def test_outside_the_lifted_loads_is_refused(lift: tuple[Curve, Curve]) -> None:
    load, speed = lift
    for percent in (29, 101):
        with pytest.raises(OutOfRangeError):
            speed(percent)
    for v in (0.1, 1.7):
        with pytest.raises(OutOfRangeError):
            load(v)


@given(st.floats(0.1, 1.5), st.floats(0, 60))
def test_stop_speed_is_the_loss_by_its_definition(first: float, loss: float) -> None:
    # Sánchez-Medina & González-Badillo 2011: loss % = 100 (fastest − current) / fastest.
    stop = velocity.stop_velocity(first, loss)
    assert 100 * (first - stop) / first == pytest.approx(loss, abs=1e-9)


def test_impossible_losses_are_refused() -> None:
    for loss in (-1, 61):
        with pytest.raises(OutOfRangeError):
            velocity.stop_velocity(0.6, loss)
