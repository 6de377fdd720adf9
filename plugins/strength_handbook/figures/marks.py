"""What is drawn upon a body: the way of the moved part, a push, an angle with its number."""

from collections.abc import Sequence
from math import atan2, degrees

from strength_handbook.figures.chain import Point, Points, along
from strength_handbook.figures.clearance import Circles, clear
from strength_handbook.figures.outlines import SCALE, line, place
from strength_handbook.model.figure import Joint

SHORT = 0.07
"""A way that is shorter needs no arrow, statures."""
_PUSH = 0.13
_TIP = '<path class="tip" transform="translate({:.0f} {:.0f}) rotate({:.0f})" d="M8 0L-10-9V9z"/>'


def arrow(way: Sequence[Point]) -> str:
    """A dashed way with a light edge, a dot where it begins, and a tip where it ends."""
    first_x, first_y = place(way[0])
    path = line(way)
    return (
        f'<path class="halo" d="{path}"/><path class="way" d="{path}"/>'
        f'<circle class="from" cx="{first_x:.0f}" cy="{first_y:.0f}" r="5"/>' + tip(way)
    )


def tip(way: Sequence[Point]) -> str:
    """The tip at the end of a way."""
    (from_x, from_y), (x, y) = place(way[-2]), place(way[-1])
    return _TIP.format(x, y, degrees(atan2(y - from_y, x - from_x)))


def push(at: Point) -> str:
    """A solid arrow up: a push against something that doesn't move.

    Args:
        at: where its tip is.
    """
    x, y = place(at)
    return (
        f'<path class="halo" d="M{x:.0f} {y:.0f}v{_PUSH * SCALE:.0f}"/>'
        f'<path class="push" d="M{x:.0f} {y + 8:.0f}v{_PUSH * SCALE:.0f}"/>'
    ) + _TIP.format(x, y, -90)


_AT = {
    "ankle": ("knee", "ankle", "toe"),
    "knee": ("hip", "knee", "ankle"),
    "hip": ("shoulder", "hip", "knee"),
    "shoulder": ("hip", "shoulder", "elbow"),
    "elbow": ("shoulder", "elbow", "wrist"),
}
_RADIUS = 0.085
_LETTERS = 0.075
"""Half of a number's width with its sign, statures."""


def angle(joint: Joint, points: Points, bodies: Sequence[Points], circles: Circles) -> str:
    """An arc between two parts of the body, and its number where no limb is."""
    first, at, second = (points[name] for name in _AT[joint])
    a = degrees(atan2(first[1] - at[1], first[0] - at[0]))
    b = degrees(atan2(second[1] - at[1], second[0] - at[0]))
    turn = (b - a + 180) % 360 - 180
    begin, end = place(along(at, a, _RADIUS)), place(along(at, b, _RADIUS))
    tx, ty = place(number_place(at, a + turn / 2, bodies, circles))
    size = round(_RADIUS * SCALE)
    return (
        f'<path class="arc" d="M{begin[0]:.0f} {begin[1]:.0f}A{size} {size} 0 0 '
        f'{0 if turn > 0 else 1} {end[0]:.0f} {end[1]:.0f}"/>'
        f'<text class="deg" x="{tx:.0f}" y="{ty + 7:.0f}">{abs(turn):.0f}°</text>'
    )


def number_place(
    at: Point, middle: float, bodies: Sequence[Points], circles: Circles = ()
) -> Point:
    """The nearest place beside a joint that is clear of every limb: outside the angle, or inside.

    Args:
        at: the joint.
        middle: which way the angle opens, degrees.
        bodies: everybody who has to stay visible.
        circles: round things that have to stay visible.
    """
    sides = (180, 160, 200, 140, 220, 0, 20, -20)
    places = [along(at, middle + side, far / 100) for far in range(10, 28) for side in sides]
    return next(
        (one for one in places if clear(one, bodies, circles) > _LETTERS),
        max(places, key=lambda one: clear(one, bodies, circles)),
    )
