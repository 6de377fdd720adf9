"""A figure in plain words, for those who listen: worked out from the same angles."""

from collections.abc import Sequence

from strength_handbook.figures.body import STATURE
from strength_handbook.figures.chain import distance
from strength_handbook.figures.posing import Posed
from strength_handbook.figures.pulling import anchored
from strength_handbook.model.figure import Figure

HELD = {
    "bar": "a bar with plates",
    "yoke-bar": "a padded bar on the shoulders",
    "trap-bar": "a trap bar with plates",
    "empty-bar": "an empty bar",
    "empty-trap-bar": "an empty trap bar",
    "pivot-bar": "the free end of a bar",
    "dumbbells": "a dumbbell in each hand",
    "dumbbell": "a dumbbell",
    "bells": "a bell in each hand",
    "bell": "a bell",
    "handles": "a loaded handle in each hand",
    "handle": "a loaded handle in one hand",
    "plate": "a plate on the chest",
    "plates": "two plates pinched together",
    "bag": "a bag",
    "rope": "a rope",
    "cable": "a cable handle",
    "strap": "a strap",
    "pull-up-bar": "a fixed bar",
    "parallel-handles": "two parallel handles overhead",
    "towels": "two towels over a bar",
    "stick": "a light stick",
    "stretcher": "a frame with somebody on it",
    "wall": "fingertips on the wall",
}
ANCHORED = "a strap in each hand, fastened to a beam"
TOGETHER = 0.03
"""How near two hands on one weight are, statures."""
MOMENTS = ("Start", "Turn", "End")


def said(figure: Figure, poses: Sequence[Posed], name: str) -> str:
    """What the figure shows.

    Args:
        figure: what the coach wrote.
        poses: its moments, complete.
        name: the exercise's.
    """
    number = {1: "one drawing", 2: "two drawings", 3: "three drawings"}[len(poses)]
    held = _held(figure, poses)
    holds = f", with {held}" if held else ""
    lines = [f"{name} from the side in {number}{holds}."]
    if len(poses) == 1:
        return f"{lines[0]} The push, in which nothing moves: {_pose(poses[0])}."
    lines += [f"{when}: {_pose(one)}." for when, one in zip(MOMENTS, poses, strict=False)]
    return " ".join(lines)


def _held(figure: Figure, poses: Sequence[Posed]) -> str | None:
    if anchored(figure):
        return ANCHORED
    held = HELD.get(figure.holds)
    if figure.holds not in ("bell", "dumbbell"):
        return held
    together = all(distance(one.points["hand"], one.points["far hand"]) < TOGETHER for one in poses)
    return f"{held} in {'both hands' if together else 'one hand'}"


def _pose(one: Posed) -> str:
    shape = one.shape
    parts = [
        one.base.words,
        f"knee at {_tens(shape.near.knee)}°",
        f"hip at {_tens(min(shape.near.hip, 180))}°",
        _trunk(shape.lean),
    ]
    if abs(shape.far.knee - shape.near.knee) > 8:
        parts.insert(2, f"the other knee at {_tens(shape.far.knee)}°")
    if one.pose.shrug:
        parts.append("shoulders lifted towards the ears")
    hand = one.points["hand"][1] * STATURE * 100
    parts.append(f"hands {_tens(hand, 5)} cm above the floor")
    return ", ".join(parts)


def _trunk(lean: float) -> str:
    if abs(lean) < 8:
        return "trunk upright"
    if abs(abs(lean) - 90) < 8:
        return "trunk level"
    way = "forward" if lean > 0 else "back"
    return f"trunk leaning {_tens(abs(lean))}° {way}"


def _tens(value: float, step: int = 5) -> int:
    return round(value / step) * step
