"""A bar on a pivot: what the hands hold, for this bar, this pivot and this reach."""

from collections.abc import Sequence
from dataclasses import dataclass

from strength_handbook.calc.barbell import BarShape as CalcBar
from strength_handbook.calc.barbell import PlateShape as CalcPlate
from strength_handbook.calc.landmine import landmine_angle, landmine_square, landmine_vertical
from strength_handbook.model.resistance import Pivot, Reach
from strength_handbook.model.room import Bar, Plate

UNMEASURED_PLATE = 0.05
"""Thickness in m of a plate that was not measured: a thick one, which tips a bar sooner than a thin
one and changes the load on a pivot by half a percent. Common practice, no source."""

COLLAR_WIDTH = 0.05
"""Room in m that an outer collar takes on the sleeve. Common practice, no source."""


@dataclass(frozen=True, slots=True)
class AtTheHands:
    """One loading of a bar on a pivot.

    Attributes:
        vertical_kg: what the hands hold when they push straight up, at any height.
        bottom_kg: when they push square to the bar, at the bottom of the lift,
        top_kg: and at its top.
    """

    vertical_kg: float
    bottom_kg: float
    top_kg: float


def bar_for_calc(bar: Bar) -> CalcBar:
    """The room's bar with its lengths; what was not measured is taken from a standard bar."""
    standard = CalcBar(mass=bar.mass.kg)
    between = bar.between_collars if bar.between_collars is not None else standard.between_collars
    sleeve = bar.sleeve if bar.sleeve is not None else standard.length / 2 - standard.sleeve_start
    length = between + 2 * (standard.inner_collar + sleeve)
    return CalcBar(mass=bar.mass.kg, length=length, between_collars=between)


def plates_for_calc(plates: Sequence[Plate], grams: Sequence[int]) -> list[CalcPlate]:
    """Plates of a side with their thickness."""
    thickness = {plate.mass.grams: plate.thickness for plate in plates}
    return [CalcPlate(mass / 1000, thickness.get(mass) or UNMEASURED_PLATE) for mass in grams]


def at_the_hands(
    bar: Bar, pivot: Pivot, reach: Reach, plates: Sequence[Plate], on_g: Sequence[int]
) -> AtTheHands:
    """Load at the hands for one loading; plates are held by a collar, where the bar's counts.

    Args:
        bar: the bar.
        pivot: the pivot.
        reach: where the hands are.
        plates: the room's plates, for their thickness.
        on_g: plates on the free end, inner to outer.

    Raises:
        ValueError: for hands beyond the end of the bar, below the pivot or higher than the bar
            reaches.
    """
    steel = bar_for_calc(bar)
    side = plates_for_calc(plates, on_g)
    if side and bar.collar.grams:
        side.append(CalcPlate(bar.collar.kg, COLLAR_WIDTH))
    bottom = landmine_angle(reach.bottom, pivot.height, reach.grip, pivot.offset)
    top = landmine_angle(reach.top, pivot.height, reach.grip, pivot.offset)
    return AtTheHands(
        landmine_vertical(steel, side, reach.grip, pivot.offset),
        landmine_square(steel, side, reach.grip, bottom, pivot.offset),
        landmine_square(steel, side, reach.grip, top, pivot.offset),
    )
