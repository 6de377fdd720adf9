"""Warm-up steps to today's load and its plates."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import lru_cache

from strength_handbook.calc.plates import LoadTable
from strength_handbook.calc.ramp import ramp_plan
from strength_handbook.model.load import FixedLoad
from strength_handbook.model.loading import OnBar
from strength_handbook.model.room import Room
from strength_handbook.plan.reference import is_estimate, top_percent
from strength_handbook.plan.scales import bar_table
from strength_handbook.plan.tables import base_strip
from strength_handbook.plan.worked import WorkedSlot

EVERY_ROW = 4
"""Every fourth row of the look-up strip gets its steps: enough to read between."""


@dataclass(frozen=True, slots=True)
class RampStep:
    """One step on the way up.

    Attributes:
        grams: the load.
        parts: plates on one side, inner to outer.
        added: plates that go on for this step, on each side.
        off: plates that come off first, outer one first; empty for all steps but one.
        reps: repetitions; 0 for the working load itself.
    """

    grams: int
    parts: tuple[int, ...]
    added: tuple[int, ...]
    off: tuple[int, ...]
    reps: int


Ramp = tuple[RampStep, ...]


@dataclass(frozen=True, eq=False)
class Ramps:
    """Warm-up steps of one slot.

    Attributes:
        to_top: they lead to today's expected top set, not to a planned load.
        everybody: steps to a load that is the same for all, or empty.
        by_lifter: steps of each example lifter whose load is known.
        rows: tested value in grams and its steps, for those without a profile.
        percent: share of the tested value to which they lead; None where that is a fixed load.
    """

    to_top: bool
    everybody: Ramp = ()
    by_lifter: Mapping[str, Ramp] = field(default_factory=dict)
    rows: tuple[tuple[int, Ramp], ...] = ()
    percent: float | None = None


@lru_cache(maxsize=4096)  # of numbers only, so it holds for the next handbook too
def ramp_to(table: LoadTable, top_g: int) -> Ramp:
    """Steps to a load, the load itself last; empty where it cannot be built.

    The plates of the load are those that the table lists for it, as on every other page.
    """
    ramp = ramp_plan(table, top_g)
    if ramp is None:
        return ()
    steps = [
        RampStep(step.load.total_g, step.load.side_g, step.on_g, step.off_g, step.reps)
        for step in ramp.steps
    ]
    return (
        *steps,
        RampStep(ramp.top.total_g, ramp.top.side_g, ramp.top_on_g, ramp.top_off_g, 0),
    )


def slot_ramps(room: Room, slot: WorkedSlot) -> Ramps | None:
    """Warm-up steps of a main lift on a bar whose load is known; None for all others.

    Of sets that differ they lead to the first one.
    """
    if slot.series:
        return slot_ramps(room, slot.series[0])
    loading, dose, scale = slot.exercise.load, slot.dose, slot.scale
    if (
        not isinstance(loading, OnBar)
        or loading.hands is not None
        or scale is None
        or slot.exercise.role != "main"
        or dose.said.test is not None
    ):
        return None
    table = bar_table(room, loading)
    if isinstance(dose.load, FixedLoad) and dose.top is None:
        step = scale.best(dose.load.mass.grams)
        return Ramps(to_top=False, everybody=ramp_to(table, step.grams)) if step else None
    percent = _percent(slot)
    if percent is None or slot.base is None:
        return None
    by_lifter = {
        name: ramp
        for name, load in slot.loads.items()
        # Percentages of grams can end in a hair below a whole gram.
        if (step := scale.best(round(load.reference_g * percent / 100, 3)))
        and (ramp := ramp_to(table, step.grams))
    }
    rows = tuple(
        (value, ramp)
        for value, cell in base_strip(slot.base, scale, percent).rows[::EVERY_ROW]
        if cell.step and (ramp := ramp_to(table, cell.step.grams))
    )
    if not by_lifter and not rows:
        return None
    to_top = dose.top is not None
    return Ramps(to_top=to_top, by_lifter=by_lifter, rows=rows, percent=percent)


def _percent(slot: WorkedSlot) -> float | None:
    """Percent of the base to which the ramp leads: today's top set where there is one."""
    if slot.dose.top is not None:
        return top_percent(slot.dose)
    return None if is_estimate(slot.dose) else slot.percent
