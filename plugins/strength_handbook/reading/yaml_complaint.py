"""What a YAML parser said when it gave up, and what it had read until then.

The phrases are those of PyYAML's pure-Python parser. Lines and columns are 0-based here, as in the
parser's own marks.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Protocol, Self

import yaml


class _ParserMark(Protocol):
    """A position in terms of either parser."""

    @property
    def line(self) -> int: ...
    @property
    def column(self) -> int: ...


def place(mark: _ParserMark | None) -> tuple[int, int]:
    """Line and column of a parser's mark; the top of the file where it has none."""
    return (mark.line, mark.column) if mark else (0, 0)


@dataclass(frozen=True)
class Complaint:
    """A syntax error with its surroundings.

    Attributes:
        what: the complaint itself.
        doing: what the parser was doing, or "".
        here: line and column where it gave up.
        begun: line and column where the thing it was reading began; as `here` if it does not say.
        lines: the file's lines without line ends.
        last: the last scalar read before, if any.
        bracket: line and column of the innermost ``[`` or ``{`` still open, if any.
    """

    what: str
    doing: str
    here: tuple[int, int]
    begun: tuple[int, int]
    lines: Sequence[str]
    last: yaml.ScalarEvent | None
    bracket: tuple[int, int] | None

    @classmethod
    def of(
        cls,
        error: yaml.MarkedYAMLError,
        lines: Sequence[str],
        last: yaml.ScalarEvent | None,
        bracket: tuple[int, int] | None,
    ) -> Self:
        """The complaint in what a parser raised."""
        here = place(error.problem_mark)
        begun = place(error.context_mark) if error.context_mark else here
        return cls(error.problem or "", error.context or "", here, begun, lines, last, bracket)

    @property
    def line(self) -> str:
        """The line in which the parser gave up."""
        return self.lines[self.here[0]]

    @property
    def before(self) -> str:
        """That line up to where it gave up."""
        return self.line[: self.here[1]]

    @property
    def character(self) -> str:
        """The character at which it gave up; "" at the end of a line."""
        return self.line[self.here[1] : self.here[1] + 1]

    def character_at(self, place: tuple[int, int]) -> str:
        """The character at a line and column; "" at the end of a line."""
        line, column = place
        return self.lines[line][column : column + 1]
