"""What a coach writes for a picture of a lift: a base pose and a few angles on top of it.

Angles are degrees between two parts of the body, as a hold says them in a dose: a straight knee,
hip or elbow is 180, and it gets smaller as it bends. The ankle has 90 where the shin is square to
the sole. The shoulder has 0 where the arm lies along the trunk, 90 straight ahead of the chest, 180
overhead. `lean` is how far the trunk leans from upright: 90 lies face down, -90 on the back.
The picture looks at the lifter's right side; places are counted ahead of the ankle that stands.
"""

from typing import Annotated, Literal

from pydantic import Field

from strength_handbook.model.plain import DECIMAL, within
from strength_handbook.model.quantities import Metres, read_length
from strength_handbook.model.shape import Shape

BasePose = Literal[
    "standing",
    "squat",
    "hinge",
    "walking",
    "split-stance",
    "kneeling",
    "hanging",
    "seated",
    "on-back",
    "bridge",
    "face-down",
    "plank",
    "on-slanted-bench",
]
"""Named poses to begin from."""

Held = Literal[
    "bar",
    "yoke-bar",
    "trap-bar",
    "empty-bar",
    "empty-trap-bar",
    "pivot-bar",
    "dumbbells",
    "dumbbell",
    "bells",
    "bell",
    "handles",
    "handle",
    "plate",
    "plates",
    "bag",
    "rope",
    "cable",
    "strap",
    "pull-up-bar",
    "parallel-handles",
    "towels",
    "stick",
    "stretcher",
    "wall",
    "nothing",
]
"""What the hands are on. One dumbbell or bell is in the near hand, in both where both are there;
of a dumbbell the far arm stays as in the base pose unless it is written."""

ThingKind = Literal[
    "box", "bench", "chair", "mat", "pins", "pivot", "cable-column", "sled", "anchor", "wall",
    "foot-plate", "back-rest", "chest-rest", "adjustable-bench", "slanted-bench",
]  # fmt: skip
"""What stands around the lifter."""

Arms = Literal[
    "hanging", "in-front", "racked", "overhead", "at-chest", "folded", "at-handles", "on-floor"
]
"""Where the arms are; shoulder and elbow in degrees say it exactly."""

Joint = Literal["ankle", "knee", "hip", "shoulder", "elbow"]

Knee = Annotated[float, Field(ge=25, le=180), DECIMAL]
Ankle = Annotated[float, Field(ge=50, le=150), DECIMAL]
Hip = Annotated[float, Field(ge=40, le=210), DECIMAL]
Shoulder = Annotated[float, Field(ge=-70, le=190), DECIMAL]
Elbow = Annotated[float, Field(ge=25, le=180), DECIMAL]
Turned = Annotated[float, Field(ge=-100, le=120), DECIMAL]
Heel = Annotated[float, Field(ge=-30, le=180), DECIMAL]
Places = Annotated[float, Field(ge=-300, le=300), DECIMAL]
Height = Annotated[Metres, within(read_length, "1 cm", "3 m")]

RANGES = {
    "ankle": (50, 150),
    "knee": (25, 180),
    "hip": (40, 210),
    "shoulder": (-70, 190),
    "elbow": (25, 180),
}
"""How far a joint goes, degrees as above: normal ranges of motion as clinics print them (knee and
elbow bend by 150, hip by 120 and back by 30, ankle up by 20 and down by 50, shoulder forward by 180
and back by 60; from memory), widened for a loaded ankle, and for a back and pelvis that bend with
the hip."""


class Pose(Shape):
    """One moment of a repetition; what is left out comes from the base pose or from balance."""

    pose: BasePose
    """The pose to begin from."""
    ankle: Ankle | None = None
    """Shin to sole, 90 is square. Left out, the body finds its balance over the foot."""
    knee: Knee | None = None
    """Thigh to shin, 180 is straight."""
    hip: Hip | None = None
    """Trunk to thigh, 180 is straight."""
    lean: Turned | None = None
    """How far the trunk leans from upright: 90 is face down, -90 on the back."""
    arms: Arms | None = None
    """Where the arms are."""
    shoulder: Shoulder | None = None
    """Trunk to upper arm: 0 along the trunk, 90 straight ahead, 180 overhead."""
    elbow: Elbow | None = None
    """Upper arm to forearm, 180 is straight."""
    elbow_out: Annotated[float, Field(ge=0, le=80), DECIMAL] = 0.0
    """How far the elbows point out to the sides, towards the onlooker."""
    head: Turned | None = None
    """How far the head is tilted from upright, forward; left out, it follows half the trunk."""
    heel: Heel | None = None
    """How far the heel is off the ground, degrees at the ball of the foot."""
    far_knee: Knee | None = None
    """The knee of the leg that is farther from the onlooker, where it differs."""
    far_hip: Hip | None = None
    """The hip of that leg; left out, its foot reaches the ground."""
    far_heel: Heel | None = None
    """How far the heel of that leg is off the ground; 150 has the laces down, and less than nought
    has the foot ahead, on its heel."""
    far_foot: Annotated[Metres, within(read_length, "0 cm", "1.5 m")] | None = None
    """The height on which that foot stands."""
    far_shoulder: Shoulder | None = None
    """The shoulder of the far arm, where it differs."""
    far_elbow: Elbow | None = None
    """The elbow of that arm."""
    ground: Height | None = None
    """The height of what the body stands, kneels, sits or lies on."""
    feet: Annotated[Metres, within(read_length, "0 cm", "1.5 m")] | None = None
    """How high the heels rest, where the body lies or sits."""
    hands: Height | None = None
    """How high the hands are. With no hip or lean, the trunk bends until they are there."""
    hands_at: Places | None = None
    """With `hands`, where they are: centimetres ahead of the standing ankle, or of what the body
    rests on; behind it with a minus. Bent arms go there; straight ones bring the trunk along."""
    shrug: Annotated[Metres, within(read_length, "0 cm", "10 cm")] = 0.0
    """How far both shoulders are lifted towards the ears; head and trunk stay."""
    load_on: Literal["hands", "lap", "shoulder"] = "hands"
    """Where a bag lies: it may rest on the thighs or on a shoulder."""
    ahead: Annotated[Metres, within(read_length, "0 cm", "2 m")] = 0.0
    """How far the body has moved ahead since the start."""


class Beside(Shape):
    """Something around the lifter."""

    thing: ThingKind
    """What it is."""
    height: Annotated[Metres, within(read_length, "0 cm", "3 m")] = 0.0
    """How high its top is; of a chair its seat; of pins, a cable's pulley and an anchor, how high
    they are; of a sled its posts, where hands push them."""
    width: Height | None = None
    """How wide it is."""
    at: Places = 0.0
    """Where its middle is: centimetres ahead of the standing ankle, or of what the body rests on;
    behind it with a minus. A sled on a line is there at the start, and the line brings it along."""
    faces: Literal["ahead", "back"] = "ahead"
    """Where a chair faces: the way the lifter does, or back towards the lifter."""


class Other(Shape):
    """Somebody else in the picture."""

    at: Places
    """How far ahead of the lifter; behind with a minus."""
    pose: Pose | None = None
    """A pose of their own; left out, they do as the lifter does."""


class Figure(Shape):
    """Two or three moments of a repetition, drawn side by side."""

    holds: Held = "nothing"
    """What the hands are on."""
    moves: Literal["load", "hips", "knees", "feet", "head", "push", "nothing"] = "load"
    """The part whose path is drawn; `load` is what the hands are on. With `push` nothing moves:
    only the turn is drawn, and an arrow against a stop says that the hands push up."""
    angle: Joint | None = None
    """The joint whose angle is drawn at the turn."""
    things: Annotated[list[Beside], Field(max_length=6)] = Field(default_factory=list)
    """What stands around the lifter."""
    others: Annotated[list[Other], Field(max_length=2)] = Field(default_factory=list)
    """Who else is in the picture: a partner who holds, or bearers at the same frame."""
    start: Pose
    """Where a repetition begins."""
    turn: Pose
    """Where it turns round."""
    end: Pose | None = None
    """Where it ends, if not as it began."""
