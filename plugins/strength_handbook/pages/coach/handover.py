"""One print for whoever takes over: need, waves, goals, reasons, rules, dates, open points."""

from collections.abc import Sequence
from typing import Any

from strength_handbook.model.book import Book
from strength_handbook.model.house_rules import RULES
from strength_handbook.pages.coach.dates import dated_things
from strength_handbook.pages.coach.findings import (
    SEVERITIES,
    AcceptedFindings,
    accepted_rows,
)
from strength_handbook.pages.coach.frame import coach_page, coach_uri, head_of
from strength_handbook.pages.coach.sheet import week_range
from strength_handbook.pages.page import Heading, Page
from strength_handbook.pages.week_page import EMPHASIS
from strength_handbook.plan.worked import WorkedProgram, WorkedWeek
from strength_handbook.review.desk import Desk
from strength_handbook.review.finding import Finding

_PARTS = (
    ("need", "What it is for"), ("waves", "Waves"), ("goals", "Goals and tests"),
    ("accepted", "Accepted, and why"), ("rules", "House rules"), ("dates", "Readings and dates"),
    ("open", "Open points"),
)  # fmt: skip


def handover_page(
    desk: Desk, program: WorkedProgram, findings: Sequence[Finding], accepted: AcceptedFindings
) -> Page:
    """Everything a colleague must know of one program, to print."""
    written = program.program
    ours = {"", program.id}
    return coach_page(
        coach_uri("handover", program.id),
        "Handover",
        "coach_handover.html",
        head_of(program)
        | {
            "need": written.need,
            "not_for": written.not_for,
            "special": written.rules,
            "waves": _waves(program),
            "goals": written.goals,
            "accepted": [
                row
                for row, (finding, _) in zip(
                    accepted_rows(desk, accepted), accepted, strict=True
                )
                if row["program"] == program.id or finding.program in ours
            ],
            "owner": desk.book.rules.owner,
            "date": desk.book.rules.date,
            "rules": own_rules(desk.book),
            "rest": sum(desk.book.rule(slug) == kind.default for slug, kind in RULES.items()),
            "dates": _dates(desk.book),
            "open": [
                (SEVERITIES[one.severity], one.at.text, one.text,
                 one.change.words if one.change else "")
                for one in findings
                if one.program in ours
            ],
        },
        says="One print for whoever takes over",
        headings=tuple(Heading(2, anchor, title) for anchor, title in _PARTS),
    )  # fmt: skip


def own_rules(book: Book) -> list[dict[str, Any]]:
    """The rules that this house has set, each beside the handbook's own value."""
    rows = []
    for slug, rule in book.rules.rules.items():
        kind = RULES[slug]
        rows.append({
            "name": slug.replace("-", " ").capitalize(),
            "value": f"{book.rule(slug):g} {kind.unit}".strip(),
            "usual": f"{kind.default:g} {kind.unit}".strip(),
            "differs": book.rule(slug) != kind.default,
            "why": rule.why,
        })  # fmt: skip
    return rows


def _waves(program: WorkedProgram) -> list[dict[str, Any]]:
    waves: dict[str, list[WorkedWeek]] = {}
    for week in program.weeks:
        waves.setdefault(week.wave_id, []).append(week)
    return [
        {
            "name": weeks[0].wave.wave,
            "weeks": week_range(weeks),
            "emphasis": EMPHASIS[weeks[0].wave.emphasis],
            "promise": weeks[0].wave.promise,
            "deload": [week.week for week in weeks if week.deload],
            "tests": [week.week for week in weeks if week.week in week.wave.tests],
        }
        for weeks in waves.values()
    ]


def _dates(book: Book) -> list[tuple[str, list[str]]]:
    """Days of the equipment in order, each with what it is about; what lacks one comes last.

    Kit without a day is left out: most of it, like a towel or a free floor, never has one.
    """
    found: dict[str, list[str]] = {}
    every = [one for one in dated_things(book.room) if one.known and (one.until or one.wears)]
    for one in sorted(every, key=lambda one: (one.until is None, str(one.until))):
        found.setdefault(str(one.until or "no date"), []).append(one.name)
    return list(found.items())
