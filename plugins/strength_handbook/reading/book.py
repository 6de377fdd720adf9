"""A program folder read whole: every file, every problem, then one book or none.

The order is fixed: text, one-line doses, shape, then what holds between files. A file with a
problem does not hide the problems of the others.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path

from pydantic import BaseModel

from strength_handbook.model.book import Book, WrittenProgram, rule_values
from strength_handbook.model.exercise import Exercise
from strength_handbook.model.house_rules import HouseRules
from strength_handbook.model.program import Lifters, Program, Wave
from strength_handbook.model.room import Room
from strength_handbook.reading.doses import expand_doses
from strength_handbook.reading.files import Found, Kind, list_folder
from strength_handbook.reading.problem import Problem, Severity, sorted_problems
from strength_handbook.reading.references import check_references
from strength_handbook.reading.shape import MOST_SHOWN, shape
from strength_handbook.reading.source import Source
from strength_handbook.reading.written import Written
from strength_handbook.reading.yaml_source import read_source

MODELS: Mapping[Kind, type[BaseModel]] = {
    Kind.ROOM: Room,
    Kind.RULES: HouseRules,
    Kind.LIFTERS: Lifters,
    Kind.EXERCISE: Exercise,
    Kind.PROGRAM: Program,
    Kind.WAVE: Wave,
}

_NO_RULES = HouseRules.model_validate({"owner": "Head coach", "date": "2000-01-01", "rules": {}})


@dataclass
class Reading:
    """What came out of reading a folder.

    Attributes:
        book: everything, or None where there is an error.
        problems: all problems of all files, sorted.
        written: the typed files with their sources, for later checks that point into files.
    """

    book: Book | None
    problems: list[Problem] = field(default_factory=list)
    written: Written = field(default_factory=Written)


def read_book(root: Path, shown: str | None = None) -> Reading:
    """Read and check a program folder; never raises for what stands in the files.

    Args:
        root: the folder.
        shown: its name in messages; the folder's own name if left out.
    """
    folder = list_folder(root, shown)
    problems = list(folder.problems)
    written = Written()
    for found in folder.files:
        model, source, wrong = _read_file(found)
        problems += wrong
        if wrong:
            written.broken.append(found)
        if model is not None and source is not None:
            written.add(found, model, source)
    problems += check_references(written)
    ordered = sorted_problems(problems)
    if any(problem.severity is Severity.ERROR for problem in ordered):
        return Reading(None, ordered, written)
    return Reading(_book(written), ordered, written)


def _read_file(found: Found) -> tuple[BaseModel | None, Source | None, list[Problem]]:
    """A file's model and source, as far as it can be read, and its problems."""
    try:
        raw = found.path.read_bytes()
    except OSError as error:
        text = f"the file can't be read: {error.strerror or error}"
        return None, None, [Problem(found.shown, 1, 1, "no-file", text)]
    source, problems = read_source(raw, found.shown)
    if source is None:
        return None, None, _shortened(problems)
    source, wrong_doses = expand_doses(source)
    model, wrong_shape = shape(MODELS[found.kind], source)
    return model, source, _shortened(problems + wrong_doses) + wrong_shape


def _shortened(problems: list[Problem]) -> list[Problem]:
    """The first problems of a file, and how many more there are."""
    shown = problems[:MOST_SHOWN]
    if len(problems) > len(shown):
        more = len(problems) - len(shown)
        text = f"there are {more} more problems in this file; mend the others first"
        shown.append(Problem(shown[0].file, 1, 1, "too-many", text))
    return shown


def _book(written: Written) -> Book:
    """The book, once nothing is wrong."""
    assert written.room is not None  # noqa: S101  # a missing room is a problem
    rules = written.rules.model if written.rules else _NO_RULES
    return Book(
        room=written.room.model,
        rules=rules,
        lifters=written.lifters.model.lifters if written.lifters else {},
        exercises={key: file.model for key, file in sorted(written.exercises.items())},
        programs=tuple(
            WrittenProgram(
                key,
                file.model,
                tuple(wave.model for wave in written.waves_of(key)),
                tuple(wave.id for wave in written.waves_of(key)),
            )
            for key, file in sorted(written.programs.items())
        ),
        rule_values=rule_values(rules),
    )
