"""Where the moved part of a figure goes from one moment to the next."""

from collections.abc import Sequence

from strength_handbook.figures.bag import bag_place
from strength_handbook.figures.bars import bar_place
from strength_handbook.figures.chain import Angles, Arm, Leg, Point, Points, joints, moved
from strength_handbook.figures.posing import Posed
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
    straight = start.fixed in ("ball", "hand") or figure.holds == "cable"
    steps = 8 if figure.holds == "bell" or not straight else 1
    if start.fixed != turn.fixed:
        return [_moving(one.points, figure) for one in (start, turn)]
    if turn.pose.pose == "walking":  # somewhere else on the way by then: only the lift counts
        begin, end = (_moving(one.points, figure) for one in (start, turn))
        return [(end[0], begin[1]), end]
    return [_moving(_between(start, turn, step / steps), figure) for step in range(steps + 1)]


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
            arm(a.arm, b.arm, leans), arm(a.far_arm, b.far_arm, leans),
        )
    )  # fmt: skip
    fixed = start.fixed
    one, other = start.points[fixed], turn.points[fixed]
    by = (mix(one[0], other[0]) - points[fixed][0], mix(one[1], other[1]) - points[fixed][1])
    return moved(points, by)
