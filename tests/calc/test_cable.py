from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from strength_handbook.calc.cable import (
    CableLine,
    ScaleReading,
    cable_line,
    cable_pull,
    cable_setting,
)

PINS = range(5, 105, 5)
lines = st.builds(CableLine, st.floats(0, 10), st.floats(0.2, 1.1))
add_ons = st.lists(st.sampled_from([1.25, 2.5, 2.5]), max_size=2)


def exact(setting: float, line: CableLine, friction: float = 0.0) -> ScaleReading:
    load = line.load(setting)
    return ScaleReading(setting, load + friction, load - friction)


def test_two_to_one_pulley() -> None:
    # Statics of a two-to-one pulley: half the stack at the handle, two kilos of pin for one.
    line = cable_line(ScaleReading(20, 10.5, 9.5), ScaleReading(60, 31.5, 28.5))
    assert (line.carriage, line.slope, line.ratio) == pytest.approx((0.0, 0.5, 2.0))


@pytest.mark.parametrize(("ratio", "pull"), [(1, 60), (2, 30), (4, 15), (0.5, 120)])
def test_pull_from_the_label(ratio: float, pull: float) -> None:
    # Work in is work out: 60 kg lifted 1 m while the handle goes 1, 2, 4 or half a metre.
    assert cable_pull(60, ratio) == pull
    assert cable_pull(60, ratio) * ratio * 1.0 == pytest.approx(60 * 1.0)


def test_a_ratio_of_nothing_is_refused() -> None:
    with pytest.raises(ValueError, match="above 0"):
        cable_pull(40, 0)


def test_friction_is_half_the_difference() -> None:
    reading = ScaleReading(50, 27.0, 25.0)
    assert (reading.mean, reading.friction) == (26.0, 1.0)


@given(lines, st.integers(1, 50), st.integers(1, 50), st.floats(0, 3), st.floats(-50, 150))
def test_a_straight_machine_is_recovered(
    line: CableLine, low: int, step: int, friction: float, setting: float
) -> None:
    first, second = exact(low, line, friction), exact(low + step, line, friction)
    for found in (cable_line(first, second), cable_line(second, first)):
        assert found.load(setting) == pytest.approx(line.load(setting), abs=1e-6)


@pytest.mark.parametrize(
    ("second", "words"),
    [
        (ScaleReading(10, 8, 7), "at setting 10"),
        (ScaleReading(20, 5, 5), "does not rise"),
        (ScaleReading(20, 6, 5), "does not rise"),
    ],
)
def test_useless_readings_are_refused(second: ScaleReading, words: str) -> None:
    with pytest.raises(ValueError, match=words):
        cable_line(ScaleReading(10, 6, 5), second)


def all_loads(line: CableLine, extra: list[float]) -> list[float]:
    subsets = [s for n in range(len(extra) + 1) for s in combinations(extra, n)]
    return [line.load(pin + sum(s)) for pin in PINS for s in subsets]


@given(lines, st.floats(0, 120), add_ons)
def test_down_is_the_heaviest_that_does_not_exceed(
    line: CableLine, wanted: float, extra: list[float]
) -> None:
    setting = cable_setting(line, wanted, PINS, extra)
    below = [load for load in all_loads(line, extra) if load <= wanted + 1e-7]
    if setting is None:
        assert not [load for load in below if load <= wanted - 1e-7]
    else:
        assert setting.load == pytest.approx(max(below), abs=1e-6)
        assert setting.load == pytest.approx(line.load(setting.pin + sum(setting.add_ons)))


@given(lines, st.floats(0, 120), add_ons)
def test_nearest_is_the_nearest(line: CableLine, wanted: float, extra: list[float]) -> None:
    setting = cable_setting(line, wanted, PINS, extra, policy="nearest")
    assert setting is not None
    best = min(abs(load - wanted) for load in all_loads(line, extra))
    assert abs(setting.load - wanted) == pytest.approx(best, abs=1e-8)


@given(lines, st.sampled_from(PINS))
def test_a_load_that_exists_is_given_back(line: CableLine, pin: int) -> None:
    setting = cable_setting(line, line.load(pin), PINS, [2.5])
    assert setting is not None
    assert (setting.pin, setting.add_ons) == (pin, ())


def test_a_load_met_but_for_the_last_binary_digit_is_met() -> None:
    # 3 × 0.1 is a hair above 0.3.
    setting = cable_setting(CableLine(0.0, 0.1), 0.3, [1, 2, 3])
    assert setting is not None
    assert setting.pin == 3


def test_equal_loads_need_the_fewest_add_ons() -> None:
    line = CableLine(0, 0.5)
    setting = cable_setting(line, 20, range(5, 100, 5), [2.5, 2.5])
    assert setting is not None
    assert (setting.pin, setting.add_ons) == (40, ())


def test_halfway_between_two_pins_the_lighter_is_taken() -> None:
    # 2.6 and 5.1 kgf both miss 3.85 kgf by 1.25, but for the last binary digits.
    setting = cable_setting(CableLine(0.1, 0.5), 3.85, [5, 10], policy="nearest")
    assert setting is not None
    assert setting.pin == 5


def test_nothing_light_enough() -> None:
    assert cable_setting(CableLine(10, 0.5), 5, PINS) is None
