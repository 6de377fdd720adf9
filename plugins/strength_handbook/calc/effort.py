"""Effort: repetitions in reserve (RIR), rated exertion (RPE) and the load they imply.

RIR says how many more repetitions would have been possible; RPE is the same on a scale to 10.
"""

from dataclasses import dataclass

from strength_handbook.calc.registry import Evidence, formula
from strength_handbook.calc.repetitions import TEXTBOOK_CHART, Chart, percent_for_reps

_SUBJECT = "Effort"

RELIABLE_UP_TO_RIR = 5.0
"""Hackett 2017: above this people misjudge what they have left by more than two repetitions."""

ERROR_OF_RESERVE: tuple[tuple[float, float, float], ...] = ((0, 5, 1.0), (7, 10, 2.0))
"""(lowest RIR, highest RIR, error in repetitions), Hackett 2017: about 1, then more than 2."""


@formula(
    subject=_SUBJECT,
    title="Repetitions in reserve from rated exertion",
    equation="RIR = 10 − RPE",
    inputs={
        "rpe": "RPE = rated exertion, 5 to 10",
    },
    output="RIR, good repetitions left",
    ranges={"rpe": (5, 10)},
    source="Zourdos et al. 2016. J Strength Cond Res 30(1):267–275",
    evidence=Evidence.PUBLISHED,
    error="About 1 repetition when 0 to 5 remain, more than 2 when 7 to 10 remain (Hackett 2017).",
)
def zourdos_2016(rpe: float) -> float:
    """Repetitions in reserve; below RPE 5 the scale no longer counts repetitions.

    >>> zourdos_2016(8)
    2.0
    """
    return 10.0 - rpe


@formula(
    subject=_SUBJECT,
    title="Rated exertion from repetitions in reserve",
    equation="RPE = 10 − RIR",
    inputs={
        "rir": "RIR = good repetitions left (in reserve)",
    },
    output="RPE, 0 to 10",
    ranges={"rir": (0, 5)},
    source="Zourdos et al. 2016. J Strength Cond Res 30(1):267–275",
    evidence=Evidence.PUBLISHED,
)
def rpe_from_rir(rir: float) -> float:
    """Rated exertion of a set that stops `rir` repetitions early.

    >>> rpe_from_rir(3)
    7.0
    """
    return 10.0 - rir


@dataclass(frozen=True, slots=True)
class Reserve:
    """Repetitions in reserve as the scale words them, fewest and most."""

    fewest: int
    most: int


# Helms 2016, values from memory. 9.5: no further repetition, but more load was possible.
_HELMS: dict[float, Reserve] = {
    10.0: Reserve(0, 0),
    9.5: Reserve(0, 0),
    9.0: Reserve(1, 1),
    8.5: Reserve(1, 2),
    8.0: Reserve(2, 2),
    7.5: Reserve(2, 3),
    7.0: Reserve(3, 3),
    6.0: Reserve(4, 6),
    5.5: Reserve(4, 6),
    5.0: Reserve(4, 6),
}


@formula(
    subject=_SUBJECT,
    title="Repetitions in reserve with half points",
    equation="RPE 10 and 9.5: 0 left; 9: 1; 8.5: 1 to 2; 8: 2; 7.5: 2 to 3; 7: 3; 5 to 6: 4 to 6",
    inputs={
        "rpe": "RPE = rated exertion, 5 to 10, whole or half points",
    },
    output="fewest and most repetitions in reserve",
    ranges={"rpe": (5, 10)},
    source="Helms, Cronin, Storey and Zourdos 2016. Strength Cond J 38(4):42–49 "
    "(values from memory)",
    evidence=Evidence.PUBLISHED,
)
def helms_2016(rpe: float) -> Reserve:
    """Repetitions in reserve as a range, by look-up.

    Raises:
        ValueError: for a value that is not on the scale, such as 8.2 or 6.5.

    >>> helms_2016(8.5)
    Reserve(fewest=1, most=2)
    """
    if rpe not in _HELMS:
        raise ValueError(f"RPE {rpe:g} is not on the scale of whole and half points")
    return _HELMS[rpe]


@formula(
    subject=_SUBJECT,
    title="Percent of the best single from repetitions and reserve",
    equation="% = chart((reps + RIR) / factor)",
    inputs={
        "reps": "reps = repetitions done",
        "rir": "RIR = good repetitions left (in reserve)",
        "factor": "factor = share of the chart's repetitions that the tempo leaves",
        "chart": "chart = repetitions and percent, the textbook's unless a lift has its own",
    },
    output="% of the best single",
    ranges={"reps": (1, 30), "rir": (0, 10)},
    source="arithmetic on the chart of Sheppard and Triplett 2016 (Essentials, 4th ed., ch. 17)",
    evidence=Evidence.ARITHMETIC,
    error="As the chart. With more than 5 in reserve the rating itself is unreliable.",
)
def percent_from_effort(
    reps: float, rir: float, factor: float = 1.0, chart: Chart = TEXTBOOK_CHART
) -> float:
    """Load, in percent of 1RM, for `reps` repetitions with `rir` left at some tempo.

    Raises:
        OutOfRangeError: when repetitions and reserve together leave the chart.

    >>> percent_from_effort(6, 3), percent_from_effort(5, 2, factor=0.7)
    (77.0, 75.0)
    """
    return percent_for_reps((reps + rir) / factor, chart)


@formula(
    subject=_SUBJECT,
    title="Whether a rated reserve can be trusted",
    equation="RIR ≤ 5",
    inputs={
        "rir": "RIR = good repetitions left (in reserve)",
    },
    output="yes or no",
    ranges={"rir": (0, 30)},
    source="Hackett et al. 2017. J Strength Cond Res 31(8):2162–2168",
    evidence=Evidence.PUBLISHED,
    error="81 adults, chest press at 70 % and leg press at 80 % of 1RM.",
)
def reserve_is_reliable(rir: float) -> bool:
    """Whether people can judge such a reserve to about one repetition.

    >>> reserve_is_reliable(3), reserve_is_reliable(6)
    (True, False)
    """
    return rir <= RELIABLE_UP_TO_RIR
