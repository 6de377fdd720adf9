"""Arms whose hands have a place: shoulder and elbow from two lengths and a distance."""

from math import acos, atan2, cos, degrees, radians

from strength_handbook.figures.body import FOREARM, GRIP, UPPER_ARM
from strength_handbook.figures.chain import Arm, Point, distance

LOWER = FOREARM + GRIP
"""From the elbow to the middle of the closed hand, which is in line with the forearm."""


def straight_reach() -> float:
    """How far an arm reaches that is straight but for a degree or two, statures."""
    return UPPER_ARM + LOWER - 1e-4


def reaching_arm(shoulder: Point, lean: float, hand: Point, out: float = 0.0) -> Arm:
    """The arm whose hand is at a place; straight towards it where that is out of reach.

    An elbow bends forwards only, so there is one such arm.

    Args:
        shoulder: where the shoulder is.
        lean: of the trunk, degrees from upright.
        hand: where the hand has to be.
        out: how far the elbow points out of the picture, degrees.

    >>> reaching_arm((0, 1), 0, (UPPER_ARM, 1 - LOWER)).elbow  # hanging forearm, level upper arm
    90.0
    """
    apart = distance(shoulder, hand)
    towards = degrees(atan2(hand[1] - shoulder[1], hand[0] - shoulder[0]))
    upper = UPPER_ARM * cos(radians(out))
    elbow = _between(upper, LOWER, apart)
    off = _between(upper, apart, LOWER) if apart else 0.0
    turned = (towards - off) - (90 - lean) + 180
    return Arm((turned + 170) % 360 - 170, round(elbow, 9), out)


def _between(one: float, other: float, opposite: float) -> float:
    """The angle between two sides of a triangle, degrees, from all three."""
    cosine = (one**2 + other**2 - opposite**2) / (2 * one * other)
    return degrees(acos(min(max(cosine, -1.0), 1.0)))
