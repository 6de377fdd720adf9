"""Doses written in one line, replaced by their long form before the data is given its shape.

Each value keeps the place of its own words in the file, so a wrong tempo in the middle of a line is
reported at that tempo.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from typing import TypeAlias

from strength_handbook.dose.printing import dose_line
from strength_handbook.dose.texts import OneLineError
from strength_handbook.reading.doing import Doing, doing_at
from strength_handbook.reading.last_week import as_last_week
from strength_handbook.reading.long_form import part_of, stored
from strength_handbook.reading.notation import Found, NotationError, read_dose, read_house
from strength_handbook.reading.problem import Problem
from strength_handbook.reading.source import Mark, Path, Plain, Source, value_at
from strength_handbook.reading.week_groups import single_weeks

_Way: TypeAlias = tuple[str | None, ...]
_DOSES: tuple[_Way, ...] = (
    ("dose",),
    ("doors", None, "dose"),
    ("doors", "hurts", None, "dose"),
    ("sessions", None, "slots", None, "weeks", None),
)
"""Ways to the places of doses; None stands for any key or index."""
_IN_WEEKS: tuple[_Way, ...] = ((None,),)
"""The way on from the weeks of a slot."""


@dataclass(frozen=True, slots=True)
class ReadAs:
    """A dose in another spelling, and how it was understood.

    Attributes:
        file: where it stands.
        line: its line.
        column: its column.
        path: keys and indexes to it from the top of the file.
        written: the line as written.
        read_as: the same in the house's notation.
        left_out: words of the line that add nothing to it: names of the exercise and of things.
    """

    file: str
    line: int
    column: int
    path: Path
    written: str
    read_as: str
    left_out: tuple[str, ...] = ()


@dataclass
class Expanded:
    """What came out of the one-line doses of a file.

    Attributes:
        source: the file with each of them in its long form.
        problems: those that can't be read.
        read_as: those in another spelling than the house's, and how each was understood.
    """

    source: Source
    problems: list[Problem] = field(default_factory=list)
    read_as: list[ReadAs] = field(default_factory=list)


def expand_doses(source: Source, exercises: Mapping[str, Doing] | None = None) -> Expanded:
    """The source with every one-line dose in its long form, and the lines that can't be read.

    A line that can't be read leaves a week without dose, or an empty dose.

    Args:
        source: a file.
        exercises: what is known of each exercise, by short name.
    """
    source, problems = single_weeks(source)
    marks, key_marks = dict(source.marks), dict(source.key_marks)
    out = Expanded(source, problems)

    def of_weeks(weeks: dict[str, Plain], path: Path) -> Plain:
        """The weeks of a slot, the earlier first: a later one may refer to them."""
        slot = value_at(source.data, path[:-1])
        known: dict[int, Plain] = {}
        doses = dict(weeks)
        for key in sorted(weeks, key=_number):
            value = weeks[key]
            if isinstance(value, str):
                doses[key] = long_form(value, (*path, key), _number(key), known, slot)
            known[_number(key)] = doses[key]
        return doses

    def expanded(data: Plain, path: Path, ways: tuple[_Way, ...]) -> Plain:
        if ways == _IN_WEEKS and isinstance(data, dict):
            return of_weeks(data, path)
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

    def long_form(
        line: str, path: Path, week: int = 0, earlier: Mapping[int, Plain] | None = None,
        slot: Plain = None,
    ) -> Plain:  # fmt: skip
        whole, doing = source.at(path), doing_at(source.data, path, exercises or {})
        try:
            full = line
            if earlier is not None:
                full = as_last_week(line, week, earlier, slot, doing)
            found = read_dose(full, doing)
            if full != line:  # none of it stands where it is told
                found = [replace(value, start=0) for value in found]
        except NotationError as error:
            mark = _mark(whole, error.start)
            out.problems.append(Problem(source.file, mark.line, mark.column, "dose", str(error)))
            return {} if path[-1] == "dose" else None
        if house := read_as(line, found):
            left_out = tuple(str(value.value) for value in found if not value.key)
            out.read_as.append(
                ReadAs(source.file, whole.line, whole.column, path, line, house, left_out)
            )
        for value in found:
            for length in range(1, len(value.key) + 1):
                place = (*path, *value.key[:length])
                marks[place] = key_marks[place] = _mark(whole, value.start)
        return stored(found)

    data = expanded(source.data, (), _DOSES)
    out.source = Source(source.file, data, marks, key_marks)
    out.problems = list(dict.fromkeys(out.problems))  # weeks that share a line say it once
    return out


def _number(week: str) -> int:
    """A week's number; 0 for what is none."""
    return int(week) if week.isdigit() else 0


def read_as(line: str, found: Iterable[Found]) -> str:
    """What was found in a line, in the house's notation; "" where the line is in it already.

    >>> read_as("3 sets of 5", read_dose("3 sets of 5")), read_as("3x5", read_dose("3x5"))
    ('3x5', '')
    """
    part = part_of(found)
    if part is None:  # what is wrong is reported where it stands
        return ""
    try:
        if part_of(read_house(line)) == part:
            return ""
    except NotationError:
        pass  # only other spellings make sense of it
    try:
        return dose_line(part)
    except OneLineError:
        return ""


def _further(ways: tuple[_Way, ...], key: str | int) -> tuple[_Way, ...]:
    """The ways that lead on through a key."""
    return tuple(way[1:] for way in ways if way[0] in (key, None))


def _mark(whole: Mark, start: int) -> Mark:
    """The place of a word in the line; the line's own place where columns can't be told."""
    if whole.text_column is None:
        return whole
    return Mark(whole.line, whole.text_column + start, None)
