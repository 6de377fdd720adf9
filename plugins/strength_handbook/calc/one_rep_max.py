"""One-repetition maximum (1RM) from repetitions to failure.

Seven general equations. Each is homogeneous in the load, so kilograms in give kilograms out and
pounds in give pounds out. `estimate_one_rep_max` reports what they agree on: a range, never one
number.
"""

from collections.abc import Callable
from dataclasses import dataclass
from math import exp
from typing import ParamSpec, TypeVar

from strength_handbook.calc.registry import Evidence, formula

P = ParamSpec("P")
R = TypeVar("R")

MOST_REPS = 15
"""Above this no estimate is given."""

CAUTION_ABOVE_REPS = 10
"""Above this the load no longer falls in a straight line with repetitions (Reynolds 2006)."""

_SUBJECT = "One-repetition maximum"
_GENERAL_ERROR = "Most accurate below 10 reps (LeSuer 1997); accuracy falls as reps rise."


def _equation(
    equation: str,
    source: str,
    reps: tuple[float, float] = (1, MOST_REPS),
    error: str = _GENERAL_ERROR,
) -> Callable[[Callable[P, R]], Callable[P, R]]:
    """Registers an equation of the form 1RM = load × f(reps)."""
    return formula(
        subject=_SUBJECT,
        title=f"1RM from a set to failure, {source.split('.', maxsplit=1)[0]}",
        equation=equation,
        inputs={"load_kg": "w = load lifted to failure, kg", "reps": "r = repetitions to failure"},
        output="estimated 1RM, kg",
        ranges={"load_kg": (0, 1000), "reps": reps},
        source=source,
        evidence=Evidence.PUBLISHED,
        error=error,
    )


@_equation(
    "1RM = w (1 + r/30)",
    "Epley 1985. Poundage chart. Boyd Epley Workout. Lincoln, NE: Body Enterprises",
)
def epley_1985(load_kg: float, reps: float) -> float:
    """Estimated 1RM; gives 3.3 % more than the load for a single.

    >>> epley_1985(100, 10)
    133.33
    """
    return load_kg * (1 + reps / 30)


@_equation(
    "1RM = w · 36/(37 − r)",
    "Brzycki 1993. J Phys Educ Recreat Dance 64(1):88–90",
)
def brzycki_1993(load_kg: float, reps: float) -> float:
    """Estimated 1RM; returns the load itself for a single.

    >>> brzycki_1993(100, 5)
    112.5
    """
    return load_kg * 36 / (37 - reps)


@_equation(
    "1RM = w · r^0.10",
    "Lombardi 1989. Beginning Weight Training. Dubuque: Brown",
)
def lombardi_1989(load_kg: float, reps: float) -> float:
    """Estimated 1RM; returns the load itself for a single.

    >>> lombardi_1989(100, 5)
    117.46
    """
    return float(load_kg * reps**0.10)


@_equation(
    "1RM = w (1 + 0.025 r)",
    "O'Conner, Simmons and O'Shea 1989. Weight Training Today. St Paul: West",
)
def oconner_1989(load_kg: float, reps: float) -> float:
    """Estimated 1RM; the lowest of the straight lines.

    >>> oconner_1989(100, 8)
    120.0
    """
    return load_kg * (1 + 0.025 * reps)


@_equation(
    "1RM = 100 w/(101.3 − 2.67123 r)",
    "Lander 1984. Maximum based on reps. NSCA J 6(6):60–61",
)
def lander_1984(load_kg: float, reps: float) -> float:
    """Estimated 1RM.

    >>> lander_1984(100, 8)
    125.11
    """
    return 100 * load_kg / (101.3 - 2.67123 * reps)


@_equation(
    "1RM = 100 w/(52.2 + 41.9 e^(−0.055 r))",
    "Mayhew, Ball, Arnold and Bowen 1992. J Appl Sport Sci Res 6(4):200–206",
    error="Derived on the bench press. Gives 108.9 % of the load for a single.",
)
def mayhew_1992(load_kg: float, reps: float) -> float:
    """Estimated 1RM. A textbook misprints the exponent as −0.55; −0.055 is the original.

    >>> mayhew_1992(100, 8)
    126.29
    """
    return 100 * load_kg / (52.2 + 41.9 * exp(-0.055 * reps))


@_equation(
    "1RM = 100 w/(48.8 + 53.8 e^(−0.075 r))",
    "Wathan 1994. Load assignment. In: Baechle, ed. Essentials of Strength Training and "
    "Conditioning. Human Kinetics, 435–446",
    error="Over-estimates squat and bench press by less than 1 % (LeSuer 1997).",
)
def wathan_1994(load_kg: float, reps: float) -> float:
    """Estimated 1RM. A textbook misprints the exponent as −0.75; −0.075 is the original.

    >>> wathan_1994(100, 8)
    127.67
    """
    return 100 * load_kg / (48.8 + 53.8 * exp(-0.075 * reps))


@dataclass(frozen=True, slots=True)
class OneRepMaxRange:
    """What the equations say together, in the unit of the load.

    Attributes:
        low: smallest estimate.
        high: largest estimate.
        middle: mean of the estimates.
        methods: names of the equations used; empty when the load itself is the measured 1RM.
        caution: whether the set was too long for a good estimate.
    """

    low: float
    high: float
    middle: float
    methods: tuple[str, ...]
    caution: bool


# Reynolds 2006: straight lines hold up to 10 repetitions, above that only curves.
_STRAIGHT_LINES: dict[str, Callable[[float, float], float]] = {
    "epley_1985": epley_1985,
    "brzycki_1993": brzycki_1993,
    "oconner_1989": oconner_1989,
    "lander_1984": lander_1984,
}
_CURVES: dict[str, Callable[[float, float], float]] = {
    "lombardi_1989": lombardi_1989,
    "mayhew_1992": mayhew_1992,
    "wathan_1994": wathan_1994,
}


@formula(
    subject=_SUBJECT,
    title="1RM as a range over the general equations",
    equation="lowest, mean and highest of Epley, Brzycki, O'Conner, Lander, Lombardi, Mayhew and "
    "Wathan; above 10 reps of the last three only; a single is its own 1RM",
    inputs={
        "load_kg": "load lifted to failure, kg",
        "reps": "repetitions to failure",
    },
    output="lowest, mean and highest estimate of the best single, kg",
    ranges={"load_kg": (0, 1000), "reps": (1, MOST_REPS)},
    source="the equations named; limit of 10 for straight lines: Reynolds, Gordon and Robergs "
    "2006. J Strength Cond Res 20(3):584–592; refusal above 15: common practice, no source",
    evidence=Evidence.HOUSE_RULE,
    error=_GENERAL_ERROR,
)
def estimate_one_rep_max(load_kg: float, reps: int) -> OneRepMaxRange:
    """Range of 1RM from one set to failure.

    Raises:
        OutOfRangeError: above 15 repetitions.

    >>> estimate_one_rep_max(100, 5)
    OneRepMaxRange(low=112.5, high=119.01, middle=115.49, methods=(...), caution=False)
    >>> estimate_one_rep_max(100, 1).middle
    100.0
    """
    if reps == 1:
        measured = float(load_kg)
        return OneRepMaxRange(measured, measured, measured, (), caution=False)
    caution = reps > CAUTION_ABOVE_REPS
    equations = _CURVES if caution else _STRAIGHT_LINES | _CURVES
    estimates = [equation(load_kg, reps) for equation in equations.values()]
    return OneRepMaxRange(
        low=min(estimates),
        high=max(estimates),
        middle=sum(estimates) / len(estimates),
        methods=tuple(equations),
        caution=caution,
    )
