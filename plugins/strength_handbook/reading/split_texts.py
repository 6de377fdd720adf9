"""Texts that a comma inside braces or brackets has cut in two.

In ``{how: The same, inside the safeties.}`` YAML ends the text at the comma and takes the rest for
another key; in ``[Zip the belly up, look down.]`` for another entry of the list.
"""

import re
from collections.abc import Iterator
from itertools import takewhile

from pydantic import BaseModel

from strength_handbook.model.shape import quoted
from strength_handbook.model.texts import words_at
from strength_handbook.reading.problem import Problem
from strength_handbook.reading.source import Path, Plain, Source

_KEY = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*")


def cut_off(source: Source, around: Path, key: str) -> str:
    """What to write where an unknown key is the rest of a text; "" where it is something else.

    Args:
        source: the file.
        around: path of the mapping.
        key: the unknown key.
    """
    data = source.data
    for part in around:
        if isinstance(data, dict):
            data = data.get(str(part))
        elif isinstance(data, list) and isinstance(part, int):
            data = data[part]
    if not isinstance(data, dict) or data.get(key, "") is not None:
        return ""
    keys = list(data)
    at = keys.index(key)
    first = at - 1
    while first >= 0 and data[keys[first]] is None:
        first -= 1  # several commas
    if first < 0 or not isinstance(begun := data[keys[first]], str):
        return ""
    last = source.key_at((*around, keys[first])).line
    if _KEY.fullmatch(key) and source.key_at((*around, key)).line != last:
        return ""
    rests = list(takewhile(lambda one: data[one] is None, keys[first + 1 :]))
    whole = ", ".join([begun, *rests])
    return (
        f"{quoted(rests[0])} stands alone after a comma; a text with a comma needs quotes here, "
        f'such as {keys[first]}: "{whole}"'
    )


def split_texts(model: type[BaseModel], source: Source) -> Iterator[Problem]:
    """Entries of a list in brackets that go on with the sentence before them."""
    for path, entries in _lists(source.data, ()):
        for index in range(1, len(entries)):
            before, rest = (*path, index - 1), (*path, index)
            begun, text = entries[index - 1], entries[index]
            if not isinstance(begun, str) or not isinstance(text, str):
                continue
            if not text[:1].islower() or not _first_capital(entries[:index]):
                continue
            words = words_at(model, rest)
            if words is None or words.label or not _in_one_line(source, before, rest):
                continue
            yield source.problem(
                rest,
                "split-text",
                f"{quoted(text)} is an entry of its own after the comma; a text with a comma needs "
                f'quotes here: "{begun}, {text}"; begin with a capital if two are meant',
            )


def _first_capital(entries: list[Plain]) -> bool:
    return isinstance(entries[0], str) and entries[0][:1].isupper()


def _in_one_line(source: Source, *paths: Path) -> bool:
    """True where plain texts without quotes stand in one line, as only brackets let them."""
    marks = [mark for path in paths if (mark := source.marks.get(path))]
    plain = [mark.line for mark in marks if mark.text_column == mark.column]
    return len(plain) == len(paths) and len(set(plain)) == 1


def _lists(data: Plain, path: Path) -> Iterator[tuple[Path, list[Plain]]]:
    if isinstance(data, dict):
        for key, value in data.items():
            yield from _lists(value, (*path, key))
    elif isinstance(data, list):
        yield path, data
        for index, value in enumerate(data):
            yield from _lists(value, (*path, index))
