"""Everything about the loads of one session that can wait until somebody asks.

The session's own page is read at the rack and has what is lifted from; here stand the tables by
body weight, the loads of the example lifters, and how each number was made.
"""

from typing import Any

from strength_handbook.pages.dose_html import dose_html
from strength_handbook.pages.instead_html import door_rows
from strength_handbook.pages.lookup import example_lines, slot_lookup
from strength_handbook.pages.method_html import left_out, method_html
from strength_handbook.pages.page import Heading, Page, link, url_of
from strength_handbook.pages.render import render, safe
from strength_handbook.pages.session_page import (
    exercise_link,
    loads_uri,
    session_uri,
    slot_anchor,
    use_anchor,
)
from strength_handbook.pages.variable_html import unloading_line
from strength_handbook.pages.working_html import working_html
from strength_handbook.plan.worked import (
    Worked,
    WorkedProgram,
    WorkedSession,
    WorkedSlot,
    WorkedWeek,
)
from strength_handbook.workings.volume import slot_working
from strength_handbook.workings.working import reps_text, rough_text


def loads_page(
    worked: Worked, program: WorkedProgram, week: WorkedWeek, session: WorkedSession
) -> Page:
    """All loads of one session, slot by slot."""
    uri = loads_uri(program, week.week, session.id)
    url, at = url_of(uri), session_uri(program, week.week, session.id)
    title = f"Week {week.week}: {session.session.title}, all loads"
    slots = [_slot(worked, program, week, session, slot, url) for slot in session.slots]
    html = render(
        "loads.html",
        {
            "title": title,
            "deload": week.deload,
            "session": link(url, url_of(at)),
            "numbers": link(url, "numbers/"),
            "slots": slots,
        },
    )
    return Page(
        uri,
        title,
        html,
        tuple(Heading(2, slot["id"], f"{slot['order']} {slot['name']}") for slot in slots),
        description=f"{program.program.program}, week {week.week}: every load, and how it is made.",
        parent=at,
        jumps=True,
        aside=True,
    )


def _slot(
    worked: Worked,
    program: WorkedProgram,
    week: WorkedWeek,
    session: WorkedSession,
    slot: WorkedSlot,
    url: str,
) -> dict[str, Any]:
    book = worked.book
    found = slot_lookup(slot, book.room.units)
    own = url_of(session_uri(program, week.week, session.id))
    anchor = use_anchor(program.id, session.week, session.id, slot.order)
    return {
        "id": slot_anchor(slot.order),
        "order": slot.order,
        "name": slot.exercise.name,
        "link": exercise_link(url, slot.exercise_id, anchor),
        "session": link(url, f"{own}#{slot_anchor(slot.order)}"),
        "notation": dose_html(slot.dose),
        "table": bool(found.table),
        "sentence": "" if found.table else found.sentence,
        "by_body": safe(found.by_body),
        "examples": [(name, safe(line)) for name, line in example_lines(slot, book)],
        "band": slot.reps_possible and reps_text(slot.reps_possible),
        "rough": rough_text(slot.reps_possible),
        "working": safe(working_html(slot_working(book, slot), url)),
        "unloading": safe(unloading_line(slot, book.room)),
        "method": left_out(method_html(worked, program, week, session, slot)),
        "doors": door_rows(worked, program, slot, url),
    }
