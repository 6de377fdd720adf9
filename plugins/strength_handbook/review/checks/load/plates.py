"""Do the plates of this room reach what is planned, and does a rising plan arrive on the bar?"""

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from itertools import pairwise

from strength_handbook.model.load import PercentOfBase, PercentOfSystem, PercentOfTrainingMax
from strength_handbook.plan.loads import PlannedLoad
from strength_handbook.plan.reference import is_estimate
from strength_handbook.plan.scale import Scale
from strength_handbook.plan.work_out import lifter_loads
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.checks.load.reps import (
    PERCENT_STEP,
    load_text,
    reps_in_a_row,
    reps_possible,
)
from strength_handbook.review.checks.recovery.rest import rest_allows
from strength_handbook.review.desk import Desk, SlotAt
from strength_handbook.review.finding import At, Edit, Finding, Mending
from strength_handbook.review.lighter import is_apart, is_light
from strength_handbook.review.words import listed, number, weight

MOST_POINTS = 1.5
"""A percentage further from the one written is another plan."""
MOST_POINTS_UP = 5.0
"""The same where a load must rise by a whole step."""
_PERCENTS = PercentOfBase | PercentOfSystem | PercentOfTrainingMax


@check(
    "plates-coarse",
    Family.LOAD,
    Severity.WARN,
    what="The load that can be put on, against the planned percentage, for every example lifter, "
    "in points of the tested value. Not in a deload.",
    why="The plates are too coarse for this lifter, who trains at another percentage than planned.",
    rules=("plates-off", "plates-off-light", "light-base"),
    source="arithmetic; the limits are common practice, no source",
)
def plates_coarse(this: Check, desk: Desk) -> Iterator[Finding]:
    """Loads far from their percentage."""
    for at in desk.alike:
        if not isinstance(at.slot.dose.load, _PERCENTS) or is_light(at):
            continue
        found = _worst(desk, at.slot.loads, at.slot.scale)
        if found is None:
            continue
        name, load, points, most = found
        units = desk.book.room.units
        if load.planned_g < 0:
            there = f"band {load.band}, about {weight(load.help_g, units)} off"
            text = f"{name}: {weight(-load.planned_g, units)} of help planned, "
            text += there if load.band else "body weight alone"
        else:
            text = (
                f"{name}: {weight(load.planned_g, units)} planned, "
                f"{weight(load.actual_g or 0, units)} "
                f"on the {at.slot.scale.on if at.slot.scale else 'bar'}"
            )
        text += f", {number(points)} points off; at most {number(most)}"
        yield this.finds(at, text, spot=at.spot_of("load"), change=_nearer(desk, at))


def _worst(
    desk: Desk, loads: Mapping[str, PlannedLoad], scale: Scale | None
) -> tuple[str, PlannedLoad, float, float] | None:
    """The lifter whose load is furthest off, with points and limit; None if all are near."""
    light, limits = desk.rule("light-base") * 1000, ("plates-off", "plates-off-light")
    found = []
    for name, load in loads.items():
        planned, actual = load.planned_percent, load.actual_percent
        if planned is None or actual is None or (load.help_g and not load.band):
            continue
        if scale is not None and load.planned_g > scale.heaviest_g:
            continue  # out of reach is another matter
        most = desk.rule(limits[load.reference_g < light])
        points = round(abs(planned - actual), 2)
        if points > most:
            found.append((points - most, name, load, points, most))
    if not found:
        return None
    return max(found, key=lambda one: one[0])[1:]


def _nearer(desk: Desk, at: SlotAt) -> Mending:
    """A percentage near by that all lifters can load, another rounding, or smaller plates."""
    percent = getattr(at.slot.dose.load, "percent", 0.0)
    for points in range(1, int(MOST_POINTS / PERCENT_STEP) + 1):
        for sign in (-1, 1):
            text = load_text(at.slot.dose, percent + sign * points * PERCENT_STEP)
            other = percent + sign * points * PERCENT_STEP
            if _worst(desk, _loads(desk, at, other), at.slot.scale) is None and _fits(
                desk, at, other
            ):
                return Mending(f"write '{text}'", at.rewritten(load=text))
    scale = at.slot.scale
    if scale is not None and scale.rounding != "nearest":
        nearest = replace(scale, rounding="nearest")
        if _worst(desk, _loads(desk, at, percent, nearest), nearest) is None:
            edit = Edit(at.exercise.file, ("load", "rounding"), "nearest")
            return Mending("write 'rounding: nearest' under 'load' in the exercise", (edit,))
    if scale is not None and scale.helps:
        return Mending("buy or read a band between those there are, or say it in a note")
    return Mending("put smaller plates at the rack, or write the load in kilograms")


def _loads(
    desk: Desk, at: SlotAt, percent: float, scale: Scale | None = None
) -> dict[str, PlannedLoad]:
    slot = at.slot
    assert isinstance(slot.dose.load, _PERCENTS)  # noqa: S101  # asked before
    dose = replace(slot.dose, load=replace(slot.dose.load, percent=percent))
    return lifter_loads(desk.book, slot.exercise, dose, slot.base_id, scale or slot.scale)


def _fits(desk: Desk, at: SlotAt, percent: float) -> bool:
    """True where another percentage leaves repetitions, zone and rest as they have to be.

    What is offered lies within what most people can do, not in the room above it.
    """
    dose, reps = at.slot.dose, reps_in_a_row(at.slot.dose)
    share = (at.slot.percent or percent) / getattr(dose.load, "percent", percent)
    if not rest_allows(desk, at, percent * share):
        return False
    possible = reps_possible(desk, dose, percent * share)
    if possible is None or reps is None:
        return percent * share <= 100
    return reps + (dose.fewest_left or 0.0) <= possible


@dataclass(frozen=True, eq=False)
class _Run:
    """Weeks in a row in which one lifter's plan rises and the load stays."""

    lifter: str
    weeks: tuple[SlotAt, ...]


@check(
    "progress-lost",
    Family.LOAD,
    Severity.WARN,
    what="Weeks of one slot in a row in which the planned load rises while the load that can be "
    "put on stays the same, for every example lifter. Deload and test weeks stand apart.",
    why="This lifter does the same for weeks and takes it for more; light lifters get it first.",
    rules=("same-load-weeks",),
    source="arithmetic",
)
def progress_lost(this: Check, desk: Desk) -> Iterator[Finding]:
    """Steps that are swallowed by rounding."""
    most = desk.rule("same-load-weeks")
    for weeks in _slots_over_weeks(desk):
        runs = [run for run in _runs(weeks) if len(run.weeks) > most]
        if not runs:
            continue
        last = max((run.weeks[-1] for run in runs), key=lambda at: at.number)
        numbers = sorted({at.number for run in runs for at in run.weeks})
        text = "; ".join(_told(desk, run) for run in runs)
        yield this.finds(
            last, text, spot=last.spot_of("load"), at=At(last.at.what, tuple(numbers)),
            change=_step_up(desk, last, [run for run in runs if run.weeks[-1] is last]),
        )  # fmt: skip


def _slots_over_weeks(desk: Desk) -> Iterator[list[SlotAt]]:
    """Every slot's working weeks in one wave, in order."""
    found: dict[tuple[str, str, str, int], list[SlotAt]] = {}
    for at in desk.slots:
        if not is_apart(at) and at.slot.loads and not is_estimate(at.slot.dose):
            key = (at.program.id, at.week.wave_id, at.session.id, at.index)
            found.setdefault(key, []).append(at)
    yield from found.values()


def _runs(weeks: list[SlotAt]) -> Iterator[_Run]:
    for lifter in weeks[0].slot.loads:
        run = weeks[:1]
        for before, at in pairwise(weeks):
            if _swallowed(before.slot.loads.get(lifter), at.slot.loads.get(lifter)):
                run.append(at)
                continue
            yield _Run(lifter, tuple(run))
            run = [at]
        yield _Run(lifter, tuple(run))


def _swallowed(before: PlannedLoad | None, after: PlannedLoad | None) -> bool:
    if before is None or after is None or before.actual_g is None:
        return False
    return after.planned_g > before.planned_g and after.actual_g == before.actual_g


def _told(desk: Desk, run: _Run) -> str:
    plan = [at.slot.dose.load.text for at in run.weeks if at.slot.dose.load is not None]
    actual = run.weeks[0].slot.loads[run.lifter].actual_g or 0
    return f"{run.lifter}: {listed(plan)} all come to {weight(actual, desk.book.room.units)}"


def _step_up(desk: Desk, at: SlotAt, runs: list[_Run]) -> Mending:
    """The percentage at which the last week's load is the next one there is, for all of them."""
    words = "add a repetition instead, or put smaller plates at the rack"
    percent = getattr(at.slot.dose.load, "percent", None)
    scale = at.slot.scale
    if percent is None or scale is None or not isinstance(at.slot.dose.load, _PERCENTS):
        return Mending(words)
    wanted = percent
    for run in runs:
        load = at.slot.loads[run.lifter]
        above = [step.grams for step in scale.steps if step.grams > (load.actual_g or 0)]
        if load.help_g or not above or not load.planned_percent:
            return Mending(words)
        needed = 100 * (above[0] + load.body_g) / load.reference_g
        wanted = max(wanted, percent * needed / load.planned_percent)
    wanted = math.ceil(round(wanted / PERCENT_STEP, 6)) * PERCENT_STEP
    if wanted > percent + MOST_POINTS_UP or not _fits(desk, at, wanted):
        return Mending(words)
    text = load_text(at.slot.dose, wanted)
    return Mending(f"write '{text}' in week {at.number}, or {words}", at.rewritten(load=text))
