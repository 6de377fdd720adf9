"""The texts of all files: what members and coaches read, with the place of each."""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from strength_handbook.model.texts import Words, words_at
from strength_handbook.plan.remembered import remembered
from strength_handbook.reading.source import Path, Plain, Source
from strength_handbook.reading.written import File
from strength_handbook.review.desk import Desk
from strength_handbook.review.finding import Spot

_DEEPEST = 4
"""Keys to the deepest part with a name of its own: a slot."""
_WORD = re.compile(r"\S*\w\S*")
_SENTENCE_END = re.compile(r"(?<=[.!?:])[”\"]?\s+(?=[A-Z“\"])")


@dataclass(frozen=True)
class WrittenText:
    """One text of one file.

    Attributes:
        source: the file.
        path: where in it.
        text: as written.
        words: what kind of words it is; None for loads, references and words of a list.
        what: what it belongs to, as findings call it.
        weeks: the week whose dose it stands in.
        program: the program; empty for exercises, room and house rules.
        is_key: it is the key itself, as of the settings of a machine.
    """

    source: Source
    path: Path
    text: str
    words: Words | None
    what: str
    weeks: tuple[int, ...] = ()
    program: str = ""
    is_key: bool = False

    @cached_property
    def key(self) -> str:
        """The key it stands under; of a list, the list's."""
        keys = [part for part in self.path[: -1 if self.is_key else None] if isinstance(part, str)]
        return keys[-1] if keys else ""

    @property
    def sentences(self) -> bool:
        """True where it is a sentence or a note, not a name, a load or a word of a list."""
        return self.words is not None and not self.words.label and not self.is_key

    @property
    def for_members(self) -> bool:
        """True where members read it, or may."""
        return self.words is None or not self.words.coach

    @property
    def spot(self) -> Spot:
        """Its place."""
        return Spot(self.source, self.path, key=self.is_key)


def sentences(text: str) -> list[str]:
    """Sentences of a text; a colon before a capital letter ends one too.

    >>> sentences("Stuck? Sit down. Lean forward until 3.5 s are over.")
    ['Stuck?', 'Sit down.', 'Lean forward until 3.5 s are over.']
    """
    return [one for one in _SENTENCE_END.split(" ".join(text.split())) if one]


def words(text: str) -> list[str]:
    """Words, with numbers, without signs that stand alone.

    >>> words("Walk 15 m – there and back.")
    ['Walk', '15', 'm', 'there', 'and', 'back.']
    """
    return _WORD.findall(text)


@remembered(2)
def all_texts(desk: Desk) -> tuple[WrittenText, ...]:
    """Every text of every file, in the order of the files."""
    return tuple(_all(desk))


def _all(desk: Desk) -> Iterator[WrittenText]:
    files = desk.written
    for name in sorted(files.exercises):
        yield from _leaves(files.exercises[name], f"exercise {name}")
    for name in sorted(files.programs):
        yield from _leaves(files.programs[name], "program", name)
        for wave in files.waves_of(name):
            yield from _leaves(wave, f"wave {wave.id}", name)
    if files.room is not None:
        yield from _leaves(files.room, "room")
    if files.rules is not None:
        yield from _leaves(files.rules, "house rules")
    if files.lifters is not None:
        yield from _leaves(files.lifters, "lifters")


def _leaves(file: File[Any], what: str, program: str = "") -> Iterator[WrittenText]:
    source, root = file.source, type(file.model)

    def text(path: Path, text: str, name: str, week: int, *, key: bool = False) -> WrittenText:
        weeks = (week,) if week else ()
        words = words_at(root, path, key=key)
        return WrittenText(source, path, text, words, name, weeks, program, key)

    def walk(data: Plain, path: Path, name: str, week: int) -> Iterator[WrittenText]:
        if isinstance(data, dict):
            for key, value in data.items():
                inner = (*path, key)
                called = _named(what, name, inner, value)
                number = int(key) if path[-1:] == ("weeks",) and key.isdecimal() else week
                if words_at(root, inner, key=True) is not None:
                    yield text(inner, key, called, number, key=True)
                yield from walk(value, inner, called, number)
        elif isinstance(data, list):
            for index, value in enumerate(data):
                inner = (*path, index)
                yield from walk(value, inner, _named(what, name, inner, value), week)
        elif isinstance(data, str):
            yield text(path, data, name, week)

    yield from walk(source.data, (), what, 0)


def _named(what: str, name: str, path: Path, value: Plain) -> str:
    """What a part is called: sessions and slots as everywhere, things of the room by their id."""
    if len(path) > _DEEPEST or isinstance(value, str):
        return name
    match path:
        case ("sessions", str(session)):
            return session
        case ("sessions", str(session), "slots", int()) if isinstance(value, dict):
            return f"{session} {value.get('order')} {value.get('exercise')}"
        case (str(), str(thing)) if what == "room":
            return f"room {thing}"
        case ("rules", str(rule)) if what == "house rules":
            return f"house rule {rule}"
        case _:
            return name
