"""Whether a bar in this rack can tip, for every step of loading, stripping and unloading."""

from collections.abc import Sequence

from strength_handbook.calc.tipping import Side, lone_load
from strength_handbook.calc.unloading import Order, safe_order
from strength_handbook.model.room import Bar, Plate, Rack
from strength_handbook.plan.pivot import bar_for_calc, plates_for_calc


def lone_limit_kg(bar: Bar, rack: Rack, thickness: float = 0.05) -> float:
    """Heaviest single plate that may stand alone on an otherwise empty bar, in kg."""
    return lone_load(bar_for_calc(bar), rack.hook_spacing, thickness)


def unloading(bar: Bar, rack: Rack, plates: Sequence[Plate], side_g: Sequence[int]) -> Order:
    """The order in which plates come off, with the margin against tipping after each."""
    side = Side(tuple(plates_for_calc(plates, side_g)), ())
    return safe_order(bar_for_calc(bar), side, side, rack.hook_spacing)


def loading(bar: Bar, rack: Rack, plates: Sequence[Plate], side_g: Sequence[int]) -> Order:
    """The order in which plates go on."""
    side = Side(tuple(plates_for_calc(plates, side_g)), ())
    return safe_order(bar_for_calc(bar), side, side, rack.hook_spacing, loading=True)
