"""How much of the body a lift moves, and what has to be added or taken off for a wanted load.

Percentages are of body mass. Push-ups have a module of their own.
"""

from collections.abc import Collection
from typing import Literal

from strength_handbook.calc.pchip import fritsch_butland_1984
from strength_handbook.calc.registry import Evidence, formula

Build = Literal["men", "women"]
Segment = Literal["head", "trunk", "upper arm", "forearm", "hand", "thigh", "shank", "foot"]

_SUBJECT = "Body mass moved"

DE_LEVA_1996_MASS: dict[Build, dict[Segment, float]] = {
    "men": {
        "head": 6.94,
        "trunk": 43.46,
        "upper arm": 2.71,
        "forearm": 1.62,
        "hand": 0.61,
        "thigh": 14.16,
        "shank": 4.33,
        "foot": 1.37,
    },
    "women": {
        "head": 6.68,
        "trunk": 42.57,
        "upper arm": 2.55,
        "forearm": 1.38,
        "hand": 0.56,
        "thigh": 14.78,
        "shank": 4.81,
        "foot": 1.29,
    },
}
"""Mass of one segment (one side for limbs) in % of body mass."""

# Melrose & Dawes 2015: body angle from the vertical in degrees, load in the straps in % body mass.
_ROW_ANGLE = (30.0, 45.0, 60.0, 75.0)
_ROW_PERCENT = (37.44, 52.88, 68.08, 79.38)


@formula(
    subject=_SUBJECT,
    title="Total that moves: body and what hangs on it",
    equation="total = k × BM + added",
    inputs={
        "body_mass": "BM = body weight, kg",
        "added": "added = weight hung on, kg (help counts negative)",
        "k": "k = share of the body that moves, 1 for pull-up and dip",
    },
    output="total, kg",
    source="common practice, no source",
    evidence=Evidence.ARITHMETIC,
    ranges={"k": (0.05, 1.0)},
)
def system_load(body_mass: float, added: float = 0.0, k: float = 1.0) -> float:
    """Whole load moved in kg: share `k` of the body plus the added kilos (assistance negative).

    Raises:
        OutOfRangeError: for a share outside 0.05–1.

    Example:
        >>> system_load(72, -9)
        63.0
    """
    return k * body_mass + added


@formula(
    subject=_SUBJECT,
    title="What to add or take off for a percent of the best total",
    equation="added = p ÷ 100 × (k × BM + best) − k × BM",
    inputs={
        "percent": "p = percent of the best total, %",
        "body_mass": "BM = body weight, kg",
        "best_added": "best = weight added at the best test, kg (help counts negative)",
        "k": "k = share of the body that moves, 1 for pull-up and dip",
    },
    output="kg to add; negative: kg of help",
    source="common practice, no source",
    evidence=Evidence.ARITHMETIC,
    ranges={"percent": (0.0, 150.0), "k": (0.05, 1.0)},
)
def added_for_percent(percent: float, body_mass: float, best_added: float, k: float = 1.0) -> float:
    """Kilos to add for `percent` of the best system load; a negative result is assistance.

    The percentage is of body and added load together: of the added kilos alone it would mean
    nothing, 75 % of +12 kg at 72 kg being 96 % of the system.

    Raises:
        OutOfRangeError: for a percentage outside 0–150 or a share outside 0.05–1.

    Example:
        >>> added_for_percent(75, 72, 12)
        -9.0
    """
    return percent / 100 * system_load(body_mass, best_added, k) - k * body_mass


@formula(
    subject=_SUBJECT,
    title="Share of the body without some segments",
    equation="share = 100 % − 2 × Σ limb segments left out (head and trunk once)",
    inputs={
        "without": "limb segments left out = parts of the body at rest, % of body weight each",
        "build": "table for men, for women, or the mean of both",
    },
    output="share of the body that moves, % of body weight",
    source="de Leva 1996, J Biomech 29:1223–1230",
    evidence=Evidence.PUBLISHED,
    error="Men and women differ by about 1 point.",
)
def de_leva_1996_share(without: Collection[Segment], build: Build | None = None) -> float:
    """Body mass in % without both sides of the named segments.

    A squat moves the body without shanks and feet, a pull-up without forearms and hands.

    Args:
        without: segments that stay where they are.
        build: reference body; None gives the mean of both.

    Example:
        >>> de_leva_1996_share(["shank", "foot"], "men")
        88.6
    """
    builds: tuple[Build, ...] = ("men", "women") if build is None else (build,)
    shares = []
    for one in builds:
        masses = DE_LEVA_1996_MASS[one]
        gone = sum(masses[s] * (1 if s in ("head", "trunk") else 2) for s in set(without))
        shares.append(100 - gone)
    return sum(shares) / len(shares)


@formula(
    subject="Suspension row",
    title="Share of body weight in the straps, by body angle",
    equation="37.44 % at 30°, 52.88 % at 45°, 68.08 % at 60°, 79.38 % at 75°; smooth between",
    inputs={
        "angle_deg": "angle of the body from upright, feet under the anchor, °",
    },
    output="% of body weight",
    source="Melrose & Dawes 2015, J Athl Enhanc 4(1)",
    evidence=Evidence.PUBLISHED,
    error="People differ by 0.6 to 2.1 points (SD); length of straps and arms matter too.",
    ranges={"angle_deg": (30.0, 75.0)},
)
def melrose_dawes_2015_row(angle_deg: float) -> float:
    """Share of body mass in the straps in % with the feet under the anchor.

    Raises:
        OutOfRangeError: outside the measured 30–75°.

    Example:
        >>> melrose_dawes_2015_row(45)
        52.88
    """
    return fritsch_butland_1984(_ROW_ANGLE, _ROW_PERCENT, angle_deg)
