"""How soon a group can be through when equipment is scarce: bounds without a simulation.

Nobody is through sooner than alone; and no piece of equipment can serve more than one pair, or one
set, at a time. Whichever of the two takes longer is the least time. With rotated starts the true
time mostly lies at the bound and seldom a third above it; where everybody begins with the same
exercise it can be twice as long.
"""

from collections.abc import Sequence
from math import ceil

from strength_handbook.calc.registry import Evidence, formula

SUBJECT = "Equipment for a group"
_NO_SOURCE = "counting; checked against a simulation of queues"
_PEOPLE = (0, 400)
_UNITS = (1, 1000)
_MINUTES = (0, 1440)
_ABOVE = (
    "A lower bound. Simulated random floors took 1.00 times as long in the middle and 1.33 times "
    "at worst where starts were rotated; up to 1.9 times where all began with the same exercise."
)


@formula(
    subject=SUBJECT,
    title="Least time of a group that holds one kind of equipment for one letter",
    equation="T = the larger of S and ⌈M ÷ E⌉ × h",
    inputs={
        "own_min": "S = one pair's whole session, min",
        "pairs": "M = how many pairs (or single members) need it",
        "units": "E = how many of it there are",
        "held_min": "h = how long one pair holds it, from set-up to last set, min",
    },
    output="T, min",
    ranges={"own_min": _MINUTES, "pairs": _PEOPLE, "units": _UNITS, "held_min": _MINUTES},
    source=_NO_SOURCE,
    evidence=Evidence.ARITHMETIC,
    error=_ABOVE,
)
def least_minutes_held(own_min: float, pairs: int, units: int, held_min: float) -> float:
    """Least minutes until everybody is through, one kind held through one letter.

    Example:
        >>> least_minutes_held(30.1, 20, 5, 10.7)
        42.8
    """
    return max(own_min, ceil(pairs / units) * held_min)


@formula(
    subject=SUBJECT,
    title="Least time of a group that holds one kind of equipment for several letters",
    equation="T = the larger of S and M × Σh ÷ E",
    inputs={
        "own_min": "S = one pair's whole session, min",
        "pairs": "M = how many pairs (or single members) need it",
        "units": "E = how many of it there are",
        "held_min": "h = how long one pair holds it in each letter, min",
    },
    output="T, min",
    ranges={"own_min": _MINUTES, "pairs": _PEOPLE, "units": _UNITS},
    source=_NO_SOURCE,
    evidence=Evidence.ARITHMETIC,
    error=_ABOVE,
)
def least_minutes_held_often(
    own_min: float, pairs: int, units: int, held_min: Sequence[float]
) -> float:
    """Least minutes until everybody is through, one kind held through several letters.

    Example:
        >>> least_minutes_held_often(30, 6, 2, (8, 6))
        42.0
    """
    return max(own_min, pairs * sum(held_min) / units)


@formula(
    subject=SUBJECT,
    title="Least time of a group that shares equipment between sets",
    equation="T = the larger of S and M × d ÷ E",
    inputs={
        "own_min": "S = one member's whole session, min",
        "people": "M = how many members use it",
        "units": "E = how many of it there are",
        "busy_min": "d = one member's work and changes on it, rests not counted, min",
    },
    output="T, min",
    ranges={"own_min": _MINUTES, "people": _PEOPLE, "units": _UNITS, "busy_min": _MINUTES},
    source=_NO_SOURCE,
    evidence=Evidence.ARITHMETIC,
    error="A lower bound. Simulated random floors with rotated starts took 1.08 times as long in "
    "the middle and 1.5 times at worst.",
)
def least_minutes_shared(own_min: float, people: int, units: int, busy_min: float) -> float:
    """Least minutes until everybody is through, one kind changing hands after every set.

    Example:
        >>> least_minutes_shared(30.1, 30, 5, 5)
        30.1
        >>> least_minutes_shared(30, 30, 5, 8)
        48.0
    """
    return max(own_min, people * busy_min / units)
