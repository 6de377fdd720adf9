"""Bands on a bar, from the gym's own readings.

Bands of one colour differ by 8 to 19 % (McMaster 2010), so there is no table from colour to kilos:
each band is read with a scale between band and bar at two or more bar heights (three is enough)
and the curve is never extended beyond its readings.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from itertools import combinations, pairwise
from math import hypot

from strength_handbook.calc.pchip import fritsch_butland_1984
from strength_handbook.calc.registry import Evidence, OutOfRangeError, formula
from strength_handbook.calc.variable_load import VariableLoad

_SUBJECT = "Bands"


@dataclass(frozen=True, slots=True)
class BandCurve:
    """Readings of one band on one peg.

    Attributes:
        places: m, rising: bar heights (in place), or lengths of the whole loop (on a bench).
        pulls: kgf read there; a band never pulls less when longer.
    """

    places: tuple[float, ...]
    pulls: tuple[float, ...]

    def __post_init__(self) -> None:
        if len(self.places) != len(self.pulls) or len(self.places) < 2:
            raise ValueError("a band needs two or more readings, each a place and a pull")
        if any(b <= a for a, b in pairwise(self.places)):
            raise ValueError(f"places must rise from reading to reading: {self.places}")
        if self.pulls[0] < 0 or any(b < a for a, b in pairwise(self.pulls)):
            raise ValueError(f"pulls must be 0 or more and not fall: {self.pulls}")


@formula(
    subject=_SUBJECT,
    title="Pull of a band at a bar height",
    equation="smooth curve through the readings, without overshoot, at the height of the bar",
    inputs={
        "band": "readings of this band as it hangs, m and kg of pull",
        "height": "height of the bar, m",
    },
    output="kg of pull, one side",
    source="Fritsch FN, Butland J 1984, SIAM J Sci Stat Comput 5:300–304; readings by the gym",
    evidence=Evidence.MEASURED,
    error="With 2 readings up to 12 %, with 3 readings 2 to 3.5 % of the pull at the top.",
)
def band_pull(band: BandCurve, height: float) -> float:
    """Vertical pull of one band in kgf with the bar at `height` m.

    Raises:
        OutOfRangeError: outside the heights that were read.

    Example:
        >>> band_pull(BandCurve((0.2, 0.5, 0.8), (3.0, 7.5, 10.0)), 0.65)
        8.964
    """
    if not band.places[0] <= height <= band.places[-1]:
        raise OutOfRangeError("band_pull", "height", height, band.places[0], band.places[-1])
    return fritsch_butland_1984(band.places, band.pulls, height)


@formula(
    subject=_SUBJECT,
    title="Pull of a loop that was read on a bench",
    equation="l = √((y − yₐ)² + x²);  T = n·f(n·l);  pull = T·(y − yₐ)/l",
    inputs={
        "loop": "f = pull of the whole loop at each length that was read, kg of pull",
        "bar_height": "y = height of the bar, m",
        "peg_height": "yₐ = height of the peg, m",
        "sideways": "x = sideways distance of peg and bar, m",
        "doubled": "n = 1 straight, 2 doubled under the peg with both ends on the bar",
    },
    output="pull straight down, kg of pull, one side",
    source="geometry of the stretched loop; readings by the gym",
    evidence=Evidence.MEASURED,
    error="As the readings. A sideways distance left out costs 1 to 6 % up to 10 cm.",
)
def loop_pull(
    loop: BandCurve,
    bar_height: float,
    peg_height: float = 0.0,
    sideways: float = 0.0,
    *,
    doubled: bool = False,
) -> float:
    """Vertical pull in kgf of a loop between peg and bar.

    Args:
        loop: pull of the whole loop against its length, end to end.
        bar_height: m.
        peg_height: m.
        sideways: m between the peg and the point below the bar.
        doubled: passed under the peg, both ends on the bar.

    Raises:
        OutOfRangeError: for a stretched length that was not read.
        ValueError: when bar and peg are in one place.

    Example:
        >>> loop_pull(BandCurve((1.0, 1.5, 2.0), (0.0, 20.0, 30.0)), 0.75, doubled=True)
        40.0
    """
    rise = bar_height - peg_height
    length = hypot(rise, sideways)
    if length == 0:
        raise ValueError("bar and peg are in one place")
    runs = 2 if doubled else 1
    return runs * band_pull(loop, runs * length) * rise / length


@formula(
    subject=_SUBJECT,
    title="Load at bottom, middle and top with a band on each side",
    equation="L(h) = weight + T_left(h) + T_right(h);  share = both bands ÷ L at the top",
    inputs={
        "weight": "weight = bar and plates, kg",
        "left": "T_left = pull of the left band by height, kg of pull",
        "right": "T_right = pull of the right band by height, kg of pull",
        "bottom": "h = height of the bar, here at the bottom, m",
        "top": "height of the bar at the top, m",
    },
    output="kg at bottom, middle and top, and the bands' share at the top, %",
    source="sum of forces; readings by the gym",
    evidence=Evidence.MEASURED,
    error="As the readings. Above the sticking point more than a straight bar would allow.",
)
def banded_load(
    weight: float, left: BandCurve, right: BandCurve, bottom: float, top: float
) -> VariableLoad:
    """Load at three bar heights and the bands' share at the top.

    Args:
        weight: bar and plates, kg.
        left: band on the left sleeve, read by bar height.
        right: band on the right sleeve.
        bottom: lowest bar height, m.
        top: highest bar height, m.

    Raises:
        OutOfRangeError: for a height that was not read.
        ValueError: without a bar or for a top that is not above the bottom.

    Example:
        >>> band = BandCurve((0.2, 0.5, 0.8), (3.0, 7.5, 10.0))
        >>> banded_load(80, band, band, 0.2, 0.8)
        VariableLoad(bottom=86.0, middle=95.0, top=100.0, top_share=20.0)
    """
    if weight <= 0 or top <= bottom:
        raise ValueError(f"a bar of {weight:g} kg from {bottom:g} m to {top:g} m")
    low, mid, high = (
        weight + (band_pull(left, h) + band_pull(right, h))
        for h in (bottom, (bottom + top) / 2, top)
    )
    return VariableLoad(low, mid, high, 100 * (high - weight) / high)


@formula(
    subject=_SUBJECT,
    title="Difference between left and right band",
    equation="difference = 100 × |T_left − T_right| ÷ mean of the two",
    inputs={
        "left": "T_left = pull of the left band, kg of pull",
        "right": "T_right = pull of the right band, kg of pull",
        "height": "height of the bar at which both are compared, m",
    },
    output="difference, % of the mean pull",
    source="common practice, no source",
    evidence=Evidence.ARITHMETIC,
)
def band_mismatch(left: BandCurve, right: BandCurve, height: float) -> float:
    """Difference of the two sides in % of their mean; 0 where both are slack.

    Raises:
        OutOfRangeError: for a height that was not read.

    Example:
        >>> band_mismatch(BandCurve((0, 1), (0, 19)), BandCurve((0, 1), (0, 21)), 1)
        10.0
    """
    a, b = band_pull(left, height), band_pull(right, height)
    return 200 * abs(a - b) / (a + b) if a + b else 0.0


@dataclass(frozen=True, slots=True)
class BandPair:
    """Two bands chosen for the two sides.

    Attributes:
        left: name of the band.
        right: name of the band.
        top_pull: kgf at the top, both together.
        mismatch: % between the sides: the larger of bottom and top.
    """

    left: str
    right: str
    top_pull: float
    mismatch: float


@formula(
    subject=_SUBJECT,
    title="The pair of bands nearest a wanted pull",
    equation="of all pairs that are taut at the bottom and alike within the largest "
    "difference, the one whose pull at the top is nearest",
    inputs={
        "bands": "readings of every band, m and kg of pull",
        "wanted": "pull wanted at the top, both sides together, kg of pull",
        "bottom": "height of the bar at the bottom, m",
        "top": "height of the bar at the top, m",
        "largest_mismatch": "largest difference allowed between the two, %",
    },
    output="two bands",
    source="common practice, no source",
    evidence=Evidence.ARITHMETIC,
)
def choose_band_pair(
    bands: Mapping[str, BandCurve],
    wanted: float,
    bottom: float,
    top: float,
    largest_mismatch: float = 10.0,
) -> BandPair | None:
    """The two bands whose pull at the top comes nearest to `wanted`; of equal ones the more alike.

    A pair counts only if both bands were read at both heights, both are taut at the bottom (a slack
    band snaps tight) and they differ by no more than `largest_mismatch` % at bottom and top.

    Args:
        bands: readings by bar height for each band's name.
        wanted: kgf at the top, both sides together.
        bottom: lowest bar height, m.
        top: highest bar height, m.
        largest_mismatch: % between the sides.

    Returns:
        The pair, or None where no pair counts.

    Example:
        >>> curves = {"a": (3, 10), "b": (3, 10.4), "c": (5, 14), "d": (5, 14)}
        >>> bands = {name: BandCurve((0.2, 0.8), pulls) for name, pulls in curves.items()}
        >>> choose_band_pair(bands, wanted=20, bottom=0.2, top=0.8)
        BandPair(left='a', right='b', top_pull=20.4, mismatch=3.92)
    """
    usable = {
        name: band
        for name, band in sorted(bands.items())
        if band.places[0] <= bottom < top <= band.places[-1] and band_pull(band, bottom) > 0
    }
    pairs = (
        BandPair(
            a,
            b,
            band_pull(usable[a], top) + band_pull(usable[b], top),
            max(band_mismatch(usable[a], usable[b], h) for h in (bottom, top)),
        )
        for a, b in combinations(usable, 2)
    )
    return min(
        (pair for pair in pairs if pair.mismatch <= largest_mismatch),
        key=lambda p: (round(abs(p.top_pull - wanted), 9), p.mismatch, p.left, p.right),
        default=None,
    )
