"""A bar in front of the body stays against it: how far the arms reach for that."""

from dataclasses import replace
from math import hypot

from strength_handbook.figures.body import ANKLE_HALF, KNEE_HALF, THIGH_HALF, TORSO_HALF
from strength_handbook.figures.chain import Angles, Point, Points, joints
from strength_handbook.figures.roots import root

BAR_HALF = 0.019
"""Half of a bar's thickness with the fingers round it, as its sleeve is drawn; statures."""

_PARTS = (
    ("hip", "shoulder", TORSO_HALF, TORSO_HALF),
    ("hip", "knee", THIGH_HALF + 0.018, KNEE_HALF + 0.007),
    ("knee", "ankle", KNEE_HALF + 0.006, ANKLE_HALF + 0.003),
)


def clear_of_body(points: Points, place: Point) -> float:
    """How far a bar is from trunk and near leg; less than nought is inside.

    Args:
        points: all joints.
        place: the bar's middle.
    """
    return min(
        gap(place, points[upper], points[lower], wide, narrow) - BAR_HALF
        for upper, lower, wide, narrow in _PARTS
    )


def gap(place: Point, upper: Point, lower: Point, wide: float, narrow: float) -> float:
    """How far a point is from a limb: a line with a half width at each end; inside is negative."""
    across, up = lower[0] - upper[0], lower[1] - upper[1]
    share = ((place[0] - upper[0]) * across + (place[1] - upper[1]) * up) / (across**2 + up**2)
    share = min(max(share, 0.0), 1.0)
    off = hypot(place[0] - upper[0] - share * across, place[1] - upper[1] - share * up)
    return off - (wide + share * (narrow - wide))


def close_shoulder(shape: Angles) -> float:
    """The shoulder's angle with which straight arms hold a bar against the front of the body.

    The arms come back from ahead until the bar touches, at most to 40 degrees behind plumb.
    """
    plumb = shape.lean

    def clear(angle: float) -> float:
        points = joints(replace(shape, arm=replace(shape.arm, shoulder=angle)))
        return clear_of_body(points, points["hand"])

    found = root(clear, plumb + 70, plumb - 40)
    return plumb if found is None else found
