"""What a phone needs to lead through a session: sets, rests, clocks; no loads.

The page has the loads and the coach's words already; what session mode says of its own comes from
`pages/train_html.py`. A slot's keys are short, and left out where they say nothing:

    o  order                            s  sets, or fewest and most
    w  seconds of one hold or set, the  h  1: it is a hold
       most of a range                  W  and the fewest of that range
    r  seconds of rest                  e  seconds from start to start
    b  1: one side, then the other      c  parts of a set, and seconds between them
    l  loads of a strip                 n  open set: floor, cap (0: none), 1 where all sets are
    p  repetitions of today's top       P  and how many it leaves; left out where it is the best
                                        a  attempts of a test: the unit of its result
    g  1: there are steps up to it      q  repetitions of a set, or with each load of a strip
                                           set, fewest and most
    u  repetitions of a strip set in all, fewest and most
    D  sets that differ: of each that are alike how many, fewest and most repetitions, and seconds
       of a rest of its own
    N  as many as possible in its time: by how many people, together
    f  how often a load counts in a repetition, and the share of the body that goes along, in
       millionths of a percent; 0 where that is no plain sum; [1, 0] is left out
    t  its tempo: kind, seconds and word of each part of a repetition, in order (`tempo_parts`)
    m  metres of one carry              i  id of its exercise
    x  when to stop                     y  its tempo in sentences
    z  its tempo as it is written       name  of its exercise
    k  what a number for its load means, in words; without it there is none to write down
    j  1: it hangs on the body, or takes weight off
    d  doors by key, where another exercise is done: its id, and its own k, j, x and F
    F  1: there is a drawing of its exercise
    v  of each variant of the session, in the order of the page, what is different: of, the most
       sets (0: left out); few, the fewest, where it is another number; open: 0 where no set stays
       open; top: 0 where no top set is worked up to; t, y and z where its tempo is another one
"""

from typing import Any

from strength_handbook.calc.tempo import FAST_LIFT_S
from strength_handbook.dose.key import Because
from strength_handbook.dose.table import KEYS
from strength_handbook.dose.texts import whole
from strength_handbook.model.book import Book
from strength_handbook.model.dose import Dose
from strength_handbook.model.exercise import Exercise
from strength_handbook.model.loading import BodyWeightLift, OnPivot, PushUp
from strength_handbook.model.session import Variant
from strength_handbook.phone.lists import millionths
from strength_handbook.plan.method_plan import method_plan
from strength_handbook.plan.variants import is_left_out, offered, variant_dose
from strength_handbook.plan.worked import WorkedProgram, WorkedSession, WorkedSlot, WorkedWeek

Data = dict[str, Any]


def session_guide(
    book: Book, program: WorkedProgram, week: WorkedWeek, session: WorkedSession
) -> Data:
    """A session's address among what a phone keeps, its slots, and the variants of this week.

    Those are places among the written variants, counted from 0, in the order of the page.
    """
    written = session.session.variants
    return {
        "variants": [written.index(one) for one in offered(session)],
        "at": f"{program.id}/{week.week}/{session.id}",
        "slots": [_slot(book, week, session, slot) for slot in session.slots],
    }


def _slot(book: Book, week: WorkedWeek, session: WorkedSession, slot: WorkedSlot) -> Data:
    plan = method_plan(book, slot, session, week)
    steps_up = plan.ramps is not None or plan.test is not None
    found: Data = {"o": slot.order, "i": slot.exercise_id} | dose_guide(slot.dose)
    found |= {"g": 1} if steps_up else {}
    found |= {"f": counts} if (counts := _counts(slot)) != [1, 0] else {}
    if parts := tempo_parts(slot.dose, slot.exercise):
        found["t"] = parts
    if variants := offered(session):
        found["v"] = [variant_guide(slot, one) for one in variants]
    return found | {"x": slot.exercise.stop[0]}


def _counts(slot: WorkedSlot) -> list[int] | int:
    """How often a load counts in a repetition, and the share of the body; 0: no plain sum.

    On a pivot the hands hold less than hangs there, and of plates on a back a part: those loads are
    not added up from what was on.
    """
    match slot.exercise.load:
        case OnPivot() | PushUp():
            return 0
        case BodyWeightLift(share=share):
            return [1, millionths(share)]
        case _:
            return [2 if slot.scale is not None and slot.scale.per_hand else 1, 0]


def variant_guide(slot: WorkedSlot, variant: Variant) -> Data:
    """What a variant changes of a slot, its load aside, which its line on the page says."""
    if is_left_out(slot, variant):
        return {"of": 0}
    dose = variant_dose(slot.dose, variant)
    own, less = dose_guide(slot.dose), dose_guide(dose)
    # Where today's top set is all there is, it is one.
    sets = less.get("s", 1)
    found: Data = {"few": sets[0], "of": sets[1]} if isinstance(sets, list) else {"of": sets}
    found |= {"open": 0} if "n" in own and "n" not in less else {}
    found |= {"top": 0} if "p" in own and "p" not in less else {}
    if dose.tempo != slot.dose.tempo:
        found["t"] = tempo_parts(dose, slot.exercise)
    return found


def tempo_parts(dose: Dose, exercise: Exercise) -> list[list[Any]]:
    """One repetition as it is counted: kind, seconds and word of each part that takes time.

    Kinds are ``down``, ``still`` (a pause of the tempo), ``hold`` (the pause that is asked for
    beside it), ``up`` and ``fast``. A hold inside the repetition is counted right before the lift:
    its place in the way is in the coach's words. Common practice, no source.

    Args:
        dose: with its tempo; without one nothing is counted.
        exercise: says where a repetition begins, which is written lowering first all the same, and
            what its phases are called.
    """
    tempo = dose.tempo
    if tempo is None:
        return []
    lift: list[Any] = ["up", tempo.lift]
    if tempo.lift is None:
        lift = ["fast", whole(FAST_LIFT_S)]
    held = whole(dose.said.pause.time) if dose.said.pause else 0
    lowering: list[list[Any]] = [["down", tempo.lower], ["still", tempo.low_pause]]
    lifting: list[list[Any]] = [["hold", held], lift, ["still", tempo.high_pause]]
    parts = [*lifting, *lowering] if exercise.lifts_from == "bottom" else [*lowering, *lifting]
    words = {"still": "Still", "hold": "Hold", **dict(exercise.phases.beats)}
    return [[*part, words[part[0]]] for part in parts if part[1]]


LETTERS = "sapPwWhclmqDunrebN"
"""What may follow from a dose alone, in the order in which a page carries it."""


def dose_guide(dose: Dose) -> Data:
    """The part that follows from the dose alone."""
    part, found = dose.part, Data()
    for key in KEYS:
        if not isinstance(key.use.phone, Because) and (value := key.value(part)) is not None:
            found |= key.use.phone(value, dose)
    return dict(sorted(found.items(), key=lambda item: LETTERS.index(item[0])))
