"""In which order plates and bands come off a bar in the rack, and go on.

Bands come off first, while both sleeves still carry their plates, and go on last. Plates come off
one at a time, changing sides. That alone is not enough on narrow uprights: the last plate against
an empty sleeve is often the heaviest one, so every step below the safety factor asks for a partner.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Literal

from strength_handbook.calc.barbell import BarShape
from strength_handbook.calc.registry import Evidence, formula
from strength_handbook.calc.tipping import (
    OFF_CENTRE,
    SAFETY_FACTOR,
    STATICS,
    SUBJECT,
    Side,
    off_centre_margin,
)

SideName = Literal["left", "right"]
ItemName = Literal["plate", "band"]

_SIDES: tuple[SideName, SideName] = ("left", "right")


@dataclass(frozen=True, slots=True)
class PlateMove:
    """One thing taken off (or put on): the outermost plate or the last band of a side."""

    side: SideName
    item: ItemName


@dataclass(frozen=True, slots=True)
class UnloadingStep:
    """One move and what it leaves.

    Attributes:
        move: what is taken off or put on.
        load: kg of the plate, or kgf of the band.
        margin: against tipping after the move, bar off-centre to the worse side.
        hold: a partner holds the bar, or handles the other side's piece at the same time: the
            margin is below the safety factor before or after the move.
    """

    move: PlateMove
    load: float
    margin: float
    hold: bool


@dataclass(frozen=True, slots=True)
class Order:
    """A whole sequence of moves.

    Attributes:
        steps: in order.
        lowest_margin: over all states, first and last included; below 1 the bar tips.
        safe_alone: no step needs a partner.
    """

    steps: tuple[UnloadingStep, ...]
    lowest_margin: float
    safe_alone: bool


def _count(side: Side, item: ItemName) -> int:
    return len(side.plates) if item == "plate" else len(side.bands)


def _take_off(left: Side, right: Side, move: PlateMove) -> tuple[Side, Side, float]:
    """Both sides without the thing, and its load."""
    side = left if move.side == "left" else right
    if not _count(side, move.item):
        raise ValueError(f"there is no {move.item} on the {move.side} side to take off")
    if move.item == "plate":
        load, side = side.plates[-1].mass, replace(side, plates=side.plates[:-1])
    else:
        load, side = side.bands[-1].pull, replace(side, bands=side.bands[:-1])
    return (side, right, load) if move.side == "left" else (left, side, load)


def _order(
    moves: Sequence[PlateMove], loads: Sequence[float], margins: Sequence[float], factor: float
) -> Order:
    """Steps from the margins of all states, the one before the first move included."""
    steps = tuple(
        UnloadingStep(move, load, margins[i + 1], min(margins[i], margins[i + 1]) < factor)
        for i, (move, load) in enumerate(zip(moves, loads, strict=True))
    )
    lowest = min(margins)
    return Order(steps, lowest, lowest >= factor)


@formula(
    subject=SUBJECT,
    title="Margins of an unloading or loading order",
    equation="margin after every move, with the bar off-centre to the worse side; the lowest "
    "one counts",
    inputs={
        "bar": "mass, kg, and lengths of the bar, m",
        "left": "plates and bands on the left, inner to outer",
        "right": "plates and bands on the right, inner to outer",
        "spacing": "distance between the middles of the hooks, m",
        "moves": "what comes off or goes on, in order",
        "off_centre": "how far the bar may lie off-centre, m",
        "factor": "least margin that needs no partner",
        "loading": "plates go on instead of off",
    },
    output="margin after each move, the lowest one, and the moves that need a partner",
    source=STATICS,
    evidence=Evidence.HOUSE_RULE,
)
def order_margins(
    bar: BarShape,
    left: Side,
    right: Side,
    spacing: float,
    moves: Sequence[PlateMove],
    *,
    off_centre: float = OFF_CENTRE,
    factor: float = SAFETY_FACTOR,
    loading: bool = False,
) -> Order:
    """Margins of a given order.

    Args:
        bar: the bar.
        left: what is on the left sleeve when everything is on.
        right: what is on the right sleeve when everything is on.
        spacing: distance between the points where the bar rests, m.
        moves: what comes off, in order.
        off_centre: how far out of the middle the bar may lie, m.
        factor: margin asked for.
        loading: report the same moves backwards, as things put on.

    Raises:
        ValueError: for a move that takes off what is not there, or hooks outside the collars.

    Example:
        >>> from strength_handbook.calc.barbell import PlateShape
        >>> side = Side((PlateShape(25, 0.060),))
        >>> order = order_margins(BarShape(), side, side, 0.80, [PlateMove("left", "plate")])
        >>> order.lowest_margin, order.safe_alone
        (0.767, False)
    """
    loads = []
    margins = [off_centre_margin(bar, left, right, spacing, off_centre)]
    for move in moves:
        left, right, load = _take_off(left, right, move)
        loads.append(load)
        margins.append(off_centre_margin(bar, left, right, spacing, off_centre))
    if loading:
        return _order(moves[::-1], loads[::-1], margins[::-1], factor)
    return _order(moves, loads, margins, factor)


@formula(
    subject=SUBJECT,
    title="Order in which plates and bands come off and go on",
    equation="bands off first and on last; one plate at a time, changing sides",
    inputs={
        "bar": "mass, kg, and lengths of the bar, m",
        "left": "plates and bands on the left, inner to outer",
        "right": "plates and bands on the right, inner to outer",
        "spacing": "distance between the middles of the hooks, m",
        "keep": "plates that stay on each side",
        "off_centre": "how far the bar may lie off-centre, m",
        "factor": "least margin that needs no partner",
        "loading": "plates go on instead of off",
    },
    output="moves with their margins, and the moves that need a partner",
    source="common practice, no source; margins by statics",
    evidence=Evidence.HOUSE_RULE,
)
@lru_cache(maxsize=4096)  # strips, tables and lists ask for the same stacks in the same racks
def safe_order(
    bar: BarShape,
    left: Side,
    right: Side,
    spacing: float,
    *,
    keep: int = 0,
    off_centre: float = OFF_CENTRE,
    factor: float = SAFETY_FACTOR,
    loading: bool = False,
) -> Order:
    """The order in which to unload a bar, or with `loading` to load it.

    The two sides never differ by more than one piece (unless they do to begin with). Where either
    side may be next, the one that leaves the larger margin is; where that is equal, sides change.

    Args:
        bar: the bar.
        left: what is on the left sleeve when everything is on.
        right: what is on the right sleeve when everything is on.
        spacing: distance between the points where the bar rests, m.
        keep: innermost plates that stay on each side.
        off_centre: how far out of the middle the bar may lie, m.
        factor: margin asked for; steps below it ask for a partner.
        loading: the same backwards, bands last.

    Raises:
        ValueError: for hooks outside the collars or a negative `keep`.

    Example:
        >>> from strength_handbook.calc.barbell import PlateShape
        >>> side = Side((PlateShape(20, 0.050), PlateShape(10, 0.030)))
        >>> order = safe_order(BarShape(), side, side, 1.10)
        >>> [step.move.side for step in order.steps], order.lowest_margin
        (['left', 'right', 'left', 'right'], 2.38)
    """
    if keep < 0:
        raise ValueError(f"cannot keep {keep} plates")
    moves: list[PlateMove] = []
    one, other = left, right
    kinds: tuple[tuple[ItemName, int], ...] = (("band", 0), ("plate", keep))
    for item, stay in kinds:
        while move := _next_move(bar, one, other, spacing, item, stay, off_centre, moves):
            moves.append(move)
            one, other, _ = _take_off(one, other, move)
    return order_margins(
        bar, left, right, spacing, moves, off_centre=off_centre, factor=factor, loading=loading
    )


def _next_move(
    bar: BarShape,
    left: Side,
    right: Side,
    spacing: float,
    item: ItemName,
    stay: int,
    off_centre: float,
    before: Sequence[PlateMove],
) -> PlateMove | None:
    """The next piece of this kind to take off, None when only `stay` are left on each side."""
    most = max(_count(left, item), _count(right, item))
    if most <= stay:
        return None
    last = before[-1].side if before else "right"

    def rank(side: SideName) -> tuple[float, bool]:
        one, other, _ = _take_off(left, right, PlateMove(side, item))
        return round(off_centre_margin(bar, one, other, spacing, off_centre), 9), side != last

    full = [s for s in _SIDES if _count(left if s == "left" else right, item) == most]
    return PlateMove(max(full, key=rank), item)
