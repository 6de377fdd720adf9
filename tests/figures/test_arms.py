"""Hands that have a place: the arms get there, and the trunk comes along where arms hang."""

from math import cos, radians

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from strength_handbook.figures.arms import LOWER, reaching_arm, straight_reach
from strength_handbook.figures.body import BAG_HALF, FOREARM, STATURE, UPPER_ARM
from strength_handbook.figures.chain import Angles, Leg, distance, joints, moved
from strength_handbook.figures.posing import posed
from strength_handbook.model.figure import Held, Pose


def hand_of(keys: dict[str, object], held: Held = "nothing") -> tuple[float, float]:
    x, y = posed(Pose.model_validate(keys), held).points["hand"]
    return x * STATURE * 100, y * STATURE * 100


@given(st.floats(-60, 90), st.floats(-0.3, 0.3), st.floats(-0.3, 0.3), st.floats(0, 60))
def test_a_hand_is_where_it_has_to_be_and_the_elbow_bends_forwards(
    lean: float, ahead: float, up: float, out: float
) -> None:
    upper = UPPER_ARM * cos(radians(out))
    assume(abs(LOWER - upper) + 1e-3 < distance((0, 0), (ahead, up)) < LOWER + upper - 1e-3)
    leg = Leg(180, 180)
    arm = reaching_arm((0, 0), lean, (ahead, up), out)
    points = joints(Angles(lean, 0, leg, leg, arm, arm))
    points = moved(points, (-points["shoulder"][0], -points["shoulder"][1]))
    assert points["hand"] == pytest.approx((ahead, up), abs=1e-6)
    assert 0 <= arm.elbow <= 180
    assert distance(points["elbow"], points["wrist"]) == pytest.approx(FOREARM)


def test_out_of_reach_the_arm_is_straight_and_points_there() -> None:
    arm = reaching_arm((0, 0), 0, (2, 0))
    assert (arm.shoulder, arm.elbow) == (90, 180)
    assert straight_reach() == pytest.approx(UPPER_ARM + LOWER, abs=1e-3)


@pytest.mark.parametrize(("high", "ahead"), [(23, 9), (33, 9), (50, 8)])
def test_straight_arms_bring_the_trunk_along(high: int, ahead: int) -> None:
    keys = {"pose": "hinge", "knee": 100, "hands": f"{high} cm", "hands-at": ahead}
    assert hand_of(keys, "handles") == pytest.approx((ahead, high), abs=1)
    one = posed(Pose.model_validate(keys), "handles")
    assert one.shape.arm.elbow > 170


def test_bent_arms_leave_the_trunk_where_it_is() -> None:
    keys = {"pose": "standing", "arms": "racked", "hands": "150 cm", "hands-at": 30}
    assert hand_of(keys) == pytest.approx((30, 150), abs=0.1)
    assert posed(Pose.model_validate(keys), "nothing").shape.lean == pytest.approx(1)


def test_a_bag_on_the_lap_is_held_at_its_front_and_on_a_shoulder_by_both() -> None:
    lap = posed(Pose.model_validate({"pose": "squat", "knee": 92, "load-on": "lap"}), "bag")
    hip, knee, hand = (lap.points[name] for name in ("hip", "knee", "hand"))
    assert hip[0] < hand[0]
    assert hand[1] > max(hip[1], knee[1]) - BAG_HALF
    up = posed(Pose.model_validate({"pose": "standing", "load-on": "shoulder"}), "bag")
    shoulder = up.points["shoulder"]
    assert up.points["hand"][1] > shoulder[1] > up.points["far hand"][1] > shoulder[1] - 0.06
    assert min(up.points["hand"][0], up.points["far hand"][0]) > shoulder[0] + 0.1
