"""A pose as a coach writes it, made complete: what is left out follows from support and balance."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import lru_cache

from strength_handbook.figures.bases import ARMS, BASES, PoseBase, Support
from strength_handbook.figures.body import ANKLE_HEIGHT, BALL, KNEE_HALF, STATURE, TORSO_HALF
from strength_handbook.figures.chain import Angles, Arm, Leg, Point, balance, joints, moved
from strength_handbook.figures.closeness import close_shoulder
from strength_handbook.figures.roots import root
from strength_handbook.model.figure import Held, Pose

MIDDLE_OF_FOOT = 0.034
"""Ahead of the ankle: half of a foot whose heel is 0.042 behind it."""
RELAXED_ANKLE = 110.0
"""Of a foot that carries nothing."""
LACES_DOWN = 172.0
"""Of a foot whose back lies on the floor, in line with the shin."""


@dataclass(frozen=True, slots=True)
class Posed:
    """A complete pose.

    Attributes:
        pose, base: what was written, and the pose it begins from.
        shape: all angles.
        points: all joints on the page: shares of stature, floor at nought.
        fixed: the joint at which the body is held in its place.
        unsolved: which contact can't be had, empty where all hold.
        ankle: of the near leg, degrees.
    """

    pose: Pose
    base: PoseBase
    shape: Angles
    points: dict[str, Point]
    fixed: str = "ball"
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
    return _Solver(pose, held).solve()


def _toes(heel: float) -> float:
    """How far toes are bent that stay flat under a lifted heel."""
    return heel if 0 < heel <= 70 else 0.0


class _Solver:
    """Holds what is known of a pose, and tries values for the rest."""

    def __init__(self, pose: Pose, held: Held) -> None:
        self.pose, self.held = pose, held
        self.base = BASES[pose.pose]
        self.knee = self.base.knee if pose.knee is None else pose.knee
        self.foot = -(pose.heel or 0.0)
        self.arms = pose.arms or self.base.arms
        shoulder, elbow = ARMS[self.arms]
        self.arm = Arm(
            shoulder if pose.shoulder is None else pose.shoulder,
            elbow if pose.elbow is None else pose.elbow,
        )
        self.far_arm = Arm(
            self.arm.shoulder if pose.far_shoulder is None else pose.far_shoulder,
            self.arm.elbow if pose.far_elbow is None else pose.far_elbow,
        )
        self.unsolved = ""

    def solve(self) -> Posed:
        shape = _BY_SUPPORT[self.base.support](self)
        shape = self.with_far_leg(shape)
        if self.hangs_in_front():
            angle = close_shoulder(shape)
            arm = replace(shape.arm, shoulder=angle)
            shape = replace(shape, arm=arm, far_arm=replace(shape.far_arm, shoulder=angle))
        points = self.placed(shape)
        return Posed(self.pose, self.base, shape, points, self.anchor()[0], self.unsolved)

    # --- pieces

    def hangs_in_front(self) -> bool:
        return self.held in ("bar", "empty-bar") and self.arm.shoulder is None

    def shape(self, lean: float, hip: float, foot: float | None = None) -> Angles:
        sole = self.foot if foot is None else foot
        near = Leg(self.knee, hip, sole, _toes(-sole) if foot is None else 0.0)
        arm, far = self.arm, self.far_arm
        if self.arms == "on-floor" and self.pose.shoulder is None:
            arm = far = replace(arm, shoulder=90 + lean)
        return Angles(lean, self.head(lean), near, near, arm, far)

    def head(self, lean: float) -> float:
        if self.pose.head is not None:
            return self.pose.head
        if self.base.support in (Support.BACK, Support.SHOULDERS):
            return -90.0
        return lean if self.base.support is Support.FRONT else 0.72 * lean

    def placed(self, shape: Angles) -> dict[str, Point]:
        """All joints, with what carries the body where it has to be."""
        points = joints(shape)
        name, at = self.anchor()
        x, y = points[name]
        return moved(points, (at[0] + self.pose.ahead / STATURE - x, at[1] - y))

    def anchor(self) -> tuple[str, Point]:
        on = (self.pose.ground or 0.0) / STATURE
        match self.base.support:
            case Support.FOOT | Support.TOES:
                return "ball", (BALL, on)
            case Support.KNEE:
                return "knee", (0.0, on + KNEE_HALF)
            case Support.HANDS:
                return "hand", (0.0, (self.pose.hands or 2.25) / STATURE)
            case Support.SHOULDERS | Support.BACK:
                return "shoulder", (0.0, on + 1.15 * TORSO_HALF)
            case _:
                return "hip", (0.0, on + 0.95 * TORSO_HALF)

    # --- supports

    def on_foot(self) -> Angles:
        pose, base = self.pose, self.base
        ankle, hip, lean = pose.ankle, pose.hip, pose.lean
        written = sum(value is not None for value in (ankle, hip, lean))
        if pose.hands is not None and written == 0 and base.balanced:
            return self.reaching()
        if written == 0:
            hip, lean = base.hip, base.lean
        if not base.balanced and written < 2:
            ankle = 88.0 if ankle is None else ankle
            if hip is None and lean is None:
                lean = base.lean
        return self.of_two(ankle, hip, lean)

    def of_two(self, ankle: float | None, hip: float | None, lean: float | None) -> Angles:
        """The shape of two known angles, or of one and balance."""
        if hip is not None and lean is not None:
            return self.shape(lean, hip)
        if ankle is not None and (hip is not None or lean is not None):
            return self.from_shin(ankle, hip, lean)
        if ankle is not None:
            return self.balanced(lambda angle: self.from_shin(ankle, angle, None), (40, 205), "hip")
        return self.balanced(lambda angle: self.from_shin(angle, hip, lean), (48, 148), "ankle")

    def from_shin(self, ankle: float, hip: float | None, lean: float | None) -> Angles:
        """With the sole on the ground the shin's direction follows, and with the knee the thigh's.

        The foot points ahead (0) or down by the heel's lift; shin from knee to ankle.
        """
        thigh = self.foot + ankle - 180 + (180 - self.knee)
        if hip is None:
            hip = 90 - (lean or 0.0) - thigh
        return self.shape(90 - thigh - hip, hip)

    def balanced(
        self, make: Callable[[float], Angles], limits: tuple[float, float], what: str
    ) -> Angles:
        middle = BALL if self.foot < -5 else MIDDLE_OF_FOOT
        middle += self.pose.ahead / STATURE

        def off(angle: float) -> float:
            shape = self.with_far_leg(make(angle))
            return balance(self.placed(shape), self.held) - middle

        found = root(off, *limits)
        if found is None:
            self.unsolved = what
            return make(sum(limits) / 2)
        return make(found)

    def reaching(self) -> Angles:
        """The trunk bends, in balance, until the hands are as low as written."""
        wanted = (self.pose.hands or 0.0) / STATURE

        def bent(lean: float) -> Angles:
            return self.of_two(None, None, lean)

        def off(lean: float) -> float:
            shape = bent(lean)
            if self.hangs_in_front():
                shape = replace(shape, arm=replace(shape.arm, shoulder=close_shoulder(shape)))
            return self.placed(shape)["hand"][1] - wanted

        found = root(off, 0, 95)
        if found is None:
            self.unsolved = "hands"
            return bent(45)
        self.unsolved = ""
        return bent(found)

    def kneeling(self) -> Angles:
        hip = self.base.hip if self.pose.hip is None else self.pose.hip
        assert hip is not None  # noqa: S101  # kneeling has one
        thigh = 360 - self.knee  # from hip to knee, the shin lies level behind the knee
        return self.shape(90 - thigh - hip + 360 * (90 - thigh - hip < -180), hip, foot=188)

    def by_lean(self) -> Angles:
        pose, base = self.pose, self.base
        lean = pose.lean if pose.lean is not None else base.lean
        hip = pose.hip if pose.hip is not None else base.hip
        if lean is None and hip is not None:
            return self.leaned(hip)
        lean = lean or 0.0
        if hip is not None:
            return self.free_foot(lean, hip)
        wanted = (pose.feet or 0.0) / STATURE
        flat = not pose.feet

        def off(angle: float) -> float:
            points = self.placed(self.shape(lean, angle))
            return points["ankle"][1] - ANKLE_HEIGHT if flat else points["heel"][1] - wanted

        found = root(off, 200, 40)
        if found is None:
            self.unsolved = "feet"
            found = 90.0
        return self.shape(lean, found)

    def free_foot(self, lean: float, hip: float) -> Angles:
        loose = LACES_DOWN if self.base.support is Support.FRONT else RELAXED_ANKLE
        ankle = loose if self.pose.ankle is None else self.pose.ankle
        shin = 90 - lean - hip - (180 - self.knee)
        shape = self.shape(lean, hip, foot=shin + 180 - ankle)
        if self.base.support is Support.TOES:
            near = replace(shape.near, toes=-shape.near.foot)
            return replace(shape, near=near, far=near)
        return shape

    def leaned(self, hip: float) -> Angles:
        """Shoulders and heels carry: the trunk turns until the heels are where they rest."""
        name = "hand" if self.base.support is Support.TOES else "heel"
        wanted = (self.pose.hands or 0.0) if name == "hand" else (self.pose.feet or 0.0)

        def off(lean: float) -> float:
            return self.placed(self.free_foot(lean, hip))[name][1] - wanted / STATURE

        limits = (55.0, 110.0) if name == "hand" else (-100.0, -150.0)
        found = root(off, *limits)
        if found is None:
            self.unsolved = "feet" if name == "heel" else "hands"
            found = sum(limits) / 2
        return self.free_foot(found, hip)

    # --- the far leg

    def with_far_leg(self, shape: Angles) -> Angles:
        pose, base = self.pose, self.base
        knee = pose.far_knee if pose.far_knee is not None else base.far_knee
        if knee is None and pose.far_hip is None and pose.far_foot is None:
            return shape
        knee = shape.near.knee if knee is None else knee
        heel = base.far_heel if pose.far_heel is None else pose.far_heel
        if pose.far_hip is not None:
            shin = 90 - shape.lean - pose.far_hip - (180 - knee)
            foot = -heel if pose.far_heel is not None else shin + 180 - 100
            return replace(shape, far=Leg(knee, pose.far_hip, foot))
        on = (pose.ground or 0.0) if pose.far_foot is None else pose.far_foot
        ahead = heel < 0
        level = "heel" if ahead else "toe" if heel > 90 else "ball"

        def off(hip: float) -> float:
            points = self.placed(replace(shape, far=Leg(knee, hip, -heel, _toes(heel))))
            return points["far " + level][1] - on / STATURE

        found = root(off, 60, 210) if ahead else root(off, 210, 60)
        if found is None:
            self.unsolved = self.unsolved or "far foot"
            found = 180.0
        return replace(shape, far=Leg(knee, found, -heel, _toes(heel)))


_BY_SUPPORT: dict[Support, Callable[[_Solver], Angles]] = {
    Support.FOOT: _Solver.on_foot,
    Support.KNEE: _Solver.kneeling,
    Support.SEAT: _Solver.by_lean,
    Support.BACK: _Solver.by_lean,
    Support.FRONT: _Solver.by_lean,
    Support.HANDS: _Solver.by_lean,
    Support.SHOULDERS: _Solver.by_lean,
    Support.TOES: _Solver.by_lean,
}
