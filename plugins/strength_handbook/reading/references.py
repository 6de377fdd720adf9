"""What is named must exist: exercises, equipment, tested values, house rules.

A wrong name is reported at the line that uses it, with the nearest right one. A file with problems
of its own may define what seems to be missing, so nothing is said about names it could hold.
"""

from collections.abc import Iterator, Mapping, Sequence

from strength_handbook.model.exercise import Exercise
from strength_handbook.model.house_rules import RULES, read_value
from strength_handbook.model.loading import BodyWeightLift, InHands, OnBar, OnMachine, OnStack
from strength_handbook.model.program import Program, Wave
from strength_handbook.model.quantities import LimitError
from strength_handbook.model.room import Room
from strength_handbook.reading.files import Kind
from strength_handbook.reading.fit import check_fit
from strength_handbook.reading.problem import Problem
from strength_handbook.reading.source import Path, Source
from strength_handbook.reading.suggest import did_you_mean, one_of, quoted
from strength_handbook.reading.written import File, Written


def check_references(written: Written) -> list[Problem]:
    """Everything that is wrong between files: unknown names, and what does not fit together."""
    problems = [*_check_rules(written), *_check_lifters(written)]
    for exercise in written.exercises.values():
        problems += _check_exercise(written, exercise)
    for key, program in sorted(written.programs.items()):
        problems += _check_program(written, key, program)
    for key in sorted(written.waves):
        for wave in written.waves_of(key):
            problems += _check_wave(written, key, wave)
    return problems + list(check_fit(written))


def _unknown(
    source: Source,
    path: Path,
    what: str,
    name: str,
    options: Sequence[str],
    *,
    advice: str = "",
    key: bool = False,
) -> Problem:
    """A name that does not exist; the advice is given where no other name is near."""
    hint = did_you_mean(name, options)
    if not hint and advice:
        hint = f"; {advice}"
    elif not hint and options:
        hint = f"; there is {one_of(options)}"
    text = f"unknown {what} {quoted(name)}{hint}"
    return source.problem(path, f"unknown-{what.replace(' ', '-')}", text, key=key)


def _check_rules(written: Written) -> Iterator[Problem]:
    if written.rules is None:
        return
    source = written.rules.source
    for slug, rule in written.rules.model.rules.items():
        kind = RULES.get(slug)
        if kind is None:
            advice = f"the rules are {one_of(tuple(RULES), limit=len(RULES))}"
            yield _unknown(
                source, ("rules", slug), "house rule", slug, tuple(RULES), advice=advice, key=True
            )
            continue
        try:
            read_value(rule.value, kind)
        except ValueError as error:
            wrong = "range" if isinstance(error, LimitError) else "unit"
            yield source.problem(("rules", slug, "value"), wrong, str(error))


def _check_exercise(written: Written, file: File[Exercise]) -> Iterator[Problem]:
    exercise, source = file.model, file.source
    for name, door in (
        ("easier", exercise.doors.easier), ("harder", exercise.doors.harder),
        ("hurts", exercise.doors.hurts), ("taken", exercise.doors.taken),
        ("no-partner", exercise.doors.no_partner),
    ):  # fmt: skip
        if door.to is not None:
            yield from _exercise_exists(written, source, ("doors", name, "to"), door.to)
    if written.room is not None and not written.unread(Kind.ROOM):
        room = written.room.model
        things = tuple(room.names())
        for section in ("stations", "uses"):
            for index, name in enumerate(getattr(exercise, section)):
                if name not in things:
                    path: Path = (section, index)
                    advice = "write it in room.yml first"
                    yield _unknown(source, path, "thing in the room", name, things, advice=advice)
        yield from _check_loading(room, file)
    base = getattr(exercise.load, "base", None)
    if base and written.programs and not written.unread(Kind.PROGRAM):
        bases = sorted({key for f in written.programs.values() for key in f.model.bases})
        if base not in bases:
            yield _unknown(
                source, ("load", "base"), "base", base, bases, advice=_base_advice(bases)
            )


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
        key, name, things, what = wanted
        advice = (
            f"room.yml has {one_of(tuple(things))}" if things else f"room.yml has no {what} yet"
        )
        yield _unknown(source, ("load", key), what, name, tuple(things), advice=advice)


def _exercise_exists(written: Written, source: Source, path: Path, name: str) -> Iterator[Problem]:
    known = set(written.exercises) | written.unread(Kind.EXERCISE)
    if name not in known:
        advice = f"write exercises/{name}.yml first"
        yield _unknown(source, path, "exercise", name, sorted(known), advice=advice)


def _check_program(written: Written, key: str, file: File[Program]) -> Iterator[Problem]:
    program, source = file.model, file.source
    bases = tuple(program.bases)
    for name, base in program.bases.items():
        yield from _exercise_exists(written, source, ("bases", name, "exercise"), base.exercise)
    for index, goal in enumerate(program.goals):
        if goal.base and goal.base not in bases and key not in written.unread(Kind.PROGRAM):
            path: Path = ("goals", index, "base")
            yield _unknown(source, path, "base", goal.base, bases, advice=_base_advice(bases))
        if goal.exercise:
            path = ("goals", index, "exercise")
            yield from _exercise_exists(written, source, path, goal.exercise)


def _check_wave(written: Written, key: str, file: File[Wave]) -> Iterator[Problem]:
    source = file.source
    program = written.programs.get(key)
    whole = program is not None and key not in written.unread(Kind.PROGRAM)
    bases = tuple(program.model.bases) if program else ()
    for name, session in file.model.sessions.items():
        for index, slot in enumerate(session.slots):
            path: Path = ("sessions", name, "slots", index)
            yield from _exercise_exists(written, source, (*path, "exercise"), slot.exercise)
            if whole and slot.base and slot.base not in bases:
                advice = _base_advice(bases)
                yield _unknown(source, (*path, "base"), "base", slot.base, bases, advice=advice)


def _check_lifters(written: Written) -> Iterator[Problem]:
    if written.lifters is None or not written.programs or written.unread(Kind.PROGRAM):
        return
    known = sorted({key for f in written.programs.values() for key in f.model.bases})
    source = written.lifters.source
    for name, lifter in written.lifters.model.lifters.items():
        for base in lifter.bases:
            if base not in known:
                path: Path = ("lifters", name, "bases", base)
                advice = _base_advice(known)
                yield _unknown(source, path, "base", base, known, advice=advice, key=True)


def _base_advice(bases: Sequence[str]) -> str:
    if not bases:
        return "write it under 'bases' in program.yml"
    return f"program.yml has {one_of(bases)}"
