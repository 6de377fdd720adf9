"""Findings for a terminal and for other programs."""

import json
from collections.abc import Iterable, Iterator, Sequence

import click

from strength_handbook.checked import counted
from strength_handbook.reading.problem import Problem, Severity

_COLOURS = {Severity.ERROR: "red", Severity.WARN: "yellow", Severity.NOTE: "blue"}
_NOUNS = {Severity.ERROR: "error", Severity.WARN: "warning", Severity.NOTE: "note"}


def as_lines(problems: Sequence[Problem], where: str) -> Iterator[str]:
    """One line for each finding, coloured, and a last line with the sums.

    `click.echo` takes the colours out again where the lines do not go to a terminal.
    """
    for problem in problems:
        place = click.style(f"{problem.file}:{problem.line}:{problem.column}:", bold=True)
        severity = click.style(str(problem.severity), fg=_COLOURS[problem.severity])
        yield f"{place} {severity} {problem.slug}: {problem.text}"
    sums = ", ".join(counted(number, _NOUNS[kind]) for kind, number in _sums(problems).items())
    yield f"{where}: {sums}"


def as_json(problems: Sequence[Problem]) -> str:
    """The findings as a JSON object with a list `findings` and the sums."""
    findings = [
        {
            "file": problem.file,
            "line": problem.line,
            "column": problem.column,
            "severity": str(problem.severity),
            "slug": problem.slug,
            "text": problem.text,
        }
        for problem in problems
    ]
    sums = {f"{_NOUNS[kind]}s": number for kind, number in _sums(problems).items()}
    return json.dumps({"findings": findings, **sums}, ensure_ascii=False, indent=1)


def _sums(problems: Iterable[Problem]) -> dict[Severity, int]:
    kinds = [problem.severity for problem in problems]
    return {kind: kinds.count(kind) for kind in Severity}
