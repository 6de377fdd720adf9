"""Pivoted bar (landmine): what the hands carry.

One end of the bar turns in a pivot on the floor, plates sit on the far sleeve, the hands hold the
bar somewhere near that end. Statics of a lever; a steady lift is assumed.
"""

from collections.abc import Sequence
from math import asin, cos, degrees, radians

from strength_handbook.calc.barbell import BarShape, PlateShape, plate_centres
from strength_handbook.calc.registry import Evidence, formula

_SUBJECT = "Pivoted bar (landmine)"
_ERROR = "grip 5 cm further out or in: −2.3 or +2.3 %; pivot 5 cm off: +1.1 %; steady lift only"


def _weight_moment(bar: BarShape, plates: Sequence[PlateShape], pivot_offset: float) -> float:
    """Sum of mass × distance from the pivot, in kg·m, with the bar level."""
    centre = bar.length / 2 + pivot_offset
    places = plate_centres(bar, plates)
    return bar.mass * centre + sum(
        plate.mass * (centre + place) for plate, place in zip(plates, places, strict=True)
    )


@formula(
    subject=_SUBJECT,
    title="Load in the hands, pushed straight up",
    equation="F = (m × (L/2 + e) + Σ M × (d + e)) ÷ (l + e)",
    inputs={
        "bar": "m = bar, kg; L = length of the bar, m",
        "plates": "M = each plate, kg; d = its middle from the end of the bar at the pivot, m",
        "grip": "l = hands from the end of the bar at the pivot, m",
        "pivot_offset": "e = pivot beyond the end of the bar, m",
    },
    output="F, kg at the hands; the same at every angle of the bar",
    source="statics of a lever",
    evidence=Evidence.ARITHMETIC,
    error=_ERROR,
    ranges={"grip": (0.3, 2.5), "pivot_offset": (0.0, 0.2)},
)
def landmine_vertical(
    bar: BarShape, plates: Sequence[PlateShape], grip: float, pivot_offset: float = 0.0
) -> float:
    """Vertical force at the hands in kgf; it does not depend on the angle of the bar.

    Args:
        bar: the bar.
        plates: plates on the far sleeve, from the collar outwards.
        grip: distance of the hands from the bar end at the pivot, m.
        pivot_offset: distance of the pivot's axis beyond that bar end, m.

    Raises:
        OutOfRangeError: for a grip or an offset no pivot has.
        ValueError: for a grip beyond the end of the bar.

    Example:
        >>> landmine_vertical(BarShape(), [], 2.10)
        10.476
    """
    if grip > bar.length:
        raise ValueError(f"the hands at {grip:g} m are beyond the end of a {bar.length:g} m bar")
    return _weight_moment(bar, plates, pivot_offset) / (grip + pivot_offset)


@formula(
    subject=_SUBJECT,
    title="Load in the hands, pushed square to the bar",
    equation="square = straight up × cos θ",
    inputs={
        "bar": "bar, kg and m",
        "plates": "straight up = load pushed straight up with these plates, kg",
        "grip": "hands from the end of the bar at the pivot, m",
        "angle_deg": "θ = angle of the bar above the floor, °",
        "pivot_offset": "pivot beyond the end of the bar, m",
    },
    output="kg at the hands",
    source="statics of a lever",
    evidence=Evidence.ARITHMETIC,
    error=_ERROR,
    ranges={"angle_deg": (0.0, 90.0)},
)
def landmine_square(
    bar: BarShape,
    plates: Sequence[PlateShape],
    grip: float,
    angle_deg: float,
    pivot_offset: float = 0.0,
) -> float:
    """Force at the hands square to the bar in kgf, with the bar `angle_deg` above the floor.

    Raises:
        OutOfRangeError: for an angle outside 0–90° or as `landmine_vertical`.

    Example:
        >>> landmine_square(BarShape(), [PlateShape(20, 0.054)], 1.74, 30)
        28.987
    """
    return landmine_vertical(bar, plates, grip, pivot_offset) * cos(radians(angle_deg))


@formula(
    subject=_SUBJECT,
    title="Angle of the bar from the height of the hands",
    equation="sin θ = (hand height − pivot height) ÷ (l + e)",
    inputs={
        "hand_height": "hand height = height of the hands, m",
        "pivot_height": "pivot height = height of the pivot, m",
        "grip": "l = hands from the end of the bar at the pivot, m",
        "pivot_offset": "e = pivot beyond the end of the bar, m",
    },
    output="θ, angle of the bar above the floor, °",
    source="geometry",
    evidence=Evidence.ARITHMETIC,
)
def landmine_angle(
    hand_height: float, pivot_height: float, grip: float, pivot_offset: float = 0.0
) -> float:
    """Angle of the bar above the floor in degrees.

    Raises:
        ValueError: when the hands are lower than the pivot or higher than the bar reaches.

    Example:
        >>> landmine_angle(1.10, 0.05, 2.10)
        30.0
    """
    rise, reach = hand_height - pivot_height, grip + pivot_offset
    if not 0 <= rise <= reach:
        raise ValueError(f"hands {rise:g} m above the pivot on a lever of {reach:g} m")
    return degrees(asin(rise / reach))


@formula(
    subject=_SUBJECT,
    title="Share of bar and plate that reaches the hands",
    equation="F = A × m + B × M;  A = (L/2 + e) ÷ (l + e);  B = (d₁ + e) ÷ (l + e)",
    inputs={
        "bar": "m = bar, kg; L = length of the bar, m; d₁ = first plate from the end of the bar "
        "at the pivot, m",
        "thickness": "M = plate, kg, thickness in m",
        "grip": "l = hands from the end of the bar at the pivot, m",
        "pivot_offset": "e = pivot beyond the end of the bar, m",
    },
    output="A, share of the bar, and B, share of the first plate",
    source="statics of a lever",
    evidence=Evidence.ARITHMETIC,
    error=_ERROR,
)
def landmine_shares(
    bar: BarShape, thickness: float, grip: float, pivot_offset: float = 0.0
) -> tuple[float, float]:
    """Shares A of the bar and B of one plate of that thickness which the hands carry.

    Example:
        >>> landmine_shares(BarShape(), 0.054, 2.15)
        (0.512, 0.843)
    """
    empty = landmine_vertical(bar, [], grip, pivot_offset)
    with_plate = landmine_vertical(bar, [PlateShape(1.0, thickness)], grip, pivot_offset)
    return empty / bar.mass, with_plate - empty
