"""Bar speed and load.

Speeds are mean propulsive velocities in m/s. The published parabolas hold for a group, within the
loads that were lifted (30 to 100 % of the best single), so they are inverted on the falling branch
only.
"""

from math import sqrt

from strength_handbook.calc.registry import Evidence, formula

_SUBJECT = "Bar velocity"
_BENCH = (8.4326, -73.501, 112.33)
_SQUAT = (-5.961, -50.71, 117.0)
_BENCH_PULL = (18.5797, -104.182, 147.94)


def _percent(curve: tuple[float, float, float], velocity: float) -> float:
    a, b, c = curve
    return a * velocity**2 + b * velocity + c


def _velocity(curve: tuple[float, float, float], percent: float) -> float:
    """The root on the falling branch, for a parabola open to either side."""
    a, b, c = curve
    return (-b - sqrt(b * b - 4 * a * (c - percent))) / (2 * a)


@formula(
    subject=_SUBJECT,
    title="Bench press: percent of the best single from bar speed",
    equation="% = 8.4326 v² − 73.501 v + 112.33",
    inputs={
        "velocity": "v = mean speed of the driving part of the lift, guided bar, m/s",
    },
    output="% of one-repetition maximum",
    source="González-Badillo & Sánchez-Medina 2010, Int J Sports Med 31:347–352",
    evidence=Evidence.PUBLISHED,
    error="R² 0.98, standard error 3.6 points; people differ by 0.06 m/s either way.",
    ranges={"velocity": (0.16, 1.33)},
)
def gonzalez_badillo_2010_bench(velocity: float) -> float:
    """Bench press load in % of the best single moved at `velocity` m/s.

    Raises:
        OutOfRangeError: outside 0.16–1.33 m/s.

    Example:
        >>> gonzalez_badillo_2010_bench(0.47)
        79.65
    """
    return _percent(_BENCH, velocity)


@formula(
    subject=_SUBJECT,
    title="Full squat: percent of the best single from bar speed",
    equation="% = −5.961 v² − 50.71 v + 117.0",
    inputs={
        "velocity": "v = mean speed of the driving part of the lift, m/s",
    },
    output="% of one-repetition maximum",
    source="Sánchez-Medina 2017, Sports Med Int Open 1:E80–E88",
    evidence=Evidence.PUBLISHED,
    error="R² 0.96; standard error 0.06 m/s.",
    ranges={"velocity": (0.32, 1.47)},
)
def sanchez_medina_2017_squat(velocity: float) -> float:
    """Full back squat load in % of the best single moved at `velocity` m/s.

    Raises:
        OutOfRangeError: outside 0.32–1.47 m/s.

    Example:
        >>> sanchez_medina_2017_squat(0.68)
        79.76
    """
    return _percent(_SQUAT, velocity)


@formula(
    subject=_SUBJECT,
    title="Prone bench pull: percent of the best single from bar speed",
    equation="% = 18.5797 v² − 104.182 v + 147.94",
    inputs={
        "velocity": "v = mean speed of the driving part of the lift, m/s",
    },
    output="% of one-repetition maximum",
    source="Sánchez-Medina 2014, Int J Sports Med 35:209–216",
    evidence=Evidence.PUBLISHED,
    error="R² about 0.97; people differ by 0.06 m/s either way.",
    ranges={"velocity": (0.50, 1.58)},
)
def sanchez_medina_2014_bench_pull(velocity: float) -> float:
    """Prone bench pull load in % of the best single moved at `velocity` m/s.

    Raises:
        OutOfRangeError: outside 0.50–1.58 m/s.

    Example:
        >>> sanchez_medina_2014_bench_pull(0.753)
        80.02
    """
    return _percent(_BENCH_PULL, velocity)


@formula(
    subject=_SUBJECT,
    title="Bench press: bar speed at a percent of the best single",
    equation="the speed v at which 8.4326 v² − 73.501 v + 112.33 gives that percent, on its "
    "falling side",
    inputs={
        "percent": "percent of the best single, %",
    },
    output="v, mean speed of the driving part of the lift, m/s",
    source="González-Badillo & Sánchez-Medina 2010, Int J Sports Med 31:347–352",
    evidence=Evidence.PUBLISHED,
    error="People differ by 0.06 m/s either way.",
    ranges={"percent": (30.0, 100.0)},
)
def gonzalez_badillo_2010_bench_velocity(percent: float) -> float:
    """Bench press speed in m/s expected at `percent` of the best single.

    Raises:
        OutOfRangeError: outside 30–100 %.

    Example:
        >>> gonzalez_badillo_2010_bench_velocity(70)
        0.620
    """
    return _velocity(_BENCH, percent)


@formula(
    subject=_SUBJECT,
    title="Full squat: bar speed at a percent of the best single",
    equation="the speed v at which −5.961 v² − 50.71 v + 117.0 gives that percent, on its "
    "falling side",
    inputs={
        "percent": "percent of the best single, %",
    },
    output="v, mean speed of the driving part of the lift, m/s",
    source="Sánchez-Medina 2017, Sports Med Int Open 1:E80–E88",
    evidence=Evidence.PUBLISHED,
    error="People differ by 0.06 m/s either way.",
    ranges={"percent": (30.0, 100.0)},
)
def sanchez_medina_2017_squat_velocity(percent: float) -> float:
    """Full squat speed in m/s expected at `percent` of the best single.

    Raises:
        OutOfRangeError: outside 30–100 %.

    Example:
        >>> sanchez_medina_2017_squat_velocity(70)
        0.843
    """
    return _velocity(_SQUAT, percent)


@formula(
    subject=_SUBJECT,
    title="Prone bench pull: bar speed at a percent of the best single",
    equation="the speed v at which 18.5797 v² − 104.182 v + 147.94 gives that percent, on its "
    "falling side",
    inputs={
        "percent": "percent of the best single, %",
    },
    output="v, mean speed of the driving part of the lift, m/s",
    source="Sánchez-Medina 2014, Int J Sports Med 35:209–216",
    evidence=Evidence.PUBLISHED,
    error="People differ by 0.06 m/s either way.",
    ranges={"percent": (30.0, 100.0)},
)
def sanchez_medina_2014_bench_pull_velocity(percent: float) -> float:
    """Prone bench pull speed in m/s expected at `percent` of the best single.

    Raises:
        OutOfRangeError: outside 30–100 %.

    Example:
        >>> sanchez_medina_2014_bench_pull_velocity(70)
        0.889
    """
    return _velocity(_BENCH_PULL, percent)


@formula(
    subject=_SUBJECT,
    title="Speed at which a set ends",
    equation="v_stop = v_first × (1 − loss ÷ 100)",
    inputs={
        "first": "v_first = fastest repetition of the set, m/s",
        "loss": "loss = loss of speed allowed, %",
    },
    output="v_stop, m/s",
    source="Sánchez-Medina & González-Badillo 2011, Med Sci Sports Exerc 43:1725–1734",
    evidence=Evidence.PUBLISHED,
    error="Says when to stop, not how many repetitions are left.",
    ranges={"loss": (0.0, 60.0)},
)
def stop_velocity(first: float, loss: float) -> float:
    """Speed in m/s below which the set ends.

    Args:
        first: fastest repetition of the set, usually the first, m/s.
        loss: allowed loss of speed, %.

    Raises:
        OutOfRangeError: for a loss outside 0–60 %.

    Example:
        >>> stop_velocity(0.62, 20)
        0.496
    """
    return first * (1 - loss / 100)
