"""One use of an exercise in short, as its page shows it; all others a phone fetches when asked.

An exercise's page has one use and a link to each of the others: it does not grow with the program.
A file beside it has them all, and `exercise-uses.js` takes out of it those of this week.
"""

import json
from collections.abc import Iterator, Sequence
from itertools import groupby
from typing import Any

from markupsafe import Markup

from strength_handbook.dose.printing import in_words, notation
from strength_handbook.model.room import Room
from strength_handbook.model.weeks import WEEKDAYS
from strength_handbook.pages.bar_html import apart_data, apart_drawer
from strength_handbook.pages.lookup import slot_lookup
from strength_handbook.pages.method_html import method_html
from strength_handbook.pages.page import link, url_of
from strength_handbook.pages.phone_html import dose_data, lists_of
from strength_handbook.pages.render import render, safe, tempo_apart
from strength_handbook.pages.session_page import (
    loads_uri,
    purpose_line,
    session_uri,
    slot_anchor,
    use_anchor,
)
from strength_handbook.phone.recipes import full_recipe
from strength_handbook.plan.alone import alone_here, alone_today
from strength_handbook.plan.worked import Use, Worked, WorkedSlot
from strength_handbook.workings.working import reps_text, rough_text


def use_html(worked: Worked, use: Use, url: str) -> Markup:
    """Dose, words and the member's own load of one use, and the ways to everything else.

    Args:
        worked: everything.
        use: where the exercise is used.
        url: address of the page it is shown on.
    """
    mine = dose_data(worked, use.program, use.week, use.session, use.slot)
    values = use_data(worked, use, url)
    return safe(render("use.html", values | {"mine": mine + apart_drawer(worked, use.slot)}))


def use_data(worked: Worked, use: Use, url: str) -> dict[str, Any]:
    """The same as data, for a phone to show; the recipe of its load is not in it."""
    program, week, session, slot = use.program, use.week, use.session, use.slot
    found = slot_lookup(slot, worked.book.room.units)
    loads = url_of(loads_uri(program, week.week, session.id))
    words = [
        in_words(slot.dose, slot.exercise),
        *method_html(worked, program, week, session, slot).lines,
        # Where there is a table, the sentence says how to read it: it stands with it.
        "" if found.table or found.by_body else found.sentence,
        purpose_line(slot),
    ]
    return {
        "title": f"Week {week.week}, {session.session.title}",
        "easy": week.deload,
        "dose": tempo_apart(notation(slot.dose)),
        "words": [one for one in words if one],
        "note": _possible(slot),
        "alone": _alone(slot, worked.book.room),
        "ways": [
            [
                _to_slot(use, url),
                f"{slot.order} of this session",
                ", with its loads by your best" if found.table else "",
            ],
            [
                link(url, f"{loads}#{slot_anchor(slot.order)}"),
                "All its loads, and how they were worked out",
                "",
            ],
        ],
    }


def _alone(slot: WorkedSlot, room: Room) -> str:
    """What a week's dose takes back of the page's own answer; empty where it takes nothing."""
    today = alone_today(slot, room)
    return "" if today == alone_here(slot.exercise, room) else today.words


def _possible(slot: WorkedSlot) -> str:
    band = slot.reps_possible and reps_text(slot.reps_possible)
    if not band:
        return ""
    rough = rough_text(slot.reps_possible)
    return f"Most people could do {band} at this load and tempo{rough}; the effort limit counts."


def uses_address(key: str) -> str:
    """Address of the file with all uses of an exercise."""
    return f"data/uses/{key}.js"


def uses_script(worked: Worked, key: str) -> str:
    """All uses of an exercise by their anchor, put beside the handbook's scripts.

    A plain script: it also loads from a file on a disk.
    """
    url = url_of(f"exercises/{key}.md")
    uses = {_anchor(use): _phone_data(worked, use, url) for use in worked.uses.get(key, ())}
    text = json.dumps(uses, ensure_ascii=False, separators=(",", ":"), allow_nan=False)
    return f"(globalThis.strengthHandbook=globalThis.strengthHandbook||{{}}).uses={text};\n"


def _phone_data(worked: Worked, use: Use, url: str) -> dict[str, Any]:
    mine = full_recipe(worked, lists_of(worked), use.program, use.week, use.session, use.slot)
    apart = apart_data(worked, use.slot)
    return use_data(worked, use, url) | {"mine": mine, "apart": apart}


def uses_by_session(uses: Sequence[Use], url: str) -> list[dict[str, Any]]:
    """For each program: its id and start, and the links to all uses, session by session."""
    return [
        {
            "id": program.id,
            "title": program.program.program,
            "start": program.program.start,
            "sessions": list(_sessions(list(of_program), url)),
        }
        for program, of_program in groupby(uses, key=lambda use: use.program)
    ]


def _sessions(uses: Sequence[Use], url: str) -> Iterator[dict[str, Any]]:
    titles = dict.fromkeys(use.session.session.title for use in uses)
    for title in titles:
        same = [use for use in uses if use.session.session.title == title]
        weeks = [use.week.week for use in same]
        yield {
            "title": title,
            "uses": [
                {
                    "id": _anchor(use),
                    "link": _to_slot(use, url),
                    "week": use.week.week,
                    "order": use.slot.order if weeks.count(use.week.week) > 1 else "",
                    "deload": use.week.deload,
                    "day": WEEKDAYS.index(use.session.session.day)
                    if use.session.session.day
                    else -1,
                }
                for use in same
            ],
        }


def _to_slot(use: Use, url: str) -> str:
    page = url_of(session_uri(use.program, use.week.week, use.session.id))
    return link(url, f"{page}#{slot_anchor(use.slot.order)}")


def _anchor(use: Use) -> str:
    return use_anchor(use.program.id, use.week.week, use.session.id, use.slot.order)
