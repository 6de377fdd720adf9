"""A bar that grows heavier on the way up, whatever makes it do so: bands or chains."""

from dataclasses import dataclass

from strength_handbook.calc.registry import Evidence, formula

_SUBJECT = "Bands and chains"


@dataclass(frozen=True, slots=True)
class VariableLoad:
    """Load of a bar whose weight grows on the way up.

    Attributes:
        bottom: kg in all, at the lowest bar height.
        middle: kg in all, half-way between the heights.
        top: kg in all, at the highest bar height.
        top_share: % of the load at the top that bands or chains supply.
    """

    bottom: float
    middle: float
    top: float
    top_share: float


@formula(
    subject=_SUBJECT,
    title="Pull for a wanted share of the load at the top",
    equation="T = weight × s ÷ (100 − s)",
    inputs={
        "weight": "weight = bar and plates, kg",
        "share": "s = wanted share of the whole load at the top, %",
    },
    output="kg of pull, both sides together",
    source="definition",
    evidence=Evidence.ARITHMETIC,
    ranges={"share": (0.0, 90.0)},
)
def pull_for_share(weight: float, share: float) -> float:
    """Pull in kgf, both sides together, that makes up `share` % of the load at the top.

    Raises:
        OutOfRangeError: for a share outside 0–90 %.

    Example:
        >>> pull_for_share(80, 20)
        20.0
    """
    return weight * share / (100 - share)


@formula(
    subject=_SUBJECT,
    title="Bar weight for a wanted mean load, textbook way",
    equation="bar = load − (added at bottom + added at top) ÷ 2",
    inputs={
        "load": "load = mean load wanted, kg",
        "added_bottom": "added at bottom = pull of bands or chains there, both sides, kg",
        "added_top": "added at top = pull of bands or chains there, both sides, kg",
    },
    output="kg, bar and plates",
    source="Haff & Triplett 2016, Essentials of Strength Training and Conditioning, ch. 16",
    evidence=Evidence.PUBLISHED,
    error="Exact for chains. A band's true mean is higher, since its curve bends.",
)
def haff_triplett_2016_bar(load: float, added_bottom: float, added_top: float) -> float:
    """Bar and plates in kg so that the mean of bottom and top equals `load`.

    Example:
        >>> haff_triplett_2016_bar(150, 0, 26.6)
        136.7
    """
    return load - (added_bottom + added_top) / 2
