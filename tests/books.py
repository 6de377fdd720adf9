"""Small program folders for tests: written as files, read as a coach's files are read.

A test names only what it is about; everything else that the files must have is filled in here.
JSON is YAML too, so the files are written as JSON.
"""

import json
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

from strength_handbook.model.book import Book
from strength_handbook.model.dose import DosePart
from strength_handbook.plan.work_out import work_out
from strength_handbook.plan.worked import Worked, WorkedSlot
from strength_handbook.reading.book import read_book
from strength_handbook.reading.long_form import store
from strength_handbook.reading.notation import read_dose

Data = Mapping[str, Any]

EMERGENCY = {
    "number": "112",
    "address": "1 Test Lane",
    "entrance": "Front door.",
    "defibrillator": "Beside the door",
    "first-aid": "Green box",
    "phone": "On the wall",
    "roles": ["Nearest person starts resuscitation and stays."],
}
BAR = {"kind": "bar", "bar": "bar"}
EFFORT = {"kind": "effort", "by": "How hard you push."}


def plates(unit: str, *pairs: tuple[float, int]) -> list[dict[str, Any]]:
    """Plates from (mass, pairs)."""
    return [{"mass": f"{mass:g} {unit}", "pairs": count} for mass, count in pairs]


KG_PLATES = plates("kg", (25, 2), (20, 2), (15, 1), (10, 2), (5, 2), (2.5, 2), (1.25, 2))
LB_PLATES = plates("lb", (45, 4), (35, 1), (25, 1), (10, 2), (5, 1), (2.5, 1))
KG_ROOM: dict[str, Any] = {
    "gym": "The Test Room",
    "units": "kg",
    "bars": {"bar": {"name": "bar", "mass": "20 kg"}},
    "plates": KG_PLATES,
    "kit": {"floor": {"name": "floor", "count": 20}},
    "emergency": EMERGENCY,
}
LB_ROOM: dict[str, Any] = {
    **KG_ROOM,
    "units": "lb",
    "bars": {"bar": {"name": "bar", "mass": "45 lb"}},
    "plates": LB_PLATES,
}


def exercise(name: str = "Lift", load: Data = BAR, **more: Any) -> dict[str, Any]:
    """One exercise; keys with underscores are written with hyphens."""
    return {
        "name": name,
        "pattern": "squat",
        "role": "main",
        "stations": ["floor"],
        "load": load,
        "setup-seconds": 0,
        "poses": {"start": "Stand.", "turn": "Sit.", "end": "Stand."},
        "set-up": ["Clear the floor.", "Load the bar.", "Close the collars."],
        "cues": {"before": ["Stand tall."]},
        "breathing": "Breathe out as you lift.",
        "stop": ["End the set when the form goes."],
        "spotting": {"spotters": 0, "where": "None.", "alone": "fine", "alone-how": "As it is."},
        "doors": {
            door: {"how": "As it is."}
            for door in ("easier", "harder", "hurts", "taken", "no-partner")
        },
        "faults": [{"see": "The form goes.", "fix": "Take less."}],
        "why": "To be strong.",
        "muscles": {"direct": ["quads"]},
    } | _hyphens(more)


def slot(order: str, exercise_id: str, dose: Any, **more: Any) -> dict[str, Any]:
    """One slot; a dose that is no mapping of weeks holds for week 1."""
    weeks = dose if isinstance(dose, Mapping) else {"1": dose}
    return {"order": order, "exercise": exercise_id, "weeks": dict(weeks)} | _hyphens(more)


def base(exercise_id: str = "lift", **more: Any) -> dict[str, Any]:
    """One tested value."""
    strip = {"from": "20 kg", "to": "200 kg", "by": "5 kg"}
    return {"name": "Best lift", "exercise": exercise_id} | strip | _hyphens(more)


def write_files(
    root: Path,
    *,
    exercises: Mapping[str, Data],
    sessions: Mapping[str, Sequence[Data] | Data],
    room: Data = KG_ROOM,
    lifters: Mapping[str, Data] | None = None,
    bases: Mapping[str, Data] | None = None,
    rules: Mapping[str, str] | None = None,
    **program: Any,
) -> Path:
    """A program folder with one program, ``plan``, of one wave; gives the folder back.

    Args:
        root: where the files go.
        exercises: by id.
        sessions: by id; a list of slots, or a whole session.
        room: the room.
        lifters: example lifters, by id.
        bases: tested values of the program, by id.
        rules: house rules with their values.
        program: further keys of ``program.yml``.
    """
    weeks = sorted(
        {int(week) for one in sessions.values() for s in _slots(one) for week in s["weeks"]}
    )
    files: dict[str, Any] = {
        "room.yml": room,
        "lifters.yml": {"lifters": lifters or {}},
        "house-rules.yml": {
            "owner": "Head coach",
            "date": "2026-01-01",
            "rules": {slug: {"value": value} for slug, value in (rules or {}).items()},
        },
        "plan/program.yml": {
            "program": "Plan",
            "version": "1",
            "warm-up": "0 min",
            "close": "0 min",
            "need": ["To be strong."],
            "goals": [{"goal": "Be strong.", "test": "Lift."}],
            "bases": bases or {},
        }
        | _hyphens(program),
        "plan/1-first.yml": {
            "wave": "First",
            "emphasis": "strength",
            "promise": "You get strong.",
            "weeks": f"{weeks[0]}-{weeks[-1]}",
            "sessions": {key: _session(key, one) for key, one in sessions.items()},
        },
    } | {f"exercises/{key}.yml": one for key, one in exercises.items()}
    for name, data in files.items():
        path = root / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(json.dumps(data, ensure_ascii=False, indent=1), encoding="utf-8")
    return root


def build_book(root: Path, **parts: Any) -> Book:
    """A book from its parts, as `write_files` takes them; files with problems fail the test."""
    reading = read_book(write_files(root, **parts))
    assert reading.book is not None, "\n".join(map(str, reading.problems))
    return reading.book


def work(root: Path, **parts: Any) -> Worked:
    """The same, worked out."""
    return work_out(build_book(root, **parts))


def slots_of(worked: Worked, session: str = "a", week: int = 1) -> dict[str, WorkedSlot]:
    """The slots of one session, by their order letters."""
    return {
        slot.order: slot
        for one in worked.programs[0].week(week).sessions
        if one.id == session
        for slot in one.slots
    }


def _session(key: str, one: Sequence[Data] | Data) -> Data:
    whole = {"title": key.capitalize(), "purpose": "To train."}
    return whole | (dict(one) if isinstance(one, Mapping) else {"slots": list(one)})


def _slots(one: Sequence[Data] | Data) -> Sequence[Data]:
    slots: Sequence[Data] = one["slots"] if isinstance(one, Mapping) else one
    return slots


def _hyphens(keys: Data) -> dict[str, Any]:
    return {key.replace("_", "-"): value for key, value in keys.items()}


def part_of(line: str) -> DosePart:
    """The dose of one line, as a week of a slot has it."""
    long: dict[str, Any] = {}
    for value in read_dose(line):
        store(long, value)
    return DosePart.model_validate(long)
