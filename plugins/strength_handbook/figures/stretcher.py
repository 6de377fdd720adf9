"""A frame with somebody on it, carried at its rails."""

from strength_handbook.figures.chain import Point
from strength_handbook.figures.drawn import Drawn
from strength_handbook.figures.outlines import SCALE

_BEYOND = 0.17
"""How far the frame reaches beyond the outer hands, statures."""


def draw_stretcher(hands: list[Point]) -> Drawn:
    """The long side of the frame, level with the hands, with its feet and a body on top.

    Args:
        hands: the near hand of everybody who carries.
    """
    left = (min(x for x, _ in hands) - _BEYOND) * SCALE
    right = (max(x for x, _ in hands) + _BEYOND) * SCALE
    y = -sum(up for _, up in hands) / len(hands) * SCALE
    wide = right - left
    feet = "".join(f"M{left + share * wide:.0f} {y:.0f}v20" for share in (0.12, 0.88))
    lying = (
        f"M{left + 0.06 * wide:.0f} {y - 4:.0f}v-24q6-8 16 0l{0.36 * wide:.0f}-10"
        f"q{0.18 * wide:.0f}-4 {0.21 * wide:.0f} 34z"
    )
    head = f'<circle class="thing" cx="{left + 0.72 * wide:.0f}" cy="{y - 20:.0f}" r="17"/>'
    return Drawn(
        around=(((left / SCALE, -y / SCALE), 0.03), ((right / SCALE, -y / SCALE), 0.03)),
        between=f'<path class="thing" d="{lying}"/>{head}'
        f'<path class="rod" d="M{left:.0f} {y:.0f}H{right:.0f}{feet}"/>',
    )
