"""Does the grip last for the whole session?"""

from collections.abc import Iterator
from itertools import pairwise

from strength_handbook.model.words import Pattern
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.checks.order.speed import name
from strength_handbook.review.desk import Desk, SlotAt
from strength_handbook.review.fatigue import named, reckoned_percent
from strength_handbook.review.finding import Finding, Mending
from strength_handbook.review.grip import FIRM, LIMITING, grip_class
from strength_handbook.review.lighter import is_light
from strength_handbook.review.words import number

_PULLS = (Pattern.HINGE, Pattern.HORIZONTAL_PULL, Pattern.VERTICAL_PULL)


@check(
    "grip-many",
    Family.ORDER,
    Severity.WARN,
    what="Exercises of a session that end when the grip opens (carries, hangs, pinches, whatever "
    "works the forearms directly), against the most there may be.",
    why="After a few of them the hands decide what back and legs get.",
    rules=("grip-slots",),
)
def grip_many(this: Check, desk: Desk) -> Iterator[Finding]:
    """Too many exercises that the grip ends."""
    most = desk.rule("grip-slots")
    for session, slots in desk.slots_by_session():
        limiting = [at for at in slots if grip_class(at.slot.exercise) == LIMITING]
        if len(limiting) > most and not is_light(session):
            text = (
                f"{named(tuple(name(at) for at in limiting))} all end when the grip opens; "
                f"at most {number(most)} in a session"
            )
            change = Mending(f"leave out {name(limiting[-1])}, or do it on another day")
            yield this.finds(session, text, change=change)


@check(
    "grip-before-pull",
    Family.ORDER,
    Severity.WARN,
    what="An exercise that ends when the grip opens, right before a heavy pull or paired with it.",
    why="The hands give way before the back has done its work.",
    rules=("heavy-lift",),
)
def grip_before_pull(this: Check, desk: Desk) -> Iterator[Finding]:
    """A carry or hang right before a heavy pull."""
    for _, slots in desk.slots_by_session():
        for tired, pull in pairwise(slots):
            if grip_class(tired.slot.exercise) == LIMITING and _heavy_pull(desk, pull):
                text = (
                    f"ends when the grip opens, right before {name(pull)} at "
                    f"{number(reckoned_percent(pull.slot))} %; from "
                    f"{number(desk.rule('heavy-lift'))} % on the hands must be fresh"
                )
                change = Mending(f"do it after {name(pull)}, or use straps there")
                yield this.finds(tired, text, spot=tired.spot_of("order"), change=change)


def _heavy_pull(desk: Desk, at: SlotAt) -> bool:
    pull = at.slot.exercise.pattern in _PULLS and grip_class(at.slot.exercise) == FIRM
    return pull and reckoned_percent(at.slot) >= desk.rule("heavy-lift")
