"""What is drawn upon a body: the way of the moved part, a push, an angle with its number."""

from collections.abc import Sequence
from math import atan2, degrees

from strength_handbook.figures.chain import Point, Points, along, distance
from strength_handbook.figures.clearance import Circles, clear
from strength_handbook.figures.outlines import SCALE, line, place
from strength_handbook.model.figure import Joint

SHORT = 0.07
"""A way that is shorter needs no arrow, statures."""
_PUSH = 0.07
PUSH_AHEAD = 0.072
"""How far ahead of the bar its arrow is: clear of bar and fist, statures."""
_FRAME_END = 0.014
"""How far from the end of a frame its arrow is, statures."""
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


def push_ahead(frame: float) -> float:
    """How far ahead of a bar the arrow of a push is, statures; argument as of `push`."""
    return frame - _FRAME_END if frame else PUSH_AHEAD


def push(bar: Point, stop: float, frame: float = 0.0) -> str:
    """A stop over a bar, hatched as what stands fast is, and a short solid arrow up against it.

    Args:
        bar: what presses against the stop.
        stop: how high the stop's middle is, statures.
        frame: how far a frame round the lifter reaches ahead of the bar; its end has the arrow.
    """
    x, y = place((bar[0], stop))
    ahead = x + push_ahead(frame) * SCALE
    begin = ahead - 26 if frame else x - 16  # over a leg it would hide what it stops
    path = f"M{begin:.0f} {y:.0f}h{ahead - begin + 22:.0f}"
    fast = "".join(f"M{ahead + off:.0f} {y - 7:.0f}l9-10" for off in (-12, -1, 10))
    shaft = f"M{ahead:.0f} {y + 24:.0f}v{_PUSH * SCALE:.0f}"
    return (
        f'<path class="halo" d="{shaft}"/><path class="fast" d="{fast}"/>'
        f'<path class="push" d="{path}{shaft}"/>' + _TIP.format(ahead, y + 17, -90)
    )


_AT = {
    "ankle": ("knee", "ankle", "toe"),
    "knee": ("hip", "knee", "ankle"),
    "hip": ("shoulder", "hip", "knee"),
    "shoulder": ("hip", "shoulder", "elbow"),
    "elbow": ("shoulder", "elbow", "wrist"),
}
_RADIUS, _ARC_STEP = 0.15, 6
"""Of an angle's arc, statures, which is beyond both limbs; and degrees from point to point."""
_EDGE, _SCRAP = 0.006, 0.07
"""How far an arc stays off limbs, and one that is shorter is left out; statures."""
_LETTERS = 0.075
"""Half of a number's width with its sign, statures."""


def angle(joint: Joint, points: Points, bodies: Sequence[Points], circles: Circles) -> str:
    """An arc between two parts of the body, and its number where no limb is."""
    first, at, second = (points[name] for name in _AT[joint])
    a = degrees(atan2(first[1] - at[1], first[0] - at[0]))
    b = degrees(atan2(second[1] - at[1], second[0] - at[0]))
    turn = (b - a + 180) % 360 - 180
    tx, ty = place(number_place(at, a + turn / 2, bodies, circles))
    arc = _free_arc(at, a, turn, bodies, circles)
    return (
        f'<path class="arc" d="{line(arc)}"/>' if arc else ""
    ) + f'<text class="deg" x="{tx:.0f}" y="{ty + 7:.0f}">{abs(turn):.0f}°</text>'


def _free_arc(
    at: Point, begin: float, turn: float, bodies: Sequence[Points], circles: Circles
) -> list[Point]:
    """As much of an arc as no limb or load is under; nothing where that is a scrap."""
    steps = max(1, round(abs(turn) / _ARC_STEP))
    dense = [along(at, begin + turn * step / steps, _RADIUS) for step in range(steps + 1)]
    free = [step for step, one in enumerate(dense) if clear(one, bodies[:1]) > _EDGE]
    if not free or any(clear(dense[step], bodies, circles) < _EDGE for step in free):
        return []
    arc = [dense[step] for step in free]
    return arc if distance(arc[0], arc[-1]) > _SCRAP else []


def number_place(
    at: Point, middle: float, bodies: Sequence[Points], circles: Circles = ()
) -> Point:
    """The nearest place beside a joint that is clear of every limb: inside the angle, or outside.

    Args:
        at: the joint.
        middle: which way the angle opens, degrees.
        bodies: everybody who has to stay visible.
        circles: round things that have to stay visible.
    """
    sides = (0, 20, -20, 180, 160, 200, 140, 220)
    places = [along(at, middle + side, far / 100) for far in range(12, 30) for side in sides]
    return next(
        (one for one in places if clear(one, bodies, circles) > _LETTERS),
        max(places, key=lambda one: clear(one, bodies, circles)),
    )
