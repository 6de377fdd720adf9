"""What to put out for a session before the group comes, and in which order it goes away."""

from collections.abc import Sequence
from typing import Any

from strength_handbook.model.printed import height
from strength_handbook.pages.coach.equipment import (
    NeededThing,
    bands_and_chains,
    masses_to_lay_out,
    plates_at_a_station,
    things,
)
from strength_handbook.pages.coach.frame import coach_page, coach_uri, head_of
from strength_handbook.pages.coach.sheet import week_range
from strength_handbook.pages.page import Heading, Page
from strength_handbook.plan.worked import (
    Worked,
    WorkedProgram,
    WorkedSession,
    WorkedSlot,
    WorkedWeek,
)


def put_out_page(worked: Worked, program: WorkedProgram) -> Page:
    """Lists for each session of each wave."""
    group = program.program.group
    waves: dict[str, list[WorkedWeek]] = {}
    for week in program.weeks:
        waves.setdefault(week.wave_id, []).append(week)
    parts = [
        {
            "id": key,
            "title": weeks[0].wave.wave,
            "weeks": week_range(weeks),
            "sessions": [
                _session(worked, program, same) for same in _sessions(weeks) if same
            ],
        }
        for key, weeks in waves.items()
    ]  # fmt: skip
    return coach_page(
        coach_uri("put-out", program.id),
        "Set out, put away",
        "coach_put_out.html",
        head_of(program)
        | {
            "waves": parts,
            "members": group.members,
            "sharing": group.sharing,
            "starts": group.starts,
        },
        says="What each session needs for this group, and the order of putting it away",
        headings=tuple(Heading(2, key, weeks[0].wave.wave) for key, weeks in waves.items()),
    )  # fmt: skip


def _sessions(weeks: Sequence[WorkedWeek]) -> list[list[WorkedSession]]:
    """The sessions of a wave, each with all its weeks."""
    found: dict[str, list[WorkedSession]] = {}
    for week in weeks:
        for one in week.sessions:
            found.setdefault(one.id, []).append(one)
    return list(found.values())


def _session(
    worked: Worked, program: WorkedProgram, sessions: Sequence[WorkedSession]
) -> dict[str, Any]:
    needed = things(worked.book, program, sessions)
    slots: dict[tuple[str, str], list[WorkedSlot]] = {}
    for session in sessions:
        for slot in session.slots:
            slots.setdefault((slot.order, slot.exercise.name), []).append(slot)
    return {
        "title": sessions[0].session.title,
        "things": [one for one in needed if not one.stays],
        "fixed": [one for one in needed if one.stays],
        "loads": [
            (f"{order} {name}", lines)
            for (order, name), same in sorted(slots.items(), key=lambda item: item[0])
            if (lines := _loads(same, worked.book.room.units))
        ],
        "away": putting_away(needed),
    }


def _loads(slots: Sequence[WorkedSlot], units: str) -> list[str]:
    """Plates, masses, bands and heights of one slot over its weeks."""
    plates, masses = plates_at_a_station(slots, units), masses_to_lay_out(slots, units)
    heights = dict.fromkeys(
        height(slot.dose.said.height) for slot in slots if slot.dose.said.height is not None
    )
    settings = dict.fromkeys(
        f"{name} {value}" for slot in slots for name, value in slot.dose.said.settings.items()
    )
    lines = [f"plates at each station: {plates}"] if plates else []
    lines += [masses] if masses else []
    lines += bands_and_chains(slots)
    lines += [f"height {' and '.join(heights)}"] if heights else []
    return lines + [", ".join(settings)] * bool(settings)


def putting_away(needed: Sequence[NeededThing]) -> list[tuple[str, list[str]]]:
    """What nobody needs any more, by the slot that ends then, the earliest first."""
    after: dict[str, list[NeededThing]] = {}
    for one in sorted(needed, key=lambda one: (one.end, _when(one))):
        if not one.stays:
            after.setdefault(one.last[0], []).append(one)
    return [(letter, [one.name for one in several]) for letter, several in after.items()]


_ORDER = ("bands", "chains", "bars", "carriers", "hand_weights", "kit")
"""What hangs on a bar goes first, then the bar, then what lies about."""


def _when(thing: NeededThing) -> int:
    return _ORDER.index(thing.section) if thing.section in _ORDER else len(_ORDER)
