"""Are carries as heavy as hands and backs can learn to bear?"""

import math
from collections.abc import Iterator

from strength_handbook.calc.volume import percent_change
from strength_handbook.model.dose import Clock, Distance, Hold
from strength_handbook.model.load import PercentOfBodyMass
from strength_handbook.model.span import ends
from strength_handbook.model.words import Pattern
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.desk import Desk, SlotAt
from strength_handbook.review.finding import Finding, Mending
from strength_handbook.review.slips import slips
from strength_handbook.review.weeks import (
    EPSILON,
    is_derived,
    is_training,
    recent_numbers,
)
from strength_handbook.review.words import number

FREE_POINTS = 5.0
"""Points of body mass that may always come on top: from light loads they are a large share."""


@check(
    "carry-step",
    Family.LOAD,
    Severity.WARN,
    what="Share of body mass of carries, drags and loaded holds, against the larger of those in "
    "the last two training weeks that had it; a few points more are always allowed.",
    why="Hands and back feel a carry before the legs do, and they learn slowly.",
    rules=("carry-step",),
)
def carry_step(this: Check, desk: Desk) -> Iterator[Finding]:
    """Carries that get heavier in too large a step."""
    earlier = recent_numbers(desk)
    step, wrong = desk.rule("carry-step"), slips(desk)
    last: dict[tuple[str, str], dict[int, float]] = {}
    for at in desk.slots:
        share = _share(at)
        if share is None or not is_training(at) or at in wrong:
            continue
        had = last.setdefault((at.program.id, at.slot.exercise_id), {})
        before = {week: had[week] for week in earlier.get(_week(at), ()) if week in had}
        # After a gap hands have forgotten rather than learnt: against the last week of all.
        before = before or {week: had[week] for week in list(had)[-1:] if week != at.number}
        had[at.number] = max(share, had.get(at.number, 0.0))
        if not before:
            continue
        week = max(before, key=lambda one: before[one])
        most = max(before[week] * (1 + step / 100), before[week] + FREE_POINTS)
        if share > most + EPSILON:
            rise = number(round(percent_change(before[week], share) or 0.0))
            text = (
                f"{number(share)} % BM in week {at.number} after {number(before[week])} % BM in "
                f"week {week}: {rise} % more; at most {number(step)} % more"
            )
            yield this.finds(at, text, spot=at.spot_of("load"), change=_lighter(at, most))


@check(
    "carry-most",
    Family.LOAD,
    Severity.WARN,
    what="Share of body mass carried in one hand, against the most.",
    why="Beyond it the grip opens without warning, next to feet and shins.",
    rules=("carry-most",),
)
def carry_most(this: Check, desk: Desk) -> Iterator[Finding]:
    """Carries that hardly anybody can hold."""
    most = desk.rule("carry-most")
    for at in desk.slots:
        share = _share(at)
        in_hands = getattr(at.slot.exercise.load, "hands", None) is not None
        if share is None or not in_hands or share <= most + EPSILON:
            continue
        text = f"{number(share)} % BM in one hand; at most {number(most)} %"
        yield this.finds(at, text, spot=at.spot_of("load"), change=_lighter(at, most))


def _share(at: SlotAt) -> float | None:
    """Percent of body mass of a carry; None for other work."""
    dose = at.slot.dose
    carried = at.slot.exercise.pattern is Pattern.CARRY or isinstance(
        dose.work, Distance | Hold | Clock
    )
    if not carried or not isinstance(dose.load, PercentOfBodyMass):
        return None
    return ends(dose.load.percent)[1]


def _week(at: SlotAt) -> tuple[str, int]:
    return at.program.id, at.number


def _lighter(at: SlotAt, most: float) -> Mending:
    text = f"{number(math.floor(2 * most + EPSILON) / 2)} % BM"
    return Mending(f"write '{text}'", () if is_derived(at) else at.rewritten(load=text))
