"""Findings for other programs: one line each in a pipe, or JSON."""

import json
from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import Any

from strength_handbook.checked import Checked, counted
from strength_handbook.model.program import Accepted
from strength_handbook.reading.doses import ReadAs
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
        changes: lines of `report_changes.change_lines`.
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


def as_json(
    checked: Checked, problems: Sequence[Problem], changes: Mapping[str, Any] | None = None
) -> str:
    """Findings, accepted findings and sums as a JSON object; changes where they were asked for.

    `read_as` has each dose that is not in the house's notation, and how it was understood.

    Args:
        checked: what came out of the folder.
        problems: everything to report.
        changes: `report_changes.change_data`, or None where nobody asked.
    """
    data: dict[str, Any] = {
        "findings": [_finding(problem) for problem in problems],
        "accepted": [_accepted(checked.desk, *both) for both in checked.accepted],
        "read_as": [_read_as(one) for one in checked.read_as],
        **{f"{NOUNS[kind]}s": number for kind, number in _sums(problems).items()},
    }
    data |= changes or {}
    return json.dumps(data, ensure_ascii=False, indent=1)


def place_data(place: tuple[str, int, int]) -> dict[str, Any]:
    """File, line and column under their names."""
    return dict(zip(("file", "line", "column"), place, strict=True))


def _finding(problem: Problem) -> dict[str, Any]:
    data = place_data((problem.file, problem.line, problem.column)) | {
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
    return place_data(finding.spot.place) | {
        "severity": str(finding.severity),
        "slug": finding.slug,
        "at": finding.at.text,
        "text": finding.text,
        "reason": entry.reason,
        "until": None if end is None else end.isoformat(),
    }


def _read_as(one: ReadAs) -> dict[str, Any]:
    """A dose as it was understood; the path leads to it from the top of its file."""
    return place_data((one.file, one.line, one.column)) | {
        "path": list(one.path),
        "written": one.written,
        "read_as": one.read_as,
        "left_out": list(one.left_out),
    }


def _sums(problems: Iterable[Problem]) -> dict[Severity, int]:
    kinds = [problem.severity for problem in problems]
    return {kind: kinds.count(kind) for kind in Severity}
