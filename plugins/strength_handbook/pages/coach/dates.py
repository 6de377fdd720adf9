"""Days on which equipment is looked at again or thrown away, from room.yml."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Any

from pydantic import BaseModel

from strength_handbook.model.exercise import Exercise
from strength_handbook.model.loading import Loading
from strength_handbook.model.room import Room
from strength_handbook.pages.coach.frame import coach_page, coach_uri
from strength_handbook.pages.page import Heading, Page, url_of
from strength_handbook.pages.session_page import exercise_link
from strength_handbook.plan.worked import Use, Worked, WorkedProgram

URI = coach_uri("calendar")


_LOADED_WITH = ("bar", "weight", "carrier", "stack", "machine", "pivot", "rack", "chains")
"""Keys of a load that name a thing of the room."""


@dataclass(frozen=True, slots=True)
class Dated:
    """One thing of the room that may have a last day.

    Attributes:
        section: where room.yml has it.
        key: its id there.
        name: what it is called.
        until: the day; None where it could be written and is not.
        known: False where room.yml has no place for a day of this thing.
    """

    section: str
    key: str
    name: str
    until: date | None
    known: bool = True

    @property
    def wears(self) -> bool:
        """False for kit, which mostly never needs a day."""
        return self.section != "kit"


def dated_things(room: Room) -> Iterator[Dated]:
    """Everything in the room, whatever its kind; what has a field `until` may have a day."""
    names = room.names()
    for section, group in room:
        if not isinstance(group, dict):
            continue
        for key, thing in group.items():
            if isinstance(thing, BaseModel):
                fields = dict(thing)
                known = "until" in fields
                yield Dated(section, key, names[key], fields.get("until"), known)


def calendar_page(worked: Worked) -> Page:
    """The days in order, what uses each thing, and what has no day."""
    every = list(dated_things(worked.book.room))
    url = url_of(URI)
    days: dict[date, list[dict[str, Any]]] = {}
    for one in sorted(every, key=lambda one: (one.until or date.max, one.section)):
        if one.until is not None:
            days.setdefault(one.until, []).append(_row(worked, one, url))
    undated = [_row(worked, one, url) for one in every
               if one.known and one.wears and one.until is None]  # fmt: skip
    nowhere: dict[str, list[str]] = {}
    for one in every:
        if not one.known:
            nowhere.setdefault(one.section.replace("_", " "), []).append(one.name)
    return coach_page(
        URI,
        "Calendar of the equipment",
        "coach_calendar.html",
        {
            "days": list(days.items()),
            "undated": undated,
            "nowhere": list(nowhere.items()),
            "kit": [one.name for one in every if not one.wears and one.until is None],
            "ends": [(program.program.program, last) for program in worked.programs
                     if (last := last_day(program))],
        },
        says="When bands and chains are read or looked over again, and what uses them",
        headings=(Heading(2, "days", "By date"), Heading(2, "none", "Without a date")),
    )  # fmt: skip


def last_day(program: WorkedProgram) -> date | None:
    """The last day of a program: by its start and weeks, else its `valid-until`."""
    start = program.program.start
    if start is not None and program.weeks:
        return start + timedelta(weeks=program.weeks[-1].week, days=-1)
    return program.program.valid_until


def _row(worked: Worked, one: Dated, url: str) -> dict[str, Any]:
    users = users_of(worked, one)
    return {
        "name": one.name,
        "early": [
            program.program.program
            for program in worked.programs
            if one.until is not None and (last := last_day(program)) and one.until < last
        ],
        "users": [(worked.book.exercises[key].name, exercise_link(url, key)) for key in users],
    }


def users_of(worked: Worked, one: Dated) -> list[str]:
    """Exercises that name a thing, or in whose doses an example lifter gets it, by name."""
    found = [
        key
        for key, exercise in worked.book.exercises.items()
        if one.key in _named(exercise)
        or any(_takes(use, one.key) for use in worked.uses.get(key, ()) if one.section == "bands")
    ]
    return sorted(found, key=lambda key: worked.book.exercises[key].name)


def loaded_with(load: Loading) -> list[str]:
    """Ids of the room that a load names."""
    fields = dict(load)
    return [str(fields[key]) for key in _LOADED_WITH if fields.get(key)]


def _named(exercise: Exercise) -> set[str]:
    return {*exercise.stations, *exercise.uses, *loaded_with(exercise.load)}


def _takes(use: Use, band: str) -> bool:
    """True where a dose names the band, or an example lifter's bar hangs on it."""
    said = use.slot.dose.said
    if said.assist is not None and said.assist.band == band:
        return True
    if said.bands is not None and band in said.bands.pair:
        return True
    taken = (one.what.replace("bands ", "").split(" and ") for one in use.slot.variable.values())
    return said.bands is not None and any(band in pair for pair in taken)
