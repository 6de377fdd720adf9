"""Are the sets of a lift neither all to the limit nor too long for what they are for?"""

import math
from collections.abc import Iterator

from strength_handbook.dose.one_set import rep_seconds
from strength_handbook.model.dose import Reps
from strength_handbook.model.load import RepMax
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.desk import Desk
from strength_handbook.review.finding import Finding, Mending


@check(
    "all-at-limit",
    Family.LOAD,
    Severity.WARN,
    what="Several sets of as many repetitions as the RM that they are done with.",
    why="An RM is the load for one such set with nothing left, so all of them end in failure.",
)
def all_at_limit(this: Check, desk: Desk) -> Iterator[Finding]:
    """An RM on every set."""
    for at in desk.alike:
        dose = at.slot.dose
        if not isinstance(dose.load, RepMax) or not isinstance(dose.work, Reps):
            continue
        reps, rm = dose.work.count.low, dose.load.reps
        if dose.sets.low > 1 and reps >= rm and dose.load.percent >= 100:
            text = f"{dose.sets.text} sets of {reps} with the load for one set of {rm}"
            fewer = rm - 1
            change = Mending(f"write 'reps {fewer}'", at.rewritten(reps=str(fewer)))
            if fewer < 1:
                change = Mending("write 'sets 1'", at.rewritten(sets="1"))
            yield this.finds(at, text, spot=at.spot_of("reps"), change=change)


@check(
    "set-long",
    Family.LOAD,
    Severity.WARN,
    what="Seconds of one set of a main lift by its tempo, and repetitions with a very slow "
    "lowering, outside waves for size or endurance.",
    why="From there on the tempo has made another goal of it.",
    rules=("set-time", "very-slow-lowering", "very-slow-reps"),
)
def set_long(this: Check, desk: Desk) -> Iterator[Finding]:
    """Sets that last too long for strength."""
    longest, slow = desk.rule("set-time"), desk.rule("very-slow-lowering")
    most_slow = math.floor(desk.rule("very-slow-reps"))
    for at in desk.slots:
        dose = at.slot.dose
        other_goal = at.week.wave.emphasis in ("size", "endurance")
        if at.slot.exercise.role != "main" or other_goal or dose.tempo is None:
            continue
        if not isinstance(dose.work, Reps) or dose.said.test is not None:
            continue
        reps, one = dose.work.count.high, rep_seconds(desk.book.rule, dose)
        if reps * one > longest:
            most = max(1, math.floor(longest / one))
            text = f"{reps} reps of {one:g} s make a set of {reps * one:g} s; at most {longest:g} s"
        elif dose.tempo.lower >= slow and reps > most_slow:
            most = most_slow
            text = f"{reps} reps with {dose.tempo.lower} s of lowering; at most {most}"
        else:
            continue
        if dose.tempo.lower >= slow:
            most = min(most, most_slow)
        change = Mending(f"write 'reps {most}'", at.rewritten(reps=str(most)))
        if most >= reps:
            change = Mending("write a shorter tempo")
        yield this.finds(at, text, spot=at.spot_of("reps"), change=change)
