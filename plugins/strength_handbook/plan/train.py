"""What a phone needs to lead through a session: sets, rests, clocks; no loads and no names.

The page has the names, doses and words already, so one small block a session is enough. A slot's
keys are short, and left out where they say nothing:

    o  order                            s  sets, or fewest and most
    w  seconds of one hold or set       h  1: it is a hold
    r  seconds of rest                  e  seconds from start to start
    b  1: one side, then the other      c  parts of a set, and seconds between them
    l  loads of a strip                 n  open set: floor, cap (0: none), 1 where all sets are
    p  repetitions of today's top       a  attempts of a test: the unit of its result
    g  1: there are steps up to it      u  1: its tempo begins from the bottom
    x  when to stop
    v  of each variant of the session, in the order of the page, what is different: of, the most
       sets (0: left out); few, the fewest, where it is another number; open: 0 where no set stays
       open
"""

from typing import Any

from strength_handbook.model.book import Book
from strength_handbook.model.count import Count
from strength_handbook.model.dose import Clock, ClusterSet, Dose, Hold, Reps, StripSet
from strength_handbook.model.program import Variant
from strength_handbook.plan.ladder import REST_S
from strength_handbook.plan.method_plan import method_plan
from strength_handbook.plan.variants import variant_dose
from strength_handbook.plan.worked import WorkedProgram, WorkedSession, WorkedSlot, WorkedWeek

Data = dict[str, Any]


def session_guide(
    book: Book, program: WorkedProgram, week: WorkedWeek, session: WorkedSession
) -> Data:
    """A session's address among what a phone keeps, and its slots."""
    return {
        "at": f"{program.id}/{week.week}/{session.id}",
        "slots": [_slot(book, week, session, slot) for slot in session.slots],
    }


def _slot(book: Book, week: WorkedWeek, session: WorkedSession, slot: WorkedSlot) -> Data:
    plan = method_plan(book, slot, session, week)
    steps_up = plan.ramps is not None or plan.test is not None
    found: Data = {"o": slot.order} | dose_guide(slot.dose) | ({"g": 1} if steps_up else {})
    if "a" in found:
        found["a"] = book.room.units
    if slot.dose.tempo is not None and slot.exercise.lifts_from == "bottom":
        found["u"] = 1
    if variants := session.session.variants:
        found["v"] = [variant_guide(slot, one) for one in variants]
    return found | {"x": slot.exercise.stop[0]}


def variant_guide(slot: WorkedSlot, variant: Variant) -> Data:
    """What a variant changes of a slot, tempo and load aside, which its lines on the page say."""
    if slot.order in variant.leave_out:
        return {"of": 0}
    own, less = dose_guide(slot.dose), dose_guide(variant_dose(slot.dose, variant))
    # Where today's top set is all there is, it is one.
    sets = less.get("s", 1)
    found: Data = {"few": sets[0], "of": sets[1]} if isinstance(sets, list) else {"of": sets}
    return found | ({"open": 0} if "n" in own and "n" not in less else {})


def dose_guide(dose: Dose) -> Data:
    """The part that follows from the dose alone."""
    found: Data = {}
    if dose.said.test is not None:
        found |= {"s": dose.said.test.attempts, "a": 1}
    elif not only_a_top(dose):
        found["s"] = _count(dose.sets)
    if dose.top is not None:
        found["p"] = dose.top
    match dose.work:
        case Hold(seconds):
            found |= {"w": _whole(seconds), "h": 1}
        case Clock(seconds):
            found["w"] = _whole(seconds)
        case ClusterSet(cluster):
            found["c"] = [cluster.parts, _whole(cluster.pause)]
        case StripSet(strip):
            found["l"] = strip.loads
        case Reps(count) if count.open:
            found["n"] = [count.low, dose.said.cap or 0, 1]
        case _:
            pass
    if dose.last_set is not None:
        found["n"] = [dose.last_set.floor, dose.last_set.cap, 0]
    rest = REST_S[0] if dose.rest is None and dose.said.test is not None else dose.rest
    timing = {"r": rest, "e": dose.every}
    found |= {key: _whole(value) for key, value in timing.items() if value is not None}
    if dose.each_side:
        found["b"] = 1
    return found


def only_a_top(dose: Dose) -> bool:
    """True where today's top set is all there is to do."""
    alone = isinstance(dose.work, Reps) and dose.load is None and dose.sets.high == 1
    return alone and dose.top is not None and dose.reps == Count(dose.top, dose.top)


def _count(count: Count) -> int | list[int]:
    return count.high if count.low == count.high else [count.low, count.high]


def _whole(seconds: float) -> float:
    """Seconds without a needless fraction."""
    return int(seconds) if seconds == int(seconds) else seconds
