"""A body in a pose as SVG: far limbs first, then trunk, head and near leg, then the near arm."""

from strength_handbook.figures.chain import Point, Points
from strength_handbook.figures.outlines import (
    FOREARM,
    SHANK,
    THIGH,
    TRUNK,
    UPPER_ARM,
    foot,
    head,
    limb,
    neck,
    place,
)

SHIFT: Point = (0.012, 0.010)
"""How far the far limbs are moved, so that they show behind the near ones; statures."""
FIST = 10.5
"""Radius of a closed hand, units."""


def behind(points: Points) -> str:
    """The far arm and leg."""
    far = {
        name.removeprefix("far "): (x + SHIFT[0], y + SHIFT[1])
        for name, (x, y) in points.items()
        if name.startswith("far ")
    }
    far["ankle"] = points["far ankle"][0] + SHIFT[0], points["far ankle"][1]
    for name in ("heel", "ball", "toe"):
        far[name] = points["far " + name][0] + SHIFT[0], points["far " + name][1]
    far["hip"], far["shoulder"] = points["hip"], points["shoulder"]
    return f'<g class="far">{near_arm(far)}{_leg(far)}</g>'


def trunk_and_leg(points: Points) -> str:
    """Trunk, head and near leg."""
    trunk = limb(points["hip"], points["shoulder"], TRUNK, side=-1)
    return (
        f'<path d="{neck(points["shoulder"], points["neck"])}"/>'
        f'<path class="hd" d="{head(points["head"], points["neck"])}"/>'
        f'<path class="top" d="{trunk}"/>{_leg(points)}'
    )


def _leg(points: Points) -> str:
    hip, knee, ankle = points["hip"], points["knee"], points["ankle"]
    return (
        f'<path d="{limb(knee, ankle, SHANK)}"/>'
        f'<path class="shoe" d="{foot(points["heel"], points["ball"], points["toe"], ankle)}"/>'
        f'<path class="legs" d="{limb(hip, knee, THIGH)}"/>'
    )


def near_arm(points: Points) -> str:
    """The near arm with its closed hand."""
    return forearm(points) + upper_arm(points)


def forearm(points: Points) -> str:
    """The near forearm with its closed hand."""
    x, y = place(points["hand"])
    return (
        f'<path d="{limb(points["elbow"], points["wrist"], FOREARM)}"/>'
        f'<circle class="hand" cx="{x:.0f}" cy="{y:.0f}" r="{FIST:g}"/>'
    )


def upper_arm(points: Points) -> str:
    """The near upper arm."""
    return f'<path class="arm" d="{limb(points["shoulder"], points["elbow"], UPPER_ARM)}"/>'
