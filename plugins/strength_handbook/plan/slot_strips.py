"""What a slot's strip sets come to: for the example lifters, and for all others by first load."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import TypeVar

from strength_handbook.calc.registry import OutOfRangeError
from strength_handbook.calc.strip_reps import strip_stage_range
from strength_handbook.model.book import Book
from strength_handbook.model.dose import StripSet as StripWork
from strength_handbook.model.load import FixedLoad, Setting
from strength_handbook.model.loading import OnBar, OnMachine
from strength_handbook.model.methods import Strip
from strength_handbook.plan.ramps import EVERY_ROW
from strength_handbook.plan.scales import bar_table, unit_scale
from strength_handbook.plan.strips import (
    StripLoad,
    StripLoads,
    rack_of,
    reps_constant,
    scale_strip,
    strip_set,
    unit_strip,
    with_reps,
    with_tip_check,
)
from strength_handbook.plan.tables import base_strip
from strength_handbook.plan.worked import WorkedSlot

StripRows = tuple[tuple[float, StripLoads | None], ...]
T = TypeVar("T")

MOST_ROWS = 10
"""Rows of loads for those without a profile."""

FIRST_REPS = (8, 12)
"""Repetitions on the first load where nothing says how heavy it is. Common practice, no source."""


@dataclass(frozen=True, eq=False)
class Strips:
    """The strip sets of one slot.

    Attributes:
        asked: as written.
        aims: percent of the first load, with the repetitions that such strips give.
        settings: settings of a machine, where the first one is written.
        by_lifter: loads of each example lifter; None where the plates allow none.
        rows: loads by tested value, or by first load where none is tested: grams, or units of a
            machine; None where the plates allow none. Empty where a body moves along.
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
    left = 100 - asked.drop
    aims = with_reps(tuple(StripLoad(100 * (left / 100) ** n) for n in range(asked.loads)), k)
    settings: StripLoads = ()
    rows: StripRows = ()
    if isinstance(load, OnMachine):
        exist = unit_scale(book.room, load)
        if isinstance(slot.dose.load, Setting):
            settings = with_reps(unit_strip(exist, asked, slot.dose.load.value), k)
        else:
            rows = tuple((one, unit_strip(exist, asked, one)) for one in spread(exist))
    by_lifter = {
        name: _from(book, slot, asked, planned.step.grams, planned.body_g) if planned.step else None
        for name, planned in slot.loads.items()
    }
    by_best = slot.base is not None and slot.percent is not None
    for value, grams in _firsts(slot):
        rows += ((value, _from(book, slot, asked, grams)),)
    first, rack = _first_reps(slot), rack_of(book.room, slot.exercise)
    fewest, most = _loads_for_total(asked, first, k)
    name = rack.name if rack else ""
    return Strips(asked, aims, settings, by_lifter, name, first, fewest, most, rows, by_best)


def _from(
    book: Book, slot: WorkedSlot, asked: Strip, first_g: int, body_g: float = 0.0
) -> StripLoads | None:
    """Loads from a first one that exists; None where the plates allow none."""
    k, load = reps_constant(slot.exercise), slot.exercise.load
    if slot.scale is None:
        return None
    if not isinstance(load, OnBar):
        loads = scale_strip(slot.scale, asked, first_g, body_g)
        return loads and with_reps(loads, k, body_g)
    loads = strip_set(bar_table(book.room, load), asked, first_g, k)
    rack = rack_of(book.room, slot.exercise)
    if loads and rack:
        return with_tip_check(book.room.bars[load.bar], rack, book.room.plates, loads)
    return loads


def _firsts(slot: WorkedSlot) -> list[tuple[int, int]]:
    """First loads of those without a profile: by tested value, else all along what there is."""
    scale, base = slot.scale, slot.base
    if scale is None or scale.kind == "hung" or (base and base.kind == "system"):
        return []
    if base is not None and slot.percent is not None:
        cells = base_strip(base, scale, slot.percent).rows[::EVERY_ROW]
        return [(value, cell.step.grams) for value, cell in cells if cell.step]
    if isinstance(slot.dose.load, FixedLoad):
        return []
    return [(step.grams, step.grams) for step in spread(scale.steps)]


def spread(values: Sequence[T]) -> Sequence[T]:
    """At most so many of them as fit a table, evenly, the last one among them.

    >>> list(spread(range(25)))
    [0, 3, 6, 9, 12, 15, 18, 21, 24]
    """
    every = -(-len(values) // MOST_ROWS) or 1
    return values[(len(values) - 1) % every :: every]


def _first_reps(slot: WorkedSlot) -> tuple[int, int]:
    """Repetitions on the first load: by its percentage, else the usual ones."""
    band = slot.reps_possible
    if band is None:
        return FIRST_REPS
    return max(1, round(band.low)), max(1, round(band.high))


def _loads_for_total(
    asked: Strip, first: tuple[int, int], k: float
) -> tuple[int | None, int | None]:
    """Loads until the total is reached, for those who do many repetitions and those who do few."""
    if asked.total is None:
        return None, None
    left = 1 - asked.drop / 100
    try:
        return (
            strip_stage_range(asked.total, first[1], left, k).fewest,
            strip_stage_range(asked.total, first[0], left, k).most,
        )
    except OutOfRangeError:
        return None, None
