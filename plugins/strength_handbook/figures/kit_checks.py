"""What no kit can do: a bar that misses its pins, a foot inside a box, a strap that stretches."""

from collections.abc import Iterator, Sequence
from itertools import pairwise

from strength_handbook.figures.bars import HUB, bar_place
from strength_handbook.figures.bases import Support
from strength_handbook.figures.body import STATURE
from strength_handbook.figures.chain import Point, distance
from strength_handbook.figures.checks import MISS, Impossible
from strength_handbook.figures.outlines import SCALE, middle_of
from strength_handbook.figures.pads import PADS, lean_of
from strength_handbook.figures.posing import Posed
from strength_handbook.figures.pulling import ENDS, anchored, cord
from strength_handbook.figures.things import PIN_HALF, edges
from strength_handbook.model.figure import Figure

TOUCH = HUB + PIN_HALF / SCALE
"""From the middle of a bar to the middle of a pin that it touches, as both are drawn; statures."""
NEAR = 0.015
"""Metres between bar and pin that still look like touching."""
SOLID = ("box", "bench", "chair")
CUT = 0.02
"""Metres by which a shin or a shoe may cut a corner that nobody sees at this size."""
RESTS = ("thigh", "far thigh", "hip", "far hip", "hand")
"""What may sink a little into a thing, as it rests there."""
STEPS = 8
"""Places looked at between two joints."""


def out_of_place(figure: Figure, poses: Sequence[Posed]) -> Iterator[tuple[int, Impossible]]:
    """Everything wrong between bodies and what stands around them, with the number of the moment.

    Args:
        figure: what the coach wrote.
        poses: its moments, complete.
    """
    for number, one in enumerate(poses):
        for wrong in _inside(figure, one):
            yield number, wrong
    yield from ((1, wrong) for wrong in _pins(figure, poses[1]))
    yield from ((1, wrong) for wrong in _slides(poses[0], poses[1]))
    yield from _pads(figure, poses)
    yield from _lines(figure, poses)


_LEGS = (
    ("thigh", "hip", "knee", 0.0),
    ("shin", "knee", "ankle", 0.020),
    ("sole", "heel", "ball", 0.0),
    ("toes", "ball", "toe", 0.0),
)
"""Parts from joint to joint, and how near their middle may come to a wall, statures: as thick as
they are drawn at their thinnest; hips and soles lie on a thing."""


def _inside(figure: Figure, one: Posed) -> Iterator[Impossible]:
    for thing in figure.things:
        if thing.thing not in SOLID:
            continue
        left, right = edges(thing)
        top = thing.height / STATURE
        for name, (x, y), half in _leg_points(one):
            deep = min(x - left + half, right - x + half, top - y) * STATURE
            if deep > (MISS if name in RESTS else CUT):
                text = (
                    f"the {name} is {100 * deep:.0f} cm inside the {thing.thing}; move the "
                    f"{thing.thing} by its 'at', or write another 'ground'"
                )
                yield Impossible("", "inside-thing", text)
                return


def _leg_points(one: Posed) -> Iterator[tuple[str, Point, float]]:
    """Places all along both legs, by what they belong to, and a hand."""
    for side in ("", "far "):
        for name, upper, lower, half in _LEGS:
            start, end = one.points.get(side + upper, one.points[upper]), one.points[side + lower]
            for step in range(STEPS + 1):
                part = {0: upper, STEPS: lower}.get(step, name)
                yield side + part, middle_of(start, end, step / STEPS), half
    yield "hand", one.points["hand"], 0.0


def _pins(figure: Figure, one: Posed) -> Iterator[Impossible]:
    """A bar that is pushed touches pins from below."""
    pins = [thing.height for thing in figure.things if thing.thing == "pins"]
    at = bar_place(one.points, figure.holds)
    if figure.moves != "push" or not pins or at is None:
        return
    high = at[1] * STATURE
    off = min((pin - TOUCH * STATURE - high for pin in pins), key=abs)
    if abs(off) > NEAR:
        wanted = (one.pose.hands or high) + off
        text = (
            f"the bar is {100 * abs(off):.0f} cm {'below' if off > 0 else 'above'} the place where "
            f"it touches a pin; write 'hands: {100 * wanted:.0f} cm', or move the pins"
        )
        yield Impossible("hands" if one.pose.hands else "", "pins-not-met", text)


def _slides(start: Posed, turn: Posed) -> Iterator[Impossible]:
    """Heels that rest on something stay on their place."""
    lying = (Support.BACK, Support.SHOULDERS)
    if start.base.support not in lying or turn.base.support not in lying:
        return
    off = (turn.points["heel"][0] - start.points["heel"][0]) * STATURE
    if turn.pose.feet and abs(off) > MISS:
        text = (
            f"the heels slide by {100 * abs(off):.0f} cm from the start; write a "
            f"{'smaller' if off > 0 else 'larger'} 'knee' here, or change that of the start"
        )
        yield Impossible("knee" if turn.pose.knee else "", "heels-slide", text)


def _pads(figure: Figure, poses: Sequence[Posed]) -> Iterator[tuple[int, Impossible]]:
    """A trunk lies on its pad, and stays there."""
    for thing in figure.things:
        if thing.thing not in PADS:
            continue
        least, most = PADS[thing.thing]
        for number, one in enumerate(poses):
            lean = lean_of(one.points)
            if not least <= lean <= most:
                text = (
                    f"a trunk that leans {lean:.0f}° is not on its {thing.thing}; write a 'lean' "
                    f"from {least:g} to {most:g}"
                )
                yield number, Impossible("lean" if one.pose.lean else "", "off-pad", text)
                return
            off = max(distance(one.points[name], poses[0].points[name]) for name in ("hip", "neck"))
            if off * STATURE > MISS:
                text = (
                    f"the trunk moves {100 * off * STATURE:.0f} cm from the start, and its "
                    f"{thing.thing} stands fast; write the same legs and 'lean' as there"
                )
                yield number, Impossible("lean" if one.pose.lean else "", "off-pad", text)
                return


def _lines(figure: Figure, poses: Sequence[Posed]) -> Iterator[tuple[int, Impossible]]:
    """A line is fastened to something, and a strap from an anchor keeps its length."""
    if figure.holds not in ENDS:
        return
    lengths = [sum(distance(*ends) for ends in pairwise(cord(figure, one))) for one in poses]
    if not lengths[0]:
        text = (
            f"the {figure.holds} leads nowhere; write what it is fastened to under 'things', as "
            f"'thing: {ENDS[figure.holds][-1]}'"
        )
        yield 0, Impossible("", "line-without-end", text)
    for number, length in enumerate(lengths):
        off = (length - lengths[0]) * STATURE
        if anchored(figure) and abs(off) > MISS:
            text = (
                f"the straps would be {100 * abs(off):.0f} cm {'longer' if off > 0 else 'shorter'} "
                "than at the start; write other 'hands' and 'hands-at', or another 'ankle'"
            )
            yield (
                number,
                Impossible("hands" if poses[number].pose.hands else "", "strap-length", text),
            )
