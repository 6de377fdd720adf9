"""Does what matters come first, and on a fresh trunk?"""

from collections.abc import Iterator
from itertools import pairwise

from strength_handbook.model.words import Muscle, Pattern
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.checks.order.speed import name
from strength_handbook.review.desk import Desk, SlotAt
from strength_handbook.review.fatigue import (
    is_jump,
    is_quick,
    named,
    near_limit,
    reckoned_percent,
    shared,
)
from strength_handbook.review.finding import Finding, Mending
from strength_handbook.review.lighter import is_light
from strength_handbook.review.words import number

_ORDER = "meta-analysis on exercise order, Nunes and others 2021"
_TRUNK = {Muscle.BACK_EXTENSORS, Muscle.ABS, Muscle.OBLIQUES}


@check(
    "main-late",
    Family.ORDER,
    Severity.WARN,
    what="A main lift, at a percentage where that counts, further down than the first letters and "
    "behind hard assistance work for a muscle that it needs. Behind other main lifts, and work for "
    "other muscles, it may stand. Jumps are another matter.",
    why="Strength grows most in what is done first.",
    rules=("main-place", "firm-lift"),
    source=_ORDER,
)
def main_late(this: Check, desk: Desk) -> Iterator[Finding]:
    """Main lifts behind assistance work."""
    for session, slots in desk.slots_by_session():
        if is_light(session):
            continue
        letters = list(dict.fromkeys(at.slot.order[0] for at in slots))
        for index, at in enumerate(slots):
            place = letters.index(at.slot.order[0]) + 1
            main = at.slot.exercise.role == "main" and not is_jump(at.slot)
            light = reckoned_percent(at.slot) < desk.rule("firm-lift")
            if not main or light or place <= desk.rule("main-place"):
                continue
            before = [one for one in slots[:index] if _hinders(one, at)]
            if before:
                muscles = named(tuple(_needed(before[0], at)))
                text = (
                    f"a main lift at letter {at.slot.order[0]}, after {name(before[0])} for "
                    f"{muscles}; main lifts come first"
                )
                change = Mending(f"do it before {name(before[0])}")
                yield this.finds(at, text, spot=at.spot_of("order"), change=change)


@check(
    "small-first",
    Family.ORDER,
    Severity.NOTE,
    what="Hard work for a single joint directly before a lift that needs the same muscle, at a "
    "percentage where that counts, without a purpose written beside it.",
    why="The small exercise takes away from the big one; that can be meant, but then it is said.",
    rules=("firm-lift",),
    source=_ORDER,
)
def small_first(this: Check, desk: Desk) -> Iterator[Finding]:
    """Single-joint work right before a big lift, for no stated reason."""
    for _, slots in desk.slots_by_session():
        for small, big in pairwise(slots):
            if (
                small.slot.exercise.pattern is Pattern.ISOLATED
                and big.slot.exercise.pattern is not Pattern.ISOLATED
                and small.slot.volume.hard_sets
                and small.slot.slot.purpose is None
                and reckoned_percent(big.slot) >= desk.rule("firm-lift")
                and (muscles := shared(small.slot, big.slot))
            ):
                text = (
                    f"works {named(muscles)} right before {name(big)} at "
                    f"{number(reckoned_percent(big.slot))} %; from {number(desk.rule('firm-lift'))}"
                    " % on a reason is needed"
                )
                change = Mending(f"do it after {name(big)}, or write its 'purpose'")
                yield this.finds(small, text, spot=small.spot_of("order"), change=change)


@check(
    "brace-tired",
    Family.ORDER,
    Severity.WARN,
    what="A trunk exercise that ends near the limit, in front of a squat or hinge that is heavy, "
    "fast with a load, or a test.",
    why="A tired trunk gives way first, and the back pays for it.",
    rules=("firm-lift", "tired-reserve", "tired-hold", "hard-hold-effort"),
)
def brace_tired(this: Check, desk: Desk) -> Iterator[Finding]:
    """Trunk work near the limit before the lift that needs the trunk."""
    for _, slots in desk.slots_by_session():
        for index, at in enumerate(slots):
            why = near_limit(desk.book, at.slot) if _is_trunk(at) else ""
            later = next((one for one in slots[index + 1 :] if _needs_brace(desk, one)), None)
            if why and later is not None:
                percent = reckoned_percent(later.slot)
                how = f" at {number(percent)} %" if percent else ""
                text = f"{why}, and {name(later)}{how} comes after it; the trunk is needed fresh"
                change = Mending(f"do it after {name(_last_braced(desk, slots))}")
                yield this.finds(at, text, spot=at.spot_of("order"), change=change)


def _hinders(one: SlotAt, at: SlotAt) -> bool:
    hard = one.slot.exercise.role == "assistance" and bool(one.slot.volume.hard_sets)
    return hard and one.slot.order[0] != at.slot.order[0] and bool(_needed(one, at))


def _needed(one: SlotAt, at: SlotAt) -> list[str]:
    """Muscles that one trains directly and the other needs."""
    muscles = at.slot.exercise.muscles
    needed = {*muscles.direct, *muscles.helping}
    return [muscle.value for muscle in one.slot.exercise.muscles.direct if muscle in needed]


def _is_trunk(at: SlotAt) -> bool:
    exercise = at.slot.exercise
    own = set(exercise.muscles.direct) <= _TRUNK
    return exercise.pattern is Pattern.TRUNK or (exercise.pattern is Pattern.ISOLATED and own)


def _needs_brace(desk: Desk, at: SlotAt) -> bool:
    slot = at.slot
    if slot.exercise.pattern not in (Pattern.SQUAT, Pattern.HINGE):
        return False
    if slot.exercise.load.kind not in ("bar", "hands"):
        return False
    heavy = reckoned_percent(slot) >= desk.rule("firm-lift")
    return heavy or slot.dose.said.test is not None or is_quick(slot, deload=is_light(at))


def _last_braced(desk: Desk, slots: tuple[SlotAt, ...]) -> SlotAt:
    return [one for one in slots if _needs_brace(desk, one)][-1]
