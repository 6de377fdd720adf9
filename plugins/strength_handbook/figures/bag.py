"""A bag: on the floor or in the arms, on the lap, on a shoulder."""

from math import atan2, degrees

from strength_handbook.figures.body import BAG_HALF, THIGH_HALF
from strength_handbook.figures.chain import Point, Points, along
from strength_handbook.figures.outlines import SCALE, middle_of, place
from strength_handbook.model.figure import Pose

_LONG = 0.15
"""Half of its length, statures."""


def bag_place(points: Points, pose: Pose) -> Point:
    """Where its middle is."""
    match pose.load_on:
        case "lap":
            on_thigh = middle_of(points["hip"], points["knee"], 0.70)
            return along(on_thigh, _thigh(points) + 90, THIGH_HALF + 0.8 * BAG_HALF)
        case "shoulder":
            x, y = points["shoulder"]
            return x, y + 0.070
        case _:
            x, y = middle_of(points["hand"], points["far hand"])
            return x, max(y, BAG_HALF)


def bag_grip(points: Points, pose: Pose) -> Point | None:
    """Where a hand is that keeps the bag there; None where the hands say where the bag is."""
    match pose.load_on:
        case "lap":
            return along(bag_place(points, pose), _thigh(points), 1.2 * BAG_HALF)
        case "shoulder":
            x, y = bag_place(points, pose)
            return x + 0.115, y + 0.055
        case _:
            return None


def _thigh(points: Points) -> float:
    """Which way the thigh points, degrees."""
    hip, knee = points["hip"], points["knee"]
    return degrees(atan2(knee[1] - hip[1], knee[0] - hip[0]))


def draw_bag(points: Points, pose: Pose) -> str:
    """Its outline: lengthwise, bent over a shoulder, or from its end on the lap."""
    x, y = place(bag_place(points, pose))
    half, long = BAG_HALF * SCALE, _LONG * SCALE
    if pose.load_on == "shoulder":
        return (
            f'<path class="kit" transform="translate({x:.0f} {y:.0f}) " '
            'd="M-64 14C-66-6-54-18-38-21Q0-30 38-21C54-18 66-6 64 14'
            'C66 40 50 44 40 36Q34 20 18 18H-18Q-34 20-40 36C-50 44-66 40-64 14z"/>'
        )
    turn = -_thigh(points) if pose.load_on == "lap" else 0.0
    if pose.load_on == "lap":
        long = 1.35 * half
    return (
        f'<rect class="kit" transform="translate({x:.0f} {y:.0f}) rotate({turn:.0f})" '
        f'x="{-long:.0f}" y="{-half:.0f}" width="{2 * long:.0f}" height="{2 * half:.0f}" '
        f'rx="{0.8 * half:.0f}"/>'
    )
