"""Doors worked out: what an alternative asks today, and how heavy it is.

A share of today's load is a share of everything that moves: for body-weight lifts of body and
plates together, never of the plates alone.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from strength_handbook.dose.key import AtDoor
from strength_handbook.dose.table import KEYS
from strength_handbook.model.book import Book
from strength_handbook.model.doors import BODY_PARTS, HURTS, Door
from strength_handbook.model.dose import (
    Clock,
    Distance,
    Dose,
    DosePart,
    Hold,
    IncompleteDoseError,
    InconsistentDoseError,
    complete,
)
from strength_handbook.model.dose_part import WORK_FIELDS
from strength_handbook.model.exercise import Exercise
from strength_handbook.model.lighter import each_alike, first_sets
from strength_handbook.model.load import Setting, scaled
from strength_handbook.model.program import Base
from strength_handbook.plan.door_going import taken_over
from strength_handbook.plan.door_limits import (
    ASKS_MORE,
    IN_EASY_WEEK,
    MORE_IN_THE_TIME,
    ON_TEST_DAY,
    within,
)
from strength_handbook.plan.loads import PlannedLoad, achieved, body_share_g
from strength_handbook.plan.reference import is_estimate
from strength_handbook.plan.remembered import remembered
from strength_handbook.plan.scale import Scale
from strength_handbook.plan.work_out import lifter_loads, own_base
from strength_handbook.plan.worked import Worked, WorkedProgram, WorkedSlot

DOORS: tuple[tuple[str, str], ...] = (
    ("easier", "Easier"), ("harder", "Harder"), ("hurts", "It hurts"), ("taken", "It's taken"),
    ("no-partner", "No partner"),
)  # fmt: skip
"""Key and name of each door, in order."""

STOP = "stop"
"""Key of the line that has no door: stop for today."""

NAMES = dict(DOORS) | {f"{HURTS}-{part}": f"It hurts: {part}" for part in BODY_PARTS} | {
    STOP: "Stop for today"
}  # fmt: skip
"""Names of the doors, of those for a part of the body, and of what has none, by key."""

_CARRIED = [key.field for key in KEYS if AtDoor.CARRIED in key.door]
"""What an exercise without a dose of its own takes over from today's."""

_OF_REPS = [key.field for key in KEYS if AtDoor.OF_REPS in key.door]
"""The manner of repetitions: a hold and a walk have none."""

_WHOLE = [key.field for key in KEYS if AtDoor.OF_SETS in key.door]
"""What belongs to today's sets, and goes when a door has other sets."""


@dataclass(frozen=True, eq=False)
class DoorPlan:
    """One door of one slot in one week.

    Attributes:
        key: easier, harder, hurts, hurts-knee and so on, taken or no-partner; or stop, where
            nothing replaces the exercise.
        name: how members know it.
        how: what changes, in words.
        to: id of another exercise, or None for the same one made different.
        exercise: the exercise that is done.
        dose: what it asks, without its load where that is a share of today's; None where nobody
            said how many sets of what, and where the slot has words of its own.
        own: what the door itself says of the dose, or None.
        share: load as percent of today's, or None.
        loads: load of each example lifter for whom it is known.
        scale: the loads that exist for it.
        estimate: the loads follow from the effort alone.
        look_up: the exercise's own table by body weight says where to start.
        lowered: it asks less than is written, because today's work is less.
    """

    key: str
    name: str
    how: str
    to: str | None
    exercise: Exercise
    dose: Dose | None = None
    own: DosePart | None = None
    share: float | None = None
    loads: Mapping[str, PlannedLoad] = field(default_factory=dict)
    scale: Scale | None = None
    estimate: bool = False
    look_up: bool = False
    lowered: bool = False

    @property
    def changed(self) -> bool:
        """True where the dose is another than today's."""
        return self.to is not None or self.own is not None


@remembered(4096)  # session page, exercise page and phone ask for the same slot
def doors_of(worked: Worked, program: WorkedProgram, slot: WorkedSlot) -> tuple[DoorPlan, ...]:
    """The doors of a slot of a worked program."""
    return slot_doors(worked.book, program.program.bases, worked.scales, slot)


def slot_doors(
    book: Book, bases: Mapping[str, Base], scales: Mapping[str, Scale | None], slot: WorkedSlot
) -> tuple[DoorPlan, ...]:
    """The doors of a slot, the one for pain after what ends the session and before its parts.

    Args:
        book: exercises, lifters and house rules.
        bases: tested values of the program.
        scales: the loads that exist for each exercise.
        slot: the slot as it is done today.
    """
    doors = dict(slot.exercise.doors.each())
    plans = []
    for key, name in DOORS:
        if key == HURTS and (stop := slot.exercise.doors.hurts.stop) is not None:
            plans.append(DoorPlan(STOP, NAMES[STOP], stop, None, slot.exercise))
        words = slot.slot.doors.get(key)  # type: ignore[call-overload]  # the same five words
        if words is None and slot.dose.said.test is not None:
            words = ON_TEST_DAY.get(key)
        if words is None and key == ASKS_MORE and _until_time_is_up(slot.dose):
            words = MORE_IN_THE_TIME
        if words is None and slot.easy and key == ASKS_MORE:
            words = IN_EASY_WEEK
        if words is not None:
            # Words of the slot or the day replace the door: nothing else of it need be true here.
            plans.append(DoorPlan(key, name, words, None, slot.exercise))
            continue
        plans += [
            _door(book, bases, scales, slot, own, NAMES[own], doors[own])
            for own in (key, *(f"{key}-{part}" for part in BODY_PARTS))
            if own in doors
        ]
    return tuple(plans)


def _door(
    book: Book,
    bases: Mapping[str, Base],
    scales: Mapping[str, Scale | None],
    slot: WorkedSlot,
    key: str,
    name: str,
    door: Door,
) -> DoorPlan:
    to = door.to if door.to != slot.exercise_id else None
    exercise = book.exercises[to] if to else slot.exercise
    asked = _other_dose(door, exercise, slot) if to else _same_dose(door, slot)
    if asked is None:
        return DoorPlan(key, name, door.how, to, exercise, None, door.dose, door.load)
    dose = asked if key == ASKS_MORE else within(book, asked, slot.dose)
    plan = DoorPlan(
        key, name, door.how, to, exercise, dose, door.dose, door.load, lowered=dose != asked
    )
    scale = scales[to] if to else slot.scale
    if door.load is not None:
        loads = {
            lifter: _share(
                today,
                scale,
                door.load,
                book.room.units,
                body_share_g(exercise.load, book.lifters[lifter].bodyweight.grams, dose.said.height)
                if to
                else today.body_g,
            )
            for lifter, today in slot.loads.items()
        }
        return replace(plan, dose=_without_load(dose, slot, door.load), loads=loads, scale=scale)
    if to is None and (door.dose is None or door.dose.load is None):
        # Nobody said what the change does to the load.
        bare = each_alike(dose, lambda one: replace(one, load=None, top=None))
        return replace(plan, dose=bare)
    base_id = own_base(exercise) if to else slot.base_id
    loads = lifter_loads(book, exercise, dose, base_id if base_id in bases else None, scale)
    return replace(
        plan,
        loads=loads,
        scale=scale,
        estimate=is_estimate(dose) and bool(loads),
        look_up=to is not None and not loads and dose.load is None and scale is not None,
    )


def _share(
    today: PlannedLoad, scale: Scale | None, share: float, units: str, body_g: float
) -> PlannedLoad:
    """A share of everything that moves today, less what of the body moves in the lift."""
    wanted = (today.planned_g + today.body_g) * share / 100 - body_g
    reference = today.reference_g if round(body_g) == round(today.body_g) else 0.0
    return achieved(wanted, scale, reference, body_g, units)


def _without_load(dose: Dose, slot: WorkedSlot, share: float) -> Dose:
    """The dose without its load, which is a share of today's; machine settings stay numbers."""
    load = slot.dose.load
    setting = scaled(load, share / 100) if isinstance(load, Setting) else None
    if dose.series:
        return each_alike(dose, lambda one: replace(one, load=None))
    return replace(dose, load=setting, top=None)


def _until_time_is_up(dose: Dose) -> bool:
    """True where as many as possible are done in a time, with no pace that ends the set."""
    return dose.said.density is not None and dose.said.density.pace is None


def _same_dose(door: Door, slot: WorkedSlot) -> Dose | None:
    """The door's dose over today's; None where they don't go together."""
    own, dose = door.dose, slot.dose
    if own is None:
        return dose
    own = _without_tempo(own, dose)
    if dose.series and own.sets is not None and not any(getattr(own, key) for key in WORK_FIELDS):
        # The first ones of sets that differ.
        dose = first_sets(dose, own.sets.high)
        own = own.model_copy(update={"sets": None})
    if dose.series and own.load is not None:
        dose = each_alike(dose, lambda one: replace(one, load=None))
    today = dose.part
    if any(getattr(own, name) is not None for name in ("sets", *WORK_FIELDS)):
        today = today.model_copy(update=dict.fromkeys(_WHOLE))
    try:
        return complete(own, _fitting(own, today), going=dose.going)
    except InconsistentDoseError:
        return None


def _fitting(own: DosePart, today: DosePart) -> DosePart:
    """Today's dose without the manner of its repetitions, where the door asks for none."""
    counted = own.reps is not None or own.cluster is not None or own.strip is not None
    other = own.hold is not None or own.distance is not None
    return today.model_copy(update=dict.fromkeys(_OF_REPS)) if other and not counted else today


def _without_tempo(part: DosePart, today: Dose) -> DosePart:
    """A door's dose without its tempo, where it leaves today's hold, time or way."""
    other = any(getattr(part, key) is not None for key in WORK_FIELDS)
    if other or not isinstance(today.work, Hold | Clock | Distance):
        return part
    return part.model_copy(update={"tempo": None})


def _other_dose(door: Door, exercise: Exercise, slot: WorkedSlot) -> Dose | None:
    """The door's dose over the other exercise's; over today's where those leave sets open."""
    own, each, going = door.dose or DosePart(), exercise.sides == "each", exercise.going
    try:
        return complete(own, exercise.dose, each_side=each, going=going)
    except IncompleteDoseError:
        pass
    work = taken_over(slot.dose, going)
    if work is None:
        return None
    # Its own loads are another exercise's.
    today = each_alike(work, lambda one: replace(one, load=None)).part
    carried = DosePart().model_copy(update={name: getattr(today, name) for name in _CARRIED})
    carried = _fitting(own, _fitting(exercise.dose, carried))
    parts = [own, exercise.dose]
    if not any(getattr(part, key) is not None for part in parts for key in WORK_FIELDS):
        parts = [_without_tempo(part, slot.dose) for part in parts]
    try:
        return complete(*parts, carried, each_side=each, going=going)
    except IncompleteDoseError:
        return None
