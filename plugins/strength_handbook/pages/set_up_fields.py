"""Which numbers of a set-up a member may want to find again: those its things have."""

import re
from collections.abc import Iterator

from strength_handbook.model.exercise import Exercise
from strength_handbook.model.room import Room


def set_up_fields(exercise: Exercise, room: Room) -> tuple[str, ...]:
    """Words under which the phone keeps them, in the order of setting up.

    Args:
        exercise: whose stations, further things and load are looked at.
        room: where they stand.
    """
    load = exercise.load
    held = (getattr(load, key, None) for key in ("rack", "stack", "machine", "pivot"))
    used = {*exercise.stations, *exercise.uses, *filter(None, held)}
    return tuple(_fields(exercise, room, used))


def _fields(exercise: Exercise, room: Room, used: set[str]) -> Iterator[str]:
    kit = {key: room.kit[key] for key in sorted(used & room.kit.keys())}
    names = " ".join(f"{key} {one.name}" for key, one in kit.items()).casefold()
    if used & room.racks.keys():
        yield "rack hole"
        if exercise.spotting.safeties:
            yield "safety hole"
    if "bench" in names:
        yield "bench notch"
    if used & room.machines.keys() or re.search("chair|seat", names):
        yield "seat"
    if any(one.height is not None for one in kit.values()) or re.search(r"\bbox|\bstep", names):
        yield "box"
    if used & (room.stacks.keys() | room.machines.keys()) or any(
        thing.band_pegs for key, thing in (room.racks | room.kit).items() if key in used
    ):
        yield "peg"
    yield "stance"
