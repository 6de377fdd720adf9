"""The least margin against tipping while a bar is stripped in its rack, step by step.

A rack says in the room's file how bars are stripped there: `alternate`, one plate a side in turn,
which is the order the pages print; or `one-side`, where only one end can be reached and is bare
first.
"""

from dataclasses import dataclass

from strength_handbook.calc.unloading import Order, PlateMove, order_margins
from strength_handbook.model.loading import OnBar
from strength_handbook.model.room import Bar, Plate, Rack, Room
from strength_handbook.plan import tipover
from strength_handbook.plan.pivot import bar_for_calc
from strength_handbook.plan.worked import WorkedSlot


@dataclass(frozen=True, slots=True)
class WorstStep:
    """Where a bar comes nearest to tipping on its way off.

    Attributes:
        side_g: plates on each side before, inner to outer.
        step: number of the plate that is taken off there, from 1; 0 before the first.
        plate_g: that plate; 0 before the first.
        margin: then; below 1 the bar tips.
        held: the page asks for somebody to hold the bar there.
    """

    side_g: tuple[int, ...]
    step: int
    plate_g: int
    margin: float
    held: bool


def racked(room: Room, slot: WorkedSlot) -> tuple[str, Rack] | None:
    """The rack that a slot's bar rests in, if the bar fits it and was measured."""
    load = slot.exercise.load
    if not isinstance(load, OnBar) or load.hands is not None:
        return None
    for place in (load.rack, *slot.exercise.stations):
        if place in room.racks:
            rack = room.racks[place]
            return (place, rack) if tipover.fits(room.bars[load.bar], rack) else None
    return None


def stripping(bar: Bar, rack: Rack, plates: list[Plate], side_g: tuple[int, ...]) -> Order:
    """All steps of taking the plates off, in this rack's way.

    Raises:
        ValueError: where the hooks are wider apart than the collars.
    """
    if rack.unload == "alternate":
        return tipover.unloading(bar, rack, plates, side_g)
    side = tipover.collared(bar, plates, side_g)
    moves = [PlateMove("left", "plate")] * len(side_g) + [PlateMove("right", "plate")] * len(side_g)
    order = order_margins(bar_for_calc(bar), side, side, rack.hook_spacing, moves)
    return tipover.plates_alone(order, bar)


def worst_step(bar: Bar, rack: Rack, plates: list[Plate], side_g: tuple[int, ...]) -> WorstStep:
    """The step with the least margin.

    Raises:
        ValueError: where the hooks are wider apart than the collars.
    """
    order = stripping(bar, rack, plates, side_g)
    number, step = min(
        enumerate(order.steps, 1), key=lambda item: (item[1].margin, item[0]), default=(0, None)
    )
    if step is None:
        return WorstStep(side_g, 0, 0, order.lowest_margin, held=False)
    # Only the order that changes sides is printed, with a word where the bar must be held.
    held = step.hold and rack.unload == "alternate"
    return WorstStep(side_g, number, round(step.load * 1000), step.margin, held)
