"""Does the load stay within what the room has, what things bear, and what may be lowered?"""

import math
from collections.abc import Iterator

from strength_handbook.model.loading import BodyWeightLift, ByEffort, OnBar
from strength_handbook.model.span import ends
from strength_handbook.plan.loads import PlannedLoad
from strength_handbook.plan.scale import Scale
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.checks.load.reps import PERCENT_STEP, load_text
from strength_handbook.review.desk import Desk, SlotAt
from strength_handbook.review.finding import Finding, Mending
from strength_handbook.review.words import listed, number, weight

EPSILON = 1e-6
"""Grams."""


@check(
    "out-of-reach",
    Family.LOAD,
    Severity.WARN,
    what="Planned loads of the example lifters, against the lightest and the heaviest load there "
    "is, where these miss the plan by more than a share of it. A load that exists for none of them "
    "is an error of its own.",
    why="This lifter finds no load on the page, or one far from the plan.",
    rules=("reach-off",),
    source="arithmetic; how far is too far is common practice, no source",
)
def out_of_reach(this: Check, desk: Desk) -> Iterator[Finding]:
    """Loads that some lifters can't have."""
    units, off = desk.book.room.units, desk.rule("reach-off") / 100
    for at in desk.alike:
        scale = at.slot.scale
        if scale is None or not scale.steps:
            continue
        for wrong, end, what in (
            (_below, scale.lightest_g, "begins at"), (_above, scale.heaviest_g, "ends at")
        ):  # fmt: skip
            missed = [name for name, load in at.slot.loads.items() if wrong(load, scale)]
            far = {
                name: abs(end - at.slot.loads[name].planned_g) - off * at.slot.loads[name].planned_g
                for name in missed
            }
            names = [name for name in missed if far[name] > EPSILON]
            if not names or len(missed) == len(at.slot.loads):
                continue
            told = ", ".join(
                f"{name} {weight(round(at.slot.loads[name].planned_g, -2), units)}"
                for name in names
            )
            text = (
                f"planned for {told}; the {scale.on} {what} {weight(end, units)}, more than "
                f"{100 * off:g} % off"
            )
            key = "easier" if wrong is _below else "harder"
            change = Mending(
                f"write 'doors: {{{key}: What {listed(names)} can take instead.}}' in the slot, or "
                "plan it with something else"
            )
            yield this.finds(at, text, spot=at.spot_of("load"), change=change)


def _below(load: PlannedLoad, scale: Scale) -> bool:
    return load.step is None and not load.help_g and load.planned_g < scale.lightest_g


def _above(load: PlannedLoad, scale: Scale) -> bool:
    """True where not even the next load, if there were one, would do."""
    last = scale.steps[-2].grams if len(scale.steps) > 1 else 0
    return load.planned_g >= 2 * scale.heaviest_g - last


@check(
    "over-rating",
    Family.LOAD,
    Severity.ERROR,
    what="The load at the top with bands or chains, against the maker's limit of the bar. Plates "
    "alone never go above it.",
    why="A bar above its limit can bend or break under the lifter.",
    source="the maker's limit in room.yml",
)
def over_rating(this: Check, desk: Desk) -> Iterator[Finding]:
    """Bars that bear too much at the top."""
    for at in desk.slots:
        loading = at.slot.exercise.load
        limit = desk.book.room.bars[loading.bar].limit if isinstance(loading, OnBar) else None
        if limit is None:
            continue
        over = {name: v for name, v in at.slot.variable.items() if v.load.top > limit.kg + 1e-9}
        if over:
            name = max(over, key=lambda one: over[one].load.top)
            top = weight(100 * round(10 * over[name].load.top), limit.unit)
            text = f"{name}: {top} at the top with {over[name].what}; the bar bears {limit.label}"
            yield this.finds(at, text, spot=at.spot_of("load"), change=_lighter(at, limit.kg))


def _lighter(at: SlotAt, limit_kg: float) -> Mending:
    """The percentage at which everybody's bar stays within its limit."""
    words = "take a lighter load, fewer chains or thinner bands"
    percent = getattr(at.slot.dose.load, "percent", None)
    fits = percent or 0.0
    for name, found in at.slot.variable.items():
        load = at.slot.loads[name]
        if load.planned_g <= 0 or percent is None:
            continue
        room_kg = limit_kg - (found.load.top - (load.actual_g or 0) / 1000)
        fits = min(fits, percent * 1000 * room_kg / load.planned_g)
    fits = math.floor(fits / PERCENT_STEP) * PERCENT_STEP
    text = load_text(at.slot.dose, fits)
    if fits <= 0 or not text:
        return Mending(words)
    return Mending(f"write '{text}', or {words}", at.rewritten(load=text))


@check(
    "lowering-unspotted",
    Family.LOAD,
    Severity.ERROR,
    what="Lowering of more than the best single, of anything but the own body, where the exercise "
    "names fewer than two spotters or no safeties.",
    why="Nobody can lift back what is heavier than the best single, so others and steel must.",
)
def lowering_unspotted(this: Check, desk: Desk) -> Iterator[Finding]:
    """Supramaximal lowering without help."""
    for at in desk.slots:
        dose, exercise, percent = at.slot.dose, at.slot.exercise, at.slot.heaviest_percent
        if percent is None or percent <= 100 or dose.said.return_by is None:
            continue
        if isinstance(exercise.load, BodyWeightLift | ByEffort):
            continue
        missing = [] if exercise.spotting.spotters >= 2 else ["two spotters"]
        missing += [] if exercise.spotting.safeties else ["safeties"]
        if not missing:
            continue
        lacking = " and ".join(missing)
        text = f"{number(percent)} % is lowered and the exercise names no {lacking}"
        share = ends(getattr(dose.load, "percent", 100.0))[1] / percent
        to = load_text(dose, math.floor(100 * share / PERCENT_STEP) * PERCENT_STEP)
        words = f"name {lacking} in the exercise"
        change = Mending(words)
        if to:
            change = Mending(f"write '{to}', or {words}", at.rewritten(load=to))
        yield this.finds(at, text, spot=at.spot_of("load"), change=change)
