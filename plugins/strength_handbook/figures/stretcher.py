"""A frame with somebody on it, carried at its rails."""

from strength_handbook.figures.chain import Point, Points
from strength_handbook.figures.clearance import row
from strength_handbook.figures.drawn import Drawn
from strength_handbook.figures.outlines import SCALE

_BEYOND = 0.07
"""How far the handles reach beyond the outer hands, statures."""
_FEET = 0.17
"""The longest feet of a frame, statures: one that nobody lifts from the floor has such, too."""
_FREE = 0.20
"""From a bearer's hands to who lies between the bearers, statures."""


def out_of_step(points: Points) -> Points:
    """A bearer half a stride on: the legs changed over, so that the frame does not swing."""
    legs = ("knee", "ankle", "heel", "ball", "toe")
    changed = {name: points["far " + name] for name in legs}
    return {**points, **changed, **{"far " + name: points[name] for name in legs}}


def draw_stretcher(hands: list[Point], down: float) -> Drawn:
    """The long side of the frame, level with the hands, and who lies strapped on it.

    Args:
        hands: the near hand of everybody who carries.
        down: how high the hands are when the frame stands on its feet, statures.
    """
    left = (min(x for x, _ in hands) - _BEYOND) * SCALE
    right = (max(x for x, _ in hands) + _BEYOND) * SCALE
    y = -sum(up for _, up in hands) / len(hands) * SCALE
    wide = right - left
    high = min(down, _FEET) * SCALE - 4
    feet = "".join(f"M{left + share * wide:.0f} {y:.0f}v{high:.0f}" for share in (0.2, 0.8))
    begin, long = left + (_BEYOND + _FREE) * SCALE, wide - 2 * (_BEYOND + _FREE) * SCALE
    lying = (  # shoulders first, then a body that gets flatter, and toes up
        f"M{begin + 38:.0f} {y - 4:.0f}q2-34 {0.14 * long:.0f}-36l{0.52 * long:.0f} 12"
        f"L{begin + long - 14:.0f} {y - 20:.0f}q2-14 10-14q6 2 4 30z"
    )
    at = [(begin + share * long, y - high) for share, high in ((0.24, 38), (0.66, 28))]
    straps = "".join(f"M{x - 4:.0f} {top:.0f}L{x + 3:.0f} {y:.0f}" for x, top in at)
    head = f'<circle class="thing" cx="{begin + 17:.0f}" cy="{y - 21:.0f}" r="17"/>'
    rail = tuple(row([(left / SCALE, -y / SCALE), (right / SCALE, -y / SCALE)], 0.015))
    return Drawn(
        solid=rail,
        around=(((left / SCALE, -y / SCALE), 0.03), ((right / SCALE, -y / SCALE), 0.03)),
        between=f'<path class="thing" d="{lying}"/>{head}<path class="strap" d="{straps}"/>'
        f'<path class="rod" d="M{left:.0f} {y:.0f}H{right:.0f}{feet}"/>',
    )
