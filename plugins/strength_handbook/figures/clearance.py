"""Where there is room for an arrow or a number beside a body."""

from collections.abc import Iterable, Iterator, Sequence
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
_PLACES = [(across * 0.015, along * 0.05) for across in range(-27, 28) for along in range(-3, 4)]
"""How far a way may be moved, to its side and along itself, statures."""
_ALONG, _BEHIND = 1.5, 0.3
"""What a move along itself and one behind the body count against one to the side ahead."""
_TIP = 0.022
"""How far an arrow's tip goes beyond the end of its way, statures, as it is drawn."""
_CLOSE = 0.03
"""How far apart round things are that stand for a line."""
_FREE = 0.028
"""How far from a body an arrow's middle has to be, statures."""


def row(ends: Sequence[Point], radius: float) -> list[tuple[Point, float]]:
    """Round things close enough together that no arrow comes through a line.

    Args:
        ends: the points of the line.
        radius: half of its thickness.
    """
    found: list[tuple[Point, float]] = []
    for one, two in pairwise(ends):
        found += [(point, radius) for point in _close(one, two)]
    return found


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


def beside(
    way: Sequence[Point],
    bodies: Sequence[Points],
    circles: Circles = (),
    *,
    ahead: bool = False,
    slides: bool = True,
) -> list[Point]:
    """A way moved as little as keeps it off bodies, round things and floor, sideways first.

    Where nothing near by is free, it goes where most room is.

    Args:
        way: its points.
        bodies: everybody who has to stay visible.
        circles: round things that have to stay visible.
        ahead: try everything ahead or above before anything behind or below.
        slides: it may be moved along itself, too.
    """
    (ax, ay), (bx, by) = way[0], way[-1]
    length = hypot(bx - ax, by - ay)
    level = (bx - ax) / length, (by - ay) / length
    across = level[1], -level[0]
    if across[0] + 0.5 * across[1] < 0:
        across = -across[0], -across[1]

    def put(off: float, on: float) -> list[Point]:
        by_x, by_y = off * across[0] + on * level[0], off * across[1] + on * level[1]
        return [(x + by_x, y + by_y) for x, y in way]

    def rooms(points: Sequence[Point]) -> Iterator[float]:
        yield min(y for _, y in points)
        for one, two in pairwise(points):
            yield from (clear(point, bodies, circles) for point in _close(one, two))
        (x, y), (to_x, to_y) = points[-2:]
        on = _TIP / max(distance(points[-2], points[-1]), _TIP)
        yield clear((to_x + on * (to_x - x), to_y + on * (to_y - y)), bodies, circles)

    def cost(place: tuple[float, float]) -> tuple[float, bool]:
        off, on = place
        return abs(off) + _ALONG * abs(on) + (_BEHIND if ahead and off < 0 else 0.0), off < 0

    places = [place for place in _PLACES if slides or not place[1]]
    for place in sorted(places, key=cost):
        moved = put(*place)
        if all(room > _FREE for room in rooms(moved)):
            return moved
    sideways = (put(*place) for place in places if not place[1])
    return max(sideways, key=lambda moved: min(rooms(moved)))


def _close(one: Point, two: Point) -> list[Point]:
    """Points of a line that nothing fits between."""
    steps = max(1, round(distance(one, two) / _CLOSE))
    return [
        (one[0] + share / steps * (two[0] - one[0]), one[1] + share / steps * (two[1] - one[1]))
        for share in range(steps + 1)
    ]
