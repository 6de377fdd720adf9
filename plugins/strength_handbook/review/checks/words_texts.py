"""The texts of all files: what members and coaches read, with the place of each."""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property, lru_cache

from strength_handbook.reading.source import Path, Plain, Source
from strength_handbook.review.desk import Desk
from strength_handbook.review.finding import Spot

PROSE = frozenset({
    "accepted", "after-hours", "alone-how", "at", "because", "before", "breathe", "breathing",
    "by", "cautions", "cut-first", "during", "easier", "end", "finish", "fix", "goal", "harder",
    "how", "hurts", "if-it-stays", "lone-training", "need", "next-step", "no-partner", "not-for",
    "note", "position", "promise", "purpose", "range", "reason", "return-by", "rules", "safeties",
    "see", "set-up", "start", "stop", "taken", "test", "turn", "voice", "warm-up", "when", "where",
    "why",
})  # fmt: skip
"""Keys under which sentences stand; a list's entries belong to the list's key."""
OF_THE_COACH = frozenset({"reason"})
"""Of those, what only the coach reads."""
_DEEPEST = 4
"""Keys to the deepest part with a name of its own: a slot."""
_WORD = re.compile(r"\S*\w\S*")
_SENTENCE_END = re.compile(r"(?<=[.!?:])[”\"]?\s+(?=[A-Z“\"])")


@dataclass(frozen=True)
class Written:
    """One text of one file.

    Attributes:
        source: the file.
        path: where in it.
        text: as written.
        what: what it belongs to, as findings call it.
        weeks: the week whose dose it stands in.
        program: the program; empty for exercises, room and house rules.
    """

    source: Source
    path: Path
    text: str
    what: str
    weeks: tuple[int, ...] = ()
    program: str = ""

    @cached_property
    def key(self) -> str:
        """The key it stands under; of a list, the list's."""
        return next((part for part in reversed(self.path) if isinstance(part, str)), "")

    @property
    def prose(self) -> bool:
        """True where it is a sentence or a note, not a name, a load or a word of a list."""
        return self.key in PROSE

    @property
    def spot(self) -> Spot:
        """Its place."""
        return Spot(self.source, self.path)


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


@lru_cache(maxsize=2)
def all_texts(desk: Desk) -> tuple[Written, ...]:
    """Every text of every file, in the order of the files."""
    return tuple(_all(desk))


def _all(desk: Desk) -> Iterator[Written]:
    files = desk.written
    for name in sorted(files.exercises):
        yield from _leaves(files.exercises[name].source, f"exercise {name}")
    for name in sorted(files.programs):
        yield from _leaves(files.programs[name].source, "program", name)
        for wave in files.waves_of(name):
            yield from _leaves(wave.source, f"wave {wave.id}", name)
    if files.room is not None:
        yield from _leaves(files.room.source, "room")
    if files.rules is not None:
        yield from _leaves(files.rules.source, "house rules")


def _leaves(source: Source, what: str, program: str = "") -> Iterator[Written]:
    def walk(data: Plain, path: Path, name: str, week: int) -> Iterator[Written]:
        if isinstance(data, dict):
            for key, value in data.items():
                inner = (*path, key)
                number = int(key) if path[-1:] == ("weeks",) and key.isdecimal() else week
                yield from walk(value, inner, _named(what, name, inner, value), number)
        elif isinstance(data, list):
            for index, value in enumerate(data):
                inner = (*path, index)
                yield from walk(value, inner, _named(what, name, inner, value), week)
        elif isinstance(data, str):
            weeks = (week,) if week else ()
            yield Written(source, path, data, name, weeks, program)

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
