"""Where a bar in the rack must be held while it is taken apart, for every load that exists."""

from functools import lru_cache

from strength_handbook.model.loading import OnBar
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
    bar, rack = room.bars[loading.bar], room.racks[loading.rack]
    if not fits(bar, rack):
        return None
    stacks = {step.parts[:count] for step in scale.steps for count in range(1, len(step.parts) + 1)}
    return tuple(
        stack
        for stack in sorted(stacks)
        if pairs_off(unloading(bar, rack, room.plates, stack, keep=len(stack) - 1))[0].hold
    )
