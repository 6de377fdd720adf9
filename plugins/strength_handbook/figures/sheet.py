"""A figure: two or three moments side by side in one SVG."""

from collections.abc import Sequence
from dataclasses import dataclass
from html import escape
from math import atan2, degrees

from strength_handbook.figures.chain import Angles, Arm, Leg, Point, Points, along, joints, moved
from strength_handbook.figures.drawn_body import behind, front
from strength_handbook.figures.held import bar_place, draw_held
from strength_handbook.figures.outlines import SCALE, line, place
from strength_handbook.figures.posing import Posed, posed
from strength_handbook.figures.things import draw_things, surroundings
from strength_handbook.figures.words import said
from strength_handbook.model.figure import Figure

GAP, EDGE, FOOT_ROOM = 26, 8, 8
LETTERS, USUAL_WIDTH = 20, 380
"""Height of letters in units; in a wider drawing they grow, and look the same on a phone."""
WIDE = 2.6
"""Width for each height from which moments stand below each other."""
TITLES = ("1 Start", "2 Turn", "3 End")
MOVED = {"hips": "hip", "knees": "knee", "feet": "heel", "head": "head"}


@dataclass(frozen=True, slots=True)
class Panel:
    """One moment, drawn: SVG and the room that it takes, in units."""

    svg: str
    left: float
    right: float
    top: float


def moments(figure: Figure) -> list[Posed]:
    """Start, turn and, where it differs, end, as complete poses."""
    poses = [figure.start, figure.turn] + ([] if figure.end is None else [figure.end])
    return [posed(pose, figure.holds) for pose in poses]


def figure_svg(figure: Figure, name: str) -> str:
    """The whole figure as inline SVG; its colours come from the page.

    Args:
        figure: what the coach wrote; it must be possible (see `checks`).
        name: the exercise's, for those who listen.
    """
    poses = moments(figure)
    panels = []
    for number, one in enumerate(poses):
        way = _way(poses[number - 1], one, figure) if number == len(poses) - 1 else []
        panels.append(_panel(figure, one, way, asked=number == 1))
    top = min(panel.top for panel in panels)
    widths = [round(panel.right - panel.left) for panel in panels]
    below = sum(widths) > WIDE * (FOOT_ROOM - top)
    width = max(widths) if below else sum(widths) + GAP * (len(widths) - 1)
    letters = round(LETTERS * max(1.0, width / USUAL_WIDTH))
    room = round(1.5 * letters)
    height = round(-top + FOOT_ROOM + room)
    x, y, parts = 0, 0, []
    for title, panel, wide in zip(TITLES, panels, widths, strict=False):
        ground = round(y - top + room)
        parts.append(
            f'<g transform="translate({round(x - panel.left)} {ground})">{panel.svg}</g>'
            f'<text class="when" x="{x + 4}" y="{y + letters}">{title}</text>'
        )
        if below:
            y += height + GAP
        else:
            x += wide + GAP
    tall = y - GAP if below else height
    text = escape(said(figure, poses, name))
    return (
        f'<svg class="sh-pose" viewBox="0 0 {width} {tall}" role="img" '
        f'width="{width}" font-size="{letters}"><title>{text}</title>{"".join(parts)}</svg>'
    )


def _panel(figure: Figure, one: Posed, way: Sequence[Point], *, asked: bool) -> Panel:
    points = one.points
    held = draw_held(points, figure.holds)
    things = draw_things(figure, one)
    marks = _path(way) + (_angle(figure, one) if asked else "")
    xs, ys = [], []
    reach = [(point, 0.075) for point in points.values()]
    if asked and figure.angle:
        reach.append((points[figure.angle], 0.19))
    reach += [*held.around, *surroundings(figure, one), *((point, 0.02) for point in way)]
    for (x, y), radius in reach:
        xs += [x - radius, x + radius]
        ys.append(y + radius)
    left, right = min(xs) * SCALE - EDGE, max(xs) * SCALE + EDGE
    floor = f'<path class="floor" d="M{round(left)} 0H{round(right)}"/>'
    moves = "moves " if figure.moves == "load" else ""
    svg = (
        f'{things.behind}{floor}<g class="{moves}held">{held.behind}</g>{behind(points)}'
        f"{front(points)}{things.before}"
        f'<g class="{moves}held">{held.before}</g>{marks}'
    )
    return Panel(svg, left, right, -max(ys) * SCALE - EDGE)


def _way(start: Posed, turn: Posed, figure: Figure) -> list[Point]:
    """Where the moved part goes, from start to turn: straight where feet and weight see to it."""
    steps = 8 if figure.holds == "bell" or start.fixed not in ("ball", "hand") else 1
    return [_moving(_between(start, turn, step / steps), figure) for step in range(steps + 1)]


def _moving(points: Points, figure: Figure) -> Point:
    if figure.moves == "load":
        return bar_place(points, figure.holds) or points["hand"]
    return points[MOVED[figure.moves]]


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


def _path(way: Sequence[Point]) -> str:
    if not way:
        return ""
    x, y = place(way[-1])
    from_x, from_y = place(way[-2])
    if abs(x - place(way[0])[0]) + abs(y - place(way[0])[1]) < 24:
        return ""
    turn = degrees(atan2(y - from_y, x - from_x))
    first = place(way[0])
    return (
        f'<path class="way" d="{line(way)}"/>'
        f'<circle class="from" cx="{first[0]:.0f}" cy="{first[1]:.0f}" r="4"/>'
        f'<path class="tip" transform="translate({x:.0f} {y:.0f}) rotate({turn:.0f})" '
        'd="M5 0L-10-8V8z"/>'
    )


_AT = {
    "ankle": ("knee", "ankle", "toe"),
    "knee": ("hip", "knee", "ankle"),
    "hip": ("shoulder", "hip", "knee"),
    "shoulder": ("hip", "shoulder", "elbow"),
    "elbow": ("shoulder", "elbow", "wrist"),
}


def _angle(figure: Figure, one: Posed) -> str:
    """An arc between two parts of the body, with its number."""
    if figure.angle is None:
        return ""
    first, at, second = (one.points[name] for name in _AT[figure.angle])
    a = degrees(atan2(first[1] - at[1], first[0] - at[0]))
    b = degrees(atan2(second[1] - at[1], second[0] - at[0]))
    turn = (b - a + 180) % 360 - 180
    radius = 0.085
    begin, end = place(along(at, a, radius)), place(along(at, b, radius))
    middle = along(at, a + turn / 2, radius + 0.062)
    tx, ty = place(middle)
    sweep = 0 if turn > 0 else 1
    size = round(radius * SCALE)
    return (
        f'<path class="arc" d="M{begin[0]:.0f} {begin[1]:.0f}A{size} {size} 0 0 {sweep} '
        f'{end[0]:.0f} {end[1]:.0f}"/>'
        f'<text class="deg" x="{tx:.0f}" y="{ty + 7:.0f}">{abs(turn):.0f}°</text>'
    )
