"""What hands pull at the end of a line: cable, strap, rope, and the sled that comes along."""

from collections.abc import Sequence
from math import sqrt

from strength_handbook.figures.body import STATURE
from strength_handbook.figures.chain import Point, distance
from strength_handbook.figures.clearance import row
from strength_handbook.figures.outlines import SCALE, middle_of, place
from strength_handbook.figures.posing import Posed, posed
from strength_handbook.model.figure import Beside, Figure

TIGHT = ("strap", "rope")
"""Lines with a sled at their end; what is held back of a rope falls to the floor."""
SLED_POST = 0.3
"""Metres: how high a line is fastened on a sled; drawn by eye."""
_SLED_END = 106 / SCALE
"""From a sled's front post to its other end, statures, as it is drawn."""
ENDS = {
    "cable": ("cable-column",),
    "strap": ("sled", "anchor"),
    "rope": ("sled",),
    "pivot-bar": ("pivot",),
}
"""What a line leads to from the hands."""
_LOOSE = 0.1
"""Statures by which a hand has come back from where there is slack rope to draw."""


_BEHIND_FEET = 0.17
"""From the rear foot back to the middle of slack rope on the floor, statures."""


def pulled_along(figure: Figure, one: Posed) -> list[Beside]:
    """What stands around; a sled has come as far as its tight line, which keeps its length."""
    if figure.holds not in TIGHT:
        return figure.things
    before = posed(figure.start, figure.holds).points["hand"]
    return [
        thing.model_copy(update={"at": _at(thing, before, one.points["hand"])})
        if thing.thing == "sled"
        else thing
        for thing in figure.things
    ]


def _at(sled: Beside, before: Point, hand: Point) -> float:
    """Where a sled stands, centimetres, when the hand that holds its line has moved."""
    hook = sled.at / 100 / STATURE, SLED_POST / STATURE
    level = distance(before, hook) ** 2 - (hand[1] - hook[1]) ** 2
    return (hand[0] + sqrt(max(level, 0.0))) * STATURE * 100


def sled_end(figure: Figure, one: Posed) -> Point | None:
    """The end of a pulled sled that is farther from the lifter."""
    if figure.holds not in TIGHT:
        return None
    sleds = (thing for thing in pulled_along(figure, one) if thing.thing == "sled")
    return next(((sled.at / 100 / STATURE + _SLED_END, 0.05) for sled in sleds), None)


def cord(figure: Figure, one: Posed) -> list[Point]:
    """From the near hand to what it pulls, over the other hand of who reaches along a rope."""
    wanted = ENDS.get(figure.holds, ())
    for thing in pulled_along(figure, one):
        if thing.thing in wanted:
            hand, far = one.points["hand"], one.points["far hand"]
            hook = thing.at / 100 / STATURE, _hook(thing) / STATURE
            over = [far] if figure.holds == "rope" and far[0] > hand[0] + _LOOSE else []
            return [hand, *over, hook]
    return []


def _hook(thing: Beside) -> float:
    """How high a line is fastened, metres: a column or an anchor says it, a sled has its post."""
    return {"sled": SLED_POST, "pivot": 0.06}.get(thing.thing, thing.height)


def draw_line(figure: Figure, one: Posed) -> str:
    """Cable with its handle, strap, rope with its slack, or a bar with its plates."""
    points = cord(figure, one)
    if not points:
        return ""
    drawn = [place(point) for point in points]
    (x, y), (to_x, to_y) = drawn[0], drawn[1]
    path = "M" + "L".join(f"{x:.0f} {y:.0f}" for x, y in drawn)
    if figure.holds == "pivot-bar":
        socket = _socket((to_x, to_y), (x, y))
        return f'<path class="rod" d="{path}"/>{socket}{_end_plates((x, y), (to_x, to_y))}'
    slack = _slack(figure, one) if figure.holds == "rope" else ""
    grip = _stirrup((x, y), (to_x, to_y)) if figure.holds == "cable" else ""
    if anchored(figure):
        far_x, far_y = place(one.points["far hand"])
        slack = f"M{far_x + _APART:.0f} {far_y:.0f}L{to_x:.0f} {to_y:.0f}"
        grip = _stirrup((x, y), (to_x, to_y))
    light = "M" + "L".join(f"{x:.0f} {y:.0f}" for x, y in [*drawn[:-1], _before(drawn)])
    return f'<path class="halo" d="{light}{slack}"/><path class="cord" d="{path}{slack}"/>{grip}'


def anchored(figure: Figure) -> bool:
    """Both hands are on straps from a point that stays where it is."""
    return figure.holds == "strap" and any(one.thing == "anchor" for one in figure.things)


def _before(drawn: Sequence[Point]) -> Point:
    """Where a line's light edge ends: short of what it is fastened to."""
    return middle_of(drawn[-2], drawn[-1], 0.9)


def heap_place(figure: Figure, one: Posed) -> Point | None:
    """Where a rope that has come in lies: behind both feet, where no foot gets into a loop."""
    before, hand = posed(figure.start, figure.holds).points["hand"], one.points["hand"]
    if figure.holds != "rope" or distance(before, hand) < _LOOSE:
        return None
    feet = (one.points[side + end][0] for side in ("", "far ") for end in ("heel", "toe"))
    return min(feet) - _BEHIND_FEET, 0.0


def _slack(figure: Figure, one: Posed) -> str:
    """The rope behind the hand: its end, or as much as has come in, in loops on the floor."""
    x, y = place(one.points["hand"])
    heap = heap_place(figure, one)
    if heap is None:
        return f"M{x:.0f} {y:.0f}q-4 22-14 30"
    loops = "".join(
        f"m0 0a{wide} {high} 0 1 {turn}-{2 * wide} 0a{wide} {high} 0 1 {turn} {2 * wide} 0"
        for wide, high, turn in ((34, 8, 0), (26, 6, 1), (38, 7, 1))
    )
    to_x, _ = place(heap)
    fall = f"C{x - 60:.0f} {0.95 * y:.0f} {to_x + 20:.0f} {0.8 * y:.0f} {to_x:.0f}-9"
    return f"M{x:.0f} {y:.0f}{fall}{loops}"


def _stirrup(hand: Point, towards: Point) -> str:
    """The handle at a cable's end: a grip across it, and two straps from its ends; units."""
    (ax, ay), (bx, by) = across(hand, towards, 0, _GRIP)
    (x, y), _ = across(hand, towards, 36, 0)
    tip = f"{x:.0f} {y:.0f}"
    return (
        f'<path class="cord" d="M{ax:.0f} {ay:.0f}L{tip}L{bx:.0f} {by:.0f}"/>'
        f'<path class="rod" d="M{ax:.0f} {ay:.0f}L{bx:.0f} {by:.0f}"/>'
    )


_GRIP = 19
"""Half of a cable's handle, units."""
_APART = 9
"""How far the farther of two straps is moved at the hand, units, so that there are two to see."""
_PLATES, _PLATE = (50, 61), 38
"""How far from the hand the plates at a bar's end are, and half of their height; units."""


def on_the_line(figure: Figure, line: Sequence[Point]) -> list[tuple[Point, float]]:
    """What an arrow keeps off besides a line itself: plates at a bar's end, a handle."""
    if not line or not (figure.holds in ("pivot-bar", "cable") or anchored(figure)):
        return []
    far, half = (_PLATES[1], _PLATE) if figure.holds == "pivot-bar" else (0, _GRIP)
    return row(across(line[0], line[1], far / SCALE, half / SCALE), 0.07)


def across(hand: Point, towards: Point, far: float, half: float) -> tuple[Point, Point]:
    """Both ends of something square to a line, some way along it from the hand."""
    length = distance(hand, towards)
    x, y = (towards[0] - hand[0]) / length, (towards[1] - hand[1]) / length
    at_x, at_y = hand[0] + far * x, hand[1] + far * y
    return (at_x - half * y, at_y + half * x), (at_x + half * y, at_y - half * x)


def _socket(pivot: Point, hand: Point) -> str:
    """The tube that a pivoted bar is pushed into, on its joint; both places in units."""
    (x, y), (end_x, end_y) = pivot, across(pivot, hand, 46, 0)[0]
    return (
        f'<path class="plank" d="M{x:.0f} {y:.0f}L{end_x:.0f} {end_y:.0f}"/>'
        f'<circle class="roll" cx="{x:.0f}" cy="{y:.0f}" r="10"/>'
        f'<circle class="hole" cx="{x:.0f}" cy="{y:.0f}" r="3"/>'
    )


def _end_plates(hand: Point, pivot: Point) -> str:
    """Plates near the free end of a bar, edge on; both places in units."""
    edges = [across(hand, pivot, far, _PLATE) for far in _PLATES]
    path = "".join(f"M{a[0]:.0f} {a[1]:.0f}L{b[0]:.0f} {b[1]:.0f}" for a, b in edges)
    return f'<path class="edge" d="{path}"/>'
