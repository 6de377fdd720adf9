"""How another spelling of a dose is found in a line, and what it is in the house's notation."""

import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import TypeVar

from strength_handbook.dose.line_words import END
from strength_handbook.dose.meant import Only, anywhere
from strength_handbook.dose.spelling_values import VALUES
from strength_handbook.dose.spelling_words import WORDS

_PLACE = re.compile(r"\{(([a-z_]+)\d*)\}")
_WORD = re.compile(r"\[([^\[\]]*)\]|([^\s\[\]]+)")
_MAY_BE = re.compile(r"\[([^\[\]]*)\]")


@dataclass(frozen=True)
class Piece:
    """Part of what a spelling means in the house's notation.

    Attributes:
        text: the notation.
        start: where in the line that stands from which it is made.
        written: it stands there as it is.
    """

    text: str
    start: int
    written: bool


@dataclass(frozen=True)
class Writing:
    """One way to write something: words, and values in braces, such as ``{sets} sets of {reps}``.

    What stands in square brackets may be left out. Several spaces or none may stand between any
    two words.
    """

    text: str

    @cached_property
    def pattern(self) -> re.Pattern[str]:
        """What is looked for in a line."""
        parts, begun = "", False
        for may_be, word in self._words:
            inner = r"\s*".join(map(self._word, (may_be or word).split()))
            gap_before = rf"\s*{inner}" if begun else inner
            gap = gap_before if begun else rf"{inner}\s*"
            parts += rf"(?:{gap})?" if may_be else gap_before
            begun = begun or not may_be
        return re.compile(parts + END, re.IGNORECASE)

    @cached_property
    def needs(self) -> frozenset[str]:
        """Words without which no line holds it; few lines hold them, so few are looked through."""
        alone = (word.casefold() for _, word in self._words if word)
        return frozenset(word for word in alone if _PLACE.fullmatch(word) is None)

    @property
    def _words(self) -> list[tuple[str, str]]:
        """In order: what may be left out, or a word or a place that must be there."""
        spaced = re.sub(r"(?<=\})(?=[^\s\]])|(?<=[^\s\[])(?=\{)", " ", self.text)
        return _WORD.findall(spaced)

    @property
    def begins(self) -> frozenset[str]:
        """The characters that it can begin with, in small letters."""
        if (may_be := _MAY_BE.match(self.text)) is None:
            return self._begins(self.text)
        behind = Writing(self.text[may_be.end() :].lstrip())
        return self._begins(may_be[1]) | behind.begins

    @staticmethod
    def _begins(text: str) -> frozenset[str]:
        found = _PLACE.match(text)
        if found is None:
            return frozenset(text[0].lower())
        if found[2] in WORDS:
            return frozenset(word[0].lower() for word in WORDS[found[2]].words)
        return frozenset(VALUES[found[2]].begins)

    @staticmethod
    def _word(word: str) -> str:
        found = _PLACE.fullmatch(word)
        if found and found[2] in WORDS:
            return WORDS[found[2]].pattern
        return f"(?P<{found[1]}>{VALUES[found[2]].pattern})" if found else re.escape(word)

    @property
    def example(self) -> str:
        """The way with a value in each place."""
        return self.examples[0]

    @property
    def examples(self) -> tuple[str, ...]:
        """The same; where the way is one of several words and nothing else, with each of them."""
        if (whole := _PLACE.fullmatch(self.text)) and whole[2] in WORDS:
            return WORDS[whole[2]].words
        return (_PLACE.sub(_example, self.shortest),)

    @property
    def shortest(self) -> str:
        """Without all that may be left out."""
        return " ".join(_MAY_BE.sub("", self.text).split())


def _example(found: re.Match[str]) -> str:
    return (WORDS.get(found[2]) or VALUES[found[2]]).example


def house_values(found: re.Match[str]) -> dict[str, str]:
    """The values of a match in the house's notation, by the names of their places."""
    return {
        name: VALUES[name.rstrip("0123456789")].house(text)
        for name, text in found.groupdict().items()
    }


def pieces(template: str, found: re.Match[str]) -> Iterable[Piece]:
    """The house's notation of a match, part by part."""
    values, end = house_values(found), 0
    for place in _PLACE.finditer(template):
        yield Piece(template[end : place.start()], found.start(), written=False)
        name = place[1]
        text = values[name]
        yield Piece(text, found.start(name), written=text == found[name])
        end = place.end()
    yield Piece(template[end:], found.start(), written=False)


@dataclass(frozen=True)
class Spelling:
    """What the trade writes in several ways, and how it is written here.

    Attributes:
        house: the house's notation, with the values of the ways.
        ways: each of them.
        only: where it is meant.
    """

    house: str
    ways: tuple[Writing, ...]
    only: Only = anywhere


@dataclass(frozen=True)
class Unclear:
    """What can't be read, because it has two meanings or because a dose can't say it.

    Attributes:
        says: what to write instead; may name values of the ways, and the whole as ``{all}``.
        ways: how it is written.
        only: where it is meant.
    """

    says: str
    ways: tuple[Writing, ...]
    only: Only = anywhere


T = TypeVar("T", Spelling, Unclear, Spelling | Unclear)


def spelled(house: str, *ways: str, only: Only = anywhere) -> Spelling:
    """A spelling."""
    return Spelling(house, tuple(map(Writing, ways)), only)


def unclear(says: str, *ways: str, only: Only = anywhere) -> Unclear:
    """Something that can't be read."""
    return Unclear(says, tuple(map(Writing, ways)), only)


def house_example(one: Spelling) -> str:
    """The house's notation of the examples of a spelling."""
    return _PLACE.sub(lambda found: VALUES[found[2]].house(VALUES[found[2]].example), one.house)


def by_first_sign(several: Iterable[T]) -> Mapping[str, Sequence[tuple[Writing, T]]]:
    """All ways of several, in their order, by each character that they can begin with."""
    found: dict[str, list[tuple[Writing, T]]] = {}
    for one in several:
        for way in one.ways:
            for sign in way.begins:
                found.setdefault(sign, []).append((way, one))
    return found
