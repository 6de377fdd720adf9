"""A further wave of a program: one that is there, copied behind the last with its weeks renumbered.

Only numbers of weeks and the name change; comments, order and spelling stay the coach's own.
"""

import json
import re
from collections.abc import Iterator
from pathlib import Path

from strength_handbook.model.program import Wave
from strength_handbook.publish.command_errors import MisuseError
from strength_handbook.publish.starter import short_name
from strength_handbook.publish.trial import refuse_unreadable
from strength_handbook.reading.book import read_book
from strength_handbook.reading.raw_text import read_text
from strength_handbook.reading.source import Path as Place
from strength_handbook.reading.source import Source
from strength_handbook.reading.suggest import one_of
from strength_handbook.reading.written import File
from strength_handbook.reading.yaml_source import read_source

_ORDINALS = ("first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth")
_MOST_WEEKS = 60
_DELOAD = re.compile(r"(\bdeload(?:\s+of\s+(?:week\s+)?|-of:\s*))(\d+)")
_OTHER_WEEK = re.compile(r"(\b(?:as(?:\s+in)?|like|repeat)\s+week\s+)(\d+)", re.IGNORECASE)
_NUMBER = re.compile(r"([\"']?)(\d+)")
_GROUP = re.compile(r"[\"']?\d+(?:\s*[-–,]\s*\d+)+")
"""Several weeks that share one line, `1-3: 3x10`."""
_VALUE = re.compile(r"(?P<key>[\w\"']+\s*:\s+)(?:\"[^\"]*\"|'[^']*'|.*?)(?P<comment>\s+#.*)?")
"""A line with a key at the left margin."""


def new_wave(program: str, number: int, name: str | None, programs: Path) -> Path:
    """Append a wave to a program.

    Args:
        program: the name of its folder.
        number: which wave to copy; the number its file begins with.
        name: what members call it; by its number if left out, such as `Third wave`.
        programs: the program folder.

    Returns:
        The new file.

    Raises:
        MisuseError: where there is no such wave, or no place behind the last.
    """
    written = read_book(programs).written
    waves = written.waves_of(program)
    if program not in written.programs or not waves:
        there = one_of(sorted(set(written.programs) & set(written.waves))) or "none"
        raise MisuseError(f"no program '{program}' can be read here; there is {there}")
    copied = next((wave for wave in waves if wave.order == number), None)
    if copied is None:
        numbers = one_of([str(wave.order) for wave in waves])
        raise MisuseError(f"--from: '{program}' has no wave {number}; there is {numbers}")
    if any(found.id == program and found.order == number for found in written.broken):
        broken = f"{number}-{copied.id}.yml"
        raise MisuseError(f"{broken} has errors; run 'strength-handbook check' and mend them first")
    order, last = waves[-1].order + 1, max(week for wave in waves for week in wave.model.weeks)
    title = " ".join((name or _by_number(order)).split())
    key = short_name(title.removesuffix(" wave"))
    shift = last + 1 - copied.model.weeks[0]
    if copied.model.weeks[-1] + shift > _MOST_WEEKS:
        raise MisuseError(f"a program has at most {_MOST_WEEKS} weeks; begin a new program")
    if key in {wave.id for wave in waves}:
        raise MisuseError(f"'{program}' has a wave '{key}' already; give it another: --name")
    origin = programs / program / f"{copied.order}-{copied.id}.yml"
    path = programs / program / f"{order}-{key}.yml"
    text = _shifted(origin, copied, title, shift)
    refuse_unreadable(programs, path.relative_to(programs).as_posix(), text)
    with path.open("x", encoding="utf-8") as file:
        file.write(text)
    return path


def _by_number(order: int) -> str:
    word = _ORDINALS[order - 1] if order <= len(_ORDINALS) else str(order)
    return f"{word.capitalize()} wave"


def _shifted(origin: Path, wave: File[Wave], title: str, shift: int) -> str:
    """The file with another name, and with every number of a week so much higher."""
    raw = origin.read_bytes()
    source, _ = read_source(raw, origin.name)
    decoded, _ = read_text(raw, origin.name)
    assert source is not None  # noqa: S101  # it has been read as a wave already
    assert decoded is not None  # noqa: S101
    lines = decoded.split("\n")
    for row, column in sorted(set(_numbers(source)), reverse=True):
        line = lines[row - 1]
        start, rest = line[: column - 1], line[column - 1 :]
        if (several := _GROUP.match(rest)) and rest[several.end() :].lstrip("\"' ")[:1] == ":":
            higher = re.sub(r"\d+", lambda of: str(int(of[0]) + shift), several[0])
            lines[row - 1] = start + higher + rest[several.end() :]
        elif found := _NUMBER.match(rest):  # not the list around it
            higher = f"{found[1]}{int(found[2]) + shift}"
            lines[row - 1] = start + higher + rest[found.end() :]
    for row in {mark.line for path, mark in source.marks.items() if _in_dose(path)}:
        for week in (_DELOAD, _OTHER_WEEK):
            lines[row - 1] = week.sub(lambda of: f"{of[1]}{int(of[2]) + shift}", lines[row - 1])
    weeks = wave.model.weeks
    span = f"{weeks[0] + shift}-{weeks[-1] + shift}" if len(weeks) > 1 else str(weeks[0] + shift)
    for key, value in (("weeks", span), ("wave", json.dumps(title, ensure_ascii=False))):
        row = source.key_at((key,)).line
        if found := _VALUE.fullmatch(lines[row - 1]):
            lines[row - 1] = f"{found['key']}{value}{found['comment'] or ''}"
    return "\n".join(lines)


def _numbers(source: Source) -> Iterator[tuple[int, int]]:
    """Line and column of each number of a week that stands by itself."""
    for path, mark in source.marks.items():
        if path[:1] in (("deload",), ("tests",)):
            yield mark.line, mark.column
    for path, mark in source.key_marks.items():
        if len(path) == 6 and _in_dose(path):
            yield mark.line, mark.column


def _in_dose(path: Place) -> bool:
    return len(path) >= 6 and path[0] == "sessions" and path[2] == "slots" and path[4] == "weeks"
