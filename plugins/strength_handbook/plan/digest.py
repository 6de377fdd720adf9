"""What a program says in words, as short digests: enough to see later that it was changed."""

import hashlib
import json
from typing import Any

from pydantic import BaseModel

from strength_handbook.model.book import Book
from strength_handbook.model.dose import Dose
from strength_handbook.model.exercise import Exercise
from strength_handbook.model.program import Program, Session
from strength_handbook.plan.worked import WorkedProgram

LENGTH = 12
"""Characters of a digest; two texts with the same one by chance: one in 16^12."""

_IN_THE_DATA = frozenset(
    ("sets", "reps", "hold", "distance", "time", "load", "tempo", "rir", "rpe", "rest", "every",
     "each_side", "deload_of", "keep_sets", "keep_load", "keep_hold")
)  # fmt: skip
"""Fields of a dose that a slot of the data has keys for, and those that only make others."""


def digest(value: Any) -> str:
    """The same short text for the same value, another one for another.

    >>> digest(["Ask first."]) == digest(["Ask first."]), digest(["Ask first."]) == digest([])
    (True, False)
    """
    text = json.dumps(value, ensure_ascii=False, sort_keys=True)
    return hashlib.sha256(text.encode()).hexdigest()[:LENGTH]


def exercises_data(book: Book, program: WorkedProgram) -> dict[str, Any]:
    """Name, hazards and digests of the texts of each exercise that the program leads to."""
    used = {
        slot.exercise_id
        for week in program.weeks
        for session in week.sessions
        for slot in session.slots
    }
    behind_doors = {door.to for key in used for door in _doors(book.exercises[key]).values()}
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


def session_digest(session: Session) -> str:
    """Digest of what a session says besides its exercises."""
    return digest([session.purpose, session.warm_up, session.cut_first])


def dose_digest(dose: Dose) -> str:
    """Digest of what a dose says beyond the keys that it has in the data."""
    return digest(said(dose.said, without=_IN_THE_DATA))


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
        "doors": {key: digest(said(door)) for key, door in _doors(one).items()},
    }


def _doors(one: Exercise) -> dict[str, Any]:
    doors = one.doors
    return {
        "easier": doors.easier, "harder": doors.harder, "hurts": doors.hurts,
        "taken": doors.taken, "no-partner": doors.no_partner,
    }  # fmt: skip


def said(part: BaseModel, without: frozenset[str] = frozenset()) -> Any:
    """What a coach wrote; what nobody wrote stays out, so that a new field changes no digest."""
    return part.model_dump(
        mode="json", exclude=set(without), exclude_none=True, exclude_defaults=True
    )
