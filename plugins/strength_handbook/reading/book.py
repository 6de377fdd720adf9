"""A program folder read whole: every file, every problem, then one book or none.

The order is fixed: text, one-line doses, shape, then what holds between files. A file with a
problem does not hide the problems of the others.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from functools import lru_cache
from pathlib import Path
from types import MappingProxyType

from pydantic import BaseModel

from strength_handbook.model.book import Book, WrittenProgram, rule_values
from strength_handbook.model.exercise import DraftExercise, Exercise
from strength_handbook.model.house_rules import HouseRules
from strength_handbook.model.lifter import Lifters
from strength_handbook.model.media import MediaFile
from strength_handbook.model.program import Program, Wave
from strength_handbook.model.room import Room
from strength_handbook.model.samples import samples_in
from strength_handbook.reading.doing import Doing, doing
from strength_handbook.reading.doses import ReadAs, expand_doses
from strength_handbook.reading.draft import filled_up
from strength_handbook.reading.files import FileKind, FoundFile, list_folder
from strength_handbook.reading.media import check_media
from strength_handbook.reading.problem import Problem, Severity, sorted_problems
from strength_handbook.reading.raw_text import MAX_BYTES, too_large
from strength_handbook.reading.references import check_references
from strength_handbook.reading.shape import MOST_SHOWN, shape
from strength_handbook.reading.source import Plain, Source
from strength_handbook.reading.split_texts import split_texts
from strength_handbook.reading.written import Written
from strength_handbook.reading.yaml_source import read_source

MODELS: Mapping[FileKind, type[BaseModel]] = {
    FileKind.ROOM: Room,
    FileKind.RULES: HouseRules,
    FileKind.LIFTERS: Lifters,
    FileKind.EXERCISE: Exercise,
    FileKind.PROGRAM: Program,
    FileKind.WAVE: Wave,
}
MOST_KEPT = 100_000
"""Bytes of a file up to which its content is kept for the next reading; most are far smaller."""

_NO_RULES = HouseRules.model_validate({"owner": "Head coach", "date": "2000-01-01", "rules": {}})


@dataclass
class Reading:
    """What came out of reading a folder.

    Attributes:
        book: everything, or None where there is an error.
        problems: all problems of all files, sorted.
        written: the typed files with their sources, for later checks that point into files.
        read_as: doses in other spellings than the house's, and how each was understood.
        raw: what was read of each file, by its name in messages.
    """

    book: Book | None
    problems: list[Problem] = field(default_factory=list)
    written: Written = field(default_factory=Written)
    read_as: list[ReadAs] = field(default_factory=list)
    raw: dict[str, bytes] = field(default_factory=dict)


def read_book(
    root: Path,
    shown: str | None = None,
    tell: Callable[[str], None] = lambda _: None,
    instead: Mapping[str, bytes | None] = MappingProxyType({}),
) -> Reading:
    """Read and check a program folder; never raises for what stands in the files.

    Args:
        root: the folder.
        shown: its name in messages; the folder's own name if left out.
        tell: takes the name of each file before it is read.
        instead: for some files, by their names in messages, what to read in place of what they
            hold; None leaves a file out.
    """
    folder = list_folder(root, shown)
    problems = list(folder.problems)
    written = Written()
    read_as: list[ReadAs] = []
    read: dict[str, bytes] = {}
    # The room first: examples in the messages about all other files are in its units. Exercises
    # before waves: an example of a dose fits what is done.
    known = _Known()
    for found in sorted(folder.files, key=_turn):
        tell(f"reading {found.shown}")
        raw = instead[found.shown] if found.shown in instead else _bytes(found)
        if raw is None:
            continue
        if isinstance(raw, bytes):
            read[found.shown] = raw
        said, known = _read_file(found, raw, known)
        problems += said.problems
        read_as += said.read_as
        if said.problems:
            written.broken.append(found)
        if said.model is not None and said.source is not None:
            written.add(found, said.model, said.source)
    units = known.units
    with samples_in(units):
        problems += check_references(written)
    media, unfit = check_media(written, root)
    problems += unfit
    ordered = sorted_problems(problems)
    if any(problem.severity is Severity.ERROR for problem in ordered):
        return Reading(None, ordered, written, read_as, read)
    return Reading(_book(written, media), ordered, written, read_as, read)


def _turn(found: FoundFile) -> int:
    """When a file is read; those of one kind in their order."""
    return {FileKind.ROOM: 0, FileKind.EXERCISE: 1}.get(found.kind, 2)


@dataclass(frozen=True)
class _Known:
    """What the files read so far say for the messages about others.

    Attributes:
        units: the room's.
        room: its file.
        exercises: short name of each, and what is done.
    """

    units: str = "kg"
    room: Plain = None
    exercises: tuple[tuple[str, Doing], ...] = ()


@dataclass(frozen=True)
class FileContent:
    """What the bytes of a file say.

    Attributes:
        model: the file, typed; None where it has no shape.
        source: its data and where it stands; None where it can't be read.
        problems: all that is wrong in it.
        read_as: its doses in other spellings than the house's.
    """

    model: BaseModel | None = None
    source: Source | None = None
    problems: tuple[Problem, ...] = ()
    read_as: tuple[ReadAs, ...] = ()


def _bytes(found: FoundFile) -> bytes | Problem:
    """What a file holds, or why nobody can say."""
    try:
        if (size := found.path.stat().st_size) > MAX_BYTES:
            return too_large(size, found.shown)
        return found.path.read_bytes()
    except OSError as error:
        text = f"the file can't be read: {error.strerror or error}"
        return Problem(found.shown, 1, 1, "no-file", text)


def _read_file(found: FoundFile, raw: bytes | Problem, known: _Known) -> tuple[FileContent, _Known]:
    """What a file says, as far as it can be read, and what is known with it."""
    if isinstance(raw, Problem):
        return FileContent(problems=(raw,)), known
    read = said_in if len(raw) <= MOST_KEPT else said_in.__wrapped__
    exercises = known.exercises if found.kind is FileKind.WAVE else ()
    said = read(found.kind, found.shown, raw, known.units, exercises)
    data = said.source.data if said.source is not None else None
    if found.kind is FileKind.ROOM:
        return said, replace(known, units=_units(data, known.units), room=data)
    if found.kind is FileKind.EXERCISE:
        return said, replace(
            known, exercises=(*known.exercises, (found.id, doing(data, known.room)))
        )
    return said, known


def _units(room: Plain, otherwise: str) -> str:
    return str(room.get("units", otherwise)) if isinstance(room, dict) else otherwise


@lru_cache(maxsize=1024)  # after a save all other files are as they were, and they are many
def said_in(
    kind: FileKind,
    shown: str,
    raw: bytes,
    units: str,
    exercises: tuple[tuple[str, Doing], ...] = (),
) -> FileContent:
    """What the bytes of a file say; the same objects for the same bytes, so nobody changes them."""
    source, problems = read_source(raw, shown)
    if source is None:
        return FileContent(problems=tuple(_shortened(problems)))
    if kind is FileKind.ROOM:
        units = _units(source.data, units)
    with samples_in(units):
        doses = expand_doses(source, dict(exercises))
        source = doses.source
        model, wrong_shape = _shaped(kind, source)
    wrong_shape += split_texts(MODELS[kind], source)
    # Weeks that share a line say it once.
    wrong = (*_shortened(problems + doses.problems), *dict.fromkeys(wrong_shape))
    return FileContent(model, source, wrong, tuple(doses.read_as))


def _shaped(kind: FileKind, source: Source) -> tuple[BaseModel | None, list[Problem]]:
    """A file typed; an exercise that is only begun with something for all that is missing."""
    if kind is FileKind.EXERCISE:
        filled, missing = filled_up(source)
        if missing:
            return shape(DraftExercise, replace(source, data=filled))
    return shape(MODELS[kind], source)


def _shortened(problems: list[Problem]) -> list[Problem]:
    """The first problems of a file, and how many more there are."""
    shown = problems[:MOST_SHOWN]
    if len(problems) > len(shown):
        more = len(problems) - len(shown)
        text = f"there are {more} more problems in this file; fix the others first"
        shown.append(Problem(shown[0].file, 1, 1, "too-many", text))
    return shown


def _book(written: Written, media: Mapping[str, MediaFile]) -> Book:
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
        media=media,
    )
