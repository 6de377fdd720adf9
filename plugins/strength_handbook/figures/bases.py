"""The named poses: what holds the body up, and the angles from which a coach begins."""

from dataclasses import dataclass
from enum import StrEnum

from strength_handbook.model.figure import Arms, BasePose


class Support(StrEnum):
    """What carries the body; it stays where it is."""

    FOOT = "foot"
    KNEE = "knee"
    SEAT = "seat"
    BACK = "back"
    SHOULDERS = "shoulders"
    FRONT = "front"
    HANDS = "hands"
    TOES = "toes"


@dataclass(frozen=True, slots=True)
class PoseBase:
    """A named pose.

    Attributes:
        words: how alternative text calls it.
        support: what carries it.
        knee, hip: degrees, 180 is straight; hip None is found by balance.
        lean: the trunk from upright, degrees forward; None where hip and shin say it.
        arms: where the arms are.
        far_knee: knee of the far leg; None is as the near one.
        far_heel: heel of the far leg off the ground, degrees at the ball of the foot.
        balanced: the body has to be over its foot.
    """

    words: str
    support: Support
    knee: float = 176.0
    hip: float | None = 176.0
    lean: float | None = None
    arms: Arms = "hanging"
    far_knee: float | None = None
    far_heel: float = 0.0
    balanced: bool = False


BASES: dict[BasePose, PoseBase] = {
    "standing": PoseBase("standing", Support.FOOT, knee=175, hip=None, lean=1, balanced=True),
    "squat": PoseBase("in a squat", Support.FOOT, knee=80, hip=70, balanced=True),
    "hinge": PoseBase("hips back, trunk forward", Support.FOOT, knee=152, hip=85, balanced=True),
    "walking": PoseBase(
        "walking", Support.FOOT, knee=168, hip=None, lean=3, far_knee=150, far_heel=35
    ),
    "split-stance": PoseBase(
        "in a long stride", Support.FOOT, knee=150, hip=None, lean=5, far_knee=150, far_heel=50
    ),
    "kneeling": PoseBase("kneeling tall", Support.KNEE, knee=90, hip=178),
    "hanging": PoseBase("hanging", Support.HANDS, knee=172, hip=176, lean=0, arms="overhead"),
    "seated": PoseBase("sitting", Support.SEAT, knee=90, hip=None, lean=0),
    "on-back": PoseBase(
        "lying on the back", Support.BACK, knee=80, hip=None, lean=-90, arms="on-floor"
    ),
    "bridge": PoseBase(
        "shoulders on the floor, hips lifted", Support.SHOULDERS, knee=95, hip=180, arms="on-floor"
    ),
    "face-down": PoseBase(
        "lying face down", Support.FRONT, knee=180, hip=180, lean=90, arms="overhead"
    ),
    "on-slanted-bench": PoseBase("on the slanted bench", Support.SEAT, knee=178, hip=178, lean=50),
    "plank": PoseBase(
        "in one line on hands and toes", Support.TOES, knee=180, hip=180, arms="in-front"
    ),
}
"""All of them, by the name a coach writes."""

ARMS: dict[Arms, tuple[float | None, float]] = {
    "hanging": (None, 178),
    "in-front": (90, 172),
    "racked": (16, 25),
    "overhead": (178, 176),
    "at-chest": (12, 42),
    "on-floor": (0, 176),
    "folded": (30, 28),
    "at-handles": (17, 42),
}
"""Shoulder and elbow; no shoulder hangs from it by its weight."""
ACROSS = 60.0
"""How far folded forearms point across the chest, away from the onlooker; drawn by eye."""
