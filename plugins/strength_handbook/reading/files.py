"""Which files a program folder holds, and what kind each one is.

room.yml  house-rules.yml  lifters.yml
exercises/<id>.yml
<program>/program.yml  <program>/<n>-<wave>.yml
"""

import re
from dataclasses import dataclass, field
from enum import StrEnum
from pathlib import Path

from strength_handbook.reading.problem import Problem
from strength_handbook.reading.suggest import did_you_mean

_ID = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")
_WAVE = re.compile(r"(\d{1,2})-([a-z0-9]+(?:-[a-z0-9]+)*)")
_TOP = ("room.yml", "house-rules.yml", "lifters.yml")
RESERVED = ("exercises", "room", "numbers", "safety", "words", "cards", "coach", "data", "tags",
            "search", "assets")  # fmt: skip
"""Addresses of the site that a program cannot be named after."""


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
        folder.problems.append(
            Problem(name, 1, 1, "no-folder", "there is no such folder; create it, or name another")
        )
        return folder
    for path in sorted(root.rglob("*")):
        relative = path.relative_to(root)
        if path.is_dir() or any(part.startswith((".", "_")) for part in relative.parts):
            continue
        if path.name.endswith("~") or path.suffix not in (".yml", ".yaml"):
            continue
        _sort_in(folder, path, relative.parts, f"{name}/{relative.as_posix()}")
    kinds = {found.kind for found in folder.files}
    if Kind.ROOM not in kinds:
        folder.problems.append(
            Problem(
                f"{name}/room.yml", 1, 1, "no-file", "the room is missing; write room.yml first"
            )
        )
    programs = {found.id for found in folder.files if found.kind is Kind.PROGRAM}
    for program in sorted({f.id for f in folder.files if f.kind is Kind.WAVE} - programs):
        folder.problems.append(
            Problem(
                f"{name}/{program}/program.yml", 1, 1, "no-file",
                "this folder has waves but no program.yml",
            )
        )  # fmt: skip
    return folder


def _sort_in(folder: Folder, path: Path, parts: tuple[str, ...], shown: str) -> None:
    """Put one file under its kind, or say what its name should be."""
    sorted_in = _classify(path, parts, shown)
    if isinstance(sorted_in, Found):
        folder.files.append(sorted_in)
    else:
        folder.problems.append(Problem(shown, 1, 1, "file-name", sorted_in))


def _classify(path: Path, parts: tuple[str, ...], shown: str) -> Found | str:
    """The file with its kind, or what is wrong with its name."""
    stem = path.stem
    if path.suffix == ".yaml":
        return f"files end in .yml here; rename it to '{stem}.yml'"
    if len(parts) == 1:
        if path.name in _TOP:
            return Found(path, shown, Kind(stem))
        return f"'{path.name}' is none of {', '.join(_TOP)}{did_you_mean(path.name, _TOP)}"
    if len(parts) > 2:
        return "program files lie one folder deep, not deeper"
    if parts[0] == "exercises":
        if _ID.fullmatch(stem):
            return Found(path, shown, Kind.EXERCISE, stem)
        return "write an exercise's file name like 'box-squat.yml': small letters, hyphens"
    program = parts[0]
    if not _ID.fullmatch(program) or program in RESERVED:
        reserved = ", ".join(RESERVED)
        return f"'{program}' can't name a program; use small letters and hyphens, not {reserved}"
    if stem == "program":
        return Found(path, shown, Kind.PROGRAM, program)
    if wave := _WAVE.fullmatch(stem):
        return Found(path, shown, Kind.WAVE, program, int(wave[1]), wave[2])
    return "a wave's file name is its number and name, like '1-brakes.yml'"
