from dataclasses import dataclass
from functools import cache
from math import asin, atan2, cos, degrees, hypot, sin
from typing import Literal

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from oracle import oracle
from strength_handbook.calc.push_up import (
    EBBEN_2011_KNEELING,
    back_load_leverage,
    ebben_2011_push_up,
    push_up_load,
    suprak_2011_push_up,
)
from strength_handbook.calc.registry import OutOfRangeError

# Ebben 2011, J Strength Cond Res 25:2891–2894: hands above feet in m, % of body mass (as quoted).
EBBEN = {-0.6096: 74, -0.3048: 70, 0.0: 64, 0.3048: 55, 0.6096: 41}

# de Leva 1996, J Biomech 29:1223–1230, men of 1.741 m: mass in % of the body (both limbs), length
# in m, mass centre from the upper end as a share of the length. Lengths from memory.
SHANK, THIGH, TRUNK = (8.66, 0.4340, 0.4395), (28.32, 0.4222, 0.4095), (43.46, 0.5319, 0.4486)
UPPER_ARM, FOREARM = (5.42, 0.2817, 0.5772), (3.24, 0.2689, 0.4574)
HEAD, FEET, HANDS = 6.94, 2.74, 1.22
MID_SHOULDER_TO_MID_HIP = 0.5155
FOOT_HEIGHT, BALL = 0.068, 0.45 * 0.2581  # the ball of the foot below and ahead of the ankle
PALM = 0.03  # pressure ahead of the wrist


@dataclass(frozen=True)
class Pose:
    """Body turned about the ball of the foot; arms down from the shoulder, wrists under it."""

    pitch: float
    hand: float
    arms: tuple[tuple[float, float, float], ...]  # mass, x, z

    def along(self, up: float) -> tuple[float, float]:
        """Place of a point `up` m from the soles on the body's line."""
        return (
            up * cos(self.pitch) - BALL * sin(self.pitch),
            up * sin(self.pitch) + BALL * cos(self.pitch),
        )


HIP = FOOT_HEIGHT + SHANK[1] + THIGH[1]
SHOULDER = HIP + MID_SHOULDER_TO_MID_HIP


@cache
def pose(*, bottom: bool) -> Pose:
    def pitch(height: float) -> float:
        return asin(height / hypot(SHOULDER, BALL)) - atan2(BALL, SHOULDER)

    reach = UPPER_ARM[1] + FOREARM[1]
    top = Pose(pitch(reach), 0.0, ())
    wrist = top.along(SHOULDER)[0]
    shoulder_height = 0.18 if bottom else reach
    turned = Pose(pitch(shoulder_height), 0.0, ())
    shoulder = turned.along(SHOULDER)[0]
    upper = shoulder + UPPER_ARM[2] * (wrist - shoulder)  # the elbow is above the wrist
    arms = ((UPPER_ARM[0], upper, 0.3), (FOREARM[0], wrist, 0.1), (HANDS, wrist + PALM, 0.02))
    return Pose(turned.pitch, wrist + PALM, arms)


def at_the_hands(pose: Pose, extra: float = 0.0, below_shoulder: float = 0.0) -> float:
    """MuJoCo: kgf between the palm and a frictionless floor, body of 100 kg, hinge at the toes."""
    mujoco = oracle("mujoco")
    masses = [
        (SHANK[0], HIP - THIGH[1] - SHANK[2] * SHANK[1]),
        (THIGH[0], HIP - THIGH[2] * THIGH[1]),
        (TRUNK[0], HIP + (1 - TRUNK[2]) * TRUNK[1]),
        (HEAD, SHOULDER + 0.180),
        (FEET, 0.03),
        *([(extra, SHOULDER - below_shoulder)] if extra else []),
    ]
    points = [(mass, *pose.along(up)) for mass, up in masses] + list(pose.arms)
    geoms = "".join(
        f'<geom type="sphere" size="0.01" pos="{x} 0 {z}" mass="{mass}" contype="0"'
        ' conaffinity="0"/>'
        for mass, x, z in points
    )
    model = mujoco.MjModel.from_xml_string(f"""
    <mujoco>
      <option timestep="0.001" gravity="0 0 -9.81"/>
      <default><geom condim="1" solref="0.004 1"/></default>
      <worldbody>
        <geom type="plane" size="3 3 0.1"/>
        <body>
          <joint type="hinge" axis="0 1 0" damping="500"/>
          <geom type="sphere" size="0.01" pos="{pose.hand} 0 0.01" mass="0.000001"/>
          {geoms}
        </body>
      </worldbody>
    </mujoco>""")
    data = mujoco.MjData(model)
    mujoco.mj_step(model, data, 500)
    assert abs(data.qvel[0]) < 1e-6, "the body has not come to rest"
    wrench = np.zeros(6)
    mujoco.mj_contactForce(model, data, 0, wrench)
    return float(wrench[0]) / 9.81


def test_the_body_of_the_oracle_is_whole() -> None:
    total = SHANK[0] + THIGH[0] + TRUNK[0] + UPPER_ARM[0] + FOREARM[0] + HEAD + FEET + HANDS
    assert total == pytest.approx(100, abs=0.01)
    assert degrees(pose(bottom=False).pitch) == pytest.approx(18, abs=1)


def test_still_push_up_agrees_with_rigid_body_statics() -> None:
    top, bottom = at_the_hands(pose(bottom=False)), at_the_hands(pose(bottom=True))
    assert suprak_2011_push_up("toes", "top") == pytest.approx(top, abs=1.0)
    assert suprak_2011_push_up("toes", "bottom") == pytest.approx(bottom, abs=1.5)


@pytest.mark.parametrize("below", [0.10, 0.125, 0.15, 0.20, 0.25, 0.30, 0.40])
def test_leverage_of_a_load_on_the_back_agrees_with_rigid_body_statics(below: float) -> None:
    top = pose(bottom=False)
    bare = at_the_hands(top)
    counted = at_the_hands(top, extra=20, below_shoulder=below) - bare
    assert back_load_leverage(below) == pytest.approx(counted / 20 / (bare / 100), abs=0.02)


@pytest.mark.parametrize(("hands_above_feet", "percent"), EBBEN.items())
def test_measured_heights(hands_above_feet: float, percent: float) -> None:
    assert ebben_2011_push_up(hands_above_feet) == pytest.approx(percent, abs=0.7)


def test_quadratic_is_the_least_squares_fit() -> None:
    # numpy.polyfit through the five measured heights in cm.
    c, b, a = np.polyfit([100 * d for d in EBBEN], list(EBBEN.values()), 2)
    for d in (-0.6, -0.2, 0.0, 0.4, 0.6):
        x = 100 * d
        assert ebben_2011_push_up(d) == pytest.approx(a + b * x + c * x * x, abs=0.1)


def test_published_order() -> None:
    # Ebben 2011: hands 60 < kneeling < hands 30 < regular < feet 30 < feet 60; kneeling 49 %.
    assert EBBEN_2011_KNEELING == 49
    percents = [ebben_2011_push_up(d) for d in (0.6096, 0.3048, 0.0, -0.3048, -0.6096)]
    ordered = [percents[0], EBBEN_2011_KNEELING, *percents[1:]]
    assert ordered == sorted(ordered)


@pytest.mark.parametrize(("stature", "percent"), [(1.55, 37.9), (1.95, 45.7)])
def test_stature_with_the_hands_raised(stature: float, percent: float) -> None:
    # Rigid-body statics with the segments of de Leva 1996, hands at 61 cm; within 1.5 points.
    assert ebben_2011_push_up(0.6096, stature) == pytest.approx(percent, abs=1.5)


@given(st.floats(-0.6, 0.6), st.floats(-0.6, 0.6), st.floats(1.5, 2.1))
def test_raised_hands_carry_less(one: float, other: float, stature: float) -> None:
    low, high = sorted((one, other))
    assert ebben_2011_push_up(high, stature) <= ebben_2011_push_up(low, stature)


@given(st.floats(1.3, 2.2))
def test_stature_does_not_matter_on_the_level(stature: float) -> None:
    assert ebben_2011_push_up(0, stature) == ebben_2011_push_up(0)


def test_heights_beyond_the_measured_ones_are_held() -> None:
    assert ebben_2011_push_up(1.0) == ebben_2011_push_up(0.70)
    assert ebben_2011_push_up(-1.0) == ebben_2011_push_up(-0.70)
    # Up to 70 cm the curve goes on: by hand 64.1 ∓ 18.62 − 8.673.
    assert ebben_2011_push_up(0.70) == pytest.approx(36.807)
    assert ebben_2011_push_up(-0.70) == pytest.approx(74.047)


@pytest.mark.parametrize(
    ("on", "position", "percent"),
    # Mier 2014, Int J Exerc Sci 7:161–168, men, static; Gouvali & Boudolos 2005, J Strength Cond
    # Res 19:146–151, start position. Studies agree to about 5 points.
    [
        ("toes", "top", 67.0),
        ("toes", "bottom", 74.6),
        ("knees", "top", 52.5),
        ("knees", "bottom", 60.1),
        ("toes", "top", 66.4),
        ("knees", "top", 52.9),
    ],
)
def test_other_static_studies(
    on: Literal["toes", "knees"], position: Literal["top", "bottom"], percent: float
) -> None:
    assert suprak_2011_push_up(on, position) == pytest.approx(percent, abs=5)


def test_static_baseline_as_printed() -> None:
    # Suprak 2011, J Strength Cond Res 25:497–503: % of body mass, arms straight and chest down.
    assert (suprak_2011_push_up("toes", "top"), suprak_2011_push_up("toes", "bottom")) == (
        69.16,
        75.04,
    )
    assert (suprak_2011_push_up("knees", "top"), suprak_2011_push_up("knees", "bottom")) == (
        53.56,
        61.80,
    )


def test_bottom_is_heavier_than_top() -> None:
    # Bottom ÷ top is 1.08 to 1.16 in all static sets.
    for on in ("toes", "knees"):
        ratio = suprak_2011_push_up(on, "bottom") / suprak_2011_push_up(on, "top")
        assert 1.08 <= ratio <= 1.16


@pytest.mark.parametrize(("percent", "low", "high"), [(69.16, 84, 87.2), (75.04, 91, 94.6)])
def test_a_plate_on_the_shoulder_blades(percent: float, low: float, high: float) -> None:
    # Statics: a plate 15–20 cm below the shoulder line counts 84–87 % at the top of a flat
    # push-up and 91–95 % at the bottom.
    for below in (0.15, 0.20):
        counted = push_up_load(80, percent, 10, below) - push_up_load(80, percent)
        assert low - 0.5 <= 10 * counted <= high + 0.5


@given(st.floats(40, 150), st.floats(40, 100), st.floats(0, 40), st.floats(0.10, 0.40))
def test_no_load_on_the_back_counts_more_than_itself(
    body_mass: float, percent: float, extra: float, below: float
) -> None:
    bare = push_up_load(body_mass, percent)
    assert bare == pytest.approx(body_mass * percent / 100)
    counted = push_up_load(body_mass, percent, extra, below) - bare
    assert extra * percent / 100 - 1e-9 <= counted <= extra + 1e-9


@given(st.floats(0.10, 0.40), st.floats(0.10, 0.40))
def test_leverage_falls_with_distance(one: float, other: float) -> None:
    low, high = sorted((one, other))
    assert back_load_leverage(high) <= back_load_leverage(low)


@pytest.mark.parametrize("below", [0.09, 0.41])
def test_loads_off_the_upper_back_are_refused(below: float) -> None:
    with pytest.raises(OutOfRangeError):
        push_up_load(80, 64, 10, below)
