"""What stands around the lifter, as SVG."""

from strength_handbook.figures.bars import HUB
from strength_handbook.figures.body import STATURE, THIGH
from strength_handbook.figures.chain import Point, Points
from strength_handbook.figures.clearance import row
from strength_handbook.figures.drawn import Drawn
from strength_handbook.figures.outlines import SCALE, line, middle_of, place
from strength_handbook.figures.pads import PADS, draw_pad, pad
from strength_handbook.figures.posing import Posed
from strength_handbook.figures.pulling import draw_line, heap_place, pulled_along
from strength_handbook.figures.seat import RAIL, SOLE, back_and_head, draw_seat
from strength_handbook.model.figure import Beside, Figure

WIDTHS = {"box": 0.5, "bench": 0.35, "chair": 0.42, "mat": 1.2, "pad": 0.4, "pins": 1.0}
"""Metres, where the file says none; drawn by eye."""


THIN = 7
"""A mat that is too thin to count, units."""
PLANK_HALF = 5 / SCALE
"""Half of a plank's thickness, as the style draws it; statures."""
PIN_HALF = 3.5
"""Half of a pin's thickness, units; as thick as the style draws it."""
POST = 0.12
"""How far a rack's posts are drawn beyond its highest pins, statures."""
_GRIP_AHEAD, _GRIP_UP = 0.262, 0.103
"""Where the handle of a slanted bench is: ahead of the hip, and above the floor; drawn by eye."""
_HOUSING, _OVER = 215, 9
"""How high a column's housing is, and how far its mast goes over a pulley above that; units."""
_CHAIR_BACK = 88
"""How far the back of a chair is above its seat, units: some 43 cm; drawn by eye."""
_STAND = 66
"""How far ahead of an anchor the post of its beam stands, units."""
REACH = {"sled": 0.32, "cable-column": 0.12, "back-rest": RAIL, "anchor": 0.17}
"""Statures that something reaches beyond where its line is fastened."""


def edges(thing: Beside) -> tuple[float, float]:
    """Left and right edge of something, statures."""
    half = (thing.width or WIDTHS.get(thing.thing, 0.1)) / 2
    middle = thing.at / 100
    return (middle - half) / STATURE, (middle + half) / STATURE


def pin_over(figure: Figure, bar: Point) -> float:
    """How high what stops a bar is, statures: the nearest pin, or just over the bar itself."""
    over = bar[1] + HUB + PIN_HALF / SCALE
    pins = [thing.height / STATURE for thing in figure.things if thing.thing == "pins"]
    return min(pins, key=lambda pin: abs(pin - over), default=over)


def foot_plate(points: Points) -> list[Point]:
    """Both ends of a plate under the soles; one that reaches the floor begins there."""
    heel, toe = points["heel"], points["toe"]
    low, high = (middle_of(heel, toe, share) for share in SOLE)
    if low[1] < 0 < heel[1]:
        low = middle_of(heel, low, heel[1] / (heel[1] - low[1]))
    return [low, high]


def in_the_way(figure: Figure, points: Points) -> list[tuple[Point, float]]:
    """What an arrow keeps off, of what stands around."""
    plates = [thing for thing in figure.things if thing.thing == "foot-plate"]
    return row(foot_plate(points), 2 * PLANK_HALF) if plates else []


def surroundings(figure: Figure, one: Posed) -> list[tuple[Point, float]]:
    """Points that the drawing has to leave room for, with a radius."""
    found: list[tuple[Point, float]] = []
    for thing in pulled_along(figure, one):
        left, right = edges(thing)
        high = thing.height / STATURE
        right += REACH.get(thing.thing, 0.0)
        high += {"pins": POST, "chair": _CHAIR_BACK / SCALE}.get(thing.thing, 0.0)
        found += [((left, high), 0.07), ((right, high), 0.07)]
        if thing.thing == "sled" and (heap := heap_place(figure, one)) is not None:
            found += [((heap[0] - 0.1, 0.0), 0.13)]
        if thing.thing == "back-rest":
            found += [(end, 0.04) for end in back_and_head(one.points)[0]]
        if thing.thing in PADS:
            found += [(end, 0.04) for end in pad(thing.thing, one.points)]
    return found


def draw_things(figure: Figure, one: Posed) -> Drawn:
    """Everything around, behind and before the body."""
    things = pulled_along(figure, one)
    behind = [_draw(thing) or _at_body(thing, one.points) for thing in things]
    pulled = draw_line(figure, one)
    if figure.holds == "pivot-bar":
        return Drawn("".join(behind) + pulled)
    before = "".join(_rail(thing) for thing in things if thing.thing == "pins")
    return Drawn("".join(behind), before, between=pulled)


def _rail(pins: Beside) -> str:
    """The nearer of two pins, with its posts: who is in a rack is behind it."""
    left, right = (edge * SCALE for edge in edges(pins))
    top = pins.height / STATURE * SCALE
    over = top + POST * SCALE
    return (
        f'<path class="post" d="M{left:.0f} 0V{-over:.0f}M{right:.0f} 0V{-over:.0f}"/>'
        f'<path class="pin" d="M{left - 8:.0f} {-top:.0f}H{right + 8:.0f}"/>'
    )


def _draw(thing: Beside) -> str:
    left, right = (edge * SCALE for edge in edges(thing))
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
        case "chair":
            return _chair(left, right, top, back=right if thing.faces == "back" else left)
        case "mat":
            high = top or THIN  # one without a height lifts nobody: it is drawn into the floor
            return (
                f'<rect class="thing" x="{left:.0f}" y="{-top:.0f}" width="{wide:.0f}" '
                f'height="{high:.0f}" rx="3"/>'
            )
        case "pins":
            over = top + POST * SCALE  # the farther side of the rack
            return (
                f'<path class="post" d="M{left + 11:.0f} -5V{-over - 5:.0f}M{right + 11:.0f} -5'
                f'V{-over - 5:.0f}M{left + 11:.0f} {-top - 5:.0f}H{right + 11:.0f}"/>'
            )
        case "cable-column":
            return _column(left + wide / 2, top, behind=thing.at < 0)
        case "sled":
            x = left + wide / 2
            post = f"V-{top:.0f}" if top else "v-50"
            return (
                f'<path class="rod" d="M{x - 4:.0f}-8h110M{x + 50:.0f}-8v-62M{x:.0f}-8{post}"/>'
                f'<rect class="kit" x="{x + 22:.0f}" y="-34" width="56" height="22" rx="4"/>'
            )
        case "pivot":
            x = left + wide / 2
            return f'<rect class="kit" x="{x - 26:.0f}" y="-7" width="52" height="7" rx="3"/>'
        case "anchor":
            x = left + wide / 2
            return (
                f'<path class="post" d="M{x + _STAND:.0f} 0V{-top - 16:.0f}H{x:.0f}"/>'
                f'<rect class="thing" x="{x - 15:.0f}" y="{-top - 31:.0f}" width="30" height="30" '
                f'rx="3"/><circle class="kit" cx="{x:.0f}" cy="{-top:.0f}" r="6"/>'
            )
        case "wall":
            x = left + wide / 2
            return f'<rect class="thing" x="{x:.0f}" y="{-top:.0f}" width="14" height="{top:.0f}"/>'
        case _:
            return ""


def _chair(left: float, right: float, top: float, *, back: float) -> str:
    """Seat, legs and back rest of a chair; all in units."""
    return (
        f'<path class="post" d="M{left + 7:.0f} {-top + 14:.0f}V0M{right - 7:.0f} '
        f'{-top + 14:.0f}V0"/><rect class="thing" x="{back - 6:.0f}" '
        f'y="{-top - _CHAIR_BACK:.0f}" width="12" height="{_CHAIR_BACK + 14}" rx="4"/>'
        f'<rect class="thing" x="{left:.0f}" y="{-top:.0f}" width="{right - left:.0f}" '
        'height="14" rx="4"/>'
    )


def _column(x: float, top: float, *, behind: bool) -> str:
    """A stack in its housing, and a mast as high as the pulley needs; all in units.

    Args:
        x: where the pulley is.
        top: how high it is.
        behind: the column stands behind the lifter, so its pulley is on its other side.
    """
    mast = max(round(top) + _OVER, _HOUSING)
    left = x - 40 if behind else x + 6
    slim = x - 18 if behind else x + 6
    pole = (
        ""
        if mast == _HOUSING
        else (f'<rect class="thing" x="{slim:.0f}" y="{-mast}" width="12" height="{mast}" rx="3"/>')
    )
    return (
        f'{pole}<rect class="thing" x="{left:.0f}" y="-{_HOUSING}" width="34" '
        f'height="{_HOUSING}" rx="3"/>'
        f'<path class="stack" d="M{left + 6:.0f}-90h22m-22 14h22m-22 14h22m-22 14h22'
        f'm-22 14h22m-22 14h22"/>'
        f'<circle class="kit" cx="{x - 2 if behind else x + 2:.0f}" cy="{-top:.0f}" r="8"/>'
    )


def _at_body(thing: Beside, points: Points) -> str:
    """What lies against a part of the body, wherever that is."""
    match thing.thing:
        case "foot-plate":
            return f'<path class="plank" d="{line(foot_plate(points))}"/>'
        case "back-rest":
            return draw_seat(points)
        case "chest-rest" | "adjustable-bench":
            return draw_pad(thing.thing, points)
        case "slanted-bench":
            return _slanted_bench(points)
        case _:
            return ""


def _slanted_bench(points: Points) -> str:
    """Pad before the thighs, rail, foot plate under the soles, roller behind the ankles."""
    hip, knee, ankle = points["hip"], points["knee"], points["ankle"]
    heel, ball = points["heel"], points["ball"]
    way = (knee[0] - hip[0]) / THIGH, (knee[1] - hip[1]) / THIGH
    front = -way[1], way[0]

    def off(point: Point, by: float, down: float = 0.0) -> Point:
        return point[0] + by * front[0] + down * way[0], point[1] + by * front[1] + down * way[1]

    pad = off(hip, 0.083, 0.02), off(hip, 0.070, 0.17)
    high, low = off(hip, 0.11, 0.08), off(ankle, 0.11, 0.02)
    grip = hip[0] + _GRIP_AHEAD, _GRIP_UP
    plate = middle_of(heel, ball, -0.3), off(low, 0.0, 0.05)
    roller = off(ankle, -0.058, -0.02)
    x, y = place(roller)
    foot = high[0] + 0.03, 0.0
    stem = middle_of(foot, high, grip[1] / high[1])
    posts = [(high, foot), (low, (low[0], 0.0)), (high, low), (stem, grip)]
    legs = "".join(line(ends) for ends in posts)
    return (
        f'<path class="post" d="{legs}{line((low, roller))}"/>'
        f'<path class="plank" d="{line(plate)}{line(pad)}"/>'
        f'<circle class="roll" cx="{x:.0f}" cy="{y:.0f}" r="11"/>'
        f'<path class="pin" d="{line(((grip[0] - 0.07, grip[1]), (grip[0] + 0.06, grip[1])))}"/>'
    )
