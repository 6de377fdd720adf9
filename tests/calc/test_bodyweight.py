from math import radians, sin

import pytest
from hypothesis import given
from hypothesis import strategies as st

from strength_handbook.calc.bodyweight import (
    DE_LEVA_1996_MASS,
    Build,
    Segment,
    added_for_percent,
    de_leva_1996_share,
    melrose_dawes_2015_row,
    system_load,
)
from strength_handbook.calc.registry import OutOfRangeError

ALL: list[Segment] = [
    "head",
    "trunk",
    "upper arm",
    "forearm",
    "hand",
    "thigh",
    "shank",
    "foot",
]


def test_percent_is_of_the_system_not_of_the_added_kilos() -> None:
    # By hand: 72 kg with +12 is 84 kg; 75 % of it is 63 kg, which needs 9 kg of assistance.
    assert added_for_percent(75, 72, 12) == pytest.approx(-9)
    assert system_load(72, -9) == pytest.approx(0.75 * 84)
    assert system_load(72) == 72
    # The trap: 75 % of the added 12 kg alone would be 96 % of the system.
    assert system_load(72, 9) / system_load(72, 12) == pytest.approx(0.964, abs=5e-4)


@given(st.floats(0, 150), st.floats(40, 150), st.floats(-40, 80), st.floats(0.05, 1))
def test_added_kilos_give_the_percent_back(
    percent: float, body_mass: float, best: float, k: float
) -> None:
    added = added_for_percent(percent, body_mass, best, k)
    whole = system_load(body_mass, best, k)
    assert system_load(body_mass, added, k) == pytest.approx(percent / 100 * whole, abs=1e-9)


@given(st.floats(40, 150), st.floats(-40, 80))
def test_100_percent_is_the_best(body_mass: float, best: float) -> None:
    assert added_for_percent(100, body_mass, best) == pytest.approx(best, abs=1e-9)


@pytest.mark.parametrize(
    ("build", "without", "expected"),
    # de Leva 1996, J Biomech 29:1223–1230; sums as used by McBride 2009 for squats (no shanks and
    # feet) and for pull-ups (no forearms and hands); one whole arm 4.94 and 4.49 %.
    [
        ("men", ["shank", "foot"], 88.60),
        ("women", ["shank", "foot"], 87.80),
        ("men", ["forearm", "hand"], 95.54),
        ("women", ["forearm", "hand"], 96.12),
        ("men", ["thigh", "shank", "foot"], 60.28),
        ("women", ["thigh", "shank", "foot"], 58.23),
        ("men", ["upper arm", "forearm", "hand"], 100 - 2 * 4.94),
        ("women", ["upper arm", "forearm", "hand"], 100 - 2 * 4.49),
        ("men", [], 100),
    ],
)
def test_body_without_segments(build: Build, without: list[Segment], expected: float) -> None:
    assert de_leva_1996_share(without, build) == pytest.approx(expected, abs=0.02)


@pytest.mark.parametrize("build", DE_LEVA_1996_MASS)
def test_segments_make_up_the_whole_body(build: Build) -> None:
    # de Leva 1996: 100.00 % (men) and 99.99 % (women).
    assert de_leva_1996_share(ALL, build) == pytest.approx(0, abs=0.02)


def test_unknown_build_is_the_mean_and_repeats_do_not_count() -> None:
    legs: list[Segment] = ["shank", "foot"]
    assert de_leva_1996_share(legs) == pytest.approx(88.2)
    assert de_leva_1996_share([*legs, *legs], "men") == de_leva_1996_share(legs, "men")


@pytest.mark.parametrize(
    ("angle", "percent"),
    # Melrose & Dawes 2015, J Athl Enhanc 4(1), 40 students, feet under the anchor.
    [(30, 37.44), (45, 52.88), (60, 68.08), (75, 79.38)],
)
def test_suspension_row_as_measured(angle: float, percent: float) -> None:
    assert melrose_dawes_2015_row(angle) == pytest.approx(percent)


@given(st.floats(30, 45))
def test_suspension_row_follows_the_sine_where_the_strap_is_square(angle: float) -> None:
    # A pure 0.75 sin(angle) law is within 1 point at 30–45°, and 7 points low at 75°.
    assert melrose_dawes_2015_row(angle) == pytest.approx(75 * sin(radians(angle)), abs=1.0)
    assert melrose_dawes_2015_row(75) - 75 * sin(radians(75)) == pytest.approx(7, abs=0.1)


@given(st.floats(30, 75), st.floats(30, 75))
def test_lower_bodies_load_the_straps_more(one: float, other: float) -> None:
    low, high = sorted((one, other))
    assert melrose_dawes_2015_row(low) <= melrose_dawes_2015_row(high)


@pytest.mark.parametrize("angle", [29.9, 75.1])
def test_unmeasured_angles_are_refused(angle: float) -> None:
    with pytest.raises(OutOfRangeError):
        melrose_dawes_2015_row(angle)


def test_impossible_shares_are_refused() -> None:
    for k in (0.0, 1.1):
        with pytest.raises(OutOfRangeError):
            system_load(72, 0, k)
    with pytest.raises(OutOfRangeError):
        added_for_percent(-1, 72, 12)
