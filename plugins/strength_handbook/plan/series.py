"""Sets that differ, one after the other: the load of each, and the plates that move between."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from itertools import takewhile

from strength_handbook.model.dose import Dose
from strength_handbook.model.load import FixedLoad
from strength_handbook.plan.loads import PlannedLoad, achieved
from strength_handbook.plan.scale import Scale
from strength_handbook.plan.worked import WorkedSlot

STACKED = ("bar", "hung", "pivot")
"""Kinds of scales whose plates stand in a stack, so that inner ones stay on."""


@dataclass(frozen=True, slots=True)
class SeriesLoad:
    """The load of sets that are alike.

    Attributes:
        dose: these sets, as a plain dose.
        load: their load.
        off: plates of one side that come off before them, outer ones first.
        on: plates that go on then, inner ones first.
    """

    dose: Dose
    load: PlannedLoad
    off: tuple[int, ...] = ()
    on: tuple[int, ...] = ()


SeriesLoads = tuple[SeriesLoad, ...]


@dataclass(frozen=True, eq=False)
class SeriesPlan:
    """Loads of sets that differ.

    Attributes:
        everybody: loads that are the same for all, or empty.
        by_lifter: loads of each example lifter for whom all are known.
    """

    everybody: SeriesLoads = ()
    by_lifter: Mapping[str, SeriesLoads] = field(default_factory=dict)


def series_plan(slot: WorkedSlot, units: str) -> SeriesPlan | None:
    """Loads of a slot's sets that differ in load; None where all have one.

    Args:
        slot: what is done.
        units: unit that the pages print.
    """
    if not slot.loads_differ:
        return None
    everybody: SeriesLoads = ()
    fixed = [one.dose.load for one in slot.series]
    if slot.scale is not None and all(isinstance(load, FixedLoad) for load in fixed):
        loads = [
            achieved(load.mass.grams, slot.scale, 0, 0, units)
            for load in fixed
            if isinstance(load, FixedLoad)
        ]
        everybody = _in_order(slot, loads)
    by_lifter = {
        name: _in_order(slot, [one.loads[name] for one in slot.series])
        for name in slot.loads
        if all(name in one.loads for one in slot.series)
    }
    return SeriesPlan(everybody, by_lifter)


def plate_change(
    before: tuple[int, ...], after: tuple[int, ...]
) -> tuple[tuple[int, ...], tuple[int, ...]]:
    """Plates of one side that come off, and those that go on; inner ones that stay are no work.

    >>> plate_change((25000, 15000, 5000), (25000, 20000))
    ((5000, 15000), (20000,))
    """
    pairs = zip(before, after, strict=False)
    kept = sum(1 for _ in takewhile(lambda pair: pair[0] == pair[1], pairs))
    return before[kept:][::-1], after[kept:]


def _in_order(slot: WorkedSlot, loads: list[PlannedLoad]) -> SeriesLoads:
    found: list[SeriesLoad] = []
    before: tuple[int, ...] | None = None
    for one, load in zip(slot.series, loads, strict=True):
        after = _stack(slot.scale, load)
        known = before is not None and after is not None
        off, on = plate_change(before or (), after or ()) if known else ((), ())
        found.append(SeriesLoad(one.dose, load, off, on))
        before = after
    return tuple(found)


def _stack(scale: Scale | None, load: PlannedLoad) -> tuple[int, ...] | None:
    """Plates of one side; None where nothing stands in a stack."""
    stacked = scale is not None and scale.kind in STACKED and not load.help_g
    return load.step.parts if stacked and load.step is not None else None
