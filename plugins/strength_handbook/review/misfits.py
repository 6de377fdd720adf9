"""Doses that do not fit what their exercise is: repetitions of a hold, a jump lowered slowly."""

from collections.abc import Mapping

from strength_handbook.model.dose import Clock, Hold, Reps
from strength_handbook.model.exercise import Exercise
from strength_handbook.model.words import Hazard, Pattern
from strength_handbook.plan.remembered import remembered
from strength_handbook.plan.worked import WorkedSlot
from strength_handbook.review.desk import Desk, SlotAt

_LEAST_PAUSE_S = 2
_LEAST_HOLDS = 2
"""So many other weeks of a slot show that it is one of holds."""


def is_hold(exercise: Exercise) -> bool:
    """True for exercises that are held, by what their own dose says; a name tells nothing."""
    dose = exercise.dose
    return dose.hold is not None or dose.position is not None or dose.push is not None


def is_thrown(exercise: Exercise) -> bool:
    """True for jumps and swings: nothing of them can be lowered slowly."""
    fast = {Hazard.IMPACT, Hazard.SWING}
    return exercise.pattern is Pattern.JUMP or bool(fast & set(exercise.hazards))


@remembered(2)
def not_held(desk: Desk) -> Mapping[SlotAt, bool]:
    """Doses of holds that are written as repetitions or by the clock; True if the file says so."""
    by_slot: dict[tuple[str, str, str, int], list[SlotAt]] = {}
    for at in desk.slots:
        key = (at.program.id, at.week.wave_id, at.session.id, at.index)
        by_slot.setdefault(key, []).append(at)
    found: dict[SlotAt, bool] = {}
    for weeks in by_slot.values():
        held = sum(isinstance(at.slot.dose.work, Hold) for at in weeks)
        for at in weeks:
            if not isinstance(at.slot.dose.work, Reps | Clock) or _has_holds(at.slot):
                continue
            own = is_hold(at.slot.exercise)
            if own or (held >= _LEAST_HOLDS and held == len(weeks) - 1):
                found[at] = own
    return found


def slow_throw(desk: Desk, slot: WorkedSlot) -> bool:
    """True for a jump or swing that is to be lowered slowly."""
    tempo = slot.dose.tempo
    slow = tempo is not None and tempo.lower >= desk.rule("slow-lowering")
    return slow and is_thrown(slot.exercise)


@remembered(2)
def misfitting(desk: Desk) -> frozenset[WorkedSlot]:
    """Slots whose dose has to be mended, not the hazards of their exercise."""
    wrong = {at.slot for at in not_held(desk)}
    return frozenset(wrong | {at.slot for at in desk.slots if slow_throw(desk, at.slot)})


def _has_holds(slot: WorkedSlot) -> bool:
    """True where each repetition has a hold in it, or it is a test."""
    tempo, said = slot.dose.tempo, slot.dose.said
    paused = tempo is not None and tempo.longest_pause >= _LEAST_PAUSE_S
    return paused or said.pause is not None or said.test is not None
