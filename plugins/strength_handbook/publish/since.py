"""An earlier publication, found on disk and held against the present program files.

The files are only read. Whatever they hold gives a message, never a failure.
"""

import json
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from pathlib import Path

from strength_handbook.checked import Checked, counted, shown_path
from strength_handbook.pages.change_words import said, where
from strength_handbook.reading.problem import Problem, Severity
from strength_handbook.record.change import ChangeKind, Changes
from strength_handbook.record.changes import compare
from strength_handbook.record.data import program_data
from strength_handbook.record.earlier import Earlier, EarlierError, read_earlier
from strength_handbook.review.desk import Desk

_CAUSES = (ChangeKind.ROOM, ChangeKind.LIFTER)
"""Changes that make many others."""


@dataclass(frozen=True)
class Since:
    """What came out of the comparison.

    Attributes:
        changes: by program; one that was compared and is the same has no items.
        files: which file each program was compared with.
        problems: files that can't be compared, and versions that were not raised.
        units: of the room, for masses in the changes.
    """

    changes: Mapping[str, Changes] = field(default_factory=dict)
    files: Mapping[str, str] = field(default_factory=dict)
    problems: tuple[Problem, ...] = ()
    units: str = "kg"


def read_since(where: Path | None, checked: Checked) -> Since:
    """Compare the programs with an earlier data file, or with those of a folder.

    Args:
        where: the file or folder; nothing is compared where it is None.
        checked: the present files; nothing is compared where they could not be read.
    """
    if where is None or checked.desk is None:
        return Since()
    desk = checked.desk
    problems: list[Problem] = []
    found = _by_program(where, [one.id for one in desk.worked.programs], problems)
    changes = {
        program.id: compare(found[program.id][1].data, _as_read(desk, program.id))
        for program in desk.worked.programs
        if program.id in found
    }
    files = {program: file for program, (file, _) in found.items()}
    for program, several in changes.items():
        problems += _same_version(desk, several, files[program])
    return Since(changes, files, tuple(problems), desk.book.room.units)


def _as_read(desk: Desk, program: str) -> dict[str, object]:
    """The present data, as they will stand in the file."""
    (worked,) = (one for one in desk.worked.programs if one.id == program)
    data: dict[str, object] = json.loads(json.dumps(program_data(desk.worked, worked)))
    return data


def _by_program(
    where: Path, programs: list[str], problems: list[Problem]
) -> dict[str, tuple[str, Earlier]]:
    """The file of each program, with its name; one is chosen by its name where there are more."""
    found: dict[str, list[tuple[str, Earlier]]] = {}
    strangers: list[str] = []
    for path in _files(where, problems):
        file = shown_path(path)
        try:
            earlier = read_earlier(path.read_bytes())
        except EarlierError as error:
            problems.append(_problem(file, str(error), error.line, error.column))
            continue
        except OSError as error:
            text = f"the file can't be read: {error.strerror or error}"
            problems.append(_problem(file, text))
            continue
        if earlier.program in programs:
            found.setdefault(earlier.program, []).append((file, earlier))
        else:
            strangers.append(f"'{earlier.program}'")
    if strangers and not found:
        ours = ", ".join(f"'{one}'" for one in programs)
        text = f"nothing to compare: it is about {', '.join(strangers)}; the programs are {ours}"
        problems.append(_problem(shown_path(where), text))
    return {program: _one(program, several, problems) for program, several in found.items()}


def _files(where: Path, problems: list[Problem]) -> Iterator[Path]:
    if not where.is_dir():
        if where.exists():
            yield where
        else:
            text = "there is no such file or folder; copy data/<program>.json of the last site here"
            problems.append(_problem(shown_path(where), text))
        return
    files = sorted(where.glob("*.json"))
    if not files:
        text = "there is no .json file in it; copy data/<program>.json of the last site here"
        problems.append(_problem(shown_path(where), text))
    yield from files


def _one(
    program: str, several: list[tuple[str, Earlier]], problems: list[Problem]
) -> tuple[str, Earlier]:
    named = [one for one in several if Path(one[0]).stem == program]
    chosen = (named or several)[0]
    if len(several) > 1 and not named:
        text = f"{len(several)} files are about '{program}'; call the last one {program}.json"
        problems.append(_problem(chosen[0], text))
    return chosen


def _problem(file: str, text: str, line: int = 1, column: int = 1) -> Problem:
    return Problem(file, line, column, "since-file", text, Severity.WARN)


def _same_version(desk: Desk, changes: Changes, file: str) -> Iterator[Problem]:
    """A complaint where something on a card is different and the version is not."""
    number = len(changes.unmarked)
    if number:
        things = "1 thing is" if number == 1 else f"{counted(number, 'thing')} are"
        cause = next((one for one in changes.items if one.kind in _CAUSES), None)
        first = (
            f" (it begins with {where(cause)}: {said(cause, desk.book.room.units)})"
            if cause
            else ""
        )
        text = (
            f"version is still {changes.after}, but {things} different from {file}{first}; raise "
            "it, printed cards can't be told apart"
        )
        source = desk.written.programs[changes.program].source
        yield source.problem(("version",), "same-version", text, severity=Severity.WARN)
