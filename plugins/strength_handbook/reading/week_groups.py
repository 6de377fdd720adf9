"""Several weeks that share one line, `1-3: 3x10`, as one line for each of them.

Each of them keeps the place of the line that it is from, so that whatever is wrong is told there.
"""

import re
from collections.abc import Iterator
from dataclasses import replace

from strength_handbook.model.shape import quoted
from strength_handbook.model.weeks import MOST_WEEKS
from strength_handbook.reading.problem import Problem
from strength_handbook.reading.source import Mark, Path, Plain, Source

_GROUP = re.compile(r"\d{1,2}(?:\s*[-–,]\s*\d{1,2})+")
_RUN = re.compile(r"(\d+)(?:\s*[-–]\s*(\d+))?")


def single_weeks(source: Source) -> tuple[Source, list[Problem]]:
    """The file with one entry for each week, and the groups of weeks that can't be.

    Args:
        source: a wave's file; others have no weeks with doses and come back as they are.
    """
    marks, key_marks = dict(source.marks), dict(source.key_marks)
    problems: list[Problem] = []
    data = source.data
    for path, weeks in _weeks_of(source.data):
        if not any(map(_GROUP.fullmatch, weeks)):
            continue
        single: dict[str, Plain] = {}
        first: dict[str, str] = {}
        for key, dose in weeks.items():
            numbers = [key]
            if _GROUP.fullmatch(key):
                numbers = [str(number) for number in _numbers(key)]
                if wrong := _wrong(key, numbers):
                    problems.append(source.problem((*path, key), "weeks", wrong, key=True))
                    continue
            for number in numbers:
                if number in single:
                    text = (
                        f"week {number} is in {quoted(first[number])} and in {quoted(key)}; write "
                        "it once"
                    )
                    problems.append(source.problem((*path, key), "weeks", text, key=True))
                    continue
                single[number], first[number] = dose, key
                if number != key:
                    _copy(marks, (*path, key), (*path, number))
                    _copy(key_marks, (*path, key), (*path, number))
        data = _with(data, path, dict(sorted(single.items(), key=_in_order)))
    return replace(source, data=data, marks=marks, key_marks=key_marks), problems


def _in_order(entry: tuple[str, Plain]) -> int:
    return int(entry[0]) if entry[0].isdigit() else 0


def _weeks_of(data: Plain) -> Iterator[tuple[Path, dict[str, Plain]]]:
    """The weeks of every slot of a wave, with their path."""
    sessions = data.get("sessions") if isinstance(data, dict) else None
    for name, session in sessions.items() if isinstance(sessions, dict) else ():
        slots = session.get("slots") if isinstance(session, dict) else None
        for place, slot in enumerate(slots) if isinstance(slots, list) else ():
            weeks = slot.get("weeks") if isinstance(slot, dict) else None
            if isinstance(weeks, dict):
                yield ("sessions", name, "slots", place, "weeks"), weeks


def _numbers(key: str) -> list[int]:
    """The weeks of a group, in the order in which they are written.

    >>> _numbers("1-3"), _numbers("1, 3, 5–6"), _numbers("3-1")
    ([1, 2, 3], [1, 3, 5, 6], [])
    """
    runs = (_RUN.fullmatch(one.strip()) for one in key.split(","))
    return [
        number for run in runs if run for number in range(int(run[1]), int(run[2] or run[1]) + 1)
    ]


def _wrong(key: str, numbers: list[str]) -> str:
    """What is wrong with a group, and what to write; "" for nothing."""
    runs = [_RUN.fullmatch(one.strip()) for one in key.split(",")]
    backwards = any(run is None or (run[2] and int(run[2]) <= int(run[1])) for run in runs)
    if backwards:
        return f"{quoted(key)} are no weeks; write '1-3', the first week before the last, or '1, 3'"
    if len(set(numbers)) < len(numbers):
        return f"{quoted(key)} has a week twice; write it once"
    if int(max(numbers, key=int)) > MOST_WEEKS or "0" in numbers:
        return f"{quoted(key)}: a program has weeks 1 to {MOST_WEEKS}"
    return ""


def _copy(marks: dict[Path, Mark], old: Path, new: Path) -> None:
    """Give a part the places of another, with all that is in it."""
    length = len(old)
    marks |= {(*new, *path[length:]): mark for path, mark in marks.items() if path[:length] == old}


def _with(data: Plain, path: Path, value: Plain) -> Plain:
    """The data with another value at a path."""
    if not path:
        return value
    first, *rest = path
    if isinstance(data, dict):
        return {
            key: _with(one, tuple(rest), value) if key == first else one
            for key, one in data.items()
        }
    if isinstance(data, list):
        return [
            _with(one, tuple(rest), value) if place == first else one
            for place, one in enumerate(data)
        ]
    return data
