"""What is written must fit together: names in a room, weeks and waves, orders, complete doses."""

from collections.abc import Iterator, Mapping

from strength_handbook.model.doors import path_of
from strength_handbook.model.dose import Dose, IncompleteDoseError, InconsistentDoseError
from strength_handbook.model.exercise import Exercise
from strength_handbook.model.load import (
    PercentOfBase,
    PercentOfSystem,
    PercentOfTop,
    PercentOfTrainingMax,
)
from strength_handbook.model.loading import BodyWeightLift
from strength_handbook.model.program import Program, Wave
from strength_handbook.model.session import Session, Slot
from strength_handbook.model.shape import quoted
from strength_handbook.model.slot_dose import NoSuchWeekError, slot_dose
from strength_handbook.reading.files import INDEX, FileKind
from strength_handbook.reading.going import (
    best_problems,
    door_problems,
    going_problems,
    rule_problem,
)
from strength_handbook.reading.problem import Problem
from strength_handbook.reading.source import Path, Source
from strength_handbook.reading.suggest import one_of
from strength_handbook.reading.written import File, Written

MOST_ROWS = 200
"""Rows of a look-up strip."""
LONGEST_SET_S = 3600
"""No set lasts longer; only repetitions with a tempo could, as holds and carries have limits."""


def check_fit(written: Written) -> Iterator[Problem]:
    """Everything that exists and still does not fit."""
    yield from _check_room(written)
    for name in sorted(written.exercises):
        yield from _check_doors(written, written.exercises[name])
    for key, program in sorted(written.programs.items()):
        yield from _check_bases(written, program)
        if not written.waves.get(key) and not written.unread(FileKind.WAVE, key):
            text = "the program has no wave; write one, like '1-brakes.yml', beside this file"
            yield program.source.problem((), "no-file", text)
    for key in sorted(written.waves):
        yield from _check_weeks(written.waves_of(key))
        around = None if written.unread(FileKind.PROGRAM, key) else written.programs.get(key)
        for wave in written.waves_of(key):
            yield from _check_wave(written, around, wave)


def _check_room(written: Written) -> Iterator[Problem]:
    if written.room is None:
        return
    room, source = written.room.model, written.room.source
    seen: dict[str, str] = {}
    sections: dict[str, Mapping[str, object]] = {
        "bars": room.bars, "racks": room.racks, "hand-weights": room.hand_weights,
        "carriers": room.carriers, "stacks": room.stacks, "machines": room.machines,
        "lanes": room.lanes, "bands": room.bands, "chains": room.chains, "pivots": room.pivots,
        "kit": room.kit,
    }  # fmt: skip
    for section, things in sections.items():
        for key in things:
            if key in seen:
                line = source.key_at((seen[key], key)).line
                text = f"{quoted(key)} stands under {quoted(seen[key])} too, in line {line}"
                text += "; give one of them another short name"
                yield source.problem((section, key), "same-name", text, key=True)
            seen.setdefault(key, section)
    if room.bars and not room.plates:
        text = "missing key 'plates': there are bars but no plates; write a list of them"
        yield source.problem((), "missing-key", text)


def _check_doors(written: Written, file: File[Exercise]) -> Iterator[Problem]:
    """A door asks nothing that its exercise can't be."""
    for name, door in file.model.doors.each():
        target = written.exercises.get(door.to) if door.to else file
        if target is None or (door.to in written.unread(FileKind.EXERCISE)):
            continue
        for key, text in door_problems(door, file.model, target.model):
            place = (*path_of(name), "load") if key == "load" else (*path_of(name), "dose", key)
            yield file.source.problem(place, "endurance", text)


def _check_bases(written: Written, file: File[Program]) -> Iterator[Problem]:
    for name, base in file.model.bases.items():
        path: Path = ("bases", name)
        if base.to.grams < base.from_.grams:
            text = f"the strip must go up; it begins at {base.from_.label}"
            yield file.source.problem((*path, "to"), "range", text)
        elif (base.to.grams - base.from_.grams) // base.by.grams > MOST_ROWS:
            text = f"this strip has more than {MOST_ROWS} rows; take a larger step"
            yield file.source.problem((*path, "by"), "range", text)
        exercise = written.exercises.get(base.exercise)
        if (
            base.kind == "system"
            and exercise
            and not isinstance(exercise.model.load, BodyWeightLift)
        ):
            text = f"{quoted(base.exercise)} is no body-weight lift; leave 'kind' out"
            yield file.source.problem((*path, "kind"), "not-a-system", text)


def _check_weeks(waves: list[File[Wave]]) -> Iterator[Problem]:
    """A week belongs to one wave."""
    taken: dict[int, str] = {}
    for wave in waves:
        twice: dict[str, list[int]] = {}
        for week in wave.model.weeks:
            if week in taken:
                twice.setdefault(taken[week], []).append(week)
            taken.setdefault(week, wave.source.file)
        for file, weeks in twice.items():
            are = "weeks {} are" if len(weeks) > 1 else "week {} is"
            span = f"{weeks[0]} to {weeks[-1]}" if len(weeks) > 1 else str(weeks[0])
            text = f"{are.format(span)} already in {file}; a week belongs to one wave"
            yield wave.source.problem(("weeks",), "week-twice", text)


def _check_wave(
    written: Written, program: File[Program] | None, file: File[Wave]
) -> Iterator[Problem]:
    wave, source = file.model, file.source
    for name in ("deload", "tests"):
        for index, week in enumerate(getattr(wave, name)):
            if week not in wave.weeks:
                path: Path = (name, index) if (name, index) in source.marks else (name,)
                yield source.problem(path, "week", _not_here(week, wave))
    for key, session in wave.sessions.items():
        if key in INDEX:
            text = f"the site needs the name {quoted(key)} itself; give the session another"
            yield source.problem(("sessions", key), "form", text, key=True)
        yield from _check_variants(source, ("sessions", key), session)
        taken: dict[str, list[tuple[int, set[int]]]] = {}
        for index, slot in enumerate(session.slots):
            path = ("sessions", key, "slots", index)
            line = source.at((*path, "order")).line
            for before, theirs in taken.get(slot.order, []):
                if both := sorted(theirs & set(slot.weeks)):
                    text = (
                        f"order {slot.order} is taken in {_weeks(both)}, by line {before}; two "
                        "exercises may have one order only in different weeks"
                    )
                    yield source.problem((*path, "order"), "order-twice", text)
            taken.setdefault(slot.order, []).append((line, set(slot.weeks)))
            for week in slot.weeks:
                if week not in wave.weeks:
                    place = (*path, "weeks", str(week))
                    yield source.problem(place, "week", _not_here(week, wave), key=True)
            exercise = written.exercises.get(slot.exercise)
            if exercise and slot.exercise not in written.unread(FileKind.EXERCISE):
                base = getattr(exercise.model.load, "base", None)
                # An exercise's base that no program has is reported in its own file.
                known = base is None or any(
                    base in file.model.references for file in written.programs.values()
                )
                yield from _check_doses(
                    program if known or slot.base else None, exercise.model, file, slot, path
                )


def _weeks(numbers: list[int]) -> str:
    return f"week {numbers[0]}" if len(numbers) == 1 else f"weeks {', '.join(map(str, numbers))}"


def _check_variants(source: Source, path: Path, session: Session) -> Iterator[Problem]:
    """What a variant leaves out must be there."""
    orders = [slot.order for slot in session.slots]
    for number, variant in enumerate(session.variants):
        for index, order in enumerate(variant.leave_out):
            if order not in orders:
                place = (*path, "variants", number, "leave-out", index)
                text = f"no slot here has the order {quoted(order)}; there is {one_of(orders)}"
                yield source.problem(place, "unknown-word", text)


def _not_here(week: int, wave: Wave) -> str:
    first, last = wave.weeks[0], wave.weeks[-1]
    has = f"weeks {first} to {last}" if first < last else f"week {first}"
    return f"week {week} is not in this wave, which has {has}"


def _check_doses(
    program: File[Program] | None, exercise: Exercise, file: File[Wave], slot: Slot, path: Path
) -> Iterator[Problem]:
    said: set[str] = set()
    source = file.source
    if text := rule_problem(slot.progress, exercise.going):
        yield source.problem((*path, "progress"), "progress", text)
    for week, part in slot.weeks.items():
        place: Path = (*path, "weeks", str(week))
        if part is None:
            continue
        try:
            dose = slot_dose(slot, exercise, week)
        except NoSuchWeekError as error:
            text = f"week {error.week} has no dose here to take less of"
            yield source.problem((*place, "deload-of"), "week", text)
            continue
        except InconsistentDoseError as error:
            yield source.problem(place, "series", str(error))
            continue
        except IncompleteDoseError as error:
            text = f"{error}; write it here, at the slot or in the exercise"
            yield source.problem(place, "incomplete-dose", text)
            continue
        for key, text in going_problems(dose, test_week=week in file.model.tests):
            at = _said_at(source, place, path, key)
            if key not in said:
                yield source.problem(at, "endurance", text)
            said.add(key)
        if _rep_seconds(dose) * (dose.reps.high if dose.reps else 0) > LONGEST_SET_S:
            at = _said_at(source, place, path, "reps")
            text = "at this tempo one set would last more than an hour; check both"
            yield source.problem(at, "range", text)
        # A load that is not written for this week stands at the slot, or in the exercise's file.
        at = _said_at(source, place, path, "load")
        for slug, text in _check_load(program, exercise, slot, dose):
            if slug not in said:  # one correction mends all weeks
                yield source.problem(at, slug, text)
            said.add(slug)


def _said_at(source: Source, week: Path, slot: Path, key: str) -> Path:
    """Where a dose's key stands: in the week's, at the slot, or in the exercise's own file."""
    return next((p for p in ((*week, key), (*slot, key)) if p in source.marks), week)


def _rep_seconds(dose: Dose) -> int:
    tempo = dose.tempo
    if tempo is None:
        return 0
    # A lift as fast as possible counts as one second.
    lift = 1 if tempo.lift is None else tempo.lift
    return tempo.lower + tempo.low_pause + lift + tempo.high_pause


def _check_load(
    program: File[Program] | None, exercise: Exercise, slot: Slot, dose: Dose
) -> Iterator[tuple[str, str]]:
    """What a percentage refers to."""
    load = dose.load
    if dose.going is not None:
        base = slot.base or getattr(exercise.load, "base", None)
        if program and (text := best_problems(program.model.bests, base, load)):
            yield "no-base", text
        return
    if isinstance(load, PercentOfTop):
        if dose.top is None:
            text = f"{quoted(load.text)} needs a top set that day; write 'top: 5RM' too"
            yield "incomplete-dose", text
        return
    percents = PercentOfBase | PercentOfSystem | PercentOfTrainingMax
    if program is None or not isinstance(load, percents):
        return
    bases = program.model.bases
    base = slot.base or getattr(exercise.load, "base", None)
    name = f"name the slot's 'base', such as {one_of(tuple(bases))}" if bases else ""
    name = name or "write a tested value under 'bases' in program.yml, and name it in the slot"
    if not base:
        yield "no-base", f"{load.text} of what? {name}"
    elif base not in bases and (not slot.base or base in program.model.bests):
        text = f"{load.text} of {quoted(base)}, which this program does not have"
        yield "no-base", f"{text}; {name}"
    elif base in bases and isinstance(load, PercentOfSystem) and bases[base].kind != "system":
        text = f"{quoted(base)} is not a system total; write 'kind: system' for it in program.yml"
        yield "not-a-system", f"{text}, or leave the word 'system' out"
