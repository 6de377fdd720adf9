"""Which joints an exercise loads most, told from its movement, its hazards and its muscles.

Only the joints that complain first are named: a press is hard on the shoulder, whatever else bends.
Common practice, no source.
"""

from enum import StrEnum

from strength_handbook.model.book import Book
from strength_handbook.model.exercise import Exercise
from strength_handbook.model.words import Hazard, Muscle, Pattern
from strength_handbook.plan.worked import WorkedSlot
from strength_handbook.review.fatigue import left, near_limit, reckoned_percent


class Joint(StrEnum):
    """Joints in everyday words."""

    ANKLE = "ankle"
    KNEE = "knee"
    HIP = "hip"
    LOWER_BACK = "lower back"
    SHOULDER = "shoulder"
    ELBOW = "elbow"
    WRIST = "wrist"
    NECK = "neck"


BY_PATTERN: dict[Pattern, tuple[Joint, ...]] = {
    Pattern.SQUAT: (Joint.KNEE, Joint.HIP),
    Pattern.HINGE: (Joint.HIP,),
    Pattern.SINGLE_LEG: (Joint.KNEE, Joint.HIP),
    Pattern.HORIZONTAL_PUSH: (Joint.SHOULDER,),
    Pattern.VERTICAL_PUSH: (Joint.SHOULDER,),
    Pattern.HORIZONTAL_PULL: (Joint.ELBOW,),
    Pattern.VERTICAL_PULL: (Joint.ELBOW,),
    Pattern.JUMP: (Joint.KNEE, Joint.ANKLE),
}
"""A carry, a trunk exercise, one for a single joint and endurance go by their muscles alone."""

BY_HAZARD: dict[Hazard, tuple[Joint, ...]] = {
    Hazard.BAR_ON_BACK: (Joint.LOWER_BACK,),
    Hazard.HEAVY_PULL: (Joint.LOWER_BACK,),
    Hazard.SWING: (Joint.LOWER_BACK,),
    Hazard.IMPACT: (Joint.KNEE, Joint.ANKLE),
    Hazard.OVERHEAD: (Joint.SHOULDER,),
}

BY_MUSCLE: dict[Muscle, tuple[Joint, ...]] = {
    Muscle.QUADS: (Joint.KNEE,),
    Muscle.HAMSTRINGS: (Joint.KNEE,),
    Muscle.ADDUCTORS: (Joint.HIP,),
    Muscle.HIP_FLEXORS: (Joint.HIP,),
    Muscle.GLUTES: (Joint.HIP,),
    Muscle.CALVES: (Joint.ANKLE,),
    Muscle.SHINS: (Joint.ANKLE,),
    Muscle.BACK_EXTENSORS: (Joint.LOWER_BACK,),
    Muscle.CHEST: (Joint.SHOULDER,),
    Muscle.SHOULDERS: (Joint.SHOULDER,),
    Muscle.BICEPS: (Joint.ELBOW,),
    Muscle.TRICEPS: (Joint.ELBOW,),
    Muscle.FOREARMS: (Joint.WRIST,),
    Muscle.NECK: (Joint.NECK,),
}
"""For exercises that go by their muscles; only those that work directly."""

_BY_MUSCLES = (Pattern.CARRY, Pattern.TRUNK, Pattern.ISOLATED, Pattern.ENDURANCE)


def joints_of(exercise: Exercise) -> tuple[Joint, ...]:
    """The joints an exercise loads most, from the ground up."""
    found = {joint for hazard in exercise.hazards for joint in BY_HAZARD.get(hazard, ())}
    if exercise.pattern in _BY_MUSCLES:
        direct = exercise.muscles.direct
        found |= {joint for muscle in direct for joint in BY_MUSCLE.get(muscle, ())}
    else:
        found |= set(BY_PATTERN[exercise.pattern])
    on_feet = exercise.load.kind in ("bar", "hands", "pivot")
    if exercise.pattern is Pattern.HINGE and on_feet:
        found.add(Joint.LOWER_BACK)
    return tuple(joint for joint in Joint if joint in found)


def stressed(book: Book, slot: WorkedSlot) -> tuple[Joint, ...]:
    """The joints that a slot really loads highly; none where it is light, easy or prehab.

    High are a heavy lift, sets near the limit, slow lowering and landings.
    """
    exercise = slot.exercise
    if exercise.role == "prehab":
        return ()
    landings = slot.volume.contacts > 0
    heavy = reckoned_percent(slot) >= book.rule("heavy-lift")
    if heavy or landings or _near_limit(book, slot) or slow_lowering(book, slot):
        return joints_of(exercise)
    return ()


def _near_limit(book: Book, slot: WorkedSlot) -> bool:
    """True for sets near the limit, in assistance work only nearer than tires its muscles.

    Rows that leave 2, the day after others that leave 2, are the usual split.
    """
    reserve = left(slot)
    beside = slot.exercise.role != "main" and slot.dose.said.test is None
    if beside and near_limit(book, slot).startswith("leaves") and reserve is not None:
        return reserve < book.rule("tired-reserve")
    return bool(near_limit(book, slot))


def slow_lowering(book: Book, slot: WorkedSlot) -> bool:
    """True for slow lowering in an exercise whose lowering makes people sore."""
    tempo = slot.dose.tempo
    sore = Hazard.HEAVY_ECCENTRIC in slot.exercise.hazards
    return sore and tempo is not None and tempo.lower >= book.rule("slow-lowering")
