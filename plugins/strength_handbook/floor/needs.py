"""What a pair takes off the floor for one exercise, and what the room has of it.

Assumptions
- Those who share a station have one of each thing, and use it in turn: one bar, one box, one mat.
- They keep what they use from the set-up to the last set of their letter.
- Every rack has plates of its own (`plate-sets`), and a bar away from the racks borrows the set of
  one of them. So plates are counted by size over the whole room.
- Nobody knows who will come: pair after pair is taken to lift like the example lifters in turn.
  That makes sizes an estimate; things are counted.
- On a lane as many walk abreast as its width allows (house rule `lane-width`); without a width,
  one.
- A team takes one of each thing for all of its bearers.
- Bands on a bar hang from rated pegs (`band-pegs`), and the place that has them is taken too.
"""

from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import chain
from math import ceil

from strength_handbook.floor.pegs import peg_place
from strength_handbook.model.book import Book
from strength_handbook.model.load import BodyWeight, FixedLoad
from strength_handbook.model.loading import (
    BodyWeightLift,
    InHands,
    OnBar,
    OnCarrier,
    OnMachine,
    OnPivot,
    OnStack,
)
from strength_handbook.model.quantities import Mass
from strength_handbook.model.room import Room
from strength_handbook.plan.worked import WorkedSlot

Units = Mapping[str, int]
"""How many, by thing of the room, by plate size (``plate 20 kg``) or by hand weight (``dumbbell
20 kg``)."""


@dataclass(frozen=True, slots=True)
class Needs:
    """What one pair takes for one exercise.

    Attributes:
        things: by id; certain.
        sizes: plates and hand weights of one size, with the load of one example lifter.
    """

    things: Units
    sizes: Units


def most(several: Iterator[Units]) -> dict[str, int]:
    """The larger number of each.

    >>> most(iter([{"box": 1}, {"box": 2, "mat": 1}]))
    {'box': 2, 'mat': 1}
    """
    found: dict[str, int] = {}
    for one in several:
        for key, count in one.items():
            found[key] = max(count, found.get(key, 0))
    return found


def slot_needs(book: Book, slot: WorkedSlot, pair: int, members: int) -> Needs:
    """What one pair takes for one exercise.

    Args:
        book: the room and the example lifters.
        slot: the exercise with its dose.
        pair: which pair of its start group, from 0.
        members: of a start group.
    """
    team = slot.dose.said.team
    if team is not None and pair >= ceil(members / team.bearers):
        return Needs({}, {})
    things = dict.fromkeys((*stations(book.room, slot), *slot.exercise.uses), 1)
    things = most(iter([things, *({key: count} for key, count in _load_kit(slot))]))
    if slot.dose.said.bands is not None and (place := peg_place(book.room, things)):
        things.setdefault(place, 1)
    return Needs(things, _sizes(book, slot, pair))


def stations(room: Room, slot: WorkedSlot) -> tuple[str, ...]:
    """What a slot occupies: the exercise's stations, with the box of the height that is asked for.

    Boxes are known by their `height` in the room; the first station that has one is exchanged.
    """
    own, height = slot.exercise.stations, slot.dose.said.height
    boxes = boxes_of(room)
    if height is None or height not in boxes.values():
        return tuple(own)
    asked = next(key for key, one in boxes.items() if one == height)
    first = next((key for key in own if key in boxes), None)
    return tuple(asked if key == first else key for key in own)


def boxes_of(room: Room) -> dict[str, float]:
    """Height in metres of everything that says one."""
    return {key: kit.height for key, kit in room.kit.items() if kit.height is not None}


def room_units(book: Book) -> dict[str, int]:
    """What the room has: of each thing, each size of plate and each hand weight."""
    room = book.room
    owned: dict[str, int] = {
        key: thing.count
        for section in (room.bars, room.racks, room.carriers, room.stacks, room.machines,
                        room.pivots, room.kit)
        for key, thing in section.items()
    }  # fmt: skip
    for key, lane in room.lanes.items():
        owned[key] = lane.count * abreast(lane.width, book.rule("lane-width"))
    owned |= {key: chains.pairs for key, chains in room.chains.items()}
    owned |= dict.fromkeys(room.bands, 1)
    for key, weights in room.hand_weights.items():
        for row in weights.masses:
            for mass in row.each():
                name = hand_weight(key, mass.grams)
                owned[name] = owned.get(name, 0) + row.count
    sets = sum(rack.count * rack.plate_sets for rack in room.racks.values()) if room.racks else 1
    for plate, count in chain(
        ((plate, sets) for plate in room.plates), ((plate, 1) for plate in room.loose_plates)
    ):
        name = plate_size(plate.mass.grams)
        owned[name] = owned.get(name, 0) + 2 * plate.pairs * count
    return owned


def pool_units(slot: WorkedSlot) -> dict[str, int]:
    """How many bands there are for a lift whose pair of bands the handbook picks."""
    if slot.on_top is None or slot.on_top.top_share is None or not slot.on_top.pairs:
        return {}
    bands = {band for pair in slot.on_top.pairs for band in (pair.left, pair.right)}
    return {_pool(slot): len(bands)}


def abreast(width: float | None, each: float) -> int:
    """How many walk side by side.

    >>> abreast(3, 1), abreast(0.5, 1), abreast(None, 1)
    (3, 1, 1)
    """
    return 1 if width is None or each <= 0 else max(1, int(width / each + 1e-9))


def plate_size(grams: int) -> str:
    """Key of a size of plates.

    >>> plate_size(1250)
    'plate 1250'
    """
    return f"plate {grams}"


def hand_weight(key: str, grams: int) -> str:
    """Key of a hand weight of one mass.

    >>> hand_weight("dumbbell", 20000)
    'dumbbell 20000'
    """
    return f"{key} {grams}"


def thing_name(room: Room, key: str) -> str:
    """What members call it."""
    what, _, grams = key.partition(" ")
    if what == "bands":
        return "band that fits"
    if not grams:
        return room.names().get(key, key)
    mass = _label(room, int(grams))
    return f"{mass} plate" if what == "plate" else f"{mass} {room.names().get(what, what)}"


def _label(room: Room, grams: int) -> str:
    """A mass as it is written in the room."""
    written = [plate.mass for plate in (*room.plates, *room.loose_plates)]
    for weights in room.hand_weights.values():
        written += [mass for row in weights.masses for mass in row.each()]
    return next((mass.label for mass in written if mass.grams == grams), Mass(grams).label)


def _pool(slot: WorkedSlot) -> str:
    return f"bands {slot.exercise_id}"


def _load_kit(slot: WorkedSlot) -> Iterator[tuple[str, int]]:
    """Things that follow from how the exercise is loaded."""
    load, dose = slot.exercise.load, slot.dose
    match load:
        case OnBar():
            yield load.bar, load.hands or 1
            if load.rack is not None:
                yield load.rack, 1
            if load.chains is not None and (pairs := _chain_pairs(slot)):
                yield load.chains, pairs
        case OnPivot():
            yield load.bar, 1
            yield load.pivot, 1
        case OnStack():
            yield load.stack, 1
        case OnMachine():
            yield load.machine, 1
        case OnCarrier():
            yield load.carrier, 1
        case BodyWeightLift() if load.carrier is not None and _adds(slot):
            yield load.carrier, 1
        case InHands() if isinstance(dose.load, FixedLoad):
            yield hand_weight(load.weight, dose.load.mass.grams), load.hands
        case _:
            pass
    bands, assist = dose.said.bands, dose.said.assist
    if bands is not None:
        yield from ((band, 1) for band in bands.pair)
    if pool_units(slot):
        yield _pool(slot), 2
    if assist is not None and assist.band is not None:
        yield assist.band, 1


def _chain_pairs(slot: WorkedSlot) -> int:
    """Pairs of chains on the bar; at least one where a share of the load is asked for."""
    asked = slot.dose.said.chains
    return 0 if asked is None else asked.pairs or 1


def _adds(slot: WorkedSlot) -> bool:
    """True where something is hung on the body for at least one example lifter."""
    load = slot.dose.load
    if load is None or (isinstance(load, BodyWeight) and (load.sign < 0 or not load.change.grams)):
        return False
    steps = [planned.step for planned in slot.loads.values()]
    return not steps or any(step is not None and step.grams > 0 for step in steps)


def _sizes(book: Book, slot: WorkedSlot, pair: int) -> dict[str, int]:
    """Plates and hand weights by size, for the example lifter whose turn it is."""
    names = sorted(slot.loads)
    load, scale = slot.exercise.load, slot.scale
    if not names or scale is None:
        return {}
    step = slot.loads[names[pair % len(names)]].step
    if step is None:
        return {}
    if isinstance(load, InHands):
        if isinstance(slot.dose.load, FixedLoad):
            return {}
        return {hand_weight(load.weight, step.grams): load.hands}
    if scale.kind == "pin":
        return {}
    ends = 2 * (load.hands or 1) if isinstance(load, OnBar) else 1
    known = {plate.mass.grams for plate in book.room.plates}
    return {
        plate_size(grams): ends * count
        for grams, count in Counter(step.parts).items()
        if grams in known
    }
