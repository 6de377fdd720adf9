"""A rig over the lifter: a bar from its end, with what hangs from it, and its post ahead."""

from strength_handbook.figures.body import STATURE
from strength_handbook.figures.chain import Point
from strength_handbook.figures.drawn import Drawn
from strength_handbook.figures.outlines import SCALE, place

TOWEL = 0.26 / STATURE
"""From the hands up to the bar that towels hang over, statures."""
HANGER = 0.16
"""From a handle up to the frame that it hangs from, statures: over the head of who pulls up."""
_BAR = 6
"""Radius of a bar to hang from, units: a fist shows all round it."""
_POST = 0.23
"""How far ahead the post stands."""


def draw_rig(hand: Point, *, towels: bool) -> Drawn:
    """Two parallel handles under a frame, or towels over a bar seen from its end."""
    x, y = place(hand)
    post = x + _POST * SCALE
    if towels:
        top = y - TOWEL * SCALE
        frame = f'<path class="post" d="M{post:.0f} 0V{top:.0f}H{x:.0f}"/>'
        both = _towel(x + 9, y - 2, top, "far") + _towel(x, y, top, "near")
        bar = f'<circle class="bar" cx="{x:.0f}" cy="{top:.0f}" r="7"/>'
        around = (((hand[0], hand[1] + TOWEL), 0.05), ((hand[0] + _POST, hand[1]), 0.02))
        return Drawn(frame + both + bar, "", around)
    top = y - HANGER * SCALE
    frame = f'<path class="post" d="M{post:.0f} 0V{top:.0f}H{x + 10:.0f}"/>'
    far = f'<g class="far">{_parallel(x + 13, y - 6, top)}</g>'
    around = (((hand[0], hand[1] + HANGER), 0.09), ((hand[0] + _POST, hand[1] + HANGER), 0.02))
    return Drawn(frame + far, "", around, between=_parallel(x, y, top))


def draw_straight_bar(hand: Point) -> Drawn:
    """One straight bar from its end, in the fist, on the arm of its post."""
    x, y = place(hand)
    post = x + _POST * SCALE
    frame = f'<path class="post" d="M{post:.0f} 0V{y:.0f}H{x:.0f}"/>'
    bar = f'<circle class="bar" cx="{x:.0f}" cy="{y:.0f}" r="{_BAR}"/>'
    return Drawn(frame, bar, ((hand, 0.05), ((hand[0] + _POST, hand[1]), 0.02)))


def _parallel(x: float, y: float, top: float) -> str:
    """One of two handles that point ahead, hung from the frame above by its farther end."""
    return f'<path class="rod" d="M{x - 13:.0f} {y:.0f}H{x + 34:.0f}V{top:.0f}"/>'


def _towel(x: float, y: float, top: float, side: str) -> str:
    """A towel over the bar: a strand down at each side, both in one fist, and their ends below."""
    strands = (
        f"M{x:.0f} {y:.0f}L{x - 9:.0f} {top:.0f}a9 9 0 0 1 18 0L{x:.0f} {y:.0f}"
        f"l-5 44M{x:.0f} {y:.0f}l6 38"
    )
    return f'<path class="edging" d="{strands}"/><path class="towel {side}" d="{strands}"/>'
