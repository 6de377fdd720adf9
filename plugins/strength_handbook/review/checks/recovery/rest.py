"""Is there enough rest between sets of the same lift?"""

from collections.abc import Iterator
from dataclasses import replace
from math import ceil

from strength_handbook.calc.duration import cycle_seconds
from strength_handbook.model.span import ends
from strength_handbook.model.words import Pattern
from strength_handbook.plan.minutes import TimedSlot, session_blocks, work_seconds
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.desk import Desk, SlotAt
from strength_handbook.review.fatigue import is_quick, reckoned_percent
from strength_handbook.review.finding import Finding, Mending
from strength_handbook.review.lighter import is_light
from strength_handbook.review.words import clock, number

HEAVY, MEDIUM = 85.0, 75.0
"""Percent of the best single from which sets count as heavy, and as rather heavy."""

_LONG_S = 3600.0
"""Longer than any partner's set."""

_SMALL = (Pattern.ISOLATED, Pattern.TRUNK)


@check(
    "rest-short",
    Family.RECOVERY,
    Severity.WARN,
    what="Seconds from the end of a set to the next set of the same lift, with what is done in "
    "between, against the least rest at that percentage, or after a set done for speed.",
    why="With too little rest the later sets are done with fewer repetitions or less speed.",
    rules=("rest-heavy", "rest-medium", "rest-speed"),
    source="position stand 2009: 3 to 5 min for heavy work; more than 2 min gave more strength in "
    "trained people",
)
def rest_short(this: Check, desk: Desk) -> Iterator[Finding]:
    """Sets of one lift that follow each other too soon."""
    for at in desk.slots:
        if at.slot.dose.sets.high < 2:
            continue
        least = _least_rest(desk, at)
        had = _rest_had(desk, at) if least else 0.0
        if had < least:
            percent = reckoned_percent(at.slot)
            kind = f"at {number(percent)} %" if percent >= MEDIUM else "done fast"
            text = f"{clock(had)} between sets {kind}; at least {clock(least)}"
            if at.slot.dose.every is not None:
                longer = clock(ceil(at.slot.dose.every + least - had))
                change = Mending(f"write 'every {longer}'", at.rewritten(every=longer))
            else:
                # The partner's set may fill the rest, so what a long rest comes to decides.
                longer = clock(ceil(least - (_rest_had(desk, at, _LONG_S) - _LONG_S)))
                change = Mending(f"write 'rest {longer}'", at.rewritten(rest=longer))
            yield this.finds(at, text, spot=at.spot_of("rest", "every"), change=change)


def rest_allows(desk: Desk, at: SlotAt, percent: float) -> bool:
    """True where the rest between the sets is enough for another percentage too."""
    single = at.slot.dose.sets.high < 2
    return single or _rest_had(desk, at) >= _least_rest(desk, at, percent)


def _least_rest(desk: Desk, at: SlotAt, percent: float | None = None) -> float:
    """Least rest after a set; 0 where any rest will do.

    What beginners need less is left out: a file does not say who is one. Work for a single joint
    or the trunk, and assistance whose percentage is only guessed from its effort, may be hurried.
    """
    quick = is_quick(at.slot, deload=is_light(at))
    if percent is None:
        percent = reckoned_percent(at.slot)
    if at.slot.exercise.pattern in _SMALL:
        percent = 0.0
    if percent >= HEAVY:
        return desk.rule("rest-heavy")
    if percent >= MEDIUM and not quick:
        return desk.rule("rest-medium")
    return desk.rule("rest-speed") if quick and at.slot.dose.reps else 0.0


def _rest_had(desk: Desk, at: SlotAt, rest: float | None = None) -> float:
    """From the end of one set to the start of the next of the same lift.

    Args:
        desk: for the house rules.
        at: the slot.
        rest: taken for the slot's own rest, where given.
    """
    # Of sets that differ it is the rest after the heaviest.
    alone = replace(at.slot.dose, series=())
    if rest is None and alone.rest is not None:
        rest, _ = ends(alone.rest)  # who may rest so short must be rested by then
    own = alone if rest is None else replace(alone, rest=rest)
    timed = [
        TimedSlot(one.order, one.exercise, own if one is at.slot else one.dose)
        for one in at.session.slots
        if one.order[0] == at.slot.order[0]
    ]
    block = session_blocks(desk.book, at.program.program, timed)[-1].block
    return cycle_seconds(block) - work_seconds(desk.book, alone)
