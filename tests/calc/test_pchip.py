import warnings

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from oracle import oracle
from strength_handbook.calc.pchip import fritsch_butland_1984
from strength_handbook.calc.registry import OutOfRangeError

steps = st.lists(st.floats(0.01, 5), min_size=1, max_size=7)
# Whole hundredths: readings of a scale, with ties, turns and zeros among them.
values = st.integers(-5000, 5000).map(lambda n: n / 100)


@st.composite
def points(draw: st.DrawFn) -> tuple[list[float], list[float]]:
    xs = [draw(st.floats(-3, 3))]
    for step in draw(steps):
        xs.append(xs[-1] + step)
    return xs, [draw(values) for _ in xs]


@given(points(), st.floats(0, 1))
def test_agrees_with_scipy(data: tuple[list[float], list[float]], share: float) -> None:
    # SciPy PchipInterpolator: the same published method, written independently.
    scipy = oracle("scipy.interpolate")

    xs, ys = data
    x = min(max(xs[0] + share * (xs[-1] - xs[0]), xs[0]), xs[-1])
    with warnings.catch_warnings():
        # SciPy divides by slopes of 0 and masks the result afterwards.
        warnings.simplefilter("ignore", RuntimeWarning)
        expected = float(scipy.PchipInterpolator(xs, ys)(x))
    assert fritsch_butland_1984(xs, ys, x) == pytest.approx(expected, rel=1e-9, abs=1e-9)


def test_gentle_curves_are_curves_too() -> None:
    # SciPy PchipInterpolator; slopes far below 1, as of percent by degree.
    scipy = oracle("scipy.interpolate")

    xs, ys = [0.0, 10.0, 20.0, 40.0], [0.0, 1.0, 3.0, 4.0]
    for x in (5.0, 10.0, 15.0, 30.0):
        expected = float(scipy.PchipInterpolator(xs, ys)(x))
        assert fritsch_butland_1984(xs, ys, x) == pytest.approx(expected, rel=1e-12)


@given(points())
def test_passes_through_the_points(data: tuple[list[float], list[float]]) -> None:
    xs, ys = data
    for x, y in zip(xs, ys, strict=True):
        assert fritsch_butland_1984(xs, ys, x) == pytest.approx(y, abs=1e-9)


@given(points(), st.floats(0, 1), st.floats(0, 1))
def test_rising_points_give_a_rising_curve(
    data: tuple[list[float], list[float]], one: float, other: float
) -> None:
    xs, ys = data[0], sorted(data[1])
    low, high = (xs[0] + share * (xs[-1] - xs[0]) for share in sorted((one, other)))
    assume(high <= xs[-1])
    at_low, at_high = (fritsch_butland_1984(xs, ys, x) for x in (low, high))
    assert ys[0] - 1e-9 <= at_low <= at_high + 1e-9 <= ys[-1] + 2e-9


@given(points(), st.floats(0, 1))
def test_mirrored_points_give_the_mirrored_curve(
    data: tuple[list[float], list[float]], share: float
) -> None:
    xs, ys = data
    x = min(max(xs[0] + share * (xs[-1] - xs[0]), xs[0]), xs[-1])
    mirrored = fritsch_butland_1984([-a for a in xs[::-1]], ys[::-1], -x)
    assert mirrored == pytest.approx(fritsch_butland_1984(xs, ys, x), rel=1e-9, abs=1e-9)


def test_two_points_give_a_straight_line() -> None:
    assert fritsch_butland_1984([1, 3], [10, 20], 1.5) == pytest.approx(12.5)


@pytest.mark.parametrize("x", [0.999, 3.001])
def test_is_never_extended(x: float) -> None:
    with pytest.raises(OutOfRangeError, match="outside 1 to 3"):
        fritsch_butland_1984([1, 2, 3], [1, 4, 9], x)


@pytest.mark.parametrize(
    ("xs", "ys"),
    [
        ([1.0], [1.0]),
        ([1.0, 2.0], [1.0]),
        ([1.0, 1.0], [1.0, 2.0]),
        ([0.0, 3.0, 2.0], [1.0, 2.0, 3.0]),
    ],
)
def test_unusable_points_are_refused(xs: list[float], ys: list[float]) -> None:
    with pytest.raises(ValueError, match=r"points|rise"):
        fritsch_butland_1984(xs, ys, 1.0)
