"""A slip in a name that room.yml gives: told once, where it was written, not at every use."""

import re
from collections import Counter
from collections.abc import Iterator, Mapping
from difflib import get_close_matches

from strength_handbook.model.dose_part import DosePart
from strength_handbook.model.exercise import Exercise
from strength_handbook.model.shape import quoted
from strength_handbook.reading.files import FileKind
from strength_handbook.reading.problem import Problem
from strength_handbook.reading.written import Written

_FEWEST = 2
"""Places that ask for a name before the slip is looked for in the room."""

_LONG_ENOUGH = 4
"""Letters of a word in which a slip can be told from another word."""

_DIGITS = re.compile(r"\d")

_LOADED_BY = ("bar", "rack", "chains", "pivot", "weight", "carrier", "stack", "machine")


def room_slips(written: Written) -> Mapping[str, str]:
    """Names that are asked for and not there, each with the name it has in room.yml.

    A name counts as a slip of the room's where several places ask for one that is not there, and
    one much like it is there that nobody asks for.
    """
    if written.room is None or written.unread(FileKind.ROOM):
        return {}
    there = written.room.model.names()
    asked = Counter(_asked(written))
    unused = [name for name in there if name not in asked]
    found: dict[str, str] = {}
    for name, times in sorted(asked.items()):
        if name in there or times < _FEWEST:
            continue
        near = get_close_matches(name, [one for one in unused if _may_be_meant(name, one)], n=1)
        if near and near[0] not in found.values():
            found[name] = near[0]
    return found


def _may_be_meant(name: str, other: str) -> bool:
    """True unless the two may well be two things: 'rack-1' and 'rack-2', 'band-a' and 'band-b'.

    >>> _may_be_meant("clear-floor", "clear-flor"), _may_be_meant("band-a", "band-b")
    (True, False)
    """
    if _DIGITS.findall(name) != _DIGITS.findall(other):
        return False
    ours, theirs = name.split("-"), other.split("-")
    if len(ours) != len(theirs):
        return True
    changed = [(a, b) for a, b in zip(ours, theirs, strict=True) if a != b]
    return all(min(len(a), len(b)) >= _LONG_ENOUGH for a, b in changed)


def told_once(written: Written, slips: Mapping[str, str]) -> Iterator[Problem]:
    """The slips, at their names in room.yml."""
    if written.room is None:
        return
    source, asked = written.room.source, Counter(_asked(written))
    for name, here in slips.items():
        path = next(path for path in source.key_marks if path[1:] == (here,))
        text = (
            f"{asked[name]} places ask for {quoted(name)}, and nothing for {quoted(here)}; "
            f"write {quoted(name)} here"
        )
        yield source.problem(path, "unknown-thing-in-the-room", text, key=True)


def _asked(written: Written) -> Iterator[str]:
    """Every name of the room that exercises and doses ask for, as often as they do."""
    for file in written.exercises.values():
        yield from _by_exercise(file.model)
    for key in written.waves:
        for wave in written.waves_of(key):
            for session in wave.model.sessions.values():
                for slot in session.slots:
                    for part in (slot, *slot.weeks.values()):
                        yield from _bands(part)


def _by_exercise(exercise: Exercise) -> Iterator[str]:
    yield from exercise.stations
    yield from exercise.uses
    names = (getattr(exercise.load, key, None) for key in _LOADED_BY)
    yield from (name for name in names if isinstance(name, str))
    yield from _bands(exercise.dose)
    for _, door in exercise.doors.each():
        yield from _bands(door.dose)


def _bands(part: DosePart | None) -> Iterator[str]:
    if part is None:
        return
    if part.bands is not None:
        yield from part.bands.pair
    if part.assist is not None and part.assist.band is not None:
        yield part.assist.band
