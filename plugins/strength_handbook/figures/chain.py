"""From angles to joints: a chain of straight segments in one plane, seen from the right side.

Lengths are shares of stature; x counts ahead, y up from the floor. Directions are degrees from
straight ahead, anticlockwise.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from math import cos, hypot, radians, sin

from strength_handbook.figures.body import (
    ANKLE_HEIGHT,
    BALL,
    FOOT,
    FOREARM,
    GRIP,
    HEAD_UP,
    HEEL,
    LOAD,
    MASSES,
    NECK,
    SHANK,
    THIGH,
    TRUNK,
    UPPER_ARM,
)

Point = tuple[float, float]
"""Ahead and up."""
Points = Mapping[str, Point]
"""Joints by name; those of the far limbs begin with `far `."""


@dataclass(frozen=True, slots=True)
class Leg:
    """A leg by its angles: knee and hip between segments, the foot as a direction.

    Attributes:
        knee, hip: 180 is straight.
        foot: where the sole points, from straight ahead; down is negative.
        toes: how far they are bent up from the sole.
    """

    knee: float
    hip: float
    foot: float = 0.0
    toes: float = 0.0


@dataclass(frozen=True, slots=True)
class Arm:
    """An arm by its angles; no shoulder hangs straight down.

    Attributes:
        shoulder, elbow: in the plane of the picture.
        out: how far the elbow points out of the picture, towards the onlooker; the upper arm is
            seen shorter by that.
        across: how far the forearm points into the picture; it is seen shorter, too.
    """

    shoulder: float | None
    elbow: float
    out: float = 0.0
    across: float = 0.0


@dataclass(frozen=True, slots=True)
class Angles:
    """All angles of a body.

    Attributes:
        lean: of the trunk from upright, degrees forward.
        head: of the head from upright, degrees forward.
        near, far: the legs.
        arm, far_arm: the arms.
        shrug: how far both shoulders are lifted along the trunk, statures.
    """

    lean: float
    head: float
    near: Leg
    far: Leg
    arm: Arm
    far_arm: Arm
    shrug: float = 0.0


def along(start: Point, direction: float, length: float) -> Point:
    """The point at some distance in a direction.

    >>> x, y = along((1, 1), 90, 2)
    >>> round(x, 9), round(y, 9)
    (1.0, 3.0)
    """
    turned = radians(direction)
    return start[0] + length * cos(turned), start[1] + length * sin(turned)


def moved(points: Points, by: Point) -> dict[str, Point]:
    """All points, moved."""
    return {name: (x + by[0], y + by[1]) for name, (x, y) in points.items()}


def distance(one: Point, other: Point) -> float:
    """How far two points are apart."""
    return hypot(one[0] - other[0], one[1] - other[1])


def joints(shape: Angles) -> dict[str, Point]:
    """All points of a body whose hip is at nought.

    >>> from strength_handbook.figures.chain import Arm, Leg, Angles
    >>> leg, arm = Leg(180, 180), Arm(0, 180)
    >>> standing = joints(Angles(0, 0, leg, leg, arm, arm))
    >>> round(standing["shoulder"][1] - standing["ball"][1], 3)  # shoulder height in Winter
    0.818
    """
    trunk = 90 - shape.lean
    hip: Point = (0.0, 0.0)
    shoulder = along(hip, trunk, TRUNK)
    skull = 90 - shape.head
    neck = along(shoulder, (trunk + skull) / 2, NECK)
    shoulder = along(shoulder, trunk, shape.shrug)  # neck and head stay where they are
    found = {
        "hip": hip,
        "shoulder": shoulder,
        "neck": neck,
        "head": along(neck, skull, HEAD_UP - NECK),
    }
    for side, leg, arm in (("", shape.near, shape.arm), ("far ", shape.far, shape.far_arm)):
        limbs = _leg(hip, trunk, leg) | _arm(shoulder, trunk, arm)
        found |= {side + name: point for name, point in limbs.items()}
    return found


def _leg(hip: Point, trunk: float, leg: Leg) -> dict[str, Point]:
    thigh = trunk - leg.hip
    knee = along(hip, thigh, THIGH)
    ankle = along(knee, thigh - (180 - leg.knee), SHANK)
    sole = along(ankle, leg.foot - 90, ANKLE_HEIGHT)
    return {
        "knee": knee,
        "ankle": ankle,
        "heel": along(sole, leg.foot, -HEEL),
        "ball": (ball := along(sole, leg.foot, BALL)),
        "toe": along(ball, leg.foot + leg.toes, FOOT - HEEL - BALL),
    }


def _arm(shoulder: Point, trunk: float, arm: Arm) -> dict[str, Point]:
    upper = -90 if arm.shoulder is None else trunk - 180 + arm.shoulder
    elbow = along(shoulder, upper, UPPER_ARM * cos(radians(arm.out)))
    fore = upper + (180 - arm.elbow)
    seen = cos(radians(arm.across))
    wrist = along(elbow, fore, FOREARM * seen)
    return {"elbow": elbow, "wrist": wrist, "hand": along(wrist, fore, GRIP * seen)}


_SEGMENTS = (
    ("trunk", "hip", "shoulder", True),
    ("head", "shoulder", "head", True),
    ("thigh", "hip", "knee", False),
    ("shank", "knee", "ankle", False),
    ("foot", "heel", "toe", False),
    ("upper arm", "shoulder", "elbow", False),
    ("forearm", "elbow", "wrist", False),
)
_FROM_BELOW = {"trunk"}


def balance(points: Points, held: str = "nothing") -> float:
    """Where the middle of body and load is, ahead.

    Args:
        points: all joints.
        held: what is in the hands.
    """
    total, moment = 0.0, 0.0
    for name, upper, lower, once in _SEGMENTS:
        mass, share = MASSES[name]
        for side in ("",) if once else ("", "far "):
            one = points.get(side + upper, points[upper])[0]
            other = points[side + lower][0]
            if name in _FROM_BELOW:
                one, other = other, one
            total += mass
            moment += mass * (one + share * (other - one))
    load = LOAD.get(held, 0.0)
    hands = (points["hand"][0] + points["far hand"][0]) / 2
    if held == "dumbbell":
        hands = points["hand"][0]
    if held == "yoke-bar":
        hands = points["shoulder"][0]
    return (moment + load * hands) / (total + load)
