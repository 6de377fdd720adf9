"""How the numbers are made: every formula, the house rules, and what is not computed."""

import re
from collections.abc import Iterable, Mapping
from typing import Any

from strength_handbook.calc.registry import Formula, all_formulas
from strength_handbook.calc.repetitions import (
    TEXTBOOK_CHART,
    TRUSTED_ABOVE_PERCENT,
    TRUSTED_BELOW_REPS,
    UNCONFIRMED_REPS,
)
from strength_handbook.calc.unused import UNUSED
from strength_handbook.model.book import Book
from strength_handbook.model.house_rules import COMPUTING
from strength_handbook.model.rule_kind import RuleKind
from strength_handbook.model.thresholds import FAMILIES
from strength_handbook.pages.page import Heading, Page
from strength_handbook.pages.render import render
from strength_handbook.plan.worked import Worked

EVIDENCE = (
    ("measured", "somebody in this gym tested or weighed it"),
    ("published", "it stands in a paper or a textbook, which is named"),
    ("arithmetic", "it follows from other numbers, and from nothing else"),
    ("house rule", "the coach chose it; common practice is not evidence"),
)

NOT_COMPUTED = (
    (
        "Repetitions on each load of a strip set, as one number",
        "We found no figures load by load. You get a range; the total ends the set.",
    ),
    (
        "Repetitions left from how fast the bar moved",
        "People differ too much. Speed says when to end a set, not how many were left.",
    ),
    (
        "Kilograms from a machine's own units",
        "Units fit one machine only. Stay with the maker's number and write it down.",
    ),
    (
        "What a cable really pulls, unless it was read with a scale",
        "Friction changes it. The pages print what is on the pin; sums take the label's ratio.",
    ),
    (
        "Kilograms of a push against pins or of a partner's hands",
        "Nothing is lifted, so effort and seconds are written instead.",
    ),
    (
        "The pull of a band from its colour",
        "Bands of one colour differ by 8 to 19 %. Each is read in place; beyond that nothing.",
    ),
    (
        "The heights of the bar from a lifter's height",
        "Five centimetres wrong are several kilograms of band. They are measured.",
    ),
    (
        "A best single from more than 15 repetitions",
        "The formulas part ways long before that; up to 15 you get a range.",
    ),
    (
        "Repetitions below 65 % of a best single",
        "The chart ends there.",
    ),
    (
        "How sore or how tired anybody will be",
        "No formula knows. The effort limit of the day comes first.",
    ),
)
"""What a reader might look for in vain, and why."""


def numbers_page(worked: Worked) -> Page:
    """Every formula with its source, the chart, the house rules and what is left open."""
    subjects: dict[str, list[dict[str, Any]]] = {}
    listed = [entry for entry in all_formulas() if entry.id not in UNUSED]
    for entry in listed:
        subjects.setdefault(entry.subject, []).append(_formula(entry))
    book = worked.book
    html = render(
        "numbers.html",
        {
            "evidence": EVIDENCE,
            "show_from": f"{book.rule('show-planned-from'):g}",
            "subjects": [(name, anchor(name), rows) for name, rows in sorted(subjects.items())],
            "errors": [
                {"id": entry.id, "title": entry.title, "error": sentence(entry.error)}
                for entry in listed
                if entry.error
            ],
            "chart": [
                {"reps": f"{reps:g}", "percent": f"{percent:g}", "open": reps in UNCONFIRMED_REPS}
                for reps, percent in TEXTBOOK_CHART
            ],
            "chart_source": sentence(_entry(listed, "percent_for_reps").source),
            "trusted": (f"{TRUSTED_ABOVE_PERCENT:g}", f"{TRUSTED_BELOW_REPS:g}"),
            "rules": _rules(book, COMPUTING),
            "checks": [(title, _rules(book, limits)) for title, limits in FAMILIES.items()],
            "owner": book.rules.owner,
            "date": book.rules.date,
            "not_computed": NOT_COMPUTED,
        },
    )
    headings = (
        Heading(2, "short", "In short"),
        Heading(2, "house-rules", "House rules"),
        Heading(2, "chart", "Repetitions and percent, the chart"),
        Heading(2, "formulas", "Formulas"),
        *(Heading(3, anchor(name), name) for name in sorted(subjects)),
        Heading(2, "errors", "How far off they can be"),
        Heading(2, "not-computed", "What is not computed, and why"),
    )
    return Page("numbers.md", "How the numbers are made", html, headings, in_nav=True,
                description="Formulas, ranges, sources and house rules")  # fmt: skip


def anchor(subject: str) -> str:
    """Where a subject's formulas begin on the page.

    >>> anchor("Pivoted bar (landmine)")
    'pivoted-bar-landmine'
    """
    return re.sub(r"\W+", "-", subject.lower()).strip("-")


def sentence(text: str) -> str:
    """A source or an error as a sentence of its own.

    >>> sentence("3 points; people differ"), sentence("As the readings.")
    ('3 points; people differ.', 'As the readings.')
    """
    return f"{text[:1].upper()}{text[1:].rstrip('.')}."


def _entry(listed: Iterable[Formula], name: str) -> Formula:
    return next(entry for entry in listed if entry.id == name)


def _formula(entry: Formula) -> dict[str, Any]:
    rows = []
    for name, meaning in entry.inputs.items():
        limits = _limits(*entry.ranges[name]) if name in entry.ranges else ""
        for part in meaning.split("; "):
            symbol, mark, words = part.partition(" = ")
            rows.append({
                "symbol": symbol if mark else "",
                "meaning": words if mark else part[:1].upper() + part[1:],
                "limits": limits,
            })  # fmt: skip
            limits = ""
    return {
        "id": entry.id,
        "title": entry.title,
        "equation": entry.equation,
        "inputs": rows,
        "output": entry.output,
        "refuses": bool(entry.ranges),
        "evidence": entry.evidence.value,
        "source": sentence(entry.source),
        "error": sentence(entry.error) if entry.error else "",
    }


def _limits(low: float, high: float) -> str:
    """A range in words; ends that only keep nonsense out are not worth a number.

    >>> _limits(30, 75), _limits(1e-9, 1e9), _limits(0, 1e9), _limits(0.001, 1000)
    ('30 to 75', 'above 0', 'from 0 on', 'above 0, up to 1000')
    """
    if high >= 1e6:
        return "above 0" if low > 0 else f"from {low:g} on"
    if 0 < low < 0.01:
        return f"above 0, up to {high:g}"
    return f"{low:g} to {high:g}".replace("-", "−")


def _rules(book: Book, kinds: Mapping[str, RuleKind]) -> list[dict[str, Any]]:
    own = book.rules.rules
    return [
        {
            "id": f"rule-{slug}",
            "name": slug.replace("-", " "),
            "value": f"{book.rule(slug):g} {kind.unit}".strip(),
            "what": kind.what,
            "own": slug in own,
            "why": own[slug].why if slug in own else None,
            "source": kind.source,
        }
        for slug, kind in kinds.items()
    ]
