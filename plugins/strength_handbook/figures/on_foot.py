"""A body on its feet: the angle that nobody wrote follows from balance, or from the hands."""

from collections.abc import Callable
from dataclasses import replace

from strength_handbook.figures.arms import straight_reach
from strength_handbook.figures.body import BALL, STATURE
from strength_handbook.figures.chain import Angles, balance, distance
from strength_handbook.figures.closeness import close_shoulder
from strength_handbook.figures.far_leg import with_far_leg
from strength_handbook.figures.roots import root
from strength_handbook.figures.solving import Solver

MIDDLE_OF_FOOT = 0.034
"""Ahead of the ankle: half of a foot whose heel is 0.042 behind it."""


def on_foot(known: Solver) -> Angles:
    """The shape of a body that stands on its near foot."""
    pose, base = known.pose, known.base
    ankle, hip, lean = pose.ankle, pose.hip, pose.lean
    written = sum(value is not None for value in (ankle, hip, lean))
    by_trunk = known.grip is None or known.hangs_straight()
    if pose.hands is not None and written == 0 and base.balanced and by_trunk:
        return _reaching(known)
    if written == 0:
        hip, lean = base.hip, base.lean
    if not base.balanced and written < 2:
        ankle = 88.0 if ankle is None else ankle
        if hip is None and lean is None:
            lean = base.lean
    return _of_two(known, ankle, hip, lean)


def _of_two(known: Solver, ankle: float | None, hip: float | None, lean: float | None) -> Angles:
    """The shape of two known angles, or of one and balance."""
    if hip is not None and lean is not None:
        return known.shape(lean, hip)
    if ankle is not None and (hip is not None or lean is not None):
        return _from_shin(known, ankle, hip, lean)
    if ankle is not None:
        return _balanced(
            known, lambda angle: _from_shin(known, ankle, angle, None), (40, 205), "hip"
        )
    return _balanced(known, lambda angle: _from_shin(known, angle, hip, lean), (48, 148), "ankle")


def _from_shin(known: Solver, ankle: float, hip: float | None, lean: float | None) -> Angles:
    """With the sole on the ground the shin's direction follows, and with the knee the thigh's.

    The foot points ahead (0) or down by the heel's lift; shin from knee to ankle.
    """
    thigh = known.foot + ankle - 180 + (180 - known.knee)
    if hip is None:
        hip = 90 - (lean or 0.0) - thigh
    return known.shape(90 - thigh - hip, hip)


def _balanced(
    known: Solver, make: Callable[[float], Angles], limits: tuple[float, float], what: str
) -> Angles:
    on_the_ball = abs(known.foot) > 5
    middle = BALL if on_the_ball else MIDDLE_OF_FOOT
    middle += known.pose.ahead / STATURE

    def off(angle: float) -> float:
        shape = known.gripping(with_far_leg(known, make(angle)))
        return balance(known.placed(shape), known.held) - middle

    found = root(off, *limits)
    if found is None:
        known.unsolved = what
        return make(sum(limits) / 2)
    return make(found)


def _reaching(known: Solver) -> Angles:
    """The trunk bends, in balance, until straight arms have the hands where they are written."""
    wanted = (known.pose.hands or 0.0) / STATURE

    def bent(lean: float) -> Angles:
        return _of_two(known, None, None, lean)

    def off(lean: float) -> float:
        known.unsolved = ""
        shape = bent(lean)
        if known.unsolved:  # too upright for these knees: the hands are too high as well
            return 1.0
        if known.grip is not None:
            return distance(known.placed(shape)["shoulder"], known.grip) - straight_reach()
        if known.hangs_in_front():
            shape = replace(shape, arm=replace(shape.arm, shoulder=close_shoulder(shape)))
        return known.placed(shape)["hand"][1] - wanted

    found = root(off, 0, 95)
    if found is None:
        known.unsolved = "hands"
        return bent(45)
    known.unsolved = ""
    return bent(found)
