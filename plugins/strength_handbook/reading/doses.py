"""Doses written in one line, replaced by their long form before the data is given its shape.

Each value keeps the place of its own words in the file, so a wrong tempo in the middle of a line is
reported at that tempo.
"""

from collections.abc import Iterator

from strength_handbook.reading.notation import Found, NotationError, read_dose
from strength_handbook.reading.problem import Problem
from strength_handbook.reading.source import Mark, Path, Plain, Source


def expand_doses(source: Source) -> tuple[Source, list[Problem]]:
    """The source with every one-line dose in its long form, and the lines that can't be read.

    A dose stands under `dose`, and for each week under the `weeks` of a slot.
    """
    lines = [(path, text) for path, text in _dose_lines(source.data, ())]
    if not lines:
        return source, []
    data = source.data
    marks = dict(source.marks)
    key_marks = dict(source.key_marks)
    problems: list[Problem] = []
    for path, text in lines:
        base = source.at(path)
        try:
            found = read_dose(text)
        except NotationError as error:
            mark = _mark(base, error.start)
            problems.append(Problem(source.file, mark.line, mark.column, "dose", str(error)))
            data = _replaced(data, path, None)
            continue
        long: dict[str, Plain] = {}
        for value in found:
            _store(long, value)
            for length in range(1, len(value.key) + 1):
                place = (*path, *value.key[:length])
                marks[place] = key_marks[place] = _mark(base, value.start)
        data = _replaced(data, path, long)
    return Source(source.file, data, marks, key_marks), problems


def _dose_lines(data: Plain, path: Path) -> Iterator[tuple[Path, str]]:
    """Every text that is a dose, with its path."""
    if isinstance(data, dict):
        in_slot = "exercise" in data
        for key, value in data.items():
            if key == "dose" and isinstance(value, str):
                yield (*path, key), value
            elif key == "weeks" and in_slot and isinstance(value, dict):
                for week, dose in value.items():
                    if isinstance(dose, str):
                        yield (*path, key, week), dose
            else:
                yield from _dose_lines(value, (*path, key))
    elif isinstance(data, list):
        for index, value in enumerate(data):
            yield from _dose_lines(value, (*path, index))


def _store(long: dict[str, Plain], value: Found) -> None:
    inner = long
    for part in value.key[:-1]:
        step = inner.setdefault(part, {})
        if isinstance(step, dict):
            inner = step
    inner[value.key[-1]] = value.value


def _mark(base: Mark, start: int) -> Mark:
    """The place of a word in the line; the line's own place where columns can't be told."""
    if base.text_column is None:
        return base
    return Mark(base.line, base.text_column + start, None)


def _replaced(data: Plain, path: Path, new: Plain) -> Plain:
    """A copy of the data with one value replaced; what is not on the way is shared."""
    if not path:
        return new
    head, rest = path[0], path[1:]
    if isinstance(data, dict):
        return {
            key: _replaced(value, rest, new) if key == head else value
            for key, value in data.items()
        }
    if isinstance(data, list):
        return [
            _replaced(value, rest, new) if index == head else value
            for index, value in enumerate(data)
        ]
    return data
