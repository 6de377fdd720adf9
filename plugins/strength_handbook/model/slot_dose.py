"""The dose of a slot in one week, put together from week, slot and exercise."""

from strength_handbook.model.dose import Dose, DosePart, IncompleteDoseError, complete
from strength_handbook.model.exercise import Exercise
from strength_handbook.model.lighter import lighter
from strength_handbook.model.session import Slot

DELOAD_SETS = 60.0
DELOAD_LOAD = 100.0
DELOAD_HOLD = 60.0
"""What a deload keeps where the week says nothing else. Common practice, no source."""

_DELOAD_KEYS = ("deload_of", "keep_sets", "keep_load", "keep_hold")


class NoSuchWeekError(IncompleteDoseError):
    """A deload of a week in which the slot has no dose."""

    def __init__(self, week: int) -> None:
        self.week = week
        super().__init__([f"a dose in week {week} to take less of"])


def slot_dose(slot: Slot, exercise: Exercise, week: int) -> Dose:
    """The complete dose of one week.

    A week written as a deload of another takes that week's dose and less of it; what else it says
    holds all the same.

    Raises:
        IncompleteDoseError: where something is missing that nobody has said.
        KeyError: where the slot has no dose in that week.
    """
    part = slot.weeks[week] or DosePart()
    each_side = exercise.sides == "each"
    if part.deload_of is None:
        return complete(part, slot, exercise.dose, each_side=each_side, going=exercise.going)
    source = slot.weeks.get(part.deload_of)
    if source is None or source.deload_of is not None:
        raise NoSuchWeekError(part.deload_of)
    own = part.model_copy(update=dict.fromkeys(_DELOAD_KEYS))
    full = complete(own, source, slot, exercise.dose, each_side=each_side, going=exercise.going)
    return lighter(
        full,
        DELOAD_SETS if part.keep_sets is None else part.keep_sets,
        # A load of its own is meant as it stands.
        100.0 if own.load is not None else (part.keep_load or DELOAD_LOAD),
        100.0 if own.hold is not None else (part.keep_hold or DELOAD_HOLD),
    )
