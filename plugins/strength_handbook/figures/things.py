"""What stands around the lifter, as SVG."""

from strength_handbook.figures.body import STATURE
from strength_handbook.figures.chain import Point, Points, distance
from strength_handbook.figures.held import Drawn
from strength_handbook.figures.outlines import SCALE, line, middle_of, place
from strength_handbook.figures.posing import Posed
from strength_handbook.model.figure import Beside, Figure

WIDTHS = {"box": 0.5, "bench": 0.35, "mat": 1.2, "pad": 0.4, "pins": 0.78}
"""Metres, where the file says none; drawn by eye."""


REACH = {"sled": 0.32, "cable-column": 0.12}
"""Statures that something reaches beyond where its line is fastened."""


def _across(thing: Beside) -> tuple[float, float]:
    """Left and right edge, statures."""
    half = (thing.width or WIDTHS.get(thing.thing, 0.1)) / 2
    middle = thing.at / 100
    return (middle - half) / STATURE, (middle + half) / STATURE


def surroundings(figure: Figure, one: Posed) -> list[tuple[Point, float]]:
    """Points that the drawing has to leave room for, with a radius."""
    found: list[tuple[Point, float]] = []
    for thing in figure.things:
        left, right = _across(thing)
        high = thing.height / STATURE
        right += REACH.get(thing.thing, 0.0)
        found += [((left, high), 0.07), ((right, high), 0.07)]
    if figure.holds in ("pull-up-bar", "towels"):
        found.append(((0.0, one.points["hand"][1]), 0.06))
    return found


def draw_things(figure: Figure, one: Posed) -> Drawn:
    """Everything around, behind and before the body."""
    behind = [_draw(thing) or _at_body(thing, one.points) for thing in figure.things]
    return Drawn("".join(behind) + _line(figure, one), "")


def _draw(thing: Beside) -> str:
    left, right = (edge * SCALE for edge in _across(thing))
    top = thing.height / STATURE * SCALE
    wide = right - left
    match thing.thing:
        case "box":
            return (
                f'<rect class="thing" x="{left:.0f}" y="{-top:.0f}" width="{wide:.0f}" '
                f'height="{top:.0f}" rx="3"/>'
            )
        case "bench":
            return (
                f'<rect class="thing" x="{left:.0f}" y="{-top:.0f}" width="{wide:.0f}" '
                f'height="16" rx="6"/><path class="post" d="M{left + 12:.0f} {-top + 16:.0f}V0'
                f'M{right - 12:.0f} {-top + 16:.0f}V0"/>'
            )
        case "mat":
            high = max(top, 6)
            return (
                f'<rect class="thing" x="{left:.0f}" y="{-high:.0f}" width="{wide:.0f}" '
                f'height="{high:.0f}" rx="3"/>'
            )
        case "pins":
            x = left + wide / 2
            return (
                f'<path class="post" d="M{x - 70:.0f} 0V{-top - 22:.0f}M{x + 70:.0f} 0'
                f'V{-top - 22:.0f}"/><path class="pin" d="M{x - 78:.0f} {-top:.0f}h156"/>'
            )
        case "cable-column":
            x = left + wide / 2
            return (
                f'<rect class="thing" x="{x + 6:.0f}" y="-215" width="34" height="215" rx="3"/>'
                f'<path class="stack" d="M{x + 12:.0f}-90h22m-22 14h22m-22 14h22m-22 14h22'
                f'm-22 14h22m-22 14h22"/>'
                f'<circle class="kit" cx="{x + 2:.0f}" cy="{-top:.0f}" r="8"/>'
            )
        case "sled":
            x = left + wide / 2
            return (
                f'<path class="rod" d="M{x - 4:.0f}-8h110M{x + 50:.0f}-8v-62M{x:.0f}-8v-50"/>'
                f'<rect class="kit" x="{x + 22:.0f}" y="-34" width="56" height="22" rx="4"/>'
            )
        case "wall":
            return f'<path class="post {thing.thing}" d="M{left + wide / 2:.0f} 0V{-top:.0f}"/>'
        case _:
            return ""


_ENDS = {"cable": "cable-column", "strap": "sled", "rope": "sled", "pivot-bar": "pivot"}
"""What a line leads to from the hands."""


def _line(figure: Figure, one: Posed) -> str:
    """Cable, rope or strap from the hands to what they pull, or a bar to its pivot."""
    wanted = _ENDS.get(figure.holds)
    for thing in figure.things:
        if thing.thing == wanted:
            x, y = place(one.points["hand"])
            to_x, to_y = place((thing.at / 100 / STATURE, _hook(thing) / STATURE))
            line_to = f'd="M{x:.0f} {y:.0f}L{to_x:.0f} {to_y:.0f}"/>'
            if wanted != "pivot":
                return f'<path class="cord" {line_to}'
            return f'<path class="rod" {line_to}{_end_plates((x, y), (to_x, to_y))}'
    return ""


def _end_plates(hand: Point, pivot: Point) -> str:
    """Plates near the free end of a bar, edge on."""
    length = distance(hand, pivot)
    along = (pivot[0] - hand[0]) / length, (pivot[1] - hand[1]) / length
    edges = []
    for off, half in ((50, 38), (61, 38)):
        x, y = hand[0] + off * along[0], hand[1] + off * along[1]
        across, up = -half * along[1], half * along[0]
        edges.append(f"M{x - across:.0f} {y - up:.0f}L{x + across:.0f} {y + up:.0f}")
    return f'<path class="edge" d="{"".join(edges)}"/>'


def _hook(thing: Beside) -> float:
    """How high a line is fastened, metres: a column says it, a sled has its post."""
    return {"sled": 0.3, "pivot": 0.05}.get(thing.thing, thing.height)


def _at_body(thing: Beside, points: Points) -> str:
    """What lies against a part of the body, wherever that is."""
    match thing.thing:
        case "foot-plate":
            heel, toe = points["heel"], points["toe"]
            ends = middle_of(heel, toe, -0.05), middle_of(heel, toe, 1.4)
            return f'<path class="plank" d="{line(ends)}"/>'
        case "back-rest":
            hip, shoulder = points["hip"], points["shoulder"]
            off = (shoulder[1] - hip[1]) * 0.32, (hip[0] - shoulder[0]) * 0.32
            low, high = (
                (hip[0] - off[0], hip[1] - off[1]),
                (shoulder[0] - off[0], shoulder[1] - off[1]),
            )
            seat = (hip[0] + 0.12, hip[1] - 0.085), (hip[0] - 0.06, hip[1] - 0.085)
            post = (hip[0], hip[1] - 0.09), (hip[0], 0.0)
            return (
                f'<path class="post" d="{line(post)}"/><path class="plank" d="{line(seat)}"/>'
                f'<path class="plank" d="{line((low, high))}"/>'
            )
        case "slanted-bench":
            hip, knee, ankle = points["hip"], points["knee"], points["ankle"]
            way = (knee[0] - hip[0], knee[1] - hip[1])
            off = -way[1] * 0.30, way[0] * 0.30
            pad = middle_of(hip, knee, 0.15), middle_of(hip, knee, 0.75)
            near, end = ((x + off[0], y + off[1]) for x, y in pad)
            roller = place((ankle[0] - off[0] * 0.45, ankle[1] - off[1] * 0.45))
            return (
                f'<path class="post" d="{line((middle_of(near, end), (near[0], 0.0)))}"/>'
                f'<path class="post" d="{line((middle_of(near, end), (ankle[0], 0.02)))}"/>'
                f'<path class="plank" d="{line((near, end))}"/>'
                f'<circle class="kit" cx="{roller[0]:.0f}" cy="{roller[1]:.0f}" r="8"/>'
            )
        case _:
            return ""
