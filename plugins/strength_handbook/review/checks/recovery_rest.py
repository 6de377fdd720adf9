"""Is there enough rest between sets of the same lift?"""

from collections.abc import Iterator

from strength_handbook.calc.duration import cycle_seconds
from strength_handbook.plan.minutes import TimedSlot, session_blocks, work_seconds
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.desk import Desk, SlotAt
from strength_handbook.review.finding import Change, Finding
from strength_handbook.review.words import clock

HEAVY, MEDIUM = 85.0, 75.0
"""Percent of the best single from which sets count as heavy, and as rather heavy."""


@check(
    "rest-short",
    Family.RECOVERY,
    Severity.WARN,
    what="Seconds from the end of a set to the next set of the same lift, with what is done in "
    "between, against the least rest at that percentage.",
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
        had = _rest_had(desk, at)
        if had < least:
            kind = f"at {at.slot.percent:g} %" if at.slot.percent else "lifted fast"
            text = f"{clock(had)} between sets {kind}; at least {clock(least)}"
            missing = least - had
            if at.slot.dose.every is not None:
                longer = clock(at.slot.dose.every + missing)
                change = Change(f"write 'every {longer}'", at.rewritten(every=longer))
            else:
                longer = clock((at.slot.dose.rest or 0) + missing)
                change = Change(f"write 'rest {longer}'", at.rewritten(rest=longer))
            yield this.finds(at, text, spot=at.spot_of("rest", "every"), change=change)


def _least_rest(desk: Desk, at: SlotAt) -> float:
    percent = at.slot.percent or 0.0
    if percent >= HEAVY:
        return desk.rule("rest-heavy")
    if percent >= MEDIUM:
        return desk.rule("rest-medium")
    return desk.rule("rest-speed") if at.slot.dose.fast and at.slot.dose.reps else 0.0


def _rest_had(desk: Desk, at: SlotAt) -> float:
    """From the end of one set to the start of the next of the same lift."""
    timed = [
        TimedSlot(one.order, one.exercise, one.dose)
        for one in at.session.slots
        if one.order[0] == at.slot.order[0]
    ]
    _, block = session_blocks(desk.book, at.program.program, timed)[-1]
    return cycle_seconds(block) - work_seconds(desk.book, at.slot.dose)
