"""A session made less, for another day: after a bad night, or with only 45 minutes."""

from dataclasses import dataclass, replace
from math import floor

from strength_handbook.model.book import Book
from strength_handbook.model.dose import Dose, only_a_top
from strength_handbook.model.lighter import each_alike, first_sets, lighter, with_reserve
from strength_handbook.model.load import (
    Load,
    PercentOfBase,
    PercentOfBodyMass,
    PercentOfSystem,
    RepMax,
)
from strength_handbook.model.program import Program
from strength_handbook.model.session import Variant
from strength_handbook.model.span import between, ends, moved
from strength_handbook.plan.minutes import Minutes, session_minutes
from strength_handbook.plan.timed import timed_slots
from strength_handbook.plan.work_out import work_slot
from strength_handbook.plan.worked import WorkedSession, WorkedSlot

WITHOUT_A_TOP = 3.0
"""Repetitions left where a load would have followed from today's best and nothing else says how
hard the sets are. Common practice, no source."""


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


def offered(session: WorkedSession) -> tuple[Variant, ...]:
    """The variants of a session's week: without those whose time the whole session fits."""
    minutes = round(session.minutes.total)
    return tuple(
        one for one in session.session.variants if one.time is None or minutes > one.time / 60
    )


def session_variants(
    book: Book, program: Program, session: WorkedSession
) -> tuple[WorkedVariant, ...]:
    """Every variant that a session offers in its week, worked out."""
    found = []
    for variant in offered(session):
        left = tuple(slot for slot in session.slots if is_left_out(slot, variant))
        stay = tuple(slot for slot in session.slots if slot not in left)
        slots = tuple(lighter_slot(book, slot, variant) for slot in stay)
        minutes = session_minutes(book, program, timed_slots(book, program.group.sharing, slots))
        found.append(WorkedVariant(variant, slots, left, minutes))
    return tuple(found)


def lighter_slot(book: Book, slot: WorkedSlot, variant: Variant) -> WorkedSlot:
    """One slot as a variant has it."""
    dose = variant_dose(slot.dose, variant)
    return work_slot(book, slot.slot, slot.exercise_id, dose, slot.base_id, slot.base, slot.scale)


def is_left_out(slot: WorkedSlot, variant: Variant) -> bool:
    """True where the variant names the slot, or where it is a maximal effort and nothing else."""
    if slot.order in variant.leave_out:
        return True
    return variant.max_efforts == "leave-out" and _is_maximal(slot.dose)


def _is_maximal(dose: Dose) -> bool:
    """A test, a push against what does not move, or today's best and no set beside it."""
    said = dose.said
    return said.test is not None or said.push is not None or only_a_top(dose)


def variant_dose(dose: Dose, variant: Variant) -> Dose:
    """A dose with fewer sets, less load, less effort and no slower lowering.

    Of sets that differ the first ones stay, in their order.
    """
    if not dose.series:
        return _less(dose, variant)
    fewer = first_sets(dose, lighter(dose, variant.keep_sets, 100, 100).sets.low)
    each = variant.model_copy(update={"keep_sets": 100.0})
    return each_alike(fewer, lambda one: _less(one, each))


def _less(dose: Dose, variant: Variant) -> Dose:
    less = lighter(dose, variant.keep_sets, variant.keep_load, 100)
    if variant.keep_sets == variant.keep_load == 100:
        # An open set may stay open.
        less = dose
    if variant.keep_load != 100 and less.load is not None:
        less = replace(less, load=_in_halves(less.load))
    if dose.top is not None and variant.max_efforts == "leave-out":
        reserve = WITHOUT_A_TOP if less.reserve is None else less.reserve
        less = replace(with_reserve(less, reserve), top=None, load=None)
    if variant.rir is not None:
        less = _no_harder(less, variant.rir)
    if variant.tempo and less.tempo and less.tempo.lower > variant.tempo.lower:
        less = replace(less, tempo=replace(less.tempo, lower=variant.tempo.lower))
    return less


def _in_halves(load: Load) -> Load:
    """A percentage down to the half: nobody writes 70.2 %.

    >>> _in_halves(PercentOfBase(70.2))
    PercentOfBase(percent=70.0)
    """
    match load:
        case PercentOfBase(percent) | PercentOfSystem(percent) | PercentOfBodyMass(percent):
            return type(load)(between(*(floor(2 * end + 1e-9) / 2 for end in ends(percent))))
        case _:
            return load


def _no_harder(dose: Dose, least: int) -> Dose:
    """The dose with at least so many repetitions left in every set."""
    if dose.reserve is not None and ends(dose.reserve)[0] < least:
        dose = with_reserve(dose, moved(dose.reserve, 0, least))
    if dose.last_set is not None and dose.last_set.rir < least:
        dose = replace(dose, last_set=dose.last_set.model_copy(update={"rir": least}))
    if isinstance(dose.load, RepMax) and dose.reps is not None:
        most = max(dose.load.reps, dose.reps.high + least)
        dose = replace(dose, load=replace(dose.load, reps=most))
    return dose
