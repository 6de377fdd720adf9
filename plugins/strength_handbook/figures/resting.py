"""A body that kneels, sits, lies or hangs: trunk and hip follow from where the feet rest."""

from dataclasses import replace

from strength_handbook.figures.bases import Support
from strength_handbook.figures.body import ANKLE_HEIGHT, STATURE
from strength_handbook.figures.chain import Angles
from strength_handbook.figures.roots import root
from strength_handbook.figures.solving import Solver

RELAXED_ANKLE = 110.0
"""Of a foot that carries nothing."""
LACES_DOWN = 172.0
"""Of a foot whose back lies on the floor, in line with the shin."""


def kneeling(known: Solver) -> Angles:
    """On the knees, shins level behind them."""
    hip = known.base.hip if known.pose.hip is None else known.pose.hip
    assert hip is not None  # noqa: S101  # kneeling has one
    thigh = 360 - known.knee  # from hip to knee, the shin lies level behind the knee
    return known.shape(90 - thigh - hip + 360 * (90 - thigh - hip < -180), hip, foot=188)


def by_lean(known: Solver) -> Angles:
    """Of trunk and hip one is written, or both; the other follows from the feet."""
    pose, base = known.pose, known.base
    lean = pose.lean if pose.lean is not None else base.lean
    hip = pose.hip if pose.hip is not None else base.hip
    if lean is None and hip is not None:
        return _leaned(known, hip)
    lean = lean or 0.0
    if hip is not None:
        return _free_foot(known, lean, hip)
    wanted = (pose.feet or 0.0) / STATURE
    flat = not pose.feet

    def shape(angle: float) -> Angles:
        return known.shape(lean, angle) if flat else _free_foot(known, lean, angle)

    def off(angle: float) -> float:
        points = known.placed(shape(angle))
        return points["ankle"][1] - ANKLE_HEIGHT if flat else points["heel"][1] - wanted

    found = root(off, 200, 40)
    if found is None:
        known.unsolved = "feet"
        found = 90.0
    return shape(found)


def _free_foot(known: Solver, lean: float, hip: float) -> Angles:
    support = known.base.support
    loose = LACES_DOWN if support is Support.FRONT else RELAXED_ANKLE
    ankle = loose if known.pose.ankle is None else known.pose.ankle
    shin = 90 - lean - hip - (180 - known.knee)
    shape = known.shape(lean, hip, foot=shin + 180 - ankle)
    if support is Support.TOES:
        near = replace(shape.near, toes=-shape.near.foot)
        return replace(shape, near=near, far=near)
    return shape


def _leaned(known: Solver, hip: float) -> Angles:
    """Shoulders and heels carry: the trunk turns until the heels are where they rest."""
    name = "hand" if known.base.support is Support.TOES else "heel"
    wanted = (known.pose.hands or 0.0) if name == "hand" else (known.pose.feet or 0.0)

    def off(lean: float) -> float:
        return known.placed(_free_foot(known, lean, hip))[name][1] - wanted / STATURE

    limits = (55.0, 110.0) if name == "hand" else (-100.0, -150.0)
    found = root(off, *limits)
    if found is None:
        known.unsolved = "feet" if name == "heel" else "hands"
        found = sum(limits) / 2
    return _free_foot(known, found, hip)
