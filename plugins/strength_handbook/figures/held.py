"""What is in the hands, as SVG: what is drawn behind the body, and what before it."""

from math import atan2, degrees

from strength_handbook.figures.bag import bag_place, draw_bag
from strength_handbook.figures.bars import bar_place, draw_bar
from strength_handbook.figures.body import PLATE_RADIUS
from strength_handbook.figures.chain import Point, Points, distance
from strength_handbook.figures.clearance import row
from strength_handbook.figures.drawn import Drawn
from strength_handbook.figures.outlines import SCALE, line, middle_of, place
from strength_handbook.figures.posing import Posed
from strength_handbook.figures.rig import draw_rig, draw_straight_bar
from strength_handbook.model.figure import Held

_BEHIND = (0.042, 0.012)
"""How far the farther of two bells is moved, as much as its hand allows; statures."""
_BESIDE_EACH_OTHER = 0.05
"""How near hands are, statures, that hold a stick across the line of sight."""
_PAST = 0.12
"""How far a stick goes past each hand, statures; drawn by eye."""
_BESIDE = (0.050, 0.012)
"""How far the farther of two long handles is moved, so that there are two to see; statures."""


def draw_held(one: Posed, held: Held) -> Drawn:
    """What the hands are on."""
    points = one.points
    hand, far = points["hand"], points["far hand"]
    at = bar_place(points, held)
    if at is not None and held != "pivot-bar":
        return draw_bar(points, held, at)
    match held:
        case "dumbbells":
            return Drawn(_dumbbell(far), _dumbbell(hand), ((hand, 0.07),))
        case "dumbbell":
            return Drawn("", _dumbbell(hand), ((hand, 0.07),))
        case "bells":
            other = far[0] + _BEHIND[0], far[1] + _BEHIND[1]
            behind = f'<g class="far">{_bell(other)}</g>'
            return Drawn(behind, _bell(hand), ((_below(hand), 0.07), (_below(other), 0.07)))
        case "bell":
            return Drawn("", _bell(hand, points["wrist"]), ((hand, 0.14),))
        case "handles" | "handle":
            other = (far[0] + _BESIDE[0], far[1] + _BESIDE[1])
            near = _handle(hand)
            solid = tuple(row for at in {hand, other} for row in _handle_row(at))
            behind = f'<g class="far">{_handle(other)}</g>' if held == "handles" else ""
            return Drawn(behind, "", ((hand, 0.26), (other, 0.26)), near, solid)
        case "plates":
            around = ((_below(hand), 0.1),)
            return Drawn("", _fingers(hand), around, between=_upright_plates(hand))
        case "plate":
            return Drawn("", _flat_plate(points), ((hand, 0.1),))
        case "pull-up-bar":
            return draw_straight_bar(hand)
        case "parallel-handles" | "towels":
            return draw_rig(hand, towels=held == "towels")
        case "stick":
            return _stick(hand, far)
        case "bag":
            bag = draw_bag(points, one.pose)
            around = ((bag_place(points, one.pose), 0.1),)
            if one.pose.load_on == "hands":  # between the feet
                return Drawn(bag, around=around)
            return Drawn(around=around, between=bag)
        case _:
            return Drawn()


def _stick(hand: Point, far: Point) -> Drawn:
    """A light stick through both hands; from its end where they are beside each other."""
    apart = distance(hand, far)
    if apart < _BESIDE_EACH_OTHER:
        x, y = place(hand)
        return Drawn("", f'<circle class="bar" cx="{x:.0f}" cy="{y:.0f}" r="5"/>', ((hand, 0.03),))
    ends = middle_of(hand, far, -_PAST / apart), middle_of(hand, far, 1 + _PAST / apart)
    return Drawn(f'<path class="rod" d="{line(ends)}"/>', "", tuple(row(ends, 0.02)))


def _below(hand: Point, by: float = 0.06) -> Point:
    return hand[0], hand[1] - by


def _dumbbell(at: Point) -> str:
    """Along the line of sight turned a little, so that handle and both heads show."""
    x, y = place(at)
    return (
        f'<g class="kit"><rect x="{x - 23:.0f}" y="{y - 12:.0f}" width="13" height="24" rx="4"/>'
        f'<rect x="{x + 10:.0f}" y="{y - 12:.0f}" width="13" height="24" rx="4"/></g>'
        f'<path class="rod" d="M{x - 12:.0f} {y:.0f}h24"/>'
    )


def _bell(hand: Point, wrist: Point | None = None) -> str:
    """A bell hangs in line with a forearm that points down, else straight down."""
    x, y = place(hand)
    turn = 0.0
    if wrist is not None and hand[1] < wrist[1]:
        turn = degrees(atan2(hand[0] - wrist[0], wrist[1] - hand[1]))
    return (
        f'<g class="kit" transform="translate({x:.0f} {y:.0f}) rotate({-turn:.0f})">'
        '<path class="grip" d="M-11 14C-17-6 17-6 11 14"/>'
        '<path d="M-10 12h20c13 10 12 33-3 34h-14c-15-1-16-24-3-34z"/></g>'
    )


def _handle(hand: Point) -> str:
    """A long handle beside the leg, with a full plate near each end, seen from the side."""
    x, y = place(hand)
    radius = PLATE_RADIUS * SCALE
    return (
        f'<path class="rod" d="M{x - 84:.0f} {y:.0f}h168"/><g class="kit">'
        f'<rect x="{x - 74:.0f}" y="{y - radius:.0f}" width="11" height="{2 * radius:.0f}" rx="3"/>'
        f'<rect x="{x + 63:.0f}" y="{y - radius:.0f}" width="11" height="{2 * radius:.0f}" rx="3"/>'
        "</g>"
    )


def _handle_row(hand: Point) -> tuple[tuple[Point, float], ...]:
    """What an arrow keeps off: the handle and the plates at its ends."""
    (x, y), plate = hand, 0.19
    ends = [row([(x + off, y - 0.13), (x + off, y + 0.13)], 0.02) for off in (-plate, plate)]
    return (*row([(x - 0.23, y), (x + 0.23, y)], 0.015), *ends[0], *ends[1])


def _upright_plates(hand: Point) -> str:
    """Two face on beside the leg, the farther one moved; the thumb goes behind them."""
    x, y = place(hand)
    return (
        f'<path class="thumb" d="M{x + 6:.0f} {y - 2:.0f}l13 14"/>'
        f'<g class="far"><circle class="kit" cx="{x + 7:.0f}" cy="{y + 28:.0f}" r="27"/></g>'
        f'<circle class="kit" cx="{x:.0f}" cy="{y + 31:.0f}" r="27"/>'
        f'<circle class="hole" cx="{x:.0f}" cy="{y + 31:.0f}" r="5"/>'
    )


def _fingers(hand: Point) -> str:
    """Four fingers down over the near face of what is pinched."""
    x, y = place(hand)
    return "".join(
        f'<rect class="finger" x="{x + off:.0f}" y="{y - 3:.0f}" width="6" height="{long}" rx="3"/>'
        for off, long in ((-12, 22), (-6, 27), (0, 28), (6, 25))
    )


def _flat_plate(points: Points) -> str:
    """A plate that lies on the chest."""
    hip, shoulder = points["hip"], points["shoulder"]
    x, y = place(points["hand"])
    turn = degrees(atan2(shoulder[0] - hip[0], shoulder[1] - hip[1]))
    return (
        f'<rect class="kit" transform="translate({x:.0f} {y:.0f}) rotate({turn:.0f})" '
        'x="-5" y="-40" width="10" height="80" rx="4"/>'
    )
