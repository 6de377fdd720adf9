"""The lists that all pages of a site pick from on a phone: loads with their plates, ramps, strips.

They go into one file. A list is named after what is in it, so that a page of one publication never
picks from the lists of another: a name that is not there is a file that does not fit.
"""

import json
from collections.abc import Mapping
from dataclasses import dataclass, field
from hashlib import sha256
from typing import Any

from strength_handbook.dose.best_of_day import REST_S
from strength_handbook.model.book import Book
from strength_handbook.model.dose import StripSet
from strength_handbook.model.exercise import Exercise
from strength_handbook.model.loading import BodyWeightLift
from strength_handbook.model.methods import Strip
from strength_handbook.model.program import Base
from strength_handbook.phone.on_top import on_top_data
from strength_handbook.phone.rack import swap_data
from strength_handbook.phone.scales import plates_data, ramps_data, scale_data
from strength_handbook.plan.doors import NAMES
from strength_handbook.plan.ladder import SETS
from strength_handbook.plan.loads import body_share_g
from strength_handbook.plan.method_plan import method_plan
from strength_handbook.plan.new_best import factors
from strength_handbook.plan.scale import Scale
from strength_handbook.plan.strip_lifters import depends_on_body
from strength_handbook.plan.strips import rack_of, strip_loads
from strength_handbook.plan.tables import start_table
from strength_handbook.plan.worked import Worked, WorkedSlot

SCHEMA = 1

Data = dict[str, Any]
Key = tuple[Any, ...]


def millionths(percent: float) -> int:
    """A percentage in millionths: products of two percentages still come out whole.

    >>> millionths(77.5), millionths(82.5 * 92.5 / 100)
    (77500000, 76312500)
    """
    return round(percent * 1_000_000)


@dataclass(eq=False)
class PhoneLists:
    """The lists, and how each is called.

    Attributes:
        bases: tested values of all programs, by id.
        scale_ids: name of each scale's list.
        data: everything, as it goes into the file.
    """

    bases: Mapping[str, Base]
    scale_ids: Mapping[Scale, str]
    data: Data
    strips: Mapping[Key, str] = field(default_factory=dict)
    on_top: Mapping[Key, str] = field(default_factory=dict)

    def strip_id(self, slot: WorkedSlot) -> str:
        """Name of the list of a slot's strips, where the body is no part of them."""
        return self.strips[_strip_key(slot)]

    def on_top_id(self, slot: WorkedSlot) -> str | None:
        """Name of the list of a slot's bands or chains; None where it has none."""
        return None if slot.on_top is None else self.on_top[_on_top_key(slot)]


def phone_lists(worked: Worked) -> PhoneLists:
    """All lists of a site."""
    book = worked.book
    bases = {key: one for p in worked.programs for key, one in p.program.bases.items()}
    scales: dict[Scale, Data] = {}
    for key, scale in worked.scales.items():
        if scale is not None and scale not in scales:
            scales[scale] = scale_data(book, book.exercises[key], scale)
    strips: dict[Key, Data] = {}
    on_top: dict[Key, Data] = {}
    for use in (use for several in worked.uses.values() for use in several):
        slot, scale = use.slot, use.slot.scale
        if scale is None:
            continue
        if scale not in scales:  # put together for its strips
            scales[scale] = scale_data(book, slot.exercise, scale)
        ramps = method_plan(book, slot, use.session, use.week).ramps
        if ramps is not None and ramps.percent is not None and "ramps" not in scales[scale]:
            scales[scale]["ramps"] = ramps_data(book, slot.exercise, scale)
        if isinstance(slot.dose.work, StripSet):
            asked = slot.dose.work.strip
            if depends_on_body(slot.exercise.load, scale, asked):
                scales[scale]["plates"] = plates_data(scale, scales[scale]["parts"])
                if scale.most is not None:
                    scales[scale]["most"] = scale.most
            elif (key_ := _strip_key(slot)) not in strips:
                strips[key_] = _strips(book, slot.exercise, scale, asked)
        if slot.on_top is not None and (key_ := _on_top_key(slot)) not in on_top:
            on_top[key_] = on_top_data(slot.on_top, scale)
    named: dict[str, dict[str, Data]] = {"scales": {}, "strips": {}, "on_top": {}}
    scale_ids = {key: _named(named["scales"], one) for key, one in scales.items()}
    strip_ids = {key: _named(named["strips"], one) for key, one in strips.items()}
    on_top_ids = {key: _named(named["on_top"], one) for key, one in on_top.items()}
    data = {
        "schema": SCHEMA,
        "units": book.room.units,
        "show_planned_from": millionths(book.rule("show-planned-from")),
        "doors": list(NAMES.values()),
        "door_keys": list(NAMES),
        "test_reps": [[low, high] for low, high, *_ in SETS],
        "test_rest": [one // 60 for one in REST_S],
        "swap": swap_data(book),
        "bases": {key: _base(worked, one, scale_ids) for key, one in bases.items()},
        "bests": {k: one.name for p in worked.programs for k, one in p.program.bests.items()},
        "singles": factors(),
        "starts": _starts(worked),
        **named,
    }
    return PhoneLists(bases, scale_ids, data, strip_ids, on_top_ids)


COLUMNS = 2
"""Columns of a starting table that a phone shows: the most careful one, and the next."""


def _starts(worked: Worked) -> dict[str, Data]:
    """Where to start by body weight, of each exercise that has a table for it.

    `n` heads of columns; `r` rows of body mass and loads, or `z` shares of the body that moves.
    """
    found: dict[str, Data] = {}
    for key, exercise in worked.book.exercises.items():
        table = start_table(exercise.load, worked.scales.get(key), worked.book.room.units)
        if table is None:
            continue
        data: Data = {"n": list(table.columns[:COLUMNS])}
        if isinstance(exercise.load, BodyWeightLift):
            data["z"] = [millionths(share) for share in exercise.load.shares[:COLUMNS]]
        else:
            cells = ((body, [cell.grams for cell in row[:COLUMNS]]) for body, row in table.rows)
            data["r"] = [[body, *grams] for body, grams in cells]
        found[key] = data
    return found


def _base(worked: Worked, base: Base, scale_ids: Mapping[Scale, str]) -> list[Any]:
    """Name, kind, share of the body that moves in its lift, and the list of its loads."""
    exercise = worked.book.exercises[base.exercise]
    scale = worked.scales.get(base.exercise)
    share = millionths(body_share_g(exercise.load, 100.0))
    return [base.name, base.kind, share, *([scale_ids[scale]] if scale else [])]


def _strip_key(slot: WorkedSlot) -> Key:
    work = slot.dose.work
    assert isinstance(work, StripSet)  # noqa: S101  # asked for strips only
    return slot.exercise_id, work.strip.loads, work.strip.drop


def _strips(book: Book, exercise: Exercise, scale: Scale, asked: Strip) -> Data:
    """Loads of a strip set from every first load: grams, whether to hold the bar, plates off.

    The first load has all its plates there instead, inner to outer. What has no plates that come
    off is put together as its step says.
    """
    rack = rack_of(book.room, exercise)
    found: Data = {"rack": rack.name} if rack else {}
    for step in scale.steps:
        loads = strip_loads(book.room, exercise, scale, asked, step.grams)
        if loads:
            plated = scale.table is not None
            found[str(step.grams)] = [
                [round(one.amount), int(one.hold)]
                + ([*(one.off if one.off else one.parts)] if plated else [])
                for one in loads
            ]
    return found


def _on_top_key(slot: WorkedSlot) -> Key:
    said = slot.dose.said
    return slot.exercise_id, repr(said.bands), repr(said.chains)


def _named(shelf: dict[str, Data], one: Data) -> str:
    """Put a list on its shelf under a name that follows from what is in it."""
    text = json.dumps(one, sort_keys=True, ensure_ascii=False)
    digest = sha256(text.encode()).hexdigest()
    for length in range(4, len(digest) + 1):
        name = digest[:length]
        if shelf.setdefault(name, one) == one:
            break
    return name
