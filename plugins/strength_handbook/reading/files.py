"""Which files a program folder holds, and what kind each one is.

room.yml  house-rules.yml  lifters.yml
exercises/<id>.yml
<program>/program.yml  <program>/<n>-<wave>.yml
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from enum import StrEnum
from pathlib import Path

from strength_handbook.reading.problem import Problem
from strength_handbook.reading.suggest import did_you_mean, one_of, quoted

_ID = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")
_WAVE = re.compile(r"(\d{1,2})-([a-z0-9]+(?:-[a-z0-9]+)*)", re.ASCII)
_MEANT = re.compile(r"(.*?)\.ya?ml(?:\.txt)?", re.IGNORECASE | re.DOTALL)
"""Every name that is meant to be a program file; some editors hide that they add `.txt`."""
_OTHER_ENDINGS = (".txt", ".json")
"""A file ends so by mistake where only the ending keeps it from being read."""
_TOP = ("room.yml", "house-rules.yml", "lifters.yml")
RESERVED = ("exercises", "room", "numbers", "safety", "words", "cards", "coach", "data", "tags",
            "search", "assets", "index", "readme")  # fmt: skip
"""Addresses of the site that a program cannot be named after."""
INDEX = ("index", "readme")
"""Names that stand for the folder itself on a site."""


class Kind(StrEnum):
    """What a file describes."""

    ROOM = "room"
    RULES = "house-rules"
    LIFTERS = "lifters"
    EXERCISE = "exercise"
    PROGRAM = "program"
    WAVE = "wave"


@dataclass(frozen=True, slots=True)
class Found:
    """One file.

    Attributes:
        path: where it is.
        shown: its name as the coach knows it, for messages.
        kind: what it describes.
        id: the exercise's id; for programs and waves the program's id.
        order: number of the wave, else 0.
        wave: short name of the wave, else empty.
    """

    path: Path
    shown: str
    kind: Kind
    id: str = ""
    order: int = 0
    wave: str = ""


@dataclass
class Folder:
    """All files of a program folder, and what is wrong with their names."""

    files: list[Found] = field(default_factory=list)
    problems: list[Problem] = field(default_factory=list)


def list_folder(root: Path, shown: str | None = None) -> Folder:
    """Find every program file under `root`; `shown` is the folder's name in messages."""
    folder = Folder()
    name = shown if shown is not None else root.name
    if not root.is_dir():
        text = "there is no such folder; create it, or name another"
        folder.problems.append(Problem(name, 1, 1, "no-folder", text))
        return folder
    meant: set[tuple[str, ...]] = set()
    for path in sorted(root.rglob("*")):
        parts = path.relative_to(root).parts
        hidden = any(part.startswith((".", "_")) for part in parts)
        if not hidden and _MEANT.fullmatch(path.name) and _is_file(path):
            _sort_in(folder, path, parts, _printable(f"{name}/{'/'.join(parts)}"))
            meant.add((*parts[:-1], _right_name(path.name)))
        elif not hidden and (better := _other_ending(path, parts)) and _is_file(path):
            text = f"names of program files end in .yml; rename it to {quoted(better)}"
            shown_name = _printable(f"{name}/{'/'.join(parts)}")
            folder.problems.append(Problem(shown_name, 1, 1, "file-name", text))
            meant.add((*parts[:-1], better))
    if ("room.yml",) not in meant:
        text = "the room is missing; write room.yml first"
        folder.problems.append(Problem(f"{name}/room.yml", 1, 1, "no-file", text))
    for program in sorted({found.id for found in folder.files if found.kind is Kind.WAVE}):
        if (program, "program.yml") not in meant:
            text = "this folder has waves but no program.yml; write it first"
            folder.problems.append(Problem(f"{name}/{program}/program.yml", 1, 1, "no-file", text))
    folder.problems += _same_twice(folder.files)
    return folder


def _is_file(path: Path) -> bool:
    """False for folders, pipes and links to nowhere; true for what can't be told."""
    try:
        return path.is_file()
    except OSError:
        return True


def _sort_in(folder: Folder, path: Path, parts: tuple[str, ...], shown: str) -> None:
    """Put one file under its kind, or say what its name should be."""
    sorted_in = _classify(path, parts, shown)
    if isinstance(sorted_in, Found):
        folder.files.append(sorted_in)
    else:
        folder.problems.append(Problem(shown, 1, 1, "file-name", sorted_in))


def _other_ending(path: Path, parts: tuple[str, ...]) -> str:
    """The right name of a file that only its ending keeps from being read; "" for any other.

    Notes beside a program file, such as ``box-squat.txt`` beside ``box-squat.yml``, are left alone.
    """
    if path.suffix.lower() not in _OTHER_ENDINGS:
        return ""
    right = path.with_name(f"{path.stem.lower()}.yml")
    sorted_in = _classify(right, (*parts[:-1], right.name), "")
    return right.name if isinstance(sorted_in, Found) and not right.exists() else ""


def _classify(path: Path, parts: tuple[str, ...], shown: str) -> Found | str:
    """The file with its kind, or what is wrong with its name."""
    stem = path.stem
    if path.suffix != ".yml":
        better = quoted(_printable(_right_name(path.name)))
        return f"names of program files end in .yml; rename it to {better}"
    if len(parts) == 1:
        if path.name in _TOP:
            return Found(path, shown, Kind(stem))
        hint = did_you_mean(path.name, _TOP)
        return f"a file beside room.yml is called {one_of(_TOP)}{hint}"
    if len(parts) > 2:
        return "program files lie one folder deep; move it up"
    if parts[0] == "exercises":
        if stem in INDEX:
            return f"the site needs the name {quoted(stem)} itself; give the exercise another"
        if _ID.fullmatch(stem):
            return Found(path, shown, Kind.EXERCISE, stem)
        return "write an exercise's file name like 'box-squat.yml': small letters, digits, hyphens"
    program = parts[0]
    if not _ID.fullmatch(program):
        return "name a program's folder like 'winter' or 'winter-2': small letters, digits, hyphens"
    if program in RESERVED:
        return (
            f"the site needs the name {quoted(program)} itself; give the program's folder another"
        )
    if stem == "program":
        return Found(path, shown, Kind.PROGRAM, program)
    if wave := _WAVE.fullmatch(stem):
        return Found(path, shown, Kind.WAVE, program, int(wave[1]), wave[2])
    hint = did_you_mean(path.name, ("program.yml",))
    return f"name a wave's file by its number and a word, like '1-brakes.yml'{hint}"


def _same_twice(files: list[Found]) -> Iterator[Problem]:
    """Waves of one program that share their number or their name."""
    taken: dict[tuple[str, int | str], str] = {}
    for found in files:
        if found.kind is not Kind.WAVE:
            continue
        for key, what in ((found.order, "number"), (found.wave, "name")):
            first = taken.setdefault((found.id, key), found.path.name)
            if first != found.path.name:
                text = f"{first} has the same {what}; rename one of the two"
                yield Problem(found.shown, 1, 1, "file-name", text)
                break


def _right_name(name: str) -> str:
    """What a program file is probably meant to be called.

    >>> _right_name("Room.YAML"), _right_name("room.yml.txt")
    ('room.yml', 'room.yml')
    """
    found = _MEANT.fullmatch(name)
    return f"{found[1].lower()}.yml" if found else name


def _printable(name: str) -> str:
    """A file name with bytes that are no text replaced, on one line."""
    text = name.encode("utf-8", "replace").decode()
    return "".join(sign if sign.isprintable() else "?" for sign in text)
