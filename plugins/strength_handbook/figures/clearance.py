"""Where there is room for an arrow or a number beside a body."""

from collections.abc import Iterable, Sequence
from itertools import pairwise
from math import hypot

from strength_handbook.figures.body import THIGH_HALF, TORSO_HALF
from strength_handbook.figures.chain import Point, Points, distance
from strength_handbook.figures.closeness import gap

Circles = Sequence[tuple[Point, float]]
"""Middles and radii."""

# Upper end, lower end, half width of each as the outlines have them at their widest.
_LIMBS = (
    ("hip", "knee", THIGH_HALF + 0.012, 0.038),
    ("knee", "ankle", 0.045, 0.024),
    ("heel", "toe", 0.035, 0.03),
    ("shoulder", "elbow", 0.04, 0.028),
    ("elbow", "hand", 0.032, 0.028),
)
_STEP, _STEPS = 0.015, 19
"""How far a way is moved at a time, and how often."""
_FREE = 0.028
"""How far from a body an arrow's middle has to be, statures."""


def clear(place: Point, bodies: Iterable[Points], circles: Circles = ()) -> float:
    """How far a place is from bodies and from round things; less than nought is inside."""
    found = [distance(place, middle) - radius for middle, radius in circles]
    for points in bodies:
        found.append(distance(place, points["head"]) - 0.075)
        found.append(
            gap(place, points["hip"], points["shoulder"], TORSO_HALF + 0.012, TORSO_HALF + 0.012)
        )
        found += [
            gap(place, points.get(side + upper, points[upper]), points[side + lower], wide, narrow)
            for side in ("", "far ")
            for upper, lower, wide, narrow in _LIMBS
        ]
    return min(found)


def beside(way: Sequence[Point], bodies: Sequence[Points], circles: Circles = ()) -> list[Point]:
    """A way moved sideways as little as keeps it off bodies and floor, ahead or above first.

    It stays where it is when there is no room near by.
    """
    (ax, ay), (bx, by) = way[0], way[-1]
    length = hypot(bx - ax, by - ay)
    across = (by - ay) / length, (ax - bx) / length
    if across[0] + 0.5 * across[1] < 0:
        across = -across[0], -across[1]
    dense = [point for one, two in pairwise(way) for point in _between(one, two)]

    def is_free(off: float) -> bool:
        return min(y + off * across[1] for _, y in way) > _FREE and all(
            clear((x + off * across[0], y + off * across[1]), bodies, circles) > _FREE
            for x, y in dense
        )

    offs = [0.0] + [sign * step * _STEP for step in range(1, _STEPS) for sign in (1, -1)]
    off = next(filter(is_free, offs), 0.0)
    return [(x + off * across[0], y + off * across[1]) for x, y in way]


def _between(one: Point, two: Point, steps: int = 4) -> list[Point]:
    return [
        (one[0] + share / steps * (two[0] - one[0]), one[1] + share / steps * (two[1] - one[1]))
        for share in range(steps + 1)
    ]
