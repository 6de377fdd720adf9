"""A session made less, for another day: called out last night, only 45 minutes."""

from dataclasses import dataclass, replace

from strength_handbook.calc.tempo import rep_tension
from strength_handbook.model.book import Book
from strength_handbook.model.dose import Dose, lighter
from strength_handbook.model.program import Program, Variant
from strength_handbook.model.tempo import Tempo
from strength_handbook.plan.minutes import Minutes, TimedSlot, session_minutes
from strength_handbook.plan.work_out import work_slot
from strength_handbook.plan.worked import WorkedSession, WorkedSlot


@dataclass(frozen=True, eq=False)
class WorkedVariant:
    """One variant of one session in one week.

    Attributes:
        variant: as written.
        slots: what stays, with its doses and loads.
        left_out: what does not.
        minutes: by the clock, door to door.
    """

    variant: Variant
    slots: tuple[WorkedSlot, ...]
    left_out: tuple[WorkedSlot, ...]
    minutes: Minutes


def session_variants(
    book: Book, program: Program, session: WorkedSession
) -> tuple[WorkedVariant, ...]:
    """Every variant of a session, worked out."""
    found = []
    for variant in session.session.variants:
        stay = tuple(slot for slot in session.slots if slot.order not in variant.leave_out)
        slots = tuple(lighter_slot(book, slot, variant) for slot in stay)
        minutes = session_minutes(
            book, program, [TimedSlot(slot.order, slot.exercise, slot.dose) for slot in slots]
        )
        left = tuple(slot for slot in session.slots if slot.order in variant.leave_out)
        found.append(WorkedVariant(variant, slots, left, minutes))
    return tuple(found)


def lighter_slot(book: Book, slot: WorkedSlot, variant: Variant) -> WorkedSlot:
    """One slot as a variant has it."""
    dose = variant_dose(slot.dose, variant)
    return work_slot(book, slot.slot, slot.exercise_id, dose, slot.base_id, slot.base, slot.scale)


def variant_dose(dose: Dose, variant: Variant) -> Dose:
    """A dose with fewer sets, less load and no slower tempo than the variant's."""
    less = lighter(dose, variant.keep_sets, variant.keep_load, 100)
    if variant.keep_sets == variant.keep_load == 100:
        # Nothing but the tempo changes: an open set may stay open.
        less = dose
    if variant.tempo and less.tempo and _seconds(less.tempo) > _seconds(variant.tempo):
        less = replace(less, tempo=variant.tempo)
    return less


def _seconds(tempo: Tempo) -> float:
    return rep_tension(tempo.lower, tempo.low_pause, tempo.lift, tempo.high_pause).total_s
