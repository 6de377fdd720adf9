"""Does slow lowering keep away from days that need speed?"""

from collections.abc import Iterator, Mapping
from dataclasses import replace
from math import ceil

from strength_handbook.model.program import Event
from strength_handbook.model.weeks import WEEKDAYS
from strength_handbook.model.words import Muscle
from strength_handbook.plan.worked import WorkedProgram
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.checks.order.speed import name
from strength_handbook.review.desk import Desk, SlotAt
from strength_handbook.review.fatigue import is_quick, named, shared
from strength_handbook.review.finding import Edit, Finding, Mending
from strength_handbook.review.joints import slow_lowering
from strength_handbook.review.lighter import is_light
from strength_handbook.review.words import number

_DAY = 24
"""Hours."""

_LEGS = {Muscle.QUADS, Muscle.HAMSTRINGS, Muscle.GLUTES, Muscle.CALVES, Muscle.ADDUCTORS}
"""What an event needs fresh."""


@check(
    "sore-before-speed",
    Family.RECOVERY,
    Severity.WARN,
    what="Hours from slow lowering in a lift that makes sore to work for speed, a test of the same "
    "muscles, or one of the program's events.",
    why="Slow lowering takes force away for days, and soreness peaks on the second.",
    rules=("sore-hours", "slow-lowering"),
    source="force and soreness after eccentric work: Suchomel and others 2019, read in abstract",
)
def sore_before_speed(this: Check, desk: Desk) -> Iterator[Finding]:
    """Slow lowering too close to what needs fresh muscles."""
    least = desk.rule("sore-hours")
    fresh = [at for at in desk.slots if _needs_fresh(at)]
    most: dict[tuple[str, str], float] = {}
    for at in desk.slots:
        key = at.program.id, at.slot.exercise_id
        most[key] = max(most.get(key, 0), at.slot.volume.eccentric_s)
    for session, slots in desk.slots_by_session():
        by_target: dict[str, list[SlotAt]] = {}
        for at in slots:
            hard = at.slot.volume.hard_sets and slow_lowering(desk.book, at.slot)
            if session.hours is not None and hard:
                by_target.setdefault(_first(at, session.hours, fresh, least), []).append(at)
        by_target.pop("", None)
        for target, slow in by_target.items():
            lower = "lowers" if len(slow) == 1 else "lower"
            which = named(tuple(map(name, slow)))
            text = f"{which} {lower} slowly {target}; at least {number(least)} h"
            change = _faster(desk, slow, most)
            yield this.finds(session, text, spot=slow[0].spot_of("tempo"), change=change)


@check(
    "event-no-start",
    Family.RECOVERY,
    Severity.WARN,
    what="An event with a date in a program that does not say on which Monday it starts.",
    why="Nobody can tell which week the event falls into.",
)
def event_no_start(this: Check, desk: Desk) -> Iterator[Finding]:
    """Events that cannot be placed."""
    for program in desk.worked.programs:
        for index, event in enumerate(program.program.events):
            if event.date is not None and program.program.start is None:
                spot = desk.program_spot(program.id, "events", index, "date")
                text = f"has the date {event.date}, and the program has no 'start'"
                change = Mending("write the 'week' instead, or the 'start' of the program")
                what = f"event {event.name}"
                yield this.finds_in(spot, what, text, change=change, program=program.id)


def _needs_fresh(at: SlotAt) -> bool:
    test = at.slot.dose.said.test is not None or at.number in at.week.wave.tests
    return at.hours is not None and (test or is_quick(at.slot, deload=is_light(at)))


def _first(at: SlotAt, hours: int, fresh: list[SlotAt], least: float) -> str:
    """What comes too soon after a slot, in words; empty where nothing does."""
    program = at.program
    soon = [
        (one.hours - hours, one)
        for one in fresh
        if one.program is program and one.hours is not None and 0 < one.hours - hours < least
    ]
    for gap, one in sorted(soon, key=lambda item: item[0]):
        muscles = shared(at.slot, one.slot)
        if muscles:
            return f"{gap} h before {one.session.id} {name(one)}, for the same {named(muscles)}"
    if not _LEGS & set(at.slot.exercise.muscles.direct):
        return ""
    for event in program.program.events:
        span = _span(event, program)
        if span is None or hours > span[1] or span[0] - hours >= least:
            continue
        if hours >= span[0]:
            unknown = event.week is not None and event.day is None
            return f"{'in the week' if unknown else 'on the day'} of '{event.name}'"
        return f"{span[0] - hours} h before '{event.name}'"
    return ""


def _span(event: Event, program: WorkedProgram) -> tuple[int, int] | None:
    """First and last hour at which an event may be, from the Monday of week 1."""
    start = program.program.start
    if event.week is not None:
        monday = 24 * 7 * (event.week - 1)
        first, last = (WEEKDAYS.index(event.day),) * 2 if event.day else (0, 6)
        return monday + _DAY * first, monday + _DAY * last
    if event.date is None or start is None:
        return None
    hours = _DAY * (event.date - start).days
    return hours, hours


def _faster(desk: Desk, slow: list[SlotAt], most: Mapping[tuple[str, str], float]) -> Mending:
    """The slowest lowering that does not count as slow.

    The largest week of an exercise is what its first weeks are measured against; whoever makes it
    smaller has to look at those too, so that is left to the coach.

    Args:
        desk: for the house rule.
        slow: the slots.
        most: seconds of lowering in the largest week of an exercise, by program and exercise.
    """
    lower = ceil(desk.rule("slow-lowering")) - 1
    if lower < 0 or any(
        at.slot.volume.eccentric_s >= most[at.program.id, at.slot.exercise_id] for at in slow
    ):
        return Mending(
            f"lower for {max(lower, 0)} s at most, there and in the first week, or earlier"
        )
    words: list[str] = []
    edits: list[Edit] = []
    for at in slow:
        if at.slot.dose.tempo is not None:
            tempo = replace(at.slot.dose.tempo, lower=lower).text
            words.append(f"'tempo {tempo}'" + (f" for {name(at)}" if len(slow) > 1 else ""))
            edits += at.rewritten(tempo=tempo)
    return Mending(f"write {named(tuple(words))}", tuple(edits))
