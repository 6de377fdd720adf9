"""What a program says in words, as short digests: enough to see later that it was changed."""

import hashlib
import json
from collections.abc import Iterable
from typing import Any

from pydantic import BaseModel

from strength_handbook.model.book import Book
from strength_handbook.model.dose import Dose
from strength_handbook.model.dose_part import DosePart
from strength_handbook.model.exercise import Exercise
from strength_handbook.model.house_rules import HouseRules
from strength_handbook.model.marks import Compared, NotCompared
from strength_handbook.model.program import Program
from strength_handbook.model.room import Room
from strength_handbook.model.session import Session, Slot
from strength_handbook.plan.worked import WorkedProgram

LENGTH = 12
"""Characters of a digest; two texts with the same one by chance: one in 16^12."""


def digest(value: Any) -> str:
    """The same short text for the same value, another one for another.

    >>> digest(["Ask first."]) == digest(["Ask first."]), digest(["Ask first."]) == digest([])
    (True, False)
    """
    text = json.dumps(value, ensure_ascii=False, sort_keys=True)
    return hashlib.sha256(text.encode()).hexdigest()[:LENGTH]


def besides(part: BaseModel, without: Iterable[str] = ()) -> dict[str, str]:
    """A digest of each field that has no place of its own in the data, by the key a coach writes.

    Every field is in it that does not say why not (`Compared`, `NotCompared`), written or not.

    Args:
        part: a block of a file.
        without: fields that are looked at elsewhere.
    """
    shape = type(part)
    values = part.model_dump(mode="json", by_alias=True, exclude_none=True, exclude_defaults=True)
    apart = {*without, *elsewhere(shape)}
    keys = {name: field.alias or name for name, field in shape.model_fields.items()}
    return {key: digest(values.get(key)) for name, key in keys.items() if name not in apart}


def elsewhere(shape: type[BaseModel]) -> frozenset[str]:
    """Fields whose values stand in the data by themselves, and those that no page shows."""
    return frozenset(
        name
        for name, field in shape.model_fields.items()
        if any(isinstance(mark, Compared | NotCompared) for mark in field.metadata)
    )


def exercises_data(book: Book, program: WorkedProgram) -> dict[str, Any]:
    """Name, hazards and digests of the texts of each exercise that the program leads to."""
    used = {
        slot.exercise_id
        for week in program.weeks
        for session in week.sessions
        for slot in session.slots
    }
    behind_doors = {door.to for key in used for _, door in book.exercises[key].doors.each()}
    return {
        key: _exercise(book.exercises[key])
        for key in sorted(used | {key for key in behind_doors if key})
    }


def notices_data(program: Program) -> dict[str, str]:
    """Digests of what a program tells everybody before they start."""
    return {"not-for": digest(program.not_for), "rules": digest(program.rules)}


def group_data(program: Program) -> dict[str, Any]:
    """Who trains at once, and how long."""
    group = program.group
    return {
        "members": group.members,
        "sharing": group.sharing,
        "starts": group.starts,
        "apart_min": round(group.apart / 60, 1),
        "ages": list(group.ages),
        "time_cap_min": None if program.time_cap is None else round(program.time_cap / 60, 1),
    }


def program_besides(program: Program) -> dict[str, str]:
    """Digests of what a program says that no other key of the data has."""
    return (
        besides(program)
        | {f"group {key}": text for key, text in besides(program.group).items()}
        | {f"goals {key}": digest([besides(goal)[key] for goal in program.goals])
           for key in besides(program.goals[0])}
    )  # fmt: skip


def rules_besides(rules: HouseRules) -> dict[str, str]:
    """Digests of who set the house rules, when, and why."""
    return besides(rules) | {
        slug: digest(sorted(besides(rule).items())) for slug, rule in sorted(rules.rules.items())
    }


def room_besides(room: Room) -> dict[str, str]:
    """Digests of what is said of the room as a whole, and of plates besides mass and number."""
    several: dict[str, list[dict[str, str]]] = {}
    for words, plates in (("plates", room.plates), ("loose plates", room.loose_plates)):
        for one in plates:
            several.setdefault(f"{words} of {one.mass.label}", []).append(besides(one))
    return besides(room) | {key: digest(found) for key, found in several.items()}


def slot_besides(slot: Slot) -> dict[str, str]:
    """Digests of what a slot says besides its dose."""
    return besides(slot, without=DosePart.model_fields)


def session_digest(session: Session) -> str:
    """Digest of what a session says besides its exercises."""
    return digest([session.purpose, session.warm_up, session.cut_first])


def dose_digest(dose: Dose) -> str:
    """Digest of what a dose says beyond the keys that it has in the data."""
    return digest(said(dose.said, without=elsewhere(type(dose.said))))


def _exercise(one: Exercise) -> dict[str, Any]:
    return {
        "name": one.name,
        "hazards": sorted(hazard.value for hazard in one.hazards),
        "cautions": digest(list(one.all_cautions())),
        "stop": digest(one.stop),
        "spotting": digest(said(one.spotting)),
        "words": digest(
            [said(one.poses), one.set_up, said(one.cues), one.breathing, one.next_step]
            + [said(fault) for fault in one.faults]
        ),
        "doors": {key: digest(words) for key, words in _doors(one).items()},
        "besides": besides(one),
    }


def _doors(one: Exercise) -> dict[str, Any]:
    """What is written of each door; of the one for pain also when to stop."""
    found = {key: said(door) for key, door in one.doors.each()}
    stop = one.doors.hurts.stop
    return found if stop is None else found | {"stop": stop}


def said(part: BaseModel, without: frozenset[str] = frozenset()) -> Any:
    """What a coach wrote; what nobody wrote stays out, so that a new field changes no digest."""
    return part.model_dump(
        mode="json", exclude=set(without), exclude_none=True, exclude_defaults=True
    )
