"""Which files a program folder holds, and what kind each one is.

room.yml  house-rules.yml  lifters.yml
exercises/<id>.yml
<program>/program.yml  <program>/<n>-<wave>.yml
"""

import os
import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from pathlib import Path

from strength_handbook.model.shape import quoted
from strength_handbook.reading.problem import Problem, Severity
from strength_handbook.reading.suggest import did_you_mean, one_of

_ID = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")
_WAVE = re.compile(r"(\d{1,2})-([a-z0-9]+(?:-[a-z0-9]+)*)", re.ASCII)
_MEANT = re.compile(r"(.*?)\.ya?ml(?:\.txt)?", re.IGNORECASE | re.DOTALL)
"""Every name that is meant to be a program file; some editors hide that they add `.txt`."""
_OTHER_ENDINGS = (".txt", ".json")
"""A file ends so by mistake where only the ending keeps it from being read."""
_TOP = ("room.yml", "house-rules.yml", "lifters.yml")
RESERVED = ("exercises", "room", "numbers", "safety", "words", "cards", "media", "coach", "data",
            "tags", "search", "assets", "index", "readme")  # fmt: skip
"""Addresses of the site that a program cannot be named after."""
INDEX = ("index", "readme")
"""Names that stand for the folder itself on a site."""


class FileKind(StrEnum):
    """What a file describes."""

    ROOM = "room"
    RULES = "house-rules"
    LIFTERS = "lifters"
    EXERCISE = "exercise"
    PROGRAM = "program"
    WAVE = "wave"


MOST: Mapping[FileKind, int] = {FileKind.EXERCISE: 2000, FileKind.PROGRAM: 40, FileKind.WAVE: 400}
"""Files of a kind that are read. A thousand exercises take a quarter of a minute to build."""


@dataclass(frozen=True, slots=True)
class FoundFile:
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
    kind: FileKind
    id: str = ""
    order: int = 0
    wave: str = ""


@dataclass
class Folder:
    """All files of a program folder, and what is wrong with their names."""

    files: list[FoundFile] = field(default_factory=list)
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
    for path in _walked(root, name, folder.problems):
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
    folder.problems += _too_many(folder)
    if ("room.yml",) not in meant:
        text = "the room is missing; write room.yml first"
        folder.problems.append(Problem(f"{name}/room.yml", 1, 1, "no-file", text))
    for program in sorted({found.id for found in folder.files if found.kind is FileKind.WAVE}):
        if (program, "program.yml") not in meant:
            text = "this folder has waves but no program.yml; write it first"
            folder.problems.append(Problem(f"{name}/{program}/program.yml", 1, 1, "no-file", text))
    folder.problems += _same_twice(folder.files)
    if not any(len(parts) == 2 and parts[0] != "exercises" for parts in meant):
        text = (
            "there is no program yet, so members find no week; write <name>/program.yml and "
            "<name>/1-<wave>.yml beside room.yml"
        )
        folder.problems.append(Problem(f"{name}/room.yml", 1, 1, "no-program", text, Severity.NOTE))
    return folder


def _walked(root: Path, name: str, problems: list[Problem]) -> list[Path]:
    """Everything below the folder, in order; a folder that can't be looked into is a problem."""
    found: list[Path] = []

    def unread(error: OSError) -> None:
        where = Path(error.filename or root)
        parts = where.relative_to(root).parts if where.is_relative_to(root) else ()
        shown = _printable("/".join((name, *parts)))
        text = (
            f"the folder can't be read: {error.strerror or error}; make it readable, or delete it"
        )
        problems.append(Problem(shown, 1, 1, "no-file", text))

    for folder, folders, files in os.walk(root, onerror=unread):
        found += [Path(folder) / one for one in (*folders, *files)]
    return sorted(found)


def _too_many(folder: Folder) -> Iterator[Problem]:
    """More than a gym ever has, which nobody waits for; what is beyond is not read."""
    for kind, most in MOST.items():
        several = [found for found in folder.files if found.kind is kind]
        if len(several) > most:
            left = set(several[:most])
            folder.files = [one for one in folder.files if one.kind is not kind or one in left]
            text = f"{len(several)} {kind} files are too many; the most is {most}"
            yield Problem(several[most].shown, 1, 1, "too-large", text)


def _is_file(path: Path) -> bool:
    """False for folders, pipes and links to nowhere; true for what can't be told."""
    try:
        return path.is_file()
    except OSError:
        return True


def _sort_in(folder: Folder, path: Path, parts: tuple[str, ...], shown: str) -> None:
    """Put one file under its kind, or say what its name should be."""
    sorted_in = _classify(path, parts, shown)
    if isinstance(sorted_in, FoundFile):
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
    return right.name if isinstance(sorted_in, FoundFile) and not right.exists() else ""


def _classify(path: Path, parts: tuple[str, ...], shown: str) -> FoundFile | str:
    """The file with its kind, or what is wrong with its name."""
    stem = path.stem
    if path.suffix != ".yml":
        better = quoted(_printable(_right_name(path.name)))
        return f"names of program files end in .yml; rename it to {better}"
    if len(parts) == 1:
        if path.name in _TOP:
            return FoundFile(path, shown, FileKind(stem))
        hint = did_you_mean(path.name, _TOP)
        return f"a file beside room.yml is called {one_of(_TOP)}{hint}"
    if len(parts) > 2:
        return "program files lie one folder deep; move it up"
    if parts[0] == "exercises":
        if stem in INDEX:
            return f"the site needs the name {quoted(stem)} itself; give the exercise another"
        if _ID.fullmatch(stem):
            return FoundFile(path, shown, FileKind.EXERCISE, stem)
        return "write an exercise's file name like 'box-squat.yml': small letters, digits, hyphens"
    program = parts[0]
    if not _ID.fullmatch(program):
        return "name a program's folder like 'winter' or 'winter-2': small letters, digits, hyphens"
    if program in RESERVED:
        return (
            f"the site needs the name {quoted(program)} itself; give the program's folder another"
        )
    if stem == "program":
        return FoundFile(path, shown, FileKind.PROGRAM, program)
    if wave := _WAVE.fullmatch(stem):
        return FoundFile(path, shown, FileKind.WAVE, program, int(wave[1]), wave[2])
    hint = did_you_mean(path.name, ("program.yml",))
    return f"name a wave's file by its number and a word, like '1-brakes.yml'{hint}"


def _same_twice(files: list[FoundFile]) -> Iterator[Problem]:
    """Waves of one program that share their number or their name."""
    taken: dict[tuple[str, int | str], str] = {}
    for found in files:
        if found.kind is not FileKind.WAVE:
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
