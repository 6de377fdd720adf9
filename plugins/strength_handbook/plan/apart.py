"""Where a bar in the rack must be held while it is taken apart, for every load that exists."""

from collections.abc import Iterator
from functools import lru_cache

from strength_handbook.model.dose import StripSet
from strength_handbook.model.loading import OnBar
from strength_handbook.plan.ramps import ramp_to, slot_ramps
from strength_handbook.plan.scales import Scale, bar_table
from strength_handbook.plan.strips import strip_set
from strength_handbook.plan.tipover import fits, pairs_off, unloading
from strength_handbook.plan.worked import Worked

Stack = tuple[int, ...]


@lru_cache(maxsize=256)
def stacks_to_hold(worked: Worked, exercise_id: str) -> tuple[Stack, ...] | None:
    """Stacks of one side, inner to outer, whose outermost pair comes off with the bar held.

    A bar is taken apart pair by pair, left and then right, from outside. Whether it must be held
    for a pair follows from what is on it at that moment, whatever was on it before.

    Args:
        worked: the programs.
        exercise_id: what is done.

    Returns:
        The stacks, or None where the bar is in no rack or was not measured for it.
    """
    loading, scale = worked.book.exercises[exercise_id].load, worked.scales[exercise_id]
    room = worked.book.room
    if not isinstance(loading, OnBar) or loading.rack is None or scale is None:
        return None
    if not fits(room.bars[loading.bar], room.racks[loading.rack]):
        return None
    stacks = {
        whole[:count]
        for whole in _wholes(worked, exercise_id, loading, scale)
        for count in range(1, len(whole) + 1)
    }
    return tuple(
        stack for stack in sorted(stacks) if _held(worked, loading.bar, loading.rack, stack)
    )


@lru_cache(maxsize=8192)  # many exercises are done with the same bar in the same rack
def _held(worked: Worked, bar_id: str, rack_id: str, stack: Stack) -> bool:
    room = worked.book.room
    bar, rack = room.bars[bar_id], room.racks[rack_id]
    return pairs_off(unloading(bar, rack, room.plates, stack, keep=len(stack) - 1))[0].hold


def _wholes(worked: Worked, exercise_id: str, loading: OnBar, scale: Scale) -> Iterator[Stack]:
    """Every load as it may stand on the bar: as listed, and as steps and strips build it."""
    table = bar_table(worked.book.room, loading)
    uses = [use.slot for use in worked.uses.get(exercise_id, ())]
    climbs = any(slot_ramps(worked.book.room, slot) for slot in uses)
    works = [slot.dose.work for slot in uses if isinstance(slot.dose.work, StripSet)]
    strips = {(work.strip.loads, work.strip.drop): work.strip for work in works}
    for step in scale.steps:
        yield step.parts
        if climbs:
            yield from (one.parts for one in ramp_to(table, step.grams)[-1:])
        for asked in strips.values():
            yield from (one.parts for one in (strip_set(table, asked, step.grams) or ())[:1])
