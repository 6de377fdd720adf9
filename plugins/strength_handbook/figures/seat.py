"""A seat with a long back, and the rail on which a foot plate slides before it."""

from strength_handbook.figures.chain import Point, Points
from strength_handbook.figures.outlines import line, middle_of

RAIL = 0.66
"""How far the rail reaches ahead of the hip, statures: straight legs and a shoe; drawn by eye."""
_BACK = 0.085
"""From trunk and head to the middle of the pad behind them, statures."""
_DOWN = 0.20
"""How far the rail is below the hip."""


def draw_seat(points: Points) -> str:
    """One frame: seat, back up to the head, rail, and the carriage that carries the foot plate."""
    hip, shoulder, head = points["hip"], points["shoulder"], points["head"]
    long = (shoulder[0] - hip[0]) / 0.288, (shoulder[1] - hip[1]) / 0.288

    def behind(point: Point, up: float) -> Point:
        return (
            point[0] - _BACK * long[1] + up * long[0],
            point[1] + _BACK * long[0] + up * long[1],
        )

    back = behind(hip, -0.02), behind(head, 0.04)
    seat = (hip[0] + 0.12, hip[1] - 0.085), (hip[0] - 0.06, hip[1] - 0.085)
    rail, end = hip[1] - _DOWN, hip[0] + RAIL
    foot = middle_of(points["heel"], points["toe"], -0.05)
    posts = [
        ((hip[0], hip[1] - 0.09), (hip[0], 0.0)),
        ((hip[0], rail), (end, rail)),
        ((end - 0.03, rail), (end - 0.03, 0.0)),
        (foot, (foot[0], rail)),
    ]
    carriage = (foot[0] - 0.05, rail), (foot[0] + 0.05, rail)
    return (
        f'<path class="post" d="{"".join(line(ends) for ends in posts)}"/>'
        f'<path class="plank" d="{line(seat)}{line(back)}{line(carriage)}"/>'
    )
