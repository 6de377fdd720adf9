"""Training volume: what was lifted, how often, how hard, and how it changes.

Repetitions, loads and seconds always count both sides of single-limb work (`sides`).
"""

from collections.abc import Iterable
from dataclasses import dataclass

from strength_handbook.calc.registry import Evidence, formula

INDIRECT_WEIGHT = 0.5
"""Weight of a set that trains a muscle indirectly (Pelland 2025, "fractional" count)."""

_SUBJECT = "Volume"
_TEXTBOOK = (
    "Sheppard and Triplett 2016. Program design for resistance training. In: Essentials of "
    "Strength Training and Conditioning, 4th ed. Human Kinetics, ch. 17"
)


@dataclass(frozen=True, slots=True)
class SetGroup:
    """Sets alike: 3 × 10 @ 155.

    Attributes:
        sets: number of sets; of a range its middle.
        reps: repetitions per set, on each side where `sides` is 2.
        load_kg: load of each repetition.
        sides: 2 where each side is worked by itself.
        fast: whether the lift is meant to be as fast as possible.
    """

    sets: float
    reps: float
    load_kg: float
    sides: int = 1
    fast: bool = False

    @property
    def total_reps(self) -> float:
        """Repetitions of all sets, both sides."""
        return self.sets * self.reps * self.sides


@formula(
    subject=_SUBJECT,
    title="Volume-load",
    equation="Σ sets × reps × sides × load",
    inputs={
        "groups": "sets, reps, sides, load = of every exercise, load in kg",
    },
    output="kg",
    source=_TEXTBOOK,
    evidence=Evidence.ARITHMETIC,
    error="Body weight that moves is not in it; a jump without load counts 0.",
)
def volume_load(groups: Iterable[SetGroup]) -> float:
    """Sum of the loads of all repetitions, in the unit of the loads.

    >>> volume_load([SetGroup(2, 10, 50)])
    1000.0
    """
    return float(sum(group.total_reps * group.load_kg for group in groups))


@formula(
    subject=_SUBJECT,
    title="Repetition volume",
    equation="Σ sets × reps × sides",
    inputs={
        "groups": "sets, reps, sides = of every exercise",
    },
    output="repetitions",
    source=_TEXTBOOK,
    evidence=Evidence.ARITHMETIC,
)
def repetition_volume(groups: Iterable[SetGroup]) -> float:
    """Number of repetitions.

    >>> repetition_volume([SetGroup(4, 5, 95), SetGroup(3, 6, 20, sides=2)])
    56
    """
    return sum(group.total_reps for group in groups)


@formula(
    subject=_SUBJECT,
    title="Mean load of a repetition",
    equation="mean load = volume-load ÷ repetitions",
    inputs={
        "groups": "volume-load, repetitions = of all sets, kg and number",
    },
    output="kg per repetition; none without repetitions",
    source=_TEXTBOOK,
    evidence=Evidence.ARITHMETIC,
)
def mean_load(groups: Iterable[SetGroup]) -> float | None:
    """Mean load per repetition, or None where there is no repetition.

    >>> mean_load([SetGroup(1, 10, 50), SetGroup(1, 5, 80)])
    60.0
    """
    listed = tuple(groups)
    reps = repetition_volume(listed)
    return volume_load(listed) / reps if reps else None


@formula(
    subject=_SUBJECT,
    title="Relative volume",
    equation="sets × reps × sides × % ÷ 100",
    inputs={
        "sets": "sets = number of them",
        "reps": "reps = in one set, one side",
        "percent": "% = percent of the best single",
        "sides": "sides = 2 for one-sided work, else 1",
    },
    output="repetitions at the best single",
    ranges={"sets": (0, 1000), "reps": (0, 1000), "percent": (0, 200), "sides": (1, 2)},
    source="McBride et al. 2009. J Strength Cond Res 23(1):106–110",
    evidence=Evidence.ARITHMETIC,
)
def relative_volume(sets: int, reps: int, percent: float, sides: int = 1) -> float:
    """Volume-load as a multiple of the lift's 1RM.

    >>> relative_volume(4, 5, 70)
    14.0
    """
    return sets * reps * sides * percent / 100


@formula(
    subject=_SUBJECT,
    title="Work done on the load",
    equation="weight × distance × reps",
    inputs={
        "weight_n": "weight = of the load, N",
        "distance_m": "distance = how far it is lifted, m",
        "reps": "reps = how often",
    },
    output="work, J",
    ranges={"weight_n": (0, 20000), "distance_m": (0, 1000), "reps": (0, 100000)},
    source=_TEXTBOOK,
    evidence=Evidence.ARITHMETIC,
    error="Against gravity only: neither acceleration nor the body's own mass is counted.",
)
def lifting_work(weight_n: float, distance_m: float, reps: int) -> float:
    """Work against gravity, in joules for newtons and metres.

    >>> lifting_work(100, 2, 15)
    3000.0
    """
    return float(weight_n * distance_m * reps)


@formula(
    subject=_SUBJECT,
    title="Hard sets of a muscle",
    equation="direct sets + 0.5 × indirect sets",
    inputs={
        "direct": "direct sets = hard sets in which the muscle does the work",
        "indirect": "indirect sets = hard sets in which it helps",
        "indirect_weight": "what a helping set counts, 0.5 where nothing else is said",
    },
    output="hard sets",
    ranges={"direct": (0, 1000), "indirect": (0, 1000), "indirect_weight": (0, 1)},
    source="Pelland, Remmert, Robinson, Hinson and Zourdos 2025. Sports Med, "
    "doi 10.1007/s40279-025-02344-w",
    evidence=Evidence.PUBLISHED,
    error="Of the three counts in use (1, 0.5 and 0) the middle one fits the results best.",
)
def pelland_2025(direct: float, indirect: float, indirect_weight: float = INDIRECT_WEIGHT) -> float:
    """Weekly hard sets; warm-up, speed and easy sets are left out by the caller.

    >>> pelland_2025(4, 2)
    5.0
    """
    return direct + indirect_weight * indirect


@formula(
    subject=_SUBJECT,
    title="Isometric dose",
    equation="seconds = holds × length × sides",
    inputs={
        "holds": "holds = number of them",
        "seconds": "length = of one hold, s",
        "sides": "sides = 2 for one-sided work, else 1",
    },
    output="seconds of holding, s",
    ranges={"holds": (0, 1000), "seconds": (0, 3600), "sides": (1, 2)},
    source="definition",
    evidence=Evidence.ARITHMETIC,
)
def isometric_dose(holds: float, seconds: float, sides: int = 1) -> float:
    """Seconds held.

    >>> isometric_dose(3, 30, sides=2)
    180.0
    """
    return float(holds * seconds * sides)


@formula(
    subject=_SUBJECT,
    title="Fast repetitions",
    equation="Σ sets × reps × sides, of lifts meant to be as fast as possible",
    inputs={
        "groups": "sets, reps, sides = of every fast exercise",
    },
    output="repetitions",
    source="definition",
    evidence=Evidence.ARITHMETIC,
)
def fast_repetitions(groups: Iterable[SetGroup]) -> float:
    """Number of repetitions with the intent to lift as fast as possible.

    >>> fast_repetitions([SetGroup(8, 2, 70, fast=True), SetGroup(4, 5, 100)])
    16
    """
    return sum(group.total_reps for group in groups if group.fast)


@formula(
    subject=_SUBJECT,
    title="Change from one week to the next",
    equation="100 × (week ÷ previous − 1)",
    inputs={
        "previous": "previous = last week's sum, any unit",
        "current": "week = this week's sum, same unit",
    },
    output="%; none where there was nothing before",
    ranges={"previous": (0, 1e9), "current": (0, 1e9)},
    source="definition",
    evidence=Evidence.ARITHMETIC,
)
def percent_change(previous: float, current: float) -> float | None:
    """Change in percent, or None from nothing: that step has no percentage.

    >>> percent_change(400, 475), percent_change(0, 10)
    (18.75, None)
    """
    return 100 * (current / previous - 1) if previous else None


@formula(
    subject=_SUBJECT,
    title="Balance of two volumes",
    equation="first ÷ second",
    inputs={
        "first": "first = one volume, any unit",
        "second": "second = the other, same unit",
    },
    output="ratio; none where the second is absent",
    ranges={"first": (0, 1e9), "second": (0, 1e9)},
    source="definition",
    evidence=Evidence.ARITHMETIC,
)
def volume_ratio(first: float, second: float) -> float | None:
    """Ratio such as push to pull, or None where there is nothing to compare with.

    >>> volume_ratio(9, 12), volume_ratio(9, 0)
    (0.75, None)
    """
    return first / second if second else None
