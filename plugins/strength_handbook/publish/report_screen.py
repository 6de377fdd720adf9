"""Findings for a person at a terminal: grouped, coloured, with room to breathe."""

import json
import shutil
import textwrap
from collections.abc import Iterable, Iterator, Sequence
from itertools import groupby

import click

from strength_handbook.checked import counted
from strength_handbook.publish.report import NOUNS, sum_line
from strength_handbook.reading.problem import Problem, Severity
from strength_handbook.review.check import Family
from strength_handbook.review.finding import Reported

COLOURS = {Severity.ERROR: "red", Severity.WARN: "yellow", Severity.NOTE: "blue"}
FILES = "Files"
"""Under this stand the problems of reading and of entries in `accepted`."""

_ORDER = [FILES, *(str(family) for family in Family)]
_LET_STAND = (
    "To let a warning stand, put its last line under 'accepted:' in program.yml, and your reason "
    "in place of the dots."
)
_WIDEST = 100
_NARROWEST = 40


def on_screen(
    problems: Sequence[Problem],
    shown: str,
    accepted: int = 0,
    changes: Iterable[str] = (),
    width: int | None = None,
) -> Iterator[str]:
    """Errors, then warnings, then notes; within them by family; at last the sums.

    Args:
        problems: the findings.
        shown: name of the folder.
        accepted: how many findings may stand.
        changes: lines of `report_changes.changes_on_screen`.
        width: columns of the terminal; its own if left out.
    """
    width = columns(width)
    for severity in Severity:
        several = [problem for problem in problems if problem.severity is severity]
        if several:
            yield from _severity(severity, several, width)
    yield from changes
    if accepted:
        yield wrapped(f"{counted(accepted, 'finding')} accepted, each with a reason in "
                       "program.yml", width, "")  # fmt: skip
    colour = next((COLOURS[one] for one in Severity if _has(problems, one)), "green")
    yield click.style(sum_line(problems, shown), fg=colour, bold=True)


def _has(problems: Sequence[Problem], severity: Severity) -> bool:
    return any(problem.severity is severity for problem in problems)


def _severity(severity: Severity, several: Sequence[Problem], width: int) -> Iterator[str]:
    title = counted(len(several), NOUNS[severity]).upper()
    yield click.style(title, fg=COLOURS[severity], bold=True)
    if severity is Severity.WARN and any(isinstance(one, Reported) for one in several):
        yield wrapped(_LET_STAND, width, "")
    yield ""
    in_order = sorted(several, key=lambda problem: _ORDER.index(_family(problem)))
    for family, group in groupby(in_order, key=_family):
        yield click.style(family, bold=True, underline=True)
        for problem in group:
            yield from _problem(problem, width)
            yield ""


def _family(problem: Problem) -> str:
    family = str(problem.family) if isinstance(problem, Reported) else ""
    return family if family in _ORDER else FILES


def _problem(problem: Problem, width: int) -> Iterator[str]:
    place = click.style(f"{problem.file}:{problem.line}:{problem.column}", bold=True)
    yield f"  {place}  {click.style(problem.slug, fg=COLOURS[problem.severity])}"
    text, change = problem.text, problem.change if isinstance(problem, Reported) else ""
    if change:
        # The line for pipes has the change at its end; here it gets a line of its own.
        text = text.removesuffix(change).removesuffix(" Smallest change: ")
    yield wrapped(text, width, "    ")
    if change:
        yield click.style(wrapped(f"Smallest change: {change}", width, "      "), fg="green")
    if isinstance(problem, Reported) and problem.severity is Severity.WARN:
        # Never broken: a terminal that is too narrow wraps it, and it is copied as one line.
        yield f"      {accepting_line(problem.slug, problem.at)}"


def accepting_line(slug: str, at: str) -> str:
    """An entry of `accepted` on one line; the reason has to be written.

    >>> accepting_line("rest-short", "week 3, a-lift")
    '- {finding: rest-short, at: "week 3, a-lift", reason: ...}'
    """
    return f"- {{finding: {slug}, at: {json.dumps(at, ensure_ascii=False)}, reason: ...}}"


def columns(width: int | None = None) -> int:
    """Columns to write in: of the terminal, or as many as asked for, within reason."""
    found = shutil.get_terminal_size().columns if width is None else width
    return min(max(found, _NARROWEST), _WIDEST)


def wrapped(text: str, width: int, indent: str) -> str:
    """A text in lines of a width, every one behind the same indent."""
    return textwrap.fill(
        text, width, initial_indent=indent, subsequent_indent=indent,
        break_long_words=False, break_on_hyphens=False,
    )  # fmt: skip
