"""The page on test day: how it goes, whether a change is real, what the number is good for."""

import json
from math import ceil
from typing import Any

from strength_handbook.calc.repetitions import TEXTBOOK_CHART
from strength_handbook.dose.printing import notation
from strength_handbook.model.dose import Clock, Hold
from strength_handbook.model.printed import bare_mass, percent
from strength_handbook.pages.goal_results_html import believable_limits, results_block
from strength_handbook.pages.page import Heading, Page, link, url_of
from strength_handbook.pages.render import render
from strength_handbook.pages.session_page import exercise_link, session_uri
from strength_handbook.pages.tools_html import block
from strength_handbook.pages.week_page import overview_uri
from strength_handbook.plan.new_best import factors, new_best
from strength_handbook.plan.worked import Worked, WorkedProgram, WorkedSlot, WorkedWeek

REPS_SHOWN = (3, 5, 8)
"""Repetitions that have a column where a program tests no others."""

_OF_HEAVY = ("ladder", "real", "next")
"""Parts of the page that are about a best load."""

ROWS = 20
"""Rows of a table at most."""


def day_of_tests_uri(program: WorkedProgram) -> str:
    """Source path of the page about test day."""
    return f"{program.id}/test-day.md"


def day_of_tests_page(worked: Worked, program: WorkedProgram) -> Page:
    """How test day goes, and whether a change is real."""
    uri = day_of_tests_uri(program)
    url = url_of(uri)
    book = worked.book
    cv = book.rule("test-noise")
    heavy, counted = _kinds(program)
    likely, sure = believable_limits(cv)
    html = render(
        "test_day.html",
        {
            "goals": program.program.goals,
            "heavy": heavy,
            "counted": counted,
            "sessions": _test_sessions(program, url),
            "likely": percent(likely),
            "sure": percent(sure),
            "noise": percent(cv),
            "limits": [round(limit * 1_000_000) for limit in (likely, sure)],
            "first": percent(book.rule("first-attempt")),
            "up": f"{book.rule('attempt-step-least'):g} to "
            f"{percent(book.rule('attempt-step-most'))}",
            "singles": json.dumps(factors(), separators=(",", ":")),
            "factors": [
                _factor(reps, *row)
                for reps, row in enumerate(factors(), 1)
                if (reps, row[0] / 1e6) in TEXTBOOK_CHART and reps > 1
            ],
            "tested": block("sh-tested", list(program.program.bases)),
            "results": results_block(program),
            "singles_tables": _singles_tables(worked, program),
            "units": book.room.units,
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
            if heavy or anchor not in _OF_HEAVY
        ),
        description="How test day goes, and whether a change is real",
        parent=overview_uri(program),
    )


def _kinds(program: WorkedProgram) -> tuple[bool, bool]:
    """Whether a best load is tested; whether repetitions or seconds are, in a week of tests.

    Where the program says of no test what it is, its page speaks of a best load.
    """
    asked = [(week, slot) for week in program.weeks for one in week.sessions for slot in one.slots]
    heavy = any(slot.dose.said.test is not None for _, slot in asked)
    counted = any(
        # Beside a best load a hold is rarely a test; alone in a week of tests it is one.
        _is_counted(week, slot)
        or (not heavy and _in_tests(week, slot) and isinstance(slot.dose.work, Clock | Hold))
        for week, slot in asked
    )
    return heavy or not counted, counted


def _in_tests(week: WorkedWeek, slot: WorkedSlot) -> bool:
    return week.week in week.wave.tests and slot.dose.going is None


def _is_counted(week: WorkedWeek, slot: WorkedSlot) -> bool:
    """True where a week of tests asks for as many as possible, without a load for its sets."""
    dose = slot.dose
    open_end = dose.load is None and dose.reps is not None and dose.reps.open
    return _in_tests(week, slot) and (dose.said.density is not None or open_end)


def _test_sessions(program: WorkedProgram, url: str) -> list[dict[str, Any]]:
    """Sessions that have tests in them."""
    found = []
    for week in program.weeks:
        for session in week.sessions:
            tests = [text for slot in session.slots if (text := _test_line(week, slot))]
            if tests:
                found.append(
                    {
                        "title": f"Week {week.week}, {session.session.title}",
                        "link": link(url, url_of(session_uri(program, week.week, session.id))),
                        "tests": tests,
                    }
                )
    return found


def _test_line(week: WorkedWeek, slot: WorkedSlot) -> str:
    """What is tested, and how; empty for what is no test."""
    if (test := slot.dose.said.test) is not None:
        return f"{slot.exercise.name}: best {test.rm} in {test.attempts} attempts"
    return f"{slot.exercise.name}: {notation(slot.dose)}" if _is_counted(week, slot) else ""


def _factor(reps: int, share: int, low: int, high: int, _care: int) -> dict[str, Any]:
    """What a load for so many repetitions is divided by; the range of others, rounded outwards."""
    return {
        "reps": reps,
        "by": f"{share / 1e8:.2f}",
        "low": f"{low // 1e4 / 100:.2f}",
        "high": f"{ceil(high / 1e4) / 100:.2f}",
    }


def _singles_tables(worked: Worked, program: WorkedProgram) -> list[dict[str, Any]]:
    """For each tested value: what was lifted, and the single it comes to."""
    units = worked.book.room.units
    asked = {
        (slot.base_id, slot.dose.said.test.rm)
        for week in program.weeks
        for session in week.sessions
        for slot in session.slots
        if slot.dose.said.test is not None
    }
    tables = []
    for key, base in program.program.bases.items():
        reps = sorted({rm for name, rm in asked if name == key and rm > 1} | set(REPS_SHOWN))
        first, last, by = base.from_.grams, base.to.grams, base.by.grams
        values = range(first, last + 1, by * max(1, ceil((last - first) / by / (ROWS - 1))))
        rows = [
            (
                bare_mass(value, units),
                [bare_mass(new_best(value, one, units).best_g, units) for one in reps],
            )
            for value in values
        ]
        tables.append({"name": base.name, "reps": reps, "rows": rows})
    return tables
