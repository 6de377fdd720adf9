"""What a slot, a session and a week add up to: sets, repetitions, seconds, hard sets, tonnage.

Repetitions, seconds and tonnage count both sides of one-sided work. Hard sets do not: a set for
each leg is one hard set for the legs.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from strength_handbook.calc.tempo import TensionTime, rep_tension, total_tension
from strength_handbook.calc.volume import (
    SetGroup,
    fast_repetitions,
    isometric_dose,
    pelland_2025,
    repetition_volume,
)
from strength_handbook.dose.effort import in_repetitions
from strength_handbook.dose.one_set import one_set
from strength_handbook.model.book import Book
from strength_handbook.model.dose import Dose
from strength_handbook.model.exercise import Exercise
from strength_handbook.model.words import Hazard, Pattern


@dataclass(frozen=True, slots=True)
class Volume:
    """Sums of one slot, session or week.

    Attributes:
        sets: sets, each side counted once.
        reps: repetitions, both sides.
        eccentric_s: seconds of lowering.
        isometric_s: seconds of holding, pauses included.
        fast_reps: repetitions lifted as fast as possible.
        contacts: landings, of jumps and hops.
        hard_sets: hard sets per muscle, direct 1 and helping 0.5.
        tonnage_kg: load times repetitions per example lifter.
    """

    sets: float = 0
    reps: float = 0
    eccentric_s: float = 0
    isometric_s: float = 0
    fast_reps: float = 0
    contacts: float = 0
    hard_sets: Mapping[str, float] = field(default_factory=dict)
    tonnage_kg: Mapping[str, float] = field(default_factory=dict)


def slot_volume(
    book: Book, exercise: Exercise, dose: Dose, load_g: Mapping[str, int | None]
) -> Volume:
    """Volume of one slot in one week.

    Args:
        book: for the house rules.
        exercise: the exercise, for its muscles.
        dose: what is asked; ranges are reckoned at their middle.
        load_g: achievable load by example lifter, body share included where it moves.
    """
    sets = dose.sets.middle
    sides = 2 if dose.each_side else 1
    one = one_set(book.rule, dose)
    reps = float(sum(one.reps))
    group = SetGroup(sets, reps, 0.0, sides, fast=dose.fast)
    total_reps = repetition_volume([group])
    held = isometric_dose(sets, one.held_s, sides)
    tension = total_tension(_tension(dose), total_reps)
    # A jump is practice of landing and leaving; it is counted by its contacts.
    counts = exercise.pattern is not Pattern.JUMP and is_hard(book, dose)
    hard = sets if counts else 0.0
    direct, helping = exercise.muscles.direct, exercise.muscles.helping
    return Volume(
        sets=sets,
        reps=total_reps,
        eccentric_s=tension.eccentric_s,
        isometric_s=tension.isometric_s + held,
        fast_reps=fast_repetitions([group]),
        contacts=total_reps if Hazard.IMPACT in exercise.hazards else 0.0,
        hard_sets={muscle.value: pelland_2025(hard, 0) for muscle in direct if hard}
        | {muscle.value: pelland_2025(0, hard) for muscle in helping if hard},
        tonnage_kg={
            name: total_reps * grams / 1000 for name, grams in load_g.items() if grams is not None
        },
    )


def is_hard(book: Book, dose: Dose) -> bool:
    """True for sets near enough to the limit to count for a muscle.

    Repetitions: at most the house rule's reserve left, or no reserve stated. Speed sets on an
    interval are practice of speed. Holds, carries and timed sets count from the house rule's
    effort on, and not where no effort is stated. Rowing, running and the like make no muscle strong
    as sets near the limit do: they have minutes.
    """
    if dose.going is not None:
        return False
    if in_repetitions(dose):
        if dose.every is not None and dose.fast:
            return False
        return dose.reserve is None or dose.reserve <= book.rule("hard-set-reserve")
    effort = None if dose.reserve is None else 10 - dose.reserve
    return effort is not None and effort >= book.rule("hard-hold-effort")


def _tension(dose: Dose) -> TensionTime:
    """Seconds of one repetition: the tempo, and a hold inside it."""
    tempo, pause = dose.tempo, dose.said.pause
    held = pause.time if pause else 0.0
    if tempo is None:
        return TensionTime(0, held, 0)
    return rep_tension(tempo.lower, tempo.low_pause + held, tempo.lift, tempo.high_pause)


def add_up(volumes: Iterable[Volume]) -> Volume:
    """The sum of several volumes.

    A lifter's tonnage is summed over what is known; slots by effort alone add nothing to it.
    """
    hard: dict[str, float] = {}
    tonnage: dict[str, float] = {}
    parts = tuple(volumes)
    for one in parts:
        for muscle, sets in one.hard_sets.items():
            hard[muscle] = hard.get(muscle, 0) + sets
        for lifter, kg in one.tonnage_kg.items():
            tonnage[lifter] = tonnage.get(lifter, 0) + kg
    return Volume(
        sets=sum(one.sets for one in parts),
        reps=sum(one.reps for one in parts),
        eccentric_s=sum(one.eccentric_s for one in parts),
        isometric_s=sum(one.isometric_s for one in parts),
        fast_reps=sum(one.fast_reps for one in parts),
        contacts=sum(one.contacts for one in parts),
        hard_sets=hard,
        tonnage_kg=tonnage,
    )
