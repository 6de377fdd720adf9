"""Best single from a lifter's own two loads and their bar speeds.

Nearer than a group's curve if the loads lie far apart, but still to be read ± 5 %. Both speeds and
the speed of a true best single must come from one measuring device.
"""

from dataclasses import dataclass

from strength_handbook.calc.registry import Evidence, formula

_SUBJECT = "Bar velocity"

_LEAST_SPEED_DIFFERENCE = 0.2  # m/s; nearer speeds make the line's slope a guess
_LEAST_LOAD_DIFFERENCE = 0.40  # of the best single
_LEAST_HEAVY_LOAD = 0.80  # of the best single
_SPREAD = 0.05  # of the estimate, printed with it


@dataclass(frozen=True, slots=True)
class TwoPointEstimate:
    """A best single estimated from two submaximal loads.

    Attributes:
        one_rm: kg.
        low: kg, 5 % below.
        high: kg, 5 % above.
        loads_far_apart: the loads lie 40 % of the estimate apart and the heavy one is 80 % of it
            or more; otherwise the estimate is worth little.
    """

    one_rm: float
    low: float
    high: float
    loads_far_apart: bool


@formula(
    subject=_SUBJECT,
    title="Best single from a lifter's own two loads",
    equation="1RM = L₁ + (L₂ − L₁) × (v_max − v₁) ÷ (v₂ − v₁)",
    inputs={
        "light_load": "L₁ = light load, kg",
        "light_velocity": "v₁ = its fastest repetition, m/s",
        "heavy_load": "L₂ = heavy load, kg",
        "heavy_velocity": "v₂ = its fastest repetition, m/s",
        "one_rm_velocity": "v_max = speed of a true best single, m/s",
    },
    output="kg, with ± 5 %",
    source="García-Ramos 2018, Int J Sports Physiol Perform 13:474–481",
    evidence=Evidence.PUBLISHED,
    error="± 5 %; on average −2.3 to 0.5 kg off, random error 3.0 to 3.8 kg; much worse in "
    "some groups.",
)
def garcia_ramos_2018_two_point(
    light_load: float,
    light_velocity: float,
    heavy_load: float,
    heavy_velocity: float,
    one_rm_velocity: float,
) -> TwoPointEstimate:
    """Best single in kg from the speeds of a light and a heavy load, all on one device.

    Raises:
        ValueError: when the heavy load is not heavier, the speeds lie within 0.2 m/s, or the heavy
            load was already slower than a best single.

    Example:
        >>> garcia_ramos_2018_two_point(45, 1.02, 85, 0.38, 0.16)
        TwoPointEstimate(one_rm=98.75, low=93.81, high=103.69, loads_far_apart=True)
    """
    if not 0 < light_load < heavy_load:
        raise ValueError(f"the heavy load {heavy_load:g} kg is not above {light_load:g} kg")
    if light_velocity <= heavy_velocity + _LEAST_SPEED_DIFFERENCE:
        raise ValueError(
            f"{light_velocity:g} m/s is not {_LEAST_SPEED_DIFFERENCE:g} m/s faster than "
            f"{heavy_velocity:g} m/s: too close for a line"
        )
    if not 0 < one_rm_velocity <= heavy_velocity:
        raise ValueError(
            f"the heavy load moved at {heavy_velocity:g} m/s, a best single at {one_rm_velocity:g}"
        )
    slope = (heavy_load - light_load) / (heavy_velocity - light_velocity)
    one_rm = light_load + slope * (one_rm_velocity - light_velocity)
    far = heavy_load - light_load >= _LEAST_LOAD_DIFFERENCE * one_rm
    return TwoPointEstimate(
        one_rm=one_rm,
        low=one_rm * (1 - _SPREAD),
        high=one_rm * (1 + _SPREAD),
        loads_far_apart=far and heavy_load >= _LEAST_HEAVY_LOAD * one_rm,
    )


@formula(
    subject=_SUBJECT,
    title="Training base after a speed estimate",
    equation="new = the smaller of estimate and (old + step)",
    inputs={
        "old": "old = value that percentages referred to so far, kg",
        "estimate": "estimate = value found from speed, kg",
        "step": "step = smallest step that the plates allow, kg",
    },
    output="new value that percentages refer to, kg",
    source="common practice, no source",
    evidence=Evidence.HOUSE_RULE,
)
def base_after_velocity(old: float, estimate: float, step: float) -> float:
    """Training base in kg: never raised by more than one plate step on speed alone.

    Example:
        >>> base_after_velocity(100, 107, 2.5)
        102.5
    """
    return min(estimate, old + step)
