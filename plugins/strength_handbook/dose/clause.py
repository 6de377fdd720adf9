"""How a key looks in a one-line dose: patterns, and what of the long form they fill.

A clause ends where its last value ends, so commas are welcome and not needed; only words of the
coach's own (a position, how to breathe) run on to the next comma. Of several clauses that begin
at a word the longest is meant, so that their order tells nothing.
"""

import re
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from typing import TypeAlias

from strength_handbook.dose.free_words import swallowed
from strength_handbook.model.shape import quoted


@dataclass(frozen=True, slots=True)
class Found:
    """One value of a dose.

    Attributes:
        key: path of the key in the long form, such as ``("rest",)`` or ``("last-set", "cap")``; a
            number is a place in a list. Empty for words that are left out.
        value: its text or number.
        start: position of the value in the line, from 0.
    """

    key: tuple[str | int, ...]
    value: str | int | bool
    start: int


class NotationError(ValueError):
    """A word in the line that cannot be read.

    Attributes:
        start: its position in the line, from 0.
    """

    def __init__(self, start: int, text: str) -> None:
        self.start = start
        super().__init__(text)


Handler: TypeAlias = Callable[[re.Match[str]], Iterator[Found]]


Pattern: TypeAlias = tuple[str, Handler]
"""How a clause looks, and what makes values of its groups."""


@dataclass(frozen=True, slots=True)
class Clause:
    """How one key is read.

    Attributes:
        patterns: each way to write it.
        advice: by each word that it begins with, what belongs after that word.
        also: advice for other words that are written for it.
        in_parts: several clauses may fill it, each another part.
    """

    patterns: tuple[Pattern, ...]
    advice: Mapping[str, str]
    also: Mapping[str, str]
    in_parts: bool


def reads(
    *patterns: Pattern,
    advice: Mapping[str, str] | None = None,
    also: Mapping[str, str] | None = None,
    in_parts: bool = False,
) -> Clause:
    """How a key is read; all but its patterns may be left out."""
    return Clause(patterns, advice or {}, also or {}, in_parts)


def take(*keys: str) -> Handler:
    """A handler that stores the match's groups under the given keys; a point goes one deeper."""

    def handle(found: re.Match[str]) -> Iterator[Found]:
        for number, key in enumerate(keys, start=1):
            if found[number] is not None:
                yield Found(tuple(key.split(".")), found[number].strip(), found.start(number))

    return handle


def free(*keys: str) -> Handler:
    """The same where the last group is in the coach's own words."""
    inner = take(*keys)

    def handle(found: re.Match[str]) -> Iterator[Found]:
        refuse_swallowed(found, len(keys))
        return inner(found)

    return handle


def refuse_swallowed(found: re.Match[str], group: int) -> None:
    """Refuse words of the coach's own that run on into the next clause.

    Raises:
        NotationError: at that clause.
    """
    if next_clause := swallowed(found[group]):
        at, words = next_clause
        before = "a comma belongs" if at else "a few words and a comma belong"
        raise NotationError(found.start(group) + at, f"{before} before {quoted(words)}")


def beside(other: str, advice: str, handle: Handler) -> Handler:
    """A handler for a clause that makes sense only beside another one."""

    def checked(found: re.Match[str]) -> Iterator[Found]:
        if not re.search(other, found.string, re.IGNORECASE):
            raise NotationError(found.start(), advice)
        return handle(found)

    return checked


ANOTHER = "\0another word\0"
"""In a pattern: any word that begins a clause."""
