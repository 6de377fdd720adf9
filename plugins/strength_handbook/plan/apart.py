"""Where a bar in the rack must be held while it is taken apart, for every load that exists."""

from collections.abc import Iterator

from strength_handbook.model.dose import StripSet
from strength_handbook.model.loading import OnBar
from strength_handbook.plan.remembered import remembered
from strength_handbook.plan.scale import Scale
from strength_handbook.plan.strips import stacks_for
from strength_handbook.plan.tipover import fits, pairs_off, unloading
from strength_handbook.plan.worked import Worked

Stack = tuple[int, ...]


@remembered(256)
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
        for whole in _wholes(worked, exercise_id, scale)
        for count in range(1, len(whole) + 1)
    }
    return tuple(
        stack for stack in sorted(stacks) if _held(worked, loading.bar, loading.rack, stack)
    )


@remembered(8192)  # many exercises are done with the same bar in the same rack
def _held(worked: Worked, bar_id: str, rack_id: str, stack: Stack) -> bool:
    room = worked.book.room
    bar, rack = room.bars[bar_id], room.racks[rack_id]
    return pairs_off(unloading(bar, rack, room.plates, stack, keep=len(stack) - 1))[0].hold


def _wholes(worked: Worked, exercise_id: str, scale: Scale) -> Iterator[Stack]:
    """Every load as it may stand on the bar: as listed, and as strips build it."""
    uses = [use.slot for use in worked.uses.get(exercise_id, ())]
    works = [slot.dose.work for slot in uses if isinstance(slot.dose.work, StripSet)]
    asked = {(work.strip.loads, work.strip.drop): work.strip for work in works}
    strips = [stacks_for(scale, one) for one in asked.values()]
    for step in scale.steps:
        yield step.parts
        for stacks in strips:
            yield stacks.get(step.grams, ())
