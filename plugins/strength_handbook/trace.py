"""One dose followed from the word in its file to the phone, with the value at every stop.

For whoever wants to know where a figure comes from, or where a change belongs: each stop names the
function that does the step, and calls it.
"""

import json
from collections.abc import Iterator
from dataclasses import dataclass
from difflib import get_close_matches
from pathlib import Path
from typing import Any

from strength_handbook.dose.one_set import rep_seconds
from strength_handbook.dose.printing import notation
from strength_handbook.model.dose_part import DosePart
from strength_handbook.model.printed import clock, mass, percent, planned_mass
from strength_handbook.model.slot_dose import slot_dose
from strength_handbook.pages.load_html import plates
from strength_handbook.pages.page import url_of
from strength_handbook.pages.session_page import session_uri, use_anchor
from strength_handbook.phone.lists import phone_lists
from strength_handbook.phone.recipes import full_recipe
from strength_handbook.plan.loads import PlannedLoad
from strength_handbook.plan.minutes import work_seconds
from strength_handbook.plan.ramps import Ramp, slot_ramps
from strength_handbook.review.desk import Desk, SlotAt


class UnknownPlaceError(ValueError):
    """There is no such program, week, session or letter; the message lists those there are."""


@dataclass(frozen=True, slots=True)
class Stop:
    """One step of the way.

    Attributes:
        where: the function that does it, as ``module:function``.
        says: what comes out of it, line by line.
    """

    where: str
    says: tuple[str, ...]


def trace(desk: Desk, program: str, week: int, session: str, order: str) -> Iterator[Stop]:
    """The stops of one slot's dose in one week, in order.

    Args:
        desk: the programs worked out and their files.
        program: its folder, such as ``winter``.
        week: number of the week.
        session: its name in the file, such as ``a-lift``.
        order: letter and number of the slot, such as ``A`` or ``B1``.

    Raises:
        UnknownPlaceError: where one of them is not there.
    """
    at = _slot_at(desk, program, week, session, order)
    yield from _read(at)
    yield from _worked_out(desk, at)
    yield from _shown(desk, at)


def _slot_at(desk: Desk, program: str, week: int, session: str, order: str) -> SlotAt:
    left = list(desk.slots)
    asked = (("program", program), ("week", str(week)), ("session", session), ("letter", order))
    for what, value in asked:
        there = list(dict.fromkeys(_named(one)[what] for one in left))
        left = [one for one in left if _named(one)[what].lower() == value.lower()]
        if not left:
            near = get_close_matches(value, there, 1)
            meant = f"; did you mean '{near[0]}'?" if near else ""
            raise UnknownPlaceError(
                f"there is no {what} '{value}' here; there is {', '.join(there)}{meant}"
            )
    return left[0]


def _named(at: SlotAt) -> dict[str, str]:
    return {
        "program": at.program.id,
        "week": str(at.number),
        "session": at.session.id,
        "letter": at.slot.order,
    }


def _read(at: SlotAt) -> Iterator[Stop]:
    """From the file to the complete dose."""
    source, path = at.wave, at.dose_path
    mark = source.at(path)
    yield Stop(
        "reading.yaml_source:read_source",
        (f"{source.file}:{mark.line}:{mark.column}", _line(source.file, mark.line)),
    )
    data: Any = source.data
    for key in path:
        data = data[key] if isinstance(key, int) else data.get(key)
    yield Stop("reading.doses:expand_doses", (_json(data),))
    levels = {
        "week": at.slot.slot.weeks[at.number],
        "slot": at.slot.slot,
        "exercise": at.slot.exercise.dose,
    }
    yield Stop(
        "model.slot_dose:slot_dose, from what each level says",
        tuple(f"{name}: {_said(part)}" for name, part in levels.items() if part is not None),
    )
    dose = slot_dose(at.slot.slot, at.slot.exercise, at.number)
    yield Stop("model.dose:complete", (repr(dose).partition(", said=")[0] + ")",))


def _worked_out(desk: Desk, at: SlotAt) -> Iterator[Stop]:
    """From the dose to plates and minutes."""
    slot, units = at.slot, desk.book.room.units
    found = "no percentage of a tested value"
    if slot.percent is not None:
        found = f"{percent(slot.percent)} of {slot.base_id}"
    yield Stop("plan.reference:reference_percent", (found,))
    scale = slot.scale
    if scale is not None and scale.steps:
        first, last = (mass(scale.steps[place].grams, units) for place in (0, -1))
        many = f"{len(scale.steps)} loads from {first} to {last}, taken {scale.rounding}"
        yield Stop("plan.scales:scale_for", (f"{scale.on or scale.kind}: {many}",))
    else:
        yield Stop("plan.scales:scale_for", ("nothing to choose a load from",))
    loads = tuple(f"{name}: {_load(at, load, units)}" for name, load in slot.loads.items())
    yield Stop("plan.loads:plan_load", loads or ("no load that can be known",))
    ramps = slot_ramps(desk.book.room, slot)
    steps: tuple[str, ...] = ()
    if ramps is not None:
        steps = tuple(f"{name}: {_way(ramp, units)}" for name, ramp in ramps.by_lifter.items())
        steps = steps or (_way(ramps.everybody, units),)
    yield Stop("plan.ramps:slot_ramps", steps or ("no steps up to it",))
    one, whole = rep_seconds(desk.book.rule, slot.dose), work_seconds(desk.book, slot.dose)
    starts = dict(at.session.minutes.starts)
    yield Stop(
        "plan.minutes:session_minutes",
        (
            f"{one:g} s a repetition, {clock(whole)} a set",
            f"begins in minute {starts[slot.order[0]]:.0f} of {at.session.minutes.total:.0f}",
        ),
    )


def _shown(desk: Desk, at: SlotAt) -> Iterator[Stop]:
    """From there to page and phone."""
    yield Stop("dose.printing:notation", (notation(at.slot.dose),))
    lists = phone_lists(desk.worked)
    recipe = full_recipe(desk.worked, lists, at.program, at.week, at.session, at.slot)
    yield Stop(
        "phone.recipes:full_recipe, which loads.js turns into a load again",
        (_json(recipe) if recipe else "nothing: no load follows from a number",),
    )
    session = url_of(session_uri(at.program, at.number, at.session.id))
    anchor = use_anchor(at.program.id, at.number, at.session.id, at.slot.order)
    yield Stop(
        "pages.session_page:session_page and pages.exercise_page:exercise_page",
        (
            f"{session}#slot-{at.slot.order.lower()}",
            f"exercises/{at.slot.exercise_id}/#{anchor}",
        ),
    )


def _line(file: str, number: int) -> str:
    """The line as it stands in the file; empty where the file is no longer to be read."""
    try:
        return Path(file).read_text(encoding="utf-8").splitlines()[number - 1].strip()
    except (OSError, UnicodeDecodeError, IndexError):
        return ""


def _said(part: DosePart) -> str:
    known = {name: getattr(part, name) for name in DosePart.model_fields}
    said = {name: value for name, value in known.items() if value not in (None, {})}
    return (
        ", ".join(f"{name} {getattr(one, 'text', one)}" for name, one in said.items()) or "nothing"
    )


def _load(at: SlotAt, load: PlannedLoad, units: str) -> str:
    asked = planned_mass(load.planned_g, units)
    scale, step = at.slot.scale, load.step
    if scale is None or step is None:
        return f"{asked} asked"
    return f"{asked} asked, {mass(step.grams, units)} there: {plates(scale, step, units) or '-'}"


def _way(ramp: Ramp, units: str) -> str:
    return " → ".join(mass(step.grams, units) for step in ramp)


def _json(data: Any) -> str:
    return json.dumps(data, ensure_ascii=False)
