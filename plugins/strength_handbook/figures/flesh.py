"""How low a body reaches as it is drawn: what lies, kneels or sits does so on its outline."""

from collections.abc import Iterator

from strength_handbook.figures.bases import Support
from strength_handbook.figures.chain import Points
from strength_handbook.figures.outlines import SCALE, SHANK, THIGH, TRUNK, around, lowest

LINE = 1.5 / SCALE
"""Half of the light edge round a part, and of the line that is the floor; statures."""
_LEG = (("hip", "knee", THIGH), ("knee", "ankle", SHANK))


def parts(points: Points) -> Iterator[tuple[str, float]]:
    """The parts that a body may rest on, each with its lowest place; statures."""
    yield "back", lowest(around(points["hip"], points["shoulder"], TRUNK, -1))
    for side in ("", "far "):
        for upper, lower, profile in _LEG:
            ends = points.get(side + upper, points[upper]), points[side + lower]
            yield side + lower.replace("ankle", "shin"), lowest(around(*ends, profile, 1))


def resting_height(points: Points, support: Support) -> float | None:
    """The lowest place of what carries a body that lies or kneels; None for any other."""
    on = {Support.BACK: "back", Support.SHOULDERS: "back", Support.KNEE: "knee"}.get(support)
    if on is None:
        return None
    found = dict(parts(points))
    return min(found[on], found["shin"]) if on == "knee" else found[on]
