"""Pads that a trunk lies or leans on: one under the chest, and the back of a bench that tips."""

from math import atan2, cos, degrees, radians

from strength_handbook.figures.chain import Point, Points
from strength_handbook.figures.outlines import line

_CHEST, _BACK = 0.094, -0.085
"""From the trunk's middle to the middle of a pad before it, and of one behind it, statures."""
_CHEST_ENDS = 0.06, 0.30
"""Where a pad under the chest begins and ends, up from the hip: its upper end is below the chin."""
_BACK_ENDS = 0.02, 0.43
"""The same of a pad behind back and head."""
_SEAT = 0.085
"""From the hip down to the middle of the seat under it."""
_SEAT_AHEAD, _SEAT_BACK = 0.13, 0.05
_BASE, _LOW = 0.15, 0.02
"""Half of the length of the beam on the floor, and how high it is."""
PADS = {"chest-rest": (15.0, 90.0), "adjustable-bench": (-90.0, 0.0)}
"""How far a trunk leans that lies on each, degrees from upright, forward."""


def pad(thing: str, points: Points) -> tuple[Point, Point]:
    """Both ends of the pad that the trunk is on, the lower first; statures."""
    off, (low, high) = (_CHEST, _CHEST_ENDS) if thing == "chest-rest" else (_BACK, _BACK_ENDS)
    return _on_trunk(points, low, off), _on_trunk(points, high, off)


def _on_trunk(points: Points, up: float, off: float) -> Point:
    """A place along the trunk from the hip, and off it to the front."""
    hip, shoulder = points["hip"], points["shoulder"]
    turned = atan2(shoulder[1] - hip[1], shoulder[0] - hip[0])
    x, y = cos(turned), cos(radians(90) - turned)
    return hip[0] + up * x + off * y, hip[1] + up * y - off * x


def lean_of(points: Points) -> float:
    """How far a trunk leans from upright, degrees forward.

    >>> round(lean_of({"hip": (0, 0), "shoulder": (0.5, 0)}))
    90
    """
    hip, shoulder = points["hip"], points["shoulder"]
    return 90 - degrees(atan2(shoulder[1] - hip[1], shoulder[0] - hip[0]))


def draw_pad(thing: str, points: Points) -> str:
    """The pad with its frame: a post under a chest, or a seat and the hinge of a back."""
    low, high = pad(thing, points)
    middle = (low[0] + high[0]) / 2, (low[1] + high[1]) / 2
    if thing == "chest-rest":
        at = middle[0]
        posts = [(middle, (at, _LOW)), ((at - _BASE, _LOW), (at + _BASE, _LOW))]
        planks = [(low, high)]
    else:
        hip = points["hip"]
        seat = hip[1] - _SEAT
        ends = (hip[0] + _SEAT_AHEAD, seat), (hip[0] - _SEAT_BACK, seat)
        front, rear = hip[0] + 0.07, min(middle[0], hip[0] - _BASE)
        posts = [
            ((front, seat), (front, 0.0)),
            ((rear, _LOW), (front, _LOW)),
            (middle, (rear, _LOW)),
        ]
        planks = [ends, (low, high)]
    return (
        f'<path class="post" d="{"".join(line(ends) for ends in posts)}"/>'
        f'<path class="plank" d="{"".join(line(ends) for ends in planks)}"/>'
    )
