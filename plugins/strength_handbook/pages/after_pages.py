"""Two pages for days that are not like the others: tests, and what to do after an absence."""

from math import ceil
from typing import Any

from strength_handbook.calc.retest import near_certain_change, smallest_believable_change
from strength_handbook.pages.numbers import percent
from strength_handbook.pages.page import Heading, Page, link, url_of
from strength_handbook.pages.render import render
from strength_handbook.pages.session_page import exercise_link, session_uri
from strength_handbook.pages.tools_html import days_data
from strength_handbook.pages.week_page import overview_uri
from strength_handbook.plan.worked import Worked, WorkedProgram

MISSED = (
    ("One session", "next", "Do the next planned one. Don't do two in a day to catch up."),
    ("A week", "again", "Repeat the last week you did, with five per cent less on the top sets."),
    (
        "Two weeks or more",
        "first",
        (
            "Start with about half the sets of week 1. Then 70, 80 and 90 % of the plan, a week "
            "each. No lowering only, no open sets and no tests for two weeks."
        ),
    ),
    (
        "Fever, chest infection, concussion, operation",
        "",
        "Talk to a clinician first. This page can't say when you may start again.",
    ),
)
"""What to do after a gap, and where that leads: to the next session, to the last week once more, to
the first week, or nowhere. Common practice, no source."""


def missed_page(program: WorkedProgram) -> Page:
    """What to do after a missed session, an illness, a call-out."""
    uri = f"{program.id}/missed.md"
    url = url_of(uri)
    rules = [_rule(program, rule) for rule in program.program.rules]
    html = render(
        "missed.html",
        {
            "rows": MISSED,
            "rules": rules,
            "happened": [
                *(question for _, question, _ in rules if question),
                *(gap for gap, *_ in MISSED),
            ],
            "days": days_data(program, url),
            "safety": link(url, "safety/"),
            "overview": link(url, url_of(overview_uri(program))),
            "program": program.program.program,
        },
    )
    return Page(
        uri,
        "Missed, ill, called out",
        html,
        (Heading(2, "gaps", "How long were you away?"), Heading(2, "signs", "Before you go on")),
        description="What to do after an absence",
        parent=overview_uri(program),
    )


def _rule(program: WorkedProgram, rule: str) -> tuple[str, str, str]:
    """A rule, the question it begins with, and `less` where sessions are made less for that day."""
    question = rule.split("?", maxsplit=1)[0] if "?" in rule else ""
    made_less = {
        variant.when
        for week in program.weeks
        for session in week.sessions
        for variant in session.session.variants
    }
    return rule, question, "less" if question in made_less else ""


def test_day_page(worked: Worked, program: WorkedProgram) -> Page:
    """How test day goes, and whether a change is real."""
    uri = f"{program.id}/test-day.md"
    url = url_of(uri)
    cv = worked.book.rule("test-noise")
    html = render(
        "test_day.html",
        {
            "goals": program.program.goals,
            "sessions": _test_sessions(program, url),
            "likely": percent(smallest_believable_change(cv)),
            "sure": percent(near_certain_change(cv)),
            "noise": percent(cv),
            # Compared as they are, never rounded in favour of a change.
            "limits": [
                ceil(limit(cv) * 1_000_000 - 1e-6)
                for limit in (smallest_believable_change, near_certain_change)
            ],
            "units": worked.book.room.units,
            "bases": [
                {"name": base.name, "link": exercise_link(url, base.exercise)}
                for base in program.program.bases.values()
            ],
            "numbers": link(url, "numbers/"),
            "safety": link(url, "safety/"),
            "missed": link(url, f"{program.id}/missed/"),
        },
    )
    return Page(
        uri,
        "Test day",
        html,
        tuple(
            Heading(2, anchor, title)
            for anchor, title in (
                ("not-today", "Not today"),
                ("order", "Order"),
                ("ladder", "The way up"),
                ("counts", "What counts"),
                ("real", "Is it real?"),
                ("next", "What happens with the number"),
            )
        ),
        description="How test day goes, and whether a change is real",
        parent=overview_uri(program),
    )


def _test_sessions(program: WorkedProgram, url: str) -> list[dict[str, Any]]:
    """Sessions that have tests in them."""
    return [
        {
            "title": f"Week {week.week}, {session.session.title}",
            "link": link(url, url_of(session_uri(program, week.week, session.id))),
            "tests": [
                f"{slot.exercise.name}: best {slot.dose.said.test.rm} in "
                f"{slot.dose.said.test.attempts} attempts"
                for slot in session.slots
                if slot.dose.said.test is not None
            ],
        }
        for week in program.weeks
        for session in week.sessions
        if any(slot.dose.said.test is not None for slot in session.slots)
    ]
