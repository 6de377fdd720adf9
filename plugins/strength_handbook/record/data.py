"""The worked program as data, for other tools and for comparing one publication with the next.

Further keys may be added; none is dropped or renamed without raising `SCHEMA`.
"""

from datetime import date
from typing import Any

from strength_handbook.dose.key import Because
from strength_handbook.dose.table import KEYS, method_of
from strength_handbook.model.dose import Dose
from strength_handbook.plan.loads import PlannedLoad
from strength_handbook.plan.scale import Scale
from strength_handbook.plan.variable import Variable
from strength_handbook.plan.volume import Volume
from strength_handbook.plan.worked import (
    Worked,
    WorkedProgram,
    WorkedSession,
    WorkedSlot,
    WorkedWeek,
)
from strength_handbook.record.digest import (
    besides,
    digest,
    dose_digest,
    exercises_data,
    group_data,
    notices_data,
    program_besides,
    room_besides,
    rules_besides,
    session_digest,
    slot_besides,
)
from strength_handbook.record.method_data import slot_data, variants_data
from strength_handbook.record.room_data import room_data

SCHEMA = 1


def program_data(handbook: Worked, worked: WorkedProgram) -> dict[str, Any]:
    """A worked program as plain data, ready for JSON."""
    book = handbook.book
    return {
        "schema": SCHEMA,
        "program": worked.id,
        "title": worked.program.program,
        "version": worked.program.version,
        "units": book.room.units,
        "start": _day(worked.program.start),
        "valid_until": _day(worked.program.valid_until),
        "group": group_data(worked.program),
        "goals": {goal.goal: goal.test for goal in worked.program.goals},
        "lifters": [
            {
                "id": name,
                "bodyweight_kg": _kg(lifter.bodyweight.grams),
                "bases": {key: _kg(mass.grams) for key, mass in lifter.bases.items()},
                "besides": besides(lifter),
            }
            for name, lifter in book.lifters.items()
        ],
        "weeks": [_week(handbook, worked, week) for week in worked.weeks],
        "exercises": exercises_data(book, worked),
        "notices": notices_data(worked.program),
        "room": room_data(book.room),
        "rules": {slug: _short(value) for slug, value in sorted(book.rule_values.items())},
        "besides": program_besides(worked.program),
        "rules_besides": rules_besides(book.rules),
        "room_besides": room_besides(book.room),
    }


def _week(handbook: Worked, program: WorkedProgram, week: WorkedWeek) -> dict[str, Any]:
    return {
        "week": week.week,
        "wave": week.wave_id,
        "wave_name": week.wave.wave,
        "promise": week.wave.promise,
        "deload": week.deload,
        "besides": besides(week.wave),
        "volume": _volume(week.volume),
        "sessions": [
            _session(session)
            | {
                "variants": variants_data(handbook.book, program, session),
                "slots": [
                    _slot(slot) | {"plan": slot_data(handbook, program, week, session, slot)}
                    for slot in session.slots
                ],
            }
            for session in week.sessions
        ],
    }


def _session(session: WorkedSession) -> dict[str, Any]:
    return {
        "id": session.id,
        "title": session.session.title,
        "optional": session.session.optional,
        "day": session.session.day,
        "words": session_digest(session.session),
        "besides": besides(session.session),
        "minutes": round(session.minutes.total, 1),
        "volume": _volume(session.volume),
    }


def _volume(volume: Volume) -> dict[str, Any]:
    return {
        "hard_sets": {muscle: _short(sets) for muscle, sets in sorted(volume.hard_sets.items())},
        "eccentric_s": round(volume.eccentric_s),
        "isometric_s": round(volume.isometric_s),
        "fast_reps": round(volume.fast_reps),
        "contacts": round(volume.contacts),
        "sets": _short(volume.sets),
        "reps": _short(volume.reps),
        "tonnage_kg": {name: round(kg, 1) for name, kg in sorted(volume.tonnage_kg.items())},
    }


def _slot(worked: WorkedSlot) -> dict[str, Any]:
    dose = worked.dose
    published = dose_data(dose)
    load = published.pop("load")
    return {
        "order": worked.order,
        "exercise": worked.exercise_id,
        **published,
        "method": method_of(dose).word,
        "load": load,
        "base": worked.base_id,
        "said": dose_digest(dose),
        "besides": slot_besides(worked.slot),
        "own_doors": {door: digest(words) for door, words in sorted(worked.slot.doors.items())},
        "by_lifter": {
            name: _load(load, worked.scale) | _variable(worked.variable.get(name))
            for name, load in worked.loads.items()
        },
    }


def dose_data(dose: Dose) -> dict[str, Any]:
    """What is published of a dose by keys of its own."""
    return {
        datum.key: datum.value(dose)
        for key in KEYS
        if not isinstance(key.data, Because)
        for datum in key.data
    }


def _load(load: PlannedLoad, scale: Scale | None) -> dict[str, Any]:
    actual = load.actual_g
    data: dict[str, Any] = {
        "planned_kg": _kg(load.planned_g),
        "load_kg": None if actual is None else _kg(actual),
        "percent": None if load.actual_percent is None else round(load.actual_percent, 1),
    }
    if load.band:
        data["band"] = load.band
    if scale is not None and scale.kind == "bar" and load.step is not None:
        data["bar_kg"] = _kg(scale.empty_g)
        data["plates_per_side_kg"] = [_kg(grams) for grams in load.step.parts]
    elif load.step is not None and load.step.parts:
        data["plates_kg"] = [_kg(grams) for grams in load.step.parts]
    # A plate on the back of a push-up does not count whole at the hands.
    if load.body_g and not (scale is not None and scale.kind == "plate"):
        data["system_kg"] = None if actual is None else _kg(round(load.body_g) + actual)
    return data


def _variable(variable: Variable | None) -> dict[str, Any]:
    """What bands or chains make of it: to half a kilogram, as the readings allow."""
    if variable is None:
        return {}
    load = variable.load
    return {
        "with": variable.what,
        "bottom_kg": _half(load.bottom),
        "middle_kg": _half(load.middle),
        "top_kg": _half(load.top),
        "top_share_percent": round(load.top_share),
    }


def _day(day: date | None) -> str | None:
    return None if day is None else day.isoformat()


def _half(kg: float) -> float:
    return _short(round(kg * 2) / 2)


def _kg(grams: float) -> float:
    """Grams as kilograms; whole grams have at most three decimals."""
    return _short(round(grams / 1000, 3))


def _short(number: float) -> float:
    return int(number) if number == int(number) else round(number, 3)
