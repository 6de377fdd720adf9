"""What is known of a pose while the rest of it is looked for."""

from dataclasses import replace

from strength_handbook.figures.arms import reaching_arm
from strength_handbook.figures.bag import bag_grip, far_grip
from strength_handbook.figures.bases import ACROSS, ARMS, BASES, Support
from strength_handbook.figures.body import BALL, STATURE, TORSO_HALF
from strength_handbook.figures.chain import Angles, Arm, Leg, Point, joints, moved
from strength_handbook.figures.flesh import LINE, resting_height
from strength_handbook.model.figure import Held, Pose

ONE_HAND = ("dumbbell",)
"""What the near hand holds alone; the far arm is as in the base pose, or as written."""
_TO_FLOOR = 6.0
"""How far an arm on the floor goes down from a shoulder that lies on its blade, degrees."""


class Solver:
    """Holds what is known of a pose, and makes shapes of values for the rest.

    Attributes:
        pose, held, base: what was written, what is in the hands, and the pose it begins from.
        knee: of the near leg.
        foot: where the near sole points, degrees.
        arms, arm, far_arm: where the arms are, by name and by angles.
        grip: where the hands have to be, if they have a place of their own.
        unsolved: which contact can't be had.
    """

    def __init__(self, pose: Pose, held: Held) -> None:
        self.pose, self.held = pose, held
        self.base = BASES[pose.pose]
        self.knee = self.base.knee if pose.knee is None else pose.knee
        self.foot = -(pose.heel or 0.0)
        self.arms = pose.arms or self.base.arms
        shoulder, elbow = ARMS[self.arms]
        across = ACROSS if self.arms == "folded" else 0.0
        self.arm = Arm(
            shoulder if pose.shoulder is None else pose.shoulder,
            elbow if pose.elbow is None else pose.elbow,
            pose.elbow_out,
            across,
        )
        far = Arm(*ARMS[self.base.arms]) if held in ONE_HAND else self.arm
        self.far_arm = replace(
            far,
            shoulder=far.shoulder if pose.far_shoulder is None else pose.far_shoulder,
            elbow=far.elbow if pose.far_elbow is None else pose.far_elbow,
        )
        self.grip: Point | None = None
        if pose.hands_at is not None and pose.hands is not None:
            self.grip = pose.hands_at / 100 / STATURE, pose.hands / STATURE
        self.unsolved = ""

    def hangs_in_front(self) -> bool:
        """Straight arms hold a bar against the front of the body."""
        return self.held in ("bar", "empty-bar") and self.arm.shoulder is None and self.grip is None

    def hangs_straight(self) -> bool:
        """The arms do nothing but hang, so the trunk has to bring the hands where they are."""
        return self.arm.shoulder is None and self.pose.elbow is None

    def shape(self, lean: float, hip: float, foot: float | None = None) -> Angles:
        """All angles; both legs and both arms alike."""
        sole = self.foot if foot is None else foot
        toes = -sole if sole > 0 else toes_flat(-sole)  # on the ball, also with the heel below it
        near = Leg(self.knee, hip, sole, toes if foot is None else 0.0)
        arm, far = self.arm, self.far_arm
        if self.arms == "on-floor" and self.pose.shoulder is None:
            arm = far = replace(arm, shoulder=90 + lean - _TO_FLOOR)
        return Angles(lean, self._head(lean), near, near, arm, far, self.pose.shrug / STATURE)

    def _head(self, lean: float) -> float:
        if self.pose.head is not None:
            return self.pose.head
        if self.base.support in (Support.BACK, Support.SHOULDERS):
            return -135.0 - lean / 2  # level; where the trunk slopes, the neck takes half of it
        return lean if self.base.support is Support.FRONT else 0.72 * lean

    def placed(self, shape: Angles) -> dict[str, Point]:
        """All joints, with what carries the body where it has to be."""
        points = joints(shape)
        name, at = self.anchor()
        x, y = points[name]
        low = resting_height(points, self.base.support)
        up = at[1] - y if low is None else (self.pose.ground or 0.0) / STATURE + LINE - low
        return moved(points, (at[0] + self.pose.ahead / STATURE - x, up))

    def anchor(self) -> tuple[str, Point]:
        """The joint that carries, and its place; what lies or kneels is as high as its flesh."""
        on = (self.pose.ground or 0.0) / STATURE
        match self.base.support:
            case Support.FOOT | Support.TOES:
                return "ball", (BALL, on)
            case Support.KNEE:
                return "knee", (0.0, on)
            case Support.HANDS:
                return "hand", (0.0, (self.pose.hands or 2.25) / STATURE)
            case Support.SHOULDERS | Support.BACK:
                return "shoulder", (0.0, on)
            case _:
                return "hip", (0.0, on + 0.95 * TORSO_HALF)

    def gripping(self, shape: Angles) -> Angles:
        """The same shape with the hands at their place, where they have one."""
        if self.base.support is Support.HANDS:
            return shape
        points = self.placed(shape)
        grip = self.grip
        if self.held == "bag":
            grip = bag_grip(points, self.pose) or grip
        if grip is None:
            return shape
        arm = reaching_arm(points["shoulder"], shape.lean, grip, self.arm.out)
        other = far_grip(points, self.pose) if self.held == "bag" else None
        if other is not None:
            return replace(
                shape, arm=arm, far_arm=reaching_arm(points["shoulder"], shape.lean, other)
            )
        free = self.pose.far_shoulder is not None or self.pose.far_elbow is not None
        free = free or self.held in ONE_HAND
        return replace(shape, arm=arm, far_arm=shape.far_arm if free else arm)


def toes_flat(heel: float) -> float:
    """How far toes are bent that stay flat under a lifted heel.

    >>> toes_flat(30), toes_flat(-15), toes_flat(150)
    (30, 0.0, 0.0)
    """
    return heel if 0 < heel <= 70 else 0.0
