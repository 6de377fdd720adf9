"""What a file says, and where in the file it says it.

Data and positions are kept apart: the data are plain dictionaries, lists, texts and numbers that
any validator takes, and a side table gives the place of each part by its path.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import TypeAlias

from strength_handbook.reading.problem import Problem, Severity

Plain: TypeAlias = "dict[str, Plain] | list[Plain] | str | int | float | bool | None"
"""What YAML is read into."""

Path: TypeAlias = tuple[str | int, ...]
"""Keys and list indexes from the top of a file to a value; ``()`` is the whole file."""


@dataclass(frozen=True, slots=True)
class Mark:
    """Where a value or key stands in its file.

    Attributes:
        line: line of its first character, 1-based.
        column: column of its first character, 1-based, in characters.
        text_column: column of the first character of its text, where the text is on one line and
            each of its characters is one of the file (a quote is not part of the text), else None.
            Character `n` of the text (0-based) then stands in column ``text_column + n``.
    """

    line: int
    column: int
    text_column: int | None


@dataclass(frozen=True)
class Source:
    """A file's data and the places of its parts.

    Attributes:
        file: path to show in problems.
        data: what the file says, a mapping at the top.
        marks: place of each value, by path.
        key_marks: place of each key, by the path of its value.
    """

    file: str
    data: Plain
    marks: Mapping[Path, Mark]
    key_marks: Mapping[Path, Mark]

    def at(self, path: Path) -> Mark:
        """Place of a value; for a path that is not in the file, of the nearest part around it."""
        for length in range(len(path), -1, -1):
            if mark := self.marks.get(path[:length]):
                return mark
        return Mark(1, 1, None)

    def key_at(self, path: Path) -> Mark:
        """Place of the key of a value; as `at` where there is no such key."""
        return self.key_marks.get(path) or self.at(path)

    def problem(
        self,
        path: Path,
        slug: str,
        text: str,
        *,
        key: bool = False,
        severity: Severity = Severity.ERROR,
    ) -> Problem:
        """A problem at a value, or at its key."""
        mark = self.key_at(path) if key else self.at(path)
        return Problem(self.file, mark.line, mark.column, slug, text, severity)


def value_at(data: Plain, path: Path) -> Plain:
    """What stands at a path; None where nothing does."""
    for part in path:
        if isinstance(data, dict) and isinstance(part, str):
            data = data.get(part)
        elif isinstance(data, list) and isinstance(part, int) and part < len(data):
            data = data[part]
        else:
            return None
    return data
