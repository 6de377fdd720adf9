"""Session load from rated exertion, and how evenly it is spread over the week.

Definition used: monotony is the mean divided by the standard deviation of seven daily totals,
rest days counting 0 (Foster 1998). The caller says which standard deviation. The worked example
of the 2001 paper divides by the population value over its nine sessions instead, and so prints
a higher number than the seven days give.
"""

from collections.abc import Iterable, Sequence
from enum import StrEnum
from statistics import fmean, pstdev, stdev

from strength_handbook.calc.registry import Evidence, formula

DAYS = 7

_SUBJECT = "Session load"
_SOURCE_2001 = "Foster et al. 2001. J Strength Cond Res 15(1):109–115"
_SOURCE_1998 = "Foster 1998. Med Sci Sports Exerc 30(7):1164–1168"


class Spread(StrEnum):
    """Which standard deviation: of the days as a sample (÷ n − 1) or as all there is (÷ n)."""

    SAMPLE = "sample"
    POPULATION = "population"


@formula(
    subject=_SUBJECT,
    title="Session load",
    equation="load = session RPE × minutes",
    inputs={
        "rpe": "session RPE = how hard the whole session was, 0 to 10, asked 30 minutes after",
        "minutes": "minutes = length of the session",
    },
    output="load, in arbitrary units",
    ranges={"rpe": (0, 10), "minutes": (0, 1440)},
    source=_SOURCE_2001,
    evidence=Evidence.PUBLISHED,
    error="Load per minute rises with duration at equal power (4.3, 4.5 and 4.8 for 30, 60 and "
    "90 minutes).",
)
def foster_2001(rpe: float, minutes: float) -> float:
    """Load of one session.

    >>> foster_2001(7, 40)
    280.0
    """
    return float(rpe * minutes)


@formula(
    subject=_SUBJECT,
    title="Daily totals of a week",
    equation="Σ session loads per day, rest days 0",
    inputs={
        "sessions": "session loads = load of each session, with its day",
    },
    output="seven totals",
    source="definition",
    evidence=Evidence.ARITHMETIC,
)
def daily_totals(sessions: Iterable[tuple[int, float]]) -> tuple[float, ...]:
    """Seven daily totals from sessions given as (day of the week 0 to 6, load).

    Raises:
        ValueError: for a day that is not in the week.

    >>> daily_totals([(0, 200), (2, 100), (2, 50)])
    (200.0, 0.0, 150.0, 0.0, 0.0, 0.0, 0.0)
    """
    totals = [0.0] * DAYS
    for day, load in sessions:
        if not 0 <= day < DAYS:
            raise ValueError(f"day {day} is not in a week of 0 to {DAYS - 1}")
        totals[day] += load
    return tuple(totals)


@formula(
    subject=_SUBJECT,
    title="Mean over standard deviation",
    equation="mean ÷ SD",
    inputs={
        "loads": "mean = of two or more loads",
        "spread": "SD = standard deviation, of a sample or of the whole",
    },
    output="a plain number; none where the loads don't differ",
    source="definition",
    evidence=Evidence.ARITHMETIC,
)
def mean_over_deviation(loads: Sequence[float], *, spread: Spread) -> float | None:
    """Mean ÷ standard deviation, or None where all loads are equal: it would be infinite.

    Raises:
        ValueError: for fewer than two loads.

    >>> mean_over_deviation([100, 300], spread=Spread.POPULATION)
    2.0
    """
    if len(loads) < 2:
        raise ValueError("a spread needs at least two loads")
    deviation = stdev(loads) if spread is Spread.SAMPLE else pstdev(loads)
    return fmean(loads) / deviation if deviation else None


@formula(
    subject=_SUBJECT,
    title="Monotony of a week",
    equation="mean ÷ SD of the seven daily totals",
    inputs={
        "totals": "seven daily totals = training load of each day, 0 for rest",
        "spread": "SD = standard deviation, of a sample or of the whole",
    },
    output="a plain number; none where all days are equal",
    source=_SOURCE_1998,
    evidence=Evidence.PUBLISHED,
)
def foster_1998_monotony(totals: Sequence[float], *, spread: Spread) -> float | None:
    """Monotony over seven days, rest days included, or None where all days are equal.

    Raises:
        ValueError: unless there are seven totals.

    >>> foster_1998_monotony((300, 0, 300, 0, 300, 0, 0), spread=Spread.SAMPLE)
    0.80
    """
    if len(totals) != DAYS:
        raise ValueError(f"monotony needs {DAYS} daily totals, not {len(totals)}")
    return mean_over_deviation(totals, spread=spread)


@formula(
    subject=_SUBJECT,
    title="Strain of a week",
    equation="weekly load × monotony",
    inputs={
        "totals": "weekly load = sum of the seven daily totals",
        "spread": "standard deviation of a sample or of the whole, for the monotony",
    },
    output="same unit as the load; none where all days are equal",
    source=_SOURCE_1998,
    evidence=Evidence.PUBLISHED,
)
def foster_1998_strain(totals: Sequence[float], *, spread: Spread) -> float | None:
    """Strain of the week, or None where monotony is undefined.

    >>> foster_1998_strain((300, 0, 300, 0, 300, 0, 0), spread=Spread.SAMPLE)
    721.6
    """
    monotony = foster_1998_monotony(totals, spread=spread)
    return None if monotony is None else sum(totals) * monotony
