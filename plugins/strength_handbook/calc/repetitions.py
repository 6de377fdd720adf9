"""How many repetitions a percentage of the maximum allows, and the reverse.

A chart is a tuple of (repetitions, percent of 1RM) pairs: repetitions rising, percent falling.
Between its points the chart is read along straight lines, which keeps it monotone and makes both
directions exact inverses. Off its ends the chart says nothing and refuses.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from itertools import pairwise
from typing import TypeAlias

from strength_handbook.calc.registry import Evidence, OutOfRangeError, formula

Chart: TypeAlias = tuple[tuple[float, float], ...]

TEXTBOOK_CHART: Chart = (
    (1, 100),
    (2, 95),
    (3, 93),
    (4, 90),
    (5, 87),
    (6, 85),
    (7, 83),
    (8, 80),
    (9, 77),
    (10, 75),
    (11, 70),
    (12, 67),
    (15, 65),
)
"""Sheppard and Triplett, Essentials of Strength Training and Conditioning, 4th ed. 2016, ch. 17."""

UNCONFIRMED_REPS = frozenset({11, 12, 15})
"""Chart cells from memory; another common version prints 73 and 70 for 11 and 12."""

TRUSTED_ABOVE_PERCENT = 75.0
"""The chapter trusts its chart only above this percentage and below `TRUSTED_BELOW_REPS`."""

TRUSTED_BELOW_REPS = 10.0

BETWEEN_PEOPLE = 0.3
"""Half-width of the band as a share of its middle, about one standard deviation."""

_SUBJECT = "Repetitions and percent"
_SOURCE = (
    "Sheppard and Triplett 2016. Program design for resistance training. In: Essentials of "
    "Strength Training and Conditioning, 4th ed. Human Kinetics, ch. 17"
)
_ERROR = (
    "Published variants differ by 0.5 to 2 points. Trustworthy above 75 % and below 10 reps; "
    "11, 12 and 15 reps unconfirmed. More repetitions are possible on the leg press than on the "
    "bench press at the same percentage (Nuzzo 2024): give such lifts a chart of their own."
)


def check_chart(chart: Chart) -> None:
    """Refuses a chart that is not monotone.

    Raises:
        ValueError: fewer than two points, repetitions not rising or percent not falling.

    >>> check_chart(((1, 100), (5, 85), (5, 80)))
    Traceback (most recent call last):
    ValueError: chart: 5 repetitions at 85 % cannot be followed by 5 at 80 %
    """
    if len(chart) < 2:
        raise ValueError("chart: at least two points are needed")
    for (reps, percent), (more_reps, less_percent) in pairwise(chart):
        if more_reps <= reps or less_percent >= percent:
            raise ValueError(
                f"chart: {reps:g} repetitions at {percent:g} % cannot be followed by "
                f"{more_reps:g} at {less_percent:g} %"
            )


def _along(points: Iterable[tuple[float, float]], x: float) -> float:
    """Height at `x` on the straight lines through `points`, whose first coordinate rises."""
    for (x0, y0), (x1, y1) in pairwise(points):
        if x <= x1:
            return y0 + (y1 - y0) * (x - x0) / (x1 - x0)
    raise ValueError("x lies beyond the last point")


@formula(
    subject=_SUBJECT,
    title="Percent of the best single that allows a number of repetitions",
    equation="% = chart(reps), read along straight lines between its points",
    inputs={
        "reps": "reps = repetitions to failure",
        "chart": "chart = repetitions and percent, the textbook's unless a lift has its own",
    },
    output="% of the best single",
    source=_SOURCE,
    evidence=Evidence.PUBLISHED,
    error=_ERROR,
)
def percent_for_reps(reps: float, chart: Chart = TEXTBOOK_CHART) -> float:
    """Percent of 1RM with which `reps` repetitions are just possible.

    Raises:
        OutOfRangeError: outside the chart.
        ValueError: from a chart that is not monotone.

    >>> percent_for_reps(9)
    77.0
    >>> percent_for_reps(13.5)
    66.0
    """
    check_chart(chart)
    if not chart[0][0] <= reps <= chart[-1][0]:
        raise OutOfRangeError("percent_for_reps", "reps", reps, chart[0][0], chart[-1][0])
    return _along(chart, reps)


@formula(
    subject=_SUBJECT,
    title="Repetitions that a percentage of the best single allows",
    equation="reps = chart(%), the same chart read the other way",
    inputs={
        "percent": "% = percent of the best single",
        "chart": "chart = repetitions and percent, the textbook's unless a lift has its own",
    },
    output="repetitions to failure",
    source=_SOURCE,
    evidence=Evidence.PUBLISHED,
    error=_ERROR,
)
def reps_at_percent(percent: float, chart: Chart = TEXTBOOK_CHART) -> float:
    """Repetitions just possible at `percent` of 1RM; not rounded.

    Raises:
        OutOfRangeError: outside the chart (textbook: 65 to 100 %).
        ValueError: from a chart that is not monotone.

    >>> reps_at_percent(80)
    8.0
    >>> reps_at_percent(82)
    7.33
    """
    check_chart(chart)
    if not chart[-1][1] <= percent <= chart[0][1]:
        raise OutOfRangeError("reps_at_percent", "percent", percent, chart[-1][1], chart[0][1])
    return _along(((p, r) for r, p in reversed(chart)), percent)


@formula(
    subject=_SUBJECT,
    title="Share of the chart's repetitions left by a slow tempo",
    equation="0.7 if lowering ≥ 4 s or any pause ≥ 2 s, else 1",
    inputs={
        "eccentric_s": "lowering = seconds of it in one repetition, s",
        "longest_pause_s": "pause = longest one in one repetition, s",
        "slow_from_s": "lowering that counts as slow, 4 s where the house sets nothing else",
        "pause_from_s": "pause that counts as long, 2 s where the house sets nothing else",
        "slow_factor": "share left by a slow tempo, 0.7 where the house sets nothing else",
    },
    output="factor on repetitions",
    ranges={"eccentric_s": (0, 60), "longest_pause_s": (0, 120), "slow_factor": (0, 1)},
    source="common practice, no source",
    evidence=Evidence.HOUSE_RULE,
)
def tempo_factor(
    eccentric_s: float,
    longest_pause_s: float,
    *,
    slow_from_s: float = 4.0,
    pause_from_s: float = 2.0,
    slow_factor: float = 0.7,
) -> float:
    """Factor by which a slow tempo cuts the chart's repetitions.

    >>> tempo_factor(3, 1), tempo_factor(5, 1), tempo_factor(2, 3)
    (1.0, 0.7, 0.7)
    """
    slow = eccentric_s >= slow_from_s or longest_pause_s >= pause_from_s
    return slow_factor if slow else 1.0


@dataclass(frozen=True, slots=True)
class RepBand:
    """Repetitions to failure that most people can do.

    Attributes:
        low: about one person in six manages fewer.
        middle: the chart's value times the tempo factor.
        high: about one person in six manages more.
        trusted: whether the load lies where the chart is trustworthy.
    """

    low: float
    middle: float
    high: float
    trusted: bool


@formula(
    subject=_SUBJECT,
    title="Repetitions most people can do at a percentage and a tempo",
    equation="middle = chart(%) × tempo factor;  low = 0.7 × middle;  high = 1.3 × middle",
    inputs={
        "percent": "% = percent of the best single",
        "eccentric_s": "seconds of lowering in one repetition, s",
        "pause_s": "longest pause in one repetition, s",
        "chart": "chart = repetitions and percent, the textbook's unless a lift has its own",
        "slow_from_s": "lowering that counts as slow, s",
        "pause_from_s": "pause that counts as long, s",
        "slow_factor": "tempo factor = share of them left by a slow tempo, 1 for any other",
    },
    output="low, middle and high repetitions to failure",
    source="width: between people SD about 2.5 repetitions at a mean of 8.8 and 80 %, Nuzzo, "
    "Pinto, Nosaka and Steele 2024. Sports Med 54(2):303–321, as quoted elsewhere; "
    "tempo: common practice, no source",
    evidence=Evidence.HOUSE_RULE,
    error="Two people in three. 6 to 26 repetitions have been seen at 70 % squat among trained "
    "lifters (Zourdos 2021), so a percentage always needs an effort limit beside it.",
)
def feasible_reps(
    percent: float,
    eccentric_s: float = 0.0,
    pause_s: float = 0.0,
    chart: Chart = TEXTBOOK_CHART,
    *,
    slow_from_s: float = 4.0,
    pause_from_s: float = 2.0,
    slow_factor: float = 0.7,
) -> RepBand:
    """Band of repetitions to failure at `percent` of 1RM.

    The width is a fixed share of the middle, so for any monotone chart all three values fall
    together as the percentage rises and the band narrows, in repetitions, as people's results do.

    Raises:
        OutOfRangeError: outside the chart: such a load says nothing about repetitions.

    >>> feasible_reps(80)
    RepBand(low=5.6, middle=8.0, high=10.4, trusted=True)
    >>> feasible_reps(80, eccentric_s=5).middle
    5.6
    """
    fresh = reps_at_percent(percent, chart)
    middle = fresh * tempo_factor(
        eccentric_s,
        pause_s,
        slow_from_s=slow_from_s,
        pause_from_s=pause_from_s,
        slow_factor=slow_factor,
    )
    return RepBand(
        low=middle * (1 - BETWEEN_PEOPLE),
        middle=middle,
        high=middle * (1 + BETWEEN_PEOPLE),
        trusted=percent > TRUSTED_ABOVE_PERCENT and fresh < TRUSTED_BELOW_REPS,
    )
