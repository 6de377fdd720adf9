"""Words in a dose that name the exercise itself: they add nothing to its numbers."""

import re

from strength_handbook.reading.doing import Doing

_WORDS = re.compile(r"[^\W\d_]+(?:[\s-]+[^\W\d_]+)*")
_WORD = re.compile(r"[^\W\d_]+")


def named_at(line: str, position: int, doing: Doing) -> str:
    """The words at a position that are all of the exercise's own name; "" where none is.

    >>> swing = Doing(name=frozenset({"kettlebell", "swing"}))
    >>> named_at("5x20 swings, 24 kg", 5, swing), named_at("5x20 rows", 5, swing)
    ('swings', '')
    """
    found = _WORDS.match(line, position)
    end = position
    for word in _WORD.finditer(line, position, found.end()) if found else ():
        if not _same(word[0].lower(), doing.name):
            break
        end = word.end()
    return line[position:end]


def _same(word: str, name: frozenset[str]) -> bool:
    """True for a word of a name, or for one or several of it."""
    ways = {word, f"{word}s", f"{word}es", word.removesuffix("s"), word.removesuffix("es")}
    return bool(ways & name)
