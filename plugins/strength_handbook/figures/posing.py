"""A pose as a coach writes it, made complete: what is left out follows from support and balance."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import lru_cache

from strength_handbook.figures.bases import PoseBase, Support
from strength_handbook.figures.chain import Angles, Point
from strength_handbook.figures.closeness import close_shoulder
from strength_handbook.figures.far_leg import with_far_leg
from strength_handbook.figures.on_foot import on_foot
from strength_handbook.figures.resting import by_lean, kneeling
from strength_handbook.figures.solving import Solver
from strength_handbook.model.figure import Held, Pose


@dataclass(frozen=True, slots=True)
class Posed:
    """A complete pose.

    Attributes:
        pose, base: what was written, and the pose it begins from.
        shape: all angles.
        points: all joints on the page: shares of stature, floor at nought.
        fixed: the joint at which the body is held in its place.
        grip: where the hands had to be, if they have a place of their own.
        unsolved: which contact can't be had, empty where all hold.
        ankle: of the near leg, degrees.
    """

    pose: Pose
    base: PoseBase
    shape: Angles
    points: dict[str, Point]
    fixed: str = "ball"
    grip: Point | None = None
    unsolved: str = ""

    @property
    def ankle(self) -> float:
        """Sole to shin of the near leg, degrees."""
        leg = self.shape.near
        shin = 90 - self.shape.lean - leg.hip - (180 - leg.knee)
        return (shin + 180 - leg.foot + 180) % 360 - 180


@lru_cache(maxsize=2048)  # a save changes one file, and the figures of all others stay
def posed(pose: Pose, held: Held) -> Posed:
    """The body in a pose; where a contact can't be had, the nearest drawable one and its name."""
    known = Solver(pose, held)
    shape = with_far_leg(known, _BY_SUPPORT[known.base.support](known))
    if known.hangs_in_front():
        angle = close_shoulder(shape)
        arm = replace(shape.arm, shoulder=angle)
        shape = replace(shape, arm=arm, far_arm=replace(shape.far_arm, shoulder=angle))
    shape = known.gripping(shape)
    fixed = known.anchor()[0]
    points = known.placed(shape)
    return Posed(pose, known.base, shape, points, fixed, known.grip, known.unsolved)


_BY_SUPPORT: dict[Support, Callable[[Solver], Angles]] = {
    Support.FOOT: on_foot,
    Support.KNEE: kneeling,
    Support.SEAT: by_lean,
    Support.BACK: by_lean,
    Support.FRONT: by_lean,
    Support.HANDS: by_lean,
    Support.SHOULDERS: by_lean,
    Support.TOES: by_lean,
}
