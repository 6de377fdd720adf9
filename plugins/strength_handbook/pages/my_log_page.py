"""The page of the member's own log; it stays in the browser."""

from itertools import groupby
from typing import Any

from strength_handbook.pages.page import Heading, Page, link
from strength_handbook.pages.render import render
from strength_handbook.pages.tools_html import block
from strength_handbook.plan.worked import Worked, WorkedProgram

URI = "my-log.md"
URL = "my-log/"


def my_log_page(worked: Worked) -> Page:
    """The form for an entry, and the places where a phone puts what it keeps."""
    exercises = worked.book.exercises
    by_name = sorted((exercise.name, key) for key, exercise in exercises.items())
    plans = {program.id: _plans(program) for program in worked.programs}
    html = render(
        "my_log.html",
        {
            "exercises": [(key, name) for name, key in by_name],
            "units": worked.book.room.units,
            "numbers": link(URL, "my-numbers/"),
            "home": link(URL, ""),
            "cards": link(URL, "cards/"),
            "plans": block("sh-log-plans", plans),
        },
    )
    return Page(
        URI,
        "My log",
        html,
        (Heading(2, "entry", "Add an entry"), Heading(2, "kept", "What is kept")),
        description="What you did, kept on this phone only",
        in_nav=True,
    )


def _plans(program: WorkedProgram) -> list[list[Any]]:
    """What is what in a session: first and last week, session, title, exercises, variants."""
    by_session: dict[str, list[tuple[int, str, dict[str, str], list[str]]]] = {}
    for week in program.weeks:
        for one in week.sessions:
            slots = {slot.order: slot.exercise_id for slot in one.slots}
            by_session.setdefault(one.id, []).append(
                (week.week, one.session.title, slots, [v.when for v in one.session.variants])
            )
    return [
        [weeks[0], weeks[-1], session, *same]
        for session, found in by_session.items()
        for same, weeks in (
            (same, [week for week, *_ in group])
            for same, group in groupby(found, key=lambda one: list(one[1:]))
        )
    ]
