"""Joints against hand geometry, published heights, and a physics engine."""

from math import cos, radians, sin
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from oracle import oracle
from strength_handbook.figures.body import FOREARM, MASSES, SHANK, THIGH, TRUNK, UPPER_ARM
from strength_handbook.figures.chain import Angles, Arm, Leg, Points, balance, distance, joints
from strength_handbook.figures.posing import posed
from strength_handbook.model.figure import Pose

ANGLE = st.floats(40, 180)
SHAPES = st.builds(
    lambda lean, hip, knee, foot, shoulder, elbow: Angles(
        lean, lean / 2, Leg(knee, hip, foot), Leg(180, 180), Arm(shoulder, elbow), Arm(0, 180)
    ),
    st.floats(-90, 90),
    ANGLE,
    ANGLE,
    st.floats(-60, 30),
    ANGLE,
    ANGLE,
)


def standing() -> Points:
    leg, arm = Leg(180, 180), Arm(0, 180)
    return joints(Angles(0, 0, leg, leg, arm, arm))


@pytest.mark.parametrize(
    ("joint", "height", "slack"),
    [("hip", 0.530, 1e-9), ("knee", 0.285, 1e-9), ("shoulder", 0.818, 1e-9),
     ("elbow", 0.630, 0.0025), ("wrist", 0.485, 0.0025)],
)  # fmt: skip
def test_joints_of_a_standing_body_are_as_high_as_published(
    joint: str, height: float, slack: float
) -> None:
    # Drillis and Contini 1966, as printed in Winter: heights as shares of stature. Elbow and wrist
    # differ by 0.002 in the source itself: 0.818 - 0.186 = 0.632 against 0.630.
    points = standing()
    assert points[joint][1] - points["heel"][1] == pytest.approx(height, abs=slack)


@given(SHAPES)
def test_segments_keep_their_lengths(shape: Angles) -> None:
    points = joints(shape)
    for one, other, length in (
        ("hip", "knee", THIGH), ("knee", "ankle", SHANK), ("hip", "shoulder", TRUNK),
        ("shoulder", "elbow", UPPER_ARM), ("elbow", "wrist", FOREARM),
    ):  # fmt: skip
        assert distance(points[one], points[other]) == pytest.approx(length, abs=1e-9)


@given(SHAPES)
def test_a_knee_bends_backwards_and_an_elbow_forwards_only(shape: Angles) -> None:
    points = joints(shape)
    for names, sign in ((("hip", "knee", "ankle"), -1), (("shoulder", "elbow", "wrist"), 1)):
        (ax, ay), (bx, by), (cx, cy) = (points[name] for name in names)
        turn = (bx - ax) * (cy - by) - (by - ay) * (cx - bx)
        assert sign * turn >= -1e-12


@pytest.mark.parametrize(("shin", "knee"), [(62, 72), (70, 90), (80, 100)])
def test_hip_height_of_a_squat_by_trigonometry(shin: float, knee: float) -> None:
    # Ankle height, plus the shin's rise, plus the thigh's, which the knee's angle turns.
    thigh = knee - shin
    by_hand = 0.039 + SHANK * sin(radians(shin)) + THIGH * sin(radians(thigh))
    one = posed(Pose.model_validate({"pose": "squat", "ankle": shin, "knee": knee}), "nothing")
    assert one.points["hip"][1] == pytest.approx(by_hand, abs=1e-9)
    across = SHANK * cos(radians(shin)) - THIGH * cos(radians(thigh))
    assert one.points["hip"][0] == pytest.approx(across, abs=1e-9)


def test_masses_are_those_of_a_whole_body() -> None:
    # Winter, Table 4.1: trunk 0.497, head and neck 0.081, and two of each limb.
    once = MASSES["trunk"][0] + MASSES["head"][0]
    twice = sum(mass for name, (mass, _) in MASSES.items() if name not in ("trunk", "head"))
    assert once + 2 * twice == pytest.approx(1.0, abs=0.001)


CHAIN = (
    ("trunk", "hip", "shoulder"), ("head", "shoulder", "head"), ("thigh", "hip", "knee"),
    ("shank", "knee", "ankle"), ("upper arm", "shoulder", "elbow"), ("forearm", "elbow", "wrist"),
)  # fmt: skip


def engine_xml(shape: Angles) -> str:
    """The near side as bodies that hang in each other, each turned against the one before."""
    trunk = -shape.lean
    thigh, shin = 180 - shape.near.hip, shape.near.knee - 180
    arm, fore = shape.arm.shoulder or 0.0, 180 - shape.arm.elbow

    def mass(name: str, along: float) -> str:
        weight, _ = MASSES[name]
        return f'<geom type="sphere" size="0.001" mass="{weight}" pos="0 {along} 0"/>'

    return f"""<mujoco><compiler angle="degree"/><worldbody>
      <body name="hip" euler="0 0 {trunk}">{mass("trunk", TRUNK * (1 - MASSES["trunk"][1]))}
        <body name="thigh" euler="0 0 {thigh}">{mass("thigh", -THIGH * MASSES["thigh"][1])}
          <body name="knee" pos="0 {-THIGH} 0" euler="0 0 {shin}">
            {mass("shank", -SHANK * MASSES["shank"][1])}
            <body name="ankle" pos="0 {-SHANK} 0">{mass("foot", 0)}</body></body></body>
        <body name="shoulder" pos="0 {TRUNK} 0" euler="0 0 {arm}">
          {mass("upper arm", -UPPER_ARM * MASSES["upper arm"][1])}
          <body name="elbow" pos="0 {-UPPER_ARM} 0" euler="0 0 {fore}">
            {mass("forearm", -FOREARM * MASSES["forearm"][1])}
            <body name="wrist" pos="0 {-FOREARM} 0">{mass("foot", 0)}</body></body></body>
      </body></worldbody></mujoco>"""


@pytest.mark.parametrize(
    ("lean", "hip", "knee", "shoulder", "elbow"),
    [(0, 180, 180, 0, 180), (59, 90, 155, 46, 178), (30, 70, 84, 34, 52), (-6, 176, 172, 178, 60),
     (-90, 120, 80, 90, 100), (65, 178, 153, 40, 90)],
)  # fmt: skip
def test_joints_stand_where_a_physics_engine_puts_them(
    lean: float, hip: float, knee: float, shoulder: float, elbow: float
) -> None:
    mujoco: Any = oracle("mujoco")
    leg, arm = Leg(knee, hip), Arm(shoulder, elbow)
    shape = Angles(lean, 0, leg, leg, arm, arm)
    model = mujoco.MjModel.from_xml_string(engine_xml(shape))
    data = mujoco.MjData(model)
    mujoco.mj_forward(model, data)
    points = joints(shape)
    for name in ("knee", "ankle", "shoulder", "elbow", "wrist"):
        x, y, _ = data.body(name).xpos
        assert points[name] == pytest.approx((x, y), abs=1e-9)


def test_the_load_moves_the_balance_towards_the_hands() -> None:
    one = posed(Pose.model_validate({"pose": "hinge", "shoulder": 90}), "nothing")
    without, loaded = balance(one.points), balance(one.points, "bar")
    hand = one.points["hand"][0]
    assert loaded == pytest.approx((without + 0.6 * hand) / 1.6, rel=0.01)
