"""Strip (drop) sets: how many repetitions a strip is likely to give, as a range.

No study counts repetitions per strip. The range rests on one thought: failure at a load means that
this load is the momentary maximum, so the next, lighter load is a fresh set at their ratio. The
factor kappa (0.6 to 1.2 between people) is replaced by the lifter's own after the first strip set.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil
from statistics import fmean

from strength_handbook.calc.registry import Evidence, formula

_SUBJECT = "Strip sets"

K_GENERAL = 30.0
"""Repetitions constant of Epley 1985."""
K_BENCH_PRESS = 35.0
"""Fitted to 8.8 repetitions at 80 % (Nuzzo 2024)."""
K_LEG_PRESS = 52.0
"""Fitted to 13.1 repetitions at 80 % (Nuzzo 2024)."""

KAPPA_LOW, KAPPA_HIGH = 0.6, 1.2
PERSONAL_KAPPA = (0.4, 1.5)


@dataclass(frozen=True, slots=True)
class RepRange:
    """Repetitions to expect on one strip, lowest to highest."""

    low: float
    high: float


@dataclass(frozen=True, slots=True)
class StageRange:
    """Loads (first one included) until a total is reached.

    Attributes:
        fewest: for somebody who keeps many repetitions (kappa 1.2).
        usual: fewest and most for most people (kappa 1.0 and 0.8).
        most: for somebody who keeps few (kappa 0.6).
    """

    fewest: int
    usual: tuple[int, int]
    most: int


@formula(
    subject=_SUBJECT,
    title="Repetitions on a strip",
    equation="reps = κ × k × (1/r − 1)",
    inputs={
        "load_left": "r = share of the load left by the strip, 0.8 for a fifth off",
        "kappa": "κ = share of a fresh set that a tired lifter manages, 0.6 to 1.2, a lifter's own "
        "0.4 to 1.5",
        "k": "k = constant of the lift, 30 (bench press 35, leg press 52)",
    },
    output="repetitions on the lighter load, not rounded",
    source="Epley 1985 inverted; the share κ is a house rule, fitted to rest-interval studies only",
    evidence=Evidence.HOUSE_RULE,
    error="Between people SD about 2.5 repetitions at 80 % and 4.4 at 60 %, even for fresh sets.",
    ranges={"load_left": (0.5, 0.95), "kappa": PERSONAL_KAPPA, "k": (20.0, 60.0)},
)
def strip_reps(load_left: float, kappa: float = 1.0, k: float = K_GENERAL) -> float:
    """Repetitions on a load that is `load_left` of the one just failed with.

    Raises:
        OutOfRangeError: outside 0.5–0.95 of the load, κ 0.4–1.5 or k 20–60.

    Example:
        >>> strip_reps(0.80)
        7.5
    """
    return kappa * k * (1 / load_left - 1)


@formula(
    subject=_SUBJECT,
    title="Range of repetitions on a strip",
    equation="from 0.6 × k × (1/r − 1) to 1.2 × k × (1/r − 1)",
    inputs={
        "load_left": "r = share of the load left by the strip, 0.8 for a fifth off",
        "k": "k = constant of the lift, 30 (bench press 35, leg press 52)",
    },
    output="lowest and highest repetitions to expect, not rounded",
    source="Epley 1985 inverted; the share κ is a house rule, fitted to rest-interval studies only",
    evidence=Evidence.HOUSE_RULE,
)
def strip_rep_range(load_left: float, k: float = K_GENERAL) -> RepRange:
    """What to print for somebody whose own κ is not known yet.

    Raises:
        OutOfRangeError: as `strip_reps`.

    Example:
        >>> strip_rep_range(0.75)
        RepRange(low=6.0, high=12.0)
    """
    return RepRange(strip_reps(load_left, KAPPA_LOW, k), strip_reps(load_left, KAPPA_HIGH, k))


@formula(
    subject=_SUBJECT,
    title="Loads needed for a total of repetitions",
    equation="loads = 1 + (total − first) ÷ (κ × k × (1/r − 1)), rounded up",
    inputs={
        "total": "total = repetitions that end the set",
        "first": "first = repetitions on the first load",
        "load_left": "r = share of the load left by each strip, 0.8 for a fifth off",
        "kappa": "κ = share of a fresh set that a tired lifter manages",
        "k": "k = constant of the lift, 30 (bench press 35, leg press 52)",
    },
    output="number of loads, the first one included",
    source="Epley 1985 inverted; the share κ is a house rule, fitted to rest-interval studies only",
    evidence=Evidence.HOUSE_RULE,
)
def strip_stages(
    total: float, first: float, load_left: float, kappa: float = 1.0, k: float = K_GENERAL
) -> int:
    """Loads, the first included, until `total` repetitions are done.

    Raises:
        OutOfRangeError: as `strip_reps`.
        ValueError: for a first load or a total without repetitions.

    Example:
        >>> strip_stages(30, 10, 0.80)
        4
    """
    if first <= 0 or total <= 0:
        raise ValueError(f"{total:g} repetitions in total, {first:g} on the first load")
    # The small subtraction keeps a total that is met exactly from asking for one strip more.
    return 1 + max(0, ceil((total - first) / strip_reps(load_left, kappa, k) - 1e-9))


@formula(
    subject=_SUBJECT,
    title="Range of loads needed for a total of repetitions",
    equation="loads needed where a tired lifter manages 1.2, 1, 0.8 and 0.6 of a fresh set",
    inputs={
        "total": "repetitions that end the set",
        "first": "repetitions on the first load",
        "load_left": "share of the load left by each strip, 0.8 for a fifth off",
        "k": "constant of the lift, 30 (bench press 35, leg press 52)",
    },
    output="fewest, usual and most loads",
    source="Epley 1985 inverted; the share κ is a house rule, fitted to rest-interval studies only",
    evidence=Evidence.HOUSE_RULE,
)
def strip_stage_range(
    total: float, first: float, load_left: float, k: float = K_GENERAL
) -> StageRange:
    """Fewest, usual and most loads; the total ends the set, not the number of loads.

    Raises:
        OutOfRangeError, ValueError: as `strip_stages`.

    Example:
        >>> strip_stage_range(30, 10, 0.80)
        StageRange(fewest=4, usual=(4, 5), most=6)
    """
    high, upper, lower, low = (
        strip_stages(total, first, load_left, kappa, k)
        for kappa in (KAPPA_HIGH, 1.0, 0.8, KAPPA_LOW)
    )
    return StageRange(fewest=high, usual=(upper, lower), most=low)


@formula(
    subject=_SUBJECT,
    title="A lifter's own share κ after a strip set",
    equation="κ = mean of (reps done ÷ reps expected with κ = 1), kept within 0.4 to 1.5",
    inputs={
        "done": "reps done = on each strip",
        "load_left": "share of the load left at each strip, 0 to 1",
        "k": "constant of the lift, 30 (bench press 35, leg press 52)",
    },
    output="κ for this lifter and this lift",
    source="common practice, no source",
    evidence=Evidence.HOUSE_RULE,
)
def personal_kappa(
    done: Sequence[float], load_left: Sequence[float], k: float = K_GENERAL
) -> float:
    """κ from the strips of one set; the first load is not a strip and is left out.

    Raises:
        OutOfRangeError: as `strip_reps`.
        ValueError: without strips or with unequal numbers of entries.

    Example:
        >>> personal_kappa([6, 5], [0.80, 0.80])
        0.733
    """
    if not done or len(done) != len(load_left):
        raise ValueError(f"{len(done)} repetition counts for {len(load_left)} strips")
    low, high = PERSONAL_KAPPA
    ratios = [reps / strip_reps(r, 1.0, k) for reps, r in zip(done, load_left, strict=True)]
    return min(max(fmean(ratios), low), high)
