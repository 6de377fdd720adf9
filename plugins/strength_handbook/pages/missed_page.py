"""The page on what to do after a missed session, an illness, a call-out."""

from strength_handbook.pages.page import Heading, Page, link, url_of
from strength_handbook.pages.render import render
from strength_handbook.pages.tools_html import days_data
from strength_handbook.pages.week_page import overview_uri
from strength_handbook.plan.worked import WorkedProgram

MISSED = (
    ("One session", "next", "Do the next planned one. Don't do two in a day to catch up."),
    ("A week", "again", "Repeat the last week you did, with five per cent less on the top sets."),
    (
        "Two weeks or more",
        "first",
        (
            "Start with about half the sets of week 1. Then 70, 80 and 90 % of the plan, a week "
            "each. For two weeks no exercises that are only lowered, no open sets and no tests."
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


AGAIN = 2
"""Weeks from the first one on in which somebody who comes back leaves those out."""


def missed_uri(program: WorkedProgram) -> str:
    """Source path of the page for those who missed something."""
    return f"{program.id}/missed.md"


def missed_page(program: WorkedProgram) -> Page:
    """What to do after a missed session, an illness, a call-out."""
    uri = missed_uri(program)
    url = url_of(uri)
    rules = [_rule(program, rule) for rule in program.program.rules]
    rows = [(gap, then, f"{says}{_left_out(program, then)}") for gap, then, says in MISSED]
    html = render(
        "missed.html",
        {
            "rows": rows,
            "rules": rules,
            "happened": [
                *((question, then, rule) for rule, question, then in rules if question),
                *rows,
            ],
            "days": days_data(program, url),
            "safety": link(url, "safety/"),
            "overview": link(url, url_of(overview_uri(program))),
            "program": program.program.program,
        },
    )
    return Page(
        uri,
        "Missed, ill, away",
        html,
        (Heading(2, "gaps", "How long were you away?"), Heading(2, "signs", "Before you go on")),
        description="What to do after an absence",
        parent=overview_uri(program),
    )


def _left_out(program: WorkedProgram, then: str) -> str:
    """Which exercises of the first weeks that leaves out; empty where it leads elsewhere."""
    if then != "first":
        return ""
    names = {
        f"{slot.order} {slot.exercise.name} ({session.session.title})": None
        for week in program.weeks[:AGAIN]
        for session in week.sessions
        for slot in session.slots
        if slot.dose.said.return_by is not None
        or slot.dose.said.test is not None
        or slot.dose.ends_open
    }
    return f" In the first two weeks that leaves out: {', '.join(names)}." if names else ""


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
