"""What no body can do: joints beyond their range, contacts that miss, a fall, a bar in the body."""

from collections.abc import Iterator
from dataclasses import dataclass

from strength_handbook.figures.bars import bar_place
from strength_handbook.figures.bases import Support
from strength_handbook.figures.body import PLATE_RADIUS, STATURE
from strength_handbook.figures.chain import balance, distance
from strength_handbook.figures.closeness import clear_of_body
from strength_handbook.figures.flesh import parts
from strength_handbook.figures.posing import Posed
from strength_handbook.model.figure import RANGES, Figure

WITH_PLATES = ("bar", "trap-bar", "handles", "handle")
"""What has plates that would meet the floor."""
HELD_UP = ("wall", "strap", "rope", "cable", "pivot-bar")
"""What pulls or holds a body that would fall without it."""
MISS = 0.03
"""Metres by which a contact may miss."""
SPARE = 0.012
"""Statures by which the balance may be outside heel and toes: two centimetres."""
INSIDE = -0.006
"""Statures that a bar may press into a body: one centimetre of flesh."""


@dataclass(frozen=True, slots=True)
class Impossible:
    """Something about a pose that can't be.

    Attributes:
        key: the key of the pose that is to blame; empty for the pose as a whole.
        slug: a short name of the trouble.
        text: what is wrong, and what to write instead.
    """

    key: str
    slug: str
    text: str


def impossible(figure: Figure, one: Posed) -> Iterator[Impossible]:
    """Everything that is wrong with one moment of a figure."""
    if one.unsolved:
        yield _unsolved(one)
        return
    bent = list(_joints(one))
    yield from bent
    sunken = [] if bent else list(_sunken(one))  # where a joint is wrong, much of the body is, too
    yield from sunken or _plates_low(figure, one)
    yield from _contacts(one)
    yield from _falls(figure, one)
    yield from _bar_inside(figure, one)


def _cm(share: float) -> str:
    return f"{abs(share) * STATURE * 100:.0f} cm"


def _unsolved(one: Posed) -> Impossible:
    pose = one.pose
    match one.unsolved:
        case "hands":
            high = _cm(pose.hands / STATURE) if pose.hands else "the floor"
            text = f"the hands can't reach {high}; write a smaller 'knee', or hands higher up"
            return Impossible("hands", "out-of-reach", text)
        case "far foot":
            text = (
                "the foot of the far leg can't reach what it stands on; write a 'far-knee' nearer "
                "to 180 for a longer leg, or smaller for a shorter one"
            )
            return Impossible("far-knee", "out-of-reach", text)
        case "feet":
            text = "the feet can't reach where they rest; write a 'knee' nearer to 180, or 'hip'"
            return Impossible("knee", "out-of-reach", text)
        case _:
            key = next((key for key in ("ankle", "hip", "lean") if getattr(pose, key)), "")
            out = f"'{key}'" if key else "an angle"
            text = (
                f"no '{one.unsolved}' keeps this body over its foot; leave out {out}, or write a "
                "larger 'knee'"
            )
            return Impossible(key, "falls-over", text)


def _joints(one: Posed) -> Iterator[Impossible]:
    shape, pose = one.shape, one.pose
    found = {
        "ankle": one.ankle,
        "hip": shape.near.hip,
        "far-hip": shape.far.hip,
        "shoulder": shape.lean if shape.arm.shoulder is None else shape.arm.shoulder,
    }
    if one.base.support not in (Support.FOOT, Support.TOES):
        del found["ankle"]
    if shape.far.hip == shape.near.hip:
        del found["far-hip"]
    for key, angle in found.items():
        least, most = RANGES[key.removeprefix("far-")]
        if least - 0.5 <= angle <= most + 0.5:
            continue
        limit = least if angle < least else most
        said = getattr(pose, key.replace("-", "_")) is not None
        how = f"write {limit:g} at the {'least' if limit == least else 'most'}"
        if not said:
            how = f"it follows from the others: {how} as '{key}', or leave out another angle"
        yield Impossible(
            key if said else "", "joint-range", f"the {key.replace('-', ' ')} would be at "
            f"{angle:.0f}°, and a joint goes from {least} to {most}; {how}",
        )  # fmt: skip


_LOWEST = {"elbow": 0.015, "hand": 0.012, "head": 0.05, "ankle": 0.015, "far ankle": 0.015}
"""How high the middle of a part is that lies on the floor, statures; drawn by eye."""
SOFT = 0.015
"""Metres by which flesh may give way where it lies."""


def _sunken(one: Posed) -> Iterator[Impossible]:
    lows = [(name, low, SOFT) for name, low in parts(one.points)]
    lows += [(name, one.points[name][1] - least, MISS) for name, least in _LOWEST.items()]
    for name, low, may in lows:
        if low * STATURE < -may:
            keys = {"hand": "shoulder", "elbow": "shoulder", "head": "lean", "back": "lean"}
            text = f"the {name} is {_cm(low)} under the floor; change '{keys.get(name, 'knee')}'"
            yield Impossible("", "under-floor", text)
            return


def _plates_low(figure: Figure, one: Posed) -> Iterator[Impossible]:
    at = bar_place(one.points, figure.holds) or one.points["hand"]
    if figure.holds not in WITH_PLATES:
        return
    low = at[1] - PLATE_RADIUS
    if low * STATURE < -MISS:
        text = (
            f"the plates are {_cm(low)} under the floor; write 'hands: "
            f"{_cm(one.points['hand'][1] - low)}' and leave out 'hip' and 'lean'"
        )
        yield Impossible("hands" if one.pose.hands else "", "under-floor", text)


def _contacts(one: Posed) -> Iterator[Impossible]:
    wanted = one.pose.hands
    if wanted is not None:
        off = one.points["hand"][1] - wanted / STATURE
        if one.grip is not None and distance(one.points["hand"], one.grip) * STATURE > MISS:
            text = (
                f"the arms are too short by {_cm(distance(one.points['hand'], one.grip))} for this "
                "place; write other 'hands' or 'hands-at', or bring the trunk nearer"
            )
            yield Impossible("hands", "out-of-reach", text)
        elif abs(off) * STATURE > MISS:
            text = (
                f"the hands are at {_cm(one.points['hand'][1])}, not at {100 * wanted:.0f} cm; "
                "leave out 'hip' and 'lean', then the trunk bends until they are there"
            )
            yield Impossible("hands", "contact-misses", text)


def _falls(figure: Figure, one: Posed) -> Iterator[Impossible]:
    leant = any(thing.thing == "chest-rest" for thing in figure.things)
    if not one.base.balanced or leant or figure.holds in HELD_UP:
        return
    feet = [one.points[side + end][0] for side in ("", "far ") for end in ("heel", "toe")]
    middle = balance(one.points, figure.holds)
    if one.pose.heel:
        feet = [one.points["ball"][0] - 0.02, one.points["toe"][0]]
    feet += _seat(figure, one)
    off = max(min(feet) - SPARE - middle, middle - max(feet) - SPARE)
    if off > 0:
        way = "backwards" if middle < min(feet) else "forwards"
        text = (
            f"this body falls {way}: its balance is {_cm(off)} outside the feet; leave out 'ankle' "
            "or 'lean', and it finds its balance"
        )
        yield Impossible("", "falls-over", text)


def _seat(figure: Figure, one: Posed) -> list[float]:
    """Where a box, bench or chair under the hips carries, too."""
    hip = one.points["hip"]
    return [
        hip[0]
        for thing in figure.things
        if thing.thing in ("box", "bench", "chair")
        and abs(hip[1] - 0.07 - thing.height / STATURE) * STATURE < 2 * MISS
    ]


def _bar_inside(figure: Figure, one: Posed) -> Iterator[Impossible]:
    at = bar_place(one.points, figure.holds)
    if at is None or figure.holds not in ("bar", "empty-bar"):
        return
    apart = clear_of_body(one.points, at)
    if apart < INSIDE:
        text = (
            f"the bar goes {_cm(apart)} into the body; write a larger 'shoulder', or leave it out "
            "and the bar stays against the legs"
        )
        yield Impossible("shoulder" if one.pose.shoulder is not None else "", "bar-in-body", text)
