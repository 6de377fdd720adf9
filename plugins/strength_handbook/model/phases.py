"""What the phases of a repetition are called: not everything that is lowered goes down.

The words are those of a coach at the lift: common practice, no source.
"""

from dataclasses import dataclass
from typing import Literal, TypeAlias

from strength_handbook.model.loading import Loading, OnCarrier, OnMachine, OnStack, StrapRow
from strength_handbook.model.words import Pattern

Lifts: TypeAlias = Literal["up", "pull", "push", "bend", "straighten", "weight"]
"""The way a lift goes, which its lowering comes back."""


@dataclass(frozen=True, slots=True)
class Phases:
    """The words of one way to lift.

    Attributes:
        lowering: what so many seconds of lowering are.
        lifting: what so many seconds of lifting are.
        fast: a lift as fast as possible.
        top: where the second pause is.
        beats: the same for a clock, by the kinds of `phone/train.py`.
    """

    lowering: str
    lifting: str
    fast: str
    top: str
    beats: tuple[tuple[str, str], ...]


def _phases(lowering: str, lifting: str, fast: str, top: str, *beats: str) -> Phases:
    down, up = beats
    named = (("down", down), ("up", up), ("fast", f"{up}, fast"))
    return Phases(lowering, lifting, fast, top, named)


PHASES: dict[Lifts, Phases] = {
    "up": _phases("down", "up", "up fast", "at the top", "Down", "Up"),
    "pull": _phases(
        "going back", "pulling", "pull fast", "at the end of the pull", "Back", "Pull"
    ),
    "push": _phases(
        "bending the arms", "pushing", "push fast", "with long arms", "Bend the arms", "Push"
    ),
    "bend": _phases("straightening", "bending", "bend fast", "bent", "Straighten", "Bend"),
    "straighten": _phases(
        "bending", "straightening", "straighten fast", "straight", "Bend", "Straighten"
    ),
    "weight": _phases(
        "lowering the weight", "lifting the weight", "lift fast", "with the weight up",
        "Lower", "Lift",
    ),
}  # fmt: skip

_BY_PATTERN: dict[Pattern, Lifts] = {
    Pattern.HORIZONTAL_PULL: "pull",
    Pattern.VERTICAL_PULL: "pull",
    Pattern.HORIZONTAL_PUSH: "push",
    Pattern.ISOLATED: "weight",
    Pattern.TRUNK: "weight",
}


def usual_way(pattern: Pattern, load: Loading) -> Lifts:
    """The way a lift goes where its file doesn't say: up, but for cables, machines and straps.

    >>> from strength_handbook.model.loading import OnStack, StrapRow
    >>> usual_way(Pattern.VERTICAL_PULL, OnStack(kind="stack", stack="cable"))
    'pull'
    >>> usual_way(Pattern.HINGE, OnStack(kind="stack", stack="cable"))
    'up'
    """
    match load:
        case OnMachine():
            return _BY_PATTERN.get(pattern, "weight")
        case OnStack() | OnCarrier():
            return _BY_PATTERN.get(pattern, "up")
        case StrapRow():
            return "pull"
        case _:
            return "up"
