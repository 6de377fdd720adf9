"""Seconds of one set: repetitions, holds, broken sets and carries.

Both sides of single-limb work are worked one after the other and both count.
"""

from collections.abc import Sequence

from strength_handbook.calc.registry import Evidence, formula

SECONDS_PER_REP = 3.0
"""Where no tempo is written; 2.5 to 4 s fit published sessions about equally well."""

CARRY_SPEED_M_S = 1.0

_SUBJECT = "Session time"
_NO_SOURCE = "common practice, no source"


@formula(
    subject=_SUBJECT,
    title="Seconds of one set",
    equation="seconds = sides × (reps × seconds per rep + hold) + (sides − 1) × change of side",
    inputs={
        "reps": "reps = repetitions of one side",
        "seconds_per_rep": "seconds per rep = of one repetition, s",
        "hold_s": "hold = or other time of one side, s",
        "sides": "sides = 2 for one-sided work, else 1",
        "side_change_s": "change of side = from one side to the other, s",
    },
    output="seconds, s",
    ranges={
        "reps": (0, 1000),
        "seconds_per_rep": (0, 120),
        "hold_s": (0, 1_000_000),
        "sides": (1, 2),
        "side_change_s": (0, 600),
    },
    source=_NO_SOURCE,
    evidence=Evidence.ARITHMETIC,
)
def set_seconds(
    reps: int,
    seconds_per_rep: float = SECONDS_PER_REP,
    *,
    hold_s: float = 0.0,
    sides: int = 1,
    side_change_s: float = 0.0,
) -> float:
    """Seconds from the start to the end of one set; a timed set or a hold has `reps` 0.

    >>> set_seconds(10), set_seconds(0, hold_s=30, sides=2, side_change_s=5)
    (30.0, 65.0)
    """
    return sides * (reps * seconds_per_rep + hold_s) + (sides - 1) * side_change_s


@formula(
    subject=_SUBJECT,
    title="Seconds of a set broken by short pauses",
    equation="seconds = Σ reps × seconds per rep + (parts − 1) × pause",
    inputs={
        "parts": "parts, reps = the parts of the set, each with its repetitions",
        "seconds_per_rep": "seconds per rep = of one repetition, s",
        "pause_s": "pause = between two parts, s",
    },
    output="seconds, s",
    ranges={"seconds_per_rep": (0, 120), "pause_s": (0, 600)},
    source=_NO_SOURCE,
    evidence=Evidence.ARITHMETIC,
)
def broken_set_seconds(parts: Sequence[int], seconds_per_rep: float, pause_s: float) -> float:
    """Seconds of a cluster, rest-pause or strip set; the pause is the rest or the strip inside it.

    >>> broken_set_seconds((2, 2, 2), 3, 20)
    58.0
    """
    return float(sum(parts) * seconds_per_rep + max(0, len(parts) - 1) * pause_s)


@formula(
    subject=_SUBJECT,
    title="Seconds of a carry, drag or push",
    equation="seconds = sides × distance ÷ speed",
    inputs={
        "distance_m": "distance = of one walk, m",
        "speed_m_s": "speed = the house's, m/s",
        "sides": "sides = 2 if once with each hand, else 1",
    },
    output="seconds, s",
    ranges={"distance_m": (0, 100_000), "speed_m_s": (0.1, 10), "sides": (1, 2)},
    source=_NO_SOURCE,
    evidence=Evidence.HOUSE_RULE,
)
def carry_seconds(distance_m: float, speed_m_s: float = CARRY_SPEED_M_S, sides: int = 1) -> float:
    """Seconds to cover `distance_m`, with each hand where `sides` is 2.

    >>> carry_seconds(40), carry_seconds(30, sides=2)
    (40.0, 60.0)
    """
    return sides * distance_m / speed_m_s
