"""What is in the hands, as SVG: what is drawn behind the body, and what before it."""

from dataclasses import dataclass
from math import atan2, degrees

from strength_handbook.figures.body import PLATE_RADIUS
from strength_handbook.figures.chain import Point, Points
from strength_handbook.figures.outlines import SCALE, middle_of, place
from strength_handbook.model.figure import Held


@dataclass(frozen=True, slots=True)
class Drawn:
    """Two layers of SVG, and how far they reach.

    Attributes:
        behind, before: drawn before and after the body.
        around: middle and radius of circles that the drawing has to leave room for, statures.
    """

    behind: str = ""
    before: str = ""
    around: tuple[tuple[Point, float], ...] = ()


def bar_place(points: Points, held: Held) -> Point | None:
    """Where the middle of a bar with plates is, seen from its end; None for what has none."""
    match held:
        case "bar" | "pivot-bar" | "trap-bar" | "empty-bar" | "empty-trap-bar":
            return points["hand"]
        case "yoke-bar":
            hip, shoulder = points["hip"], points["shoulder"]
            across = (shoulder[0] - hip[0]) / 0.288, (shoulder[1] - hip[1]) / 0.288
            return (
                shoulder[0] + 0.045 * across[0] - 0.040 * across[1],
                shoulder[1] + 0.045 * across[1] + 0.040 * across[0],
            )
        case _:
            return None


def draw_held(points: Points, held: Held) -> Drawn:
    """What the hands are on."""
    hand, far = points["hand"], points["far hand"]
    at = bar_place(points, held)
    if at is not None and held != "pivot-bar":
        if held.startswith("empty"):
            return Drawn("", _circle(at, 0.02, "hub"), ((at, 0.05),))
        return _plates(at, yoke=held == "yoke-bar", hand=hand)
    match held:
        case "dumbbells":
            return Drawn(_dumbbell(far), _dumbbell(hand), ((hand, 0.07),))
        case "bells":
            return Drawn(_bell(far), _bell(hand), ((_below(hand), 0.07),))
        case "bell":
            return Drawn("", _bell(hand, points["wrist"]), ((hand, 0.14),))
        case "handles" | "handle":
            near = _handle(hand)
            return Drawn(_handle(far) if held == "handles" else "", near, ((hand, 0.13),))
        case "rail":
            return Drawn("", _rail(hand), ((hand, 0.3),))
        case "plates":
            return Drawn("", _upright_plates(hand), ((_below(hand), 0.1),))
        case "plate":
            return Drawn("", _flat_plate(points), ((hand, 0.1),))
        case "pull-up-bar" | "towels":
            return _overhead(hand, towels=held == "towels")
        case "bag":
            bag = _bag(middle_of(hand, far))
            if hand[1] > points["shoulder"][1]:
                return Drawn(bag, "", ((hand, 0.14),))
            return Drawn("", bag, ((hand, 0.14),))
        case _:
            return Drawn()


def _below(hand: Point, by: float = 0.06) -> Point:
    return hand[0], hand[1] - by


def _circle(at: Point, radius: float, name: str) -> str:
    x, y = place(at)
    return f'<circle class="{name}" cx="{x:.0f}" cy="{y:.0f}" r="{radius * SCALE:.0f}"/>'


def _plates(at: Point, *, yoke: bool, hand: Point) -> Drawn:
    x, y = place(at)
    end = (
        f'<circle class="rim" cx="{x:.0f}" cy="{y:.0f}" r="{PLATE_RADIUS * SCALE:.0f}"/>'
        f'<circle class="rim" cx="{x:.0f}" cy="{y:.0f}" r="{PLATE_RADIUS * SCALE - 8:.0f}"/>'
        f'<circle class="hub" cx="{x:.0f}" cy="{y:.0f}" r="5"/>'
    )
    behind = _circle(at, PLATE_RADIUS, "disc")
    if yoke:
        hx, hy = place(hand)
        end = f'<path class="rod" d="M{x:.0f} {y:.0f}L{hx:.0f} {hy:.0f}"/>' + end
    return Drawn(behind, end, ((at, PLATE_RADIUS),))


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
    """A long handle with plates at both ends, seen from the side."""
    x, y = place(hand)
    return (
        f'<path class="rod" d="M{x - 44:.0f} {y:.0f}h88"/><g class="kit">'
        f'<rect x="{x - 40:.0f}" y="{y - 22:.0f}" width="9" height="44" rx="3"/>'
        f'<rect x="{x + 31:.0f}" y="{y - 22:.0f}" width="9" height="44" rx="3"/></g>'
    )


def _upright_plates(hand: Point) -> str:
    x, y = place(hand)
    return (
        f'<circle class="kit" cx="{x:.0f}" cy="{y + 26:.0f}" r="30"/>'
        f'<circle class="hole" cx="{x:.0f}" cy="{y + 26:.0f}" r="5"/>'
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


def _bag(at: Point) -> str:
    x, y = place(at)
    return f'<rect class="kit" x="{x - 44:.0f}" y="{y - 22:.0f}" width="88" height="44" rx="20"/>'


def _overhead(hand: Point, *, towels: bool) -> Drawn:
    """A bar over the lifter, seen from its end where towels hang from it."""
    x, y = place(hand)
    top = y - 62
    if towels:
        behind = f'<path class="rod" d="M{x:.0f} {y + 26:.0f}V{top:.0f}"/>'
        bar = f'<circle class="kit" cx="{x:.0f}" cy="{top:.0f}" r="10"/>'
        return Drawn(behind + bar, "", ((hand, 0.2),))
    frame = f"M{x - 44:.0f} {top:.0f}V{y:.0f}h88V{top:.0f}"
    return Drawn(f'<path class="rod" d="{frame}"/>', "", ((hand, 0.17),))


def _rail(hand: Point) -> str:
    """The long side of a frame that is carried, with its handle ends and feet."""
    x, y = place(hand)
    return (
        f'<path class="rod" d="M{x - 100:.0f} {y:.0f}h200M{x - 78:.0f} {y:.0f}v22'
        f'M{x + 78:.0f} {y:.0f}v22"/>'
    )
