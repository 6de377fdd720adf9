"""How much an exercise asks of the grip, told from how it is loaded and which muscles work.

| Class | What decides it |
| --- | --- |
| 3, the grip ends the set | forearms work directly; or weight is carried in the hands |
| 2, firm | forearms help; or a pull, a heavy hinge in the hands, a hang, a swing |
| 1, light | a bar, a hand weight, a handle or a plate is in the hands all the same |
| 0, none | nothing is held |

Common practice, no source.
"""

from strength_handbook.model.book import Book
from strength_handbook.model.exercise import Exercise
from strength_handbook.model.words import Hazard, Muscle, Pattern
from strength_handbook.plan.minutes import work_seconds
from strength_handbook.plan.worked import WorkedSlot

LIMITING, FIRM, LIGHT, NONE = 3, 2, 1, 0

_HELD = ("bar", "hands", "stack", "pivot", "plate", "strap-row")
"""Kinds of loading that put something into the hands."""

_PULLS = (Pattern.HORIZONTAL_PULL, Pattern.VERTICAL_PULL)


def grip_class(exercise: Exercise) -> int:
    """Class of an exercise's grip, 0 to 3."""
    held = exercise.load.kind in _HELD and Hazard.BAR_ON_BACK not in exercise.hazards
    in_hands = exercise.load.kind in ("bar", "hands")
    if Muscle.FOREARMS in exercise.muscles.direct:
        return LIMITING
    if exercise.pattern is Pattern.CARRY and in_hands and held:
        return LIMITING
    if Muscle.FOREARMS in exercise.muscles.helping or exercise.pattern in _PULLS:
        return FIRM
    if exercise.pattern is Pattern.HINGE and in_hands and held:
        return FIRM
    if {Hazard.HANGING, Hazard.SWING} & set(exercise.hazards):
        return FIRM
    return LIGHT if held else NONE


def grip_budget(book: Book, slot: WorkedSlot) -> float:
    """Seconds of gripping in a slot, both sides, weighed with the class."""
    return slot.dose.sets.middle * work_seconds(book, slot.dose) * grip_class(slot.exercise)
