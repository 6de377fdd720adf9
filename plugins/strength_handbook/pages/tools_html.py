"""What pages carry for the small tools on a member's phone, such as the days of a program."""

import json
from itertools import groupby
from typing import Any

from markupsafe import Markup

from strength_handbook.model.weeks import WEEKDAYS
from strength_handbook.pages.page import link, url_of
from strength_handbook.pages.render import safe
from strength_handbook.plan.variants import offered
from strength_handbook.plan.worked import WorkedProgram, WorkedSession, WorkedWeek

OPTIONAL, VARIANTS = 1, 2
"""What is known of a session, added up."""


def block(name: str, data: Any) -> Markup:
    r"""A block of data that a script reads.

    >>> str(block("sh-x", ["<b>"]))
    '<script type="application/json" class="sh-x">["\\u003cb>"]</script>'
    """
    text = json.dumps(data, ensure_ascii=False, separators=(",", ":"), allow_nan=False)
    # No text of a coach's may end the element.
    text = text.replace("<", "\\u003c")
    return safe(f'<script type="application/json" class="{name}">{text}</script>')


def days_data(program: WorkedProgram, url: str) -> Markup:
    """On which days a program has which sessions; what today is, the phone's own clock says.

    Weeks with the same sessions stand together: first week, last week, sessions, and the minutes of
    each of them week by week. Each session is its id, title, weekday (0 is Monday, -1 where none
    is set), and what is known of it.
    """
    runs = [
        [weeks[0].week, weeks[-1].week, sessions, [_minutes(week) for week in weeks]]
        for sessions, weeks in (
            (sessions, list(group)) for sessions, group in groupby(program.weeks, key=_sessions)
        )
    ]
    start = program.program.start
    return block(
        "sh-days",
        {
            "id": program.id,
            "at": link(url, url_of(f"{program.id}/index.md")),
            "start": start.isoformat() if start else None,
            "first": program.weeks[0].week,
            "last": program.weeks[-1].week,
            "runs": runs,
            "waves": [
                [wave, sum(1 for _ in weeks)]
                for wave, weeks in groupby(program.weeks, key=lambda week: week.wave.wave)
            ],
        },
    )


def today_values(program: WorkedProgram, url: str) -> dict[str, Any]:
    """What a page needs that opens on today's week."""
    return {
        "id": program.id,
        "start": program.program.start,
        "valid_until": program.program.valid_until,
        "weeks": [week.week for week in program.weeks],
        "data": days_data(program, url),
    }


def _sessions(week: WorkedWeek) -> list[list[Any]]:
    return [_session(one) for one in week.sessions]


def _minutes(week: WorkedWeek) -> list[int]:
    return [round(one.minutes.total) for one in week.sessions]


def _session(one: WorkedSession) -> list[Any]:
    written = one.session
    day = WEEKDAYS.index(written.day) if written.day else -1
    known = OPTIONAL * written.optional + VARIANTS * bool(offered(one))
    return [one.id, written.title, day, known]
