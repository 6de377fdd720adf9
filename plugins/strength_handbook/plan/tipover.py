"""Whether a bar in this rack can tip, for every step of loading, stripping and unloading."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from strength_handbook.calc.tipping import Side, lone_load
from strength_handbook.calc.unloading import Order, safe_order
from strength_handbook.model.loading import OnBar
from strength_handbook.model.room import Bar, Plate, Rack, Room
from strength_handbook.plan.pivot import UNMEASURED_PLATE, bar_for_calc, plates_for_calc
from strength_handbook.plan.scales import scale_for


@dataclass(frozen=True, slots=True)
class RackPair:
    """The same plate off the left and off the right, one after the other.

    Attributes:
        grams: one plate.
        hold: somebody holds the bar meanwhile: between the two it is too near to tipping.
    """

    grams: int
    hold: bool


@dataclass(frozen=True, slots=True)
class TipLimit:
    """What one bar in one rack bears.

    Attributes:
        bar: id of the bar.
        rack: id of the rack.
        lone_kg: heaviest load that may stand alone on one side of the empty bar.
        side_g: the heaviest loading that the rack's plates make, one side, inner to outer.
        pairs: how it comes off.
        lowest_margin: over the whole way off; below 1 the bar tips.
    """

    bar: str
    rack: str
    lone_kg: float
    side_g: tuple[int, ...]
    pairs: tuple[RackPair, ...]
    lowest_margin: float


def fits(bar: Bar, rack: Rack) -> bool:
    """True where the bar was measured for racks and its collars stand outside the hooks."""
    measured = bar.between_collars is not None and bar.mass.grams > 0
    return measured and rack.hook_spacing <= (bar.between_collars or 0)


def lone_limit_kg(bar: Bar, rack: Rack, thickness: float = UNMEASURED_PLATE) -> float:
    """Heaviest single plate that may stand alone on an otherwise empty bar, in kg.

    With its collar, where the bar's collars count.
    """
    return max(0.0, lone_load(bar_for_calc(bar), rack.hook_spacing, thickness) - bar.collar.kg)


def collared(bar: Bar, plates: Sequence[Plate], side_g: Sequence[int]) -> Side:
    """One side with its collar, as part of the outermost plate."""
    side = plates_for_calc(plates, side_g)
    if side:
        side[-1] = replace(side[-1], mass=side[-1].mass + bar.collar.kg)
    return Side(tuple(side))


def plates_alone(order: Order, bar: Bar) -> Order:
    """An order of taking off whose steps name the plates without their collars.

    A collar comes off with the first plate of its side.
    """
    firsts = {step.move.side: place for place, step in reversed(list(enumerate(order.steps)))}
    steps = tuple(
        replace(step, load=step.load - bar.collar.kg) if place in firsts.values() else step
        for place, step in enumerate(order.steps)
    )
    return replace(order, steps=steps)


def unloading(
    bar: Bar, rack: Rack, plates: Sequence[Plate], side_g: Sequence[int], *, keep: int = 0
) -> Order:
    """The order in which plates come off, with the margin against tipping after each.

    An outer collar comes off with the first plate of its side: until then it pulls there too.

    Raises:
        ValueError: where the hooks are wider apart than the collars.
    """
    side = collared(bar, plates, side_g)
    order = safe_order(bar_for_calc(bar), side, side, rack.hook_spacing, keep=keep)
    return plates_alone(order, bar)


def pairs_off(order: Order) -> tuple[RackPair, ...]:
    """An order with the same plates on both sides, two steps at a time."""
    steps = order.steps
    return tuple(
        RackPair(round(first.load * 1000), first.hold or second.hold)
        for first, second in zip(steps[::2], steps[1::2], strict=True)
    )


def tip_limits(room: Room) -> tuple[TipLimit, ...]:
    """Every bar in every rack that it fits, fully loaded from the rack's plates."""
    limits = []
    for bar_id, bar in room.bars.items():
        for rack_id, rack in room.racks.items():
            if not fits(bar, rack):
                continue
            scale = scale_for(room, OnBar(kind="bar", bar=bar_id))
            side_g = scale.steps[-1].parts if scale is not None and scale.steps else ()
            order = unloading(bar, rack, room.plates, side_g)
            limits.append(
                TipLimit(
                    bar_id, rack_id, lone_limit_kg(bar, rack), side_g, pairs_off(order),
                    order.lowest_margin,
                )
            )  # fmt: skip
    return tuple(limits)
