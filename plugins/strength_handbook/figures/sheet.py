"""A figure: two or three moments side by side in one SVG."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from html import escape

from strength_handbook.figures.bars import FRAME, TRAP_BARS, bar_place
from strength_handbook.figures.body import STATURE
from strength_handbook.figures.chain import Point, Points, distance, moved
from strength_handbook.figures.clearance import beside, row
from strength_handbook.figures.drawn_body import behind, forearm, near_arm, trunk_and_leg, upper_arm
from strength_handbook.figures.held import draw_held
from strength_handbook.figures.marks import SHORT, angle, arrow, push, push_ahead, tip
from strength_handbook.figures.outlines import SCALE
from strength_handbook.figures.posing import Posed, posed
from strength_handbook.figures.pulling import cord, on_the_line
from strength_handbook.figures.stretcher import draw_stretcher, out_of_step
from strength_handbook.figures.things import draw_things, in_the_way, pin_over, surroundings
from strength_handbook.figures.way import swings, way_of
from strength_handbook.figures.words import said
from strength_handbook.model.figure import Figure

GAP, EDGE, FOOT_ROOM = 26, 8, 8
LETTERS, USUAL_WIDTH = 20, 380
"""Height of letters in units; in a wider drawing they grow, and look the same on a phone."""
SMALL_LETTERS = 1.8
"""How much larger letters are where a drawing is small."""
LINE = 0.012
"""Half of a cord's thickness and what an arrow keeps off it besides, statures."""
WIDE = 2.3
"""Width for each height from which moments stand below each other."""
TITLES = ("1 Start", "2 Turn", "3 End")
STILL = ("Nothing moves",)
"""Over the one moment of a push against what stands fast."""


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


def figure_words(figure: Figure, name: str) -> str:
    """What the whole figure shows, in words; arguments as of `figure_svg`."""
    return said(figure, shown(figure), name)


def shown(figure: Figure) -> list[Posed]:
    """The moments that are drawn: of a push against what stands fast, only the push."""
    poses = moments(figure)
    return poses[1:2] if figure.moves == "push" else poses


def figure_svg(figure: Figure, name: str, *, small: bool = False) -> str:
    """The whole figure as inline SVG; its colours come from the page.

    Args:
        figure: what the coach wrote; it must be possible (see `checks`).
        name: the exercise's, for those who listen.
        small: as on a printed card: moments stand in one row without their names, and the number
            of an angle is larger.
    """
    poses = shown(figure)
    alone = len(poses) == 1
    panels = []
    for number, one in enumerate(poses):
        way = way_of(poses[number - 1], one, figure) if number else []
        panels.append(_panel(figure, one, way, asked=alone or number == 1))
    top = min(panel.top for panel in panels)
    widths = [round(panel.right - panel.left) for panel in panels]
    below = not small and sum(widths) > WIDE * (FOOT_ROOM - top)
    if below:  # one left edge, so that what has moved is seen to have moved
        left, right = min(one.left for one in panels), max(one.right for one in panels)
        panels = [replace(one, left=left, right=right) for one in panels]
        widths = [round(right - left)] * len(panels)
    width = max(widths) if below else sum(widths) + GAP * (len(widths) - 1)
    letters = round(LETTERS * max(SMALL_LETTERS if small else 1.0, width / USUAL_WIDTH))
    room = 0 if small else round(1.5 * letters)
    height = round(-top + FOOT_ROOM + room)
    x, y, parts = 0, 0, []
    for title, panel, wide in zip(STILL if alone else TITLES, panels, widths, strict=False):
        ground = round(y - top + room)
        parts.append(f'<g transform="translate({round(x - panel.left)} {ground})">{panel.svg}</g>')
        if not small:
            parts.append(f'<text class="when" x="{x + 4}" y="{y + letters}">{title}</text>')
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
    others = _others(figure, one)
    mates = [points for points, alike in others if alike]
    helpers = [points for points, alike in others if not alike]
    crew = [*mates, one.points]
    held = draw_held(one, figure.holds)
    if figure.holds == "stretcher":
        down = posed(figure.start, figure.holds).points["hand"][1]
        held = draw_stretcher([points["hand"] for points in crew], down)
    things = draw_things(figure, one)
    line = cord(figure, one)
    everybody = [one.points, *(points for points, _ in others)]
    circles = [
        *(held.solid or held.around),
        *row(line, LINE),
        *on_the_line(figure, line),
        *in_the_way(figure, one.points),
    ]
    marks, room = "", list[tuple[Point, float]]()
    swung = ""
    short = SHORT / 2 if one.pose.shrug else SHORT
    if way and distance(way[0], way[-1]) > short:
        if swings(figure):  # from between the thighs
            swung, marks = arrow(way), tip(way)
        else:
            way = beside(way, everybody, circles, ahead=figure.moves == "load")
            marks = arrow(way)
        room = [(point, 0.03) for point in way]
    if asked and figure.moves == "push":
        bar = bar_place(one.points, figure.holds) or one.points["hand"]
        stop = pin_over(figure, bar)
        frame = FRAME / SCALE if figure.holds in TRAP_BARS else 0.0
        at = bar[0] + push_ahead(frame), stop
        marks, room = push(bar, stop, frame), [(at, 0.06)]
        circles = [*circles, (at, 0.04), ((at[0], at[1] - 0.1), 0.04)]
    if asked and figure.angle:
        marks += angle(figure.angle, one.points, everybody, circles)
        room.append((one.points[figure.angle], 0.19))
    room += [(point, 0.075) for points in everybody for point in points.values()]
    room += [*held.around, *surroundings(figure, one)]
    left = min(x - radius for (x, _), radius in room) * SCALE - EDGE
    right = max(x + radius for (x, _), radius in room) * SCALE + EDGE
    top = -max(y + radius for (_, y), radius in room) * SCALE - EDGE
    floor = f'<path class="floor" d="M{round(left)} 0H{round(right)}"/>'
    moves = "moves " if figure.moves in ("load", "push") else ""

    def layer(svg: str) -> str:
        return f'<g class="{moves}held">{svg}</g>' if svg else ""

    if figure.holds == "bell" and one.points["hand"][0] < one.points["knee"][0]:
        body = (  # hands and bell go back between the thighs
            f"{behind(one.points)}<g>{forearm(one.points)}</g>{layer(held.before)}"
            f"{trunk_and_leg(one.points)}<g>{upper_arm(one.points)}</g>"
        )
    else:
        body = (
            "".join(f"{behind(points)}{trunk_and_leg(points)}" for points in crew)
            + layer(held.between)
            + things.between
            + "".join(f"<g>{near_arm(points)}</g>" for points in crew)
            + layer(held.before)
        )
    svg = (
        f"{things.behind}{floor}"
        + "".join(
            f'<g class="other">{behind(points)}{trunk_and_leg(points)}</g>' for points in helpers
        )
        + "".join(f'<g class="other">{near_arm(points)}</g>' for points in helpers)
        + layer(held.behind)
        + swung
        + body
        + things.before
        + marks
    )
    return Panel(svg, left, right, top)


def _others(figure: Figure, one: Posed) -> list[tuple[Points, bool]]:
    """Everybody else's joints, and whether they do as the lifter does."""
    like = out_of_step(one.points) if figure.holds == "stretcher" else one.points
    return [
        (
            moved(
                like if other.pose is None else posed(other.pose, "nothing").points,
                (other.at / 100 / STATURE, 0.0),
            ),
            other.pose is None,
        )
        for other in figure.others
    ]
