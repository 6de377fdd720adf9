"""Pace and power: how long a way takes, what a tested best comes to, watts of a rowing machine."""

from strength_handbook.calc.registry import Evidence, formula

_SUBJECT = "Endurance"
_PER = (100.0, 1609.344)
"""Shortest and longest distance that paces are counted over, m."""


@formula(
    subject=_SUBJECT,
    title="Seconds of a distance at a pace",
    equation="seconds = distance ÷ per × pace",
    inputs={
        "distance_m": "distance = of one piece of work, m",
        "pace_s": "pace = time for the distance that paces are counted over, s",
        "per_m": "per = that distance, m",
    },
    output="seconds, s",
    ranges={"distance_m": (0, 100_000), "pace_s": (0.1, 36_000), "per_m": _PER},
    source="distance over speed; the usual paces are common practice, no source",
    evidence=Evidence.ARITHMETIC,
    error="where the pace is a range, the time has the same spread",
)
def pace_seconds(distance_m: float, pace_s: float, per_m: float) -> float:
    """Seconds for a distance at a pace.

    >>> pace_seconds(5000, 120, 500)
    1200.0
    """
    return distance_m / per_m * pace_s


@formula(
    subject=_SUBJECT,
    title="Pace of a tested best",
    equation="pace = time ÷ distance × per",
    inputs={
        "time_s": "time = of the test, s",
        "distance_m": "distance = of the test, m",
        "per_m": "per = the distance that paces are counted over, m",
    },
    output="pace, s",
    ranges={"time_s": (1, 500_000), "distance_m": (100, 100_000), "per_m": _PER},
    source="distance over speed",
    evidence=Evidence.ARITHMETIC,
)
def pace_of_time(time_s: float, distance_m: float, per_m: float) -> float:
    """Seconds for each `per_m` at the mean speed of a test.

    >>> pace_of_time(480, 2000, 500)
    120.0
    """
    return time_s / distance_m * per_m


@formula(
    subject=_SUBJECT,
    title="Pace at a share of the best speed",
    equation="pace = best pace × 100 ÷ percent",
    inputs={
        "best_pace_s": "best pace = of the test, s",
        "percent": "percent = of its speed",
    },
    output="pace, s",
    ranges={"best_pace_s": (0.1, 3600), "percent": (10, 150)},
    source="speed is distance over time, so a share of it is the time over that share",
    evidence=Evidence.ARITHMETIC,
)
def pace_at_percent(best_pace_s: float, percent: float) -> float:
    """The pace at a percentage of the best speed.

    >>> pace_at_percent(120, 80)
    150.0
    """
    return best_pace_s * 100 / percent


@formula(
    subject=_SUBJECT,
    title="Watts at a share of the best power",
    equation="watts = best watts × percent ÷ 100",
    inputs={"best_w": "best watts = mean of the test, W", "percent": "percent = of them"},
    output="watts, W",
    ranges={"best_w": (1, 2500), "percent": (10, 150)},
    source="a share of it",
    evidence=Evidence.ARITHMETIC,
)
def watts_at_percent(best_w: float, percent: float) -> float:
    """Watts at a percentage of the best.

    >>> watts_at_percent(240, 75)
    180.0
    """
    return best_w * percent / 100


@formula(
    subject=_SUBJECT,
    title="Watts on a rowing machine of the air-braked kind",
    equation="watts = 2.80 ÷ (pace ÷ 500)³",
    inputs={"pace_s": "pace = time for 500 m, s"},
    output="watts, W",
    ranges={"pace_s": (50, 600)},
    source="published relation of air-braked rowing machines",
    evidence=Evidence.PUBLISHED,
    error="other kinds of machine show other watts: its display comes first",
)
def rowing_watts(pace_s: float) -> float:
    """Mean power at a pace.

    >>> round(rowing_watts(120))
    203
    """
    return 2.80 / (pace_s / 500) ** 3
