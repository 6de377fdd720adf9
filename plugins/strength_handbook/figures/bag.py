"""A bag: on the floor or in the arms, on the lap, on a shoulder."""

from math import atan2, degrees

from strength_handbook.figures.body import BAG_HALF, THIGH_HALF
from strength_handbook.figures.chain import Point, Points, along
from strength_handbook.figures.outlines import SCALE, middle_of, place
from strength_handbook.model.figure import Pose

_ON_LAP = 1.35
"""How much longer than high it is from its end, pressed between chest and thighs; drawn by eye."""
_ON_SHOULDER = 0.016
"""How far its middle is above the shoulder's joint, statures: its lower side lies on the muscle."""


def bag_place(points: Points, pose: Pose) -> Point:
    """Where its middle is."""
    match pose.load_on:
        case "lap":
            on_thigh = middle_of(points["hip"], points["knee"], 0.70)
            return along(on_thigh, _thigh(points) + 90, THIGH_HALF + 0.8 * BAG_HALF)
        case "shoulder":
            return along(points["shoulder"], _trunk(points), _ON_SHOULDER)
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
            return x + 0.110, y + 0.035
        case _:
            return None


def far_grip(points: Points, pose: Pose) -> Point | None:
    """Where the other hand is, where it is not beside the near one: under the bag's front end."""
    if pose.load_on != "shoulder":
        return None
    x, y = bag_place(points, pose)
    return x + 0.165, y - 0.050


def _trunk(points: Points) -> float:
    hip, shoulder = points["hip"], points["shoulder"]
    return degrees(atan2(shoulder[1] - hip[1], shoulder[0] - hip[0]))


def _thigh(points: Points) -> float:
    """Which way the thigh points, degrees."""
    hip, knee = points["hip"], points["knee"]
    return degrees(atan2(knee[1] - hip[1], knee[0] - hip[0]))


def draw_bag(points: Points, pose: Pose) -> str:
    """Its outline: from its end, or lengthwise and bent over the near shoulder."""
    x, y = place(bag_place(points, pose))
    half = BAG_HALF * SCALE
    if pose.load_on == "shoulder":
        return (
            f'<path class="kit" transform="translate({x:.0f} {y:.0f}) '
            f'rotate({90 - _trunk(points):.0f})" d="M-51 34C-57 4-42-15-22-18'
            "Q4-22 28-19C52-15 68 6 65 38C63 54 36 54 32 38Q29 18 18 12H-14Q-20 14-22 34"
            'C-24 49-48 49-51 34z"/>'
        )
    turn = -_thigh(points) if pose.load_on == "lap" else 0.0
    long = (_ON_LAP if pose.load_on == "lap" else 1.25) * half
    return (
        f'<g class="kit" transform="translate({x:.0f} {y:.0f}) rotate({turn:.0f})">'
        f'<rect x="{-long:.0f}" y="{-half:.0f}" width="{2 * long:.0f}" height="{2 * half:.0f}" '
        f'rx="{0.8 * half:.0f}"/></g>'
    )
