"""A bar in the rack: will it tip?

The bar rests on two hooks. Weight outside a hook turns the bar about it, everything else holds it
down. The margin is holding moment ÷ turning moment at the worse hook; below 1 the bar tips. A
margin of 2 is asked for with the bar 5 cm off-centre: a plate is yanked off, not lifted.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from math import inf

from strength_handbook.calc.barbell import BarShape, PlateShape, plate_centres
from strength_handbook.calc.registry import Evidence, formula

OFF_CENTRE = 0.05
"""How far out of the middle a bar is assumed to lie, m."""
SAFETY_FACTOR = 2.0
"""Margin asked for in every state of loading and unloading."""

SUBJECT = "Bar in the rack"
STATICS = "statics; checked against a rigid-body simulation"


@dataclass(frozen=True, slots=True)
class BandPull:
    """A band that pulls a sleeve down.

    Attributes:
        pull: vertical pull at rack height, kgf.
        position: distance from the middle of the bar, m.
    """

    pull: float
    position: float

    def __post_init__(self) -> None:
        if self.pull < 0 or self.position <= 0:
            raise ValueError(f"a band pulls down beside the middle of the bar, not {self}")


@dataclass(frozen=True, slots=True)
class Side:
    """What is on one sleeve.

    Attributes:
        plates: from the collar outwards.
        bands: in the order they were put on.
    """

    plates: tuple[PlateShape, ...] = ()
    bands: tuple[BandPull, ...] = ()


def _forces(bar: BarShape, left: Side, right: Side) -> Iterator[tuple[float, float]]:
    """Downward force in kgf and place along the bar in m, right of the middle positive."""
    yield bar.mass, 0.0
    for sign, side in ((-1, left), (1, right)):
        for plate, place in zip(side.plates, plate_centres(bar, side.plates), strict=True):
            yield plate.mass, sign * place
        for band in side.bands:
            yield band.pull, sign * band.position


@formula(
    subject=SUBJECT,
    title="Margin against tipping",
    equation="margin = Σ inside (F × lever) ÷ Σ outside (F × lever), about each hook; the "
    "smaller one counts",
    inputs={
        "bar": "F, lever = weight of bar, plates and bands, kg, and each one's distance from the "
        "hook, m",
        "left": "plates and bands on the left, inner to outer",
        "right": "plates and bands on the right, inner to outer",
        "spacing": "distance between the middles of the hooks, m",
        "shift": "how far the bar lies right of the middle, m",
    },
    output="margin; below 1 the bar tips",
    source=STATICS,
    evidence=Evidence.ARITHMETIC,
    error="0.2 % on the threshold, at rest. A yank or a dropped plate is what the factor 2 is for.",
)
def tip_margin(bar: BarShape, left: Side, right: Side, spacing: float, shift: float = 0.0) -> float:
    """Holding moment ÷ turning moment at the worse hook; infinite where nothing turns the bar.

    Args:
        bar: the bar.
        left: what is on the left sleeve.
        right: what is on the right sleeve.
        spacing: distance between the points where the bar rests, m.
        shift: how far the bar lies to the right of the middle, m.

    Raises:
        ValueError: for hooks that are not between the collars.

    Example:
        >>> tip_margin(BarShape(), Side(), Side((PlateShape(25, 0.060),)), 1.10)
        2.667
    """
    if not 0 < spacing <= bar.between_collars:
        raise ValueError(f"hooks {spacing:g} m apart, collars {bar.between_collars:g} m")
    half = spacing / 2
    worst = inf
    forces = tuple(_forces(bar, left, right))
    for direction in (-1, 1):
        holding = turning = 0.0
        for force, place in forces:
            outside = direction * (place + shift) - half
            if outside > 0:
                turning += force * outside
            else:
                holding -= force * outside
        if turning > 0:
            worst = min(worst, holding / turning)
    return worst


def off_centre_margin(
    bar: BarShape, left: Side, right: Side, spacing: float, off_centre: float = OFF_CENTRE
) -> float:
    """Smaller margin of a bar lying `off_centre` m to the left or to the right.

    Raises:
        ValueError: as `tip_margin`.

    Example:
        >>> off_centre_margin(BarShape(), Side(), Side((PlateShape(25, 0.060),)), 1.10)
        1.860
    """
    return min(tip_margin(bar, left, right, spacing, shift) for shift in (-off_centre, off_centre))


@formula(
    subject=SUBJECT,
    title="Load on one side that tips an empty bar",
    equation="X = m × (a − δ) ÷ (d + δ − a);  a = spacing ÷ 2",
    inputs={
        "bar_mass": "m = bar, kg",
        "spacing": "spacing = distance between the middles of the hooks, m",
        "distance": "d = distance of the load from the middle of the bar, m",
        "off_centre": "δ = how far the bar lies off-centre towards the load, m",
    },
    output="X, kg on one side (for a band, kg of pull); no limit for a load between the hooks",
    source=STATICS,
    evidence=Evidence.ARITHMETIC,
    error="0.2 %, at rest.",
)
def tipping_load(
    bar_mass: float, spacing: float, distance: float, off_centre: float = 0.0
) -> float:
    """Single load in kg, or band pull in kgf, at which an otherwise empty bar tips.

    Example:
        >>> tipping_load(20, 1.10, 0.70)
        73.333
    """
    half = spacing / 2
    lever = distance + off_centre - half
    return max(0.0, bar_mass * (half - off_centre) / lever) if lever > 0 else inf


@formula(
    subject=SUBJECT,
    title="Safe load on one side of an empty bar",
    equation="safe load = X ÷ safety factor;  X = load on one side that tips the bar",
    inputs={
        "bar": "mass, kg, and lengths of the bar, m",
        "spacing": "distance between the middles of the hooks, m",
        "thickness": "thickness of a plate that lies against the collar, m",
        "off_centre": "how far the bar may lie off-centre, m",
        "factor": "safety factor = the house's margin, 2 where nothing else is set",
    },
    output="kg on one side, to be rounded down",
    source=STATICS,
    evidence=Evidence.HOUSE_RULE,
    error="Factor 2 and 5 cm off-centre are the house's margin.",
)
def lone_load(
    bar: BarShape,
    spacing: float,
    thickness: float = 0.050,
    off_centre: float = OFF_CENTRE,
    factor: float = SAFETY_FACTOR,
) -> float:
    """Heaviest single plate in kg that may stand alone on an otherwise empty bar.

    Example:
        >>> lone_load(BarShape(), 1.10)
        23.81
    """
    distance = bar.sleeve_start + thickness / 2
    return tipping_load(bar.mass, spacing, distance, off_centre) / factor
