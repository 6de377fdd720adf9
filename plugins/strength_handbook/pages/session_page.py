"""The page of one session in one week: read standing up, with one hand."""

from typing import Any, Literal

from strength_handbook.model.room import Emergency
from strength_handbook.pages.bar_html import apart_drawer, bar_attributes, has_shared_bar
from strength_handbook.pages.dose_text import in_words, notation
from strength_handbook.pages.instead_html import door_rows, variant_rows
from strength_handbook.pages.lookup import slot_lookup
from strength_handbook.pages.method_html import brief, method_html
from strength_handbook.pages.numbers import hours_minutes
from strength_handbook.pages.page import Heading, Page, link, url_of
from strength_handbook.pages.phone_html import dose_data
from strength_handbook.pages.render import render, safe
from strength_handbook.pages.train_html import train_data
from strength_handbook.plan.worked import (
    Worked,
    WorkedProgram,
    WorkedSession,
    WorkedSlot,
    WorkedWeek,
)
from strength_handbook.plan.working import reps_text


def week_uri(program: WorkedProgram, week: int) -> str:
    """Source path of a week's page."""
    return f"{program.id}/week-{week:02d}/index.md"


def session_uri(program: WorkedProgram, week: int, session: str) -> str:
    """Source path of a session's page."""
    return f"{program.id}/week-{week:02d}/{session}.md"


def use_anchor(program: str, week: int, session: str, order: str) -> str:
    """Where an exercise page shows one week's dose."""
    return f"{program}-week-{week:02d}-{session}-{order.lower()}"


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
            "week_link": link(url, url_of(week_uri(program, week.week))),
            "groups": _groups(worked, program, week, session, url),
            "rotate": _rotated(session),
            "supervised": session.session.supervised,
            "train": train_data(worked, program, week, session),
            "warm_up": session.session.warm_up,
            "warm_up_minutes": round(program.program.warm_up / 60),
            "close_minutes": round(program.program.close / 60),
            "sharing": program.program.group.sharing,
            "cut_first": session.session.cut_first,
            "variants": variant_rows(worked, program, session),
            "rules": program.program.rules,
            "partner": [
                (slot.order, slot.exercise.name, slot.exercise.spotting)
                for slot in session.slots
                if slot.exercise.spotting.spotters
            ],
            "not_alone": _alone(session, "no"),
            "changed_alone": _alone(session, "changed"),
            "emergency": safe(emergency_panel(room.emergency)),
        },
    )
    headings = [
        Heading(2, f"slot-{slot.order.lower()}", f"{slot.order} {slot.exercise.name}")
        for slot in session.slots
    ]
    if session.session.variants:
        headings.append(Heading(2, "less", "Only half a day?"))
    headings += [Heading(2, "warm-up", "Warm-up"), Heading(2, "emergency", "If someone is hurt")]
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


NO_TEST_ALONE = "A test is never done alone. Come when the coach is here."


def _alone(session: WorkedSession, how: Literal["changed", "no"]) -> list[tuple[str, str]]:
    """Exercises that may not be done alone, or only with a change, and how; tests never."""
    found: list[tuple[str, str]] = []
    for slot in session.slots:
        spotting, test = slot.exercise.spotting, slot.dose.said.test is not None
        if test and how == "no":
            found.append((slot.exercise.name, NO_TEST_ALONE))
        elif not test and spotting.alone == how:
            found.append((slot.exercise.name, spotting.alone_how))
    return found


def _rotated(session: WorkedSession) -> list[str]:
    """Letters that the pairs begin at different ones of, where at least two are done this week."""
    here = {slot.order[0] for slot in session.slots}
    letters = [letter for letter in session.session.rotate if letter in here]
    return letters if len(letters) > 1 else []


def emergency_panel(emergency: Emergency) -> str:
    """The emergency panel, the same on every page."""
    return render("emergency.html", {"e": emergency})


def _groups(
    worked: Worked, program: WorkedProgram, week: WorkedWeek, session: WorkedSession, url: str
) -> list[dict[str, Any]]:
    """The slots by letter, each group with the minute at which it starts."""
    starts = dict(session.minutes.starts)
    groups: list[dict[str, Any]] = []
    for slot in session.slots:
        letter = slot.order[0]
        if not groups or groups[-1]["letter"] != letter:
            groups.append({"letter": letter, "at": hours_minutes(starts[letter]), "slots": []})
        groups[-1]["slots"].append(_slot(worked, program, week, session, slot, url))
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
        "id": f"slot-{slot.order.lower()}",
        "name": slot.exercise.name,
        "link": exercise_link(url, slot.exercise_id, anchor),
        "table_link": exercise_link(url, slot.exercise_id, "by-body-weight"),
        "purpose": slot.slot.purpose,
        "notation": notation(slot.dose),
        "words": in_words(slot.dose, slot.exercise),
        "voice": slot.exercise.cues.voice,
        "note": slot.dose.said.note,
        "sentence": found.sentence,
        "table": safe(found.table),
        "by_body": bool(found.by_body),
        "by_body_below": found.by_body_below,
        "method": brief(method_html(worked, program, week, session, slot)),
        "doors": door_rows(worked, program, slot, url, examples=False),
        "mine": dose_data(worked, program, week, session, slot) + apart_drawer(worked, slot),
        "band": slot.reps_possible and reps_text(slot.reps_possible),
    }
