"""A small program folder without problems, and single edits to it."""

import shutil
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import yaml

from strength_handbook.reading.book import Reading, read_book

BASE = Path(__file__).parent / "reading" / "base"
CASES = Path(__file__).parent / "reading" / "cases"
SHOWN = "gym"
"""Name of the folder in messages."""


@dataclass(frozen=True)
class Case:
    """One edit of the base folder and the problems it brings.

    Attributes:
        name: name of its file.
        what: the mistake, in one sentence.
        file: which file is edited.
        edit: `content`, `hex`, `replace` (one or several `from` and `to`) or `delete`; and
            `besides`, further files with their content.
        expect: the lines of all problems.
    """

    name: str
    what: str
    file: str
    edit: Mapping[str, Any]
    expect: tuple[str, ...]


def read_case(path: Path) -> Case:
    """A case from its file."""
    data = yaml.safe_load(path.read_text(encoding="utf-8"))
    expect = tuple(data.pop("expect"))
    return Case(path.stem, data.pop("what"), data.pop("file"), data, expect)


def copy_base(to: Path) -> Path:
    """A copy of the base folder."""
    return Path(shutil.copytree(BASE, to / SHOWN))


def apply(case: Case, folder: Path) -> None:
    """Edit one file of a copy."""
    path = folder / case.file
    path.parent.mkdir(exist_ok=True, parents=True)
    edit = dict(case.edit)
    for other, content in edit.pop("besides", {}).items():
        (folder / other).write_bytes(content.encode())
    ((kind, value),) = edit.items()
    if kind == "content":
        path.write_bytes(value.encode())
    elif kind == "hex":
        path.write_bytes(bytes.fromhex(value))
    elif kind == "delete":
        path.unlink()
    elif kind == "replace":
        text = path.read_text(encoding="utf-8")
        for change in value if isinstance(value, list) else [value]:
            assert text.count(change["from"]) == 1, f"{change['from']!r} is not there once"
            text = text.replace(change["from"], change["to"])
        path.write_bytes(text.encode())
    else:
        raise ValueError(f"{case.name}: no such edit: {kind}")


def read(folder: Path) -> Reading:
    """Read a copy under its short name."""
    return read_book(folder, SHOWN)
