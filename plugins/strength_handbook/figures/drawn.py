"""Pieces of a drawing in the layers that a body stands between."""

from dataclasses import dataclass

from strength_handbook.figures.chain import Point


@dataclass(frozen=True, slots=True)
class Drawn:
    """Layers of SVG, and how far they reach.

    Attributes:
        behind, before: drawn before and after the body.
        around: middle and radius of circles that the drawing has to leave room for, statures.
        between: drawn after trunk and legs, before the near arm.
        solid: circles that an arrow keeps off, where those of `around` are too wide for that.
    """

    behind: str = ""
    before: str = ""
    around: tuple[tuple[Point, float], ...] = ()
    between: str = ""
    solid: tuple[tuple[Point, float], ...] = ()
