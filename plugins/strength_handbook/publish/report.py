"""Findings for other programs: one line each in a pipe, or JSON."""

import json
from collections.abc import Iterable, Iterator, Sequence
from typing import Any

from strength_handbook.checked import Checked, counted
from strength_handbook.model.program import Accepted
from strength_handbook.pages.change_words import said, where
from strength_handbook.pages.member_lines import member_lines
from strength_handbook.plan.change import Change
from strength_handbook.publish.since import Since
from strength_handbook.publish.spots import spot_of
from strength_handbook.reading.problem import Problem, Severity
from strength_handbook.review.accepting import end_of
from strength_handbook.review.desk import Desk
from strength_handbook.review.finding import Finding, Reported

NOUNS = {Severity.ERROR: "error", Severity.WARN: "warning", Severity.NOTE: "note"}


def as_lines(
    problems: Sequence[Problem], shown: str, accepted: int = 0, changes: Iterable[str] = ()
) -> Iterator[str]:
    """One line for each finding, then one for each change, and a last line with the sums.

    Args:
        problems: the findings.
        shown: name of the folder.
        accepted: how many findings may stand.
        changes: lines of `change_lines`.
    """
    yield from map(str, problems)
    yield from changes
    yield sum_line(problems, shown, accepted)


def sum_line(problems: Sequence[Problem], shown: str, accepted: int = 0) -> str:
    """The sums: always in this form, so that scripts can read it.

    >>> sum_line([], "programs")
    'programs: 0 errors, 0 warnings, 0 notes'
    >>> sum_line([], "programs", 2)
    'programs: 0 errors, 0 warnings, 0 notes; 2 accepted'
    """
    sums = ", ".join(counted(number, NOUNS[kind]) for kind, number in _sums(problems).items())
    return f"{shown}: {sums}" + (f"; {accepted} accepted" if accepted else "")


def change_lines(desk: Desk | None, since: Since) -> Iterator[str]:
    """Every change as a line of its own: file, line and column of what it is now."""
    for program, change in _changes(desk, since):
        assert desk is not None  # noqa: S101  # without it there are no changes
        file, line, column = spot_of(desk, program, change).place
        yield f"{file}:{line}:{column}: change {change.kind}: {where(change)}: {said(change)}"


def as_json(checked: Checked, problems: Sequence[Problem], since: Since | None = None) -> str:
    """Findings, accepted findings and sums as a JSON object; changes where they were asked for.

    Args:
        checked: what came out of the folder.
        problems: everything to report.
        since: an earlier publication, or None where nobody asked.
    """
    data: dict[str, Any] = {
        "findings": [_finding(problem) for problem in problems],
        "accepted": [_accepted(checked.desk, *both) for both in checked.accepted],
        **{f"{NOUNS[kind]}s": number for kind, number in _sums(problems).items()},
    }
    if since is not None:
        data["members"] = {key: member_lines(one) for key, one in since.changes.items()}
        data["changes"] = [
            _change(checked.desk, program, change)
            for program, change in _changes(checked.desk, since)
            if checked.desk is not None
        ]
    return json.dumps(data, ensure_ascii=False, indent=1)


def _place(place: tuple[str, int, int]) -> dict[str, Any]:
    return dict(zip(("file", "line", "column"), place, strict=True))


def _finding(problem: Problem) -> dict[str, Any]:
    data = _place((problem.file, problem.line, problem.column)) | {
        "severity": str(problem.severity),
        "slug": problem.slug,
        "text": problem.text,
    }
    if isinstance(problem, Reported):
        data |= {
            "family": str(problem.family),
            "at": problem.at,
            "change": problem.change,
            "why": problem.why,
            "source": problem.source,
        }
    return data


def _accepted(desk: Desk | None, finding: Finding, entry: Accepted) -> dict[str, Any]:
    """A finding that may stand; its last day is that of its wave where the entry says none."""
    programs = desk.worked.programs if desk is not None else ()
    owner = next((one for one in programs if entry in one.program.accepted), None)
    end = entry.until if owner is None else end_of(owner, entry, [finding])
    return _place(finding.spot.place) | {
        "severity": str(finding.severity),
        "slug": finding.slug,
        "at": finding.at.text,
        "text": finding.text,
        "reason": entry.reason,
        "until": None if end is None else end.isoformat(),
    }


def _changes(desk: Desk | None, since: Since) -> Iterator[tuple[str, Change]]:
    if desk is not None:
        for program, several in since.changes.items():
            yield from ((program, change) for change in several.items)


def _change(desk: Desk, program: str, change: Change) -> dict[str, Any]:
    return _place(spot_of(desk, program, change).place) | {
        "program": program,
        "kind": str(change.kind),
        "at": where(change),
        "weeks": change.weeks,
        "text": said(change),
        "values": [
            {"key": pair.key, "before": pair.before, "after": pair.after} for pair in change.pairs
        ],
    }


def _sums(problems: Iterable[Problem]) -> dict[Severity, int]:
    kinds = [problem.severity for problem in problems]
    return {kind: kinds.count(kind) for kind in Severity}
