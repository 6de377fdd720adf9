"""What the exercises of the shelf need of a room, and how it is found there."""

import re
from collections.abc import Mapping
from dataclasses import dataclass

from strength_handbook.model.room import Kit, Room


@dataclass(frozen=True, slots=True)
class RoomThing:
    """Something that a room may have under a name of its own.

    Attributes:
        section: key of `room.yml` where it stands.
        says: how a message calls it.
        words: a regular expression that its key or name answers to.
        sample: the line for `room.yml`, without its indent; measures as `[[kg|lb]]`.
        heights: metres from and to, of a box.
    """

    section: str
    says: str
    words: str
    sample: str
    heights: tuple[float, float] | None = None


THINGS: dict[str, RoomThing] = {
    "bar": RoomThing(
        "bars", "a straight bar", r"^(?!.*(trap|hex|yoke|safety|curl|handle|thick|landmine)).*bar",
        "bar: {name: long bar, mass: [[20 kg|45 lb]], count: 2}",
    ),
    "trap_bar": RoomThing(
        "bars", "a trap bar", r"trap|hex",
        "trap-bar: {name: trap bar, mass: [[25 kg|55 lb]], count: 1}",
    ),
    "handle": RoomThing(
        "bars", "a pair of handles for plates", r"farmer|carry|(?<!thick )handle",
        "farmer-handle: {name: farmer handle, mass: [[10 kg|20 lb]], count: 2}",
    ),
    "plates": RoomThing(
        "plates", "plates", r"",
        "- {mass: [[5 kg|10 lb]], pairs: 2}",
    ),
    "rack": RoomThing(
        "racks", "a rack", r"",
        "rack: {name: rack, count: 2, hook-spacing: [[1.1 m|43 in]]}",
    ),
    "dumbbell": RoomThing(
        "hand-weights", "dumbbells", r"dumb|hand weight",
        "dumbbell: {name: dumbbell, masses: [{from: [[2 kg|5 lb]], to: [[30 kg|75 lb]], "
        "by: [[2 kg|5 lb]], count: 2}]}",
    ),
    "kettlebell": RoomThing(
        "hand-weights", "kettlebells", r"kettle",
        "kettlebell: {name: kettlebell, masses: [{from: [[8 kg|20 lb]], to: [[32 kg|70 lb]], "
        "by: [[4 kg|10 lb]], count: 2}]}",
    ),
    "bag": RoomThing(
        "hand-weights", "sandbags", r"bag",
        "sandbag: {name: sandbag, masses: [{from: [[10 kg|25 lb]], to: [[40 kg|100 lb]], "
        "by: [[10 kg|25 lb]], count: 1}]}",
    ),
    "cable": RoomThing(
        "stacks", "a cable column", r"",
        "cable: {name: cable column, count: 2, pins: {from: [[5 kg|10 lb]], to: [[90 kg|200 lb]], "
        "by: [[5 kg|10 lb]]}}",
    ),
    "leg_press": RoomThing(
        "machines", "a leg press", r"leg.?press",
        "leg-press: {name: leg press, unit: units, from: 0, to: 300, by: 5}",
    ),
    "belt": RoomThing(
        "carriers", "a belt for hanging plates", r"belt",
        "belt: {name: chin-up belt, count: 1, limit: [[60 kg|130 lb]]}",
    ),
    "pack": RoomThing(
        "carriers", "a pack for plates", r"pack",
        "pack: {name: pack, count: 2, mass: [[1.5 kg|3 lb]], limit: [[25 kg|55 lb]]}",
    ),
    "sled": RoomThing(
        "carriers", "a sled", r"sled",
        "sled: {name: sled, count: 1, mass: [[22 kg|50 lb]]}",
    ),
    "lane": RoomThing(
        "lanes", "a lane for carries and sleds", r"",
        "lane: {name: lane, length: [[15 m|50 ft]], width: [[3 m|10 ft]], run-out: [[3 m|10 ft]]}",
    ),
    "pivot": RoomThing(
        "pivots", "a joint for the end of a bar", r"",
        "bar-pivot: {name: bar pivot, count: 1, offset: [[3 cm|1.2 in]], height: [[6 cm|2.4 in]]}",
    ),
    "floor": RoomThing(
        "kit", "clear floor", r"floor",
        "floor: {name: clear floor, count: 8, fixed: yes}",
    ),
    "mat": RoomThing("kit", "mats", r"\bmats?\b", "mat: {name: mat, count: 8}"),
    "bench": RoomThing(
        "kit", "a flat bench", r"^(?!.*(slant|incline|back|treatment|massage|therapy)).*bench",
        "bench: {name: bench, count: 2}",
    ),
    "slanted_bench": RoomThing(
        "kit", "a bench that can be set at a slant", r"(slant|incline|adjust).*bench",
        "slanted-bench: {name: slanted bench, count: 1}",
    ),
    "back_bench": RoomThing(
        "kit", "a back-extension bench", r"back.*bench",
        "back-bench: {name: back-extension bench, count: 1, fixed: yes}",
    ),
    "low_box": RoomThing(
        "kit", "a step of at most 25 cm (10 in)", r"box|step",
        "box-20: {name: [[20 cm|8 in]] box, height: [[20 cm|8 in]], count: 2}", (0.12, 0.25),
    ),
    "stair": RoomThing(
        "kit", "a box or step of at most 31 cm (12 in)", r"box|step",
        "box-30: {name: [[30 cm|12 in]] box, height: [[30 cm|12 in]], count: 2}", (0.12, 0.31),
    ),
    "box": RoomThing(
        "kit", "a box of about 40 cm (16 in)", r"box",
        "box-40: {name: [[40 cm|16 in]] box, height: [[40 cm|16 in]], count: 2}", (0.29, 0.52),
    ),
    "chair": RoomThing(
        "kit", "a sturdy chair", r"chair", "chair: {name: sturdy chair, count: 4}",
    ),
    "rig": RoomThing(
        "kit", "a bar to hang from", r"\brig\b|pull-?up|chin-?up",
        "rig: {name: pull-up bar, count: 2, fixed: yes}",
    ),
    "towel": RoomThing("kit", "towels", r"towel", "towel: {name: towel, count: 4}"),
    "stick": RoomThing("kit", "a light stick", r"stick", "stick: {name: light stick, count: 4}"),
    "strap": RoomThing(
        "kit", "straps on an anchor", r"strap",
        "straps: {name: pair of straps, count: 1, fixed: yes}",
    ),
    "knee_pad": RoomThing(
        "kit", "knee pads", r"knee.?pad", "knee-pad: {name: knee pad, count: 4}",
    ),
    "long_band": RoomThing(
        "kit", "a long band to pull by hand", r"band",
        "hand-band: {name: long light band, count: 4, until: 2027-12-31}",
    ),
}  # fmt: skip
"""Every `$name` that a text of the shelf may hold. No text names plates; they are needed where a
load is made of them."""


def found(room: Room, name: str) -> str | None:
    """The short name of such a thing in a room, or None; of several boxes the likeliest in height.

    Args:
        room: where to look.
        name: a key of `THINGS`.
    """
    thing = THINGS[name]
    if name == "plates":
        return name if room.plates or room.loose_plates else None
    own: Mapping[str, object] = getattr(room, thing.section.replace("-", "_"))
    called = {
        key: f"{key.replace('-', ' ')} {getattr(one, 'name', '')}".casefold()
        for key, one in own.items()
    }
    fit = [key for key in own if re.search(thing.words, called[key])]
    if thing.heights is None:
        return fit[0] if fit else None
    low, high = thing.heights
    heights = {key: one.height for key in fit if isinstance(one := own[key], Kit) and one.height}
    inside = [key for key in heights if low <= heights[key] <= high]
    return min(inside, key=lambda key: abs(heights[key] - (low + high) / 2), default=None)
