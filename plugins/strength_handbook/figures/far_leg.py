"""The leg that is farther from the onlooker, where it does something else than the near one."""

from dataclasses import replace

from strength_handbook.figures.body import STATURE
from strength_handbook.figures.chain import Angles, Leg
from strength_handbook.figures.roots import root
from strength_handbook.figures.solving import Solver, toes_flat

HANGING_ANKLE = 100.0
"""Sole to shin of a foot in the air."""


def with_far_leg(known: Solver, shape: Angles) -> Angles:
    """The shape with its far leg: by its own angles, or so that its foot reaches the ground."""
    pose, base = known.pose, known.base
    knee = pose.far_knee if pose.far_knee is not None else base.far_knee
    if knee is None and pose.far_hip is None and pose.far_foot is None:
        return shape
    knee = shape.near.knee if knee is None else knee
    heel = base.far_heel if pose.far_heel is None else pose.far_heel
    if pose.far_hip is not None:
        shin = 90 - shape.lean - pose.far_hip - (180 - knee)
        foot = -heel if pose.far_heel is not None else shin + 180 - HANGING_ANKLE
        return replace(shape, far=Leg(knee, pose.far_hip, foot))
    on = (pose.ground or 0.0) if pose.far_foot is None else pose.far_foot
    ahead = heel < 0
    level = "heel" if ahead else "toe" if heel > 90 else "ball"

    def off(hip: float) -> float:
        points = known.placed(replace(shape, far=Leg(knee, hip, -heel, toes_flat(heel))))
        return points["far " + level][1] - on / STATURE

    found = root(off, 60, 210) if ahead else root(off, 210, 60)
    if found is None:
        known.unsolved = known.unsolved or "far foot"
        found = 180.0
    return replace(shape, far=Leg(knee, found, -heel, toes_flat(heel)))
