"""Chains on a bar: the links off the floor are the load, so it grows in a straight line."""

from dataclasses import dataclass

from strength_handbook.calc.registry import Evidence, formula
from strength_handbook.calc.variable_load import VariableLoad

_SUBJECT = "Chains"


@dataclass(frozen=True, slots=True)
class ChainShape:
    """The chain of one side.

    Attributes:
        mass_per_metre: kg/m of one strand; weigh it.
        length: m that can hang from the leader: the chain, or half of it if hung by its middle.
        leader: m from the bar to the first link; its own mass is left out.
        strands: 1, or 2 if hung by its middle.
    """

    mass_per_metre: float
    length: float
    leader: float = 0.0
    strands: int = 1

    def __post_init__(self) -> None:
        if self.mass_per_metre <= 0 or self.length <= 0 or self.leader < 0 or self.strands < 1:
            raise ValueError(f"a chain has a mass and a length above 0, not {self}")


@formula(
    subject=_SUBJECT,
    title="Mass of short-link steel chain",
    equation="μ = 0.0224 × d²",
    inputs={
        "diameter_mm": "d = diameter of the steel, mm",
    },
    output="μ, kg per metre of one strand",
    source="fit to the masses of DIN 766",
    evidence=Evidence.PUBLISHED,
    error="3 %. A table that prints about twice as much means a pair of chains.",
    ranges={"diameter_mm": (6.0, 20.0)},
)
def chain_mass_per_metre(diameter_mm: float) -> float:
    """Mass of one strand of short-link chain in kg/m.

    Raises:
        OutOfRangeError: outside 6–20 mm.

    Example:
        >>> chain_mass_per_metre(16)
        5.73
    """
    return 0.0224 * diameter_mm**2


@formula(
    subject=_SUBJECT,
    title="Load of one side's chain at a bar height",
    equation="added = n × μ × (y − yₗ), never less than nothing or more than the whole chain",
    inputs={
        "chain": "n = strands that hang down; μ = mass of one strand, kg/m; yₗ = length of the "
        "leader, m",
        "height": "y = height of the bar, m",
    },
    output="kg, one side",
    source="McMaster 2010, J Strength Cond Res 24:2056–2064 (linear, R = 1)",
    evidence=Evidence.ARITHMETIC,
    error="Exact at a steady pace.",
)
def chain_load(chain: ChainShape, height: float) -> float:
    """Kilos of one side's chain off the floor with the bar at `height` m.

    Example:
        >>> chain_load(ChainShape(5.3, 1.5), 1.25)
        6.625
    """
    hanging = min(max(height - chain.leader, 0.0), chain.length)
    return chain.strands * chain.mass_per_metre * hanging


@formula(
    subject=_SUBJECT,
    title="Load at bottom, middle and top with chains on both sides",
    equation="L(h) = weight + 2 × pairs × added(h);  share = chains ÷ L at the top",
    inputs={
        "weight": "weight = bar and plates, kg",
        "chain": "added = what one side's chain adds at a height, kg",
        "bottom": "h = height of the bar, here at the bottom, m",
        "top": "height of the bar at the top, m",
        "pairs": "pairs = chains on each side",
    },
    output="kg at bottom, middle and top, and the chains' share at the top, %",
    source="sum of forces",
    evidence=Evidence.ARITHMETIC,
)
def chained_load(
    weight: float, chain: ChainShape, bottom: float, top: float, pairs: int = 1
) -> VariableLoad:
    """Load at three bar heights and the chains' share at the top.

    While some links hang and some lie on the floor the load half-way up is also the mean load.

    Args:
        weight: bar and plates, kg.
        chain: the chain of one side.
        bottom: lowest bar height, m.
        top: highest bar height, m.
        pairs: equal chains on each side.

    Raises:
        ValueError: without a bar, for a top that is not above the bottom, or fewer than no chains.

    Example:
        >>> chained_load(80, ChainShape(5.3, 1.5), 0.45, 1.25)
        VariableLoad(bottom=84.77, middle=89.01, top=93.25, top_share=14.21)
    """
    if weight <= 0 or top <= bottom or pairs < 0:
        raise ValueError(f"{pairs} pairs on {weight:g} kg from {bottom:g} m to {top:g} m")
    low, mid, high = (
        weight + 2 * pairs * chain_load(chain, h) for h in (bottom, (bottom + top) / 2, top)
    )
    return VariableLoad(low, mid, high, 100 * (high - weight) / high)


def all_off_floor(chain: ChainShape, height: float) -> bool:
    """Whether the whole chain hangs free at this bar height: from there on it is only weight.

    Example:
        >>> all_off_floor(ChainShape(5.3, 1.0), 1.25)
        True
    """
    return height - chain.leader >= chain.length


@formula(
    subject=_SUBJECT,
    title="Pairs of chains for a wanted share at the top",
    equation="the number of pairs whose share at the top is nearest; of two equal ones the smaller",
    inputs={
        "weight": "bar and plates, kg",
        "chain": "mass per metre, kg/m, length and leader of one chain, m",
        "top": "height of the bar at the top, m",
        "share": "wanted share of the whole load at the top, %",
        "available": "pairs that exist",
    },
    output="pairs, from none to all that exist",
    source="common practice, no source",
    evidence=Evidence.ARITHMETIC,
    ranges={"share": (0.0, 90.0)},
)
def chain_pairs_for_share(
    weight: float, chain: ChainShape, top: float, share: float, available: int
) -> int:
    """Number of pairs whose share of the load at the top comes nearest to `share` %.

    Args:
        weight: bar and plates, kg.
        chain: the chain of one side; all pairs are alike.
        top: highest bar height, m.
        share: wanted part of the whole load at the top, %.
        available: pairs the room has.

    Raises:
        OutOfRangeError: for a share outside 0–90 %.
        ValueError: without bar and plates or fewer than no pairs.

    Example:
        >>> chain_pairs_for_share(80, ChainShape(5.3, 1.5), 1.25, 25, 5)
        2
    """
    if weight <= 0 or available < 0:
        raise ValueError(f"{available} pairs for {weight:g} kg")
    pair = 2 * chain_load(chain, top)

    def distance(pairs: int) -> float:
        return abs(100 * pairs * pair / (weight + pairs * pair) - share)

    return min(range(available + 1), key=distance)
