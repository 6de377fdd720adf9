"""Ways to narrow the list of exercises to what fits tonight."""

from strength_handbook.model.exercise import Exercise
from strength_handbook.model.loading import BodyWeightLift, ByEffort
from strength_handbook.model.room import Room
from strength_handbook.model.words import Hazard, Pattern
from strength_handbook.plan.alone import alone_here

FILTERS = (
    ("alone", "Fine alone"),
    ("overhead", "Nothing overhead"),
    ("breath", "No breath-hold"),
    ("jump", "No jumping"),
    ("supine", "Not lying on my back"),
    ("hanging", "Not hanging"),
    ("kit", "No weights, no machine"),
)
"""Short name and words of each."""


def filters(room: Room) -> tuple[tuple[str, str], ...]:
    """Those that a room has: where nobody trains alone, nobody asks for it."""
    return FILTERS[1:] if room.emergency.nobody_alone else FILTERS


def left_out_by(room: Room, exercise: Exercise) -> str:
    """Short names of the filters that leave an exercise out, with spaces between."""
    hazards = set(exercise.hazards)
    left_out = {
        "alone": alone_here(exercise, room).answer != "fine",
        "overhead": Hazard.OVERHEAD in hazards or exercise.pattern is Pattern.VERTICAL_PUSH,
        "breath": Hazard.BREATH_HOLD in hazards,
        "jump": exercise.pattern is Pattern.JUMP
        or (exercise.going is None and Hazard.IMPACT in hazards),
        "supine": bool({Hazard.SUPINE, Hazard.SUPINE_BAR} & hazards),
        "hanging": Hazard.HANGING in hazards,
        "kit": not _needs_nothing_heavy(room, exercise),
    }
    return " ".join(name for name, _ in FILTERS if left_out[name])


def _needs_nothing_heavy(room: Room, exercise: Exercise) -> bool:
    """Done with the body, on the floor, a box or a rig."""
    if not isinstance(exercise.load, BodyWeightLift | ByEffort):
        return False
    simple = {*room.kit, *room.lanes}
    return all(thing in simple for thing in (*exercise.stations, *exercise.uses))
