"""The words that people read, out of hand-written pages and program files."""

import re
from collections.abc import Iterator
from pathlib import Path

import demo
from strength_handbook.reading.source import Plain
from strength_handbook.reading.yaml_source import read_source

NEW_GYM = demo.PACKAGE / "publish" / "first_gym" / "texts"
"""What a new gym begins with."""

SHELF = demo.PACKAGE / "publish" / "shelf" / "texts"
"""The ready exercises."""

HANDBOOK = tuple(
    path
    for folder in (demo.ROOT / "handbook", NEW_GYM / "handbook")
    for path in sorted(folder.rglob("*.md"))
)
"""Every hand-written page."""

EXERCISE_FILES = tuple(
    path for folder in (demo.PROGRAMS / "exercises", SHELF) for path in sorted(folder.glob("*.yml"))
)
"""Every exercise."""

PROGRAM_FILES = EXERCISE_FILES + tuple(
    path
    for folder in (demo.PROGRAMS, NEW_GYM / "programs")
    for path in sorted(folder.rglob("*.yml"))
    if path.parent not in (folder, demo.PROGRAMS / "exercises")
)
"""Every exercise, program and wave."""

_FRONT_MATTER = re.compile(r"\A---\n.*?^---\n", re.DOTALL | re.MULTILINE)
_FENCE = re.compile(r"^```.*?^```\n", re.DOTALL | re.MULTILINE)
_SOURCES = re.compile(r"^## Sources\n.*?(?=^## |^[A-Z]|\Z)", re.DOTALL | re.MULTILINE)
_COMMENT = re.compile(r"<!--.*?-->")
_LINK = re.compile(r"\[([^\]]+)\]\([^)]*\)")
_CITATION = re.compile(r"\s*\[\d+(?:, \d+)*\]")
_MARKER = re.compile(r"^(?:[-*>]|\d+\.|#+|- \[ \])\s+", re.MULTILINE)
_SENTENCE_END = re.compile(r"(?<=[.!?:])[”\"]?\s+(?=[A-Z“\"])")


def name_of(path: Path) -> str:
    """As messages name a file."""
    return path.relative_to(demo.ROOT).as_posix()


def markdown_text(markdown: str) -> str:
    """A page's words without blocks, marks, addresses and sources; code is one word."""
    text = _COMMENT.sub("", _FENCE.sub("", _FRONT_MATTER.sub("", markdown)))
    text = _SOURCES.sub("", text)
    text = _CITATION.sub("", _LINK.sub(r"\1", text))
    text = re.sub(r"`[^`]+`", "code", text)
    return text.replace("**", "").replace("*", "")


def markdown_sentences(markdown: str) -> list[str]:
    """The sentences of a page; a heading or an item of a list is one at least."""
    found = []
    for block in re.split(r"\n\s*\n|\n(?=\s*(?:[-*>]|\d+\.|#+)\s)", markdown_text(markdown)):
        found += sentences(_MARKER.sub("", block.strip()))
    return found


def sentences(text: str) -> list[str]:
    """The sentences of a text.

    A colon before a capital letter ends one too.
    """
    return [one for one in _SENTENCE_END.split(" ".join(text.split())) if one]


def words(text: str) -> list[str]:
    """Words, with numbers and without signs that stand alone."""
    return [word for word in text.split() if re.search(r"\w", word)]


def yaml_texts(path: Path) -> Iterator[tuple[str, str]]:
    """Every text of a program file with its place in it, such as `cues.during.0`."""
    source, problems = read_source(path.read_bytes(), name_of(path))
    assert source is not None, problems
    yield from _texts(source.data, ())


def _texts(data: Plain, place: tuple[str, ...]) -> Iterator[tuple[str, str]]:
    if isinstance(data, dict):
        for key, value in data.items():
            yield from _texts(value, (*place, str(key)))
    elif isinstance(data, list):
        for number, value in enumerate(data):
            yield from _texts(value, (*place, str(number)))
    elif isinstance(data, str):
        yield ".".join(place), data
