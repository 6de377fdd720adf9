"""Pace and distance: how long a way takes."""

from strength_handbook.calc.registry import Evidence, formula

_SUBJECT = "Endurance"


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
    ranges={"distance_m": (0, 100_000), "pace_s": (0.1, 3600), "per_m": (100, 1609.344)},
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
