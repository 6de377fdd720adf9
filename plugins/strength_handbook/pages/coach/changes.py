"""From week to week: what is new, gone, heavier, slower, longer in each slot."""

from collections.abc import Sequence
from typing import Any

from strength_handbook.pages.coach.frame import coach_page, coach_uri, head_of
from strength_handbook.pages.coach.short import short_pieces
from strength_handbook.pages.coach.steps import steps
from strength_handbook.pages.page import Heading, Page, link, url_of
from strength_handbook.pages.session_page import session_uri
from strength_handbook.plan.worked import WorkedProgram, WorkedSession, WorkedSlot, WorkedWeek


def changes_page(program: WorkedProgram) -> Page:
    """Each week against the week before."""
    uri = coach_uri("changes", program.id)
    url = url_of(uri)
    weeks = [
        _week(program, before, week, url)
        for before, week in zip((None, *program.weeks), program.weeks, strict=False)
    ]
    return coach_page(
        uri,
        "Week to week",
        "coach_changes.html",
        head_of(program) | {"weeks": weeks},
        says="What is new, gone, heavier, slower or longer than in the week before",
        headings=tuple(Heading(2, f"week-{week.week}", f"Week {week.week}")
                       for week in program.weeks),
    )  # fmt: skip


def _week(
    program: WorkedProgram, before: WorkedWeek | None, week: WorkedWeek, url: str
) -> dict[str, Any]:
    old = {one.id: one for one in before.sessions} if before else {}
    gone = [one.session.title for key, one in old.items() if key not in _ids(week)]
    return {
        "number": week.week,
        "first": before is None,
        "wave": week.wave.wave if before is None or before.wave_id != week.wave_id else "",
        "deload": week.deload,
        "test": week.week in week.wave.tests,
        "gone": gone,
        "sessions": [
            {
                "title": one.session.title,
                "link": link(url, url_of(session_uri(program, week.week, one.id))),
                **session_changes(old.get(one.id), one),
            }
            for one in week.sessions
        ],
    }


def _ids(week: WorkedWeek) -> set[str]:
    return {one.id for one in week.sessions}


def session_changes(before: WorkedSession | None, now: WorkedSession) -> dict[str, Any]:
    """A session's slots against those of the week before.

    A slot is the same where its exercise is, whatever its letter.
    """
    left = list(before.slots) if before else []
    lines: list[tuple[str, list[str]]] = []
    same: list[str] = []
    for slot in now.slots:
        known = _partner(slot, left)
        name = f"{slot.order} {slot.exercise.name}"
        if known is None:
            lines.append((name, [f"new: {' · '.join(short_pieces(slot.dose))}"]))
            continue
        left.remove(known)
        words = steps(known, slot)
        if known.order != slot.order:
            words.insert(0, f"moved from {known.order}")
        if words:
            lines.append((name, words))
        else:
            same.append(name)
    lines += [(f"{slot.order} {slot.exercise.name}", ["gone"]) for slot in left]
    return {"new": before is None, "lines": lines, "same": same}


def _partner(slot: WorkedSlot, left: Sequence[WorkedSlot]) -> WorkedSlot | None:
    alike = [one for one in left if one.exercise_id == slot.exercise_id]
    return next((one for one in alike if one.order == slot.order), next(iter(alike), None))
