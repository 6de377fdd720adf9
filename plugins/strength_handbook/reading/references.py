"""What is named must exist: exercises, equipment, tested values, house rules.

A wrong name is reported at the line that uses it, with the nearest right one. A file with problems
of its own may define what seems to be missing, so nothing is said about names it could hold.
"""

from collections.abc import Iterator, Mapping, Sequence

from strength_handbook.model.doors import path_of
from strength_handbook.model.dose_part import DosePart
from strength_handbook.model.exercise import Exercise
from strength_handbook.model.house_rules import RULES, read_value
from strength_handbook.model.lifter import Lifters
from strength_handbook.model.loading import (
    BodyWeightLift,
    InHands,
    OnBar,
    OnCarrier,
    OnMachine,
    OnPivot,
    OnStack,
)
from strength_handbook.model.program import Program, Wave
from strength_handbook.model.quantities import LimitError
from strength_handbook.model.room import Room
from strength_handbook.model.shape import quoted
from strength_handbook.reading.figures import check_figure
from strength_handbook.reading.files import FileKind
from strength_handbook.reading.fit import check_fit
from strength_handbook.reading.problem import Problem, Severity
from strength_handbook.reading.room_slips import room_slips, told_once
from strength_handbook.reading.source import Path, Source
from strength_handbook.reading.suggest import did_you_mean_name, one_of
from strength_handbook.reading.written import File, Written


def check_references(written: Written) -> list[Problem]:
    """Everything that is wrong between files: unknown names, and what does not fit together."""
    slips = room_slips(written)
    problems = [*_check_rules(written), *_check_lifters(written), *told_once(written, slips)]
    for exercise in written.exercises.values():
        problems += _check_exercise(written, exercise, slips)
    for key, program in sorted(written.programs.items()):
        problems += _check_program(written, key, program)
    for key in sorted(written.waves):
        for wave in written.waves_of(key):
            problems += _check_wave(written, key, wave, slips)
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
    hint = did_you_mean_name(name, options)
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
            advice = "the page 'How the numbers are made' lists all rules"
            yield _unknown(
                source, ("rules", slug), "house rule", slug, tuple(RULES), advice=advice, key=True
            )
            continue
        try:
            read_value(rule.value, kind)
        except ValueError as error:
            wrong = "range" if isinstance(error, LimitError) else "unit"
            yield source.problem(("rules", slug, "value"), wrong, str(error))


def _check_exercise(
    written: Written, file: File[Exercise], told: Mapping[str, str]
) -> Iterator[Problem]:
    exercise, source = file.model, file.source
    yield from check_figure(exercise, source)
    doors = dict(exercise.doors.each())
    for name, door in doors.items():
        if door.to is not None:
            yield from _exercise_exists(written, source, (*path_of(name), "to"), door.to)
    if written.room is not None and not written.unread(FileKind.ROOM):
        room = written.room.model
        things = tuple(room.names())
        for section in ("stations", "uses"):
            for index, name in enumerate(getattr(exercise, section)):
                if name not in things and name not in told:
                    path: Path = (section, index)
                    advice = "write it in room.yml first"
                    yield _unknown(source, path, "thing in the room", name, things, advice=advice)
        yield from _check_loading(room, file, told)
        yield from _check_bands(room, source, ("dose",), exercise.dose, told)
        for name, door in doors.items():
            if door.dose is not None:
                yield from _check_bands(room, source, (*path_of(name), "dose"), door.dose, told)
    base = getattr(exercise.load, "base", None)
    # An exercise that no program uses yet may wait for the one that tests its base.
    wanted = base and written.programs and file in _used(written)
    if base and wanted and not written.unread(FileKind.PROGRAM):
        bases = sorted({key for f in written.programs.values() for key in f.model.references})
        if base not in bases:
            yield _unknown(
                source, ("load", "base"), "base", base, bases, advice=_base_advice(bases)
            )


def _used(written: Written) -> list[File[Exercise]]:
    """Exercises that stand in a session, or that another one's door leads to."""
    waves = (wave.model for several in written.waves.values() for wave in several)
    names = {slot.exercise for one in waves for s in one.sessions.values() for slot in s.slots}
    for name in sorted(names & set(written.exercises)):
        names |= {door.to for _, door in written.exercises[name].model.doors.each() if door.to}
    return [file for name, file in written.exercises.items() if name in names]


def _check_loading(room: Room, file: File[Exercise], told: Mapping[str, str]) -> Iterator[Problem]:
    load = file.model.load
    wanted: list[tuple[str, str | None, Mapping[str, object], str]] = []
    if isinstance(load, OnBar | OnPivot):
        wanted.append(("bar", load.bar, room.bars, "bar"))
    if isinstance(load, OnBar):
        wanted.append(("rack", load.rack, room.racks, "rack"))
        wanted.append(("chains", load.chains, room.chains, "chain"))
    elif isinstance(load, OnPivot):
        wanted.append(("pivot", load.pivot, room.pivots, "pivot"))
    elif isinstance(load, InHands):
        wanted.append(("weight", load.weight, room.hand_weights, "hand weight"))
    elif isinstance(load, BodyWeightLift | OnCarrier):
        wanted.append(("carrier", load.carrier, room.carriers, "carrier"))
    elif isinstance(load, OnStack):
        wanted.append(("stack", load.stack, room.stacks, "stack"))
    elif isinstance(load, OnMachine):
        wanted.append(("machine", load.machine, room.machines, "machine"))
    for key, name, things, what in wanted:
        if name is not None and name not in things and name not in told:
            advice = _room_advice(what, things)
            yield _unknown(file.source, ("load", key), what, name, tuple(things), advice=advice)


def _check_bands(
    room: Room, source: Source, path: Path, part: DosePart, told: Mapping[str, str]
) -> Iterator[Problem]:
    """Bands are named one by one, also in doses."""
    named: list[tuple[Path, str]] = []
    if part.bands is not None:
        named += [((*path, "bands", "pair", i), name) for i, name in enumerate(part.bands.pair)]
    if part.assist is not None and part.assist.band is not None:
        named.append(((*path, "assist", "band"), part.assist.band))
    for place, name in named:
        if name not in room.bands and name not in told:
            advice = _room_advice("band", room.bands)
            yield _unknown(source, place, "band", name, tuple(room.bands), advice=advice)


def _room_advice(what: str, things: Mapping[str, object]) -> str:
    return f"room.yml has {one_of(tuple(things))}" if things else f"room.yml has no {what} yet"


def _exercise_exists(written: Written, source: Source, path: Path, name: str) -> Iterator[Problem]:
    known = set(written.exercises) | written.unread(FileKind.EXERCISE)
    if name not in known:
        advice = f"write exercises/{name}.yml first"
        yield _unknown(source, path, "exercise", name, sorted(known), advice=advice)


def _check_program(written: Written, key: str, file: File[Program]) -> Iterator[Problem]:
    program, source = file.model, file.source
    bases = tuple(program.bases)
    for name, base in program.bases.items():
        yield from _exercise_exists(written, source, ("bases", name, "exercise"), base.exercise)
    for name, best in program.bests.items():
        place: Path = ("bests", name, "exercise")
        yield from _exercise_exists(written, source, place, best.exercise)
        file_of = written.exercises.get(best.exercise)
        if file_of is not None and file_of.model.going is None:
            text = f"{quoted(best.exercise)} is not rowed, run or ridden; write it under 'bases'"
            yield source.problem(place, "no-base", text)
    for index, goal in enumerate(program.goals):
        if goal.base and goal.base not in bases and key not in written.unread(FileKind.PROGRAM):
            path: Path = ("goals", index, "base")
            yield _unknown(source, path, "base", goal.base, bases, advice=_base_advice(bases))
        if goal.exercise:
            path = ("goals", index, "exercise")
            yield from _exercise_exists(written, source, path, goal.exercise)


def _check_wave(
    written: Written, key: str, file: File[Wave], told: Mapping[str, str]
) -> Iterator[Problem]:
    source = file.source
    room = written.room.model if written.room and not written.unread(FileKind.ROOM) else None
    program = written.programs.get(key)
    whole = program is not None and key not in written.unread(FileKind.PROGRAM)
    bases = program.model.references if program else ()
    for name, session in file.model.sessions.items():
        for index, slot in enumerate(session.slots):
            path: Path = ("sessions", name, "slots", index)
            yield from _exercise_exists(written, source, (*path, "exercise"), slot.exercise)
            if room is not None:
                yield from _check_bands(room, source, path, slot, told)
                for week, part in slot.weeks.items():
                    place = (*path, "weeks", str(week))
                    yield from _check_bands(room, source, place, part or DosePart(), told)
            if whole and slot.base and slot.base not in bases:
                advice = _base_advice(bases)
                yield _unknown(source, (*path, "base"), "base", slot.base, bases, advice=advice)


def _check_lifters(written: Written) -> Iterator[Problem]:
    if written.lifters is None or written.unread(FileKind.PROGRAM):
        return
    if not written.programs:
        if written.waves:
            return  # the file that is missing beside them is told already
        yield from _check_lifters_alone(written.lifters)
        return
    known = sorted({key for f in written.programs.values() for key in f.model.bases})
    source = written.lifters.source
    for name, lifter in written.lifters.model.lifters.items():
        for base in lifter.bases:
            if base not in known:
                path: Path = ("lifters", name, "bases", base)
                advice = _base_advice(known)
                yield _unknown(source, path, "base", base, known, advice=advice, key=True)


def _check_lifters_alone(file: File[Lifters]) -> Iterator[Problem]:
    """Said once, and no error: the program may come next."""
    named = [(name, base) for name, one in file.model.lifters.items() for base in one.bases]
    if named:
        bases = sorted({base for _, base in named})
        text = f"no program has {one_of(bases)}; write what there is under 'bases' in program.yml"
        path: Path = ("lifters", named[0][0], "bases", named[0][1])
        yield file.source.problem(path, "unknown-base", text, key=True, severity=Severity.NOTE)


def _base_advice(bases: Sequence[str]) -> str:
    if not bases:
        return "write it under 'bases' in program.yml"
    return f"program.yml has {one_of(bases)}"
