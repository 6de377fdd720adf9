"""A rig over the lifter: a bar from its end, with what hangs from it, and its post ahead."""

from strength_handbook.figures.body import STATURE
from strength_handbook.figures.chain import Point
from strength_handbook.figures.drawn import Drawn
from strength_handbook.figures.outlines import SCALE, place

TOWEL = 0.30 / STATURE
"""From the hands up to the bar that towels hang over, statures."""
_POST = 0.23
"""How far ahead the post stands."""


def draw_rig(hand: Point, *, towels: bool) -> Drawn:
    """Handles that point ahead to the cross bar, or towels over it; neither meets the head."""
    x, y = place(hand)
    post = x + _POST * SCALE
    if towels:
        top = y - TOWEL * SCALE
        frame = f'<path class="post" d="M{post:.0f} 0V{top:.0f}H{x:.0f}"/>'
        # over the bar, down at both its sides, together in the fist, ends below it
        towel = (
            f'<path class="towel" d="M{x - 16:.0f} {y + 48:.0f}L{x - 6:.0f} {y:.0f}L{x - 13:.0f} '
            f"{top:.0f}a13 13 0 0 1 26 0L{x + 6:.0f} {y:.0f}L{x + 16:.0f} {y + 48:.0f}"
            f'L{x:.0f} {y + 36:.0f}z"/>'
        )
        bar = f'<circle class="bar" cx="{x:.0f}" cy="{top:.0f}" r="7"/>'
        around = (((hand[0], hand[1] + TOWEL), 0.05), ((hand[0] + _POST, hand[1]), 0.02))
        return Drawn(frame + towel + bar, "", around)
    rail = (
        f'<path class="post" d="M{post:.0f} 0V{y:.0f}"/>'
        f'<path class="grip" d="M{x - 22:.0f} {y:.0f}H{post:.0f}"/>'
        f'<circle class="bar" cx="{post:.0f}" cy="{y:.0f}" r="9"/>'
    )
    return Drawn(rail, "", ((hand, 0.07), ((hand[0] + _POST, hand[1]), 0.04)))
