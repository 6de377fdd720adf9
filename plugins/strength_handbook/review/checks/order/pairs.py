"""Do exercises that are done in turn leave each other alone?"""

from collections.abc import Iterator
from itertools import combinations

from strength_handbook.model.span import ends
from strength_handbook.model.words import Muscle, Pattern
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.checks.order.speed import name
from strength_handbook.review.desk import Desk, SlotAt
from strength_handbook.review.fatigue import (
    is_easy_hold,
    is_light_carry,
    is_quick,
    named,
    near_limit,
    reckoned_percent,
    shared,
)
from strength_handbook.review.finding import Finding, Mending
from strength_handbook.review.grip import FIRM, grip_class
from strength_handbook.review.lighter import is_light
from strength_handbook.review.words import clock, number


@check(
    "pair-clash",
    Family.ORDER,
    Severity.WARN,
    what="Exercises under one letter that work the same prime mover hard, both need a firm grip, "
    "or both need a hard brace. A heavy lift with a jump, work for speed, easy holds without a "
    "load and light carries are left out.",
    why="One of the pair spoils the other, and the rest between them is no rest.",
    rules=("heavy-lift", "tired-reserve", "tired-hold", "hard-hold-effort"),
)
def pair_clash(this: Check, desk: Desk) -> Iterator[Finding]:
    """Partners that take from each other."""
    for _, slots in desk.slots_by_session():
        for group in groups(slots):
            for one, other in combinations(group, 2):
                why = _clash(desk, one, other)
                if why:
                    text = f"{why} in {name(one)} too; partners must leave each other alone"
                    change = Mending(
                        f"give it a letter of its own, or pair {name(one)} differently"
                    )
                    yield this.finds(other, text, spot=other.spot_of("order"), change=change)


@check(
    "pair-rest",
    Family.ORDER,
    Severity.WARN,
    what="Rest next to a heavy main lift inside a pair: from it to its partner and back, against "
    "the least.",
    why="In a hurried pair the main lift may gain less strength.",
    rules=("pair-rest", "heavy-lift", "swap-time"),
    source="one ten-week trial of supersets, preprint 2024",
)
def pair_rest(this: Check, desk: Desk) -> Iterator[Finding]:
    """Main lifts in a hurried pair."""
    least, swap = desk.rule("pair-rest"), desk.rule("swap-time")
    for _, slots in desk.slots_by_session():
        for group in groups(slots):
            for place, at in enumerate(group):
                percent = reckoned_percent(at.slot)
                if at.slot.exercise.role != "main" or percent < desk.rule("heavy-lift"):
                    continue
                beside = (group[place - 1], at)
                if any(one.slot.dose.every is not None for one in beside):
                    continue
                rests = {
                    one: swap if one.slot.dose.rest is None else ends(one.slot.dose.rest)[0]
                    for one in beside
                }
                short = [one for one in beside if rests[one] < least]
                if not short:
                    continue
                had = f"{clock(rests[short[0]])} rest after {name(short[0])}"
                limit = f"at least {clock(least)} next to a main lift at {number(percent)} %"
                text = f"{had}; {limit}"
                words = f"write 'rest {clock(least)}' for {named(tuple(map(name, short)))}"
                edits = tuple(e for one in short for e in one.rewritten(rest=clock(least)))
                spot = short[0].spot_of("rest")
                yield this.finds(at, text, spot=spot, change=Mending(words, edits))


def groups(slots: tuple[SlotAt, ...]) -> list[tuple[SlotAt, ...]]:
    """Slots that are done in turn, in order; single exercises are left out."""
    letters: dict[str, list[SlotAt]] = {}
    for at in slots:
        letters.setdefault(at.slot.order[0], []).append(at)
    return [tuple(group) for group in letters.values() if len(group) > 1]


def _clash(desk: Desk, one: SlotAt, other: SlotAt) -> str:
    """What both need, in words; empty where they leave each other alone."""
    deload = is_light(one)
    if is_quick(one.slot, deload=deload) or is_quick(other.slot, deload=deload):
        return ""
    if any(is_easy_hold(at.slot) or is_light_carry(at.slot) for at in (one, other)):
        return ""
    hard = one.slot.volume.hard_sets and other.slot.volume.hard_sets
    muscles = shared(one.slot, other.slot)
    if muscles and hard:
        return f"{named(muscles)} work{'s' if len(muscles) == 1 else ''}"
    if all(grip_class(at.slot.exercise) >= FIRM for at in (one, other)):
        return "a firm grip is needed"
    if all(_braces(desk, at) for at in (one, other)):
        return "a hard brace is needed"
    return ""


def _braces(desk: Desk, at: SlotAt) -> bool:
    slot = at.slot
    hard = reckoned_percent(slot) >= desk.rule("heavy-lift") or near_limit(desk.book, slot)
    loaded = slot.exercise.load.kind in ("bar", "hands")
    lift = slot.exercise.pattern in (Pattern.SQUAT, Pattern.HINGE) and loaded
    return bool(hard) and (lift or Muscle.BACK_EXTENSORS in slot.exercise.muscles.direct)
