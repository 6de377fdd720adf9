"""Where the moved part of a figure goes from one moment to the next."""

from collections.abc import Sequence

from strength_handbook.figures.bag import bag_place
from strength_handbook.figures.bars import bar_place
from strength_handbook.figures.bases import Support
from strength_handbook.figures.body import STATURE
from strength_handbook.figures.chain import Angles, Arm, Leg, Point, Points, distance, joints, moved
from strength_handbook.figures.marks import SHORT
from strength_handbook.figures.outlines import middle_of
from strength_handbook.figures.posing import Posed, posed
from strength_handbook.figures.pulling import sled_end
from strength_handbook.model.figure import Figure

MOVED = {"hips": "hip", "knees": "knee", "feet": "heel", "head": "head"}


def way_of(start: Posed, turn: Posed, figure: Figure) -> Sequence[Point]:
    """The way of the moved part: straight where feet and weight see to it, else as joints turn."""
    if figure.moves in ("push", "nothing"):
        return []
    if figure.moves == "load" and figure.holds == "bag":
        return [bag_place(one.points, one.pose) for one in (start, turn)]
    ends = [sled_end(figure, one) for one in (start, turn)]
    if figure.moves == "load" and ends[0] and ends[1]:
        return [point for point in ends if point]
    if figure.moves == "hips" and turn.base.support is Support.SHOULDERS:
        return _under_hips(start, turn)
    if figure.moves == "hips" and _lands(start, turn):
        return _flight(start, turn)
    straight = start.fixed in ("ball", "hand") or figure.moves == "load"
    swung = swings(figure)
    steps = 8 if swung or not straight else 1
    if start.fixed != turn.fixed:
        return [_moving(one.points, figure) for one in (start, turn)]
    if turn.pose.pose == "walking":  # a carry: ahead, at the height of the chest
        x, y = turn.points["shoulder"]
        return [(x + _AHEAD, y - _CHEST), (x + _AHEAD + _CARRIED, y - _CHEST)]
    points = [_moving(_between(start, turn, step / steps), figure) for step in range(steps + 1)]
    return _short_of(points, _BELL) if swung else points


def swings(figure: Figure) -> bool:
    """A bell comes from behind the knees, between the thighs: its way is that of the arms."""
    start = posed(figure.start, figure.holds).points
    return figure.holds == "bell" and start["hand"][0] < start["knee"][0]


def _lands(start: Posed, turn: Posed) -> bool:
    """Both feet have left the ground in between: they are ahead, and on something else."""
    on = (start.pose.ground or 0.0, turn.pose.ground or 0.0)
    return turn.base.support is Support.FOOT and on[0] != on[1] and turn.pose.ahead > 0


def _flight(start: Posed, turn: Posed, steps: int = 8) -> list[Point]:
    """The way of the feet through the air, from where the heels were to behind where they are."""
    (x, y), (to_x, to_y) = start.points["heel"], turn.points["heel"]
    begin, end = (x, y + _LOW), (to_x - _LOW, to_y + _LOW)
    over = (begin[0] + 0.6 * (end[0] - begin[0]), max(begin[1], end[1]) + _HIGH)
    mixed = [middle_of(begin, over, step / steps) for step in range(steps + 1)]
    others = [middle_of(over, end, step / steps) for step in range(steps + 1)]
    return [
        middle_of(one, other, step / steps)
        for step, (one, other) in enumerate(zip(mixed, others, strict=True))
    ]


_AHEAD, _CHEST, _CARRIED = 0.14, 0.06, 0.28
"""Of a carry's arrow: where it begins ahead of the shoulder, how far below it, how long it is."""
_LOW, _HIGH = 0.05, 0.16
"""How far a jump's arrow begins above the floor and ends behind the heels, and how far it bulges
above that; statures."""
_BELL = 0.11
"""How far before a swung bell its arrow ends, statures: it would hide hands and handle."""


def _short_of(points: list[Point], by: float) -> list[Point]:
    """A way that ends some distance before its end."""
    last = points[-1]
    kept = [point for point in points if distance(point, last) > by]
    if not kept:  # hardly any way: too short for an arrow
        return points[:1] * 2
    return [*kept, middle_of(last, kept[-1], by / distance(last, kept[-1]))]


_FLESH, _ABOVE = 0.105, 0.035
"""From a lifted hip down to a free place below it, and from what it lay on up to one; statures."""


def _under_hips(start: Posed, turn: Posed) -> list[Point]:
    """Hips that leave the floor go up above their arrow: there is no body."""
    x, y = turn.points["hip"]
    low = (start.pose.ground or 0.0) / STATURE + _ABOVE
    return [(x, low), (x, max(y - _FLESH, low + SHORT + 0.01))]


def _moving(points: Points, figure: Figure) -> Point:
    if figure.moves in MOVED:
        return points[MOVED[figure.moves]]
    return bar_place(points, figure.holds) or points["hand"]


def _between(start: Posed, turn: Posed, share: float) -> dict[str, Point]:
    """The joints some share of the way from one pose to another, angle by angle."""

    def mix(one: float, other: float) -> float:
        return one + share * (other - one)

    def leg(one: Leg, other: Leg) -> Leg:
        return Leg(mix(one.knee, other.knee), mix(one.hip, other.hip), mix(one.foot, other.foot))

    def arm(one: Arm, other: Arm, leans: tuple[float, float]) -> Arm:
        shoulders = [
            lean if arm.shoulder is None else arm.shoulder
            for arm, lean in zip((one, other), leans, strict=True)
        ]
        return Arm(mix(*shoulders), mix(one.elbow, other.elbow))

    a, b = start.shape, turn.shape
    leans = (a.lean, b.lean)
    points = joints(
        Angles(
            mix(a.lean, b.lean), mix(a.head, b.head), leg(a.near, b.near), leg(a.far, b.far),
            arm(a.arm, b.arm, leans), arm(a.far_arm, b.far_arm, leans), mix(a.shrug, b.shrug),
        )
    )  # fmt: skip
    fixed = start.fixed
    one, other = start.points[fixed], turn.points[fixed]
    by = (mix(one[0], other[0]) - points[fixed][0], mix(one[1], other[1]) - points[fixed][1])
    return moved(points, by)
