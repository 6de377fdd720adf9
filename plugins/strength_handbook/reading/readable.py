"""What can be shown of a program folder while some of its files can't be read.

A file with an error is read as it stood when all of it could last be read, so that all others show
what was saved in them. One that never could is left out, if it is an exercise or a wave to which
nothing leads.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from pathlib import Path

from strength_handbook.reading.book import Reading, read_book
from strength_handbook.reading.files import FileKind, list_folder
from strength_handbook.reading.problem import Severity


@dataclass(frozen=True)
class Readable:
    """A folder, read as far as it can be.

    Attributes:
        reading: its book is None where even earlier files don't go together; problems are those of
            the files as they are now.
        held: names in messages of the files that are not shown as they are now.
    """

    reading: Reading
    held: frozenset[str] = frozenset()


def read_readable(
    root: Path, shown: str, kept: Mapping[str, bytes], tell: Callable[[str], None]
) -> Readable:
    """Read a folder; files with errors as they were.

    Args:
        root: the folder.
        shown: its name in messages.
        kept: what each file held when all of them could last be read, by its name in messages.
        tell: takes the name of each file before it is read.
    """
    now = read_book(root, shown, tell)
    instead: dict[str, bytes | None] = {}
    # Without a room, rules or a program all numbers would be others.
    left_out = {
        found.shown
        for found in list_folder(root, shown).files
        if found.kind in (FileKind.EXERCISE, FileKind.WAVE)
    }
    reading = now
    while reading.book is None:
        wrong = _wrong(reading) - instead.keys()
        if not wrong or not wrong <= kept.keys() | left_out:
            return Readable(now)
        instead |= {file: kept.get(file) for file in wrong}
        reading = read_book(root, shown, tell, instead)
    if not instead:
        return Readable(now)
    return Readable(replace(reading, problems=now.problems), frozenset(instead))


def _wrong(reading: Reading) -> set[str]:
    """Files that hold the others back."""
    return {problem.file for problem in reading.problems if problem.severity is Severity.ERROR}
