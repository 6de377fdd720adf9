"""Does fast work come while the muscles are fresh?"""

from collections.abc import Iterator

from strength_handbook.model.dose import Reps
from strength_handbook.model.rule_kind import COMMON
from strength_handbook.model.span import ends
from strength_handbook.plan.minutes import work_seconds
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
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
from strength_handbook.review.words import clock, number

_LARGEST_FIRST = (
    f"order of exercises decides what improves most: meta-analysis, Nunes and others 2021; {COMMON}"
)


@check(
    "speed-tired",
    Family.ORDER,
    Severity.WARN,
    what="Jumps and other work for speed must not follow sets of the same prime movers "
    "that end near the limit, strip sets, open sets or long holds. A jump paired with a heavy "
    "lift is left out.",
    why="A tired muscle is slow, and a jump on tired legs ends in a bad landing.",
    rules=("tired-reserve", "tired-hold", "heavy-lift", "hard-hold-effort"),
    source=_LARGEST_FIRST,
)
def speed_tired(this: Check, desk: Desk) -> Iterator[Finding]:
    """Work for speed after what has tired the same muscles."""
    for session, slots in desk.slots_by_session():
        tiring: list[tuple[SlotAt, str]] = []
        for at in slots:
            if is_quick(at.slot, deload=is_light(session)):
                before = [
                    (other, why)
                    for other, why in tiring
                    if shared(other.slot, at.slot) and not _potentiates(desk, other, at)
                ]
                if before:
                    other, why = before[-1]
                    muscles = named(shared(other.slot, at.slot))
                    text = (
                        f"{name(other)} before it {why}, for the same {muscles}; fast comes first"
                    )
                    change = Mending(f"do it before {name(before[0][0])}")
                    yield this.finds(at, text, spot=at.spot_of("order"), change=change)
            why = near_limit(desk.book, at.slot)
            if why:
                tiring.append((at, why))


@check(
    "jump-late",
    Family.ORDER,
    Severity.WARN,
    what="Sets for the prime movers of a jump that stand in front of it, other jumps and its own "
    "pair left out, against the most there may be.",
    why="Many easy sets tire the legs as well, and a jump on tired legs ends in a bad landing.",
    rules=("jump-late-sets",),
    source=_LARGEST_FIRST,
)
def jump_late(this: Check, desk: Desk) -> Iterator[Finding]:
    """Jumps at the end of a session."""
    most = desk.rule("jump-late-sets")
    for _, slots in desk.slots_by_session():
        for index, at in enumerate(slots):
            if not is_jump(at.slot):
                continue
            before = [one for one in slots[:index] if _loads_the_same(one, at)]
            sets = sum(one.slot.dose.sets.middle for one in before)
            if sets > most:
                muscles = {muscle: None for one in before for muscle in shared(one.slot, at.slot)}
                text = (
                    f"{number(sets)} sets for {named(tuple(muscles))} come first; "
                    f"at most {number(most)} before a jump"
                )
                change = Mending(f"do it before {name(before[0])}")
                yield this.finds(at, text, spot=at.spot_of("order"), change=change)


@check(
    "jump-pause",
    Family.ORDER,
    Severity.NOTE,
    what="The pause from a heavy set to the jump that is paired with it, against the shortest and "
    "the longest that make sense.",
    why="A heavy set can make the next jump better, but only after a pause that is long enough.",
    rules=("heavy-lift", "jump-pause-least", "jump-pause-most", "swap-time"),
    source="meta-analyses: Wilson and others 2013, Dobbs and others 2019",
)
def jump_pause(this: Check, desk: Desk) -> Iterator[Finding]:
    """Heavy set and jump too close together, or too far apart."""
    least, most = desk.rule("jump-pause-least"), desk.rule("jump-pause-most")
    swap = desk.rule("swap-time")
    for _, slots in desk.slots_by_session():
        for index, at in enumerate(slots):
            heavy = [one for one in slots[:index] if _potentiates(desk, one, at)]
            if not heavy or heavy[-1].slot.dose.every is not None:
                continue
            first = heavy[-1]
            between = slots[slots.index(first) : index]
            works = sum(work_seconds(desk.book, one.slot.dose) for one in between[1:])
            both = [
                ends(swap if one.slot.dose.rest is None else one.slot.dose.rest) for one in between
            ]
            shortest, longest = (sum(several) + works for several in zip(*both, strict=True))
            if least <= shortest and longest <= most:
                continue
            short = shortest < least
            pause, rests = (shortest, both[0][0]) if short else (longest, both[0][1])
            wanted = rests + (least if pause < least else most) - pause
            limit = f"at least {clock(least)}" if pause < least else f"at most {clock(most)}"
            text = f"{clock(pause)} from the heavy set of {name(first)} to it; {limit}"
            change = None
            if wanted >= 0:
                words = f"write 'rest {clock(wanted)}' for {name(first)}"
                change = Mending(words, first.rewritten(rest=clock(wanted)))
            yield this.finds(at, text, spot=first.spot_of("rest"), change=change)


def name(at: SlotAt) -> str:
    """A slot in a sentence: ``B1 cable-row``."""
    return f"{at.slot.order} {at.slot.exercise_id}"


def _potentiates(desk: Desk, heavy: SlotAt, quick: SlotAt) -> bool:
    """True for a heavy lift and a jump under one letter: the pair is meant."""
    pair = heavy.slot.order[0] == quick.slot.order[0] and is_jump(quick.slot)
    lifted = isinstance(heavy.slot.dose.work, Reps)
    return pair and lifted and reckoned_percent(heavy.slot) >= desk.rule("heavy-lift")


def _loads_the_same(one: SlotAt, jump: SlotAt) -> bool:
    if is_jump(one.slot) or one.slot.order[0] == jump.slot.order[0]:
        return False
    return one.slot.exercise.role != "prehab" and bool(shared(one.slot, jump.slot))
