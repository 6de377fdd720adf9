"""The floor by minute: which pair is where, what is short, and what would end the queue."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from strength_handbook.floor.advice import Advice, advice
from strength_handbook.floor.floor import session_clock, session_floor
from strength_handbook.floor.needs import thing_name
from strength_handbook.floor.use import Bottleneck, Floor, Shortage, Stay
from strength_handbook.model.printed import hours_minutes
from strength_handbook.model.room import Room
from strength_handbook.pages.coach.frame import coach_page, coach_uri, head_of
from strength_handbook.pages.coach.sheet_rows import by_wave
from strength_handbook.pages.page import Heading, Page
from strength_handbook.plan.worked import Worked, WorkedProgram, WorkedSession

WAITS_FROM = 0.5
"""Minutes from which a wait is worth a word."""


def floor_page(worked: Worked, program: WorkedProgram) -> Page:
    """For each session of each wave, its longest week on the floor."""
    group = program.program.group
    parts = []
    for weeks in by_wave(program.weeks):
        found: dict[str, list[WorkedSession]] = {}
        for week in weeks:
            for one in week.sessions:
                found.setdefault(one.id, []).append(one)
        longest = [max(same, key=lambda one: one.minutes.total) for same in found.values()]
        parts.append(
            {
                "id": weeks[0].wave_id,
                "title": weeks[0].wave.wave,
                "sessions": [_session(worked, program, one) for one in longest],
            }
        )
    return coach_page(
        coach_uri("floor", program.id),
        "Floor by minute",
        "coach_floor.html",
        head_of(program)
        | {
            "members": group.members,
            "sharing": group.sharing,
            "company": group.company if group.sharing > 1 else "station",
            "starts": group.starts,
            "apart": f"{group.apart / 60:g}",
            "waves": parts,
        },
        says="Which pair is where at which minute, and what is short",
        headings=tuple(
            Heading(2, weeks[0].wave_id, weeks[0].wave.wave) for weeks in by_wave(program.weeks)
        ),
    )


def _session(worked: Worked, program: WorkedProgram, session: WorkedSession) -> dict[str, Any]:
    room = worked.book.room
    clock = session_clock(worked.book, program.program, session)
    floor = session_floor(clock)
    waited = floor.longest_wait
    neck = floor.bottleneck
    return {
        "title": session.session.title,
        "week": session.week,
        "evening": f"{floor.evening:.0f}",
        "minutes": f"{floor.minutes:.0f}",
        "pairs": _pairs(floor),
        "rows": moments(floor, program.program.group.apart / 60),
        "slots": [(slot.order, slot.exercise.name) for slot in session.slots],
        "short": [_short(room, one) for one in floor.shortages],
        "sizes": [_short(room, one) for one in floor.short_sizes],
        "wait": f"{waited.wait:.0f} min for {waited.order}"
        if waited and waited.wait >= WAITS_FROM
        else "",
        "neck": _neck(room, neck) if neck else None,
        "advice": [_advice(one) for one in advice(clock)] if floor.shortages else [],
    }


def _pairs(floor: Floor) -> list[str]:
    """Names of the columns; several start groups count through."""
    groups = sorted({one.group for one in floor.intervals})
    if len(groups) == 1:
        return [f"{pair}" for pair in range(1, floor.pairs + 1)]
    return [f"{group}.{pair}" for group in groups for pair in range(1, floor.pairs + 1)]


@dataclass(frozen=True, slots=True)
class FloorCell:
    """What a pair does at a moment.

    Attributes:
        text: letters, or a word where it trains at none.
        until: when it ends what it begins at this moment; empty where nothing begins.
    """

    text: str
    until: str = ""


def moments(floor: Floor, apart: float) -> list[tuple[str, list[FloorCell]]]:
    """Every minute at which a pair begins something or is through, and what all pairs do then.

    Args:
        floor: the session on the floor.
        apart: minutes between start groups.
    """
    columns: dict[tuple[int, int], list[Stay]] = {}
    for one in sorted(floor.intervals, key=lambda one: (one.group, one.pair, one.start)):
        columns.setdefault((one.group, one.pair), []).append(one)
    minutes = {_minute(one.start) for one in floor.intervals}
    minutes |= {_minute(turns[-1].end) for turns in columns.values()}
    return [
        (
            hours_minutes(minute),
            [_cell(turns, minute, (group - 1) * apart) for (group, _), turns in columns.items()],
        )
        for minute in sorted(minutes)
    ]


def _cell(turns: Sequence[Stay], minute: float, door: float) -> FloorCell:
    """What one pair does at a minute, given its turns in order and when it comes."""
    begun = [one for one in turns if _minute(one.start) == minute]
    if begun:
        letters = " ".join(dict.fromkeys(one.order for one in begun))
        return FloorCell(letters, hours_minutes(max(one.end for one in begun)))
    at_it = [one for one in turns if _minute(one.start) < minute < _minute(one.end)]
    if at_it:
        return FloorCell(" ".join(dict.fromkeys(one.order for one in at_it)))
    if minute >= _minute(turns[-1].end):
        return FloorCell("done")
    if minute < _minute(turns[0].start) - turns[0].wait:
        return FloorCell("warm-up" if minute >= door else "not here")
    coming = next(one for one in turns if _minute(one.start) > minute)
    return FloorCell("waits" if minute >= coming.start - coming.wait else "moves")


def _minute(minutes: float) -> float:
    """As the table prints it: whole minutes."""
    return float(round(minutes))


def _neck(room: Room, neck: Bottleneck) -> tuple[str, str]:
    """What runs short first, all of a tie, and how long it is in use."""
    names = dict.fromkeys(thing_name(room, thing) for thing in (neck.thing, *neck.also))
    return _and(list(names)), f"{100 * neck.busy:.0f}"


def _short(room: Room, one: Shortage) -> str:
    return (
        f"{hours_minutes(one.minute)}: {thing_name(room, one.thing)}, {one.needed} wanted for "
        f"{_and(one.orders)}, {one.owned} here"
    )


def _advice(one: Advice) -> str:
    if one.rotate:
        return f"write 'rotate: [{', '.join(one.rotate)}]' in the session"
    return f"write 'apart: {one.apart:g} min' in the group"


def _and(words: Sequence[str]) -> str:
    """Words as a list.

    >>> _and(["A", "B1", "B2"]), _and(["A"])
    ('A, B1 and B2', 'A')
    """
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} and {words[-1]}"
