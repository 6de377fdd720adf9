"""The floor by minute: which pair is where, what is short, and what would end the queue."""

from collections.abc import Sequence
from typing import Any

from strength_handbook.model.room import Room
from strength_handbook.pages.coach_frame import coach_page, coach_uri, head_of
from strength_handbook.pages.coach_sheet_rows import by_wave
from strength_handbook.pages.numbers import hours_minutes
from strength_handbook.pages.page import Heading, Page
from strength_handbook.plan.floor import session_clock, session_floor
from strength_handbook.plan.floor_advice import Advice, advice
from strength_handbook.plan.floor_needs import thing_name
from strength_handbook.plan.floor_use import Floor, Interval, Shortage
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
        "rows": moments(floor),
        "slots": [(slot.order, slot.exercise.name) for slot in session.slots],
        "short": [_short(room, one) for one in floor.shortages],
        "sizes": [_short(room, one) for one in floor.short_sizes],
        "wait": f"{waited.wait:.0f} min for {waited.order}"
        if waited and waited.wait >= WAITS_FROM
        else "",
        "neck": (thing_name(room, neck.thing), f"{100 * neck.busy:.0f}") if neck else None,
        "advice": [_advice(one) for one in advice(clock)] if floor.shortages else [],
    }


def _pairs(floor: Floor) -> list[str]:
    """Names of the columns; several start groups count through."""
    groups = sorted({one.group for one in floor.intervals})
    if len(groups) == 1:
        return [f"{pair}" for pair in range(1, floor.pairs + 1)]
    return [f"{group}.{pair}" for group in groups for pair in range(1, floor.pairs + 1)]


def moments(floor: Floor) -> list[tuple[str, list[str]]]:
    """Every minute at which somebody starts, and what each pair starts then."""
    starts: dict[str, dict[tuple[int, int], list[Interval]]] = {}
    pairs = [(group, pair) for group in sorted({one.group for one in floor.intervals})
             for pair in range(1, floor.pairs + 1)]  # fmt: skip
    columns = {pair: index for index, pair in enumerate(pairs)}
    for one in sorted(floor.intervals, key=lambda one: one.start):
        moment = starts.setdefault(hours_minutes(one.start), {})
        moment.setdefault((one.group, one.pair), []).append(one)
    rows = []
    for minute, started in starts.items():
        cells = [""] * len(columns)
        for pair, several in started.items():
            cells[columns[pair]] = " ".join(one.order for one in several)
        rows.append((minute, cells))
    return rows


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
