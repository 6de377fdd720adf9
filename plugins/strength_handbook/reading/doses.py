"""Doses written in one line, replaced by their long form before the data is given its shape.

Each value keeps the place of its own words in the file, so a wrong tempo in the middle of a line is
reported at that tempo.
"""

from typing import TypeAlias

from strength_handbook.reading.notation import Found, NotationError, read_dose
from strength_handbook.reading.problem import Problem
from strength_handbook.reading.source import Mark, Path, Plain, Source

_Way: TypeAlias = tuple[str | None, ...]
_DOSES: tuple[_Way, ...] = (
    ("dose",),
    ("doors", None, "dose"),
    ("sessions", None, "slots", None, "weeks", None),
)
"""Ways to the places of doses; None stands for any key or index."""


def expand_doses(source: Source) -> tuple[Source, list[Problem]]:
    """The source with every one-line dose in its long form, and the lines that can't be read.

    A line that can't be read leaves a week without dose, or an empty dose.
    """
    marks, key_marks = dict(source.marks), dict(source.key_marks)
    problems: list[Problem] = []

    def expanded(data: Plain, path: Path, ways: tuple[_Way, ...]) -> Plain:
        if () in ways:
            return long_form(data, path) if isinstance(data, str) else data
        if isinstance(data, dict):
            return {
                key: expanded(value, (*path, key), on) if (on := _further(ways, key)) else value
                for key, value in data.items()
            }
        if isinstance(data, list):
            on = _further(ways, 0)
            return [expanded(value, (*path, i), on) for i, value in enumerate(data)] if on else data
        return data

    def long_form(line: str, path: Path) -> Plain:
        whole = source.at(path)
        try:
            found = read_dose(line)
        except NotationError as error:
            mark = _mark(whole, error.start)
            problems.append(Problem(source.file, mark.line, mark.column, "dose", str(error)))
            return {} if path[-1] == "dose" else None
        long: dict[str, Plain] = {}
        for value in found:
            store(long, value)
            for length in range(1, len(value.key) + 1):
                place = (*path, *value.key[:length])
                marks[place] = key_marks[place] = _mark(whole, value.start)
        return long

    data = expanded(source.data, (), _DOSES)
    return Source(source.file, data, marks, key_marks), problems


def _further(ways: tuple[_Way, ...], key: str | int) -> tuple[_Way, ...]:
    """The ways that lead on through a key."""
    return tuple(way[1:] for way in ways if way[0] in (key, None))


def store(long: dict[str, Plain], value: Found) -> None:
    """Put one value of a line into its place in the long form.

    >>> dose: dict[str, Plain] = {}
    >>> for value in read_dose("3x(4+2)/20 s"):
    ...     store(dose, value)
    >>> dose
    {'sets': '3', 'cluster': {'parts': ['4', '2'], 'pause': '20 s'}}
    """
    inner: Plain = long
    for part, following in zip(value.key, (*value.key[1:], None), strict=True):
        step: Plain = value.value
        if following is not None:
            step = [] if isinstance(following, int) else {}
        if isinstance(inner, dict):
            inner = inner.setdefault(str(part), step)
        elif isinstance(inner, list):  # values of a list come in order
            inner.append(step)
            inner = step


def _mark(whole: Mark, start: int) -> Mark:
    """The place of a word in the line; the line's own place where columns can't be told."""
    if whole.text_column is None:
        return whole
    return Mark(whole.line, whole.text_column + start, None)
