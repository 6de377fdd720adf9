"""A mistake in a file, shown as `file:line:column` so that editors and terminals can jump to it."""

from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum


class Severity(StrEnum):
    """How much a problem matters: an error stops the build, the others do not."""

    ERROR = "error"
    WARN = "warn"
    NOTE = "note"


@dataclass(frozen=True, slots=True, order=False)
class Problem:
    """One mistake at one place.

    Attributes:
        file: path as the coach knows it, relative, with forward slashes.
        line: line of the mistake, 1-based.
        column: column of the mistake in characters, 1-based.
        slug: kind of mistake in kebab-case, stable across versions, for example ``unknown-key``.
        text: what is wrong and what to write instead, on one line.
        severity: how much it matters.
    """

    file: str
    line: int
    column: int
    slug: str
    text: str
    severity: Severity = Severity.ERROR

    def __str__(self) -> str:
        place = f"{self.file}:{self.line}:{self.column}"
        return f"{place}: {self.severity} {self.slug}: {self.text}"

    @property
    def sort_key(self) -> tuple[str, int, int, str, str, str]:
        """Order of reading: file, line, column; the rest makes the order the same every time."""
        return self.file, self.line, self.column, self.slug, self.text, self.severity.value


def sorted_problems(problems: Iterable[Problem]) -> list[Problem]:
    """Sorts problems by file, line and column and drops exact duplicates.

    >>> late, early = Problem("a.yml", 9, 1, "x", "late"), Problem("a.yml", 2, 5, "x", "early")
    >>> [problem.text for problem in sorted_problems([late, early, late])]
    ['early', 'late']
    """
    return sorted(set(problems), key=lambda problem: problem.sort_key)
