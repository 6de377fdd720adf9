"""Where a program writes the next time itself: nobody is sent to another number than its page."""

from dataclasses import dataclass

from strength_handbook.model.dose import Reps
from strength_handbook.model.progress import RuleName
from strength_handbook.plan.worked import WorkedProgram, WorkedSession, WorkedSlot

_OWN_NUMBER = (
    "listed", "effort", "speed", "hold", "time", "distance", "reps", "sets", "pace",
)  # fmt: skip
"""Rules that look at the next time by themselves."""


@dataclass(frozen=True, slots=True)
class Following:
    """What comes after a slot.

    Attributes:
        slot: the same slot the next time; None after its last time.
        ends: what counts in place of its rule after its last time, as a sentence; empty where the
            rule goes on.
    """

    slot: WorkedSlot | None = None
    ends: str = ""


NOTHING = Following()
"""Nothing that is known: the rule counts."""


def what_follows(program: WorkedProgram, session: WorkedSession, slot: WorkedSlot) -> Following:
    """What comes after a slot of a program.

    A rule goes on past the end of a program, but not where the program does something else with
    the exercise, or goes on without it, and not from an easy week.
    """
    later = [
        (one.week, one.id == session.id, found)
        for week in program.weeks
        for one in week.sessions
        if one.week > session.week
        for found in one.slots
        if found.exercise_id == slot.exercise_id
    ]
    for _, here, found in later:
        if here and found.order == slot.order:
            return Following(found)
    if later:
        week, _, found = later[0]
        return Following(ends=_elsewhere(week, found))
    if slot.easy or session.week < program.weeks[-1].week:
        return Following(ends="It ends here. Ask the coach.")
    return NOTHING


def instead_of_rule(slot: WorkedSlot, following: WorkedSlot | None, rule: RuleName) -> str:
    """What counts in place of a rule that adds load, as a sentence; empty where the rule counts.

    Before an easy week, at a load that is written anew, and where today has no open set.

    Args:
        slot: as it is done today.
        following: the same slot the next time, or None.
        rule: the slot's rule.
    """
    if following is None or rule in _OWN_NUMBER:
        return ""
    before, after = slot.dose.load, following.dose.load
    closed = rule == "open-set" and not _is_open(slot)
    if not (following.easy or closed or (after is not None and after != before)):
        return ""
    why = "An easy week comes next" if _eases(slot, following) else "As the next week is written"
    return f"{why}: {_sets(following)}{_load(following)}."


def _elsewhere(week: int, one: WorkedSlot) -> str:
    if one.dose.said.test is not None:
        return f"Week {week} tests it."
    return f"Week {week} has it in another place: {_sets(one)}{_load(one)}."


def _load(slot: WorkedSlot) -> str:
    """The load of the next time behind its sets; empty where none is written."""
    load = slot.dose.load
    return "" if load is None else f" {'at' if '%' in load.text else 'with'} {load.text}"


def next_number(slot: WorkedSlot, following: WorkedSlot | None, by_rule: str, written: str) -> str:
    """The next number in a sentence: the rule's, or the written one and why."""
    if following is None or by_rule == written:
        return f"{by_rule}."
    if _eases(slot, following):
        return f"{written}: an easy week comes next."
    return f"{written}, as the next week is written."


def _eases(slot: WorkedSlot, following: WorkedSlot) -> bool:
    return following.easy and not slot.easy


def _is_open(slot: WorkedSlot) -> bool:
    work = slot.dose.work
    return slot.dose.last_set is not None or (isinstance(work, Reps) and work.count.open)


def _sets(slot: WorkedSlot) -> str:
    """Sets and repetitions of the next time: ``2 × 5``."""
    sets, reps = slot.dose.sets, slot.dose.reps
    text = f"{sets.low}" if sets.low == sets.high else f"{sets.low} to {sets.high}"
    if reps is None:
        return f"{text} sets"
    return f"{text} × {reps.low}" + (f" to {reps.high}" if reps.high > reps.low else "")
