"""What a coach leaves out follows from support, balance and contacts."""

from math import atan2, degrees

import pytest

from strength_handbook.figures.bases import BASES, Support
from strength_handbook.figures.body import BALL, STATURE
from strength_handbook.figures.chain import balance
from strength_handbook.figures.closeness import clear_of_body
from strength_handbook.figures.on_foot import MIDDLE_OF_FOOT
from strength_handbook.figures.posing import Posed, posed
from strength_handbook.model.figure import Held, Pose


def pose(held: Held = "nothing", **keys: object) -> Posed:
    return posed(
        Pose.model_validate({key.replace("_", "-"): key_ for key, key_ in keys.items()}), held
    )


@pytest.mark.parametrize("name", ["standing", "squat", "hinge"])
@pytest.mark.parametrize("held", ["nothing", "bar", "bells"])
def test_a_standing_body_has_its_balance_over_the_middle_of_the_foot(name: str, held: Held) -> None:
    one = pose(held, pose=name, shoulder=40)
    assert one.unsolved == ""
    assert balance(one.points, held) == pytest.approx(MIDDLE_OF_FOOT, abs=1e-4)


@pytest.mark.parametrize("name", list(BASES))
def test_every_base_pose_can_be_taken_as_it_is(name: str) -> None:
    rest = {"hands": "2.2 m"} if name == "hanging" else {}
    rest |= {"ground": "90 cm"} if name == "on-slanted-bench" else {}
    rest |= {"ground": "45 cm"} if name == "seated" else {}
    one = posed(Pose.model_validate({"pose": name, **rest}), "nothing")
    assert one.unsolved == ""
    assert min(y for _, y in one.points.values()) > -0.03


def test_the_standing_foot_stays_where_it_is() -> None:
    for name in (name for name, base in BASES.items() if base.support is Support.FOOT):
        assert pose(pose=name).points["ball"] == pytest.approx((BALL, 0.0))


@pytest.mark.parametrize("high", [30, 45, 60])
def test_hands_come_as_low_as_written(high: float) -> None:
    for held in ("bar", "bells"):
        one = pose(held, pose="hinge", knee=125, hands=f"{high} cm")
        assert one.points["hand"][1] * STATURE * 100 == pytest.approx(high, abs=0.1)


def test_a_bar_stays_against_the_legs_all_the_way() -> None:
    for high in (75, 60, 48):
        one = pose("bar", pose="hinge", knee=160, hands=f"{high} cm")
        assert clear_of_body(one.points, one.points["hand"]) == pytest.approx(0, abs=1e-3)


@pytest.mark.parametrize(("knee", "ankle"), [(90, 88), (125, 80), (70, 65)])
def test_the_asked_angle_is_the_drawn_one(knee: float, ankle: float) -> None:
    one = pose(pose="squat", knee=knee, ankle=ankle)
    (ax, ay), (bx, by), (cx, cy) = (one.points[name] for name in ("hip", "knee", "ankle"))
    between = degrees(atan2(ay - by, ax - bx) - atan2(cy - by, cx - bx)) % 360
    assert min(between, 360 - between) == pytest.approx(knee, abs=1e-6)
    assert one.ankle == pytest.approx(ankle, abs=1e-6)


def test_the_far_foot_reaches_its_ground() -> None:
    for high in (0, 40):
        one = pose(pose="split-stance", knee=120, far_knee=95, far_heel=60, far_foot=f"{high} cm")
        assert one.points["far ball"][1] * STATURE * 100 == pytest.approx(high, abs=0.1)


def test_heels_lie_on_the_box_with_hips_down_and_up() -> None:
    for name, knee in (("on-back", 100), ("bridge", 110)):
        one = pose(pose=name, knee=knee, feet="40 cm")
        assert one.points["heel"][1] * STATURE == pytest.approx(0.4, abs=0.001)
