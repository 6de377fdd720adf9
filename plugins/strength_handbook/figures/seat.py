"""A seat with a long back, and the rail on which a foot plate slides before it."""

from strength_handbook.figures.chain import Point, Points
from strength_handbook.figures.outlines import line, middle_of

RAIL = 0.66
"""How far the rail reaches ahead of the hip, statures: straight legs and a shoe; drawn by eye."""
_BACK = 0.085
"""From trunk and head to the middle of the pad behind them, statures."""
SOLE = -0.5, 1.4
"""Where a foot plate begins and ends, shares of a foot from its heel: feet are in its middle."""
_HEAD = 0.072
"""From the head to the pad behind it: a head is not as deep as a back."""
_DOWN = 0.20
"""How far the rail is below the hip."""


def back_and_head(points: Points) -> tuple[tuple[Point, Point], tuple[Point, Point]]:
    """The long pad behind the back and a short one behind the head, each from its lower end."""
    hip, shoulder = points["hip"], points["shoulder"]
    x, y = (shoulder[0] - hip[0]) / 0.288, (shoulder[1] - hip[1]) / 0.288

    def behind(name: str, up: float, off: float) -> Point:
        return points[name][0] - off * y + up * x, points[name][1] + off * x + up * y

    pad = behind("hip", -0.02, _BACK), behind("head", 0.04, _BACK)
    return pad, (behind("head", -0.05, _HEAD), behind("head", 0.03, _HEAD))


def draw_seat(points: Points) -> str:
    """One frame: seat, back up to the head, rail, and the carriage that carries the foot plate."""
    hip = points["hip"]
    back, rest = back_and_head(points)
    seat = (hip[0] + 0.12, hip[1] - 0.085), (hip[0] - 0.06, hip[1] - 0.085)
    rail, end = hip[1] - _DOWN, hip[0] + RAIL
    foot = middle_of(points["heel"], points["toe"], SOLE[0])
    posts = [
        ((hip[0], hip[1] - 0.09), (hip[0], 0.0)),
        ((hip[0], rail), (end, rail)),
        ((end - 0.03, rail), (end - 0.03, 0.0)),
        (foot, (foot[0], rail)),
    ]
    carriage = (foot[0] - 0.05, rail), (foot[0] + 0.05, rail)
    return (
        f'<path class="post" d="{"".join(line(ends) for ends in posts)}"/>'
        f'<path class="plank" d="{line(seat)}{line(back)}{line(rest)}{line(carriage)}"/>'
    )
