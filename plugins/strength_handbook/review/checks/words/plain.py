"""Are the sentences short and the words easy?"""

import re
from collections.abc import Iterator
from dataclasses import replace
from functools import lru_cache

from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.desk import Desk
from strength_handbook.review.finding import At, Finding, Mending
from strength_handbook.review.texts import all_texts, sentences, words
from strength_handbook.review.words import number

_FEWEST_WORDS = 100
"""The grade of a shorter text says nothing."""
_VOWELS = re.compile(r"[aeiouy]+")
_SILENT = re.compile(r"(?:[^laeiouy]e|[^aeiouytd]ed|[^aeiouy]les)$")


@check(
    "sentence-long",
    Family.WORDS,
    Severity.NOTE,
    what="Words of each sentence that members read, against the most that there may be.",
    why="A long sentence is not read to its end beside a loaded bar.",
    rules=("sentence-words",),
)
def sentence_long(this: Check, desk: Desk) -> Iterator[Finding]:
    """Texts with a long sentence."""
    most = round(desk.rule("sentence-words"))
    for one in all_texts(desk):
        if not one.sentences or not one.for_members:
            continue
        if len(one.text.split()) <= most:
            continue
        longest = max(sentences(one.text), key=lambda text: len(words(text)), default="")
        count = len(words(longest))
        if count > most:
            text = f"a sentence in '{one.key}' has {count} words; at most {most}"
            change = Mending("make two sentences of it")
            finding = this.finds_in(one.spot, one.what, text, change=change, program=one.program)
            yield replace(finding, at=At(one.what, one.weeks))


@check(
    "reading-grade",
    Family.WORDS,
    Severity.NOTE,
    what="School grade of all sentences of an exercise, from words per sentence and syllables per "
    "word, against the highest.",
    why="Everybody in the room must understand it, tired and in a second language too.",
    rules=("reading-grade",),
    source="grade by Kincaid and others 1975; the limit is common practice",
)
def reading_grade(this: Check, desk: Desk) -> Iterator[Finding]:
    """Exercises that read too hard."""
    most, parts = desk.rule("reading-grade"), dict[str, list[str]]()
    for one in all_texts(desk):
        if one.sentences and one.what.startswith("exercise "):
            parts.setdefault(one.what, []).extend(sentences(one.text))
    for what, found in parts.items():
        if sum(len(words(text)) for text in found) < _FEWEST_WORDS:
            continue
        reached = grade(found)
        if reached > most:
            text = f"the text asks for grade {number(reached)} of school; at most {number(most)}"
            change = Mending("shorter sentences, and the everyday word for each long one")
            spot = desk.exercise_spot(what.removeprefix("exercise "), "set-up")
            yield this.finds_in(spot, what, text, change=change)


def grade(found: list[str]) -> float:
    """School grade: 0.39 words per sentence + 11.8 syllables per word - 15.59 (Kincaid 1975).

    >>> round(grade(["The cat sat on the mat."]), 2)
    -1.45
    """
    every = [word for text in found for word in words(text)]
    beats = sum(syllables(word) for word in every)
    return 0.39 * len(every) / len(found) + 11.8 * beats / len(every) - 15.59


@lru_cache(maxsize=4096)
def syllables(word: str) -> int:
    """Syllables of an English word, by its vowels; one at least.

    >>> [syllables(word) for word in ("bar", "handle", "lowered", "shoulder", "plate", "2:30")]
    [1, 2, 2, 2, 1, 1]
    """
    plain = re.sub(r"[^a-z]", "", word.casefold())
    count = len(_VOWELS.findall(plain))
    return max(1, count - 1 if _SILENT.search(plain) else count)
