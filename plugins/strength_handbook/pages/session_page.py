"""The page of one session in one week: read standing up, with one hand."""

from typing import Any, Literal

from strength_handbook.dose.printing import in_words
from strength_handbook.model.exercise import Spotting
from strength_handbook.model.printed import hours_minutes
from strength_handbook.model.room import Emergency, Room
from strength_handbook.model.words import CAUTIONS, HAZARD_NAMES
from strength_handbook.pages.bar_html import apart_drawer, bar_attributes, has_shared_bar
from strength_handbook.pages.dose_html import dose_html
from strength_handbook.pages.goal_results_html import session_results
from strength_handbook.pages.instead_html import door_rows, variant_rows
from strength_handbook.pages.lookup import below_words, slot_lookup
from strength_handbook.pages.method_html import brief, method_html
from strength_handbook.pages.page import Heading, Page, link, url_of
from strength_handbook.pages.paper_html import write_in
from strength_handbook.pages.phone_html import dose_data
from strength_handbook.pages.render import render, safe
from strength_handbook.pages.train_html import closing, train_data, warm_up_title
from strength_handbook.plan.alone import alone_today
from strength_handbook.plan.dose_hazards import brought_by, hazards_of, set_up_steps
from strength_handbook.plan.variants import offered
from strength_handbook.plan.worked import (
    Worked,
    WorkedProgram,
    WorkedSession,
    WorkedSlot,
    WorkedWeek,
)
from strength_handbook.workings.working import reps_text, rough_text


def week_uri(program: WorkedProgram, week: int) -> str:
    """Source path of a week's page."""
    return f"{program.id}/week-{week:02d}/index.md"


def session_uri(program: WorkedProgram, week: int, session: str) -> str:
    """Source path of a session's page."""
    return f"{program.id}/week-{week:02d}/{session}.md"


def loads_uri(program: WorkedProgram, week: int, session: str) -> str:
    """Source path of the page with all loads of a session."""
    return f"{program.id}/week-{week:02d}/{session}/loads.md"


def slot_anchor(order: str) -> str:
    """Where a slot stands on its session's page, and on the page of its loads."""
    return f"slot-{order.lower()}"


def use_anchor(program: str, week: int, session: str, order: str) -> str:
    """Where an exercise page names one week's dose."""
    return f"{program}-week-{week:02d}-{session}-{order.lower()}"


def purpose_line(slot: WorkedSlot) -> str:
    """What a slot is for, as a sentence; empty where the coach says nothing."""
    purpose = slot.slot.purpose or ""
    return purpose if purpose[-1:] in ("", ".", "?", "!") else f"{purpose}."


def exercise_link(from_url: str, exercise_id: str, anchor: str = "") -> str:
    """Relative address of an exercise's page."""
    return link(from_url, f"exercises/{exercise_id}/" + (f"#{anchor}" if anchor else ""))


def session_page(
    worked: Worked, program: WorkedProgram, week: WorkedWeek, session: WorkedSession
) -> Page:
    """One session page."""
    uri = session_uri(program, week.week, session.id)
    url = url_of(uri)
    room = worked.book.room
    title = f"Week {week.week}: {session.session.title}"
    html = render(
        "session.html",
        {
            "title": title,
            "wave": week.wave.wave,
            "deload": week.deload,
            "day": (session.session.day or "").capitalize(),
            "minutes": round(session.minutes.total),
            "version": program.program.version,
            "valid_until": program.program.valid_until,
            "purpose": session.session.purpose,
            "optional": session.session.optional,
            "safety": link(url, "safety/"),
            "missed": link(url, f"{program.id}/missed/"),
            "my_numbers": link(url, "my-numbers/"),
            "my_log": link(url, "my-log/"),
            "units": room.units,
            "shared": has_shared_bar(worked, session),
            "loads": link(url, url_of(loads_uri(program, week.week, session.id))),
            "week_link": link(url, url_of(week_uri(program, week.week))),
            "groups": _groups(worked, program, week, session, url),
            "rotate": _rotated(session),
            "supervised": session.session.supervised,
            "train": train_data(worked, program, week, session),
            "results": session_results(program, week, session),
            "warm_up": session.session.warm_up,
            "before": warm_up_title(program),
            "close": closing(program),
            "sharing": program.program.group.sharing,
            "company": program.program.group.company,
            "cut_first": session.session.cut_first,
            "variants": variant_rows(worked, program, session),
            "rules": program.program.rules,
            "partner": [
                (slot.order, slot.exercise.name, spotting.spotters, _how_to_spot(spotting))
                for slot in session.slots
                if (spotting := slot.exercise.spotting).spotters
            ],
            "nobody_alone": room.emergency.nobody_alone,
            "not_alone": _alone(session, room, "no"),
            "changed_alone": _alone(session, room, "changed"),
            "rest_alone": any(alone_today(slot, room).answer == "fine" for slot in session.slots),
            "emergency": safe(emergency_panel(room.emergency)),
        },
    )
    headings = [Heading(2, "warm-up", "Warm-up")]
    headings += [
        Heading(2, slot_anchor(slot.order), f"{slot.order} {slot.exercise.name}")
        for slot in session.slots
    ]
    if offered(session):
        headings.append(Heading(2, "less", "Only half a day?"))
    headings += [Heading(2, "emergency", "If someone is hurt")]
    return Page(
        uri,
        title,
        html,
        tuple(headings),
        description=f"{program.program.program}, week {week.week}: {session.session.purpose}",
        parent=week_uri(program, week.week),
        boost=1.5,
        jumps=True,
    )


def _how_to_spot(spotting: Spotting) -> str:
    """Where partners stand, and the word that calls them."""
    word = f" The word is “{spotting.word}”." if spotting.word else ""
    return f"{spotting.where}{word}"


def _alone(
    session: WorkedSession, room: Room, answer: Literal["changed", "no"]
) -> list[tuple[str, str]]:
    """Exercises that may not be done alone, or only with a change, and how."""
    today = ((slot.exercise.name, alone_today(slot, room)) for slot in session.slots)
    return [(name, alone.how) for name, alone in today if alone.answer == answer]


def _rotated(session: WorkedSession) -> list[str]:
    """Letters that are done in turn, each station beginning at another; none for fewer than two."""
    here = {slot.order[0] for slot in session.slots}
    letters = [letter for letter in session.session.rotate if letter in here]
    return letters if len(letters) > 1 else []


def emergency_panel(emergency: Emergency) -> str:
    """The emergency panel, the same on every page."""
    dials = any(map(str.isdecimal, emergency.number))  # not where it is still to be filled in
    return render("emergency.html", {"e": emergency, "dials": dials})


def _care(slot: WorkedSlot) -> dict[str, Any]:
    """The week's hazards in a line, and whole what bands, chains or pins of this dose bring."""
    names = [HAZARD_NAMES[one] for one in hazards_of(slot.exercise, slot.dose)]
    brought = brought_by(slot.dose)
    return {
        "care": ", ".join(names),
        "care_first": " ".join(CAUTIONS[one] for one in brought),
        "set_up": set_up_steps(slot.dose),
    }


def _groups(
    worked: Worked, program: WorkedProgram, week: WorkedWeek, session: WorkedSession, url: str
) -> list[dict[str, Any]]:
    """The slots by letter, each group with the minute at which it starts."""
    starts = dict(session.minutes.starts)
    groups: list[dict[str, Any]] = []
    for slot in session.slots:
        letter = slot.order[0]
        if not groups or groups[-1]["letter"] != letter:
            groups.append(
                {"letter": letter, "at": hours_minutes(starts[letter]), "slots": [], "again": False}
            )
        groups[-1]["slots"].append(_slot(worked, program, week, session, slot, url))
        groups[-1]["again"] |= slot.dose.sets.high > 1
    for group in groups:
        group["paired"] = len(group["slots"]) > 1
    return groups


def _slot(
    worked: Worked,
    program: WorkedProgram,
    week: WorkedWeek,
    session: WorkedSession,
    slot: WorkedSlot,
    url: str,
) -> dict[str, Any]:
    units = worked.book.room.units
    found = slot_lookup(slot, units)
    anchor = use_anchor(program.id, session.week, session.id, slot.order)
    return {
        "order": slot.order,
        "exercise": slot.exercise_id,
        "bar": bar_attributes(worked, slot),
        "id": slot_anchor(slot.order),
        "name": slot.exercise.name,
        "link": exercise_link(url, slot.exercise_id, anchor),
        **_care(slot),
        "care_link": exercise_link(url, slot.exercise_id, "cautions"),
        "table_link": exercise_link(url, slot.exercise_id, "by-body-weight"),
        "purpose": purpose_line(slot),
        "notation": dose_html(slot.dose),
        "words": in_words(slot.dose, slot.exercise),
        "voice": slot.exercise.cues.voice,
        "note": slot.dose.said.note,
        "sentence": found.sentence,
        "heavy": "How heavy?" if slot.dose.going is None else "How fast?",
        "table": safe(found.table),
        "by_body": bool(found.by_body),
        "by_body_below": found.by_body_below,
        "below": below_words(slot, units),
        "method": brief(method_html(worked, program, week, session, slot)),
        "doors": door_rows(worked, program, slot, url, examples=False),
        "write": write_in(slot, units),
        "mine": dose_data(worked, program, week, session, slot) + apart_drawer(worked, slot),
        "band": slot.reps_possible and reps_text(slot.reps_possible),
        "rough": rough_text(slot.reps_possible),
    }
