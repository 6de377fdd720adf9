"""What must hold between files: everything named exists, and every dose is complete.

A wrong name is reported at the line that uses it, with the nearest right one.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Generic, TypeVar

from pydantic import BaseModel

from strength_handbook.model.dose import IncompleteDoseError, complete
from strength_handbook.model.exercise import Exercise
from strength_handbook.model.house_rules import RULES, HouseRules, read_value
from strength_handbook.model.load import PercentOfBase, PercentOfSystem, PercentOfTop, RepMax
from strength_handbook.model.loading import BodyWeightLift, InHands, OnBar, OnMachine, OnStack
from strength_handbook.model.program import Lifters, Program, Slot, Wave
from strength_handbook.model.room import Room
from strength_handbook.reading.files import Found, Kind
from strength_handbook.reading.problem import Problem
from strength_handbook.reading.suggest import did_you_mean
from strength_handbook.reading.source import Path, Source

M = TypeVar("M", bound=BaseModel)


@dataclass(frozen=True, slots=True)
class File(Generic[M]):
    """One typed file with its source."""

    model: M
    source: Source
    order: int = 0
    id: str = ""


@dataclass
class Written:
    """All files that have their shape, by what they describe."""

    room: File[Room] | None = None
    rules: File[HouseRules] | None = None
    lifters: File[Lifters] | None = None
    exercises: dict[str, File[Exercise]] = field(default_factory=dict)
    programs: dict[str, File[Program]] = field(default_factory=dict)
    waves: dict[str, list[File[Wave]]] = field(default_factory=dict)
    broken: list[Found] = field(default_factory=list)
    """Files that have problems of their own: nothing is said about names they may define."""

    def add(self, found: Found, model: BaseModel, source: Source) -> None:
        """Put one file in its place."""
        if isinstance(model, Room):
            self.room = File(model, source)
        elif isinstance(model, HouseRules):
            self.rules = File(model, source)
        elif isinstance(model, Lifters):
            self.lifters = File(model, source)
        elif isinstance(model, Exercise):
            self.exercises[found.id] = File(model, source)
        elif isinstance(model, Program):
            self.programs[found.id] = File(model, source)
        elif isinstance(model, Wave):
            self.waves.setdefault(found.id, []).append(File(model, source, found.order, found.wave))

    def waves_of(self, program: str) -> list[File[Wave]]:
        """A program's waves in order."""
        return sorted(self.waves.get(program, []), key=lambda file: file.order)

    def unread(self, kind: Kind, program: str = "") -> set[str]:
        """Ids of broken files of a kind."""
        return {f.id for f in self.broken if f.kind is kind and program in ("", f.id)}


def check_references(written: Written) -> list[Problem]:
    """Everything that does not fit between files."""
    problems: list[Problem] = []
    problems += _check_room(written)
    problems += _check_rules(written)
    for exercise in written.exercises.values():
        problems += _check_exercise(written, exercise)
    for program in sorted(written.programs):
        problems += _check_program(written, program)
    problems += _check_lifters(written)
    return problems


def _unknown(
    source: Source, path: Path, what: str, name: str, options: Sequence[str], *, key: bool = False
) -> Problem:
    hint = did_you_mean(name, options)
    article = "an" if what[0] in "aeiou" else "a"
    text = f"'{name}' is not {article} {what} of this handbook{hint}"
    return source.problem(path, f"unknown-{what.replace(' ', '-')}", text, key=key)


def _check_room(written: Written) -> Iterator[Problem]:
    if written.room is None:
        return
    room, source = written.room.model, written.room.source
    seen: dict[str, str] = {}
    sections: dict[str, Mapping[str, object]] = {
        "bars": room.bars, "racks": room.racks, "hand-weights": room.hand_weights,
        "carriers": room.carriers, "stacks": room.stacks, "machines": room.machines,
        "lanes": room.lanes, "kit": room.kit,
    }  # fmt: skip
    for section, things in sections.items():
        for key in things:
            if key in seen:
                text = f"'{key}' is already under '{seen[key]}'; give it another short name"
                yield source.problem((section, key), "same-name", text, key=True)
            seen.setdefault(key, section)
    if room.bars and not room.plates:
        yield source.problem(
            (), "missing-key", "there are bars but no plates; list them under 'plates'"
        )


def _check_rules(written: Written) -> Iterator[Problem]:
    if written.rules is None:
        return
    source = written.rules.source
    for slug, rule in written.rules.model.rules.items():
        kind = RULES.get(slug)
        if kind is None:
            yield _unknown(source, ("rules", slug), "house rule", slug, tuple(RULES), key=True)
            continue
        try:
            read_value(rule.value, kind)
        except ValueError as error:
            yield source.problem(("rules", slug, "value"), "unit", str(error))


def _check_exercise(written: Written, file: File[Exercise]) -> Iterator[Problem]:
    exercise, source = file.model, file.source
    for name, door in (
        ("easier", exercise.doors.easier), ("harder", exercise.doors.harder),
        ("hurts", exercise.doors.hurts), ("taken", exercise.doors.taken),
        ("no-partner", exercise.doors.no_partner),
    ):  # fmt: skip
        if door.to is not None:
            yield from _exercise_exists(written, source, ("doors", name, "to"), door.to)
    if written.room is None:
        return
    room = written.room.model
    things = room.names()
    for section in ("stations", "uses"):
        for index, name in enumerate(getattr(exercise, section)):
            if name not in things:
                yield _unknown(source, (section, index), "thing in the room", name, tuple(things))
    yield from _check_loading(room, file)
    base = getattr(exercise.load, "base", None)
    programs = {key: f.model.bases for key, f in written.programs.items()}
    if base and not written.unread(Kind.PROGRAM) and not any(base in b for b in programs.values()):
        bases = sorted({key for bases in programs.values() for key in bases})
        yield _unknown(source, ("load", "base"), "base", base, bases)


def _check_loading(room: Room, file: File[Exercise]) -> Iterator[Problem]:
    load, source = file.model.load, file.source
    wanted: tuple[str, str, Mapping[str, object], str] | None = None
    if isinstance(load, OnBar):
        wanted = ("bar", load.bar, room.bars, "bar")
    elif isinstance(load, InHands):
        wanted = ("weight", load.weight, room.hand_weights, "hand weight")
    elif isinstance(load, BodyWeightLift) and load.carrier:
        wanted = ("carrier", load.carrier, room.carriers, "carrier")
    elif isinstance(load, OnStack):
        wanted = ("stack", load.stack, room.stacks, "stack")
    elif isinstance(load, OnMachine):
        wanted = ("machine", load.machine, room.machines, "machine")
    if wanted and wanted[1] not in wanted[2]:
        yield _unknown(source, ("load", wanted[0]), wanted[3], wanted[1], tuple(wanted[2]))


def _exercise_exists(written: Written, source: Source, path: Path, name: str) -> Iterator[Problem]:
    known = set(written.exercises) | written.unread(Kind.EXERCISE)
    if name not in known:
        yield _unknown(source, path, "exercise", name, sorted(known))


def _check_program(written: Written, key: str) -> Iterator[Problem]:
    file = written.programs[key]
    program, source = file.model, file.source
    for name, base in program.bases.items():
        yield from _exercise_exists(written, source, ("bases", name, "exercise"), base.exercise)
        if base.by.grams <= 0 or base.to.grams < base.from_.grams:
            text = "the strip must go up: write from, to and by like 40 kg, 240 kg, 5 kg"
            yield source.problem(("bases", name), "range", text)
        elif (base.to.grams - base.from_.grams) // base.by.grams > 200:
            text = "this strip has more than 200 rows; take a larger step"
            yield source.problem(("bases", name, "by"), "range", text)
    for index, goal in enumerate(program.goals):
        if goal.base and goal.base not in program.bases:
            yield _unknown(
                source, ("goals", index, "base"), "base", goal.base, tuple(program.bases)
            )
        if goal.exercise:
            path: Path = ("goals", index, "exercise")
            yield from _exercise_exists(written, source, path, goal.exercise)
    if not written.waves.get(key) and not written.unread(Kind.WAVE, key):
        yield source.problem(
            (), "no-file", "the program has no wave; write one, like '1-brakes.yml'"
        )
    taken: dict[int, str] = {}
    for wave in written.waves_of(key):
        for week in wave.model.weeks:
            if week in taken:
                text = f"week {week} is already in {taken[week]}; a week belongs to one wave"
                yield wave.source.problem(("weeks",), "week-twice", text)
            taken.setdefault(week, wave.source.file)
        yield from _check_wave(written, program, wave)


def _check_wave(written: Written, program: Program, file: File[Wave]) -> Iterator[Problem]:
    wave, source = file.model, file.source
    for field_name in ("deload", "tests"):
        for week in getattr(wave, field_name):
            if week not in wave.weeks:
                yield source.problem((field_name,), "week", f"week {week} is not in this wave")
    for session_id, session in wave.sessions.items():
        orders: set[str] = set()
        for index, slot in enumerate(session.slots):
            path: Path = ("sessions", session_id, "slots", index)
            if slot.order in orders:
                text = f"order {slot.order} is already taken in this session"
                yield source.problem((*path, "order"), "order-twice", text)
            orders.add(slot.order)
            yield from _exercise_exists(written, source, (*path, "exercise"), slot.exercise)
            if slot.base and slot.base not in program.bases:
                known = tuple(program.bases)
                yield _unknown(source, (*path, "base"), "base", slot.base, known)
            yield from _check_doses(written, program, file, slot, path)


def _check_doses(
    written: Written, program: Program, file: File[Wave], slot: Slot, path: Path
) -> Iterator[Problem]:
    source = file.source
    exercise = written.exercises.get(slot.exercise)
    for week, part in slot.weeks.items():
        place: Path = (*path, "weeks", str(week))
        if week not in file.model.weeks:
            yield source.problem(place, "week", f"week {week} is not in this wave", key=True)
        if part is None or exercise is None:
            continue
        try:
            dose = complete(part, slot, exercise.model.dose)
        except IncompleteDoseError as error:
            text = f"{error}; write it here, at the slot or in the exercise"
            yield source.problem(place, "incomplete-dose", text)
            continue
        base: str = slot.base or getattr(exercise.model.load, "base", None) or ""
        needs_base = isinstance(dose.load, PercentOfBase | PercentOfSystem | PercentOfTop | RepMax)
        if isinstance(dose.load, RepMax) or dose.top is not None:
            needs_base = False
        if needs_base and not base:
            text = f"{dose.load.text if dose.load else ''} of what? name the slot's 'base'"
            yield source.problem((*place, "load"), "no-base", text)
        kind = program.bases[base].kind if base in program.bases else None
        if isinstance(dose.load, PercentOfSystem) and kind == "1RM":
            text = f"'{base}' is no system total; its kind in program.yml must be 'system'"
            yield source.problem((*place, "load"), "not-a-system", text)


def _check_lifters(written: Written) -> Iterator[Problem]:
    if written.lifters is None or written.unread(Kind.PROGRAM):
        return
    known = sorted({key for f in written.programs.values() for key in f.model.bases})
    for name, lifter in written.lifters.model.lifters.items():
        for base in lifter.bases:
            if base not in known:
                path: Path = ("lifters", name, "bases", base)
                yield _unknown(written.lifters.source, path, "base", base, known, key=True)
