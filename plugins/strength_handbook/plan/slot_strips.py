"""What a slot's strip sets come to: for the example lifters, and for all others by first load."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import TypeVar

from strength_handbook.calc.registry import OutOfRangeError
from strength_handbook.calc.strip_reps import strip_stage_range
from strength_handbook.model.book import Book
from strength_handbook.model.dose import StripSet as StripWork
from strength_handbook.model.load import FixedLoad, Setting
from strength_handbook.model.loading import BodyWeightLift, OnMachine, PushUp
from strength_handbook.model.methods import Strip
from strength_handbook.plan.ramps import EVERY_ROW
from strength_handbook.plan.scales import unit_scale
from strength_handbook.plan.strip_lifters import FIRST_REPS, first_reps
from strength_handbook.plan.strip_load import (
    StripLoad,
    StripLoads,
    reps_constant,
    unit_strip,
    with_reps,
)
from strength_handbook.plan.strips import rack_of, strip_loads
from strength_handbook.plan.tables import base_strip
from strength_handbook.plan.worked import WorkedSlot

StripRows = tuple[tuple[float, StripLoads | None], ...]
T = TypeVar("T")

MOST_ROWS = 10
"""Rows of loads for those without a profile."""


@dataclass(frozen=True, eq=False)
class Strips:
    """The strip sets of one slot.

    Attributes:
        asked: as written.
        aims: percent of the first load, with the repetitions that such strips give; empty for
            strips that are no share of the load.
        settings: settings of a machine, where the first one is written.
        by_lifter: loads of each example lifter; None where the room allows none.
        rows: loads by tested value, or by first load where none is tested: grams, or units of a
            machine; None where the room allows none. Empty where a body moves along.
        by_best: the rows go by tested value.
        rack: name of the rack the bar rests in, or empty.
        first_reps: repetitions reckoned on the first load, fewest and most.
        fewest: loads needed for the total of repetitions at least,
        most: and at most; None where no total is set.
    """

    asked: Strip
    aims: StripLoads
    settings: StripLoads = ()
    by_lifter: Mapping[str, StripLoads | None] = field(default_factory=dict)
    rack: str = ""
    first_reps: tuple[int, int] = FIRST_REPS
    fewest: int | None = None
    most: int | None = None
    rows: StripRows = ()
    by_best: bool = False


def slot_strips(book: Book, slot: WorkedSlot) -> Strips | None:
    """Loads and repetitions of a slot's strip sets; None where it has none."""
    if not isinstance(slot.dose.work, StripWork):
        return None
    asked, k, load = slot.dose.work.strip, reps_constant(slot.exercise), slot.exercise.load
    aims: StripLoads = ()
    if asked.drop.kind == "share":
        left = 1 - asked.drop.amount / 100
        aims = with_reps(tuple(StripLoad(100 * left**n) for n in range(asked.loads)), k)
    settings: StripLoads = ()
    rows: StripRows = ()
    if isinstance(load, OnMachine):
        exist = unit_scale(book.room, load)
        if isinstance(slot.dose.load, Setting):
            settings = with_reps(unit_strip(exist, asked, slot.dose.load.value), k)
        else:
            rows = tuple((one, unit_strip(exist, asked, one) or None) for one in spread(exist))
    by_best = slot.base is not None and slot.percent is not None
    for value, grams in _firsts(slot):
        rows += ((value, strip_loads(book.room, slot.exercise, slot.scale, asked, grams)),)
    first, rack = first_reps(slot.reps_possible), rack_of(book.room, slot.exercise)
    fewest, most = _loads_for_total(asked, first, k)
    name = rack.name if rack else ""
    return Strips(asked, aims, settings, slot.strips, name, first, fewest, most, rows, by_best)


def _firsts(slot: WorkedSlot) -> list[tuple[int, int]]:
    """First loads of those without a profile: by tested value, as written, else all there are."""
    scale, base = slot.scale, slot.base
    if scale is None or isinstance(slot.exercise.load, BodyWeightLift | PushUp):
        return []
    if base is not None and slot.percent is not None:
        cells = base_strip(base, scale, slot.percent).rows[::EVERY_ROW]
        return [(value, cell.step.grams) for value, cell in cells if cell.step]
    if isinstance(slot.dose.load, FixedLoad):
        step = scale.best(slot.dose.load.mass.grams)
        return [(step.grams, step.grams)] if step else []
    return [(step.grams, step.grams) for step in spread(scale.steps)]


def spread(values: Sequence[T]) -> Sequence[T]:
    """At most so many of them as fit a table, evenly, the last one among them.

    >>> list(spread(range(25)))
    [0, 3, 6, 9, 12, 15, 18, 21, 24]
    """
    every = -(-len(values) // MOST_ROWS) or 1
    return values[(len(values) - 1) % every :: every]


def _loads_for_total(
    asked: Strip, first: tuple[int, int], k: float
) -> tuple[int | None, int | None]:
    """Loads until the total is reached, for those who do many repetitions and those who do few."""
    if asked.total is None or asked.drop.kind != "share":
        return None, None
    left = 1 - asked.drop.amount / 100
    try:
        return (
            strip_stage_range(asked.total.low, first[1], left, k).fewest,
            strip_stage_range(asked.total.high, first[0], left, k).most,
        )
    except OutOfRangeError:
        return None, None
