"""From what a dose says to a load that can be put on: planned, achievable, actual.

For body-weight lifts the load is what is added (positive grams) or taken off (negative); the total
that moves is the share of the body plus that.
"""

import math
from dataclasses import dataclass

from strength_handbook.calc.percent_load import load_at_percent, percent_of_base
from strength_handbook.calc.push_up import ebben_2011_push_up, push_up_load
from strength_handbook.model.dose import Dose
from strength_handbook.model.load import (
    BodyWeight,
    FixedLoad,
    Load,
    PercentOfBodyMass,
    PercentOfEffort,
    PercentOfTop,
    PercentOfTrainingMax,
    RepMax,
    Setting,
)
from strength_handbook.model.loading import BodyWeightLift, Loading, PushUp
from strength_handbook.model.pace import PaceOfBest
from strength_handbook.model.quantities import GRAMS_PER_POUND
from strength_handbook.plan.reference import LoadRules, reference_percent
from strength_handbook.plan.scale import POUND_SLACK_G, Scale, Step

COMMON = LoadRules()
"""What holds where the house sets nothing else."""

HELP_STEP_G = {"kg": 1000, "lb": GRAMS_PER_POUND}
"""Help is printed in whole kilograms or pounds, rounded towards more help."""


@dataclass(frozen=True, slots=True)
class PlannedLoad:
    """One load for one lifter, or for one row of a table.

    Attributes:
        planned_g: what the dose asks for; negative where weight is taken off.
        step: the load that exists, or None where none may be taken.
        help_g: weight taken off: what a band of the room takes, else rounded towards more help; 0
            where none.
        reference_g: what the percentage is of, or 0 where the load is no percentage.
        body_g: share of the body that moves with the load, for body-weight lifts.
    """

    planned_g: float
    step: Step | None
    help_g: int = 0
    reference_g: float = 0
    body_g: float = 0

    @property
    def band(self) -> str:
        """Number of the band that takes weight off; empty where there is none."""
        return self.step.band if self.step is not None else ""

    @property
    def actual_g(self) -> int | None:
        """The load itself: what is on, or less the help."""
        if self.help_g:
            return -self.help_g
        return None if self.step is None else self.step.grams

    @property
    def planned_percent(self) -> float | None:
        """The percentage asked for."""
        if not self.reference_g:
            return None
        return 100 * (self.planned_g + self.body_g) / self.reference_g

    @property
    def actual_percent(self) -> float | None:
        """The percentage that the achievable load really is."""
        if not self.reference_g or self.actual_g is None:
            return None
        moved_g = max(0.0, self.actual_g + self.body_g)
        return percent_of_base(moved_g / 1000, self.reference_g / 1000)


def body_share_g(loading: Loading, body_g: float, height: float | None = None) -> float:
    """Share of the body that a body-weight lift moves; 0 for other lifts.

    Args:
        loading: how the exercise is loaded.
        body_g: body mass.
        height: of the hands in a push-up, in m; the floor if None.
    """
    if isinstance(loading, PushUp):
        return body_g * ebben_2011_push_up(height or 0.0) / 100
    return body_g * loading.share / 100 if isinstance(loading, BodyWeightLift) else 0.0


def moved_g(loading: Loading, body_g: float, load_g: int, height: float | None = None) -> int:
    """Everything that a repetition moves: share of the body and load.

    Args:
        loading: how the exercise is loaded.
        body_g: body mass.
        load_g: the load itself; negative for help.
        height: of the hands in a push-up, in m; the floor if None.
    """
    if isinstance(loading, PushUp):
        share = ebben_2011_push_up(height or 0.0)
        return round(1000 * push_up_load(body_g / 1000, share, load_g / 1000))
    return round(body_share_g(loading, body_g)) + load_g


def achievable(target_g: float, scale: Scale | None, units: str) -> tuple[Step | None, int]:
    """The load that exists for a target, and the grams of help where it lies below zero.

    >>> achievable(-8_200, None, "kg")
    (None, 9000)
    """
    if scale is not None and target_g < 0 and (step := scale.help_for(-target_g)) is not None:
        return step, max(0, -step.grams)
    # Percentages of grams can end in a hair below a whole gram: 0.7 * 140000 = 97999.99…
    target_g = round(target_g, 3)
    slack = POUND_SLACK_G if units == "lb" else 0
    unit = HELP_STEP_G[units]
    if help_units := max(0, math.ceil((-target_g - slack) / unit)):
        return None, round(help_units * unit)
    if scale is None:
        return (Step(0) if target_g <= 0 else None), 0
    return scale.best(max(target_g, 0)), 0


def plan_load(
    dose: Dose,
    loading: Loading,
    scale: Scale | None,
    *,
    body_g: float | None,
    base_g: float | None,
    units: str = "kg",
    rules: LoadRules = COMMON,
) -> PlannedLoad | None:
    """The load of a dose; None where it takes a number that is not known, or effort decides.

    Args:
        dose: what is asked.
        loading: how the exercise is loaded.
        scale: the loads that exist for it.
        body_g: body mass, or None.
        base_g: the tested value; for `PercentOfSystem` the best total, or None.
        units: unit that the pages print, for help in whole units.
        rules: the house's own numbers.
    """
    share_g = body_share_g(loading, body_g or 0, dose.said.height)
    percent = reference_percent(dose, rules)
    if percent is not None:
        if base_g is None or (share_g == 0 and isinstance(loading, BodyWeightLift)):
            return None
        wanted_g = 1000 * load_at_percent(base_g / 1000, percent)
        return achieved(wanted_g - share_g, scale, base_g, share_g, units)
    planned = _planned(dose.load, body_g)
    return None if planned is None else achieved(planned, scale, 0, share_g, units)


_NO_MASS = (PaceOfBest, Setting, RepMax, PercentOfTop, PercentOfTrainingMax, PercentOfEffort)
"""Loads that come to no mass without a tested value."""


def _planned(load: Load | None, body_g: float | None) -> float | None:
    if isinstance(load, FixedLoad):
        return load.mass.grams
    if isinstance(load, BodyWeight):
        return load.sign * load.change.grams
    if isinstance(load, PercentOfBodyMass):
        return None if body_g is None else 1000 * load_at_percent(body_g / 1000, load.percent)
    if load is None or isinstance(load, _NO_MASS):
        return None
    raise TypeError(f"no rule for {load!r}")


def achieved(
    planned_g: float, scale: Scale | None, reference_g: float, share_g: float, units: str
) -> PlannedLoad:
    """A wanted load and the one that exists for it.

    Args:
        planned_g: what is wanted.
        scale: the loads that exist.
        reference_g: what percentages are of, or 0.
        share_g: share of the body that moves with the load, or 0.
        units: unit that the pages print.
    """
    step, help_g = achievable(planned_g, scale, units)
    return PlannedLoad(round(planned_g, 3), step, help_g, reference_g, share_g)
