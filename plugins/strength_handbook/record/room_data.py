"""What the room holds, in words and numbers, to see later which plate, bar or band has changed."""

from collections.abc import Iterator
from datetime import date
from typing import Any

from pydantic import BaseModel

from strength_handbook.model.masses import Masses
from strength_handbook.model.quantities import Mass
from strength_handbook.model.room import Plate, Room
from strength_handbook.record.digest import digest, said


def room_data(room: Room) -> dict[str, dict[str, Any]]:
    """Everything in the room by ``section id``; plates by their mass.

    A field is there where somebody wrote it, and the count always: a new kind of field changes
    nothing.
    """
    found: dict[str, dict[str, Any]] = {
        "gym": {"name": room.gym, "group": room.group, "units": room.units},
        "emergency panel": {"words": digest(said(room.emergency))},
        "plates": dict(_plates(room.plates)),
        "loose plates": dict(_plates(room.loose_plates)),
    }
    for section, group in room:
        if isinstance(group, dict):
            for key, thing in group.items():
                found[f"{section.replace('_', ' ')} {key}"] = _thing(thing)
    return {name: fields for name, fields in found.items() if fields}


def _plates(plates: list[Plate]) -> Iterator[tuple[str, int]]:
    pairs: dict[str, int] = {}
    for one in plates:
        pairs[one.mass.label] = pairs.get(one.mass.label, 0) + one.pairs
    yield from pairs.items()


def _thing(thing: BaseModel) -> dict[str, Any]:
    written = {"count", *thing.model_fields_set}
    return {name.rstrip("_"): _plain(value) for name, value in thing if name in written}


def _plain(value: Any) -> Any:
    """A value as JSON has it, a quantity as the coach wrote it."""
    match value:
        case Mass():
            return value.label
        case date():
            return value.isoformat()
        case Masses(mass=Mass() as mass, count=count):
            return f"{count} of {mass.label}"
        case Masses(from_=Mass() as low, to=Mass() as high, by=Mass() as step, count=count):
            return f"{count} of each from {low.label} to {high.label} by {step.label}"
        case list():
            return [_plain(one) for one in value]
        case dict():
            return {f"{key:g}" if isinstance(key, float) else str(key): _plain(one)
                    for key, one in value.items()}  # fmt: skip
        case BaseModel():
            return _thing(value)
        case _:
            return value
