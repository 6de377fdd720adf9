"""Doses written in one line, replaced by their long form before the data is given its shape.

Each value keeps the place of its own words in the file, so a wrong tempo in the middle of a line is
reported at that tempo.
"""

from strength_handbook.reading.notation import Found, NotationError, read_dose
from strength_handbook.reading.problem import Problem
from strength_handbook.reading.source import Mark, Path, Plain, Source


def expand_doses(source: Source) -> tuple[Source, list[Problem]]:
    """The source with every one-line dose in its long form, and the lines that can't be read.

    A line that can't be read leaves a week without dose, or an empty dose.
    """
    marks, key_marks = dict(source.marks), dict(source.key_marks)
    problems: list[Problem] = []

    def expanded(data: Plain, path: Path) -> Plain:
        if isinstance(data, str) and _is_dose(path):
            return long_form(data, path)
        if isinstance(data, dict):
            return {key: expanded(value, (*path, key)) for key, value in data.items()}
        if isinstance(data, list):
            return [expanded(value, (*path, index)) for index, value in enumerate(data)]
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

    data = expanded(source.data, ())
    return Source(source.file, data, marks, key_marks), problems


def _is_dose(path: Path) -> bool:
    """True under `dose` in an exercise and its doors, and for each week of a slot."""
    if path[-1:] == ("dose",):
        return len(path) == 1 or path[0] == "doors"
    return len(path) == 6 and path[0] == "sessions" and path[2] == "slots" and path[4] == "weeks"


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
