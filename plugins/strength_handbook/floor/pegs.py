"""Where bands hang when they pull on a bar: a place with rated pegs, which nobody else has then."""

from collections.abc import Iterable

from strength_handbook.model.room import Room

BOTH_SIDES = 2
"""Pegs that a pair of bands needs."""


def pegged(room: Room) -> dict[str, int]:
    """How many places there are with rated pegs for both sides, by the id of the rack or thing."""
    racks = {key: one.count for key, one in room.racks.items() if one.band_pegs >= BOTH_SIDES}
    kit = {key: one.count for key, one in room.kit.items() if one.band_pegs >= BOTH_SIDES}
    return racks | kit


def peg_place(room: Room, taken: Iterable[str]) -> str | None:
    """The place whose pegs a lift uses: one it stands at anyway, else the kind there is most of.

    None where nothing in the room is said to have rated pegs.
    """
    places, own = pegged(room), set(taken)
    if not places:
        return None
    return min(places, key=lambda key: (key not in own, -places[key], key))
