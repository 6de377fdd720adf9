"""What methods, doors and variants come to, as data; only keys that have something to say."""

from collections.abc import Iterable, Mapping
from typing import Any

from strength_handbook.dose.effort import left_range, planned_left
from strength_handbook.model.book import Book
from strength_handbook.model.span import ends
from strength_handbook.plan.attempts import Next
from strength_handbook.plan.doors import DoorPlan, doors_of
from strength_handbook.plan.ladder import Ladder, Ladders
from strength_handbook.plan.loads import PlannedLoad
from strength_handbook.plan.method_plan import MethodPlan, method_plan
from strength_handbook.plan.next_written import what_follows
from strength_handbook.plan.progress import NextTarget, next_target
from strength_handbook.plan.ramps import Ramp, Ramps
from strength_handbook.plan.series import SeriesLoads, SeriesPlan
from strength_handbook.plan.slot_strips import Strips
from strength_handbook.plan.strip_load import StripLoads
from strength_handbook.plan.top_sets import BackOffPlan, BackOffRow
from strength_handbook.plan.variants import session_variants
from strength_handbook.plan.worked import (
    Worked,
    WorkedProgram,
    WorkedSession,
    WorkedSlot,
    WorkedWeek,
)
from strength_handbook.record.digest import digest, said

Data = dict[str, Any]


def slot_data(
    worked: Worked,
    program: WorkedProgram,
    week: WorkedWeek,
    session: WorkedSession,
    slot: WorkedSlot,
) -> Data:
    """Everything that a slot's method comes to."""
    book = worked.book
    data = _method(method_plan(book, slot, session, week))
    after = what_follows(program, session, slot)
    goal = next_target(slot, after=after, units=book.room.units)
    if goal is not None:
        own = {
            name: target
            for name in slot.loads
            if (target := next_target(slot, name, after=after, units=book.room.units))
        }
        data["next"] = _next(goal, own)
    data["doors"] = [_door(door) for door in doors_of(worked, program, slot)]
    return data


def variants_data(book: Book, program: WorkedProgram, session: WorkedSession) -> list[Data]:
    """The variants of a session."""
    return [
        {
            "when": one.variant.when,
            "words": digest(said(one.variant)),
            "minutes": round(one.minutes.total, 1),
            "left_out": [slot.order for slot in one.left_out],
            "slots": [
                {
                    "order": slot.order,
                    "sets": slot.dose.sets.high,
                    "tempo": slot.dose.tempo.text if slot.dose.tempo else None,
                    "rir": planned_left(slot.dose),
                    "rir_range": left_range(slot.dose),
                    "by_lifter": _loads(slot.loads),
                }
                for slot in one.slots
            ],
        }
        for one in session_variants(book, program.program, session)
    ]


def _method(plan: MethodPlan) -> Data:
    data: Data = {}
    if plan.ramps:
        data["ramp"] = _ramps(plan.ramps)
    if plan.test:
        data["test"] = _ladders(plan.test)
    if plan.back_off:
        data["back_off"] = _back_off(plan.back_off)
    if plan.strips:
        data["strip"] = _strips(plan.strips)
    if plan.series:
        data["series"] = _series(plan.series)
    if opened := plan.open_set:
        data["open_set"] = [
            {"reps": row.reps, "low": low, "high": high}
            for row in opened.rows
            for low, high in [row.factors or (None, None)]
        ]
    if (effort := plan.effort) and effort.percent is not None:
        data["effort"] = {"percent": round(effort.percent, 1), "reliable": effort.reliable}
    if own := plan.training_max:
        data["training_max"] = {
            "percent": own.percent,
            "of_best_percent": round(own.of_best, 1),
            "by_lifter": {name: _kg(grams) for name, grams in own.by_lifter.items()},
        }
    if broken := plan.broken:
        data["cluster"] = {
            "reps": broken.reps, "total": broken.total, "seconds": round(broken.seconds)
        }  # fmt: skip
    if clock := plan.interval:
        data["starts_s"] = [round(second) for second in clock.starts_s]
        data["total_s"] = round(clock.total_s)
    if timed := plan.timed:
        data["work_s"], data["rest_s"] = round(timed.work_s), round(timed.rest_s)
        data["total_s"] = round(timed.total_s)
    if density := plan.density:
        total, each = ends(density.total), ends(density.each)
        if total[0] < total[1]:
            data["density"] = {"at_least": total[0], "at_most": total[1]}
        else:
            data["density"] = {"total": total[0], "each": each[0]}
    if carry := plan.carry:
        data["carry"] = {"turns": carry.turns, "seconds": round(carry.seconds)}
    if team := plan.team:
        data["team"] = {"each_kg": round(team.each_g / 1000, 1), "changes": team.changes}
    if contacts := plan.contacts:
        data["contacts"] = {
            "slot": contacts.slot, "session": contacts.session, "week": contacts.week
        }  # fmt: skip
    if machine := plan.machine:
        data["machine"] = {"unit": machine.unit, "settings": dict(machine.settings)}
    return data


def _ramps(ramps: Ramps) -> Data:
    data: Data = {"by_lifter": {name: _ramp(ramp) for name, ramp in ramps.by_lifter.items()}}
    if ramps.everybody:
        data["everybody"] = _ramp(ramps.everybody)
    data["rows"] = [
        {"base_kg": _kg(value), "loads_kg": [_kg(step.grams) for step in ramp]}
        for value, ramp in ramps.rows
    ]
    return data


def _ramp(ramp: Ramp) -> list[Data]:
    return [
        {"load_kg": _kg(step.grams), "reps": step.reps, "on_kg": _all_kg(step.added)}
        | ({"off_kg": _all_kg(step.off)} if step.off else {})
        for step in ramp
    ]


def _ladders(plan: Ladders) -> Data:
    return {
        "rm": plan.rm,
        "attempts": plan.attempts,
        "first_percent": plan.rules.first,
        "up_percent": list(plan.rules.up),
        "down_percent": list(plan.rules.down),
        "by_lifter": {name: _ladder(one) for name, one in plan.by_lifter.items()},
        "rows": [{"base_kg": _kg(value), **_ladder(one)} for value, one in plan.rows],
        "body_rows": [
            {"best": label, "body_kg": _kg(body), **_ladder(one)}
            for label, rows in plan.body_rows.items()
            for body, one in rows
        ],
    }


def _ladder(one: Ladder) -> Data:
    return {
        "steps_kg": [_load(step.load) for step in one.steps],
        "first_kg": _load(one.first),
        "up_kg": _range(one.good),
        "down_kg": _range(one.missed),
    }


def _range(found: Next | None) -> list[float | None]:
    return [] if found is None else [_load(found.low), _load(found.high)]


def _back_off(plan: BackOffPlan) -> Data:
    def row(one: BackOffRow) -> Data:
        return {"top_kg": _kg(one.top_g), "load_kg": _load(one.load)}

    return {
        "rows": [row(one) for one in plan.rows],
        "by_lifter": {name: [row(one) for one in rows] for name, rows in plan.by_lifter.items()},
    }


def _strips(plan: Strips) -> Data:
    def loads(several: StripLoads | None) -> list[Data] | None:
        return None if several is None else [
            {
                "load_kg": _kg(one.amount), "off_kg": _all_kg(one.off), "hold": one.hold,
                "expect": list(one.expected),
            }
            for one in several
        ]  # fmt: skip

    return {
        "expect": [list(one.expected) for one in plan.aims[1:]],
        "loads_for_total": [plan.fewest, plan.most],
        "settings": [one.amount for one in plan.settings],
        "by_lifter": {name: loads(several) for name, several in plan.by_lifter.items()},
    }


def _series(plan: SeriesPlan) -> Data:
    def loads(several: SeriesLoads) -> list[Data]:
        return [
            {
                "sets": one.dose.sets.high, "reps": one.dose.reps and one.dose.reps.high,
                "load_kg": _load(one.load), "off_kg": _all_kg(one.off), "on_kg": _all_kg(one.on),
            }
            for one in several
        ]  # fmt: skip

    everybody = {"everybody": loads(plan.everybody)} if plan.everybody else {}
    return everybody | {"by_lifter": {name: loads(own) for name, own in plan.by_lifter.items()}}


def _next(goal: NextTarget, own: Mapping[str, NextTarget]) -> Data:
    return {
        "rule": goal.rule,
        "outcomes": [{"when": one.when, "then": one.then} for one in goal.outcomes],
        "by_lifter": {
            name: {
                "loads_kg": [one.load and _load(one.load) for one in target.outcomes],
                "warning": target.warning,
            }
            for name, target in own.items()
        },
        "warning": goal.warning,
    }


def _door(door: DoorPlan) -> Data:
    dose = door.dose
    return {
        "door": door.key,
        "exercise": door.to,
        "sets": dose.sets.high if dose else None,
        "reps": dose.reps.high if dose and dose.reps else None,
        "share_percent": door.share,
        "by_lifter": _loads(door.loads),
    }


def _loads(loads: Mapping[str, PlannedLoad]) -> Data:
    return {name: _load(load) for name, load in loads.items()}


def _load(load: PlannedLoad) -> float | None:
    return None if load.actual_g is None else _kg(load.actual_g)


def _all_kg(several: Iterable[int]) -> list[float]:
    return [_kg(grams) for grams in several]


def _kg(grams: float) -> float:
    kg = round(grams / 1000, 3)
    return int(kg) if kg == int(kg) else kg
