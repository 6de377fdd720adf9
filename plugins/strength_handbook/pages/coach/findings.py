"""Everything the checks found, for the coach: reason, source, place, and how to let it stand."""

from collections.abc import Iterable, Sequence
from typing import Any

import yaml

from strength_handbook.model.house_rules import RULES
from strength_handbook.model.program import Accepted
from strength_handbook.pages.coach.frame import as_lines, coach_page, coach_uri
from strength_handbook.pages.page import Heading, Page
from strength_handbook.plan.worked import WorkedProgram
from strength_handbook.reading.problem import Problem, Severity
from strength_handbook.review.accepting import end_of, wave_end
from strength_handbook.review.catalogue import CHECKS
from strength_handbook.review.check import Family
from strength_handbook.review.desk import Desk
from strength_handbook.review.finding import Finding, Reported

SEVERITIES = {Severity.ERROR: "Error", Severity.WARN: "Warning", Severity.NOTE: "Note"}
NO_REASON = "…"
"""Too short to be taken for a reason: an entry that is copied and not finished is refused."""

_ONE_LINE = 1_000_000

AcceptedFindings = Sequence[tuple[Finding, Accepted]]


def findings_page(
    problems: Sequence[Problem],
    desk: Desk | None = None,
    findings: Sequence[Finding] = (),
    accepted: AcceptedFindings = (),
) -> Page:
    """All findings by family, then those that may stand.

    Args:
        problems: everything there is to report; those of the checks stand among `findings` too.
        desk: what the checks looked at, or None where the files could not be read.
        findings: what the checks found and nobody has accepted.
        accepted: what may stand.
    """
    families = _families(desk, findings) if desk else []
    files = [one for one in problems if not isinstance(one, Reported)]
    standing = accepted_rows(desk, accepted) if desk else []
    headings = [Heading(2, "files", "The files themselves")] if files else []
    headings += [Heading(2, family["id"], family["title"]) for family in families]
    headings.append(Heading(2, "accepted", "Accepted"))
    return coach_page(
        coach_uri("findings"),
        "Findings",
        "coach_findings.html",
        {
            "counts": _counts(files, findings),
            "files": [_problem(one) for one in files],
            "families": families,
            "accepted": standing,
            "unread": desk is None,
        },
        says="What the checks found, why it matters, and the smallest change",
        headings=tuple(headings),
    )


def accepted_rows(desk: Desk, accepted: AcceptedFindings) -> list[dict[str, Any]]:
    """What may stand: reason, last day, place and the entry that says so."""
    rows = []
    for finding, entry in accepted:
        program = _owner(desk, entry)
        row = _finding(desk, finding)
        end = end_of(program, entry, [finding])
        rows.append(row | {
            "reason": entry.reason,
            "until": end,
            "entry": as_lines(entry_text(entry.finding, entry.at, entry.reason, end, head=False)),
            "file": desk.program_spot(program.id).source.file,
            "program": program.id,
        })  # fmt: skip
    return rows


def entry_text(slug: str, at: str, reason: str, until: object, *, head: bool) -> str:
    """An entry of `accepted`, as it stands in `program.yml`.

    >>> print(entry_text("rest-short", "week 3, a-lift", "Long walk back.", None, head=True))
    accepted:
      - finding: rest-short
        at: week 3, a-lift
        reason: Long walk back.
    """
    entry = {"finding": slug, "at": at, "reason": reason}
    if until is not None:
        entry["until"] = until  # type: ignore[assignment]  # a date is written without quotes
    text = yaml.safe_dump([entry], sort_keys=False, allow_unicode=True, width=_ONE_LINE)
    lines = [f"  {line}" for line in text.splitlines()]
    return "\n".join((["accepted:"] if head else []) + lines)


def _families(desk: Desk, findings: Iterable[Finding]) -> list[dict[str, Any]]:
    """Findings by family and check, so that a reason stands once."""
    families: dict[Family, dict[str, list[dict[str, Any]]]] = {}
    for one in findings:
        checks = families.setdefault(CHECKS[one.slug].family, {})
        checks.setdefault(one.slug, []).append(_open(desk, one))
    return [
        {
            "id": family.name.lower(),
            "title": family.value,
            "checks": [
                {"title": slug.replace("-", " ").capitalize(), "row": rows[0], "rows": rows}
                for slug, rows in families[family].items()
            ],
        }
        for family in Family
        if family in families
    ]


def _finding(desk: Desk, finding: Finding) -> dict[str, Any]:
    """What is said of a finding, accepted or not."""
    check = CHECKS[finding.slug]
    file, line, column = finding.spot.place
    return {
        "slug": finding.slug,
        "severity": SEVERITIES[finding.severity],
        "at": finding.at.text,
        "text": finding.text[:1].upper() + finding.text[1:],
        "place": f"{file}:{line}:{column}",
        "change": finding.change.words if finding.change else "",
        "more": len(finding.more),
        "what": check.what,
        "why": check.why,
        "source": check.source,
        "rules": [
            (slug, f"{desk.rule(slug):g} {RULES[slug].unit}".strip()) for slug in check.rules
        ],
    }  # fmt: skip


def _open(desk: Desk, finding: Finding) -> dict[str, Any]:
    row = _finding(desk, finding)
    program = _program_of(desk, finding)
    if finding.severity is Severity.ERROR or program is None:
        return row | {"entry": "", "file": ""}
    until = wave_end(program, finding.at.weeks) or desk.last_use(program)
    head = not program.program.accepted
    entry = entry_text(finding.slug, finding.at.text, NO_REASON, until, head=head)
    file = desk.program_spot(program.id).source.file
    return row | {"entry": as_lines(entry), "file": file, "head": head}


def _program_of(desk: Desk, finding: Finding) -> WorkedProgram | None:
    """The program whose file takes the entry: its own, or the first for what is in none."""
    programs = desk.worked.programs
    own = [one for one in programs if one.id == finding.program]
    return next(iter(own or programs), None)


def _owner(desk: Desk, entry: Accepted) -> WorkedProgram:
    return next(
        one
        for one in desk.worked.programs
        if any(entry is written for written in one.program.accepted)
    )


def _problem(problem: Problem) -> dict[str, Any]:
    return {
        "severity": SEVERITIES[problem.severity],
        "slug": problem.slug,
        "place": f"{problem.file}:{problem.line}:{problem.column}",
        "text": problem.text,
    }


def _counts(files: Sequence[Problem], findings: Sequence[Finding]) -> list[tuple[str, int]]:
    """How many of each severity."""
    severities = [*(one.severity for one in files), *(one.severity for one in findings)]
    return [(f"{name}s", severities.count(severity)) for severity, name in SEVERITIES.items()]
