"""Regressions for single lifts, in kilograms only.

Each has an intercept, so unlike the general equations of `one_rep_max` it is wrong in pounds.
Where the source prints no limits, the range is a guard and its comment says how it was chosen.
"""

from collections.abc import Callable
from enum import Enum
from typing import ParamSpec, TypeVar

from strength_handbook.calc.registry import Evidence, formula

P = ParamSpec("P")
R = TypeVar("R")

_SUBJECT = "One-repetition maximum"

# A set at 70 to 80 % gives most people 5 to 20 repetitions; the abstract prints no limits.
_KRAVITZ_REPS = (5.0, 20.0)


def _kravitz(
    lift: str, equation: str, percent: int, lightest_kg: float, error_kg: float
) -> Callable[[Callable[P, R]], Callable[P, R]]:
    """Registers one of the equations of Kravitz 2003.

    Args:
        lift: the lift's name.
        equation: as printed.
        percent: load of the tested set, % of 1RM.
        lightest_kg: load below which the equation makes more repetitions mean a smaller 1RM.
        error_kg: published standard error of estimate.
    """
    return formula(
        subject=_SUBJECT,
        title=f"1RM of the {lift} from a set to failure",
        equation=equation,
        inputs={"load_kg": "w = load lifted to failure, kg", "reps": "r = repetitions to failure"},
        output="estimated 1RM, kg",
        ranges={"load_kg": (lightest_kg, 300), "reps": _KRAVITZ_REPS},
        source="Kravitz, Akalan, Nowicki and Kinzey 2003. J Strength Cond Res 17(1):167–172",
        evidence=Evidence.PUBLISHED,
        error=f"Standard error {error_kg} kg; 18 elite male high-school lifters at "
        f"{percent} % of 1RM. Kilograms only.",
    )


@_kravitz("back squat", "1RM = 159.9 + 0.103 r w − 11.552 r", 70, 113, 5.06)
def kravitz_2003_squat(load_kg: float, reps: float) -> float:
    """Estimated back squat 1RM in kg from a set at 70 %.

    >>> kravitz_2003_squat(126, 12)
    177.0
    """
    return 159.9 + 0.103 * reps * load_kg - 11.552 * reps


@_kravitz("bench press", "1RM = 90.66 + 0.085 r w − 5.306 r", 70, 63, 2.69)
def kravitz_2003_bench(load_kg: float, reps: float) -> float:
    """Estimated bench press 1RM in kg from a set at 70 %.

    >>> kravitz_2003_bench(75, 14)
    105.6
    """
    return 90.66 + 0.085 * reps * load_kg - 5.306 * reps


@_kravitz("deadlift", "1RM = 156.08 + 0.098 r w − 12.106 r", 80, 124, 4.97)
def kravitz_2003_deadlift(load_kg: float, reps: float) -> float:
    """Estimated deadlift 1RM in kg from a set at 80 %.

    >>> kravitz_2003_deadlift(160, 8)
    184.7
    """
    return 156.08 + 0.098 * reps * load_kg - 12.106 * reps


@formula(
    subject=_SUBJECT,
    title="1RM of the chest press from a 5RM",
    equation="1RM = 1.1307 × 5RM + 0.6999",
    inputs={
        "five_rm_kg": "5RM = most that can be lifted five times, kg",
    },
    output="estimated 1RM, kg",
    ranges={"five_rm_kg": (5, 250)},  # guard; the abstract prints no limits
    source="Reynolds, Gordon and Robergs 2006. J Strength Cond Res 20(3):584–592",
    evidence=Evidence.PUBLISHED,
    error="Standard error 2.98 kg; 70 adults aged 18 to 69. Kilograms only.",
)
def reynolds_2006_chest_press(five_rm_kg: float) -> float:
    """Estimated chest press 1RM in kg.

    >>> reynolds_2006_chest_press(60)
    68.54
    """
    return 1.1307 * five_rm_kg + 0.6999


@formula(
    subject=_SUBJECT,
    title="1RM of the leg press from a 5RM",
    equation="1RM = 1.0970 × 5RM + 14.2546",
    inputs={
        "five_rm_kg": "5RM = most that can be lifted five times, kg",
    },
    output="estimated 1RM, kg",
    ranges={"five_rm_kg": (20, 600)},  # guard; the abstract prints no limits
    source="Reynolds, Gordon and Robergs 2006. J Strength Cond Res 20(3):584–592",
    evidence=Evidence.PUBLISHED,
    error="Standard error 16.16 kg; 70 adults aged 18 to 69. Kilograms only.",
)
def reynolds_2006_leg_press(five_rm_kg: float) -> float:
    """Estimated leg press 1RM in kg.

    >>> reynolds_2006_leg_press(150)
    178.80
    """
    return 1.0970 * five_rm_kg + 14.2546


class Accessory(Enum):
    """Accessory lift with slope and intercept (kg) of Wong 2013 on the bench press 6RM."""

    HAMMER_CURL = (0.28, 6.30)
    BARBELL_CURL = (0.33, 6.20)
    OVERHEAD_TRICEPS_EXTENSION = (0.33, -0.60)
    DUMBBELL_SHOULDER_PRESS = (0.42, 5.84)


@formula(
    subject=_SUBJECT,
    title="6RM of an accessory lift from the bench press 6RM",
    equation="hammer curl 0.28 b + 6.30; barbell curl 0.33 b + 6.20; overhead triceps extension "
    "0.33 b − 0.60; dumbbell shoulder press 0.42 b + 5.84",
    inputs={
        "bench_six_rm_kg": "b = most that can be benched six times, kg",
        "accessory": "which of the four lifts",
    },
    output="most that can be lifted six times, kg",
    ranges={"bench_six_rm_kg": (20, 150)},  # guard; the abstract prints no limits
    source="Wong, Ngo, Tse and Smith 2013. J Sports Sci Med 12(1):38–43",
    evidence=Evidence.PUBLISHED,
    error="Measured and predicted differ by 6.5 to 8.5 %; 29 students. Kilograms only.",
)
def wong_2013(bench_six_rm_kg: float, accessory: Accessory) -> float:
    """Predicted 6RM in kg: a first load to try, not a test result.

    >>> wong_2013(60, Accessory.HAMMER_CURL)
    23.1
    """
    slope, intercept_kg = accessory.value
    return slope * bench_six_rm_kg + intercept_kg
